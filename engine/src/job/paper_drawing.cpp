// The drawing on its paper: words where they hide least, the scale bar and the arrow to the north below.
#include <algorithm>
#include <cmath>

#include "job/label_places.h"
#include "trenchbook/core/error.h"
#include "trenchbook/job/plan_drawing.h"
#include "trenchbook/layout/geojson.h"
#include "trenchbook/layout/lettering.h"

namespace trenchbook {
namespace {

constexpr Length letterHeight = Length::millimetres(2), barStrip = Length::millimetres(12);

void write(const std::string& says, const PlanPoint& at, std::vector<PlanStroke>& strokes) {
    for (PlanStroke& letter : lettered(says, at, letterHeight)) strokes.push_back(std::move(letter));
}

// The largest of 1, 2, 5, 10… that is not above this.
double roundedDown(double most) {
    const double ten = std::pow(10, std::floor(std::log10(most)));
    for (const double digit : {5.0, 2.0})
        if (digit * ten <= most) return digit * ten;
    return ten;
}

// Two steps of a round count: 0, 10, 20 ft at 1 in = 10 ft; 0, 5, 10 m at 1:200 and 1:250. The scale in words beside it.
void scaleBar(const PaperPlace& paper, UnitSystem units, std::vector<PlanStroke>& strokes) {
    const bool metric = units == UnitSystem::Metric;
    const double count = metric ? roundedDown(paper.scale / 40) : paper.scale / 12;
    const Length step = (metric ? Length::metres(count) : Length::feet(count)) / paper.scale;
    const Length low = Length::millimetres(1), high = Length::millimetres(3);
    for (int i = 0; i < 3; ++i) {
        const Length at = letterHeight + step * i;
        strokes.push_back({.layer = DrawingLayer::Frame, .points = {{at, low}, {at, high}}});
        write(plain(count * i, 2) + (i == 2 ? metric ? " m" : " ft" : ""),
              {at - letterHeight / 3, high + Length::millimetres(1)}, strokes);
    }
    strokes.push_back(
        {.layer = DrawingLayer::Frame, .points = {{letterHeight, low}, {letterHeight + 2.0 * step, low}}});
    write(paper.name.en, {letterHeight + 2.0 * step + Length::millimetres(16), low}, strokes);
}

// In the lower right corner, the whole arrow within the strip whatever its direction.
void northArrow(Angle north, Length width, std::vector<PlanStroke>& strokes) {
    const Length half = Length::millimetres(3.6);
    const PlanPoint middle{width - Length::millimetres(12), Length::millimetres(5)};
    const PlanPoint tip = ahead(middle, north, half), tail = ahead(middle, north, -half);
    const auto barb = [&](double side) {
        return ahead(tip, north + Angle::degrees(side), Length::millimetres(2.4));
    };
    strokes.push_back({.layer = DrawingLayer::Frame, .points = {tail, tip}, .name = "north"});
    strokes.push_back(
        {.layer = DrawingLayer::Frame, .points = {barb(155), tip, barb(-155)}, .name = "north"});
    write("N", {width - Length::millimetres(6), middle.north - letterHeight / 2}, strokes);
}

}  // namespace

std::optional<Angle> northOnDrawing(const Job& job, std::optional<Angle> typed) {
    if (typed) return typed;
    std::vector<GeoPoint> known;
    for (std::size_t row = 0; row < job.lotPoints.size() && row < job.drawn.points.size(); ++row) {
        const LotPoint& point = job.lotPoints[row];
        if (!point.blank && point.longitude && point.latitude && job.drawn.points[row].place.placed())
            known.push_back({*job.drawn.points[row].place.at, *point.longitude, *point.latitude});
    }
    if (known.size() < 2) return std::nullopt;
    try {
        return Angle::degrees(-geoFit(known).turned.degrees());
    } catch (const Error&) {
        return std::nullopt;  // all of them are one place
    }
}

PaperPlace paperOf(const Job& job, Length width, Length height) {
    return drawingFor(job, width, height - barStrip).paper;
}

std::vector<PlanStroke> paperStrokes(const Job& job, Length width, Length height, std::optional<Angle> north,
                                     const std::vector<std::string>& tags) {
    const ScaledDrawing made = drawingFor(job, width, height - barStrip, tags);
    const auto place = [&](const PlanPoint& onLot) {
        const PlanPoint paper = made.paper.of(onLot);
        return PlanPoint{paper.east, paper.north + barStrip};
    };
    std::vector<PlanStroke> strokes;
    for (const PlanStroke& stroke : made.drawing.strokes) {
        PlanStroke on{.layer = stroke.layer, .closed = stroke.closed, .name = stroke.name};
        for (const PlanPoint& point : stroke.points) on.points.push_back(place(point));
        strokes.push_back(std::move(on));
    }
    LabelPlaces words(strokes, width, height, letterHeight);
    // In front of all words: where there is no room for all of them, the last ones are left out.
    scaleBar(made.paper, job.units, strokes);
    if (const std::optional<Angle> arrow = northOnDrawing(job, north)) northArrow(*arrow, width, strokes);
    // Names of points have the first choice; along a line there is most room.
    for (const PlanLabel::Names names :
         {PlanLabel::Names::Point, PlanLabel::Names::Outline, PlanLabel::Names::Line})
        for (const PlanLabel& label : made.drawing.labels) {
            if (label.names != names) continue;
            PlanLabel on = label;
            on.at = place(label.at);
            for (PlanPoint& point : on.of) point = place(point);
            for (PlanStroke& letter : words.letters(on)) strokes.push_back(std::move(letter));
        }
    return strokes;
}

}  // namespace trenchbook
