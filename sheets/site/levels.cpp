// Rod readings to levels: native formulas only, so that the level book works without the add-in.
#include "buying/money.h"
#include "kit/judged.h"
#include "site/inputs.h"
#include "templates/job.h"

namespace trenchbook::sheets {

Sheet levelsSheet(const JobSize& size) {
    Table table;
    table.name = "Levels";
    table.rows = size.levels;
    table.columns = {
        {.heading = "Check",
         .kind = Kind::Verdict,
         .width = 62,
         .note = "What is wrong with this shot, or by how much it closes."},
        {.heading = "Point",
         .kind = Kind::Measured,
         .width = 34,
         .note = "Name of the point the rod stands on. Nodes look their ground up by this name."},
        {.heading = "Known level",
         .kind = Kind::Measured,
         .format = show::number(2),
         .measure = Measure::Feet,
         .width = 20,
         .validity = between(-1000, 15000),
         .note = "Only for a benchmark: its level. A later row of the same point closes the levels."},
        {.heading = "Backsight",
         .kind = Kind::Measured,
         .format = show::number(2),
         .measure = Measure::Feet,
         .width = 20,
         .validity = between(0, 25),
         .note =
             "Rod on a point of known level: starts a set-up. Decimals, no inches: 0 to 25 ft, in a metric job 0 to 8 m."},
        {.heading = "Rod",
         .kind = Kind::Measured,
         .format = show::number(2),
         .measure = Measure::Feet,
         .width = 20,
         .validity = between(0, 25),
         .note = "Rod on this point. A bigger reading is lower ground."},
        {.heading = "Note", .kind = Kind::Measured, .width = 48, .wrapped = true},
        {.heading = "Height of instrument",
         .format = show::number(2),
         .measure = Measure::Feet,
         .width = 24,
         .formula =
             "IF(AND(ISBLANK([Point]);ISBLANK([Known level]);ISBLANK([Backsight]);ISBLANK([Rod]));\"\";[Sight])",
         .note =
             "Level of the line of sight: level of the backsight's point + backsight. Holds until the next set-up."},
        {.heading = "Level",
         .format = show::number(2),
         .measure = Measure::Feet,
         .width = 22,
         .formula = "IF(NOT(ISBLANK([Rod]));"
                    "IF(AND(ISNUMBER([Rod]);ISNUMBER([^Sight]));"
                    "ROUND([^Sight]-[Rod];4);\"\");"
                    "IF(ISNUMBER([Known level]);[Known level];\"\"))",
         .note = "Height of instrument - rod, or the known level."},
        {.heading = "Closing error",
         .format = show::number(3),
         .measure = Measure::Feet,
         .width = 21,
         .formula =
             "IF(AND(ISNUMBER([Rod]);ISNUMBER([Level]));IF(ISNUMBER([Known level]);ROUND([Level]-[Known level];4);"
             "IFERROR(IF(AND([First shot]<>\"\";N([First shot])<[#]);ROUND([Level]-INDEX([Levels.Level];[First shot]);4);\"\");\"\"));\"\")",
         .note = "Level found again on a benchmark or on a point shot before - its level there."},
        {.heading = "Adjusted",
         .format = show::number(3),
         .measure = Measure::Feet,
         .width = 21,
         .formula = answered("levels_numbers.Adjusted"),
         .note = "The level that fits the readings of all set-ups best, by least squares (LEVELS.ADJUST)."},
        {.heading = "Rod off",
         .format = show::number(3),
         .measure = Measure::Feet,
         .width = 19,
         .formula = answered("levels_numbers.Rod off"),
         .note = "Residual: the rod as read less what the adjusted levels ask."},
        {.heading = "Backsight off",
         .format = show::number(3),
         .measure = Measure::Feet,
         .width = 19,
         .formula = answered("levels_numbers.Backsight off"),
         .note = "The same of the backsight."},
        {.heading = "Level used",
         .format = show::number(2),
         .measure = Measure::Feet,
         .width = 22,
         .formula = "IF(levels_used=\"adjusted\";IF(ISNUMBER([Adjusted]);ROUND([Adjusted];4);\"\");[Level])",
         .note = "What Nodes and Ground take: Level, or Adjusted where Levels used says so."},
        // Carried over blank rows, where Height of instrument shows nothing.
        {.heading = "Sight",
         .format = show::number(2),
         .measure = Measure::Feet,
         .width = 20,
         .formula = "IF(ISNUMBER([Backsight]);IF(ISNUMBER([Level]);ROUND([Level]+[Backsight];4);\"\");"
                    "IF(AND(ISBLANK([Backsight]);ISNUMBER([^Sight]));[^Sight];\"\"))",
         .helper = true},
        {.heading = "Closes",
         .format = show::general,
         .width = 20,
         .formula =
             "IF(ISNUMBER([Closing error]);IF(ISNUMBER([Known level]);\"closes by \";\"off its first shot by \")&"
             "TEXT([Closing error];\"0.00\")&IF(units=\"metric\";\" m\";\" ft\");\"\")",
         .helper = true},
        {.heading = "First shot",
         .format = show::general,
         .width = 20,
         .formula = "IFERROR(IF([Point]<>\"\";MATCH([Point];[Levels.Point];0);\"\");\"\")",
         .note = "Where this point stands first in the table.",
         .helper = true},
    };
    Cases cases = {
        {"AND(ISBLANK([Point]);ISBLANK([Known level]);ISBLANK([Backsight]);ISBLANK([Rod]))", "\"\""}};
    for (const char* input : {"Point", "Known level", "Backsight", "Rod"})
        cases.emplace_back("ISERROR([" + std::string(input) + "])",
                           "\"NO: " + std::string(input) + " holds an error\"");
    for (const char* input : {"Known level", "Backsight", "Rod"}) {
        const std::string cell = "[" + std::string(input) + "]";
        cases.emplace_back("NOT(OR(ISBLANK(" + cell + ");ISNUMBER(" + cell + ")))",
                           "\"NO: " + std::string(input) + " is not a number: \"&" + cell);
    }
    const std::string longest = "IF(units=\"metric\";8;25)";
    judge(
        table, "Check",
        cases +
            Cases{
                {"OR(N([Rod])<0;N([Rod])>" + longest + ";N([Backsight])<0;N([Backsight])>" + longest + ")",
                 "\"NO: a rod reads from 0 to \"&IF(units=\"metric\";\"8 m; meters, not centimeters\";\"25 ft; feet and hundredths, not inches\")"},
                {"AND(ISBLANK([Rod]);ISBLANK([Known level]))", "\"NO: no rod reading and no known level\""},
                {"[Level]=\"\"",
                 "\"NO: no set-up above this row; a backsight on a known level comes first\""},
                {"[Closing error]=\"\"", "\"OK\""},
                {"ABS([Closing error])>{levels.close.max}", "\"NO: \"&[Closes]&\"; level it again\""},
                {"ABS([Closing error])>{levels.close}", "\"CHECK: \"&[Closes]"}},
        "\"OK: \"&[Closes]");
    Sheet sheet;
    sheet.name = "Levels";
    sheet.title = "Levels";
    sheet.purpose =
        "=\"Start each set-up with a backsight on a known point, then one row a shot; shoot the benchmark again to "
        "close. \"&IF(units=\"metric\";\"Meters: 1.675 is 1 m 67.5 cm.\";\"Decimal feet: 5.50 is 5 ft 6 in.\")";
    Form used;
    used.name = "Level book";
    used.noteSpan = 5;
    used.fields = {
        {.label = "Levels used",
         .name = "levels_used",
         .kind = Kind::Measured,
         .value = "as read",
         .validity = choice({"as read", "adjusted"}),
         .note =
             "adjusted: what the circuit misses is spread over its set-ups. That needs the add-in; as read does not."},
        {.label = "Adjusted levels",
         .name = "levels_adjusted_check",
         .kind = Kind::Verdict,
         .format = show::general}};
    judge(
        used, "levels_adjusted_check",
        {{"AND(levels_used<>\"\";levels_used<>\"as read\";levels_used<>\"adjusted\")",
          "\"NO: Levels used is as read or adjusted, not \"&levels_used"},
         {"COUNT([Levels.Rod])=0", "\"\""},
         {"AND(COUNT([Levels.Adjusted])=0;levels_used<>\"adjusted\")", "\"\""},
         {"COUNT([Levels.Adjusted])=0",
          "\"NO: nothing is adjusted: the add-in answers it, from one known level a point\""},
         {"SUMPRODUCT(IFERROR(1*<levels_numbers.Slip:*>;0))>0",
          "\"CHECK: a reading is off by more than readings are: see Rod off and Backsight off\""}},
        "\"OK: the largest residual is \"&TEXT(levels_most_off;\"0.000\")&IF(units=\"metric\";\" m\";\" ft\")");
    used.fields.push_back(hidden(
        "Largest residual", "levels_most_off",
        "MAX(MAX([Levels.Rod off]);-MIN([Levels.Rod off]);MAX([Levels.Backsight off]);-MIN([Levels.Backsight off]))"));
    sheet.parts = {used, table};
    sheet.freezeColumns = 2;
    return sheet;
}

}  // namespace trenchbook::sheets
