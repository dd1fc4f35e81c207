#include "job/label_places.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "trenchbook/layout/lettering.h"

namespace trenchbook {
namespace {

constexpr Length cellSize = Length::millimetres(8);
// Free paper around a word.
constexpr Length margin = Length::millimetres(0.5);
// How bad a word on a word is, against a line through it.
constexpr double onWord = 50, offPaper = 100;

PlanPoint turned(const PlanPoint& point, Angle by) {
    const double turn = by.degrees() * std::numbers::pi / 180, c = std::cos(turn), s = std::sin(turn);
    return {point.east * c - point.north * s, point.east * s + point.north * c};
}
PlanPoint moved(const PlanPoint& point, const PlanPoint& by) {
    return {point.east + by.east, point.north + by.north};
}

// Whether any of the segment lies in the box from the origin's margin on (Liang and Barsky).
bool cuts(const PlanPoint& a, const PlanPoint& b, Length wide, Length high) {
    double first = 0, last = 1;
    const auto clip = [&](double start, double step, double low, double top) {
        if (step == 0) return start >= low && start <= top;
        const double in = (low - start) / step, out = (top - start) / step;
        first = std::max(first, std::min(in, out));
        last = std::min(last, std::max(in, out));
        return first <= last;
    };
    return clip(a.east.si(), (b.east - a.east).si(), -margin.si(), (wide + margin).si()) &&
           clip(a.north.si(), (b.north - a.north).si(), -margin.si(), (high + margin).si());
}

}  // namespace

LabelPlaces::LabelPlaces(const std::vector<PlanStroke>& strokes, Length width, Length height,
                         Length letterHeight)
    : width_(width), height_(height), letter_(letterHeight) {
    across_ = static_cast<std::size_t>(width / cellSize) + 1;
    up_ = static_cast<std::size_t>(height / cellSize) + 1;
    cells_.resize(across_ * up_);
    for (const PlanStroke& stroke : strokes) {
        for (std::size_t i = 1; i < stroke.points.size(); ++i) add({stroke.points[i - 1], stroke.points[i]});
        if (stroke.closed && stroke.points.size() > 2) add({stroke.points.back(), stroke.points.front()});
    }
}

std::size_t LabelPlaces::cell(Length east, Length north) const {
    const auto at = [](Length where, std::size_t count) {
        return static_cast<std::size_t>(std::clamp(where / cellSize, 0.0, static_cast<double>(count) - 1));
    };
    return at(north, up_) * across_ + at(east, across_);
}

void LabelPlaces::add(const Segment& segment) {
    const auto [left, right] = std::minmax(segment.a.east, segment.b.east);
    const auto [low, high] = std::minmax(segment.a.north, segment.b.north);
    const std::size_t first = cell(left, low), last = cell(right, high);
    for (std::size_t row = first / across_; row <= last / across_; ++row)
        for (std::size_t column = first % across_; column <= last % across_; ++column)
            cells_[row * across_ + column].push_back(segments_.size());
    segments_.push_back(segment);
    seen_.push_back(0);
}

std::vector<LabelPlaces::Pose> LabelPlaces::poses(const PlanLabel& label, Length wide) const {
    std::vector<Pose> all;
    const Length gap = 0.8 * letter_;
    if (label.names == PlanLabel::Names::Line && label.of.size() == 2) {
        const PlanPoint &from = label.of[0], &to = label.of[1];
        double way = 90 - azimuth(from, to).degrees();  // counterclockwise from the right
        while (way > 90) way -= 180;
        while (way <= -90) way += 180;
        const Angle angle = Angle::degrees(way);
        const Length spare = distance(from, to) - wide;
        for (const double along : {0.5, 0.25, 0.75})
            for (const bool above : {true, false}) {
                const PlanPoint at{from.east + (to.east - from.east) * along,
                                   from.north + (to.north - from.north) * along};
                if (along != 0.5 && spare < wide) continue;
                const PlanPoint corner{-wide / 2, above ? gap : -gap - letter_};
                all.push_back({moved(at, turned(corner, angle)), angle, std::fabs(along - 0.5) / 10});
            }
        return all;
    }
    const PlanPoint& at = label.of.empty() ? label.at : label.of.front();
    if (label.names == PlanLabel::Names::Outline) {
        for (const double up : {0.0, 2.0, -2.0, 4.0, -4.0, 6.0, -6.0})
            for (const double right : {0.0, 3.0, -3.0, 6.0, -6.0})
                all.push_back({{at.east - wide / 2 + letter_ * right, at.north + letter_ * (up - 0.5)},
                               {},
                               (std::fabs(up) + std::fabs(right)) / 20});
        return all;
    }
    for (const double far : {1.0, 1.9, 3.2, 4.8}) {
        const Length off = gap * far;
        const Length right = at.east + off, left = at.east - off - wide, middle = at.east - wide / 2;
        const Length above = at.north + off, below = at.north - off - letter_, level = at.north - letter_ / 2;
        for (const PlanPoint& corner :
             {PlanPoint{right, above}, PlanPoint{left, above}, PlanPoint{right, below},
              PlanPoint{left, below}, PlanPoint{right, level}, PlanPoint{left, level},
              PlanPoint{middle, above}, PlanPoint{middle, below}})
            all.push_back({corner, {}, (far - 1) / 4});
    }
    return all;
}

double LabelPlaces::crossed(const Pose& pose, Length wide) const {
    const Angle back = Angle::degrees(-pose.turned.degrees());
    Length left = pose.corner.east, right = left, low = pose.corner.north, high = low;
    double bad = pose.dislike;
    for (const PlanPoint& corner : {PlanPoint{wide, {}}, PlanPoint{wide, letter_}, PlanPoint{{}, letter_}}) {
        const PlanPoint at = moved(pose.corner, turned(corner, pose.turned));
        left = std::min(left, at.east), right = std::max(right, at.east);
        low = std::min(low, at.north), high = std::max(high, at.north);
    }
    if (left < Length{} || low < Length{} || right > width_ || high > height_) bad += offPaper;
    const std::size_t first = cell(left - margin, low - margin), last = cell(right + margin, high + margin);
    ++question_;
    for (std::size_t row = first / across_; row <= last / across_; ++row)
        for (std::size_t column = first % across_; column <= last % across_; ++column)
            for (const std::size_t i : cells_[row * across_ + column]) {
                if (seen_[i] == question_) continue;
                seen_[i] = question_;
                const auto local = [&](const PlanPoint& point) {
                    return turned({point.east - pose.corner.east, point.north - pose.corner.north}, back);
                };
                if (cuts(local(segments_[i].a), local(segments_[i].b), wide, letter_))
                    bad += segments_[i].word ? onWord : 1;
            }
    return bad;
}

std::vector<PlanStroke> LabelPlaces::letters(const PlanLabel& label) {
    const Length wide = letteredWidth(label.text, letter_);
    const std::vector<Pose> tried = poses(label, wide);
    if (tried.empty()) return {};
    const Pose* best = &tried.front();
    double least = crossed(*best, wide);
    for (std::size_t n = 1; n < tried.size(); ++n)
        if (const double bad = crossed(tried[n], wide); bad < least) best = &tried[n], least = bad;
    // The kind of pipe is told where it hides nothing: it is the same along a whole line.
    if (label.names == PlanLabel::Names::Line && least >= 1) return {};
    Pose pose = *best;
    if (pose.turned.degrees() == 0) {
        pose.corner.east = std::clamp(pose.corner.east, Length{}, std::max(Length{}, width_ - wide));
        pose.corner.north = std::clamp(pose.corner.north, Length{}, std::max(Length{}, height_ - letter_));
    }
    std::vector<PlanStroke> strokes = lettered(label.text, {}, letter_, label.layer);
    for (PlanStroke& stroke : strokes) {
        stroke.name = "word";
        for (PlanPoint& point : stroke.points) point = moved(pose.corner, turned(point, pose.turned));
    }
    // Lines through its box and the paper around it stand for its letters, no farther apart than a word is high: the
    // next word in its line begins after a blank, and one below it is not taken for its end.
    for (const double up : {-0.4, 0.2, 0.8, 1.4})
        add({moved(pose.corner, turned({-letter_, letter_ * up}, pose.turned)),
             moved(pose.corner, turned({wide + letter_, letter_ * up}, pose.turned)), true});
    return strokes;
}

}  // namespace trenchbook
