#include "trenchbook/layout/drawing.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <span>

#include "trenchbook/core/error.h"

namespace trenchbook {
namespace {

// By how much the drawing may overrun the paper for rounding's sake.
constexpr double hair = 1e-9;

void requirePaper(Length side, const char* name) {
    requirePositive(side, name);
    requireBetween(side.metres(), 0, largestPaper.metres(), name);
}

}  // namespace

const char* layerName(DrawingLayer layer) {
    constexpr std::array<const char*, drawingLayerCount> names = {
        "BUILDING",   "LOT-LINE", "WALK", "DRIVE",    "POOL",       "SEPTIC",      "WELL",
        "TREE",       "FENCE",    "MARK", "PIT",      "PIPE-SMALL", "PIPE-MIDDLE", "PIPE-LARGE",
        "PIPE-THERE", "FLOW",     "NODE", "CROSSING", "GROUND",     "WATER",       "LEAST-COVER",
        "PLANNED",    "AS-LAID",  "GRID", "FRAME"};
    return names[static_cast<std::size_t>(layer)];
}

PlanPoint PaperPlace::of(const PlanPoint& onLot) const {
    return {width / 2 + (onLot.east - center.east) / scale,
            height / 2 + (onLot.north - center.north) / scale};
}
PlanPoint PaperPlace::back(const PlanPoint& onPaper) const {
    return {center.east + (onPaper.east - width / 2) * scale,
            center.north + (onPaper.north - height / 2) * scale};
}

double usualScale(double needed, UnitSystem units) {
    const bool metric = units == UnitSystem::Metric;
    // A drawing scale in the system's own count: feet to the inch, or the ratio.
    const double perCount = metric ? 1 : 12, asked = needed / perCount * (1 - hair);
    constexpr double feet[] = {5, 10, 20, 30, 40, 50, 60, 80}, ratios[] = {50, 100, 200, 250, 500};
    for (const double usual : metric ? std::span<const double>(ratios) : std::span<const double>(feet))
        if (usual >= asked) return usual * perCount;
    const double step = metric ? 1000 : 100;
    return std::max(step, std::ceil(asked / step) * step) * perCount;
}

std::string scaleName(double scale, UnitSystem units) {
    return units == UnitSystem::Metric ? "1:" + plain(scale, 0) : "1 in = " + plain(scale / 12, 1) + " ft";
}

PaperPlace onPaper(const PlanDrawing& drawing, Length width, Length height, UnitSystem units) {
    requirePaper(width, "width");
    requirePaper(height, "height");
    const PlanPoint* first = nullptr;
    for (const PlanStroke& stroke : drawing.strokes)
        if (!stroke.points.empty() && first == nullptr) first = &stroke.points.front();
    if (first == nullptr)
        throw Error(Error::Kind::BadArgument, "drawing", Text{"empty", "vacío"},
                    {"something with a place", "algo que tenga lugar"});
    PlanPoint low = *first, high = *first;
    for (const PlanStroke& stroke : drawing.strokes)
        for (const PlanPoint& point : stroke.points) {
            low = {std::min(low.east, point.east), std::min(low.north, point.north)};
            high = {std::max(high.east, point.east), std::max(high.north, point.north)};
        }
    const double needed = std::max((high.east - low.east) / width, (high.north - low.north) / height);
    PaperPlace paper{.width = width,
                     .height = height,
                     .center = {(low.east + high.east) / 2, (low.north + high.north) / 2}};
    paper.scale = usualScale(needed, units);
    paper.name = Text::same(scaleName(paper.scale, units));
    return paper;
}

}  // namespace trenchbook
