#include "trenchbook/water/channel.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <exception>
#include <limits>

#include <boost/math/tools/toms748_solve.hpp>
#include <boost/numeric/odeint.hpp>

#include "trenchbook/core/error.h"

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
        const double wide = std::cbrt(1 + narrow_ * y);
        return friction_ * x * x / std::cbrt(y) * wide * wide * wide * wide;
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

// Follows the field from `start` until it leaves the channel or reaches critical depth.
Stretch follow(const Field& field, Point start, bool upstream, int steps) {
    constexpr double tolerance = 1e-10;
    constexpr int mostSteps = 100000;
    constexpr int patience = 200;
    const double goal = upstream ? 0 : 1 / field.unit;
    const auto station = [&](int i) { return static_cast<double>(i) / steps / field.unit; };

    Stretch out;
    out.depths.assign(static_cast<std::size_t>(steps + 1), std::numeric_limits<double>::quiet_NaN());
    const auto keep = [&](double depth) { out.deepest = std::max(out.deepest, depth * field.critical); };
    keep(start[1]);
    int next = static_cast<int>(upstream ? std::floor(start[0] * field.unit * steps + 1e-9)
                                         : std::ceil(start[0] * field.unit * steps - 1e-9));

    auto stepper = odeint::make_dense_output(tolerance, tolerance, odeint::runge_kutta_dopri5<Point>());
    const double speed = std::fabs(field.calm(start)) + std::fabs(field.rise(start));
    stepper.initialize(start, 0.0, 1e-3 / (1 + speed));
    const auto state = [&](double t) {
        Point p;
        stepper.calc_state(t, p);
        return p;
    };
    for (int step = 0; step < mostSteps; ++step) {
        const auto [from, to] = stepper.do_step(std::cref(field));
        const Point before = stepper.previous_state();
        const Point after = stepper.current_state();
        double until = to;
        const bool left = upstream ? after[0] <= goal : after[0] >= goal;
        if (left) until = crossing([&](double t) { return state(t)[0] - goal; }, from, to);
        // The start of a free outlet lies on the critical line itself.
        const bool turned = !left && step > 0 && (field.calm(after) < 0) == upstream;
        if (turned) until = crossing([&](double t) { return field.calm(state(t)); }, from, to);
        Point last = state(until);
        if (!std::isfinite(last[0] + last[1])) break;
        if (left) last[0] = goal;

        if ((field.rise(before) > 0) != (field.rise(last) > 0))
            keep(state(crossing([&](double t) { return field.rise(state(t)); }, from, until))[1]);
        keep(last[1]);
        for (; next >= 0 && next <= steps; next += upstream ? -1 : 1) {
            const double x = station(next);
            if (upstream ? x < last[0] * (1 - 1e-12) : x > last[0] * (1 + 1e-12)) break;
            const double t = crossing([&](double at) { return state(at)[0] - x; }, from, until);
            out.depths[static_cast<std::size_t>(next)] = state(t)[1] * field.critical;
        }
        out.end = last[0] * field.unit;
        // Shooting and calm water may also meet at critical depth without a jump, in ever shorter steps.
        const bool settled = std::fabs(field.calm(last)) < 1e-9 * last[0] * last[0] &&
                             std::fabs(field.rise(last)) < 1e-9 * last[0] * last[1];
        if (left || turned || settled) return out;

        if (!upstream && step % patience == patience - 1 && field.passes(last[0]) > 0 &&
            std::fabs(last[1] / field.balanced(last[0]) - 1) < 1e-5) {
            const auto arrive = [&](const Point& a, const Point& b) {
                keep(b[1]);
                for (; next <= steps && station(next) <= b[0] * (1 + 1e-12); ++next)
                    out.depths[static_cast<std::size_t>(next)] =
                        std::lerp(a[1], b[1], (station(next) - a[0]) / (b[0] - a[0])) * field.critical;
            };
            out.end = cling(field, last, goal, arrive) * field.unit;
            return out;
        }
    }
    throw notFound();
}

void requireDrain(const TrenchDrain& drain) {
    requirePositive(drain.width, "width");
    requirePositive(drain.length, "length");
    if (drain.slope.si() != 0) requireSlope(drain.slope, "slope");
    requireBetween(drain.roughness, 0, 0.5, "roughness");
}

// Specific force over its unit: what is equal on both sides of a jump.
double force(double x, double y) { return y * y / 2 + x * x / y; }

TrenchWater surface(const TrenchDrain& drain, Flow flow, Length outletDepth, int steps) {
    const Field whole(drain, flow, 1);

    // Calm water held up by the outlet.
    const double outlet = std::max(1.0, outletDepth.si() / whole.critical);
    TrenchWater water;
    double deepest = 0;
    double reached = 1;
    std::vector<double> depths(static_cast<std::size_t>(steps + 1), std::numeric_limits<double>::quiet_NaN());
    if (outlet > 1 || whole.passes(1) < 0) {
        Stretch held = follow(whole, {1, outlet}, true, steps);
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
        const Stretch above = follow(upper, {1 - off, 1 - off * tangent}, true, steps);
        const Stretch below =
            follow(upper, {std::min(1 + off, 1 / control), 1 + off * tangent}, false, steps);
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

}  // namespace

TrenchWater trenchWater(const TrenchDrain& drain, Flow flow, Length outletDepth, int steps) {
    requireDrain(drain);
    requirePositive(flow, "flow");
    requireNotNegative(outletDepth, "water depth at the outlet");
    requireBetween(steps, 1, 10000, "steps");
    return solved([&] { return surface(drain, flow, outletDepth, steps); });
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
    const auto over = [&](double flow) {
        return (deepestInDrain(drain, Flow::fromSi(flow), outletDepth) - room).si();
    };
    // The level frictionless channel's capacity is the natural scale.
    const double critical = room.si() / std::sqrt(3.0);
    return solved([&] {
        double low = drain.width.si() * std::sqrt(gravity * critical * critical * critical);
        double high = low;
        while (over(low) > 0) low /= 2;
        while (over(high) < 0) high *= 2;
        if (low == high) return Flow::fromSi(low);
        boost::uintmax_t tries = 200;
        const auto [from, to] =
            tools::toms748_solve(over, low, high, tools::eps_tolerance<double>(34), tries);
        return Flow::fromSi((from + to) / 2);
    });
}

}  // namespace trenchbook
