#include "trenchbook/pipe/size_class.h"

#include <span>

#include "trenchbook/core/text.h"

namespace trenchbook {
namespace {

struct SizeClass {
    double from;  // nominal size, inches
    const char* key;
};

// Largest first; the last row takes everything below.
constexpr SizeClass leastSlopes[] = {{8, "slope.min.8in"},
                                     {6, "slope.min.6in"},
                                     {4, "slope.min.4in"},
                                     {3, "slope.min.3in"},
                                     {0, "slope.min.2in"}};
constexpr SizeClass trenchWidths[] = {
    {8, "trench.width.8in"}, {6, "trench.width.6in"}, {0, "trench.width.4in"}};
constexpr SizeClass glueJoints[] = {
    {8, "glue.joints.8in"}, {6, "glue.joints.6in"}, {4, "glue.joints.4in"}, {0, "glue.joints.3in"}};

const char* keyOf(double nominal, std::span<const SizeClass> classes) {
    for (const SizeClass& row : classes)
        if (nominal >= row.from) return row.key;
    return classes.back().key;
}

}  // namespace

const char* leastSlopeKey(double nominal) { return keyOf(nominal, leastSlopes); }
const char* leastSlopeRule(const Pipe& pipe) {
    return pipe.perforated ? "slope.min.perforated" : leastSlopeKey(pipe.nominal);
}
const char* trenchWidthKey(double nominal) { return keyOf(nominal, trenchWidths); }
const char* glueJointsKey(double nominal) { return keyOf(nominal, glueJoints); }

std::string pipeKindKey(const Pipe& pipe) { return nameKey(pipe.system); }

}  // namespace trenchbook
