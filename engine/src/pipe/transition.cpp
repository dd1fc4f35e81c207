#include "trenchbook/pipe/transition.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

#include "trenchbook/core/error.h"
#include "trenchbook/pipe/circular.h"

namespace trenchbook {
namespace {

template <std::size_t Columns>
struct TableRow {
    double ratio;
    std::array<double, Columns> k;
};

constexpr std::array velocities = {2.0, 3.0, 4.0, 5.0, 6.0, 7.0, 8.0, 10.0, 12.0};  // ft/s
constexpr std::array cones = {2.0, 6.0, 10.0, 15.0, 20.0, 25.0, 30.0, 35.0, 40.0, 50.0, 60.0};

// HEC-22, table 7-4c. From memory: 1.4 at 8 ft/s, 1.6 at 2 and 6, 1.8 at 4, 2.0 at 4 and 7, 2.5 at 4, 6 and
// 8, 3.0 at 12.
constexpr std::array<TableRow<9>, 8> suddenEnlargement = {{
    {1.0, {0, 0, 0, 0, 0, 0, 0, 0, 0}},
    {1.2, {0.11, 0.10, 0.10, 0.10, 0.10, 0.10, 0.10, 0.09, 0.09}},
    {1.4, {0.26, 0.26, 0.25, 0.24, 0.24, 0.24, 0.24, 0.23, 0.23}},
    {1.6, {0.40, 0.39, 0.38, 0.37, 0.37, 0.36, 0.36, 0.35, 0.35}},
    {1.8, {0.51, 0.49, 0.48, 0.47, 0.47, 0.46, 0.46, 0.45, 0.44}},
    {2.0, {0.60, 0.58, 0.56, 0.55, 0.55, 0.54, 0.53, 0.52, 0.52}},
    {2.5, {0.74, 0.72, 0.70, 0.69, 0.68, 0.67, 0.66, 0.65, 0.64}},
    {3.0, {0.83, 0.80, 0.78, 0.77, 0.76, 0.75, 0.74, 0.73, 0.72}},
}};

// Table 7-4d. From memory: 1.6 at 50 degrees, 1.8 at 6 and 15, 2.0 at 25 and 30, 2.5 at 60, 3.0 at 2 and 10.
constexpr std::array<TableRow<11>, 9> gradualEnlargement = {{
    {1.0, {0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0}},
    {1.1, {0.01, 0.01, 0.03, 0.05, 0.10, 0.13, 0.16, 0.18, 0.19, 0.21, 0.23}},
    {1.2, {0.02, 0.02, 0.04, 0.09, 0.16, 0.21, 0.25, 0.29, 0.31, 0.35, 0.37}},
    {1.4, {0.02, 0.03, 0.06, 0.12, 0.23, 0.30, 0.36, 0.41, 0.44, 0.50, 0.53}},
    {1.6, {0.03, 0.04, 0.07, 0.14, 0.26, 0.35, 0.42, 0.47, 0.51, 0.57, 0.61}},
    {1.8, {0.03, 0.04, 0.07, 0.15, 0.28, 0.37, 0.44, 0.50, 0.54, 0.61, 0.65}},
    {2.0, {0.03, 0.04, 0.07, 0.16, 0.29, 0.38, 0.46, 0.52, 0.56, 0.63, 0.68}},
    {2.5, {0.03, 0.04, 0.08, 0.16, 0.30, 0.39, 0.48, 0.54, 0.58, 0.65, 0.70}},
    {3.0, {0.03, 0.04, 0.08, 0.16, 0.31, 0.40, 0.48, 0.55, 0.59, 0.66, 0.71}},
}};

// Table 7-4e. From memory: 1.2 at 5 ft/s, 1.4 at 10, 2.0 at 5.
constexpr std::array<TableRow<9>, 7> suddenContraction = {{
    {1.0, {0, 0, 0, 0, 0, 0, 0, 0, 0}},
    {1.1, {0.03, 0.04, 0.04, 0.04, 0.04, 0.04, 0.04, 0.04, 0.04}},
    {1.2, {0.07, 0.07, 0.07, 0.07, 0.07, 0.07, 0.07, 0.08, 0.08}},
    {1.4, {0.17, 0.17, 0.17, 0.17, 0.17, 0.17, 0.17, 0.18, 0.18}},
    {1.6, {0.26, 0.26, 0.26, 0.26, 0.26, 0.26, 0.26, 0.26, 0.26}},
    {2.0, {0.38, 0.38, 0.37, 0.37, 0.37, 0.37, 0.36, 0.36, 0.35}},
    {3.0, {0.44, 0.44, 0.44, 0.43, 0.43, 0.43, 0.42, 0.42, 0.41}},
}};

template <std::size_t Size>
double between(const std::array<double, Size>& at, const std::array<double, Size>& values, double x) {
    if (x <= at.front()) return values.front();
    if (x >= at.back()) return values.back();
    const std::size_t high = static_cast<std::size_t>(std::upper_bound(at.begin(), at.end(), x) - at.begin());
    const double share = (x - at[high - 1]) / (at[high] - at[high - 1]);
    return values[high - 1] + (values[high] - values[high - 1]) * share;
}

template <std::size_t Rows, std::size_t Columns>
double lookUp(const std::array<TableRow<Columns>, Rows>& table, const std::array<double, Columns>& at,
              double ratio, double x) {
    std::array<double, Rows> ratios{};
    std::array<double, Rows> values{};
    for (std::size_t row = 0; row < Rows; ++row) {
        ratios[row] = table[row].ratio;
        values[row] = between(at, table[row].k, x);
    }
    return between(ratios, values, ratio);
}

// 36 in over 12 in is 3 but for the last place.
constexpr double largestRatio = 3 * (1 + 1e-12);

void requireRatio(double ratio) {
    if (!(ratio >= 1 && ratio <= largestRatio))
        throw Error(Error::Kind::OutsideValidity, "ratio", plain(ratio, 3), {"1 to 3", "de 1 a 3"});
}

Length velocityHead(Flow flow, Length bore) {
    const double velocity = (flow / fullArea(bore)).metresPerSecond();
    return Length::metres(velocity * velocity / (2 * gravity));
}

}  // namespace

double enlargementK(double ratio, Velocity before) {
    requireRatio(ratio);
    requirePositive(before, "velocity");
    return lookUp(suddenEnlargement, velocities, ratio, before.feetPerSecond());
}

double enlargementK(double ratio, Angle cone) {
    requireRatio(ratio);
    if (!(cone.degrees() >= 2 && cone.degrees() <= 60))
        throw Error(Error::Kind::OutsideValidity, "cone angle", plain(cone.degrees()),
                    {"2 to 60 degrees; a blunter change of size is a sudden one",
                     "de 2 a 60 grados; un cambio más brusco es súbito"});
    return lookUp(gradualEnlargement, cones, ratio, cone.degrees());
}

double contractionK(double ratio, Velocity smaller) {
    requireRatio(ratio);
    requirePositive(smaller, "velocity");
    return lookUp(suddenContraction, velocities, ratio, smaller.feetPerSecond());
}

Length transitionLoss(Length bore, Length next, Flow flow, std::optional<Angle> cone) {
    requirePositive(bore, "pipe");
    requirePositive(next, "next pipe");
    requirePositive(flow, "flow");
    const double ratio = next > bore ? next / bore : bore / next;
    if (ratio > largestRatio)
        throw Error(
            Error::Kind::OutsideValidity, "next pipe",
            plain(next.inches(), 3) + " in (" + plain(next.millimetres(), 1) + " mm)",
            {"a third to three times the pipe before it", "de un tercio a tres veces el tubo anterior"});
    if (next < bore) {
        const Length head = velocityHead(flow, next);
        return head * contractionK(ratio, flow / fullArea(next));
    }
    const Length head = velocityHead(flow, bore);
    return head * (cone ? enlargementK(ratio, *cone) : enlargementK(ratio, flow / fullArea(bore)));
}

Length bendLoss(Length bore, Flow flow, Angle turn) {
    requirePositive(bore, "pipe");
    requirePositive(flow, "flow");
    requireBetween(turn.degrees(), 0, 90, "turn");
    return velocityHead(flow, bore) * (0.0033 * turn.degrees());
}

Length junctionLoss(const FullPipe& line, const FullPipe& side, Angle angle, Length boreBelow) {
    requirePositive(line.bore, "pipe");
    requirePositive(side.bore, "side pipe");
    requirePositive(boreBelow, "pipe below");
    requireNotNegative(line.flow, "flow");
    requirePositive(side.flow, "side flow");
    requireBetween(angle.degrees(), 0, 90, "angle");
    const Flow below = line.flow + side.flow;
    const auto momentum = [](Flow flow, Length bore) {
        return flow.si() * (flow / fullArea(bore)).metresPerSecond();
    };
    const double along = std::cos(angle.degrees() * std::numbers::pi / 180);
    const double change =
        momentum(below, boreBelow) - momentum(line.flow, line.bore) - momentum(side.flow, side.bore) * along;
    const double areas = (fullArea(boreBelow) + fullArea(line.bore)).si();
    const Length loss = Length::metres(change / (0.5 * gravity * areas)) +
                        velocityHead(line.flow, line.bore) - velocityHead(below, boreBelow);
    if (loss < Length{})
        throw Error(
            Error::Kind::OutsideValidity, "side flow",
            Text{"side flow pushes the line: by this method head is gained, which is not to be relied on.",
                 "side flow empuja la línea: con este método se gana carga, con lo que no se debe contar."});
    return loss;
}

}  // namespace trenchbook
