#include "trenchbook/job/pit_section.h"

#include "job/solve_parts.h"
#include "trenchbook/core/error.h"
#include "trenchbook/ground/pit_storm.h"
#include "trenchbook/pipe/stock.h"
#include "trenchbook/water/storm.h"

namespace trenchbook {
namespace {

constexpr int stormSteps = 48, drySteps = 24;
constexpr Duration dryStep = Duration::hours(2);

Storm stormOf(const PitStormAsked& asked, double returnYears) {
    const auto table = [&] { return asked.table->depth(asked.lasts, returnYears); };
    if (!asked.rain && !asked.table) return {};
    const Length rain = asked.rain ? *asked.rain : table();
    const Duration step = asked.lasts / stormSteps;
    const std::string shape = nameKey(asked.shape);
    if (shape == "even") {
        Storm storm;
        for (int i = 1; i <= stormSteps; ++i) storm.push_back({step * i, rain / stormSteps});
        return storm;
    }
    if (shape == "nested") {
        if (!asked.table) return {};
        Storm storm = alternatingBlocks(*asked.table, asked.lasts, returnYears, step);
        for (StormStep& one : storm) one.depth = one.depth * (rain / table());
        return storm;
    }
    if (asked.lasts.si() != Duration::hours(24).si()) return {};
    for (const auto& [name, type] :
         {std::pair("type i", StormType::I), std::pair("type ia", StormType::IA),
          std::pair("type ii", StormType::II), std::pair("type iii", StormType::III)})
        if (shape == name) return nrcsStorm(rain, type, step);
    return {};
}

void runThrough(const Job& job, const SolvedJob& solved, const RockPit& pit, const PitStormAsked& asked,
                PitSection& section) {
    const std::optional<Area>& area = solved.pit.areaTimesC;
    if (!area || !(*area > Area{}) || !job.pit.rate) return;
    try {
        Storm storm = stormOf(asked, job.facts.returnYears);
        if (storm.empty()) return;
        section.highest = runStorm(storm, *area, pit, *job.pit.rate).highest;
        for (int i = 0; i < drySteps; ++i) storm.push_back({storm.back().end + dryStep, Length{}});
        std::vector<PitState> course;
        runStorm(storm, *area, pit, *job.pit.rate, {}, &course);
        for (const PitState& state : course)
            section.course.push_back({state.end, state.water, state.soaked, state.overflow});
    } catch (const Error&) {
        section.highest.reset();  // the sheet Pit tells why
        section.course.clear();
    }
}

}  // namespace

std::optional<PitSection> pitSectionOf(const Job& job, const SolvedJob& solved, const PitStormAsked& storm) {
    if (nameKey(job.pit.node).empty()) return std::nullopt;
    const std::size_t at = solved.lines.node(job.pit.node);
    const Node* node = nodeNamed(job, job.pit.node);
    const std::optional<RockPit> pit = pitAsBuilt(job);
    if (!pit || node == nullptr || !node->ground) return std::nullopt;
    try {
        require(*pit);
    } catch (const Error&) {
        return std::nullopt;
    }
    PitSection section{.length = pit->length,
                       .rockDepth = pit->rockDepth,
                       .soilOver = job.pit.soilOver.value_or(Length{}),
                       .ground = *node->ground,
                       .rim = node->rim(),
                       .units = job.units};
    // Of several pipes the lowest.
    for (std::size_t row = 0; row < solved.runs.size(); ++row) {
        const std::optional<Length>& invert = solved.runs[row].invertDown;
        if (solved.lines.toNode(row) != at || !invert || (section.invert && *section.invert <= *invert))
            continue;
        section.invert = invert;
        if (const std::optional<Pipe>& pipe = job.runs[row].pipe; pipe && pipe->outside) {
            section.outside = pipe->outside;
            section.invert = *invert - wallOf(*pipe);
        } else {
            section.outside = pipe ? std::optional(pipe->bore) : std::nullopt;
        }
    }
    if (const std::optional<double> high = job.pit.facts[PitFact::HighWater])
        section.highWater = section.ground - Length::fromSi(*high);
    runThrough(job, solved, *pit, storm, section);
    return section;
}

}  // namespace trenchbook
