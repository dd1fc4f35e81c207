#include "job/view_parts.h"
#include "trenchbook/core/error.h"
#include "trenchbook/core/tape.h"
#include "trenchbook/pipe/manning.h"

namespace trenchbook::views {
namespace {

template <auto member>
std::optional<double> run(const Job& job, const SolvedJob& solved, std::size_t row) {
    return number<&SolvedJob::runs, member>(job, solved, row);
}
// A member of what may be missing as a whole: part<&SolvedRun::water, &ReachWater::levelUp>.
template <auto whole, auto member>
std::optional<double> part(const Job&, const SolvedJob& solved, std::size_t row) {
    const auto& given = solved.runs[row].*whole;
    if (!given) return std::nullopt;
    const auto& value = *given.*member;
    if constexpr (requires { value.si(); })
        return value.si();
    else
        return static_cast<double>(value);
}

std::optional<double> drop(const Job&, const SolvedJob& solved, std::size_t row) {
    const SolvedRun& run = solved.runs[row];
    if (!run.invertUp || !run.invertDown) return std::nullopt;
    return (*run.invertUp - *run.invertDown).si();
}
std::optional<double> share(const Job&, const SolvedJob& solved, std::size_t row) {
    const SolvedRun& run = solved.runs[row];
    if (!run.flow || !run.capacity || run.capacity->si() <= 0) return std::nullopt;
    return *run.flow / *run.capacity;
}
std::optional<double> shear(const Job& job, const SolvedJob& solved, std::size_t row) {
    const Run& given = job.runs[row];
    const SolvedRun& run = solved.runs[row];
    if (!given.pipe || !run.slope || !run.flow) return std::nullopt;
    try {
        const double roughness = given.roughness > 0 ? given.roughness : given.pipe->roughness;
        return wallShear(given.pipe->bore, *run.slope, *run.flow, roughness).si();
    } catch (const Error&) {
        return std::nullopt;
    }
}
std::optional<double> travel(const Job& job, const SolvedJob& solved, std::size_t row) {
    const std::optional<Peak>& peak = solved.runs[row].peak;
    if (!peak || peak->velocity.si() <= 0 || !job.runs[row].length) return std::nullopt;
    return (*job.runs[row].length / peak->velocity).si();
}
// The run that carries this one's water on.
std::optional<std::size_t> below(const SolvedJob& solved, std::size_t row) {
    const std::size_t next = solved.lines.downstream(row);
    return next == Network::none ? std::nullopt : std::optional(next);
}
std::optional<double> rowBelow(const Job&, const SolvedJob& solved, std::size_t row) {
    const std::optional<std::size_t> next = below(solved, row);
    return next ? std::optional(static_cast<double>(*next + 1)) : std::nullopt;
}
std::optional<double> nextInvert(const Job&, const SolvedJob& solved, std::size_t row) {
    const std::optional<std::size_t> next = below(solved, row);
    return next ? si(solved.runs[*next].invertUp) : std::nullopt;
}
std::optional<double> length(const Job& job, const SolvedJob&, std::size_t row) {
    return si(job.runs[row].length);
}
std::optional<double> lossK(const Job&, const SolvedJob& solved, std::size_t row) {
    return solved.runs[row].lossK;
}
std::optional<double> cleanoutAtUpperNode(const Job&, const SolvedJob& solved, std::size_t row) {
    const std::optional<AskedCleanouts>& asked = solved.runs[row].asked;
    return asked ? std::optional(asked->atUpperNode ? 1.0 : 0.0) : std::nullopt;
}

Text pipeName(const Job& job, const SolvedJob&, std::size_t row) {
    const std::optional<Pipe>& pipe = job.runs[row].pipe;
    if (!pipe) return {};
    if (!pipe->name.empty()) return Text::same(pipe->name);
    const bool metric = job.units == UnitSystem::Metric;
    return Text::same(metric ? plain(pipe->bore.millimetres(), 1) + " mm"
                             : plain(pipe->bore.inches(), 3) + " in");
}
Text state(const Job&, const SolvedJob& solved, std::size_t row) {
    const std::optional<ReachWater>& water = solved.runs[row].water;
    return water ? stateText(water->state) : Text();
}
Text slopeInTape(const Job&, const SolvedJob& solved, std::size_t row) {
    const std::optional<Slope>& slope = solved.runs[row].slope;
    return slope && slope->si() > 0 ? Text::same(slopeText(*slope)) : Text();
}
Text segment(const Job& job, const SolvedJob&, std::size_t row) {
    return Text::same(job.runs[row].from + "-" + job.runs[row].to);
}

}  // namespace

NumberView runNumbers() {
    using R = SolvedRun;
    using U = Unit;
    return {.columns = {{"Length", U::Feet, length},
                        {"Ground up", U::Feet, run<&R::groundUp>},
                        {"Ground down", U::Feet, run<&R::groundDown>},
                        {"Invert up", U::Feet, run<&R::invertUp>},
                        {"Invert down", U::Feet, run<&R::invertDown>},
                        {"Slope %", U::Slope, run<&R::slope>},
                        {"Drop", U::Feet, drop},
                        {"Cover up", U::Inches, run<&R::coverUp>},
                        {"Cover down", U::Inches, run<&R::coverDown>},
                        {"Cover asked up", U::Inches, run<&R::coverAskedUp>, false},
                        {"Cover asked down", U::Inches, run<&R::coverAskedDown>, false},
                        {"Cut up", U::Feet, run<&R::cutUp>},
                        {"Cut down", U::Feet, run<&R::cutDown>},
                        {"Flow", U::Gpm, run<&R::flow>},
                        {"Capacity", U::Gpm, run<&R::capacity>},
                        {"% of capacity", U::Share, share},
                        {"Depth/dia.", U::Share, run<&R::depthShare>, false},
                        {"Velocity", U::FeetPerSecond, run<&R::velocity>},
                        {"Velocity full", U::FeetPerSecond, run<&R::velocityFull>},
                        {"Wall shear", U::PoundsPerSquareFoot, shear},
                        {"Water up", U::Feet, part<&R::water, &ReachWater::levelUp>},
                        {"Water down", U::Feet, part<&R::water, &ReachWater::levelDown>},
                        {"% of length full", U::Share, part<&R::water, &ReachWater::fullShare>},
                        {"Stands up", U::Feet, run<&R::standsUp>},
                        {"K", U::Number, lossK},
                        {"Extra fall", U::Feet, run<&R::spareFall>, false},
                        {"Since cleanout", U::Feet, part<&R::since, &SinceOpening::length>},
                        {"Bends since cleanout", U::Degrees, part<&R::since, &SinceOpening::turned>},
                        {"Sharp turns", U::Number, part<&R::since, &SinceOpening::sharpTurns>},
                        {"Station up", U::Feet, part<&R::station, &RunStation::up>},
                        {"Station", U::Feet, part<&R::station, &RunStation::down>},
                        {"Run no.", U::Number, part<&R::station, &RunStation::place>},
                        {"Row below", U::Number, rowBelow, false},
                        {"Next invert", U::Feet, nextInvert, false},
                        {"Cleanout at From", U::Number, cleanoutAtUpperNode, false},
                        {"Cleanouts along", U::Number, part<&R::asked, &AskedCleanouts::along>, false},
                        {"First cleanout", U::Feet, part<&R::asked, &AskedCleanouts::first>, false},
                        {"Area x C", U::SquareFeet, part<&R::peak, &Peak::areaTimesC>, false},
                        {"Minutes", U::Minutes, part<&R::peak, &Peak::time>, false},
                        {"Rain", U::InchesPerHour, part<&R::peak, &Peak::intensity>, false},
                        {"Travels at", U::FeetPerSecond, part<&R::peak, &Peak::velocity>, false},
                        {"Travel", U::Minutes, travel, false}},
            .rows = rowsOf<&Job::runs>,
            .blank = isBlank<&Job::runs>};
}

WordView runWords() {
    return {.columns = {{"Verdict", verdictWord<Part::Runs>},
                        {"Check", check<Part::Runs>},
                        {"State", state},
                        {"Slope in/ft", slopeInTape},
                        {"Pipe", pipeName},
                        {"Run", segment}},
            .rows = rowsOf<&Job::runs>,
            .blank = isBlank<&Job::runs>};
}

}  // namespace trenchbook::views
