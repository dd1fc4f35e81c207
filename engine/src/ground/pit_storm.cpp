#include "trenchbook/ground/pit_storm.h"

#include <boost/math/tools/toms748_solve.hpp>
#include <cmath>
#include <limits>
#include <numbers>

#include "core/phi.h"
#include "trenchbook/core/error.h"

namespace trenchbook {
namespace {

// The pit's water, moved forward through stretches of even inflow. Plain numbers in SI.
class Water {
  public:
    Water(const RockPit& pit, SoilRate rate, double depth)
        : storage_(pit.voids * pit.bottom().si()),
          bottomLoss_(rate.si() * pit.bottom().si()),
          wallLoss_(rate.si() * pit.sideShare * pit.perimeter().si()),
          full_(pit.rockDepth.si()),
          depth_(depth),
          highest_(depth) {}

    double now = 0, soaked = 0, overflow = 0;
    double highestAt = 0, firstOverflow = -1;
    double depth() const { return depth_; }
    double highest() const { return highest_; }
    double stored() const { return storage_ * depth_; }

    // Time in which the depth would fall to nothing without inflow.
    double timeToEmpty() const {
        return depth_ * storage_ / bottomLoss_ * logRatio(wallLoss_ * depth_ / bottomLoss_);
    }

    void advance(double inflow, double until) {
        while (now < until) {
            const double left = until - now;
            const double rise = (inflow - bottomLoss_ - wallLoss_ * depth_) / storage_;
            if (depth_ == full_ && rise >= 0) {
                if (rise > 0 && firstOverflow < 0) firstOverflow = now;
                overflow += rise * storage_ * left;
                soaked += (bottomLoss_ + wallLoss_ * full_) * left;
                now = until;
            } else if (depth_ == 0 && rise <= 0) {
                soaked += inflow * left;
                now = until;
            } else {
                move(rise, left, until);
            }
        }
    }

  private:
    // One stretch with the water neither at the top nor at the bottom: to its end, or to where it gets there.
    void move(double rise, double left, double until) {
        const double decay = wallLoss_ / storage_;
        double reached = depth_ + rise * left * phi1(-decay * left);
        double time = left;
        if (reached > full_ || reached < 0) {
            reached = reached < 0 ? 0 : full_;
            const double linear = (reached - depth_) / rise;
            time = std::min(left, linear * logRatio(-decay * linear));
        }
        const double depthTime = depth_ * time + rise * time * time * phi2(-decay * time);
        soaked += bottomLoss_ * time + wallLoss_ * depthTime;
        now = time == left ? until : now + time;
        depth_ = reached;
        if (depth_ > highest_) {
            highest_ = depth_;
            highestAt = now;
        }
    }

    double storage_;     // per depth
    double bottomLoss_;  // per time
    double wallLoss_;    // per time and depth
    double full_, depth_, highest_;
};

void require(std::span<const StormStep> storm, Area areaTimesC, const RockPit& pit, SoilRate rate) {
    using Kind = Error::Kind;
    require(pit);
    requirePositive(areaTimesC, "area x C");
    requirePositive(rate, "rate");
    if (storm.empty())
        throw Error(Kind::BadArgument, "storm", Text{"empty", "una tabla vacía"},
                    {"rows of minute and depth", "filas de minuto y altura"});
    Duration before{};
    for (std::size_t i = 0; i < storm.size(); ++i) {
        if (!(storm[i].end > before) || std::isinf(storm[i].end.si())) {
            const std::string row = std::to_string(i + 1), minute = plain(storm[i].end.minutes());
            throw Error(Kind::BadArgument, "storm",
                        {"storm: minute " + minute + " in row " + row +
                             "; allowed: minutes that rise from row to row.",
                         "tormenta: minuto " + minute + " en la fila " + row +
                             "; se admite: minutos que aumentan de fila en fila."});
        }
        if (!(storm[i].depth.si() >= 0) || std::isinf(storm[i].depth.si())) {
            const std::string row = std::to_string(i + 1);
            throw Error(
                Kind::BadArgument, "storm",
                {"storm: a depth of rain below 0 in row " + row + "; allowed: 0 or more.",
                 "tormenta: altura de lluvia menor que 0 en la fila " + row + "; se admite: 0 o más."});
        }
        before = storm[i].end;
    }
}

double advanceStep(Water& water, const StormStep& step, Area areaTimesC) {
    const double volume = step.depth.si() * areaTimesC.si();
    const double end = step.end.si();
    water.advance(volume / (end - water.now), end);
    return volume;
}

}  // namespace

PitStorm runStorm(std::span<const StormStep> storm, Area areaTimesC, const RockPit& pit, SoilRate rate,
                  Length startWater, std::vector<PitState>* course) {
    require(storm, areaTimesC, pit, rate);
    requireNotNegative(startWater, "start water");
    if (startWater > pit.rockDepth)
        throw Error(Error::Kind::BadArgument, "start water", plain(startWater.feet()),
                    {"at most the rock depth of " + plain(pit.rockDepth.feet()) + " ft (" +
                         plain(pit.rockDepth.metres()) + " m)",
                     "como máximo la altura de piedra, " + plain(pit.rockDepth.feet()) + " ft (" +
                         plain(pit.rockDepth.metres()) + " m)"});

    Water water(pit, rate, startWater.si());
    const double start = water.stored();
    double inflow = 0;
    if (course != nullptr) course->clear();
    for (const StormStep& step : storm) {
        inflow += advanceStep(water, step, areaTimesC);
        if (course != nullptr)
            course->push_back({step.end, Length::fromSi(water.depth()), Volume::fromSi(water.soaked),
                               Volume::fromSi(water.overflow)});
    }
    const double toEmpty = water.timeToEmpty();
    water.advance(0, water.now + toEmpty);

    PitStorm result;
    result.highest = Length::fromSi(water.highest());
    result.highestAt = Duration::seconds(water.highestAt);
    if (water.firstOverflow >= 0) result.firstOverflow = Duration::seconds(water.firstOverflow);
    result.overflow = Volume::fromSi(water.overflow);
    result.soaked = Volume::fromSi(water.soaked);
    result.toEmpty = Duration::seconds(toEmpty);
    const double all = start + inflow;
    if (all > 0) result.balanceError = std::fabs(all - water.soaked - water.overflow - water.stored()) / all;
    return result;
}

Length shortestPit(std::span<const StormStep> storm, Area areaTimesC, const RockPit& pit, SoilRate rate) {
    if (!pit.round) requirePositive(pit.width, "width");
    RockPit trial = pit;
    trial.length = Length::metres(1);  // any length: it is what is asked for
    require(storm, areaTimesC, trial, rate);
    double rain = 0;
    for (const StormStep& step : storm) rain += step.depth.si();
    if (rain == 0)
        throw Error(Error::Kind::NoSolution, "storm",
                    {"storm brings no rain; there is no pit to size.",
                     "la tormenta no trae lluvia; no hay pozo que dimensionar."});

    // How far the water would rise over the rock if it could: falls as the pit gets longer.
    const auto excess = [&](double length) {
        RockPit tall = trial;
        tall.length = Length::metres(length);
        tall.rockDepth = Length::metres(std::numeric_limits<double>::infinity());
        Water water(tall, rate, 0);
        for (const StormStep& step : storm) advanceStep(water, step, areaTimesC);
        return water.highest() - pit.rockDepth.si();
    };
    // A pit that holds all the rain at once, without any soaking away, is long enough.
    const double bottom = rain * areaTimesC.si() / (pit.voids * pit.rockDepth.si());
    const double longest =
        (1 + 1e-12) * (pit.round ? std::sqrt(bottom / (std::numbers::pi / 4)) : bottom / pit.width.si());
    const double least = longest * 1e-6;
    if (excess(least) <= 0)
        throw Error(
            Error::Kind::NoSolution, "storm",
            {"this soil takes the storm as it comes: any pit of this width and depth does.",
             "este suelo absorbe la tormenta según cae: basta cualquier pozo de este ancho y altura."});
    std::uintmax_t steps = 200;
    const auto close = [](double a, double b) { return b - a <= 1e-11 * b; };
    return Length::metres(boost::math::tools::toms748_solve(excess, least, longest, close, steps).second);
}

}  // namespace trenchbook
