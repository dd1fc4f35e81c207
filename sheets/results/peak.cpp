// Peak flows with travel time, for long lines: water that is longer on its way meets a gentler rain.
#include "templates/job.h"

namespace trenchbook::sheets {
namespace {

std::string ofRun(const std::string& column) { return "INDEX([Runs." + column + "];[#])"; }
std::string ofBlock(int column) {
    return "IFERROR(1*INDEX(peak_block;[#];" + std::to_string(column) + ");\"\")";
}

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

Table peaks(int rows) {
    const auto mirrored = [](const char* heading, double width) {
        return Column{.heading = heading,
                      .width = width,
                      .formula = "IF(peak_used=\"yes\";IFERROR(" + ofRun(heading) + "&\"\";\"\");\"\")"};
    };
    const auto number = [](const char* heading, Format format, Measure measure, std::string formula,
                           const char* note) {
        return Column{.heading = heading,
                      .format = format,
                      .measure = measure,
                      .width = 22,
                      .formula = std::move(formula),
                      .note = note};
    };
    Table table;
    table.name = "Peaks";
    table.rows = rows;
    table.columns = {
        mirrored("Line", 48),
        mirrored("From", 24),
        mirrored("To", 24),
        mirrored("Pipe", 24),
        number("Area x C", show::number(0), Measure::SquareFeet, ofBlock(1),
               "Of all inlets that drain to the upper node."),
        number(
            "Minutes", show::number(2), Measure::Minutes, ofBlock(2),
            "Until water of the longest way is at the upper node: an inlet's own minutes, or those of a run that flows in and its travel."),
        number("Rain", show::number(2), Measure::InchesPerHour, ofBlock(3),
               "Intensity of that duration, from the table on Rain."),
        number("Flow", show::number(1), Measure::Gpm, ofBlock(4),
               "Rain x area x C; Runs takes it from here."),
        number("Velocity", show::number(2), Measure::FeetPerSecond, ofBlock(5),
               "At which the water travels."),
        number("Travel", show::number(2), Measure::Minutes,
               "IF(N([Velocity])>0;TAPE.FEET(" + ofRun("Length") + ";units)/[Velocity]/60;\"\")",
               "Through this run: length / velocity."),
        number("At once", show::number(1), Measure::Gpm,
               "IF(peak_used=\"yes\";IFERROR(1*INDEX(flow_block;[#];1);\"\");\"\")",
               "For comparison: the flow if all inlets came at once at the rain on Job."),
        {.heading = "Size",
         .width = 24,
         .formula = "IF(N([Flow])>0;IFERROR(PIPE.SIZE([Flow];" + ofRun("Slope %") +
                    ";[Peak sizes.Pipe];peak_share;" + peakRoughness() + ";;units);\"none listed\");\"\")",
         .note =
             "First pipe of the list above that carries the flow at the run's slope within the largest share."},
        {.heading = "Why not",
         .width = 70,
         .formula = "IF(peak_used=\"yes\";IFERROR(INDEX(peak_why_block;[#];1);\"\");\"\")",
         .note = "Why a run has no peak flow."},
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
        {.label = "Count travel time",
         .name = "peak_used",
         .kind = Kind::Measured,
         .validity = choice({"yes"}),
         .note =
             "yes: Runs takes its flows from here. Blank, as on a small lot: all inlets come at once, at the rain on Job."},
        {.label = "Travel at",
         .name = "peak_travel",
         .kind = Kind::Kept,
         .value = "flow",
         .validity = choice({"flow", "area"}),
         .note =
             "flow: the velocity at the depth of the water. area: flow / full area, as tables worked by hand count."},
        {.label = "Roughness",
         .name = "peak_roughness",
         .kind = Kind::Kept,
         .format = show::number(4),
         .validity = between(0.005, 0.5),
         .note = "Manning n of all pipes here. Blank: each pipe's own."},
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
             "IF(ISERROR(INDEX(peak_why_block;1;1));\"NO: \"&TRENCHBOOK.WHY(\"LINES.PEAK\"" +
             peakArguments() + ");\"OK\")))"},
    };
    Sheet sheet;
    sheet.name = "Peak";
    sheet.title = "Peak";
    sheet.purpose =
        "Flows of long lines by the rational method with travel time. Needs the table on Rain, and Minutes on Water; blank unless wanted.";
    Paragraphs offered;
    offered.heading = "Sizes to choose from";
    sheet.parts = {form, offered, sizes(), peaks(size.runs)};
    return sheet;
}

}  // namespace trenchbook::sheets
