// The array functions: each answers for a whole table in one call, all of them from one solved job. Visible sheets pick
// their rows from here.
#include "trenchbook/job/views.h"

#include "commands/book.h"
#include "results/pen_chart.h"
#include "results/pit_drawing.h"
#include "site/pit_parts.h"
#include "templates/job.h"
#include "trenchbook/takeoff/takeoff.h"

namespace trenchbook::sheets {
namespace {

template <class View>
std::vector<BlockColumn> columnsOf(const View& view) {
    std::vector<BlockColumn> columns;
    for (const auto& column : view.columns) columns.push_back({.heading = column.heading});
    return columns;
}

// Both blocks of a table: "runs_numbers" by JOB.RUNS and "runs_words" by JOB.RUNS.TEXT.
void add(std::vector<Part>& parts, Viewed viewed, const std::string& name, const std::string& function,
         const std::string& table, int rows, const char* says) {
    const auto block = [&](const char* kind, const char* tail, std::vector<BlockColumn> columns) {
        return Block{.name = name + kind,
                     .formula = "JOB." + function + tail + "(" + jobTables() +
                                (*tail == 0 ? ";units;" : ";units;language;") + jobTail() + ")",
                     .table = table,
                     .rows = rows,
                     .columns = std::move(columns),
                     .says = says};
    };
    parts.push_back(block("_numbers", "", columnsOf(numberView(viewed))));
    if (!wordView(viewed).columns.empty())
        parts.push_back(block("_words", ".TEXT", columnsOf(wordView(viewed))));
}

// The level book's readings of all set-ups, adjusted together.
Block levelsAdjusted() {
    return {.name = "levels_numbers",
            .formula =
                "IF(COUNT([Levels.Backsight])>0;IFERROR(LEVELS.ADJUST([Levels.Point];[Levels.Known level];"
                "[Levels.Backsight];[Levels.Rod];;units);\"\");\"\")",
            .table = "Levels",
            .columns = {{.heading = "Adjusted"},
                        {.heading = "Uncertain level"},
                        {.heading = "Rod off"},
                        {.heading = "Backsight off"},
                        {.heading = "Slip"}},
            .says = "Levels from the readings of all set-ups, adjusted"};
}

// The lot in plan. Nothing is worked out, and nothing asked of the add-in, where nothing stands on Layout.
void lot(std::vector<Part>& parts) {
    const auto block = [&](const char* name, const std::string& call, const char* table, int rows,
                           std::vector<BlockColumn> columns, const char* says) {
        parts.push_back(Block{.name = name,
                              .formula = "IF(lot_there;IFERROR(LAYOUT." + call + ";\"\");\"\")",
                              .table = table,
                              .rows = rows,
                              .columns = std::move(columns),
                              .says = says});
    };
    const std::string tables = "(" + lotTables() + ";units";
    const std::vector<BlockColumn> judged = {{.heading = "Verdict"}, {.heading = "Check"}};
    block("layout_numbers", "POINTS" + tables + ")", "Layout", 0,
          {{.heading = "X"}, {.heading = "Y"}, {.heading = "Uncertain"}}, "Every point of the lot");
    block("layout_words", "POINTS.TEXT" + tables + ";language)", "Layout", 0, judged, "The same in words");
    block("tapes_numbers", "TAPES" + tables + ")", "Tapes", 0, {{.heading = "Drawn"}, {.heading = "Off"}},
          "Every tape");
    block("tapes_words", "TAPES.TEXT" + tables + ";language)", "Tapes", 0, judged, "The same in words");
    block("node_numbers", "NODES" + tables + ")", "Nodes", 0, {{.heading = "X"}, {.heading = "Y"}},
          "Every node in plan");
    block("node_places", "NODES.TEXT" + tables + ";language)", "Nodes", 0,
          {{.heading = "Place"}, {.heading = "Ties"}}, "How each node's place is known");
    parts.push_back(Block{.name = "laid_numbers",
                          .formula = "IF(COUNTA([As built.Node])>0;IFERROR(LAYOUT.LAID(" + lotTables() +
                                     ";laid_in;units);\"\");\"\")",
                          .table = "As built",
                          .columns = {{.heading = "X"}, {.heading = "Y"}, {.heading = "Moved"}},
                          .says = "Every node as measured after the work"});
    block("drawing_scale", "SCALE(" + drawingPaper(false) + ")", "", 1, {{.heading = "Scale"}},
          "Lengths on the lot over lengths on paper");
    parts.push_back(penBlock("drawing_strokes",
                             "IF(lot_there;IFERROR(LAYOUT.DRAWING(" + drawingPaper(true) + ");\"\");\"\")",
                             addin::drawingPens(), "Strokes of the drawing, in mm on its paper"));
    parts.push_back(Block{.name = "drawing_missing",
                          .formula =
                              "IF(lot_there;TEXTJOIN(\", \";1;IFERROR(IF(([Nodes.Node]<>\"\")*(1-ISNUMBER("
                              "<node_numbers.X:*>));[Nodes.Node];\"\");\"\"));\"\")",
                          .rows = 1,
                          .columns = {{.heading = "Says"}},
                          .says = "Nodes without a place"});
}

}  // namespace

std::string jobTables() {
    return "facts_in;nodes_in;water_in;runs_in;crossings_in;outlets_in;pit_in;pit_facts_in;rules_in;rain_in;peak_in;"
           "ground_in;pump_in";
}
std::string jobTail() { return "runs_first;lot_in;lot_tapes_in"; }
std::string takeoffTables() { return jobTables() + ";prices_in;codes_in;terms_in"; }

Sheet workingsSheet(const JobSize& size) {
    Sheet sheet;
    sheet.name = sheetOfWorkings;
    sheet.title = "Workings";
    sheet.purpose =
        "Array functions: one call for a whole table, a row here for each row of the table (the thin row first). "
        "Nothing is typed here.";
    sheet.parts.push_back(levelsAdjusted());
    add(sheet.parts, Viewed::Runs, "runs", "RUNS", "Runs", 0,
        "Every run worked out, and what the rules say of it");
    add(sheet.parts, Viewed::Nodes, "nodes", "NODES", "Nodes", 0, "Every node");
    add(sheet.parts, Viewed::Water, "water", "WATER", "Water", 0, "Every inlet");
    add(sheet.parts, Viewed::Ground, "ground", "GROUND", "Ground", 0, "Every shot between the nodes");
    add(sheet.parts, Viewed::Crossings, "crossings", "CROSSINGS", "Crossings", 0, "Every crossing");
    add(sheet.parts, Viewed::Outlets, "outlets", "OUTLETS", "Outlets", 0, "Every outlet");
    add(sheet.parts, Viewed::Pump, "pump", "PUMP", "Pump", 0, "Every pump basin");
    add(sheet.parts, Viewed::Pit, "pit", "PIT", "", 1, "The pit");
    add(sheet.parts, Viewed::Findings, "findings", "FINDINGS", "", findingRows(size),
        "Everything that the rules say, the worst of each row first");
    add(sheet.parts, Viewed::Counts, "counts", "COUNTS", "", 10,
        "Rows by their verdict: Job, Nodes, Water, Runs, Ground, Crossings, Outlets, Pump, Pit, all");
    lot(sheet.parts);
    const auto storms = [&](const char* name, const char* function, std::vector<BlockColumn> columns) {
        const bool words = std::string(function).find(".") != std::string::npos;
        sheet.parts.push_back(Block{.name = name,
                                    .formula = "JOB." + std::string(function) + "(" + jobTables() +
                                               (words ? ";units;language;" : ";units;") + jobTail() + ")",
                                    .rows = stormRows,
                                    .columns = std::move(columns),
                                    .says = "Storms from five minutes to a day, a row each"});
    };
    storms("storms_numbers", "STORMS",
           {{"Duration"},
            {"Rain"},
            {"Intensity"},
            {"Most of capacity"},
            {"Least freeboard"},
            {"Inlets over"},
            {"Over half blocked"},
            {"Not known"},
            {"Pit filled"},
            {"Pit full after"},
            {"Wells up for"},
            {"Wells up"},
            {"Fails after"}});
    storms("storms_words", "STORMS.TEXT",
           {{"Storm"}, {"Most at run"}, {"Least at node"}, {"Fails first"}, {"Says"}});
    const auto taken = [&](const char* name, const std::string& function, const char* table, int rows,
                           std::vector<BlockColumn> columns, const char* what) {
        const bool words = function.find(".") != std::string::npos;
        sheet.parts.push_back(Block{.name = name,
                                    .formula = "JOB." + function + "(" + takeoffTables() +
                                               (words ? ";units;language;" : ";units;") + jobTail() + ")",
                                    .table = table,
                                    .rows = rows,
                                    .columns = std::move(columns),
                                    .says = what});
    };
    taken("pieces_numbers", "PIECES", "", takeoffRows, {{"Net"}, {"Fewest sticks"}},
          "Goods to buy, a row a code");
    taken("pieces_words", "PIECES.TEXT", "", takeoffRows, {{"Code"}, {"Unit"}, {"From"}, {"Pipe"}},
          "The same in words");
    taken("dig_numbers", "DIG", "Runs", 0,
          {{"Trench width"},
           {"Soil in place"},
           {"Bedding"},
           {"Pipe room"},
           {"Lawn"},
           {"Joints"},
           {"Cement pints"}},
          "What each run digs and takes");
    // With room for kinds that a later engine counts.
    const int works = static_cast<int>(Work::HandDigLength) + 9;
    taken("work_numbers", "WORK", "", works, {{"Amount"}}, "How much of each kind of work");
    taken("work_words", "WORK.TEXT", "", works, {{"Work"}, {"Unit"}, {"From"}, {"Key"}},
          "The same in words, and the key by which Labor finds its row");
    taken("taken_words", "PIECES.FINDINGS", "", takeoffRows,
          {{"Severity"}, {"Sheet"}, {"Name"}, {"Says"}, {"Listed"}},
          "What cannot be counted, and cleanouts that the rules ask");
    const std::string plan = "(" + jobTables() + ";grade_pipes_in;dig_cost_in;plan_deepest;plan_drop;units;";
    sheet.parts.push_back(
        Block{.name = "plan_numbers",
              .formula = "JOB.PLAN" + plan + jobTail() + ")",
              .table = "Runs",
              .columns = {{"Plan up"},
                          {"Plan down"},
                          {"Plan slope"},
                          {"Plan cut up"},
                          {"Plan cut down"},
                          {"Plan drop"},
                          {"Plan costs"},
                          {"Typed costs"},
                          {"More"}},
              .says = "The cheapest grade that keeps every rule, and what the levels typed cost"});
    sheet.parts.push_back(Block{.name = "plan_words",
                                .formula = "JOB.PLAN.TEXT" + plan + "language;" + jobTail() + ")",
                                .table = "Runs",
                                .columns = {{"Plan pipe"}, {"Plan reason"}, {"Plan saving"}},
                                .says = "Its pipes; on outlet rows why it fits or not"});
    for (int nth = 1; nth <= linesShown; ++nth)
        sheet.parts.push_back(penBlock(profileStrokes(nth), profileCall(nth), addin::profilePens(),
                                       "Strokes of a line from the side, in mm on its paper"));
    sheet.parts.push_back(pit::sharesBlock());
    sheet.parts.push_back(penBlock("pit_strokes", pitSectionCall(), addin::pitPens(),
                                   "Strokes of the pit cut open, in mm on its paper"));
    const auto says = [](const char* name, std::string formula, const char* what) {
        return Block{.name = name,
                     .formula = std::move(formula),
                     .rows = 1,
                     .columns = {{.heading = "Says"}},
                     .says = what};
    };
    sheet.parts.push_back(Block{.name = "takeoff_says",
                                .formula = "TEXTJOIN(CHAR(10);1;IFERROR(<taken_words.Listed:*>;\"\"))",
                                .rows = 1,
                                .columns = {{.heading = "Says"}},
                                .says = "What cannot be counted, a line each"});
    const auto unpriced = [&](const char* name, const std::string& table) {
        sheet.parts.push_back(says(name,
                                   "TEXTJOIN(\", \";1;IFERROR(IF(([" + table + ".Code]<>\"\")*(1-ISNUMBER([" +
                                       table + ".Price]));[" + table + ".Code];\"\");\"\"))",
                                   "Codes that have no price"));
    };
    const std::string found = "INDEX(form_Columns_read;0;2)";
    sheet.parts.push_back(says("columns_unread",
                               "TEXTJOIN(\"; \";1;IF(" + found +
                                   "=0;\"\";INDEX(form_Columns_read;0;1)&\" \"&IF(" + found + "<1;1000000*" +
                                   found + "&\"=\";" + found + ")))",
                               "Columns with a row that cannot be used, or with an unusual number (=)"));
    unpriced("counted_unpriced", "Takeoff");
    unpriced("added_unpriced", "Additions");
    sheet.parts.push_back(says("job_missing", jobMissing(), "What is still to measure or to ask"));
    sheet.parts.push_back(says("job_cautions", jobCautions(), "Cautions of the whole job"));
    sheet.widths = {60};
    sheet.workings = true;
    sheet.printed = false;
    sheet.locked = true;
    return sheet;
}

}  // namespace trenchbook::sheets
