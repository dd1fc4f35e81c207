// Peak flows with travel time, for long lines: water that is longer on its way meets a gentler rain.
#include "site/inputs.h"
#include "templates/job.h"

namespace trenchbook::sheets {
namespace {

Table sizes() {
    Table table;
    table.name = "Peak sizes";
    table.rows = 12;
    table.columns = {{.heading = "Pipe",
                      .kind = Kind::Kept,
                      .width = 48,
                      .validity = chosenFrom("[Stock.Pipe]"),
                      .note = "Stock names or bare bores, in the order in which Size tries them."}};
    for (const char* pipe : {"4 SDR35", "6 SDR35", "8 SDR35", "10 SDR35", "12 SDR35", "15 SDR35"})
        table.content.push_back({pipe});
    return table;
}

// A cell of the solved job; nothing while peaks are not asked for, or the table of rain does not give them.
Column number(const char* heading, Format format, Measure measure, const std::string& value,
              const char* note) {
    return {.heading = heading,
            .format = format,
            .measure = measure,
            .width = 22,
            .formula = "IF(LEFT(peak_rain;2)=\"OK\";" + answered(value) + ";\"\")",
            .note = note};
}
Table peaks(int rows) {
    Table table;
    table.name = "Peaks";
    table.rows = rows;
    table.columns = {
        {.heading = "Run", .width = 48, .formula = "IF(peak_used=\"yes\";<runs_words.Run>;\"\")"},
        number("Area x C", show::number(0), Measure::SquareFeet, "runs_numbers.Area x C",
               "Of all inlets that drain to the upper node."),
        number(
            "Minutes", show::number(2), Measure::Minutes, "runs_numbers.Minutes",
            "Until water of the longest way is at the upper node: an inlet's own minutes, or those of a run that "
            "flows in and its travel."),
        number("Rain", show::number(2), Measure::InchesPerHour, "runs_numbers.Rain",
               "Intensity of that duration, from the table on Rain."),
        number("Flow", show::number(1), Measure::Gpm, "runs_numbers.Flow",
               "Rain x area x C; Runs takes it from here."),
        number("Velocity", show::number(2), Measure::FeetPerSecond, "runs_numbers.Travels at",
               "At which the water travels."),
        number("Travel", show::number(2), Measure::Minutes, "runs_numbers.Travel",
               "Through this run: length / velocity."),
        {.heading = "Size",
         .width = 24,
         .formula =
             "IF(N([Flow])>0;IFERROR(PIPE.SIZE([Flow];INDEX([Runs.Slope %];[#]);[Peak sizes.Pipe];peak_share;" +
             peakRoughness() + ";;units);\"none listed\");\"\")",
         .note =
             "First pipe of the list above that carries the flow at the run's slope within the largest share."},
    };
    return table;
}

}  // namespace

std::string peakRoughness() { return "IF(ISNUMBER(peak_roughness);peak_roughness;\"\")"; }

Sheet peakSheet(const JobSize& size) {
    Form form;
    form.name = "Peak";
    form.noteSpan = 8;
    form.fields = {
        input(InputTable::Peak, {"Count travel time"}, "peak_used"),
        input(InputTable::Peak, {"Travel at", 0, show::text, "", Kind::Kept}, "peak_travel", "flow"),
        input(InputTable::Peak, {"Roughness", 0, show::number(4), "", Kind::Kept}, "peak_roughness"),
        {.label = "Largest share",
         .name = "peak_share",
         .kind = Kind::Kept,
         .format = show::percent(0),
         .value = "={share.max}",
         .validity = between(0.01, 1),
         .note = "Of the full pipe's flow, for Size."},
        {.label = "Rain table",
         .name = "peak_rain",
         .kind = Kind::Verdict,
         .format = show::general,
         .value =
             "=IF(peak_used<>\"yes\";\"\";IF(COUNTA([Rain.*])=0;\"NO: travel time needs the table on Rain\";"
             "SUBSTITUTE(\"NO: \"&TRENCHBOOK.WHY(\"RAIN.INTENSITY\";[Rain.*];rain_minutes;rain_years;units;language);"
             "\"NO: OK\";\"OK\")))",
         .note = "A run without a peak flow says why in its Check on Runs."},
    };
    Sheet sheet;
    sheet.name = "Peak";
    sheet.title = "Peak";
    sheet.purpose =
        "Flows of long lines by the rational method with travel time. Needs the table on Rain, and Minutes on "
        "Water; blank unless wanted.";
    Paragraphs offered;
    offered.heading = "Sizes to choose from";
    sheet.parts = {form, offered, sizes(), peaks(size.runs)};
    return sheet;
}

}  // namespace trenchbook::sheets
