#include "trenchbook/lines/peak.h"

#include <algorithm>

#include "trenchbook/core/error.h"
#include "trenchbook/pipe/circular.h"
#include "trenchbook/pipe/manning.h"

namespace trenchbook {
namespace {

Text missing(const PeakRow& row) {
    if (!row.trouble.empty()) return row.trouble;
    if (!row.length) return {"length is missing", "falta la longitud"};
    if (!row.bore) return {"pipe is missing", "falta el tubo"};
    if (!row.slope) return {"slope is missing", "falta la pendiente"};
    return {};
}

// What comes together at a run's upper node.
struct Gathered {
    std::vector<double> areas;
    Duration time;
    bool known = true;  // every inlet can be read
};

}  // namespace

Travel travelNamed(std::string_view name) {
    const std::string key = nameKey(name);
    if (key == "flow") return Travel::Flow;
    if (key == "area") return Travel::Area;
    throw Error(Error::Kind::BadArgument, "travel", "\"" + std::string(name) + "\"",
                Text::same("\"flow\", \"area\""));
}

std::vector<PeakAnswer> linePeaks(const Network& lines, std::span<const PeakRow> rows,
                                  std::span<const PeakInlet> inlets, const RainTable& rain,
                                  double returnYears, Travel travel) {
    if (rows.size() != lines.rows())
        throw Error(Error::Kind::BadArgument, "length", std::to_string(rows.size()) + " rows",
                    {"as many rows as from", "tantas filas como from"});
    std::vector<Gathered> gathered(rows.size());
    for (const PeakInlet& inlet : inlets) {
        const std::size_t node = lines.node(inlet.node);
        const std::size_t row = node == Network::none ? Network::none : lines.leaving(node);
        if (row == Network::none) continue;
        if (!inlet.areaTimesC || !inlet.time) {
            gathered[row].known = false;
            continue;
        }
        gathered[row].areas.push_back(inlet.areaTimesC->si());
        gathered[row].time = std::max(gathered[row].time, *inlet.time);
    }

    std::vector<bool> bad(rows.size(), false);
    std::vector<Text> reasons(rows.size());
    for (std::size_t row = 0; row < rows.size(); ++row) {
        if (lines.blank(row)) continue;
        reasons[row] = missing(rows[row]);
        if (reasons[row].empty() && !gathered[row].known)
            reasons[row] = {"an inlet's area x C or minutes are missing",
                            "falta el área x C o los minutos de una entrada"};
        bad[row] = !reasons[row].empty();
    }
    std::vector<std::size_t> spoiled = lines.spoiledByUpstream(bad);
    std::vector<PeakAnswer> answers(rows.size());
    const Duration shortest = rain.durations().front();
    for (std::size_t row : lines.order()) {
        PeakAnswer& answer = answers[row];
        for (std::size_t above : lines.upstream(row))
            if (spoiled[row] == Network::none && spoiled[above] != Network::none)
                spoiled[row] = spoiled[above];
        if (spoiled[row] != Network::none) continue;
        Gathered& here = gathered[row];
        for (std::size_t above : lines.upstream(row)) {
            const Peak& peak = *answers[above].peak;
            here.areas.push_back(peak.areaTimesC.si());
            if (peak.flow.si() > 0)
                here.time = std::max(here.time, peak.time + *rows[above].length / peak.velocity);
        }
        Peak peak;
        peak.areaTimesC = Area::fromSi(orderlessSum(here.areas));
        peak.time = here.time;
        try {
            peak.intensity = rain.intensity(std::max(here.time, shortest), returnYears);
            peak.flow = peak.areaTimesC * peak.intensity;
            if (peak.flow.si() > 0)
                peak.velocity = travel == Travel::Area ? peak.flow / fullArea(*rows[row].bore)
                                                       : uniformVelocity(*rows[row].bore, *rows[row].slope,
                                                                         peak.flow, rows[row].roughness);
            answer.peak = peak;
        } catch (const Error& error) {
            // A return period outside the table is the whole call's fault; a time beyond it is this row's.
            if (error.argument() != "duration") throw;
            reasons[row] = {error.sentence(Language::English), error.sentence(Language::Spanish)};
            spoiled[row] = row;
        }
    }
    for (std::size_t row = 0; row < rows.size(); ++row) {
        if (lines.fault(row)) {
            answers[row].fault = lines.fault(row);
        } else if (spoiled[row] == row) {
            answers[row].fault = {Fault::Kind::BadCell, row, reasons[row]};
        } else if (spoiled[row] != Network::none) {
            answers[row].fault = {Fault::Kind::Waiting, spoiled[row], {}};
        }
    }
    return answers;
}

}  // namespace trenchbook
