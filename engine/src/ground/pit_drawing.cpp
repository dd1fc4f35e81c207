#include "trenchbook/ground/pit_drawing.h"

#include <algorithm>
#include <cmath>

#include "layout/paper_axes.h"
#include "trenchbook/core/error.h"
#include "trenchbook/layout/lettering.h"

namespace trenchbook {
namespace {

// Sizes on paper.
constexpr Length mm = Length::millimetres(1), letter = Length::millimetres(2),
                 leftStrip = Length::millimetres(13), bottomStrip = Length::millimetres(9),
                 side = Length::millimetres(11), leaderWide = Length::millimetres(6),
                 nameWide = Length::millimetres(52), curveLeft = Length::millimetres(14),
                 rightStrip = Length::millimetres(4), lineHigh = Length::millimetres(3.4),
                 leastGrid = Length::millimetres(7), leastTick = Length::millimetres(11);

PlanPoint moved(const PlanPoint& point, Length right, Length up) {
    return {point.east + right, point.north + up};
}

// The least of 1, 2 and 5 times a power of ten that is no less.
double roundStep(double least) {
    const double power = std::pow(10, std::floor(std::log10(least)));
    for (const double step : {1.0, 2.0, 5.0})
        if (step * power >= least * (1 - 1e-9)) return step * power;
    return 10 * power;
}
double hourStep(double least) {
    for (const double step : {0.1, 0.2, 0.5, 1.0, 2.0, 3.0, 6.0, 12.0, 24.0, 48.0, 96.0})
        if (step >= least) return step;
    return 96 * std::ceil(least / 96);
}

class Drawer {
  public:
    explicit Drawer(const PitSection& pit)
        : pit_(pit),
          metric_(pit.units == UnitSystem::Metric),
          unit_(info(Unit::Feet).si(pit.units)),
          top_(pit.ground - pit.soilOver),
          bottom_(top_ - pit.rockDepth) {}

    PitDrawing draw() {
        requirePositive(pit_.length, "length");
        requirePositive(pit_.rockDepth, "rock depth");
        requireBetween(pit_.soilOver.metres(), 0, 1000, "soil over");
        scales();
        soil();
        rock();
        tee();
        waters();
        axis();
        names();
        if (!pit_.course.empty()) curves();
        return std::move(made_);
    }

  private:
    std::string in(const Text& text) const { return text.in(pit_.language); }
    std::string level(Length value) const {
        char number[32];
        std::snprintf(number, sizeof number, "%.2f", value.si() / unit_);
        return number;
    }
    Length high(Length value) const { return made_.high(value); }
    Length right(Length along) const { return made_.origin.east + along / made_.along; }

    void stroke(DrawingLayer layer, std::vector<PlanPoint> points, bool closed = false) {
        made_.strokes.push_back({.layer = layer, .points = std::move(points), .closed = closed});
    }
    void write(const std::string& says, const PlanPoint& corner) {
        for (PlanStroke& one : lettered(says, corner, letter)) {
            one.name = says;
            made_.strokes.push_back(std::move(one));
        }
    }

    void scales() {
        const auto room = [](Length whole, Length margins, const char* name) {
            requireBetween(whole.metres(), 0, largestPaper.metres(), name);
            if (whole - margins < 40 * mm)
                throw Error(Error::Kind::BadArgument, name, plain(whole.millimetres(), 1) + " mm",
                            {"more than its margins", "más que sus márgenes"});
            return whole - margins;
        };
        // Section, names and curves share the width; without a storm the section has it all.
        const Length most =
            room(pit_.width, leftStrip + 2 * side + leaderWide + nameWide + rightStrip, "width");
        sectionRoom_ = pit_.course.empty() ? most : most * 0.45;
        const Length plotHigh = room(pit_.height, bottomStrip + lineHigh, "height");
        made_.along = usualScale(pit_.length / sectionRoom_, pit_.units);
        DrawnSpan levels;
        for (const std::optional<Length>& one :
             {std::optional(pit_.ground), std::optional(bottom_), pit_.rim, pit_.invert, pit_.highWater})
            levels.hold(one);
        for (const double usual : heightScales(metric_)) {
            made_.up = metric_ ? usual : usual * 12;
            step_ = stepOf(levelSteps(metric_), leastGrid, made_.up, unit_);
            // Some soil under the lowest.
            made_.low = Length::fromSi(std::floor((levels.least / unit_ / step_) - 0.5) * step_ * unit_);
            topOfPlot_ = (Length::fromSi(levels.most) - made_.low) / made_.up;
            if (topOfPlot_ <= plotHigh - 2 * letter) break;
        }
        made_.origin = {leftStrip + side, bottomStrip};
        sectionRight_ = right(pit_.length) + side;
    }

    // Ground, and strokes of soil around the rock.
    void soil() {
        const Length left = made_.origin.east - side;
        stroke(DrawingLayer::Ground, {{left, high(pit_.ground)}, {sectionRight_, high(pit_.ground)}});
        const auto dash = [&](Length x, Length y) {
            stroke(DrawingLayer::Node, {{x, y}, {x + 1.6 * mm, y + 1.6 * mm}});
        };
        int row = 0;
        for (Length y = bottomStrip + mm; y < high(pit_.ground) - 3 * mm; y += 5 * mm, ++row)
            for (const Length x : {left + 2 * mm, sectionRight_ - 6 * mm}) dash(x + (row % 2) * 2.5 * mm, y);
        const Length apart = std::max(12 * mm, (right(pit_.length) - made_.origin.east) / 7);
        const Length under = high(bottom_) - bottomStrip;
        row = 0;
        for (Length y = bottomStrip + mm; under > 4 * mm && y < high(bottom_) - 3 * mm; y += 9 * mm, ++row)
            for (Length x = made_.origin.east + 4 * mm + (row % 2) * 6 * mm; x < right(pit_.length) - 5 * mm;
                 x += apart)
                dash(x, y);
    }

    Length teeAt() const { return right(pit_.length / 4); }
    Length teeHalf() const {
        return std::max(pit_.outside.value_or(Length::fromSi(0.115)) / 2 / made_.along, 1 * mm);
    }

    // Its outline, and stones in staggered rows where neither tee nor pipe lies.
    void rock() {
        const Length x0 = made_.origin.east, x1 = right(pit_.length), y0 = high(bottom_), y1 = high(top_);
        stroke(DrawingLayer::Pit, {{x0, y0}, {x1, y0}, {x1, y1}, {x0, y1}}, true);
        const double area = (x1 - x0).millimetres() * (y1 - y0).millimetres();
        const Length pitch = std::max(4.5, std::sqrt(area / 60)) * mm, big = pitch * 0.34;
        int row = 0;
        for (Length y = y0 + pitch * 0.55; y + big < y1; y += pitch * 0.9, ++row) {
            int place = 0;
            for (Length x = x0 + pitch * (row % 2 == 0 ? 0.55 : 1.05); x + big < x1; x += pitch, ++place) {
                const bool atTee = x + big > teeAt() - teeHalf() - mm && x - big < teeAt() + teeHalf() + mm &&
                                   pit_.invert && y + big > high(*pit_.invert) - mm;
                const bool atPipe = x - big < teeAt() && pit_.invert && y + big > high(*pit_.invert) - mm &&
                                    y - big < high(*pit_.invert) + pipeHigh() + mm;
                if (atTee || atPipe) continue;
                // Corners of a stone: five, none like its neighbor's.
                std::vector<PlanPoint> stone;
                for (int corner = 0; corner < 5; ++corner) {
                    const double turn = (corner + 0.37 * ((row * 7 + place * 3) % 5)) * 1.2566370614359172,
                                 far = 0.8 + 0.2 * ((row + 2 * place + corner) % 2);
                    stone.push_back({x + big * (far * std::cos(turn)), y + big * (far * std::sin(turn))});
                }
                stroke(DrawingLayer::Mark, std::move(stone), true);
            }
        }
    }
    Length pipeHigh() const { return pit_.outside.value_or(Length::fromSi(0.115)) / made_.up; }

    // The pipe from the left, the tee upright to its rim.
    void tee() {
        if (!pit_.invert) return;
        const Length y = high(*pit_.invert), x = teeAt(), half = teeHalf(), left = made_.origin.east - side;
        const Length end = pit_.rim ? high(*pit_.rim) : y + pipeHigh();
        stroke(DrawingLayer::PipeMiddle, {{left, y},
                                          {x + half, y},
                                          {x + half, end},
                                          {x - half, end},
                                          {x - half, y + pipeHigh()},
                                          {left, y + pipeHigh()}});
        if (pit_.rim) stroke(DrawingLayer::PipeMiddle, {{x - half * 2, end}, {x + half * 2, end}});
    }

    void waterMark(DrawingLayer layer, Length x, Length y) {
        stroke(layer, {{x, y}, {x - 1.3 * mm, y + 2.2 * mm}, {x + 1.3 * mm, y + 2.2 * mm}}, true);
    }
    void waters() {
        const Length x0 = made_.origin.east, x1 = right(pit_.length);
        if (pit_.highest) {
            const Length y = high(bottom_ + *pit_.highest);
            stroke(DrawingLayer::Water, {{x0, y}, {x1, y}});
            waterMark(DrawingLayer::Water, x1 - 4 * mm, y);
        }
        if (pit_.highWater) {
            const Length y = high(*pit_.highWater);
            stroke(DrawingLayer::Limit, {{x0 - side, y}, {sectionRight_, y}});
            waterMark(DrawingLayer::Limit, x1 - 4 * mm, y);
        }
    }

    void axis() {
        const int decimals = decimalsOf(step_);
        const Length x = made_.origin.east - side;
        for (int i = 0;; ++i) {
            const Length value = made_.low + Length::fromSi(i * step_ * unit_), y = high(value);
            if (y > bottomStrip + topOfPlot_ + 0.01 * mm) break;
            stroke(DrawingLayer::Grid, {{x - mm, y}, {x, y}});
            char number[32];
            std::snprintf(number, sizeof number, "%.*f", decimals, value.si() / unit_);
            write(number, {x - 2 * mm - letteredWidth(number, letter), y - letter / 2});
        }
        stroke(DrawingLayer::Grid, {{x, bottomStrip}, {x, bottomStrip + topOfPlot_}});
        const Text feet{"Levels in feet, ", "Cotas en pies, "},
            metres{"Levels in meters, ", "Cotas en metros, "}, lengths{".  Lengths ", ".  Largos "};
        write(in((metric_ ? metres : feet) + Text::same(scaleName(made_.up, pit_.units)) + lengths +
                 Text::same(scaleName(made_.along, pit_.units))),
              {mm, mm});
    }

    // Levels with their names to the right of the section, from the highest down.
    void names() {
        struct Name {
            Length level;
            std::string text;
            Length y = {};
        };
        std::vector<Name> all;
        const auto add = [&](std::optional<Length> value, const Text& text) {
            if (value) all.push_back({*value, in(text) + " " + level(*value)});
        };
        add(pit_.rim, {"Rim of the tee", "Borde de la te"});
        add(pit_.ground, {"Ground", "Terreno"});
        add(top_, {"Top of rock", "Tope de piedra"});
        add(pit_.invert, {"Pipe comes in", "Entra el tubo"});
        if (pit_.highest) add(bottom_ + *pit_.highest, {"Highest water", "Agua más alta"});
        add(bottom_, {"Bottom", "Fondo"});
        add(pit_.highWater, {"Seasonal high water", "Nivel freático alto"});
        std::stable_sort(all.begin(), all.end(),
                         [](const Name& a, const Name& b) { return a.level > b.level; });
        const Length ceiling = pit_.height - letter - mm;
        for (std::size_t i = 0; i < all.size(); ++i)
            all[i].y = std::min(high(all[i].level) - letter / 2, i == 0 ? ceiling : all[i - 1].y - lineHigh);
        // Those that came too low push the ones above them up again.
        for (std::size_t i = all.size(); i-- > 0;)
            all[i].y = std::max(all[i].y, i + 1 == all.size() ? bottomStrip : all[i + 1].y + lineHigh);
        for (const Name& name : all) {
            stroke(DrawingLayer::Grid, {{sectionRight_, high(name.level)},
                                        {sectionRight_ + leaderWide - mm, name.y + letter / 2}});
            write(name.text, {sectionRight_ + leaderWide, name.y});
        }
    }

    struct Curve {
        DrawingLayer layer;
        Text says;
        std::vector<std::pair<double, double>> points;  // hours, in the unit of its axis
    };
    // Curves over the hours on a rectangle, its key over it.
    void panel(const PlanPoint& corner, Length wide, Length tall, const Text& counts,
               const std::vector<Curve>& curves) {
        double hours = 0, most = 0;
        for (const Curve& curve : curves)
            for (const auto& [x, y] : curve.points) hours = std::max(hours, x), most = std::max(most, y);
        if (hours <= 0) return;
        if (most <= 0) most = 1;
        const double step = roundStep(most * (leastGrid / tall)), hour = hourStep(hours * (leastTick / wide));
        const double topmost = std::ceil(most / step - 1e-9) * step;
        const auto at = [&](double x, double y) {
            return PlanPoint{corner.east + wide * (x / hours), corner.north + tall * (y / topmost)};
        };
        const int decimals = decimalsOf(step);
        for (int i = 0; i * step <= topmost * (1 + 1e-9); ++i) {
            const double y = i * step;
            stroke(DrawingLayer::Grid, {moved(at(0, y), -1 * mm, {}), at(hours, y)});
            char number[32];
            std::snprintf(number, sizeof number, "%.*f", decimals, y);
            write(number, moved(at(0, y), -2 * mm - letteredWidth(number, letter), -letter / 2));
        }
        for (int i = 0; i * hour <= hours * (1 + 1e-9); ++i) {
            const double x = i * hour;
            stroke(DrawingLayer::Grid, {moved(at(x, 0), {}, -1 * mm), at(x, topmost)});
            const std::string number = plain(x, 1);
            write(number, moved(at(x, 0), -letteredWidth(number, letter) / 2, -2 * mm - letter));
        }
        write(in({"Hours after the storm begins", "Horas desde que empieza la tormenta"}),
              moved(corner, {}, -2 * mm - letter - lineHigh));
        write(in(counts), moved(corner, -curveLeft + mm, tall + 2 * mm + lineHigh));
        PlanPoint key = moved(corner, {}, tall + 1.5 * mm);
        for (const Curve& curve : curves) {
            stroke(curve.layer, {moved(key, {}, letter / 2), moved(key, 6 * mm, letter / 2)});
            write(in(curve.says), moved(key, 7 * mm, {}));
            key.east += 11 * mm + letteredWidth(in(curve.says), letter);
            std::vector<PlanPoint> line;
            for (const auto& [x, y] : curve.points) line.push_back(at(x, y));
            stroke(curve.layer, std::move(line));
        }
    }

    void curves() {
        const double cubic = info(Unit::CubicFeet).si(pit_.units);
        Curve water{DrawingLayer::Water, {"Water", "Agua"}, {{0, 0}}},
            soaked{DrawingLayer::Laid, {"Soaked in", "Infiltrada"}, {{0, 0}}},
            over{DrawingLayer::Planned, {"Bubbled over", "Rebosada"}, {{0, 0}}},
            full{DrawingLayer::Limit, {"Top of rock", "Tope de piedra"}, {}};
        for (const PitMoment& moment : pit_.course) {
            const double hours = moment.at.hours();
            water.points.emplace_back(hours, moment.water.si() / unit_);
            soaked.points.emplace_back(hours, moment.soaked.si() / cubic);
            over.points.emplace_back(hours, moment.over.si() / cubic);
        }
        const double last = pit_.course.back().at.hours(), rock = pit_.rockDepth.si() / unit_;
        full.points = {{0, rock}, {last, rock}};
        const Length left = sectionRight_ + leaderWide + nameWide + curveLeft,
                     wide = pit_.width - rightStrip - left;
        const Length half = (pit_.height - 2 * mm) / 2, margins = 2 * lineHigh + 3 * mm;  // above each
        const Length under = 2 * mm + letter + lineHigh + mm;
        const auto each = [&](Length base, const Text& counts, const std::vector<Curve>& drawn) {
            panel({left, base + under}, wide, half - under - margins, counts, drawn);
        };
        const auto of = [&](Unit unit) { return info(unit).written(pit_.units); };
        each(half + 2 * mm, Text{"Water over the bottom, ", "Agua sobre el fondo, "} + of(Unit::Feet),
             {water, full});
        each({}, Text{"Water so far, ", "Agua hasta entonces, "} + of(Unit::CubicFeet), {soaked, over});
    }

    const PitSection& pit_;
    bool metric_;
    double unit_, step_ = 1;
    Length top_, bottom_, sectionRoom_ = {}, sectionRight_ = {}, topOfPlot_ = {};
    PitDrawing made_;
};

}  // namespace

PitDrawing pitDrawing(const PitSection& pit) { return Drawer(pit).draw(); }

}  // namespace trenchbook
