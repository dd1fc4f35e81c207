// The side tables: inlets, crossings, outlets, pumps, the pit.
#include "job/view_parts.h"

namespace trenchbook::views {
namespace {

template <auto member>
std::optional<double> inlet(const Job& job, const SolvedJob& solved, std::size_t row) {
    return number<&SolvedJob::inlets, member>(job, solved, row);
}
std::optional<double> takes(const Job&, const SolvedJob& solved, std::size_t row) {
    return si(solved.inlets[row].takes());
}
std::optional<double> shareOfInlet(const Job&, const SolvedJob& solved, std::size_t row) {
    const SolvedInlet& inlet = solved.inlets[row];
    const std::optional<Flow> takes = inlet.takes();
    if (!inlet.flow || !takes || takes->si() <= 0) return std::nullopt;
    return *inlet.flow / *takes;
}

template <auto member>
std::optional<double> crossing(const Job& job, const SolvedJob& solved, std::size_t row) {
    return number<&SolvedJob::crossings, member>(job, solved, row);
}
std::optional<double> runRow(const Job&, const SolvedJob& solved, std::size_t row) {
    const std::size_t run = solved.crossings[row].run;
    return run == Network::none ? std::nullopt : std::optional(static_cast<double>(run + 1));
}
Text side(const Job& job, const SolvedJob&, std::size_t row) {
    const std::optional<bool>& above = job.crossings[row].passesAbove;
    if (!above) return {};
    return *above ? Text{"below", "debajo"} : Text{"above", "encima"};
}
Text line(const Job& job, const SolvedJob& solved, std::size_t row) {
    const std::size_t run = solved.crossings[row].run;
    return run == Network::none ? Text() : Text::same(job.runs[run].line);
}

template <auto member>
std::optional<double> shot(const Job& job, const SolvedJob& solved, std::size_t row) {
    return number<&SolvedJob::shots, member>(job, solved, row);
}
std::optional<double> groundOf(const Job& job, const SolvedJob&, std::size_t row) {
    return si(job.shots[row].ground);
}
Text overIt(const Job&, const SolvedJob& solved, std::size_t row) {
    const std::optional<CoverSurface>& surface = solved.shots[row].surface;
    return surface ? coverSurfaces()[static_cast<std::size_t>(*surface)].name : Text();
}

template <auto member>
std::optional<double> outlet(const Job& job, const SolvedJob& solved, std::size_t row) {
    return number<&SolvedJob::outlets, member>(job, solved, row);
}

template <auto member>
std::optional<double> pump(const Job& job, const SolvedJob& solved, std::size_t row) {
    return number<&SolvedJob::pumps, member>(job, solved, row);
}
Text grateAt(const Job&, const SolvedJob& solved, std::size_t row) {
    return Text::same(solved.pumps[row].grateAt);
}

template <auto member>
std::optional<double> pit(const Job&, const SolvedJob& solved, std::size_t) {
    return si(solved.pit.*member);
}
std::size_t one(const Job&, const SolvedJob&) { return 1; }
bool noPit(const Job& job, const SolvedJob&, std::size_t) { return job.pit.node.empty(); }
// Findings of the pit name no row.
Text pitVerdict(const Job& job, const SolvedJob& solved, std::size_t) {
    return verdictWord<Part::Pit>(job, solved, Finding::whole);
}
Text pitCheck(const Job& job, const SolvedJob& solved, std::size_t) {
    return check<Part::Pit>(job, solved, Finding::whole);
}

}  // namespace

NumberView inletNumbers() {
    using I = SolvedInlet;
    return {.columns = {{"Area x C", Unit::SquareFeet, inlet<&I::areaTimesC>},
                        {"Flow", Unit::Gpm, inlet<&I::flow>},
                        {"Inlet takes", Unit::Gpm, inlet<&I::inletTakes>, false},
                        {"Outlet takes", Unit::Gpm, inlet<&I::outletTakes>, false},
                        {"Takes", Unit::Gpm, takes, false},
                        {"Share", Unit::Share, shareOfInlet, false}},
            .rows = rowsOf<&Job::inlets>,
            .blank = isBlank<&Job::inlets>};
}
WordView inletWords() {
    return {.columns = {{"Verdict", verdictWord<Part::Water>}, {"Check", check<Part::Water>}},
            .rows = rowsOf<&Job::inlets>,
            .blank = isBlank<&Job::inlets>};
}

NumberView shotNumbers() {
    using S = SolvedShot;
    return {.columns = {{"Ground", Unit::Feet, groundOf},
                        {"Invert", Unit::Feet, shot<&S::invert>},
                        {"Cover", Unit::Inches, shot<&S::cover>},
                        {"Cover asked", Unit::Inches, shot<&S::coverAsked>, false},
                        {"Cut", Unit::Feet, shot<&S::cut>}},
            .rows = rowsOf<&Job::shots>,
            .blank = isBlank<&Job::shots>};
}
WordView shotWords() {
    return {.columns = {{"Verdict", verdictWord<Part::Ground>},
                        {"Check", check<Part::Ground>},
                        {"Counts as", overIt}},
            .rows = rowsOf<&Job::shots>,
            .blank = isBlank<&Job::shots>};
}

NumberView crossingNumbers() {
    using C = SolvedCrossing;
    return {.columns = {{"Row", Unit::Number, runRow},
                        {"Ground", Unit::Feet, crossing<&C::ground>},
                        {"Our invert", Unit::Feet, crossing<&C::ourInvert>},
                        {"Our top", Unit::Feet, crossing<&C::ourTop>},
                        {"Our bottom", Unit::Feet, crossing<&C::ourBottom>},
                        {"Its top", Unit::Feet, crossing<&C::itsTop>},
                        {"Its bottom", Unit::Feet, crossing<&C::itsBottom>},
                        {"Clearance", Unit::Inches, crossing<&C::clearance>},
                        {"Hand-dig", Unit::Feet, crossing<&C::handDig>},
                        {"Kept level", Unit::Feet, crossing<&C::keptLevel>, false}},
            .rows = rowsOf<&Job::crossings>,
            .blank = isBlank<&Job::crossings>};
}
WordView crossingWords() {
    return {.columns = {{"Verdict", verdictWord<Part::Crossings>},
                        {"Check", check<Part::Crossings>},
                        {"Kept side", side},
                        {"On line", line}},
            .rows = rowsOf<&Job::crossings>,
            .blank = isBlank<&Job::crossings>};
}

NumberView outletNumbers() {
    using R = SolvedOutlet;
    return {.columns = {{"Line's flow", Unit::Gpm, outlet<&R::lineFlow>},
                        {"Flow", Unit::Gpm, outlet<&R::flow>},
                        {"Water depth", Unit::Feet, outlet<&R::depth>, false},
                        {"Velocity", Unit::FeetPerSecond, outlet<&R::velocity>, false},
                        {"Critical depth", Unit::Feet, outlet<&R::critical>, false},
                        {"Spare depth", Unit::Feet, outlet<&R::spare>, false},
                        {"Over flow line", Unit::Feet, outlet<&R::overFlowLine>, false},
                        {"Ends in water", Unit::Feet, outlet<&R::water>, false},
                        {"Over rim", Unit::Feet, outlet<&R::head>, false},
                        {"Over clean rim", Unit::Feet, outlet<&R::headClean>, false},
                        {"End velocity", Unit::FeetPerSecond, outlet<&R::endVelocity>, false},
                        {"Stays in line", Unit::CubicFeet, outlet<&R::stays>, false},
                        {"Hours to empty", Unit::Hours, outlet<&R::empties>, false}},
            .rows = rowsOf<&Job::outlets>,
            .blank = isBlank<&Job::outlets>};
}
WordView outletWords() {
    return {.columns = {{"Verdict", verdictWord<Part::Outlets>}, {"Check", check<Part::Outlets>}},
            .rows = rowsOf<&Job::outlets>,
            .blank = isBlank<&Job::outlets>};
}

NumberView pumpNumbers() {
    using P = SolvedPump;
    return {.columns = {{"Inflow", Unit::Gpm, pump<&P::inflow>},
                        {"Lift", Unit::Feet, pump<&P::lift>, false},
                        {"Head at inflow", Unit::Feet, pump<&P::headAtInflow>, false},
                        {"Pump gives", Unit::Gpm, pump<&P::gives>, false},
                        {"At head", Unit::Feet, pump<&P::head>, false},
                        {"Speed", Unit::FeetPerSecond, pump<&P::speed>, false},
                        {"Between floats", Unit::Gallons, pump<&P::between>, false},
                        {"Starts an hour", Unit::Number, pump<&P::starts>, false},
                        {"Shortest run", Unit::Minutes, pump<&P::runs>, false},
                        {"Discharge holds", Unit::Gallons, pump<&P::runsBack>, false},
                        {"Under invert", Unit::Feet, pump<&P::underInvert>, false},
                        {"Lowest opening", Unit::Feet, pump<&P::lowestGrate>, false},
                        {"Power out minutes", Unit::Minutes, pump<&P::outage>, false},
                        {"Held down", Unit::Number, pump<&P::held>, false}},
            .rows = rowsOf<&Job::pumps>,
            .blank = isBlank<&Job::pumps>};
}
WordView pumpWords() {
    return {.columns = {{"Verdict", verdictWord<Part::Pump>},
                        {"Check", check<Part::Pump>},
                        {"Opening at", grateAt}},
            .rows = rowsOf<&Job::pumps>,
            .blank = isBlank<&Job::pumps>};
}

NumberView pitNumbers() {
    using P = SolvedPit;
    return {.columns = {{"Area x C into it", Unit::SquareFeet, pit<&P::areaTimesC>},
                        {"Flow at the tee", Unit::Gpm, pit<&P::flow>},
                        {"Water over the rim", Unit::Feet, pit<&P::rimHead>, false},
                        {"Bubble-up level", Unit::Feet, pit<&P::bubbleLevel>, false},
                        {"Water it holds", Unit::CubicFeet, pit<&P::storage>},
                        {"Rock", Unit::CubicYards, pit<&P::rock>},
                        {"Hours to empty", Unit::Hours, pit<&P::drains>},
                        {"Rain it holds", Unit::Inches, pit<&P::held>}},
            .rows = one,
            .blank = noPit};
}
WordView pitWords() {
    return {.columns = {{"Verdict", pitVerdict}, {"Check", pitCheck}}, .rows = one, .blank = noPit};
}

}  // namespace trenchbook::views
