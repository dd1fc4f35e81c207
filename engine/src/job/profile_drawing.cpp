#include "trenchbook/job/profile_drawing.h"

#include <algorithm>
#include <cmath>
#include <span>

#include "job/label_places.h"
#include "layout/paper_axes.h"
#include "trenchbook/core/error.h"
#include "trenchbook/layout/lettering.h"

namespace trenchbook {
namespace {

// Sizes on paper.
constexpr Length letter = Length::millimetres(2), leftStrip = Length::millimetres(15),
                 rightStrip = Length::millimetres(5), bottomStrip = Length::millimetres(13),
                 keyStrip = Length::millimetres(8), tierHigh = Length::millimetres(3.2),
                 sample = Length::millimetres(8), leastGrid = Length::millimetres(7),
                 leastStation = Length::millimetres(16), leastOval = Length::millimetres(0.5);

PlanPoint moved(const PlanPoint& point, Length right, Length up) {
    return {point.east + right, point.north + up};
}

// Round steps along the line, in the system's own unit.
std::span<const double> stationSteps(bool metric) {
    static constexpr double feet[] = {1, 2, 5, 10, 20, 50, 100, 200, 500},
                            metres[] = {0.5, 1, 2, 5, 10, 20, 50, 100, 200};
    return metric ? std::span<const double>(metres) : std::span<const double>(feet);
}
class Drawer {
  public:
    Drawer(const Job& job, const SolvedJob& solved, const ProfileAsked& asked)
        : job_(job), solved_(solved), asked_(asked), metric_(job.units == UnitSystem::Metric) {
        unit_ = info(Unit::Feet).si(job.units);
    }

    ProfileDrawing draw() {
        choose();
        if (rows_.empty()) return {};
        lengths();
        tiers();
        heights();
        for (const std::size_t row : rows_) ground(row), limit(row), pipe(row), water(row), plans(row);
        circles();
        leaders();
        words();
        nodeNames();
        axes();
        key();
        for (PlanStroke& stroke : made_.strokes)
            for (PlanPoint& point : stroke.points)
                point = moved(point, made_.origin.east, made_.origin.north);
        return std::move(made_);
    }

  private:
    const SolvedRun& run(std::size_t row) const { return solved_.runs[row]; }
    std::string in(const Text& text) const { return text.in(asked_.language); }

    // Runs of the line that have a place and a level, from the lower end uphill.
    void choose() {
        for (std::size_t row = 0; row < job_.runs.size(); ++row)
            if (!job_.runs[row].blank && nameKey(job_.runs[row].line) == nameKey(asked_.line) &&
                run(row).station && (run(row).invertUp || run(row).invertDown || run(row).groundUp))
                rows_.push_back(row);
        std::sort(rows_.begin(), rows_.end(), [&](std::size_t a, std::size_t b) {
            return run(a).station->place < run(b).station->place;
        });
    }
    void lengths() {
        DrawnSpan along;
        for (const std::size_t row : rows_)
            along.hold(run(row).station->down), along.hold(run(row).station->up);
        const Length room = asked_.width - leftStrip - rightStrip;
        requireRoom(room, asked_.width, "width");
        made_.first = Length::fromSi(along.least);
        last_ = Length::fromSi(along.most);
        made_.along = usualScale((along.most - along.least) / room.si(), job_.units);
    }
    void requireRoom(Length room, Length whole, const char* name) const {
        requireBetween(whole.metres(), 0, largestPaper.metres(), name);
        if (room < Length::millimetres(20))
            throw Error(Error::Kind::BadArgument, name, plain(whole.millimetres(), 1) + " mm",
                        {"more than its margins", "más que sus márgenes"});
    }

    struct Name {
        Length station;
        std::string text;
        std::size_t tier = 0;
        Length left = {};
    };
    Length right(Length station) const { return (station - made_.first) / made_.along; }
    Length high(Length level) const { return (level - made_.low) / made_.up; }
    PlanPoint at(Length station, Length level) const { return {right(station), high(level)}; }

    // Each name over its node, in the lowest tier where it touches no other.
    void tiers() {
        const auto add = [&](Length station, const std::string& text) {
            for (const Name& name : names_)
                if (nameKey(name.text) == nameKey(text)) return;
            names_.push_back({station, text});
        };
        for (const std::size_t row : rows_) {
            add(run(row).station->down, job_.runs[row].to);
            add(run(row).station->up, job_.runs[row].from);
        }
        std::vector<Length> ends;  // of each tier
        const Length most = asked_.width - leftStrip;
        for (Name& name : names_) {
            const Length wide = letteredWidth(name.text, letter);
            name.left = std::min(right(name.station) - wide / 2, most - wide);
            while (name.tier < ends.size() && name.left < ends[name.tier] + letter) ++name.tier;
            if (name.tier == ends.size()) ends.push_back({});
            ends[name.tier] = name.left + wide;
        }
        tiers_ = ends.size();
    }

    void heights() {
        DrawnSpan levels;
        for (const std::size_t row : rows_) {
            const SolvedRun& is = run(row);
            for (const auto& one :
                 {is.groundUp, is.groundDown, top(row, true), top(row, false), bottom(row, true),
                  bottom(row, false), limitAt(row, true), limitAt(row, false)})
                levels.hold(one);
            for (const GroundPoint& between : is.between) levels.hold(between.ground);
            if (is.water) levels.hold(is.water->levelUp), levels.hold(is.water->levelDown);
            for (const std::vector<RunEnds>* ends : {&asked_.planned, &asked_.laid})
                if (row < ends->size()) levels.hold((*ends)[row].up), levels.hold((*ends)[row].down);
        }
        for (std::size_t i = 0; i < solved_.crossings.size(); ++i)
            if (shown(i))
                levels.hold(solved_.crossings[i].itsTop), levels.hold(solved_.crossings[i].itsBottom);
        plotHigh_ = asked_.height - bottomStrip - keyStrip - tierHigh * static_cast<double>(tiers_);
        requireRoom(plotHigh_, asked_.height, "height");
        for (const double usual : heightScales(metric_)) {
            made_.up = metric_ ? usual : usual * 12;
            step_ = stepOf(levelSteps(metric_), leastGrid, made_.up, unit_);
            const double low = std::floor(levels.least / unit_ / step_ + 1e-9) * step_;
            made_.low = Length::fromSi(low * unit_);
            // With a letter's room above.
            if (high(Length::fromSi(levels.most)) <= plotHigh_ - letter) break;
        }
        made_.origin = {leftStrip, bottomStrip};
    }

    void stroke(DrawingLayer layer, std::vector<PlanPoint> points, bool closed = false) {
        if (points.size() > 1)
            made_.strokes.push_back({.layer = layer, .points = std::move(points), .closed = closed});
    }
    void write(const std::string& says, const PlanPoint& corner) {
        for (PlanStroke& one : lettered(says, corner, letter)) {
            one.name = says;
            made_.strokes.push_back(std::move(one));
        }
    }

    // Outsides of the pipe at an end.
    std::optional<Length> invert(std::size_t row, bool up) const {
        return up ? run(row).invertUp : run(row).invertDown;
    }
    std::optional<Length> top(std::size_t row, bool up) const {
        const std::optional<Length> is = invert(row, up);
        const std::optional<Pipe>& pipe = job_.runs[row].pipe;
        if (!is || !pipe) return std::nullopt;
        return *is + (pipe->outside ? invertToOutsideTop(*pipe) : pipe->bore);
    }
    std::optional<Length> bottom(std::size_t row, bool up) const {
        const std::optional<Length> is = invert(row, up);
        const std::optional<Pipe>& pipe = job_.runs[row].pipe;
        if (!is || !pipe) return is;
        return pipe->outside ? *is - wallOf(*pipe) : *is;
    }
    std::optional<Length> limitAt(std::size_t row, bool up) const {
        const std::optional<Length>& level = up ? run(row).groundUp : run(row).groundDown;
        const std::optional<Length>& cover = up ? run(row).coverAskedUp : run(row).coverAskedDown;
        return level && cover ? std::optional(*level - *cover) : std::nullopt;
    }
    Length station(std::size_t row, bool up) const {
        return up ? run(row).station->up : run(row).station->down;
    }

    // A line from end to end of a run where both are known.
    void straight(DrawingLayer layer, std::size_t row, std::optional<Length> down, std::optional<Length> up) {
        if (down && up) stroke(layer, {at(station(row, false), *down), at(station(row, true), *up)});
    }

    // Gaps where the ground is not known.
    void ground(std::size_t row) {
        std::vector<PlanPoint> points;
        const SolvedRun& is = run(row);
        if (is.groundDown) points.push_back(at(station(row, false), *is.groundDown));
        for (auto between = is.between.rbegin(); between != is.between.rend(); ++between)
            points.push_back(at(station(row, true) - between->at, between->ground));
        if (is.groundUp) points.push_back(at(station(row, true), *is.groundUp));
        stroke(DrawingLayer::Ground, std::move(points));
    }
    void limit(std::size_t row) {
        std::vector<std::pair<Length, Length>> points;  // station, level
        for (const bool up : {false, true})
            if (const std::optional<Length> level = limitAt(row, up))
                points.emplace_back(station(row, up), *level);
        for (std::size_t i = 0; i < solved_.shots.size(); ++i) {
            const SolvedShot& shot = solved_.shots[i];
            if (shot.run == row && job_.shots[i].ground && shot.coverAsked && job_.shots[i].at)
                points.emplace_back(station(row, true) - *job_.shots[i].at,
                                    *job_.shots[i].ground - *shot.coverAsked);
        }
        std::sort(points.begin(), points.end());
        std::vector<PlanPoint> line;
        for (const auto& [where, level] : points) line.push_back(at(where, level));
        stroke(DrawingLayer::Limit, std::move(line));
    }
    // Four sides of the band: outside top, crown, invert, outside bottom, closed at the run's ends.
    void pipe(std::size_t row) {
        const DrawingLayer layer =
            job_.runs[row].existing ? DrawingLayer::PipeThere : DrawingLayer::PipeMiddle;
        const auto topDown = top(row, false), topUp = top(row, true), lowDown = bottom(row, false),
                   lowUp = bottom(row, true);
        if (!topDown || !topUp || !lowDown || !lowUp) return;
        const Length down = station(row, false), up = station(row, true);
        stroke(layer, {at(down, *lowDown), at(up, *lowUp), at(up, *topUp), at(down, *topDown)}, true);
        straight(layer, row, invert(row, false), invert(row, true));
        const Length bore = job_.runs[row].pipe->bore;
        straight(layer, row, *invert(row, false) + bore, *invert(row, true) + bore);
    }
    void water(std::size_t row) {
        if (run(row).water)
            straight(DrawingLayer::Water, row, run(row).water->levelDown, run(row).water->levelUp);
    }
    // Only where they leave the inverts as typed by more than a hundredth of a foot shows.
    void plans(std::size_t row) {
        const auto line = [&](const std::vector<RunEnds>& ends, DrawingLayer layer) {
            if (row >= ends.size() || !ends[row].up || !ends[row].down) return;
            const auto apart = [&](bool up, Length level) {
                const std::optional<Length> typed = invert(row, up);
                return !typed || std::fabs((level - *typed).si()) > Length::feet(0.009).si();
            };
            if (apart(true, *ends[row].up) || apart(false, *ends[row].down))
                straight(layer, row, ends[row].down, ends[row].up);
        };
        line(asked_.planned, DrawingLayer::Planned);
        line(asked_.laid, DrawingLayer::Laid);
    }

    bool shown(std::size_t crossing) const {
        const SolvedCrossing& is = solved_.crossings[crossing];
        return std::find(rows_.begin(), rows_.end(), is.run) != rows_.end() && job_.crossings[crossing].at &&
               is.itsTop && is.itsBottom;
    }
    PlanPoint middle(std::size_t crossing) const {
        const SolvedCrossing& is = solved_.crossings[crossing];
        return at(station(is.run, true) - *job_.crossings[crossing].at, (*is.itsTop + *is.itsBottom) / 2);
    }
    void circles() {
        for (std::size_t i = 0; i < solved_.crossings.size(); ++i) {
            if (!shown(i)) continue;
            const Length across = *solved_.crossings[i].itsTop - *solved_.crossings[i].itsBottom;
            oval(middle(i), std::max(across / 2 / made_.along, leastOval),
                 std::max(across / 2 / made_.up, leastOval));
        }
    }
    void oval(const PlanPoint& center, Length wide, Length tall) {
        std::vector<PlanPoint> points;
        for (int i = 0; i < 16; ++i) {
            const double turn = i * 0.39269908169872414;  // a sixteenth of a turn
            points.push_back(moved(center, wide * std::cos(turn), tall * std::sin(turn)));
        }
        stroke(DrawingLayer::Crossing, std::move(points), true);
    }

    // From the pipe up to the name.
    void leaders() {
        for (const Name& name : names_) {
            std::optional<Length> from;
            for (const std::size_t row : rows_)
                for (const bool up : {false, true})
                    if (station(row, up) == name.station)
                        if (const std::optional<Length> level = top(row, up);
                            level && (!from || *level > *from))
                            from = level;
            const Length end = plotHigh_ + tierHigh * static_cast<double>(name.tier);
            stroke(DrawingLayer::Node,
                   {{right(name.station), from ? high(*from) : Length{}}, {right(name.station), end}});
        }
    }
    void nodeNames() {
        for (const Name& name : names_)
            write(name.text, {name.left, plotHigh_ + tierHigh * static_cast<double>(name.tier) +
                                             Length::millimetres(0.6)});
    }

    // Names of what crosses, then sizes and slopes, the longest stretch first.
    void words() {
        LabelPlaces places(made_.strokes, asked_.width - leftStrip, plotHigh_, letter);
        const auto put = [&](const PlanLabel& label) {
            std::vector<PlanStroke> letters = places.letters(label);
            for (PlanStroke& one : letters) {
                one.layer = DrawingLayer::Frame;
                one.name = label.text;
                made_.strokes.push_back(std::move(one));
            }
            return !letters.empty();
        };
        for (std::size_t i = 0; i < solved_.crossings.size(); ++i)
            if (shown(i)) put({.at = middle(i), .text = job_.crossings[i].what, .of = {middle(i)}});
        struct Stretch {
            std::size_t first, last;  // rows
            std::string text;
        };
        std::vector<Stretch> stretches;
        for (const std::size_t row : rows_) {
            if (!run(row).slope || !top(row, true) || !top(row, false)) continue;
            const Pipe& pipe = *job_.runs[row].pipe;
            const std::string size = !pipe.name.empty() ? pipe.name : sizeWithUnit(pipe);
            const std::string text = size + "  " + plain(run(row).slope->fraction() * 100, 2) + "%";
            if (!stretches.empty() && stretches.back().text == text &&
                station(stretches.back().last, true) == station(row, false))
                stretches.back().last = row;
            else
                stretches.push_back({row, row, text});
        }
        const auto far = [&](const Stretch& one) {
            return station(one.last, true) - station(one.first, false);
        };
        std::stable_sort(stretches.begin(), stretches.end(),
                         [&](const Stretch& a, const Stretch& b) { return far(a) > far(b); });
        for (const Stretch& one : stretches) {
            bool found = false;
            const auto along = [&](std::optional<Length> down, std::optional<Length> up, double off) {
                const Length by = letter * off;
                found = found || put({.text = one.text,
                                      .names = PlanLabel::Names::Line,
                                      .of = {moved(at(station(one.first, false), *down), {}, by),
                                             moved(at(station(one.last, true), *up), {}, by)}});
            };
            for (const double off : {0.0, -1.5, -3.0, -4.5})
                along(bottom(one.first, false), bottom(one.last, true), off);
            for (const double off : {0.0, 1.5, 3.0}) along(top(one.first, false), top(one.last, true), off);
            made_.leftOut += !found;
        }
    }

    void axes() {
        const Length wide = right(last_);
        const int decimals = decimalsOf(step_);
        const Length gap = Length::millimetres(1);
        for (int i = 0;; ++i) {
            const Length level = made_.low + Length::fromSi(i * step_ * unit_);
            if (high(level) > plotHigh_) break;
            stroke(DrawingLayer::Grid, {{-gap, high(level)}, {wide, high(level)}});
            char number[32];
            std::snprintf(number, sizeof number, "%.*f", decimals, level.si() / unit_);
            write(number, {-gap - letter / 2 - letteredWidth(number, letter), high(level) - letter / 2});
        }
        const double step = stepOf(stationSteps(metric_), leastStation, made_.along, unit_);
        for (double count = std::ceil(made_.first.si() / unit_ / step - 1e-9) * step;
             count * unit_ <= last_.si() + 1e-9; count += step) {
            const Length x = right(Length::fromSi(count * unit_));
            stroke(DrawingLayer::Grid, {{x, -gap}, {x, plotHigh_}});
            const std::string number = plain(count, 1);
            write(number, {x - letteredWidth(number, letter) / 2, -gap * 2 - letter});
        }
        // Under the numbers, what both axes count and their scales.
        const auto say = [&](const Text& us, const Text& metric, double scale) {
            return (metric_ ? metric : us).in(asked_.language) + ", " + scaleName(scale, job_.units);
        };
        const Text feet{"Feet from the outlet", "Pies desde la salida"},
            metres{"Meters from the outlet", "Metros desde la salida"},
            levelFeet{"Levels in feet", "Cotas en pies"}, levelMetres{"Levels in meters", "Cotas en metros"};
        write(say(feet, metres, made_.along) + ".  " + say(levelFeet, levelMetres, made_.up),
              {-leftStrip + gap, -bottomStrip + gap});
    }

    // A sample of each line that is drawn, with its word.
    void key() {
        const auto drawn = [&](DrawingLayer layer) {
            return std::any_of(made_.strokes.begin(), made_.strokes.end(),
                               [&](const PlanStroke& one) { return one.layer == layer; });
        };
        PlanPoint at{-leftStrip + Length::millimetres(1),
                     asked_.height - bottomStrip - letter - Length::millimetres(1)};
        const std::pair<DrawingLayer, Text> lines[] = {
            {DrawingLayer::Ground, {"Ground", "Terreno"}},
            {DrawingLayer::PipeMiddle, {"Pipe", "Tubo"}},
            {DrawingLayer::PipeThere, {"Pipe that is there", "Tubo que ya está"}},
            {DrawingLayer::Water, {"Water", "Agua"}},
            {DrawingLayer::Limit, {"Least cover", "Tapado mínimo"}},
            {DrawingLayer::Planned, {"Cheapest plan", "Plan más barato"}},
            {DrawingLayer::Laid, {"As laid", "Como quedó"}},
            {DrawingLayer::Crossing, {"Other lines", "Otras líneas"}}};
        for (const auto& [layer, text] : lines) {
            if (!drawn(layer)) continue;
            const PlanPoint level = moved(at, {}, letter / 2);
            if (layer == DrawingLayer::Crossing)
                oval(moved(level, sample / 2, {}), letter / 2, letter / 2);
            else if (layer == DrawingLayer::PipeMiddle || layer == DrawingLayer::PipeThere)
                stroke(layer, {at, moved(at, sample, {}), moved(at, sample, letter), moved(at, {}, letter)},
                       true);
            else
                stroke(layer, {level, moved(level, sample, {})});
            write(in(text), moved(at, sample + letter / 2, {}));
            at.east += sample + letteredWidth(in(text), letter) + letter * 3;
        }
    }

    const Job& job_;
    const SolvedJob& solved_;
    const ProfileAsked& asked_;
    bool metric_;
    double unit_ = 1, step_ = 1;
    Length last_ = {}, plotHigh_ = {};
    std::vector<std::size_t> rows_;
    std::vector<Name> names_;
    std::size_t tiers_ = 0;
    ProfileDrawing made_;
};

}  // namespace

PlanPoint ProfileDrawing::of(Length station, Length level) const {
    return {origin.east + (station - first) / along, origin.north + (level - low) / up};
}

ProfileDrawing profileOf(const Job& job, const SolvedJob& solved, const ProfileAsked& asked) {
    return Drawer(job, solved, asked).draw();
}

}  // namespace trenchbook
