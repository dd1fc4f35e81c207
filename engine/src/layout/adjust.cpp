// Least squares over all placed points, and Baarda's test of the residuals.
#include <algorithm>
#include <array>
#include <cmath>
#include <set>

#include "layout/normal_equations.h"
#include "layout/plan_geometry.h"
#include "layout/plan_parts.h"

namespace trenchbook::layout {
namespace {

constexpr std::size_t none = static_cast<std::size_t>(-1);
// One honest tape in a thousand misses more standard deviations than this.
constexpr double slipAt = 3.29;
// Two tapes of which either may be the slip: the sums of squares without one and without the other are this
// near.
constexpr double tellApart = 6;
// A tape that others hardly control shows no slip.
constexpr double leastControl = 0.02;

struct Term {
    std::size_t point;
    Vec gradient;
};
// One observation linearized: how far it misses, and how that changes with the points in it; over its usual
// error.
struct Linear {
    double misses = 0;
    std::array<Term, 3> terms = {{{none, {}}, {none, {}}, {none, {}}}};
};

class Adjustment {
  public:
    Adjustment(const PlanNet& net, PlacedPlan& plan) : net_(net), plan_(plan) {
        unknown_.assign(net.points.size(), none);
        for (std::size_t i = 0; i < net.points.size(); ++i) {
            if (plan.points[i].at)
                at_.push_back(vec(*plan.points[i].at));
            else
                at_.push_back({});
            if (plan.points[i].placed() && plan.points[i].by != PlacedBy::Hand) unknown_[i] = unknowns_++;
        }
        for (std::size_t i = 0; i < net.tapes.size(); ++i)
            if (placed(net.tapes[i])) tapes_.push_back(i);
        for (std::size_t i = 0; i < net.turns.size(); ++i)
            if (counts(net.turns[i])) turns_.push_back(i);
        aside_.assign(net.tapes.size(), false);
    }

    void run() {
        NormalEquations equations(2 * unknowns_, couples());
        solve(equations);
        findSlips(equations);
        report(equations);
    }

  private:
    bool placed(const PlanTape& tape) const {
        const auto is = [&](std::size_t point) { return plan_.points[point].placed(); };
        return is(tape.from) && is(tape.to) && (!tape.wallEnd || is(*tape.wallEnd));
    }
    bool counts(const PlanTurn& turn) const {
        bool by = false;
        for (const std::size_t point : {turn.before, turn.at, turn.after}) {
            if (!plan_.points[point].placed()) return false;
            by = by || plan_.points[point].by == PlacedBy::Turn;
        }
        return by;
    }

    std::vector<std::pair<std::size_t, std::size_t>> couples() const {
        std::vector<std::pair<std::size_t, std::size_t>> pairs;
        const auto couple = [&](std::size_t a, std::size_t b) {
            if (unknown_[a] == none || unknown_[b] == none) return;
            for (const std::size_t i : {0, 1})
                for (const std::size_t j : {0, 1})
                    pairs.emplace_back(2 * unknown_[a] + i, 2 * unknown_[b] + j);
        };
        for (std::size_t i = 0; i < unknown_.size(); ++i) couple(i, i);
        for (const std::size_t i : tapes_) {
            const PlanTape& tape = net_.tapes[i];
            couple(tape.from, tape.to);
            if (tape.wallEnd) couple(tape.from, *tape.wallEnd), couple(tape.to, *tape.wallEnd);
        }
        for (const std::size_t i : turns_) {
            const PlanTurn& turn = net_.turns[i];
            couple(turn.before, turn.at), couple(turn.at, turn.after), couple(turn.before, turn.after);
        }
        return pairs;
    }

    Linear linear(const PlanTape& tape) const {
        const double error = tape.error.si();
        const Vec from = at_[tape.from], to = at_[tape.to];
        Linear made;
        if (!tape.wallEnd) {
            const Vec way = to - from;
            const double far = size(way);
            const Vec unit = far > 0 ? 1 / (far * error) * way : Vec{1 / error, 0};
            made.misses = (tape.length.si() - far) / error;
            made.terms = {{{tape.from, -1 * unit}, {tape.to, unit}, {none, {}}}};
            return made;
        }
        const Vec end = at_[*tape.wallEnd], wall = end - from, way = to - from;
        const double length = size(wall);
        const double offset = cross(wall, way) / length, side = offset < 0 ? -1 : 1;
        const double share = dot(way, wall) / (length * length);
        const Vec square = side / (length * error) * Vec{-wall.y, wall.x};
        made.misses = (tape.length.si() - side * offset) / error;
        made.terms = {
            {{tape.to, square}, {tape.from, -(1 - share) * square}, {*tape.wallEnd, -share * square}}};
        return made;
    }

    Linear linear(const PlanTurn& turn) const {
        const Vec in = at_[turn.at] - at_[turn.before], out = at_[turn.after] - at_[turn.at];
        const double is = deflection(at_[turn.before], at_[turn.at], at_[turn.after]);
        const bool left = turn.left.value_or(is < 0);
        const double error = turn.error.degrees() * perDegree;
        // Of an azimuth with the end it goes to: square to the way, to the right.
        const Vec afterOut = 1 / (dot(out, out) * error) * Vec{out.y, -out.x};
        const Vec atIn = 1 / (dot(in, in) * error) * Vec{in.y, -in.x};
        Linear made;
        made.misses = ((left ? -1 : 1) * turn.turn.degrees() - is) * perDegree / error;
        made.terms = {{{turn.after, afterOut}, {turn.at, -1 * (afterOut + atIn)}, {turn.before, atIn}}};
        return made;
    }

    template <class Do>
    void eachLinear(const Do& with) const {
        for (const std::size_t i : tapes_)
            if (!aside_[i]) with(linear(net_.tapes[i]));
        for (const std::size_t i : turns_) with(linear(net_.turns[i]));
    }
    double squares() const {
        double sum = 0;
        eachLinear([&](const Linear& one) { sum += one.misses * one.misses; });
        return sum;
    }

    // N of the present places, and the right side. False where it has no one answer.
    bool set(NormalEquations& equations, std::vector<double>& right, double damping) const {
        equations.clear();
        std::fill(right.begin(), right.end(), 0.0);
        eachLinear([&](const Linear& one) {
            for (const Term& a : one.terms) {
                if (a.point == none || unknown_[a.point] == none) continue;
                const std::size_t i = 2 * unknown_[a.point];
                right[i] += a.gradient.x * one.misses;
                right[i + 1] += a.gradient.y * one.misses;
                for (const Term& b : one.terms) {
                    if (b.point == none || unknown_[b.point] == none) continue;
                    const std::size_t j = 2 * unknown_[b.point];
                    if (j > i) continue;
                    equations.add(i, j, a.gradient.x * b.gradient.x);
                    equations.add(i + 1, j + 1, a.gradient.y * b.gradient.y);
                    equations.add(i + 1, j, a.gradient.y * b.gradient.x);
                    if (j != i) equations.add(i, j + 1, a.gradient.x * b.gradient.y);
                }
            }
        });
        for (std::size_t i = 0; i < right.size(); ++i) equations.add(i, i, damping);
        return equations.factor();
    }

    // Factors for one answer even where two tapes lie in one line.
    void setSafely(NormalEquations& equations, std::vector<double>& right) const {
        for (double damping = 1e-9; !set(equations, right, damping); damping *= 1000) {
        }
    }

    void solve(NormalEquations& equations) {
        std::vector<double> right(2 * unknowns_);
        double now = squares();
        for (int step = 0; step < 50 && unknowns_ > 0; ++step) {
            setSafely(equations, right);
            const std::vector<double> moves = equations.solved(right);
            const std::vector<Vec> before = at_;
            double share = 1, farthest = 0;
            for (;; share /= 2) {
                farthest = 0;
                for (std::size_t i = 0; i < unknown_.size(); ++i) {
                    if (unknown_[i] == none) continue;
                    const Vec move = share * Vec{moves[2 * unknown_[i]], moves[2 * unknown_[i] + 1]};
                    at_[i] = before[i] + move;
                    farthest = std::max(farthest, size(move));
                }
                const double next = squares();
                if (next <= now * (1 + 1e-12) || farthest < 1e-10) {
                    now = next;
                    break;
                }
            }
            if (farthest < 1e-9) break;
        }
    }

    // The part of an observation's variance that the other observations control, 0 to 1.
    double control(const NormalEquations& equations, const Linear& one) const {
        double taken = 0;
        for (const Term& a : one.terms) {
            if (a.point == none || unknown_[a.point] == none) continue;
            for (const Term& b : one.terms) {
                if (b.point == none || unknown_[b.point] == none) continue;
                const std::size_t i = 2 * unknown_[a.point], j = 2 * unknown_[b.point];
                taken += a.gradient.x * b.gradient.x * equations.inverse(i, j) +
                         a.gradient.x * b.gradient.y * equations.inverse(i, j + 1) +
                         a.gradient.y * b.gradient.x * equations.inverse(i + 1, j) +
                         a.gradient.y * b.gradient.y * equations.inverse(i + 1, j + 1);
            }
        }
        return 1 - taken;
    }

    bool share(std::size_t tapeA, std::size_t tapeB) const {
        const auto ends = [&](std::size_t i) {
            const PlanTape& tape = net_.tapes[i];
            return std::array{tape.from, tape.to, tape.wallEnd.value_or(tape.to)};
        };
        for (const std::size_t a : ends(tapeA))
            for (const std::size_t b : ends(tapeB))
                if (a == b && unknown_[a] != none) return true;
        return false;
    }

    void findSlips(NormalEquations& equations) {
        std::set<std::size_t> told;
        std::vector<double> right(2 * unknowns_);
        std::vector<double> standard(net_.tapes.size()), controlled(net_.tapes.size());
        for (std::size_t round = 0; round <= tapes_.size(); ++round) {
            setSafely(equations, right);
            equations.invert();
            std::size_t worst = none;
            for (const std::size_t i : tapes_) {
                standard[i] = 0;
                if (aside_[i] || told.contains(i)) continue;
                const Linear one = linear(net_.tapes[i]);
                controlled[i] = control(equations, one);
                if (controlled[i] < leastControl) continue;
                standard[i] = std::fabs(one.misses) / std::sqrt(controlled[i]);
                if (standard[i] > slipAt && (worst == none || standard[i] > standard[worst])) worst = i;
            }
            if (worst == none) return;
            const std::vector<std::size_t> group = mayBe(worst, standard);
            PlanSlip slip{.tape = worst,
                          .off = Length::fromSi(linear(net_.tapes[worst]).misses / controlled[worst] *
                                                net_.tapes[worst].error.si())};
            if (group.size() > 1) {
                slip.among = group;
                told.insert(group.begin(), group.end());
            } else {
                aside_[worst] = true;
                solve(equations);
            }
            plan_.slips.push_back(std::move(slip));
        }
    }

    // The worst tape and those that hang together with it and explain the misfit about as well.
    std::vector<std::size_t> mayBe(std::size_t worst, const std::vector<double>& standard) const {
        std::vector<std::size_t> group = {worst};
        const double enough = standard[worst] * standard[worst] - tellApart;
        for (std::size_t at = 0; at < group.size(); ++at)
            for (const std::size_t i : tapes_)
                if (standard[i] > 0 && standard[i] * standard[i] > enough && share(group[at], i) &&
                    std::find(group.begin(), group.end(), i) == group.end())
                    group.push_back(i);
        std::sort(group.begin(), group.end());
        return group;
    }

    void report(const NormalEquations& equations) {
        double sum = 0;
        std::size_t counted = turns_.size();
        eachLinear([&](const Linear& one) { sum += one.misses * one.misses; });
        for (const std::size_t i : tapes_) {
            const PlanTape& tape = net_.tapes[i];
            plan_.residuals[i] = Length::fromSi(linear(tape).misses * tape.error.si());
            if (!aside_[i]) ++counted;
        }
        for (PlanSlip& slip : plan_.slips)
            if (slip.among.empty()) slip.off = *plan_.residuals[slip.tape];
        if (counted > 2 * unknowns_) {
            plan_.redundant = counted - 2 * unknowns_;
            plan_.scatter = std::sqrt(sum / static_cast<double>(plan_.redundant));
        }
        for (std::size_t i = 0; i < unknown_.size(); ++i) {
            if (unknown_[i] == none) continue;
            const std::size_t j = 2 * unknown_[i];
            const double xx = equations.inverse(j, j), yy = equations.inverse(j + 1, j + 1),
                         xy = equations.inverse(j, j + 1);
            plan_.points[i].at = point(at_[i]);
            plan_.points[i].uncertain =
                Length::fromSi(std::sqrt((xx + yy) / 2 + std::hypot((xx - yy) / 2, xy)));
        }
    }

    const PlanNet& net_;
    PlacedPlan& plan_;
    std::vector<Vec> at_;
    std::vector<std::size_t> unknown_;  // of a point; none where it is held
    std::size_t unknowns_ = 0;
    std::vector<std::size_t> tapes_, turns_;  // that have all their points
    std::vector<bool> aside_;
};

}  // namespace

void adjust(const PlanNet& net, PlacedPlan& plan) { Adjustment(net, plan).run(); }

}  // namespace trenchbook::layout
