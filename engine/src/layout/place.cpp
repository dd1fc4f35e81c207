// First places: point after point where two tapes meet, or one and a turn. Where two tapes leave two places,
// both are followed until something tells them apart.
#include <algorithm>
#include <cmath>
#include <limits>
#include <map>
#include <numeric>

#include "layout/plan_geometry.h"
#include "layout/plan_parts.h"
#include "trenchbook/layout/ties.h"

namespace trenchbook::layout {
namespace {

// Costs are misfits over their usual error, summed; a wild one counts no more than this.
constexpr double worstTape = 40, worstTurn = 6;
constexpr double throughWall = 8, wrongSide = 100;
// A choice that costs this much more than another is settled.
constexpr double settled = 4;
constexpr double followed = 12;  // dearer ones are not followed
constexpr std::size_t mostFollowed = 32;
// Metres: nearer places are one; a tape this far inside a wall does not go through it.
constexpr double samePlace = 0.1, skin = 0.1;
constexpr std::size_t mostPaired = 6;  // tapes of one point that are paired for a first place

struct Candidate {
    Vec at;
    double cost = 0;
};

// One way to place the points of a group.
struct State {
    std::vector<Vec> at;  // by place in the group
    double cost = 0;
    std::map<std::size_t, Vec> others;  // points that may as well lie elsewhere
};

class Placer {
  public:
    Placer(const PlanNet& net, PlacedPlan& plan) : net_(net), plan_(plan) {
        const std::size_t count = net.points.size();
        tapesOf_.resize(count);
        turnsOf_.resize(count);
        ready_.resize(count);
        inGroup_.assign(count, none);
        isCorner_.assign(count, false);
        for (std::size_t i = 0; i < net.tapes.size(); ++i)
            for (const std::size_t point : ends(net.tapes[i])) tapesOf_[point].push_back(i);
        for (std::size_t i = 0; i < net.turns.size(); ++i)
            for (const std::size_t point : {net.turns[i].before, net.turns[i].at, net.turns[i].after})
                turnsOf_[point].push_back(i);
        for (const auto& corners : net.buildings)
            for (const std::size_t corner : corners) isCorner_[corner] = true;
        done_.assign(count, false);
        for (std::size_t i = 0; i < count; ++i) {
            if (!net.points[i].fixed || !net.points[i].at) continue;
            plan.points[i].by = PlacedBy::Hand;
            plan.points[i].at = net.points[i].at;
            done_[i] = true;
        }
    }

    void run() {
        for (const std::vector<std::size_t>& group : groups()) placeGroup(group);
        for (std::size_t i = 0; i < net_.points.size(); ++i) plan_.points[i].known = anchors(i).size();
    }

  private:
    static constexpr std::size_t none = static_cast<std::size_t>(-1);

    static std::vector<std::size_t> ends(const PlanTape& tape) {
        std::vector<std::size_t> points = {tape.from, tape.to};
        if (tape.wallEnd) points.push_back(*tape.wallEnd);
        return points;
    }

    // Points that tapes join without passing through a typed one; those with corners of buildings first.
    std::vector<std::vector<std::size_t>> groups() const {
        std::vector<std::size_t> root(net_.points.size());
        std::iota(root.begin(), root.end(), 0);
        const auto find = [&](std::size_t i) {
            while (root[i] != i) i = root[i] = root[root[i]];
            return i;
        };
        for (const PlanTape& tape : net_.tapes) {
            std::size_t first = none;
            for (const std::size_t point : ends(tape)) {
                if (done_[point]) continue;
                if (first == none) first = point;
                root[find(point)] = find(first);
            }
        }
        std::map<std::pair<bool, std::size_t>, std::vector<std::size_t>> found;
        std::vector<bool> corners(net_.points.size(), false);
        for (std::size_t i = 0; i < root.size(); ++i)
            if (isCorner_[i] && !done_[i]) corners[find(i)] = true;
        for (std::size_t i = 0; i < root.size(); ++i)
            if (!done_[i]) found[{!corners[find(i)], find(i)}].push_back(i);
        std::vector<std::vector<std::size_t>> groups;
        for (auto& [key, points] : found) groups.push_back(std::move(points));
        return groups;
    }

    Vec at(const State& state, std::size_t point) const {
        return inGroup_[point] != none ? state.at[inGroup_[point]] : vec(*plan_.points[point].at);
    }

    // Tapes of a point whose other ends have a place.
    std::vector<std::size_t> anchors(std::size_t point) const {
        std::vector<std::size_t> ready;
        for (const std::size_t i : tapesOf_[point]) {
            bool all = true;
            for (const std::size_t end : ends(net_.tapes[i])) all = all && (end == point || done_[end]);
            if (all) ready.push_back(i);
        }
        return ready;
    }
    // Of its anchors those that lead to different points or walls.
    std::size_t different(std::size_t point, const std::vector<std::size_t>& ready) const {
        std::vector<std::vector<std::size_t>> seen;
        for (const std::size_t i : ready) {
            std::vector<std::size_t> others = ends(net_.tapes[i]);
            std::erase(others, point);
            std::sort(others.begin(), others.end());
            if (std::find(seen.begin(), seen.end(), others) == seen.end()) seen.push_back(std::move(others));
        }
        return seen.size();
    }

    // Of a point not placed yet; counted anew when one that it is taped to gets its place.
    struct Ready {
        std::size_t tapes = 0, different = 0;
    };
    void count(std::size_t point) {
        const std::vector<std::size_t> ready = anchors(point);
        ready_[point] = {ready.size(), different(point, ready)};
    }

    void placeGroup(const std::vector<std::size_t>& group) {
        for (std::size_t i = 0; i < group.size(); ++i) inGroup_[group[i]] = i;
        std::vector<State> states(1);
        states.front().at.resize(group.size());
        std::vector<std::size_t> tried(group.size(), 0);
        std::map<std::size_t, std::vector<std::size_t>> from;  // the tapes that placed a point
        std::vector<std::size_t> order;
        for (const std::size_t point : group) count(point);
        for (;;) {
            const auto [next, byTurn] = choose(group, tried);
            if (next == none) break;
            const std::vector<std::size_t> ready = anchors(next);
            tried[inGroup_[next]] = ready.size() + 1;
            std::vector<State> more = placed(states, next, ready, byTurn);
            if (more.empty()) continue;
            states = std::move(more);
            done_[next] = true;
            plan_.points[next].by = byTurn ? PlacedBy::Turn : PlacedBy::Tapes;
            from[next] = ready;
            order.push_back(next);
            for (const std::size_t i : tapesOf_[next])
                for (const std::size_t end : ends(net_.tapes[i]))
                    if (!done_[end]) count(end);
            thin(states, group);
            std::fill(tried.begin(), tried.end(), 0);
        }
        finish(states, group, order, from);
        for (const std::size_t point : group) inGroup_[point] = none;
    }

    // The next point to place: most tapes first; a turn only where no point has two.
    std::pair<std::size_t, bool> choose(const std::vector<std::size_t>& group,
                                        const std::vector<std::size_t>& tried) const {
        std::size_t best = none, most = 1, byTurn = none;
        for (const std::size_t point : group) {
            if (done_[point]) continue;
            const Ready& ready = ready_[point];
            if (ready.tapes == 0 || tried[inGroup_[point]] == ready.tapes + 1) continue;
            if (ready.different > most) most = ready.different, best = point;
            if (ready.different == 1 && byTurn == none && turnsReady(point)) byTurn = point;
        }
        return best != none ? std::pair{best, false} : std::pair{byTurn, true};
    }
    bool turnsReady(std::size_t point) const {
        for (const std::size_t i : turnsOf_[point]) {
            const PlanTurn& turn = net_.turns[i];
            if (point == turn.after && done_[turn.at] && done_[turn.before]) return true;
            if (point == turn.before && done_[turn.at] && done_[turn.after]) return true;
        }
        return false;
    }

    std::vector<State> placed(std::vector<State>& states, std::size_t point,
                              const std::vector<std::size_t>& ready, bool byTurn) {
        std::vector<State> more;
        done_[point] = true;  // turns and sides that it completes are counted
        for (State& state : states) {
            const std::vector<Candidate> found = candidates(state, point, ready, byTurn);
            for (std::size_t i = 0; i < found.size(); ++i) {
                more.push_back(i + 1 == found.size() ? std::move(state) : state);
                more.back().at[inGroup_[point]] = found[i].at;
                more.back().cost += found[i].cost;
            }
        }
        done_[point] = false;
        return more;
    }

    std::vector<Candidate> candidates(State& state, std::size_t point, const std::vector<std::size_t>& ready,
                                      bool byTurn) const {
        std::vector<Vec> places;
        if (byTurn) {
            ways(state, point, ready, places);
        } else {
            const std::size_t count = std::min(ready.size(), mostPaired);
            for (std::size_t i = 0; i < count; ++i)
                for (std::size_t j = i + 1; j < count; ++j)
                    meet(state, point, net_.tapes[ready[i]], net_.tapes[ready[j]], places);
        }
        std::vector<Candidate> found;
        double worst = 0;
        for (const Vec place : places) {
            state.at[inGroup_[point]] = place;
            settle(state, point, ready);
            found.push_back({state.at[inGroup_[point]], cost(state, point, ready)});
        }
        std::sort(found.begin(), found.end(),
                  [](const Candidate& a, const Candidate& b) { return a.cost < b.cost; });
        std::vector<Candidate> kept;
        for (const Candidate& one : found) {
            if (!kept.empty() && one.cost > kept.front().cost + followed) break;
            bool same = false;
            for (const Candidate& other : kept)
                same = same || size(one.at - other.at) < std::max(samePlace, 2 * worst);
            if (same) continue;
            if (kept.empty()) {
                state.at[inGroup_[point]] = one.at;
                for (const std::size_t i : ready)
                    worst = std::max(worst, std::fabs(misfit(state, net_.tapes[i])));
            }
            kept.push_back(one);
        }
        return kept;
    }

    // Moves a point to where its own tapes fit best, so that one place found from several pairs of tapes is
    // one: least squares with the weight of a wild tape taken down to its misfit, not the misfit's square.
    void settle(State& state, std::size_t point, const std::vector<std::size_t>& ready) const {
        if (ready.size() < 3) return;
        Vec& place = state.at[inGroup_[point]];
        for (int step = 0; step < 12; ++step) {
            double xx = 0, xy = 0, yy = 0;
            Vec right;
            for (const std::size_t i : ready) {
                const PlanTape& tape = net_.tapes[i];
                if (tape.wallEnd && tape.to != point) continue;
                const double error = tape.error.si(), miss = misfit(state, tape) / error;
                const double weight = 1 / std::max(1.0, std::fabs(miss) / 2) / (error * error);
                const Vec way = tape.wallEnd ? fromWall(state, tape)
                                             : place - at(state, tape.from == point ? tape.to : tape.from);
                if (!(size(way) > 0)) continue;
                const Vec unit = 1 / size(way) * way;
                xx += weight * unit.x * unit.x;
                xy += weight * unit.x * unit.y;
                yy += weight * unit.y * unit.y;
                right = right + weight * miss * error * unit;
            }
            const double whole = xx * yy - xy * xy;
            if (!(whole > 1e-9 * xx * yy)) return;
            const Vec move = 1 / whole * Vec{yy * right.x - xy * right.y, xx * right.y - xy * right.x};
            place = place + std::min(1.0, 10 / size(move)) * move;
            if (size(move) < 1e-4) return;
        }
    }
    // Square away from a wall.
    Vec fromWall(const State& state, const PlanTape& tape) const {
        const Vec start = at(state, tape.from), wall = at(state, *tape.wallEnd) - start;
        const double side = cross(wall, at(state, tape.to) - start) < 0 ? -1 : 1;
        return side * Vec{-wall.y, wall.x};
    }

    // Where two tapes to one point meet.
    void meet(const State& state, std::size_t point, const PlanTape& a, const PlanTape& b,
              std::vector<Vec>& places) const {
        const bool wallA = a.wallEnd && a.to == point, wallB = b.wallEnd && b.to == point;
        // A wall that ends at the point to be placed helps once it stands.
        if ((a.wallEnd && !wallA) || (b.wallEnd && !wallB)) return;
        const auto center = [&](const PlanTape& tape) {
            return at(state, tape.from == point ? tape.to : tape.from);
        };
        if (!wallA && !wallB) {
            const PlanPoint first = layout::point(center(a)), second = layout::point(center(b));
            if (!(distance(first, second) > Length{})) return;
            const TwoPlaces two = twoTies(first, a.length, second, b.length);
            places.push_back(vec(two.left));
            if (!(two.left == two.right)) places.push_back(vec(two.right));
            return;
        }
        const PlanTape& wall = wallA ? a : b;
        const PlanTape& other = wallA ? b : a;
        const Vec start = at(state, wall.from), along = at(state, *wall.wallEnd) - start;
        if (!(size(along) > 0)) return;
        const Vec unit = 1 / size(along) * along, square = {-unit.y, unit.x};
        for (const double side : {1.0, -1.0}) {
            if (side < 0 && wall.length == Length{}) continue;
            const Vec base = start + side * wall.length.si() * square;
            if (wallA && wallB) {
                const Vec start2 = at(state, other.from), along2 = at(state, *other.wallEnd) - start2;
                if (!(size(along2) > 0)) return;
                const Vec unit2 = 1 / size(along2) * along2, square2 = {-unit2.y, unit2.x};
                const double turned = cross(unit, unit2);
                if (std::fabs(turned) < 0.05) continue;
                for (const double side2 : {1.0, -1.0})
                    places.push_back(base +
                                     cross(start2 + side2 * other.length.si() * square2 - base, unit2) /
                                         turned * unit);
                continue;
            }
            const Vec middle = center(other);
            const double foot = dot(middle - base, unit), off = size(middle - (base + foot * unit));
            const double reach = other.length.si();
            const double half = reach > off ? std::sqrt((reach - off) * (reach + off)) : 0;
            places.push_back(base + (foot + half) * unit);
            if (half > 0) places.push_back(base + (foot - half) * unit);
        }
    }

    // One tape, the way the line goes.
    void ways(const State& state, std::size_t point, const std::vector<std::size_t>& ready,
              std::vector<Vec>& places) const {
        for (const std::size_t i : turnsOf_[point]) {
            const PlanTurn& turn = net_.turns[i];
            const bool on = turn.after == point;
            const std::size_t behind = on ? turn.before : turn.after;
            if (turn.at == point || !done_[turn.at] || !done_[behind]) continue;
            for (const std::size_t j : ready) {
                const PlanTape& tape = net_.tapes[j];
                if (tape.wallEnd || (tape.from != turn.at && tape.to != turn.at)) continue;
                const double straight =
                    azimuth(layout::point(at(state, behind)), layout::point(at(state, turn.at))).degrees();
                for (const double side : {1.0, -1.0}) {
                    const double way = (straight + side * turn.turn.degrees()) * perDegree;
                    places.push_back(at(state, turn.at) +
                                     tape.length.si() * Vec{std::sin(way), std::cos(way)});
                }
            }
        }
    }

    double misfit(const State& state, const PlanTape& tape) const {
        const Vec from = at(state, tape.from), to = at(state, tape.to);
        if (!tape.wallEnd) return tape.length.si() - size(to - from);
        const Vec wall = at(state, *tape.wallEnd) - from;
        return tape.length.si() - std::fabs(cross(wall, to - from)) / size(wall);
    }

    // What the tapes, turns, buildings and the side told say against a point's place.
    double cost(const State& state, std::size_t point, const std::vector<std::size_t>& ready) const {
        double sum = 0;
        for (const std::size_t i : ready)
            sum += std::min(std::fabs(misfit(state, net_.tapes[i])) / net_.tapes[i].error.si(), worstTape);
        for (const std::size_t i : turnsOf_[point]) sum += turnCost(state, net_.turns[i]);
        if (const std::optional<PlanSide>& side = net_.points[point].side;
            side && done_[side->from] && done_[side->to]) {
            const Vec base = at(state, side->from);
            if ((cross(at(state, side->to) - base, at(state, point) - base) > 0) != side->left)
                sum += wrongSide;
        }
        bool sighted = false;
        for (const std::size_t i : ready) sighted = sighted || net_.tapes[i].sight;
        if (sighted)
            for (const std::vector<std::size_t>& corners : net_.buildings)
                sum += wallCost(state, point, ready, corners);
        return sum;
    }

    double turnCost(const State& state, const PlanTurn& turn) const {
        if (!done_[turn.before] || !done_[turn.at] || !done_[turn.after]) return 0;
        const double is = deflection(at(state, turn.before), at(state, turn.at), at(state, turn.after));
        const double asked = turn.turn.degrees();
        const double off =
            turn.left ? std::fabs((*turn.left ? -asked : asked) - is) : std::fabs(std::fabs(is) - asked);
        return std::min(std::min(off, 360 - off) / turn.error.degrees(), worstTurn);
    }

    double wallCost(const State& state, std::size_t point, const std::vector<std::size_t>& ready,
                    const std::vector<std::size_t>& corners) const {
        std::vector<Vec> outline;
        for (const std::size_t corner : corners) {
            if (corner == point || !done_[corner]) return 0;
            outline.push_back(at(state, corner));
        }
        if (outline.size() < 3) return 0;
        const Vec place = at(state, point);
        double sum = inside(place, outline) && toOutline(place, outline) > skin ? throughWall : 0;
        for (const std::size_t i : ready) {
            const PlanTape& tape = net_.tapes[i];
            if (!tape.sight || tape.wallEnd) continue;
            const Vec other = at(state, tape.from == point ? tape.to : tape.from);
            if (within(place, other, outline, skin) > skin) sum += throughWall;
        }
        return sum;
    }

    // Where two states lie differently, and `other` costs little more: both stay possible.
    void note(State& best, const State& other, const std::vector<std::size_t>& group) const {
        if (other.cost > best.cost + settled) return;
        for (const std::size_t point : group)
            if (done_[point] && size(best.at[inGroup_[point]] - other.at[inGroup_[point]]) > samePlace)
                best.others.emplace(point, other.at[inGroup_[point]]);
        best.others.insert(other.others.begin(), other.others.end());
    }

    // States that differ only where nothing more can tell become one; the dearest are dropped.
    void thin(std::vector<State>& states, const std::vector<std::size_t>& group) const {
        if (states.size() < 2) return;
        std::stable_sort(states.begin(), states.end(),
                         [](const State& a, const State& b) { return a.cost < b.cost; });
        std::vector<std::size_t> open;
        for (const std::size_t point : group)
            if (done_[point] && isOpen(point)) open.push_back(inGroup_[point]);
        std::vector<State> kept;
        for (State& state : states) {
            if (state.cost > states.front().cost + followed && !kept.empty()) break;
            State* same = nullptr;
            for (State& other : kept) {
                bool alike = true;
                for (const std::size_t i : open) alike = alike && size(other.at[i] - state.at[i]) < samePlace;
                if (alike) {
                    same = &other;
                    break;
                }
            }
            if (same != nullptr)
                note(*same, state, group);
            else if (kept.size() < mostFollowed)
                kept.push_back(std::move(state));
            else
                note(kept.front(), state, group);
        }
        states = std::move(kept);
    }
    // Whether a point not placed yet hangs on this one; a corner may stand in a tape's way to the end.
    bool isOpen(std::size_t point) const {
        if (isCorner_[point]) return true;
        for (const std::size_t i : tapesOf_[point])
            for (const std::size_t end : ends(net_.tapes[i]))
                if (!done_[end]) return true;
        for (const std::size_t i : turnsOf_[point]) {
            const PlanTurn& turn = net_.turns[i];
            if (!done_[turn.before] || !done_[turn.at] || !done_[turn.after]) return true;
        }
        return false;
    }

    void finish(std::vector<State>& states, const std::vector<std::size_t>& group,
                const std::vector<std::size_t>& order,
                const std::map<std::size_t, std::vector<std::size_t>>& from) {
        State& best = states.front();
        for (const State& state : states)
            if (&state != &best) note(best, state, group);
        for (const std::size_t point : order) {
            PlacedPoint& placed = plan_.points[point];
            placed.at = layout::point(best.at[inGroup_[point]]);
            const auto other = best.others.find(point);
            // Without the tapes to points that may lie in two places.
            std::vector<std::size_t> sure = from.at(point);
            std::erase_if(sure, [&](std::size_t i) {
                for (const std::size_t end : ends(net_.tapes[i]))
                    if (end != point && plan_.points[end].by == PlacedBy::TwoPlaces) return true;
                return false;
            });
            const bool hangs = sure.size() < from.at(point).size() &&
                               different(point, sure) < (placed.by == PlacedBy::Turn ? 1u : 2u);
            if (other == best.others.end() && !hangs) continue;
            placed.by = PlacedBy::TwoPlaces;
            placed.asked = !hangs;
            if (other != best.others.end()) placed.other = layout::point(other->second);
        }
    }

    const PlanNet& net_;
    PlacedPlan& plan_;
    std::vector<std::vector<std::size_t>> tapesOf_, turnsOf_;
    std::vector<Ready> ready_;
    std::vector<std::size_t> inGroup_;
    std::vector<bool> isCorner_, done_;
};

}  // namespace

void placeFirst(const PlanNet& net, PlacedPlan& plan) { Placer(net, plan).run(); }

}  // namespace trenchbook::layout
