// Gradually varied flow in a channel or pipe of one section, slope and roughness: how far from one depth to
// another, and which depth stands some way upstream.
//
//     const auto section = [](Length depth) { return segmentAt(Length::inches(6), depth); };
//     GradualFlow flow(section, Flow::cfs(0.25), 0.011, Slope::fraction(0.002));
//     flow.distance(Length::feet(0.3), Length::feet(0.26)).feet();
//         // how far downstream 0.26 ft is reached
//
// dx/dy = (1 - F2) / (S0 - Sf) with F2 = Q2 T / (g A3) and Sf = (n Q)2 / (A2 R^(4/3)) (Chow, Open-Channel
// Hydraulics, 1959, chapter 9, from memory). It is integrated over the depth, not the length: at the critical
// depth, where the water surface is upright, that is plain, and towards the normal depth, which is never
// quite reached, the logarithm of what is missing takes the depth's place. Adaptive Gauss quadrature, 1e-10
// relative. The section is any function from a depth to a Segment (circular.h); tests run rectangular
// channels through the same code.
#pragma once

#include <algorithm>
#include <array>
#include <cmath>
#include <concepts>
#include <optional>

#include "trenchbook/core/units.h"
#include "trenchbook/pipe/circular.h"

namespace trenchbook {

template <class Section>
concept WettedSection = requires(const Section section, Length depth) {
    { section(depth) } -> std::convertible_to<Segment>;
};

template <WettedSection Section>
class GradualFlow {
  public:
    GradualFlow(Section section, Flow flow, double roughness, Slope slope)
        : section_(std::move(section)), flow_(flow), roughness_(roughness), slope_(slope) {}

    // The slope of the energy line at a depth.
    Slope frictionSlope(Length depth) const { return Slope::fraction(friction(section_(depth))); }

    // Along the channel from one depth to another on the same profile, downstream positive. Neither the
    // normal depth nor, unless at an end, the critical depth may lie between.
    Length distance(Length from, Length to) const {
        return Length::fromSi(
            integral([&](double y) { return lengthPerDepth(y); }, from.si(), to.si(), 1e-10));
    }

    // Upstream from `start` on the way to `goal`: where the walk ends after `length`, or sooner at the goal.
    // A goal that is the normal depth itself (`asymptote`) is not reached within any length.
    struct Walk {
        Length depth;
        Length length;
    };
    Walk upstream(Length start, Length goal, std::optional<Length> asymptote, Length length) const {
        if (start == goal) return {start, asymptote == goal ? length : Length()};
        const double first = start.si(), last = goal.si();
        const double base = asymptote ? asymptote->si() : 0;
        // With an asymptote the depth is base + (first - base) e^-s, else it runs straight.
        const auto depth = [&](double s) {
            return asymptote ? base + (first - base) * std::exp(-s) : first + (last - first) * s;
        };
        const auto rate = [&](double s) {
            const double y = depth(s);
            return -lengthPerDepth(y) * (asymptote ? base - y : last - first);
        };
        const bool endless = asymptote && *asymptote == goal;
        // Nearer to the normal depth than this, S0 - Sf is the difference of equal numbers.
        const double near = endless ? 1e-7 * base : last - base;
        const double end = asymptote ? std::log((first - base) / std::copysign(near, first - base)) : 1;
        if (end <= 0) return {goal, endless ? length : Length()};

        double s = 0, walked = 0;
        for (double step = std::min(0.5, end); s < end; step *= 2) {
            const double next = std::min(end, s + step);
            const double piece = integral(rate, s, next, 1e-8);
            if (walked + piece >= length.si()) {
                s = within(rate, s, next, length.si() - walked, piece);
                return {Length::fromSi(depth(s)), length};
            }
            walked += piece;
            s = next;
        }
        return endless ? Walk{goal, length} : Walk{goal, Length::fromSi(walked)};
    }

  private:
    double friction(const Segment& wetted) const {
        const double carried = roughness_ * flow_.si() / wetted.area.si();
        return carried * carried / std::pow(wetted.hydraulicRadius.si(), 4.0 / 3);
    }

    double lengthPerDepth(double depth) const {
        const Segment wetted = section_(Length::fromSi(depth));
        const double area = wetted.area.si();
        const double froude2 =
            flow_.si() * flow_.si() * wetted.surfaceWidth.si() / (gravity * area * area * area);
        return (1 - froude2) / (slope_.fraction() - friction(wetted));
    }

    // Gauss-Legendre with five points, halved until both halves agree with the whole.
    template <class Function>
    static double gauss(const Function& f, double a, double b) {
        static constexpr std::array<double, 3> node = {0, 0.5384693101056831, 0.9061798459386640};
        static constexpr std::array<double, 3> weight = {0.5688888888888889, 0.4786286704993665,
                                                         0.2369268850561891};
        const double middle = (a + b) / 2, half = (b - a) / 2;
        double sum = weight[0] * f(middle);
        for (std::size_t i = 1; i < node.size(); ++i)
            sum += weight[i] * (f(middle - half * node[i]) + f(middle + half * node[i]));
        return sum * half;
    }
    template <class Function>
    static double halved(const Function& f, double a, double b, double whole, double allowed, int depth) {
        const double middle = (a + b) / 2;
        const double left = gauss(f, a, middle), right = gauss(f, middle, b);
        if (depth == 0 || std::fabs(left + right - whole) <= allowed) return left + right;
        return halved(f, a, middle, left, allowed, depth - 1) +
               halved(f, middle, b, right, allowed, depth - 1);
    }
    template <class Function>
    static double integral(const Function& f, double a, double b, double relative) {
        const double whole = gauss(f, a, b);
        return halved(f, a, b, whole, relative * std::fabs(whole), 24);
    }

    // The s between a and b up to which `rate` sums up to `wanted`, of `all` in all: Newton, kept between the
    // ends.
    template <class Function>
    static double within(const Function& rate, double a, double b, double wanted, double all) {
        double low = a, high = b, s = a + (b - a) * wanted / all, sum = integral(rate, a, s, 1e-9);
        for (int step = 0; step < 60; ++step) {
            const double off = sum - wanted;
            if (std::fabs(off) <= 1e-9 * all) break;
            (off > 0 ? high : low) = s;
            double next = s - off / rate(s);
            if (!(next > low && next < high)) next = (low + high) / 2;
            sum += integral(rate, s, next, 1e-9);
            s = next;
        }
        return s;
    }

    Section section_;
    Flow flow_;
    double roughness_;
    Slope slope_;
};

}  // namespace trenchbook
