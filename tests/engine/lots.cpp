#include "lots.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <filesystem>

#include "csv_grid.h"
#include "reference.h"
#include "trenchbook/ground/soil.h"
#include "trenchbook/job/read.h"

namespace trenchbook::lots {
namespace {

using Records = std::vector<std::vector<std::string>>;

std::string pathOf(const std::string& lot, const std::string& file) {
    return std::string(TRENCHBOOK_LOTS) + "/" + lot + "/" + file + ".csv";
}

std::vector<Line> linesOf(const Records& records) {
    std::vector<Line> lines;
    for (std::size_t row = 1; row < records.size(); ++row) {
        Line& line = lines.emplace_back();
        for (std::size_t at = 0; at < records[0].size(); ++at)
            line[records[0][at]] = at < records[row].size() ? records[row][at] : "";
    }
    return lines;
}

std::vector<Line> ofCase(const std::vector<Line>& lines, const std::string& name) {
    std::vector<Line> own;
    for (const Line& line : lines)
        if (line.at("Lot") == name) own.push_back(line);
    return own;
}

// The columns whose contents name a row of the file.
std::vector<std::string> namedBy(const std::string& file, const Records& table) {
    if (file == "runs" || file == "crossings") return {"From", "To"};
    if (file == "ground") return {"From", "To", "At"};
    if (file == "soak") return {"Hole", "Reading"};
    return {table[0][0]};
}

std::size_t columnOf(const Records& table, const std::string& heading) {
    const auto found = std::find(table[0].begin(), table[0].end(), heading);
    return static_cast<std::size_t>(found - table[0].begin());
}

// Types into one cell; a form gets a line for a label that it did not have.
void change(const std::string& file, Records& table, const Line& change) {
    const std::vector<std::string> naming = namedBy(file, table);
    for (std::vector<std::string>& row : table) {
        std::string name;
        for (const std::string& heading : naming)
            name += (name.empty() ? "" : "-") + row.at(columnOf(table, heading));
        if (name == change.at("Row")) {
            row.at(columnOf(table, change.at("Column"))) = change.at("Value");
            return;
        }
    }
    ASSERT_EQ(change.at("Column"), "value") << file << " has no row " << change.at("Row");
    table.push_back({change.at("Row"), change.at("Value")});
}

// Empty where the lot has no such file.
Records notes(const Case& which, const std::string& file) {
    const std::string path = pathOf(which.lot.name, "notes/" + file);
    if (!std::filesystem::exists(path)) return {};
    Records table = reference::records(path);
    for (const Line& line : which.changes())
        if (line.at("File") == file) change(file, table, line);
    return table;
}

// As the Pit sheet does: the last reading of a hole counts, of several holes the slowest.
void takeSoakTest(Job& job, const Records& soak) {
    if (soak.empty()) return;
    std::map<std::string, Line> last;
    for (const Line& reading : linesOf(soak)) last[reading.at("Hole")] = reading;
    std::optional<SoilRate> slowest;
    double perc = 0;
    for (const auto& hole : last) {
        const Line& reading = hole.second;
        const auto inches = [&reading](const char* heading) {
            return Length::inches(std::stod(reading.at(heading)));
        };
        const SoakTest test{.drop = inches("Water before") - inches("Water after"),
                            .time = Duration::minutes(std::stod(reading.at("Minutes"))),
                            .holeDiameter = inches("Hole diameter"),
                            .startDepth = inches("Water before"),
                            .gravel = inches("Gravel")};
        const SoilRate rate = designRate(test, job.rules.number("soil.safety"));
        slowest = slowest ? std::min(*slowest, rate) : rate;
        perc = std::max(perc, test.time.minutes() / test.drop.inches());
    }
    job.pit.rate = slowest;
    job.pit.facts.set("perc", perc, UnitSystem::US);
}

}  // namespace

std::vector<Lot> allLots() {
    std::vector<Lot> lots;
    for (const auto& entry : std::filesystem::directory_iterator(TRENCHBOOK_LOTS)) {
        if (!entry.is_directory()) continue;
        const std::string name = entry.path().filename().string();
        lots.push_back({.name = name,
                        .verdicts = linesOf(reference::records(pathOf(name, "verdict"))),
                        .figures = linesOf(reference::records(pathOf(name, "figures"))),
                        .changes = linesOf(reference::records(pathOf(name, "changes")))});
    }
    std::sort(lots.begin(), lots.end(), [](const Lot& a, const Lot& b) { return a.name < b.name; });
    return lots;
}

std::vector<Line> Case::verdicts() const { return ofCase(lot.verdicts, name); }
std::vector<Line> Case::figures() const { return ofCase(lot.figures, name); }
std::vector<Line> Case::changes() const { return ofCase(lot.changes, name); }

std::string Case::overall() const {
    for (const Line& line : verdicts())
        if (line.at("Sheet") == "all") return line.at("Verdict");
    return "";
}

std::vector<Case> cases(const Lot& lot) {
    std::vector<Case> all;
    for (const Line& line : lot.verdicts)
        if (line.at("Sheet") == "all") all.push_back({lot, line.at("Lot")});
    return all;
}

std::vector<Case> allCases() {
    std::vector<Case> all;
    for (const Lot& lot : allLots())
        for (Case& one : cases(lot)) all.push_back(std::move(one));
    return all;
}

Job jobOf(const Case& which) {
    JobTables tables;
    const std::vector<std::pair<const char*, Grid*>> files = {
        {"job", &tables.facts},          {"nodes", &tables.nodes},   {"water", &tables.water},
        {"runs", &tables.runs},          {"ground", &tables.ground}, {"crossings", &tables.crossings},
        {"outlets", &tables.outlets},    {"pump", &tables.pump},     {"pit", &tables.pit},
        {"pit-facts", &tables.pitFacts}, {"rules", &tables.rules}};
    for (const auto& [file, grid] : files) *grid = gridOf(notes(which, file));
    Job job = readJob(tables, UnitSystem::US);
    takeSoakTest(job, notes(which, "soak"));
    return job;
}

}  // namespace trenchbook::lots
