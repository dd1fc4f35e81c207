#include "trenchbook/water/channel.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <exception>
#include <limits>
#include <optional>
#include <utility>

#include <boost/math/tools/toms748_solve.hpp>
#include <boost/numeric/odeint.hpp>

#include "trenchbook/core/error.h"
#include "trenchbook/pipe/roughness.h"

namespace trenchbook {
namespace {

namespace odeint = boost::numeric::odeint;
namespace tools = boost::math::tools;

// Distance from the head and depth, in lengths and critical depths of the field.
using Point = std::array<double, 2>;

// The flow as a field without singular points. Lengths count in the `share` of the channel from the head that
// the field is made for, depths in the critical depth at that share's end; so scaled, the profile is
//     dy/dx = G / D,  D = y^3 - x^2,  G = (s - phi(x, y)) y^3 - 2 x y
// and is followed as dx/dt = -D, dy/dt = -G: upstream through calm water (D > 0), downstream through shooting
// water.
class Field {
  public:
    Field(const TrenchDrain& drain, Flow flow, double share) : unit(share) {
        const double across = flow.si() * share / drain.width.si();
        critical = std::cbrt(across * across / gravity);
        const double lengths = drain.length.si() * share / critical;
        slope_ = drain.slope.si() * lengths;
        friction_ = drain.roughness * drain.roughness * gravity * lengths / std::cbrt(critical);
        narrow_ = 2 * critical / drain.width.si();
    }

    double unit;      // of x, in channel lengths
    double critical;  // unit of y, m

    double calm(const Point& p) const { return p[1] * p[1] * p[1] - p[0] * p[0]; }  // D
    double rise(const Point& p) const {                                             // G
        const auto [x, y] = p;
        return slope_ * y * y * y - drag(x, y) - 2 * x * y;
    }
    void operator()(const Point& p, Point& change, double) const { change = {-calm(p), -rise(p)}; }

    // G on the critical line, over x^2: below 0 the calm profile dives to critical depth downstream, above 0
    // the flow turns from calm to shooting by itself.
    double passes(double x) const {
        return slope_ -
               friction_ * std::pow(x, -2.0 / 9) * std::pow(1 + narrow_ * std::pow(x, 2.0 / 3), 4.0 / 3) -
               2 / std::cbrt(x);
    }

    // Where the flow passes through critical depth on its own, at or above `end`: passes() goes from below to
    // above 0. It may fall below 0 again further down, where shooting water turns calm without a jump; `end`
    // may lie there.
    double control(double end) const {
        const double above = 8 / (slope_ * slope_ * slope_);  // there the inflow alone outweighs the slope
        double shooting = end;
        while (passes(shooting) <= 0) {
            shooting *= 0.99;
            if (!(shooting > above)) return end;
        }
        if (above >= shooting) return shooting;
        boost::uintmax_t tries = 200;
        const auto [low, high] = tools::toms748_solve([this](double x) { return passes(x); }, above, shooting,
                                                      tools::eps_tolerance<double>(48), tries);
        return (low + high) / 2;
    }

    // dy/dx of the profile through the control at (1, 1): along the field's growing direction there.
    double slopeThroughControl() const {
        const double wide = 1 + narrow_;
        const double four = std::pow(wide, 4.0 / 3);
        const double byX = -2 * friction_ * four - 2;
        const double byY = 3 * slope_ - 2 - friction_ * (4.0 / 3 * narrow_ * std::cbrt(wide) - four / 3);
        // The field's matrix is ((2, -3), (-byX, -byY)).
        const double trace = 2 - byY;
        const double determinant = -2 * byY - 3 * byX;
        const double grows = trace / 2 + std::sqrt(std::max(0.0, trace * trace / 4 - determinant));
        return (2 - grows) / 3;
    }

    // Depth at which slope, friction and inflow are in balance (G = 0) in shooting water, for passes(x) above
    // 0.
    double balanced(double x) const {
        double low = 0;
        double high = std::pow(x, 2.0 / 3);
        for (int i = 0; i < 60; ++i) {
            const double middle = (low + high) / 2;
            (rise({x, middle}) < 0 ? low : high) = middle;
        }
        return (low + high) / 2;
    }

  private:
    double drag(double x, double y) const {  // phi y^3
        const double wide = 1 + narrow_ * y;
        return friction_ * x * x * wide * std::cbrt(wide / y);
    }

    double slope_;     // S0 L / yc
    double friction_;  // of Sf L / yc = friction x^2 y^(-10/3) (1 + narrow y)^(4/3)
    double narrow_;    // 2 yc / b
};

Error notFound() {
    return Error(Error::Kind::NoConvergence, "flow",
                 {"The water surface in the channel was not found.",
                  "No se encontró la superficie del agua en el canal."});
}

// Numbers beyond all channels make the libraries below give up in words of their own.
template <class Solve>
auto solved(Solve solve) {
    try {
        return solve();
    } catch (const Error&) {
        throw;
    } catch (const std::exception&) {
        throw notFound();
    }
}

// Root of `f` in time between two states of opposite sign. Close to a singular point rounding may give both
// the same sign: then the later one is as good.
template <class F>
double crossing(F f, double from, double to) {
    const double atFrom = f(from);
    const double atTo = f(to);
    if (atFrom == 0) return from;
    if (!(atFrom * atTo < 0)) return to;
    boost::uintmax_t tries = 100;
    const auto [low, high] =
        tools::toms748_solve(f, from, to, atFrom, atTo, tools::eps_tolerance<double>(50), tries);
    return (low + high) / 2;
}

// One stretch of the profile: its deepest water, the depths it has at the stations it passes, and where it
// ends.
struct Stretch {
    double deepest = 0;          // m
    std::vector<double> depths;  // m; NaN at stations that it does not reach
    double end = 0;              // in channel lengths
};

// A long thin sheet of shooting water is drawn to its balanced depth so strongly that explicit steps must be
// tiny, the more so the nearer it comes to where it turns calm. Implicit ones (second order, backward
// differences) need not be. Tells each step to `arrive`; returns where the sheet ends.
template <class Arrive>
double cling(const Field& field, Point at, double goal, Arrive arrive) {
    constexpr int steps = 2000;
    const double start = at[0];
    const double length = (goal - start) / steps;
    Point before = at;
    for (int i = 1; i <= steps; ++i) {
        Point next = {start + i * length, 2 * at[1] - before[1]};
        const auto fault = [&](double y) {
            const double rise =
                i == 1 ? (y - at[1]) / length : (3 * y - 4 * at[1] + before[1]) / (2 * length);
            return rise * field.calm({next[0], y}) - field.rise({next[0], y});
        };
        double y = next[1] * (1 + 1e-6);
        double faultThere = fault(y);
        for (int tries = 0; tries < 50; ++tries) {  // secant
            const double here = fault(next[1]);
            if (here == faultThere) break;
            const double better = next[1] - here * (next[1] - y) / (here - faultThere);
            y = next[1];
            faultThere = here;
            next[1] = better;
            if (std::fabs(better - y) < 1e-13 * y) break;
        }
        if (!(next[1] > 0) || !std::isfinite(next[1])) throw notFound();
        if (field.calm(next) >= 0) {
            const double share = field.calm(at) / (field.calm(at) - field.calm(next));
            const Point end = {std::lerp(at[0], next[0], share), std::lerp(at[1], next[1], share)};
            arrive(at, end);
            return end[0];
        }
        arrive(at, next);
        before = at;
        at = next;
    }
    return goal;
}

// Follows the field from a start until it leaves the channel or reaches critical depth.
class Follower {
  public:
    Follower(const Field& field, Point start, bool upstream, int stations, double tolerance)
        : field_(field),
          upstream_(upstream),
          stations_(stations),
          goal_(upstream ? 0 : 1 / field.unit),
          stepper_(odeint::make_dense_output(tolerance, tolerance, odeint::runge_kutta_dopri5<Point>())) {
        out_.depths.assign(static_cast<std::size_t>(stations) + 1, std::numeric_limits<double>::quiet_NaN());
        keep(start[1]);
        const double at = start[0] * field.unit * stations;
        next_ = static_cast<int>(upstream ? std::floor(at + 1e-9) : std::ceil(at - 1e-9));
        const double speed = std::fabs(field.calm(start)) + std::fabs(field.rise(start));
        stepper_.initialize(start, 0.0, 1e-3 / (1 + speed));
    }

    Stretch follow() {
        for (int step = 0; step < mostSteps; ++step) {
            const Step taken = advance(step == 0);
            if (!std::isfinite(taken.last[0] + taken.last[1])) break;
            keepDeepest(taken);
            passStations(taken);
            out_.end = taken.last[0] * field_.unit;
            if (taken.ends || settled(taken.last)) return std::move(out_);
            if (step % patience == patience - 1 && clings(taken.last)) {
                clingOn(taken.last);
                return std::move(out_);
            }
        }
        throw notFound();
    }

  private:
    static constexpr int mostSteps = 100000;
    static constexpr int patience = 200;

    struct Step {
        double from, until;  // of the stepper's time
        Point before, last;
        bool ends;  // the channel, or calm or shooting water
    };

    double station(int i) const { return static_cast<double>(i) / stations_ / field_.unit; }
    void keep(double depth) { out_.deepest = std::max(out_.deepest, depth * field_.critical); }
    Point state(double t) const {
        Point p;
        stepper_.calc_state(t, p);
        return p;
    }

    // One step, cut off where the channel ends or the water passes critical depth.
    Step advance(bool first) {
        const auto [from, to] = stepper_.do_step(std::cref(field_));
        const Point after = stepper_.current_state();
        Step taken{from, to, stepper_.previous_state(), after, false};
        const bool left = upstream_ ? after[0] <= goal_ : after[0] >= goal_;
        if (left) taken.until = crossing([&](double t) { return state(t)[0] - goal_; }, from, to);
        // The start of a free outlet lies on the critical line itself.
        const bool turned = !left && !first && (field_.calm(after) < 0) == upstream_;
        if (turned) taken.until = crossing([&](double t) { return field_.calm(state(t)); }, from, to);
        taken.last = state(taken.until);
        if (left) taken.last[0] = goal_;
        taken.ends = left || turned;
        return taken;
    }

    // The deepest water stands at an end of the step, or where it neither rises nor falls.
    void keepDeepest(const Step& taken) {
        const auto rise = [&](double t) { return field_.rise(state(t)); };
        if ((field_.rise(taken.before) > 0) != (field_.rise(taken.last) > 0))
            keep(state(crossing(rise, taken.from, taken.until))[1]);
        keep(taken.last[1]);
    }

    void passStations(const Step& taken) {
        for (; next_ >= 0 && next_ <= stations_; next_ += upstream_ ? -1 : 1) {
            const double x = station(next_);
            if (upstream_ ? x < taken.last[0] * (1 - 1e-12) : x > taken.last[0] * (1 + 1e-12)) break;
            const double t = crossing([&](double at) { return state(at)[0] - x; }, taken.from, taken.until);
            out_.depths[static_cast<std::size_t>(next_)] = state(t)[1] * field_.critical;
        }
    }

    // Shooting and calm water may also meet at critical depth without a jump, in ever shorter steps.
    bool settled(const Point& p) const {
        return std::fabs(field_.calm(p)) < 1e-9 * p[0] * p[0] &&
               std::fabs(field_.rise(p)) < 1e-9 * p[0] * p[1];
    }

    // Shooting water at its balanced depth, which many steps have not left.
    bool clings(const Point& p) const {
        return !upstream_ && field_.passes(p[0]) > 0 && std::fabs(p[1] / field_.balanced(p[0]) - 1) < 1e-5;
    }

    void clingOn(const Point& from) {
        const auto arrive = [&](const Point& a, const Point& b) {
            keep(b[1]);
            for (; next_ <= stations_ && station(next_) <= b[0] * (1 + 1e-12); ++next_)
                out_.depths[static_cast<std::size_t>(next_)] =
                    std::lerp(a[1], b[1], (station(next_) - a[0]) / (b[0] - a[0])) * field_.critical;
        };
        out_.end = cling(field_, from, goal_, arrive) * field_.unit;
    }

    const Field& field_;
    bool upstream_;
    int stations_;
    double goal_;   // where the channel ends on the way
    int next_ = 0;  // station to pass
    Stretch out_;
    decltype(odeint::make_dense_output(0.0, 0.0, odeint::runge_kutta_dopri5<Point>())) stepper_;
};

// Of a step, of lengths and depths in the field's units.
constexpr double fine = 1e-10;
constexpr double coarse = 1e-5;

void requireDrain(const TrenchDrain& drain) {
    requirePositive(drain.width, "width");
    requirePositive(drain.length, "length");
    if (drain.slope.si() != 0) requireSlope(drain.slope, "slope");
    requireBetween(drain.roughness, 0, pipeRoughness.most, "roughness");
}

// Specific force over its unit: what is equal on both sides of a jump.
double force(double x, double y) { return y * y / 2 + x * x / y; }

TrenchWater surface(const TrenchDrain& drain, Flow flow, Length outletDepth, int steps, double tolerance) {
    const Field whole(drain, flow, 1);
    const auto follow = [&](const Field& field, Point start, bool upstream) {
        return Follower(field, start, upstream, steps, tolerance).follow();
    };

    // Calm water held up by the outlet.
    const double outlet = std::max(1.0, outletDepth.si() / whole.critical);
    TrenchWater water;
    double deepest = 0;
    double reached = 1;
    std::vector<double> depths(static_cast<std::size_t>(steps + 1), std::numeric_limits<double>::quiet_NaN());
    if (outlet > 1 || whole.passes(1) < 0) {
        Stretch held = follow(whole, {1, outlet}, true);
        deepest = held.deepest;
        reached = held.end;
        depths = std::move(held.depths);
    }
    // It does not reach the head: the flow above is controlled inside the channel.
    if (reached > 1e-9) {
        water.controlInside = true;
        constexpr double off = 1e-6;
        const double control = whole.control(reached);
        const Field upper(drain, flow, control);
        const double tangent = upper.slopeThroughControl();
        const Stretch above = follow(upper, {1 - off, 1 - off * tangent}, true);
        const Stretch below = follow(upper, {std::min(1 + off, 1 / control), 1 + off * tangent}, false);
        deepest = std::max({deepest, above.deepest, below.deepest});
        for (std::size_t i = 0; i < depths.size(); ++i) {
            const double at = static_cast<double>(i) / steps;
            const double shooting = below.depths[i];
            if (at <= control)
                depths[i] = above.depths[i];
            else if (std::isnan(depths[i]) ||
                     force(at, shooting / whole.critical) > force(at, depths[i] / whole.critical))
                depths[i] = shooting;
            // Between the shooting water's end and the calm water's: on the critical line.
            if (std::isnan(depths[i])) depths[i] = whole.critical * std::pow(at, 2.0 / 3);
        }
    }
    water.deepest = Length::fromSi(deepest);
    for (double depth : depths) water.depths.push_back(Length::fromSi(depth));
    return water;
}

// The flow at which `over`, a depth less `room`, is 0, from `start` on; none where it is not found soon. Depth grows
// about as the flow's power 2/3, so that it is nearly straight in that. Once near, a step's error is about the step
// times the one before it: `enough`, a share of the flow, is asked of that.
template <class Over>
std::optional<double> secants(const Over& over, double start, double room, double enough) {
    const auto power = [](double flow) { return std::cbrt(flow * flow); };
    double before = start, overBefore = over(start);
    double flow = before * std::pow(room / (overBefore + room), 1.5);
    for (int tries = 0; tries < 8 && flow != before; ++tries) {
        const double overNow = over(flow);
        if (overNow == overBefore) break;
        const double better = power(flow) - overNow * (power(flow) - power(before)) / (overNow - overBefore);
        if (!(better > 0) || std::isinf(better)) break;
        const double last = std::fabs(flow / before - 1);
        before = std::exchange(flow, better * std::sqrt(better));
        overBefore = overNow;
        const double step = std::fabs(flow / before - 1);
        if (step * std::max(step, last) < enough) return flow;
    }
    return std::nullopt;
}

// The flow, m3/s, whose deepest water is `room`.
double flowAtDepth(const TrenchDrain& drain, Length room, Length outletDepth) {
    const auto over = [&](double flow, double tolerance) {
        return (surface(drain, Flow::fromSi(flow), outletDepth, 1, tolerance).deepest - room).si();
    };
    // The level frictionless channel's capacity.
    const double scale = drain.width.si() * std::sqrt(gravity * std::pow(room.si() / std::sqrt(3.0), 3));
    const auto bracketed = [&] {
        double low = scale, high = scale;
        double atLow = over(low, fine), atHigh = atLow;
        while (atLow > 0) low /= 2, atLow = over(low, fine);
        while (atHigh < 0) high *= 2, atHigh = over(high, fine);
        if (low == high) return low;
        boost::uintmax_t tries = 200;
        const auto [from, to] = tools::toms748_solve([&](double flow) { return over(flow, fine); }, low, high,
                                                     atLow, atHigh, tools::eps_tolerance<double>(34), tries);
        return (from + to) / 2;
    };

    // Secants with coarse steps come close, a few with fine ones go the rest of the way. A step of either may lose
    // the water at a flow that the bracket below does not try.
    try {
        const auto near = secants([&](double flow) { return over(flow, coarse); }, scale, room.si(), 1e-7);
        if (near)
            if (const auto found =
                    secants([&](double flow) { return over(flow, fine); }, *near, room.si(), 1e-11))
                return *found;
    } catch (const std::exception&) {
    }
    // Where the water springs from calm to shooting the depth may have a kink there.
    return bracketed();
}

}  // namespace

TrenchWater trenchWater(const TrenchDrain& drain, Flow flow, Length outletDepth, int steps) {
    requireDrain(drain);
    requirePositive(flow, "flow");
    requireNotNegative(outletDepth, "water depth at the outlet");
    requireBetween(steps, 1, 10000, "steps");
    return solved([&] { return surface(drain, flow, outletDepth, steps, fine); });
}

Length deepestInDrain(const TrenchDrain& drain, Flow flow, Length outletDepth) {
    return trenchWater(drain, flow, outletDepth, 1).deepest;
}

Flow trenchCapacity(const TrenchDrain& drain, Length depth, Length freeboard, Length outletDepth) {
    requireDrain(drain);
    requirePositive(depth, "depth");
    requireNotNegative(freeboard, "freeboard");
    requireNotNegative(outletDepth, "water depth at the outlet");
    if (freeboard >= depth)
        throw Error(Error::Kind::BadArgument, "freeboard", plain(freeboard.inches(), 2) + " in",
                    {"less than the channel's depth", "menos que la profundidad del canal"});
    const Length room = depth - freeboard;
    if (outletDepth >= room) {
        const auto both = [](Length length) {
            return plain(length.inches(), 2) + " in (" + plain(length.millimetres(), 1) + " mm)";
        };
        throw Error(Error::Kind::BadArgument, "water depth at the outlet",
                    Text{"water depth at the outlet is " + both(outletDepth) +
                             ", but the channel has room for only " + both(room) +
                             ": the outlet drowns it, and it takes no water.",
                         "water depth at the outlet es " + both(outletDepth) + ", pero el canal sólo tiene " +
                             both(room) + ": la salida lo ahoga y no recibe agua."});
    }
    return solved([&] { return Flow::fromSi(flowAtDepth(drain, room, outletDepth)); });
}

}  // namespace trenchbook
