#include "catalog/drawing_pens.h"

#include <algorithm>

namespace trenchbook::addin {
namespace {

constexpr std::size_t drawingRows = 250, profileRows = 220, pitRows = 260;
// Points nearer to each other than this are one to a chart.
constexpr Length oneDot = Length::millimetres(0.03);

// As many whole pairs of columns.
std::vector<PenStrip> pairs(std::size_t first, std::size_t count, std::size_t rows) {
    std::vector<PenStrip> strips;
    for (std::size_t pair = first; pair < first + count; ++pair) strips.push_back({pair, 0, rows});
    return strips;
}

std::size_t penOf(const PlanStroke& stroke, const std::vector<Pen>& pens) {
    for (std::size_t pen = 0; pen + 1 < pens.size(); ++pen)
        if (stroke.name != "word" && std::find(pens[pen].layers.begin(), pens[pen].layers.end(),
                                               stroke.layer) != pens[pen].layers.end())
            return pen;
    return pens.size() - 1;
}

// Fills the strips of one pen: a cell without a number behind each stroke, where a chart draws a gap. A line that
// begins where the last one ended goes on: a chart leaves out the second of two points of a series that lie in one
// place, whatever gap is between them, and with it the line from there. No stroke is cut where there is a next strip.
class PenStrokes {
  public:
    PenStrokes(const Pen& pen, Numbers& block) : pen_(pen), block_(block) {}

    void add(const PlanStroke& stroke) {
        if (stroke.points.empty()) return;
        bool goesOn = last_ != nullptr && distance(*last_, stroke.points.front()) < oneDot;
        const std::size_t points = stroke.points.size() + stroke.closed, gap = last_ != nullptr && !goesOn;
        if (used_ + gap + points - goesOn > pen_.strips[strip_].rows && strip_ + 1 < pen_.strips.size()) {
            ++strip_;
            used_ = 0;
            last_ = nullptr;
            goesOn = false;
        }
        if (last_ != nullptr && !goesOn) ++used_;
        for (std::size_t i = goesOn ? 1 : 0; i < points; ++i) {
            last_ = &stroke.points[i % stroke.points.size()];
            put(*last_);
        }
    }
    std::size_t left() const { return left_; }  // points without room

  private:
    void put(const PlanPoint& at) {
        const PenStrip& strip = pen_.strips[strip_];
        if (used_ >= strip.rows) {
            ++left_;
            return;
        }
        double* cells = &block_.items[(strip.first + used_++) * block_.columns + 2 * strip.pair];
        cells[0] = at.east.millimetres();
        cells[1] = at.north.millimetres();
    }

    const Pen& pen_;
    Numbers& block_;
    std::size_t strip_ = 0, used_ = 0, left_ = 0;
    const PlanPoint* last_ = nullptr;  // of a stroke that outlives this
};

}  // namespace

const Pens& drawingPens() {
    using enum DrawingLayer;
    static const Pens all = {15,
                             drawingRows,
                             {{"Buildings", {Building}, {{0, 0, 90}}},
                              {"Lot lines", {LotLine, Fence}, {{0, 90, 60}}},
                              {"Grounds", {Walk, Drive, Pool, Septic}, {{0, 150, 100}}},
                              {"Trees and wells", {Tree, Well, Mark}, {{1, 0, 150}}},
                              {"Small pipe", {PipeSmall}, {{1, 150, 100}}},
                              {"Middle pipe", {PipeMiddle}, {{2, 0, 110}}},
                              {"Large pipe", {PipeLarge}, {{2, 110, 70}}},
                              {"Pipe there", {PipeThere}, {{2, 180, 70}}},
                              {"Signs", {Flow, Node, Crossing, Pit}, pairs(3, 2, drawingRows)},
                              {"Words", {Frame}, pairs(5, 10, drawingRows)}}};
    return all;
}

const Pens& profilePens() {
    using enum DrawingLayer;
    static const Pens all = {13,
                             profileRows,
                             {{"Grid", {Grid}, {{0, 0, 70}}},
                              {"Ground", {Ground}, {{0, 70, 70}}},
                              {"Least cover", {Limit}, {{0, 140, 80}}},
                              {"Pipe there", {PipeThere}, {{1, 0, 80}}},
                              {"Water", {Water}, {{1, 80, 70}}},
                              {"Cheapest plan", {Planned}, {{1, 150, 70}}},
                              {"Pipe", {PipeMiddle}, pairs(2, 1, profileRows)},
                              {"As laid", {Laid}, {{3, 0, 70}}},
                              {"Other lines", {Crossing}, {{3, 70, 80}}},
                              {"Nodes", {Node}, {{3, 150, 70}}},
                              {"Words", {Frame}, pairs(4, 9, profileRows)}}};
    return all;
}

const Pens& pitPens() {
    using enum DrawingLayer;
    static const Pens all = {22,
                             pitRows,
                             {{"Axes", {Grid}, {{0, 0, pitRows}}},
                              {"Soil", {Node}, pairs(1, 2, pitRows)},
                              {"Ground", {Ground}, {{3, 0, 10}}},
                              {"Seasonal high water, top of rock", {Limit}, {{3, 10, 30}}},
                              {"Tee and pipe", {PipeMiddle}, {{3, 40, 20}}},
                              {"Rock", {Pit}, {{3, 60, 20}}},
                              {"Stones", {Mark}, pairs(5, 2, pitRows)},
                              {"Water", {Water}, {{3, 80, 100}}},
                              {"Soaked in", {Laid}, {{3, 180, 80}}},
                              {"Bubbled over", {Planned}, {{4, 0, 80}}},
                              {"Words", {Frame}, pairs(7, 15, pitRows)}}};
    return all;
}

std::string penColumns(const Pens& pens) {
    std::string text =
        std::to_string(pens.pairs) + " pairs of columns x (mm), y (mm); pair and rows of each pen: ";
    for (const Pen& pen : pens.pens) {
        const PenStrip &first = pen.strips.front(), &last = pen.strips.back();
        text += std::string(pen.name) + " " + std::to_string(first.pair + 1);
        if (last.pair > first.pair) text += " to " + std::to_string(last.pair + 1);
        text +=
            ": " + std::to_string(first.first + 1) + " to " + std::to_string(first.first + first.rows) + "; ";
    }
    return text + "x in the last row: how many points had no room";
}

Numbers penned(const std::vector<PlanStroke>& strokes, const Pens& pens) {
    const std::size_t columns = 2 * pens.pairs;
    Numbers block{.columns = columns, .items = std::vector<double>((pens.rows + 1) * columns, blankCell())};
    double left = 0;
    for (std::size_t pen = 0; pen < pens.pens.size(); ++pen) {
        PenStrokes drawn(pens.pens[pen], block);
        for (const PlanStroke& stroke : strokes)
            if (penOf(stroke, pens.pens) == pen) drawn.add(stroke);
        left += static_cast<double>(drawn.left());
    }
    block.items[pens.rows * columns] = left;
    return block;
}

}  // namespace trenchbook::addin
