#include "trenchbook/water/storm.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <functional>

#include "trenchbook/core/error.h"

namespace trenchbook {
namespace {

constexpr Duration halfHour = Duration::minutes(30);
constexpr Duration day = Duration::hours(24);
constexpr double mostSteps = 20000;

// Share of the day's rain by each half hour from 0 to 24 h: types I, IA, II, III. FHWA HDS-2, table 6.5.
constexpr std::array<std::array<double, 49>, 4> cumulative = {{
    {0,     0.008, 0.017, 0.026, 0.035, 0.045, 0.055, 0.065, 0.076, 0.087, 0.099, 0.112, 0.126,
     0.140, 0.156, 0.174, 0.194, 0.219, 0.254, 0.303, 0.515, 0.583, 0.624, 0.655, 0.682, 0.706,
     0.728, 0.748, 0.766, 0.783, 0.799, 0.815, 0.830, 0.844, 0.857, 0.870, 0.882, 0.893, 0.905,
     0.916, 0.926, 0.936, 0.946, 0.956, 0.965, 0.974, 0.983, 0.992, 1.000},
    {0,     0.010, 0.020, 0.035, 0.050, 0.067, 0.082, 0.098, 0.116, 0.135, 0.156, 0.180, 0.206,
     0.237, 0.268, 0.310, 0.425, 0.480, 0.520, 0.550, 0.577, 0.601, 0.624, 0.645, 0.664, 0.683,
     0.701, 0.719, 0.736, 0.753, 0.769, 0.785, 0.800, 0.815, 0.830, 0.844, 0.858, 0.871, 0.884,
     0.896, 0.908, 0.920, 0.932, 0.944, 0.956, 0.967, 0.978, 0.989, 1.000},
    {0,     0.005, 0.011, 0.016, 0.022, 0.028, 0.035, 0.041, 0.048, 0.056, 0.063, 0.071, 0.080,
     0.089, 0.098, 0.109, 0.120, 0.133, 0.147, 0.162, 0.181, 0.204, 0.235, 0.283, 0.663, 0.735,
     0.772, 0.799, 0.820, 0.838, 0.854, 0.868, 0.880, 0.891, 0.902, 0.912, 0.921, 0.929, 0.937,
     0.945, 0.952, 0.959, 0.965, 0.972, 0.978, 0.984, 0.989, 0.995, 1.000},
    {0,     0.005, 0.010, 0.015, 0.020, 0.025, 0.031, 0.037, 0.043, 0.050, 0.057, 0.064, 0.072,
     0.081, 0.091, 0.102, 0.114, 0.128, 0.146, 0.166, 0.189, 0.212, 0.250, 0.298, 0.500, 0.702,
     0.750, 0.784, 0.811, 0.834, 0.854, 0.872, 0.886, 0.898, 0.910, 0.920, 0.928, 0.936, 0.943,
     0.950, 0.957, 0.963, 0.969, 0.975, 0.981, 0.986, 0.991, 0.996, 1.000},
}};

std::size_t stepsIn(Duration duration, Duration step) {
    requirePositive(duration.minutes(), "duration");
    requirePositive(step.minutes(), "step");
    const double count = std::round(duration / step);
    const std::string given = plain(step.minutes());
    if (std::fabs(duration / step - count) > 1e-6 * count || count < 1) {
        const std::string whole = plain(duration.minutes());
        throw Error(Error::Kind::BadArgument, "step",
                    Text{"step is " + given + " min, which does not divide the storm's " + whole +
                             " min into equal steps.",
                         "step es de " + given + " min, que no divide los " + whole +
                             " min de la tormenta en pasos iguales."});
    }
    if (count > mostSteps)
        throw Error(
            Error::Kind::BadArgument, "step", given + " min",
            {"long enough for at most 20000 steps", "tan largo que resulten como máximo 20000 pasos"});
    return static_cast<std::size_t>(count);
}

Duration endOf(std::size_t index, std::size_t count, Duration duration) {
    return duration * (static_cast<double>(index + 1) / static_cast<double>(count));
}

}  // namespace

Storm alternatingBlocks(const RainTable& table, Duration duration, double returnYears, Duration step) {
    const std::size_t count = stepsIn(duration, step);
    std::vector<Length> blocks(count);
    Length before;
    for (std::size_t i = 0; i < count; ++i) {
        const Length total = table.depth(endOf(i, count, duration), returnYears);
        blocks[i] = total - before;
        before = total;
    }
    // A table's rounding can make a later increment a hair larger than an earlier one.
    std::sort(blocks.begin(), blocks.end(), std::greater<>());

    Storm storm(count);
    const std::size_t middle = (count - 1) / 2;
    for (std::size_t rank = 0; rank < count; ++rank) {
        const std::size_t away = (rank + 1) / 2;
        const std::size_t at = rank % 2 == 1 ? middle + away : middle - away;
        storm[at] = {endOf(at, count, duration), blocks[rank]};
    }
    return storm;
}

double nrcsShare(StormType type, Duration time) {
    requireBetween(time.hours(), 0, 24, "time");
    const auto& shares = cumulative[static_cast<std::size_t>(type)];
    const double at = time / halfHour;
    const auto low = std::min(static_cast<std::size_t>(at), shares.size() - 2);
    return std::lerp(shares[low], shares[low + 1], at - static_cast<double>(low));
}

Storm nrcsStorm(Length dayRain, StormType type, Duration step) {
    requirePositive(dayRain, "rain");
    const std::size_t count = stepsIn(day, step);
    Storm storm(count);
    double before = 0;
    for (std::size_t i = 0; i < count; ++i) {
        const Duration end = endOf(i, count, day);
        const double share = nrcsShare(type, end);
        storm[i] = {end, dayRain * (share - before)};
        before = share;
    }
    return storm;
}

Storm designStorm(const RainTable& table, Duration duration, double returnYears, Duration step,
                  std::string_view shape) {
    std::string name;
    for (char c : shape) {
        if (c >= 'A' && c <= 'Z') c = static_cast<char>(c + 32);
        if (c != ' ' && c != '-' && c != '_') name += c;
    }
    if (name == "centered" || name == "centred" || name == "alternatingblocks")
        return alternatingBlocks(table, duration, returnYears, step);
    static constexpr std::array<std::pair<std::string_view, StormType>, 4> types = {
        {{"typei", StormType::I},
         {"typeia", StormType::IA},
         {"typeii", StormType::II},
         {"typeiii", StormType::III}}};
    for (const auto& [known, type] : types) {
        if (name != known) continue;
        if (std::fabs(duration / day - 1) > 1e-9) {
            const std::string given = plain(duration.minutes());
            throw Error(Error::Kind::OutsideValidity, "duration",
                        Text{"duration is " + given +
                                 " minutes; the NRCS storm types are 24 hours long, 1440 minutes.",
                             "duration es de " + given +
                                 " minutos; las tormentas tipo NRCS duran 24 horas, 1440 minutos."});
        }
        return nrcsStorm(table.depth(day, returnYears), type, step);
    }
    throw Error(Error::Kind::BadArgument, "shape", "\"" + std::string(shape) + "\"",
                Text::same("\"centered\", \"type I\", \"type IA\", \"type II\", \"type III\""));
}

}  // namespace trenchbook
