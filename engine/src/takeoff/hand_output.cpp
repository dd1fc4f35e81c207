#include "trenchbook/takeoff/hand_output.h"

#include <algorithm>
#include <array>
#include <iterator>
#include <string>

#include "trenchbook/core/error.h"

namespace trenchbook {
namespace {

constexpr double anyThickness = 1000;  // m

constexpr HandOutput row(HandWork work, const char* soil, double over, double upTo, double cubicMetres) {
    return {work, soil, Length::metres(over), Length::metres(upTo), Volume::cubicMetres(cubicMetres)};
}
constexpr HandOutput trench(const char* soil, double upTo, double output) {
    return row(HandWork::Trench, soil, upTo - 1.5, upTo, output);
}
constexpr HandOutput pit(const char* soil, double upTo, double output) {
    return row(HandWork::Pit, soil, upTo - 1.5, upTo, output);
}

constexpr std::array printed = {
    trench("loose", 1.5, 0.66),
    trench("loose", 3, 0.45),
    trench("loose", 4.5, 0.33),
    trench("firm", 1.5, 0.57),
    trench("firm", 3, 0.38),
    trench("firm", 4.5, 0.28),
    trench("clay", 1.5, 0.46),
    trench("clay", 3, 0.31),
    trench("clay", 4.5, 0.24),
    trench("boulder clay", 1.5, 0.38),
    trench("boulder clay", 3, 0.26),
    trench("boulder clay", 4.5, 0.19),
    pit("loose", 1.5, 0.5),
    pit("loose", 3, 0.33),
    pit("firm", 1.5, 0.43),
    pit("firm", 3, 0.29),
    pit("gravel", 1.5, 0.34),
    pit("gravel", 3, 0.23),
    pit("clay", 1.5, 0.35),
    pit("boulder clay", 1.5, 0.28),
    pit("boulder clay", 3, 0.19),
    row(HandWork::Fill, "loose", 0, 0.1, 0.85),
    row(HandWork::Fill, "loose", 0.1, 0.2, 1.02),
    row(HandWork::Fill, "loose", 0.2, 0.3, 1.28),
    row(HandWork::Fill, "loose", 0.3, anyThickness, 1.69),
    row(HandWork::Fill, "clay", 0.1, 0.2, 0.92),
    row(HandWork::Fill, "clay", 0.2, 0.3, 1.16),
    row(HandWork::Fill, "clay", 0.3, anyThickness, 1.56),
    row(HandWork::Fill, "hoggin", 0, 0.1, 0.81),
    row(HandWork::Fill, "hoggin", 0.1, 0.2, 0.97),
    row(HandWork::Fill, "hoggin", 0.2, 0.3, 1.2),
    row(HandWork::Fill, "hoggin", 0.3, anyThickness, 1.61),
    row(HandWork::Fill, "hardcore", 0, 0.1, 0.71),
    row(HandWork::Fill, "hardcore", 0.1, 0.2, 0.84),
    row(HandWork::Fill, "hardcore", 0.3, anyThickness, 1.41),
    row(HandWork::Carry, "", 0, 10, 6.25),
    row(HandWork::Carry, "", 10, 20, 3.23),
};

struct Word {
    const char *en, *es;
};
constexpr Word works[] = {{"trench", "zanja"}, {"pit", "pozo"}, {"fill", "relleno"}, {"carry", "acarreo"}};
constexpr Word soils[] = {
    {"loose", "suelto"}, {"firm", "firme"},     {"clay", "arcilla"},    {"boulder clay", "arcilla con bolos"},
    {"gravel", "grava"}, {"hoggin", "zahorra"}, {"hardcore", "cascote"}};

// What a sentence allows: the words of this work.
Text soilsOf(HandWork work) {
    Text all;
    for (const Word& soil : soils) {
        const bool has = std::any_of(printed.begin(), printed.end(), [&](const HandOutput& one) {
            return one.work == work && std::string_view(one.soil) == soil.en;
        });
        if (!has) continue;
        if (!all.en.empty()) all += Text::same(", ");
        all += Text{soil.en, soil.es};
    }
    return all;
}

}  // namespace

std::span<const HandOutput> handOutputs() { return printed; }

HandWork handWorkNamed(std::string_view name) {
    const std::string asked = nameKey(name);
    const auto found = std::find_if(std::begin(works), std::end(works),
                                    [&](const Word& word) { return asked == word.en || asked == word.es; });
    if (found == std::end(works))
        throw Error(Error::Kind::BadArgument, "work", std::string(name),
                    {"trench, pit, fill, carry", "zanja, pozo, relleno, acarreo"});
    return static_cast<HandWork>(found - std::begin(works));
}

const HandOutput& handOutput(HandWork work, Length size, std::string_view soil) {
    requirePositive(size, "size");
    std::string asked = nameKey(soil);
    for (const Word& word : soils)
        if (asked == word.es) asked = word.en;
    if (asked.empty()) asked = work == HandWork::Fill ? "loose" : "firm";
    bool known = work == HandWork::Carry;
    Length deepest;
    for (const HandOutput& one : printed) {
        if (one.work != work) continue;
        deepest = std::max(deepest, one.upTo);
        if (work != HandWork::Carry && asked != one.soil) continue;
        known = true;
        // A depth typed in feet lies on a border where it is a hair over it.
        const Length hair = Length::millimetres(0.001);
        if (size > one.over + hair && size <= one.upTo + hair) return one;
    }
    if (!known) throw Error(Error::Kind::BadArgument, "soil", std::string(soil), soilsOf(work));
    if (size > deepest)
        throw Error(Error::Kind::BadArgument, "size", plain(size.feet(), 2) + " ft",
                    Text::same(plain(deepest.feet(), 1) + " ft (" + plain(deepest.metres(), 1) + " m)") +
                        Text{" at most", " como máximo"});
    throw Error(Error::Kind::NoSolution, "soil",
                Text{"No output was read for " + asked + " of this size.",
                     "No se leyó ningún rendimiento para ese suelo y tamaño."});
}

HandHours handHours(const HandOutput& output) {
    const double cubicMetres = output.perHour.cubicMetres();
    return {.perCubicYard = 0.764554857984 / cubicMetres, .perCubicMetre = 1 / cubicMetres};
}

}  // namespace trenchbook
