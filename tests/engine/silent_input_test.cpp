// What people type or paste that would move water or money without a word: each is told in its own row.
#include <gtest/gtest.h>

#include "trenchbook/job/read.h"
#include "trenchbook/job/solve.h"

namespace trenchbook {
namespace {

// Two runs to a ditch, a downspout with its roof, one gas line across.
JobTables ordinary() {
    JobTables tables;
    tables.nodes = Grid{4,
                        3,
                        {"Node", "Kind", "Ground level",                   //
                         "A", "downspout", 103.0, "B", "cleanout", 102.0,  //
                         "Out", "ditch", 99.0}};
    tables.water = Grid{2,
                        7,
                        {"Inlet", "Node", "Roof area", "Roof C", "Enters by", "Size", "Minutes",  //
                         "north", "A", 600.0, 0.95, "downspout", "3x4", Nothing{}}};
    tables.runs = Grid{3,
                       9,
                       {"From",
                        "To",
                        "Length",
                        "Pipe",
                        "Slope",
                        "Surface up",
                        "Surface down",
                        "Outlet level",
                        "Trench width",  //
                        "A",
                        "B",
                        40.0,
                        "4 SDR35",
                        "1%",
                        "lawn",
                        "lawn",
                        Nothing{},
                        Nothing{},  //
                        "B",
                        "Out",
                        50.0,
                        "6 SDR35",
                        "1%",
                        "lawn",
                        "daylight",
                        98.5,
                        Nothing{}}};
    tables.crossings = Grid{2,
                            7,
                            {"What", "From", "To", "At", "Its depth", "Its diameter", "Passes",  //
                             "gas", "A", "B", 20.0, 10.0, 1.0, "above"}};
    tables.facts = Grid{2, 2, {"Rain", 6.0, "Septic", "no"}};
    return tables;
}

void put(Grid& grid, std::size_t row, std::string_view heading, Cell cell) {
    for (std::size_t column = 0; column < grid.columns; ++column)
        if (const auto* text = std::get_if<std::string>(&grid.cells[column]); text && *text == heading) {
            grid.cells[row * grid.columns + column] = std::move(cell);
            return;
        }
    FAIL() << "no heading " << heading;
}

// The worst that is said of a row by the rule, and its sentence.
struct Said {
    Severity severity;
    std::string sentence;
};
std::optional<Said> said(const JobTables& tables, Part part, std::size_t row, std::string_view rule) {
    const SolvedJob solved = solve(readJob(tables, UnitSystem::US));
    for (const Finding& finding : solved.of(part, row))
        if (finding.rule == rule) return Said{finding.severity, finding.says.en};
    return std::nullopt;
}
void refused(const JobTables& tables, Part part, std::size_t row, std::string_view rule,
             std::string_view sentence) {
    const std::optional<Said> found = said(tables, part, row, rule);
    ASSERT_TRUE(found) << "nothing said; expected: " << sentence;
    EXPECT_EQ(found->severity, Severity::No) << found->sentence;
    EXPECT_NE(found->sentence.find(sentence), std::string::npos) << found->sentence;
}

TEST(SilentInput, TheOrdinaryJobHasNoneOfIt) {
    const SolvedJob solved = solve(readJob(ordinary(), UnitSystem::US));
    for (const Finding& finding : solved.findings) {
        EXPECT_FALSE(finding.rule == std::string("input.unusable")) << finding.says.en;
        EXPECT_FALSE(finding.rule == std::string("input.missing") && finding.part != Part::Job)
            << finding.says.en;
    }
    ASSERT_TRUE(solved.runs[0].flow);
    EXPECT_GT(solved.runs[0].flow->gpm(), 30);
}

TEST(SilentInput, AKindOfNodeWithBlanksBehindItIsRead) {
    JobTables tables = ordinary();
    put(tables.nodes, 1, "Kind", "downspout  ");
    const Job job = readJob(tables, UnitSystem::US);
    EXPECT_TRUE(job.nodes[0].kinds.has(NodeKind::Downspout));
    EXPECT_TRUE(job.nodes[0].unusable.empty());
    // A blank of a web page is one too.
    put(tables.nodes, 1, "Kind", "downspout\xC2\xA0");
    EXPECT_TRUE(readJob(tables, UnitSystem::US).nodes[0].kinds.has(NodeKind::Downspout));
}

TEST(SilentInput, AKindOfNodeThatIsNoneIsRefused) {
    for (const char* kind : {"downspot", "clean out2", "4"}) {
        JobTables tables = ordinary();
        put(tables.nodes, 1, "Kind", kind);
        refused(tables, Part::Nodes, 0, "input.unusable", kind);
    }
}

TEST(SilentInput, ATrenchNarrowerThanItsPipeIsRefused) {
    JobTables tables = ordinary();
    put(tables.runs, 2, "Trench width", 6.0);
    refused(tables, Part::Runs, 1, "input.unusable", "narrower than the pipe");
    EXPECT_FALSE(said(tables, Part::Runs, 0, "input.unusable"));
    // ASTM D3034: 6 in SDR 35 is 6.275 in over all.
    put(tables.runs, 2, "Trench width", 6.275);
    EXPECT_FALSE(said(tables, Part::Runs, 1, "input.unusable"));
    // A bare bore has no outside: at least the bore goes in.
    put(tables.runs, 2, "Pipe", 10.0);
    refused(tables, Part::Runs, 1, "input.unusable", "narrower than the pipe");
    put(tables.runs, 2, "Trench width", -8.0);
    refused(tables, Part::Runs, 1, "input.unusable", "Trench width is -8");
}

TEST(SilentInput, NumbersAsPeopleTypeThemAreReadOrRefused) {
    JobTables tables = ordinary();
    put(tables.water, 1, "Roof area", "1,200");
    EXPECT_NEAR(readJob(tables, UnitSystem::US).inlets[0].roof.area->squareFeet(), 1200, 1e-9);
    put(tables.water, 1, "Roof area", "350 $");
    refused(tables, Part::Water, 0, "input.unusable", "350 $");
    put(tables.water, 1, "Roof area", -5.0);
    refused(tables, Part::Water, 0, "input.unusable", "Roof area is -5");
    put(tables.water, 1, "Roof area", 600.0);
    put(tables.water, 1, "Roof C", 25.0);
    refused(tables, Part::Water, 0, "input.unusable", "Roof C");
}

TEST(SilentInput, AnswersAreReadByTheirBeginning) {
    for (const char* yes : {"y", "Yes ", " YES", "sí", "si"}) {
        JobTables tables = ordinary();
        put(tables.facts, 0, "Rain", 6.0);
        tables.facts.cells[3] = std::string(yes);
        EXPECT_EQ(readJob(tables, UnitSystem::US).facts.septic, Answer::Yes) << '"' << yes << '"';
    }
    JobTables tables = ordinary();
    tables.facts.cells[3] = std::string("maybe");
    const Job job = readJob(tables, UnitSystem::US);
    EXPECT_EQ(job.facts.septic, Answer::NotSaid);
    refused(tables, Part::Job, Finding::whole, "input.unusable", "maybe");
}

TEST(SilentInput, NegativePlacesOfCrossingsAreRefused) {
    for (const char* heading : {"At", "Its depth", "Its diameter"}) {
        JobTables tables = ordinary();
        put(tables.crossings, 1, heading, -3.0);
        refused(tables, Part::Crossings, 0, "input.unusable", std::string(heading) + " is -3");
    }
}

TEST(SilentInput, WaterWithoutItsNodeIsTold) {
    // A formula that gives an empty text is a blank cell: the water of its row goes nowhere.
    for (const Cell& node : {Cell(std::string()), Cell(std::string("  ")), Cell(Nothing{})}) {
        JobTables tables = ordinary();
        put(tables.water, 1, "Node", node);
        const SolvedJob solved = solve(readJob(tables, UnitSystem::US));
        bool told = false;
        for (const Finding& finding : solved.of(Part::Water, 0))
            told = told || (finding.severity <= Severity::NotJudged &&
                            finding.says.en.find("Node") != std::string::npos);
        EXPECT_TRUE(told);
    }
}

TEST(SilentInput, AWayInThatIsNoneIsRefused) {
    for (const char* way : {"gutter", "pipe", "12"}) {
        JobTables tables = ordinary();
        put(tables.water, 1, "Enters by", way);
        refused(tables, Part::Water, 0, "input.unusable", way);
    }
}

TEST(SilentInput, DaysFarFromTheJobAreRefused) {
    for (const Cell& day : {Cell(std::string("1999-05-31")), Cell(2026.0), Cell(std::string("5/31/2026"))}) {
        JobTables tables = ordinary();
        tables.facts.cells[2] = std::string("Quote date");
        tables.facts.cells[3] = day;
        EXPECT_FALSE(readJob(tables, UnitSystem::US).facts.quoteDate);
        refused(tables, Part::Job, Finding::whole, "input.unusable", "Quote date");
    }
}

}  // namespace
}  // namespace trenchbook
