// Soak test: each reading gives a rate, the last reading of a hole is the hole's.
#include "kit/judged.h"
#include "site/pit_parts.h"

namespace trenchbook::sheets::pit {
namespace {

Column helper(const char* heading, const std::string& formula) {
    return {.heading = heading, .width = 14, .formula = formula, .helper = true};
}
// Over the sound readings of this row's hole.
std::string sumOfHole(const std::string& product) {
    return "SUMPRODUCT(([Soak.Key]=[Key])*[Soak.Sound]*" + product + ")";
}
std::string latestBelow(const std::string& number) {
    return "SUMPRODUCT(MAX(([Soak.Key]=[Key])*[Soak.Sound]*([Soak.No]<" + number + ")*[Soak.No]))";
}
Cases notNumber(const std::string& column) {
    return {{"ISBLANK([" + column + "])", "\"NO: " + column + " is missing\""},
            {"NOT(ISNUMBER([" + column + "]))", "\"NO: " + column + " is not a number: \"&[" + column + "]"}};
}

}  // namespace

Table soakTable(const JobSize& size) {
    const auto inches = [](const char* heading, const char* note) {
        return Column{.heading = heading,
                      .kind = Kind::Measured,
                      .format = show::number(2),
                      .measure = Measure::Inches,
                      .width = 19,
                      .validity = between(0, 120),
                      .note = note};
    };
    Table table;
    table.name = "Soak";
    table.rows = size.soak;
    table.columns = {
        {.heading = "Hole",
         .kind = Kind::Measured,
         .width = labelWidth,
         .note = "Name of the test hole; its bottom is where the pit's bottom will be."},
        {.heading = "Reading",
         .kind = Kind::Measured,
         .format = show::number(0),
         .width = valueWidth,
         .validity = between(1, 99),
         .note = "1, 2, 3… in each hole; refill before each. The last one counts."},
        {.heading = "Pre-soak",
         .kind = Kind::Measured,
         .format = show::number(1),
         .measure = Measure::Hours,
         .width = 19,
         .validity = between(0, 72),
         .note = "How long the hole had been kept full before the first reading; once for each hole."},
        inches("Hole diameter", ""),
        inches("Gravel", "Gravel under the mark from which depths are read; blank if none."),
        {.heading = "Minutes",
         .kind = Kind::Measured,
         .format = show::number(0),
         .measure = Measure::Minutes,
         .width = 18,
         .validity = between(1, 1440),
         .note = "Length of the reading: 30, in sand 10."},
        inches("Water before", "Depth of water at its start."),
        inches("Water after", "Depth at its end."),
        {.heading = "Drop",
         .format = show::number(2),
         .measure = Measure::Inches,
         .width = 18,
         .formula =
             "IFERROR(IF(AND(ISNUMBER([Water before]);ISNUMBER([Water after]));[Water before]-[Water after];\"\");\"\")"},
        {.heading = "Soak rate",
         .format = show::number(2),
         .measure = Measure::InchesPerHour,
         .width = 18,
         .formula =
             "IF(ISNUMBER([Drop]);IFERROR(SOIL.RATE([Drop];[Minutes];[Hole diameter];[Water before];1;N([Gravel]);units);\"\");\"\")",
         .note = "Side walls taken out, before the safety factor."},
        {.heading = "Perc",
         .format = show::number(1),
         .width = 18,
         .formula = "IFERROR(IF(AND(ISNUMBER([Minutes]);[Drop]>0);[Minutes]/[Drop];\"\");\"\")",
         .note =
             "Minutes for a drop of one. People speak in it and permits ask for it; it is NOT the rate: water leaves through the walls too.",
         .unit = "=IF(units=\"metric\";\"min/mm\";\"min/in\")"},
        {.heading = "Differ",
         .format = show::number(2),
         .measure = Measure::Inches,
         .width = 18,
         .formula =
             "IF(AND(ISNUMBER([Counts]);N([Second])>0);[Minutes]*(MAX([Pace];[Pace before];[Pace second])-MIN([Pace];[Pace before];[Pace second]));\"\")",
         .note = "Between the last three drops of the hole, in a reading as long as the last."},
        {.heading = "Counts",
         .format = show::number(2),
         .measure = Measure::InchesPerHour,
         .width = 18,
         .formula = "IF([Sound]=0;\"\";IF(" + sumOfHole("([Soak.No]>[No])") + "=0;[Soak rate];\"\"))",
         .note = "Rate of the hole: its last reading."},
        {.heading = "Check",
         .kind = Kind::Verdict,
         .width = 84,
         .formula = "IFERROR([Judged];\"NO: a cell of this row holds an error\")"},
        helper("Key", "IFERROR(TRIM([Hole]&\"\");\"\")"),
        helper("No", "IFERROR(IF(ISNUMBER([Reading]);[Reading];0);0)"),
        helper("Sound", "IFERROR(IF(AND([Key]<>\"\";[No]>=1;ISNUMBER([Soak rate]));1;0);0)"),
        helper("Pace", "IF([Sound]=0;0;[Drop]/[Minutes])"),
        helper("Before", "IF([Sound]=0;0;" + latestBelow("[No]") + ")"),
        helper("Second", "IF([Before]=0;0;" + latestBelow("[Before]") + ")"),
        helper("Pace before", "IF([Before]=0;0;" + sumOfHole("([Soak.No]=[Before])*[Soak.Pace]") + ")"),
        helper("Pace second", "IF([Second]=0;0;" + sumOfHole("([Soak.No]=[Second])*[Soak.Pace]") + ")"),
        helper("Soaked", "IFERROR(IF(ISNUMBER([Pre-soak]);[Pre-soak];0);0)"),
        helper("Hole soaked", "IF([Key]=\"\";0;SUMPRODUCT(MAX(([Soak.Key]=[Key])*[Soak.Soaked])))"),
        helper("Judged", ""),
        helper("Most pace", "MAX([Pace];[Pace before];[Pace second])"),
    };
    judge(
        table, "Judged",
        Cases{{"AND(ISBLANK([Hole]);ISBLANK([Reading]);ISBLANK([Water before]);ISBLANK([Water after]))",
               "\"\""},
              {"[Key]=\"\"", "\"NO: the hole has no name\""}} +
            notNumber("Reading") +
            Cases{{"[Reading]<1", "\"NO: readings are numbered from 1\""},
                  {"SUMPRODUCT(([Soak.Key]=[Key])*([Soak.No]=[No]))>1",
                   "\"NO: this hole has two readings \"&[Reading]&\"; number them in their order\""}} +
            notNumber("Water before") + notNumber("Water after") +
            Cases{
                {"NOT(ISNUMBER([Soak rate]))",
                 "\"NO: \"&TRENCHBOOK.WHY(\"SOIL.RATE\";[Drop];[Minutes];[Hole diameter];[Water before];1;N([Gravel]);units;language)"},
                {"NOT(ISNUMBER([Counts]))", "\"OK\""},
                {"N([Second])=0", "\"CHECK: counts, but three readings have to agree\""},
                {"AND([Differ]>{soil.agree.drop}*(1+1E-9);[Differ]>{soil.agree.share}*[Minutes]*[Most pace]*(1+1E-9))",
                 "\"CHECK: counts, but the last three drops do not agree yet: read on\""},
                {"[Hole soaked]=0", "\"CHECK: counts, but no pre-soak is noted\""},
                {"[Hole soaked]<{soil.presoak.min}",
                 "\"CHECK: counts, but pre-soak was \"&[Hole soaked]&\" h, rule asks \"&{soil.presoak.min}&\" (sand may have less)\""}},
        "\"OK: counts, the last three agree\"");
    return table;
}

}  // namespace trenchbook::sheets::pit
