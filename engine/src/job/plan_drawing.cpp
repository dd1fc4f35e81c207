#include "trenchbook/job/plan_drawing.h"

#include <algorithm>
#include <cmath>

namespace trenchbook {
namespace {

// Sizes on paper.
constexpr Length treeRadius = Length::millimetres(3), wellRadius = Length::millimetres(1.6),
                 nodeRadius = Length::millimetres(0.9), arrowLength = Length::millimetres(2.6),
                 crossingLength = Length::millimetres(5), labelOff = Length::millimetres(1.6);

DrawingLayer layerOf(LotThing thing) {
    switch (thing) {
        case LotThing::Building:
            return DrawingLayer::Building;
        case LotThing::LotLine:
            return DrawingLayer::LotLine;
        case LotThing::Walk:
            return DrawingLayer::Walk;
        case LotThing::Drive:
            return DrawingLayer::Drive;
        case LotThing::Pool:
            return DrawingLayer::Pool;
        case LotThing::Septic:
            return DrawingLayer::Septic;
        case LotThing::Well:
            return DrawingLayer::Well;
        case LotThing::Tree:
            return DrawingLayer::Tree;
        case LotThing::Fence:
            return DrawingLayer::Fence;
        case LotThing::Pit:
            return DrawingLayer::Pit;
        default:
            return DrawingLayer::Mark;
    }
}
DrawingLayer layerOf(const Run& run) {
    if (run.existing) return DrawingLayer::PipeThere;
    const double size = run.pipe ? run.pipe->nominal : 0;
    return size < 6    ? DrawingLayer::PipeSmall
           : size <= 8 ? DrawingLayer::PipeMiddle
                       : DrawingLayer::PipeLarge;
}

class Drawer {
  public:
    Drawer(const Job& job, double scale, const std::vector<std::string>& tags)
        : job_(job), drawn_(job.drawn), scale_(scale), tags_(tags) {}

    PlanDrawing draw() {
        for (const LotShape& shape : drawn_.shapes) thing(shape);
        // Without a name: its tee's stands there.
        if (drawn_.pit && drawn_.pit->thing == LotThing::Pit && !listed())
            made_.strokes.push_back({.layer = DrawingLayer::Pit,
                                     .points = drawn_.pit->shape.corners,
                                     .closed = true,
                                     .name = drawn_.pit->name});
        for (std::size_t row = 0; row < drawn_.runs.size(); ++row) run(row);
        for (std::size_t row = 0; row < drawn_.nodes.size(); ++row) node(row);
        for (const Crossing& crossing : job_.crossings) crossed(crossing);
        return std::move(made_);
    }

  private:
    Length onLot(Length onPaper) const { return onPaper * scale_; }
    // The pit stands among the shapes where its corners are given.
    bool listed() const {
        for (const LotShape& shape : drawn_.shapes)
            if (shape.thing == LotThing::Pit) return true;
        return false;
    }

    void circle(DrawingLayer layer, const PlanPoint& at, Length radius, const std::string& name,
                int corners = 16) {
        PlanStroke stroke{.layer = layer, .closed = true, .name = name};
        for (int i = 0; i < corners; ++i)
            stroke.points.push_back(ahead(at, Angle::degrees(360.0 * i / corners), radius));
        made_.strokes.push_back(std::move(stroke));
    }
    void label(DrawingLayer layer, const PlanPoint& at, const std::string& text,
               PlanLabel::Names names = PlanLabel::Names::Point, std::vector<PlanPoint> of = {}) {
        if (of.empty()) of = {at};
        const PlanPoint corner = names == PlanLabel::Names::Point ? beside(at) : at;
        if (!text.empty()) made_.labels.push_back({layer, corner, text, names, std::move(of)});
    }
    PlanPoint beside(const PlanPoint& at) const {
        return {at.east + onLot(labelOff), at.north + onLot(labelOff)};
    }

    void thing(const LotShape& shape) {
        const DrawingLayer layer = layerOf(shape.thing);
        const std::vector<PlanPoint>& corners = shape.shape.corners;
        if (corners.empty()) return;
        if (corners.size() == 1) {
            const Length radius = shape.thing == LotThing::Tree   ? treeRadius
                                  : shape.thing == LotThing::Well ? wellRadius
                                                                  : nodeRadius;
            circle(layer, corners[0], onLot(radius), shape.name);
            label(layer, corners[0], shape.name);
            return;
        }
        made_.strokes.push_back({.layer = layer,
                                 .points = corners,
                                 .closed = corners.size() > 2 && shape.complete && !shape.shape.open,
                                 .name = shape.name});
        PlanPoint middle;
        for (const PlanPoint& corner : corners) {
            middle.east += corner.east / static_cast<double>(corners.size());
            middle.north += corner.north / static_cast<double>(corners.size());
        }
        if (shape.shape.filled)
            label(layer, middle, shape.name, PlanLabel::Names::Outline);
        else
            label(layer, corners[0], shape.name);
    }

    void run(std::size_t row) {
        const DrawnRun& is = drawn_.runs[row];
        if (!is.from || !is.to) return;
        const Run& typed = job_.runs[row];
        made_.strokes.push_back(
            {.layer = layerOf(typed), .points = {*is.from, *is.to}, .name = typed.from + "-" + typed.to});
        const Length far = distance(*is.from, *is.to), head = onLot(arrowLength);
        if (far < 2.5 * head) return;
        const PlanPoint middle{(is.from->east + is.to->east) / 2, (is.from->north + is.to->north) / 2};
        if (typed.pipe)
            label(layerOf(typed), middle, typed.pipe->name, PlanLabel::Names::Line, {*is.from, *is.to});
        const Angle way = azimuth(*is.from, *is.to);
        const PlanPoint tip = ahead(*is.from, way, far / 2 + head / 2);
        PlanStroke arrow{.layer = DrawingLayer::Flow, .name = typed.from + "-" + typed.to};
        for (const double side : {160.0, 0.0, -160.0})
            arrow.points.push_back(side == 0 ? tip : ahead(tip, way + Angle::degrees(side), head));
        made_.strokes.push_back(std::move(arrow));
    }

    void node(std::size_t row) {
        const PlacedPoint& is = drawn_.nodes[row].place;
        if (!is.placed()) return;
        circle(DrawingLayer::Node, *is.at, onLot(nodeRadius), job_.nodes[row].name, 8);
        const std::string tag = row < tags_.size() ? tags_[row] : "";
        label(DrawingLayer::Node, *is.at, job_.nodes[row].name + (tag.empty() ? "" : " ") + tag);
    }

    void crossed(const Crossing& crossing) {
        if (crossing.blank || !crossing.at) return;
        for (std::size_t row = 0; row < drawn_.runs.size(); ++row) {
            const DrawnRun& is = drawn_.runs[row];
            const bool same = nameKey(job_.runs[row].from) == nameKey(crossing.from) &&
                              nameKey(job_.runs[row].to) == nameKey(crossing.to);
            if (!same || !is.from || !is.to) continue;
            const Angle way = azimuth(*is.from, *is.to);
            const PlanPoint at = ahead(*is.from, way, *crossing.at);
            const Length half = onLot(crossingLength) / 2;
            made_.strokes.push_back({.layer = DrawingLayer::Crossing,
                                     .points = {ahead(at, way + Angle::degrees(60), half),
                                                ahead(at, way + Angle::degrees(240), half)},
                                     .name = crossing.what});
            label(DrawingLayer::Crossing, ahead(at, way + Angle::degrees(60), half), crossing.what);
            return;
        }
    }

    const Job& job_;
    const DrawnLot& drawn_;
    double scale_;
    const std::vector<std::string>& tags_;
    PlanDrawing made_;
};

}  // namespace

PlanDrawing drawingOf(const Job& job, double scale, const std::vector<std::string>& tags) {
    return Drawer(job, scale, tags).draw();
}

ScaledDrawing drawingFor(const Job& job, Length width, Length height, const std::vector<std::string>& tags) {
    // Signs reach a little beyond what they stand for: from the scale without them up to one that holds them.
    ScaledDrawing made{drawingOf(job, 0, tags), {}};
    made.paper = onPaper(made.drawing, width, height, job.units);
    for (int i = 0; i < 3; ++i) {
        made.drawing = drawingOf(job, made.paper.scale, tags);
        const PaperPlace next = onPaper(made.drawing, width, height, job.units);
        const bool holds = next.scale <= made.paper.scale;
        if (!holds || i == 0)
            made.paper =
                holds ? PaperPlace{made.paper.scale, made.paper.name, width, height, next.center} : next;
        if (holds) break;
    }
    return made;
}

}  // namespace trenchbook
