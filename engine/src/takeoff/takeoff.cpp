#include "trenchbook/takeoff/takeoff.h"

#include <algorithm>
#include <tuple>

#include "takeoff/parts.h"
#include "trenchbook/core/error.h"

namespace trenchbook {
namespace counting {

Finding notCounted(Part part, std::size_t row, Standing rule, Text says, Severity severity) {
    return {.severity = severity,
            .part = part,
            .row = row,
            .rule = standingRule(rule).key,
            .says = std::move(says)};
}

std::string said(Length length, UnitSystem units, int decimals) {
    return units == UnitSystem::Metric ? plain(length.metres(), decimals) + " m"
                                       : plain(length.feet(), decimals) + " ft";
}
std::string said(Volume volume, UnitSystem units, int decimals) {
    return units == UnitSystem::Metric ? plain(volume.cubicMetres(), decimals) + " m3"
                                       : plain(volume.cubicYards(), decimals) + " cu yd";
}
std::string said(Area area, UnitSystem units, int decimals) {
    return units == UnitSystem::Metric ? plain(area.squareMetres(), decimals) + " m2"
                                       : plain(area.squareFeet(), decimals) + " sq ft";
}

Text joined(const std::vector<Text>& parts, const char* between) {
    Text all;
    for (const Text& part : parts) all += (all.empty() ? Text() : Text::same(between)) + part;
    return all;
}

Codes::Codes(const TakeoffTerms& terms) {
    for (const auto& [piece, code] : terms.buyAs) buyAs_.emplace(nameKey(piece), code);
    for (const auto& [code, stick] : terms.sticks) sticks_.emplace(nameKey(code), stick);
}
std::string Codes::bought(const std::string& code) const {
    const auto found = buyAs_.find(nameKey(code));
    return found != buyAs_.end() && !found->second.empty() ? found->second : code;
}
const Codes::Known& Codes::known(const Pipe& pipe) const {
    const auto same = [&](const Known& one) {
        return one.pipe.nominal == pipe.nominal && one.pipe.outside == pipe.outside &&
               one.pipe.perforated == pipe.perforated && one.pipe.soldByOutside == pipe.soldByOutside &&
               one.pipe.system == pipe.system;
    };
    if (const auto found = std::find_if(known_.begin(), known_.end(), same); found != known_.end())
        return *found;
    Known fresh{.pipe = pipe, .code = bought(pipeCode(pipe)), .stick = std::nullopt};
    const auto stick = sticks_.find(nameKey(fresh.code));
    if (stick != sticks_.end() && stick->second.si() > 0) fresh.stick = stick->second;
    return known_.emplace_back(std::move(fresh));
}

namespace {

// All lengths to cut: the runs, then the risers and discharges.
std::vector<PipeLength> lengthsOf(const Job& job, const Codes& codes, const Takeoff& takeoff) {
    std::vector<PipeLength> lengths;
    const auto add = [&](const Pipe& pipe, Length length, Text piece, std::optional<std::size_t> run) {
        lengths.push_back({.pipe = pipe,
                           .code = codes.boughtPipe(pipe),
                           .length = length,
                           .piece = std::move(piece),
                           .stick = codes.stick(pipe),
                           .run = run});
    };
    for (std::size_t row = 0; row < job.runs.size(); ++row) {
        const Run& run = job.runs[row];
        if (run.blank || run.existing || !run.length || !run.pipe || !run.pipe->outside) continue;
        add(*run.pipe, *run.length, {run.from + " to " + run.to, run.from + " a " + run.to}, row);
    }
    for (std::size_t row = 0; row < job.nodes.size(); ++row)
        for (const Riser& riser : takeoff.nodes[row].risers)
            if (riser.length)
                add(riser.pipe, *riser.length,
                    Text{"riser at ", "tubo vertical en "} + Text::same(job.nodes[row].name), std::nullopt);
    for (std::size_t row = 0; row < job.nodes.size(); ++row)
        if (const std::optional<Discharge>& discharge = takeoff.nodes[row].discharge;
            discharge && discharge->length)
            add(discharge->pipe, *discharge->length,
                Text{"discharge of ", "descarga de "} + Text::same(job.nodes[row].name), std::nullopt);
    return lengths;
}

// Each code on its own, so that a length that cannot be planned spoils the list of its own pipe alone.
CutList planOf(const std::vector<PipeLength>& lengths, Length kerf, std::vector<Finding>& findings) {
    std::vector<std::string> codes;
    for (const PipeLength& length : lengths)
        if (length.stick && std::find(codes.begin(), codes.end(), length.code) == codes.end())
            codes.push_back(length.code);
    CutList all;
    for (const std::string& code : codes) {
        std::vector<std::size_t> places;
        std::vector<PieceToCut> pieces;
        for (std::size_t i = 0; i < lengths.size(); ++i)
            if (lengths[i].stick && lengths[i].code == code) {
                places.push_back(i);
                pieces.push_back({code, lengths[i].length, *lengths[i].stick});
            }
        try {
            CutList list = cutList(pieces, kerf);
            for (CutRow& row : list.rows) row.piece = places[row.piece];
            all.rows.insert(all.rows.end(), list.rows.begin(), list.rows.end());
            all.sticks.insert(all.sticks.end(), list.sticks.begin(), list.sticks.end());
        } catch (const Error& error) {
            findings.push_back(
                notCounted(Part::Runs, Finding::whole, Standing::InputUnusable,
                           {"no cut list for " + code + ": " + error.sentence(Language::English),
                            "sin lista de cortes para " + code + ": " + error.sentence(Language::Spanish)},
                           Severity::No));
        }
    }
    return all;
}

std::vector<AskedHere> askedOf(const Job& job, const SolvedJob& solved) {
    std::vector<AskedHere> all;
    for (std::size_t row = 0; row < job.runs.size(); ++row) {
        const std::optional<AskedCleanouts>& asked = solved.runs[row].asked;
        if (job.runs[row].blank || !asked) continue;
        const auto along = static_cast<std::size_t>(asked->along);
        const std::string &from = job.runs[row].from, &to = job.runs[row].to;
        std::vector<Text> where;
        if (asked->atUpperNode) where.push_back({"at " + from, "en " + from});
        if (along > 0) {
            const std::string many = along > 1 ? " " + std::to_string(along) + " x" : "";
            const std::string first = said(asked->first, job.units, 0);
            where.push_back({"on " + from + " to " + to + many + ", " + first + " below " + from,
                             "en " + from + " a " + to + many + ", a " + first + " aguas abajo de " + from});
        }
        if (!where.empty()) all.push_back({row, along + (asked->atUpperNode ? 1 : 0), joined(where, "; ")});
    }
    return all;
}

void tellAsked(const std::vector<AskedHere>& asked, std::vector<Finding>& findings) {
    if (asked.empty()) return;
    std::size_t count = 0;
    std::vector<Text> where;
    for (const AskedHere& here : asked) {
        count += here.count;
        where.push_back(here.where);
    }
    findings.push_back(notCounted(Part::Runs, Finding::whole, Standing::TakeoffLeavesOut,
                                  Text{"the rules ask ", "las reglas piden "} +
                                      counted(count,
                                              {"more cleanout than Nodes has, not counted: ",
                                               "registro más que los de Nodes, sin contar: "},
                                              {"more cleanouts than Nodes has, not counted: ",
                                               "registros más que los de Nodes, sin contar: "}) +
                                      joined(where, "; "),
                                  Severity::Check));
}

void sortByRow(std::vector<Finding>& findings) {
    std::stable_sort(findings.begin(), findings.end(), [](const Finding& a, const Finding& b) {
        return std::tuple(a.part, a.row, a.severity) < std::tuple(b.part, b.row, b.severity);
    });
}

}  // namespace
}  // namespace counting

double NetAmount::in(UnitSystem units) const {
    const bool metric = units == UnitSystem::Metric;
    struct Reader {
        bool metric;
        double operator()(double count) const { return count; }
        double operator()(Length length) const { return metric ? length.metres() : length.feet(); }
        double operator()(Area area) const { return metric ? area.squareMetres() : area.squareFeet(); }
        double operator()(Volume volume) const { return metric ? volume.cubicMetres() : volume.cubicYards(); }
        double operator()(Weight weight) const { return metric ? weight.tonnes() : weight.shortTons(); }
    };
    return std::visit(Reader{metric}, value);
}

Text NetAmount::unit(UnitSystem units) const {
    static constexpr Unit none = Unit::Number;
    static constexpr Unit kinds[] = {none, Unit::Feet, Unit::SquareFeet, Unit::CubicYards};
    if (std::holds_alternative<Weight>(value))
        return units == UnitSystem::Metric ? Text::same("t") : Text{"short tons", "toneladas cortas"};
    const Unit kind = kinds[value.index()];
    if (kind == none) return {};
    return units == UnitSystem::Metric ? info(kind).metric : info(kind).us;
}

std::span<const Finding> Takeoff::of(Part part, std::size_t row) const {
    const auto before = [](const Finding& finding, const std::pair<Part, std::size_t>& wanted) {
        return std::pair(finding.part, finding.row) < wanted;
    };
    const auto after = [](const std::pair<Part, std::size_t>& wanted, const Finding& finding) {
        return wanted < std::pair(finding.part, finding.row);
    };
    const std::pair wanted(part, row);
    const auto first = std::lower_bound(findings.begin(), findings.end(), wanted, before);
    return {first, std::upper_bound(first, findings.end(), wanted, after)};
}

Takeoff takeOff(const Job& job, const SolvedJob& solved, const TakeoffTerms& terms) {
    requireShare(terms.sodShare, "sod share");
    requireNotNegative(terms.kerf, "kerf");
    requireNotNegative(terms.handDigMore, "hand digging");
    const counting::Codes codes(terms);
    std::vector<std::optional<Length>> sticks(job.runs.size());
    for (std::size_t row = 0; row < job.runs.size(); ++row)
        if (const std::optional<Pipe>& pipe = job.runs[row].pipe; pipe && pipe->outside)
            sticks[row] = codes.stick(*pipe);

    Takeoff takeoff;
    std::vector<Finding>& findings = takeoff.findings;
    takeoff.runs = counting::countRuns(job, solved, sticks, findings);
    takeoff.nodes = counting::countNodes(job, solved, codes, takeoff.runs, findings);
    takeoff.lengths = counting::lengthsOf(job, codes, takeoff);
    takeoff.cuts = counting::planOf(takeoff.lengths, terms.kerf, findings);
    takeoff.asked = counting::askedOf(job, solved);
    if (!terms.buyAsked) counting::tellAsked(takeoff.asked, findings);
    takeoff.bulk = counting::sumUp(job, solved, terms, takeoff, findings);
    takeoff.works = counting::worksOf(job, solved, terms, takeoff, findings);
    takeoff.lines = counting::linesOf(job, codes, terms, takeoff, findings);
    counting::sortByRow(findings);
    return takeoff;
}

}  // namespace trenchbook
