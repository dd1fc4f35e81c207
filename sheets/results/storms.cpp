// Storms from five minutes to a day against the job: what comes closest, what fails first, what the owner is told.
#include "site/inputs.h"
#include "templates/job.h"

namespace trenchbook::sheets {
namespace {

// This row's storm: the blocks have no thin row.
std::string ofStorm(const std::string& mark) { return "IFERROR(INDEX(<" + mark + ":*>;[#]-1);\"\")"; }

Column number(const char* heading, Format format, Measure measure, double width, const char* note = "") {
    return {.heading = heading,
            .format = format,
            .measure = measure,
            .width = width,
            .formula = ofStorm(std::string("storms_numbers.") + heading),
            .note = note};
}
Column words(const char* heading, double width, const char* note = "") {
    return {.heading = heading,
            .width = width,
            .formula = ofStorm(std::string("storms_words.") + heading),
            .note = note};
}

Table tried() {
    Table table;
    table.name = "Storms";
    table.rows = stormRows;
    table.columns = {
        words(
            "Storm", 56,
            "A block of even rain; the last one is centered: every shorter storm of the table lies within it."),
        number("Rain", show::number(2), Measure::Inches, 15),
        number("Intensity", show::number(2), Measure::InchesPerHour, 16, "Of a centered storm the greatest."),
        number("Most of capacity", show::percent(0), Measure::Share, 18,
               "Greatest flow over what the pipe carries full."),
        words("Most at run", 26),
        number("Least freeboard", show::number(2), Measure::Feet, 18,
               "Least height of a grate, cap or sill over the water; below 0 water comes out there."),
        words("Least at node", 20),
        number("Inlets over", show::number(0), Measure::Plain, 14,
               "Inlets that more comes to than they take, with clean grates."),
        number("Over half blocked", show::number(0), Measure::Plain, 19,
               "The same with half of each grate blocked."),
        number("Not known", show::number(0), Measure::Plain, 14,
               "Inlets and openings that lack a number on Water, Nodes or Runs."),
        number("Pit filled", show::percent(0), Measure::Share, 14,
               "At its fullest; it is empty when the rain begins."),
        number("Pit full after", show::number(0), Measure::Minutes, 15, "Blank: it takes the whole storm."),
        number("Wells up for", show::number(0), Measure::Minutes, 15,
               "At the pit's tee, or at an end that wells up without a pit."),
        number("Wells up", show::number(0), Measure::CubicFeet, 15),
    };
    return table;
}

Table told() {
    Table table;
    table.name = "Storms told";
    table.rows = stormRows;
    Column first = words("Fails first", 56, "Nothing is said to hold that was not looked at.");
    first.wrapped = true;
    table.columns = {
        std::move(first),
        {.heading = "Says",
         .width = 15,
         .formula = ofStorm("storms_words.Says"),
         .wrapped = true,
         .span = 13},
    };
    return table;
}

}  // namespace

Sheet stormsSheet(const JobSize&) {
    Form form;
    form.name = "Storms asked";
    form.noteSpan = 12;
    form.fields = {
        {.label = "Rain table",
         .name = "storms_rain",
         .kind = Kind::Verdict,
         .format = show::general,
         .value = "=IF(COUNTA([Rain.*])=0;\"CHECK: no storm is tried: paste the table on Rain\";"
                  "IF(ISNUMBER(INDEX(<storms_numbers.Duration:*>;1));\"OK\";"
                  "\"NO: \"&TRENCHBOOK.WHY(\"RAIN.DEPTH\";[Rain.*];60;rain_years;units;language)))",
         .note = "Durations that the table lacks are named below and not tried."},
    };
    Sheet sheet;
    sheet.name = "Storms";
    sheet.title = "Storms";
    sheet.purpose =
        "Blocks of even rain and one centered storm (alternating blocks) of the table on Rain against lines, "
        "openings, inlets and pit.";
    Paragraphs words;
    words.heading = "In words";
    sheet.parts = {form, tried(), words, told()};
    return sheet;
}

}  // namespace trenchbook::sheets
