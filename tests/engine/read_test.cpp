#include "trenchbook/job/read.h"

#include <gtest/gtest.h>

#include <cmath>

#include "trenchbook/core/error.h"

namespace trenchbook {
namespace {

constexpr InputTable headedTables[] = {InputTable::Nodes,  InputTable::Water,     InputTable::Runs,
                                       InputTable::Ground, InputTable::Crossings, InputTable::Outlets,
                                       InputTable::Pump};
constexpr InputTable forms[] = {InputTable::Facts, InputTable::Pit, InputTable::PitFacts, InputTable::Peak};

Grid grid(std::size_t columns, std::vector<Cell> cells) {
    return {cells.size() / columns, columns, std::move(cells)};
}

const InputColumn& column(InputTable table, const char* heading) {
    const InputColumn* found = inputColumn(table, heading);
    if (found == nullptr) throw std::logic_error(heading);
    return *found;
}
CellReading length(const Cell& cell, UnitSystem units = UnitSystem::US) {
    return readCell(column(InputTable::Runs, "Length"), cell, units);
}

// Something that the column takes.
Cell good(const InputColumn& column) {
    switch (column.kind) {
        case CellKind::Name:
            return "A1";
        case CellKind::Choice:
            return column.words.front().name.en;
        case CellKind::NodeKinds:
            return "basin";
        case CellKind::OverPipe:
            return "lawn";
        case CellKind::Pipe:
            return "4 SDR35";
        case CellKind::Pipes:
            return "4 SDR35|6 SDR35";
        case CellKind::Size:
            return "3x4";
        case CellKind::Curve:
            return "0:24; 40:16";
        case CellKind::Date:
            return 46388.0;
        case CellKind::Slope:
            return 0.02;
        default: {
            const double greatest = std::isfinite(column.greatest) ? column.greatest : 1;
            return std::isfinite(column.least) ? (column.least + greatest) / 2 : greatest;
        }
    }
}

// What the column does not take: every one of these must be told.
std::vector<Cell> bad(const InputColumn& column) {
    std::vector<Cell> cells = {std::string(errorMark)};
    if (column.kind == CellKind::Name) return cells;
    cells.emplace_back("what is this?");
    cells.emplace_back(-1e7);
    cells.emplace_back(std::nan(""));
    if (column.kind != CellKind::Choice && column.kind != CellKind::NodeKinds &&
        column.kind != CellKind::OverPipe) {
        cells.emplace_back("1,5");
        cells.emplace_back("12 ff");
    }
    if (std::isfinite(column.greatest)) cells.emplace_back(column.greatest * 1.001 + 1);
    if (column.above) cells.emplace_back(column.least);
    return cells;
}

// Headings and three rows that can be read.
Grid goodTable(InputTable table) {
    Grid made;
    const auto columns = inputColumns(table);
    made.columns = columns.size();
    made.rows = 4;
    for (const InputColumn& one : columns) made.cells.emplace_back(one.heading);
    for (int row = 0; row < 3; ++row)
        for (const InputColumn& one : columns) made.cells.push_back(good(one));
    return made;
}

Grid& gridOf(JobTables& tables, InputTable table) {
    switch (table) {
        case InputTable::Nodes:
            return tables.nodes;
        case InputTable::Water:
            return tables.water;
        case InputTable::Runs:
            return tables.runs;
        case InputTable::Ground:
            return tables.ground;
        case InputTable::Crossings:
            return tables.crossings;
        case InputTable::Outlets:
            return tables.outlets;
        case InputTable::Pump:
            return tables.pump;
        case InputTable::Facts:
            return tables.facts;
        case InputTable::Pit:
            return tables.pit;
        case InputTable::PitFacts:
            return tables.pitFacts;
        case InputTable::Peak:
            return tables.peak;
        default:
            return tables.rules;
    }
}

const std::vector<Unusable>& unusableOf(const Job& job, InputTable table, std::size_t row) {
    switch (table) {
        case InputTable::Nodes:
            return job.nodes.at(row).unusable;
        case InputTable::Water:
            return job.inlets.at(row).unusable;
        case InputTable::Runs:
            return job.runs.at(row).unusable;
        case InputTable::Ground:
            return job.shots.at(row).unusable;
        case InputTable::Crossings:
            return job.crossings.at(row).unusable;
        case InputTable::Outlets:
            return job.outlets.at(row).unusable;
        case InputTable::Pump:
            return job.pumps.at(row).unusable;
        case InputTable::Pit:
        case InputTable::PitFacts:
            return job.pit.unusable;
        default:
            return job.facts.unusable;
    }
}

TEST(ReadCell, TakesNumbersAsPeopleTypeThem) {
    const double foot = Length::feet(1).si();
    EXPECT_DOUBLE_EQ(*length(12.5).number, 12.5 * foot);
    EXPECT_DOUBLE_EQ(*length(" 12.5 ").number, 12.5 * foot);
    EXPECT_DOUBLE_EQ(*length("1,200").number, 1200 * foot);
    EXPECT_DOUBLE_EQ(*length("1,200.5 ft").number, 1200.5 * foot);
    EXPECT_DOUBLE_EQ(*length("12' 6\"").number, 12.5 * foot);
    EXPECT_DOUBLE_EQ(*length("3.5 m").number, 3.5);
    EXPECT_DOUBLE_EQ(*length(3.5, UnitSystem::Metric).number, 3.5);
    EXPECT_DOUBLE_EQ(*length("12.5\u00A0ft").number, 12.5 * foot);
}

TEST(ReadCell, TakesUnitsOfEitherSystem) {
    const InputColumn& depth = column(InputTable::Crossings, "Its depth");
    for (const auto& [typed, inches] : std::vector<std::pair<const char*, double>>{{"6", 6},
                                                                                   {"6\"", 6},
                                                                                   {"6 in", 6},
                                                                                   {"6 1/2", 6.5},
                                                                                   {"6-1/2", 6.5},
                                                                                   {"254 mm", 10},
                                                                                   {"1' 2\"", 14}}) {
        const CellReading reading = readCell(depth, typed, UnitSystem::US);
        ASSERT_TRUE(reading.number) << typed;
        EXPECT_NEAR(*reading.number, Length::inches(inches).si(), 1e-12) << typed;
    }
    const InputColumn& flow = column(InputTable::Outlets, "Other flow");
    EXPECT_DOUBLE_EQ(*readCell(flow, "2 L/s", UnitSystem::US).number, 2e-3);
    EXPECT_DOUBLE_EQ(*readCell(flow, 2.0, UnitSystem::Metric).number, 2e-3);
    const InputColumn& area = column(InputTable::Water, "Roof area");
    EXPECT_DOUBLE_EQ(*readCell(area, "1,200 sq. ft", UnitSystem::US).number, Area::squareFeet(1200).si());
}

TEST(ReadCell, RefusesWhatTwoPeopleReadDifferently) {
    for (const char* typed :
         {"1,5", "12,50", "0,125", "1234,567", "1,2345678", "1.2.3", "--5", "5-", "12 6", "6 1/2"})
        EXPECT_TRUE(length(typed).unusable) << typed;
}

TEST(ReadCell, SharesAreFractionsUnlessTheySayPercent) {
    const InputColumn& share = column(InputTable::Water, "Open share");
    EXPECT_DOUBLE_EQ(*readCell(share, "25 %", UnitSystem::US).number, 0.25);
    EXPECT_DOUBLE_EQ(*readCell(share, 0.25, UnitSystem::US).number, 0.25);
    EXPECT_TRUE(readCell(share, 25.0, UnitSystem::US).unusable);
    EXPECT_TRUE(readCell(share, "25", UnitSystem::US).unusable);
}

TEST(ReadCell, SlopesAsTheTradeSaysThem) {
    const InputColumn& slope = column(InputTable::Runs, "Slope");
    EXPECT_DOUBLE_EQ(*readCell(slope, "1/8 in/ft", UnitSystem::US).number, 0.125 / 12);
    EXPECT_DOUBLE_EQ(*readCell(slope, "1 %", UnitSystem::US).number, 0.01);
    EXPECT_DOUBLE_EQ(*readCell(slope, "1:96", UnitSystem::US).number, 1.0 / 96);
    EXPECT_DOUBLE_EQ(*readCell(slope, 0.0, UnitSystem::US).number, 0);  // of perforated pipe
    EXPECT_TRUE(readCell(slope, -0.001, UnitSystem::US).unusable);
    EXPECT_TRUE(readCell(slope, 2.0, UnitSystem::US).unusable);  // a percent typed for a fraction
}

TEST(ReadCell, ChoicesByWordBeginningAndLanguage) {
    const InputColumn& marked = column(InputTable::Crossings, "Marked");
    for (const char* typed : {"yes", "Yes ", "Y", "sí", "SI"})
        EXPECT_EQ(readCell(marked, typed, UnitSystem::US).text, "yes") << typed;
    EXPECT_EQ(readCell(marked, "n", UnitSystem::US).text, "no");
    EXPECT_EQ(readCell(marked, "priv", UnitSystem::US).text, "private");
    const InputColumn& passes = column(InputTable::Crossings, "Passes");
    EXPECT_EQ(readCell(passes, "debajo", UnitSystem::US).text, "below");
    const InputColumn& group = column(InputTable::PitFacts, "soil group");
    EXPECT_EQ(readCell(group, "a", UnitSystem::US).text, "A");  // the word itself, though A/D begins like it
    const CellReading unknown = readCell(marked, "maybe", UnitSystem::US);
    ASSERT_TRUE(unknown.unusable);
    EXPECT_EQ(unknown.unusable->why.en, "Marked is \"maybe\"; allowed: yes, no, private.");
    EXPECT_EQ(unknown.unusable->why.es, "Marked es \"maybe\"; se admite: sí, no, privada.");
}

TEST(ReadCell, DatesAreDaysOfTheCalendar) {
    const InputColumn& day = column(InputTable::Crossings, "Good until");
    EXPECT_EQ(*readCell(day, 46388.75, UnitSystem::US).number, 46388);
    EXPECT_EQ(*readCell(day, "2027-01-01", UnitSystem::US).number, 46388);
    for (const Cell& cell : std::vector<Cell>{"1/2/2027", "2027-02-30", "2027", "27-1-1", 5.0, 20270101.0})
        EXPECT_TRUE(readCell(day, cell, UnitSystem::US).unusable);
}

TEST(ReadCell, PipesByNameOrBore) {
    const InputColumn& pipe = column(InputTable::Runs, "Pipe");
    EXPECT_EQ(readCell(pipe, " 4 sdr-35", UnitSystem::US).pipes.at(0).name, "4 SDR35");
    EXPECT_DOUBLE_EQ(readCell(pipe, "100 mm", UnitSystem::US).pipes.at(0).bore.millimetres(), 100);
    EXPECT_DOUBLE_EQ(readCell(pipe, "100", UnitSystem::Metric).pipes.at(0).bore.millimetres(), 100);
    EXPECT_DOUBLE_EQ(readCell(pipe, 4.0, UnitSystem::US).pipes.at(0).bore.inches(), 4);
    const CellReading slip = readCell(pipe, "4 SRD35", UnitSystem::US);
    ASSERT_TRUE(slip.unusable);
    EXPECT_NE(slip.unusable->why.en.find("4 SDR35"), std::string::npos) << slip.unusable->why.en;
    const InputColumn& choice = column(InputTable::Runs, "Pipe choice");
    EXPECT_EQ(readCell(choice, "4 SDR35 | 6 SDR35|", UnitSystem::US).pipes.size(), 2U);
    EXPECT_TRUE(readCell(choice, "|", UnitSystem::US).unusable);
}

TEST(ReadCell, SizesInOneOrTwoNumbers) {
    const InputColumn& size = column(InputTable::Water, "Size");
    EXPECT_EQ(readCell(size, "12 x 12 in", UnitSystem::US).text, "12x12");
    EXPECT_EQ(readCell(size, "3×4", UnitSystem::US).text, "3x4");
    EXPECT_EQ(readCell(size, "9\"", UnitSystem::US).text, "9");
    EXPECT_EQ(readCell(size, 9.0, UnitSystem::US).text, "9");
    for (const char* typed : {"x", "3x", "3x4x5", "0x4", "big", "100 mm"})
        EXPECT_TRUE(readCell(size, typed, UnitSystem::US).unusable) << typed;
}

TEST(ReadCell, ALongTextIsToldInPart) {
    const CellReading reading = length(std::string(100000, 'x'));
    ASSERT_TRUE(reading.unusable);
    EXPECT_LT(reading.unusable->why.en.size(), 400U);
}

TEST(Columns, EveryColumnIsWhole) {
    for (const auto tables : {std::span<const InputTable>(headedTables), std::span<const InputTable>(forms)})
        for (const InputTable table : tables)
            for (const InputColumn& one : inputColumns(table)) {
                SCOPED_TRACE(one.heading);
                EXPECT_EQ(inputColumn(table, one.heading), &one);  // no heading twice
                EXPECT_FALSE(allowedText(one, UnitSystem::US).en.empty());
                EXPECT_FALSE(allowedText(one, UnitSystem::Metric).es.empty());
                EXPECT_EQ(one.kind == CellKind::Choice, !one.words.empty() && one.kind != CellKind::Name &&
                                                            one.kind != CellKind::NodeKinds);
                EXPECT_LE(one.least, one.greatest);
                const CellReading reading = readCell(one, good(one), UnitSystem::US);
                EXPECT_FALSE(reading.unusable) << (reading.unusable ? reading.unusable->why.en : "");
                EXPECT_FALSE(reading.blank);
                EXPECT_TRUE(readCell(one, Nothing{}, UnitSystem::US).blank);
                EXPECT_TRUE(readCell(one, " ", UnitSystem::US).blank);
            }
}

// Kinds that the list offers together are read, in both languages, as two kinds.
TEST(Columns, KindsOfferedTogetherAreRead) {
    const InputColumn* kind = inputColumn(InputTable::Nodes, "Kind");
    ASSERT_GE(kind->words.size(), 10u);
    for (const ChoiceWord& word : kind->words) {
        const NodeKinds read = nodeKinds(word.name.en);
        EXPECT_EQ(read.text().en, nodeKinds(word.name.es).text().en) << word.name.es;
        EXPECT_NE(read.text().en.find(" + "), std::string::npos) << word.name.en;
    }
}

// The ends of a range are in it; just beyond is not.
TEST(Columns, RangesEndWhereTheySay) {
    const struct {
        InputTable table;
        const char* heading;
        double least, greatest;  // in US units
    } ranges[] = {{InputTable::Facts, "Shots with a level", 0, 1e6},
                  {InputTable::Facts, "Return period", 1, 1000},
                  {InputTable::Facts, "Duration", 1, 1440},
                  {InputTable::Nodes, "Turn", 0, 180},
                  {InputTable::Nodes, "From house", 0, 1000},
                  {InputTable::Water, "Roof area", 0, 200000},
                  {InputTable::Runs, "Trench width", 4, 60},
                  {InputTable::Crossings, "Its depth", 0, 240},
                  {InputTable::Crossings, "Its diameter", 0.1, 60},
                  {InputTable::Outlets, "Other flow", 0, 1e6},
                  {InputTable::Outlets, "Bottom", 0, 50},
                  {InputTable::Outlets, "Side slope", 0, 20},
                  {InputTable::Outlets, "Roughness", 0.005, 1},
                  {InputTable::Peak, "Roughness", 0.005, 0.5},
                  {InputTable::Pit, "Soil over it", 0, 10},
                  {InputTable::Outlets, "Weep hole", 0, 4},
                  {InputTable::Pit, "Design soak rate", 0, 100},
                  {InputTable::Outlets, "Open share", 0.05, 1},
                  {InputTable::Pump, "Elbows", 0, 50},
                  {InputTable::Pump, "Empty weight", 0, 1e5},
                  {InputTable::Pump, "Anchor concrete", 0, 2000}};
    for (const auto& range : ranges) {
        SCOPED_TRACE(range.heading);
        const InputColumn& one = column(range.table, range.heading);
        const auto taken = [&](double number) { return !readCell(one, number, UnitSystem::US).unusable; };
        EXPECT_TRUE(taken(range.least));
        EXPECT_TRUE(taken(range.greatest));
        EXPECT_FALSE(taken(range.least - 0.001 * (1 + range.least)));
        EXPECT_FALSE(taken(range.greatest * 1.001));
    }
}

TEST(ReadCell, ReadsACurveAsPoints) {
    const InputColumn& curve = column(InputTable::Pump, "Pump curve");
    const auto points = [&](const char* typed, UnitSystem units = UnitSystem::US) {
        return readCell(curve, typed, units).curve;
    };
    ASSERT_EQ(points("0:24; 20 : 21.5;40:16;").size(), 3U);
    EXPECT_NEAR(points("0:24; 20:21.5")[1].flow.gpm(), 20, 1e-12);
    EXPECT_NEAR(points("0:24; 20:21.5")[1].head.feet(), 21.5, 1e-12);
    EXPECT_NEAR(points("0:24 | 20 gpm: 6 m")[1].head.metres(), 6, 1e-12);
    EXPECT_NEAR(points("0:7; 1.5:6", UnitSystem::Metric)[1].flow.litresPerSecond(), 1.5, 1e-12);
    EXPECT_NEAR(points("0:7; 1.5:6", UnitSystem::Metric)[1].head.metres(), 6, 1e-12);
    for (const char* typed :
         {"24", "0:24; 21", "0:24, 20:21", ":24", "0:-24", "-1:24", "0:24:1", ";", "0 ft:24"}) {
        const CellReading reading = readCell(curve, typed, UnitSystem::US);
        ASSERT_TRUE(reading.unusable) << typed;
        EXPECT_TRUE(reading.curve.empty()) << typed;
        EXPECT_NE(reading.unusable->why.en.find("0:24; 20:21; 40:16"), std::string::npos)
            << reading.unusable->why.en;
    }
    EXPECT_TRUE(readCell(curve, 24.0, UnitSystem::US).unusable);
}

TEST(ReadCell, WeighsAndMeasures) {
    const InputColumn& weight = column(InputTable::Pump, "Empty weight");
    EXPECT_NEAR(*readCell(weight, 100.0, UnitSystem::US).number, Weight::pounds(100).si(), 1e-9);
    EXPECT_NEAR(*readCell(weight, "100 lbs", UnitSystem::Metric).number, Weight::pounds(100).si(), 1e-9);
    EXPECT_NEAR(*readCell(weight, "50 kg", UnitSystem::US).number, Weight::kilograms(50).si(), 1e-9);
    const InputColumn& concrete = column(InputTable::Pump, "Anchor concrete");
    EXPECT_NEAR(*readCell(concrete, 27.0, UnitSystem::US).number, Volume::cubicYards(1).si(), 1e-9);
    EXPECT_NEAR(*readCell(concrete, "1 cu yd", UnitSystem::US).number, Volume::cubicYards(1).si(), 1e-9);
    EXPECT_NEAR(*readCell(concrete, 0.5, UnitSystem::Metric).number, 0.5, 1e-12);
}

// Every bad content in every column of every table is told in its row, by its heading, and nowhere else.
TEST(ReadJob, ABadCellIsToldAndSpoilsNoOther) {
    for (const InputTable table : headedTables) {
        JobTables tables;
        gridOf(tables, table) = goodTable(table);
        ASSERT_TRUE(unusableOf(readJob(tables, UnitSystem::US), table, 1).empty());
        const auto columns = inputColumns(table);
        for (std::size_t place = 0; place < columns.size(); ++place)
            for (const Cell& cell : bad(columns[place])) {
                JobTables spoiled = tables;
                gridOf(spoiled, table).cells[2 * columns.size() + place] = cell;
                const Job job = readJob(spoiled, UnitSystem::US);
                SCOPED_TRACE(std::string(columns[place].heading) + " " +
                             (std::holds_alternative<std::string>(cell) ? std::get<std::string>(cell)
                                                                        : plain(std::get<double>(cell))));
                ASSERT_EQ(unusableOf(job, table, 1).size(), 1U);
                const Unusable& told = unusableOf(job, table, 1).front();
                EXPECT_EQ(told.heading, columns[place].heading);
                EXPECT_NE(told.why.en.find(columns[place].heading), std::string::npos) << told.why.en;
                EXPECT_FALSE(told.why.es.empty());
                EXPECT_TRUE(unusableOf(job, table, 0).empty());
                EXPECT_TRUE(unusableOf(job, table, 2).empty());
            }
    }
}

TEST(ReadJob, ABadCellOfAFormIsTold) {
    for (const InputTable table : forms)
        for (const InputColumn& one : inputColumns(table))
            for (const Cell& cell : bad(one)) {
                JobTables tables;
                gridOf(tables, table) = grid(2, {one.heading, cell});
                const Job job = readJob(tables, UnitSystem::US);
                SCOPED_TRACE(one.heading);
                ASSERT_EQ(unusableOf(job, table, 0).size(), 1U);
                EXPECT_EQ(unusableOf(job, table, 0).front().heading, one.heading);
            }
}

TEST(ReadJob, ColumnsAreFoundByHeading) {
    JobTables tables, moved;
    tables.runs = grid(4, {"From", "To", "Length", "Pipe", "A", "B", 40.0, "4 SDR35"});
    moved.runs = grid(
        6, {"Verdict", " pipe ", "LENGTH", "Mood", "To", "From", "OK", "4 SDR35", 40.0, "fine", "B", "A"});
    for (const JobTables& one : {tables, moved}) {
        const Job job = readJob(one, UnitSystem::US);
        ASSERT_EQ(job.runs.size(), 1U);
        EXPECT_EQ(job.runs[0].from, "A");
        EXPECT_EQ(job.runs[0].to, "B");
        EXPECT_DOUBLE_EQ(job.runs[0].length->feet(), 40);
        EXPECT_EQ(job.runs[0].pipe->name, "4 SDR35");
        EXPECT_TRUE(job.runs[0].unusable.empty());
    }
}

std::string refusalOf(const JobTables& tables) {
    try {
        readJob(tables, UnitSystem::US);
    } catch (const Error& error) {
        EXPECT_FALSE(error.sentence(Language::Spanish).empty());
        return error.argument() + ": " + error.sentence(Language::English);
    }
    return "";
}

TEST(ReadJob, AHeadingThatIsMissingOrDoubledIsNamed) {
    JobTables missing, doubled, label, narrow;
    missing.runs = grid(3, {"From", "To", "Pipe", "A", "B", "4 SDR35"});
    EXPECT_EQ(refusalOf(missing), "runs: Runs: no column is headed Length; the first row holds the headings");
    doubled.nodes = grid(3, {"Node", "Ground", "ground ", "A", 99.0, 98.0});
    EXPECT_EQ(refusalOf(doubled), "nodes: Nodes: two columns are headed Ground");
    label.facts = grid(2, {"Rain", 4.0, "rain", 5.0});
    EXPECT_EQ(refusalOf(label), "job: Job: the label Rain stands twice");
    narrow.pit = grid(1, {"Length"});
    EXPECT_EQ(refusalOf(narrow), "pit: Pit: two columns, label and value");
}

TEST(ReadJob, AUnitRowIsNoRowOfTheJob) {
    JobTables tables;
    tables.nodes = grid(3, {"Node", "Ground", "Turn", "", "ft", "deg", "", "", "", "A", 99.0, ""});
    const Job job = readJob(tables, UnitSystem::US);
    ASSERT_EQ(job.nodes.size(), 2U);
    EXPECT_TRUE(job.nodes[0].blank);  // the thin row
    EXPECT_EQ(job.nodes[1].name, "A");
    // A node named like a unit is a node.
    tables.nodes = grid(2, {"Node", "Ground", "m", "", "A", 99.0});
    EXPECT_EQ(readJob(tables, UnitSystem::US).nodes.size(), 2U);
    tables.nodes = grid(2, {"Node", "Ground", "", "high", "A", 99.0});
    const Job told = readJob(tables, UnitSystem::US);
    ASSERT_EQ(told.nodes.size(), 2U);
    EXPECT_EQ(told.nodes[0].unusable.size(), 1U);
}

TEST(ReadJob, ARowWithAnythingInItIsNotBlank) {
    for (const InputTable table : headedTables) {
        const auto columns = inputColumns(table);
        for (std::size_t place = 0; place < columns.size(); ++place) {
            JobTables tables;
            Grid& made = gridOf(tables, table);
            made.columns = columns.size();
            made.rows = 3;
            for (const InputColumn& one : columns) made.cells.emplace_back(one.heading);
            made.cells.resize(3 * columns.size());
            made.cells[2 * columns.size() + place] = "x";
            const Job job = readJob(tables, UnitSystem::US);
            SCOPED_TRACE(columns[place].heading);
            const auto blank = [&](std::size_t row) {
                switch (table) {
                    case InputTable::Nodes:
                        return job.nodes.at(row).blank;
                    case InputTable::Water:
                        return job.inlets.at(row).blank;
                    case InputTable::Runs:
                        return job.runs.at(row).blank;
                    case InputTable::Ground:
                        return job.shots.at(row).blank;
                    case InputTable::Crossings:
                        return job.crossings.at(row).blank;
                    case InputTable::Pump:
                        return job.pumps.at(row).blank;
                    default:
                        return job.outlets.at(row).blank;
                }
            };
            EXPECT_TRUE(blank(0));
            EXPECT_FALSE(blank(1));
        }
    }
}

TEST(ReadJob, GroundTypedGoesBeforeLevels) {
    JobTables tables;
    tables.nodes = grid(3, {"Node", "Ground", "Ground level",  //
                            "A", 99.0, 98.0,                   //
                            "B", "", 98.0,                     //
                            "C", "high", 98.0});
    const Job job = readJob(tables, UnitSystem::US);
    EXPECT_DOUBLE_EQ(job.nodes[0].ground->feet(), 99);
    EXPECT_DOUBLE_EQ(job.nodes[1].ground->feet(), 98);
    EXPECT_FALSE(job.nodes[2].ground);
}

TEST(ReadJob, RainIsTypedOrFromTheTable) {
    const Grid table = grid(2, {"", 10.0, "5-min", 0.5, "60-min", 1.8});
    JobTables tables;
    tables.rain = table;
    tables.facts = grid(2, {"Duration", 5.0, "Return period", 10.0});
    EXPECT_NEAR(readJob(tables, UnitSystem::US).facts.rain->inchesPerHour(), 6, 1e-12);
    tables.facts = grid(2, {"Duration", 5.0, "Rain", 4.0});
    EXPECT_DOUBLE_EQ(readJob(tables, UnitSystem::US).facts.rain->inchesPerHour(), 4);
    tables.facts = grid(2, {"Duration", 5.0, "Rain", "lots"});
    const Job told = readJob(tables, UnitSystem::US);
    EXPECT_FALSE(told.facts.rain);  // not taken from the table behind the typist's back
    EXPECT_EQ(told.facts.unusable.size(), 1U);
    tables.facts = grid(2, {"Duration", 5.0, "Return period", 100.0});
    const Job rare = readJob(tables, UnitSystem::US);
    EXPECT_FALSE(rare.facts.rain);
    ASSERT_EQ(rare.facts.unusable.size(), 1U);
    EXPECT_EQ(rare.facts.unusable[0].heading, "Rain");
    tables.rain = grid(2, {"", 10.0, "5-min", std::string(errorMark)});
    EXPECT_EQ(readJob(tables, UnitSystem::US).facts.unusable.size(), 1U);
}

TEST(ReadJob, TravelTimeNeedsTheTable) {
    JobTables tables;
    tables.peak = grid(2, {"Count travel time", "Yes", "Travel at", "area", "Roughness", 0.013});
    const Job told = readJob(tables, UnitSystem::US);
    EXPECT_FALSE(told.peak);
    ASSERT_EQ(told.facts.unusable.size(), 1U);
    EXPECT_EQ(told.facts.unusable[0].heading, "Count travel time");
    tables.rain = grid(2, {"", 10.0, "5-min", 0.5, "60-min", 1.8});
    const Job asked = readJob(tables, UnitSystem::US);
    ASSERT_TRUE(asked.peak);
    EXPECT_EQ(asked.peak->travel, Travel::Area);
    EXPECT_DOUBLE_EQ(*asked.peak->roughness, 0.013);
}

TEST(ReadJob, RulesByKey) {
    JobTables tables;
    tables.rules = grid(3, {"Value",
                            "Unit",
                            "Key",  //
                            "",
                            "",
                            "",  //
                            " 10 ",
                            "in",
                            "cover.lawn",  //
                            "1/4 in/ft",
                            "",
                            "slope.min.4in",  //
                            "deep",
                            "",
                            "cover.drive",  //
                            3.0,
                            "",
                            "no.such.rule",  //
                            std::string(errorMark),
                            "",
                            "share.max",  //
                            12.0,
                            "",
                            "Cover.Lawn"});
    const Job job = readJob(tables, UnitSystem::US);
    EXPECT_DOUBLE_EQ(job.rules.length("cover.lawn").inches(), 10);
    EXPECT_DOUBLE_EQ(job.rules.slope("slope.min.4in").inchesPerFoot(), 0.25);
    EXPECT_EQ(job.rules.in("cover.drive", UnitSystem::US), Ruleset().in("cover.drive", UnitSystem::US));
    std::vector<std::string> told;
    for (const Unusable& one : job.facts.unusable) told.push_back(one.heading);
    EXPECT_EQ(told, (std::vector<std::string>{"cover.drive", "no.such.rule", "share.max", "Cover.Lawn"}));
}

TEST(ReadJob, MetricCellsAreMetricAndRangesTheSame) {
    JobTables tables;
    tables.runs = grid(6, {"From", "To", "Length", "Pipe", "Trench width", "Fixed level",  //
                           "A", "B", 12.0, "100", 300.0, 30.5,                             //
                           "B", "C", "12 m", "4 SDR35", 2000.0, "30.5"});
    const Job job = readJob(tables, UnitSystem::Metric);
    EXPECT_EQ(job.units, UnitSystem::Metric);
    EXPECT_DOUBLE_EQ(job.runs[0].length->metres(), 12);
    EXPECT_DOUBLE_EQ(job.runs[0].pipe->bore.millimetres(), 100);
    EXPECT_DOUBLE_EQ(job.runs[0].trenchWidth->millimetres(), 300);
    EXPECT_DOUBLE_EQ(job.runs[0].fixedDown->metres(), 30.5);
    ASSERT_EQ(job.runs[1].unusable.size(), 1U);
    EXPECT_EQ(job.runs[1].unusable[0].why.en,
              "Trench width is 2000; allowed: a number in mm, 101.6 to 1524.");
    EXPECT_DOUBLE_EQ(job.runs[1].fixedDown->metres(), 30.5);
}

TEST(ReadJob, ThePitAndItsFacts) {
    JobTables tables;
    tables.pit = grid(3, {"Tee at node", "T",    "",   "Length",           "10' 6\"", "ft",
                          "Width",       4.0,    "ft", "Rock depth",       3.0,       "ft",
                          "Voids",       "40 %", "",   "Design soak rate", 0.75,      "in/hr",
                          "Soak test",   "Open", ""});
    tables.pitFacts = grid(2, {"high water", 8.0, "soil group", "b", "ground slope", "5%", "perc", 20.0});
    const Job job = readJob(tables, UnitSystem::US);
    EXPECT_EQ(job.pit.node, "T");
    EXPECT_DOUBLE_EQ(job.pit.length->feet(), 10.5);
    EXPECT_DOUBLE_EQ(*job.pit.voids, 0.4);
    EXPECT_DOUBLE_EQ(job.pit.rate->inchesPerHour(), 0.75);
    EXPECT_TRUE(job.pit.soakOpen);
    EXPECT_FALSE(job.pit.soakRefused);
    EXPECT_NEAR(*job.pit.facts[PitFact::HighWater], Length::feet(8).si(), 1e-12);
    EXPECT_DOUBLE_EQ(*job.pit.facts[PitFact::SoilGroup], 2);
    EXPECT_DOUBLE_EQ(*job.pit.facts[PitFact::GroundSlope], 0.05);
    EXPECT_TRUE(job.pit.unusable.empty());
}

}  // namespace
}  // namespace trenchbook
