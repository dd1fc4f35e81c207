#include "trenchbook/lines/peak.h"

#include <algorithm>

#include "lines/walk.h"
#include "trenchbook/core/error.h"
#include "trenchbook/pipe/circular.h"
#include "trenchbook/pipe/manning.h"

namespace trenchbook {
namespace {

// What comes together at a run's upper node.
struct Gathered {
    std::vector<double> areas;
    Duration time;
    bool known = true;  // every inlet can be read
    Text trouble;       // of the first that cannot
};

std::vector<Gathered> gatherInlets(const Network& lines, std::span<const PeakInlet> inlets) {
    std::vector<Gathered> gathered(lines.rows());
    for (const PeakInlet& inlet : inlets) {
        const std::size_t row = lines.entersAt(inlet.node);
        if (row == Network::none) continue;
        Gathered& here = gathered[row];
        if (!inlet.areaTimesC || !inlet.time) {
            here.known = false;
            if (here.trouble.empty()) here.trouble = inlet.trouble;
            continue;
        }
        here.areas.push_back(inlet.areaTimesC->si());
        here.time = std::max(here.time, *inlet.time);
    }
    return gathered;
}

Text missing(const Run& run, const Gathered& gathered) {
    if (Text why = run.trouble({"Length", "Pipe", "Slope", "Roughness"}); !why.empty()) return why;
    if (!run.length) return {"length is missing", "falta la longitud"};
    if (!run.pipe) return {"pipe is missing", "falta el tubo"};
    if (!run.slope) return {"slope is missing", "falta la pendiente"};
    if (gathered.known) return {};
    if (!gathered.trouble.empty()) return gathered.trouble;
    return {"an inlet's area x C or minutes are missing", "falta el área x C o los minutos de una entrada"};
}

// Adds a run that flows in: its area, and its time with the travel through it.
void join(Gathered& here, const Run& run, const Peak& peak) {
    here.areas.push_back(peak.areaTimesC.si());
    if (peak.flow.si() > 0) here.time = std::max(here.time, peak.time + *run.length / peak.velocity);
}

// The rain of this duration; none, with its reason, beyond the table's longest. Any other refusal is not the row's.
Worked<RainRate> rainOf(const RainTable& rain, Duration time, double returnYears, std::size_t row) {
    try {
        return {rain.intensity(std::max(time, rain.durations().front()), returnYears), {}};
    } catch (const Error& error) {
        if (error.argument() != "duration") throw;
        return cannot<RainRate>(row, {error.sentence(Language::English), error.sentence(Language::Spanish)});
    }
}

Velocity travelVelocity(const Run& run, Flow flow, double roughness, Travel travel) {
    if (flow.si() <= 0) return {};
    return travel == Travel::Area ? flow / fullArea(run.pipe->bore)
                                  : uniformVelocity(run.pipe->bore, *run.slope, flow, roughness);
}

}  // namespace

Travel travelNamed(std::string_view name) {
    const std::string key = nameKey(name);
    if (key == "flow") return Travel::Flow;
    if (key == "area") return Travel::Area;
    throw Error(Error::Kind::BadArgument, "travel", "\"" + std::string(name) + "\"",
                Text::same("\"flow\", \"area\""));
}

std::vector<Worked<Peak>> linePeaks(const Network& lines, std::span<const Run> runs,
                                    std::span<const PeakInlet> inlets, const RainTable& rain,
                                    double returnYears, Travel travel, std::optional<double> roughness) {
    requireRows(runs.size(), lines, "length");
    std::vector<Gathered> gathered = gatherInlets(lines, inlets);
    const auto lacks = [&](std::size_t row) { return missing(runs[row], gathered[row]); };
    return carryDown<Peak>(lines, lacks, [&](std::size_t row, const std::vector<Worked<Peak>>& rows) {
        Gathered& here = gathered[row];
        for (const std::size_t above : lines.upstream(row)) join(here, runs[above], *rows[above].value);
        const Worked<RainRate> intensity = rainOf(rain, here.time, returnYears, row);
        if (!intensity.value) return Worked<Peak>{{}, intensity.fault};
        Peak peak;
        peak.areaTimesC = Area::fromSi(orderlessSum(here.areas));
        peak.time = here.time;
        peak.intensity = *intensity.value;
        peak.flow = peak.areaTimesC * peak.intensity;
        peak.velocity = travelVelocity(runs[row], peak.flow, roughness.value_or(runs[row].manning()), travel);
        return Worked<Peak>{peak, {}};
    });
}

}  // namespace trenchbook
