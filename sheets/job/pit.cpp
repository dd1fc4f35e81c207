// Does the soil take a pit, how big, how long until it is ready again.
#include "job/job.h"

namespace trenchbook::sheets {

Sheet pitSheet(const JobSize& size) {
    const auto feet = [](const char* label, const char* name, const char* note, double greatest) {
        return Field{.label = label, .name = name, .kind = Kind::Measured, .format = show::number(2),
                     .measure = Measure::Feet, .validity = between(0, greatest), .note = note};
    };
    const auto computed = [](const char* label, const char* name, Format format, Measure measure, std::string formula,
                             const char* note) {
        return Field{.label = label, .name = name, .kind = Kind::Computed, .format = format, .measure = measure,
                     .value = "=" + formula, .note = note};
    };
    const std::string sized = "AND(N(pit_length)>0;N(pit_width)>0;N(pit_depth)>0)";
    Form form;
    form.name = "Pit";
    form.heading = "Rock pit";
    form.fields = {
        {.label = "Tee at node", .name = "pit_node", .kind = Kind::Measured, .validity = chosenFrom("[Nodes.Node]"),
         .note = "The upturned tee in the pit. Blank: this job has no pit."},
        feet("Length", "pit_length", "", 300),
        feet("Width", "pit_width", "", 50),
        feet("Rock depth", "pit_depth", "Depth of the rock below the pipe's invert and around it, without the soil above.", 20),
        {.label = "Voids", .name = "pit_voids", .kind = Kind::Kept, .format = show::number(2), .measure = Measure::Share,
         .value = "={pit.voids}", .note = "Share of the rock's volume that water can fill."},
        {.label = "Side share", .name = "pit_sides", .kind = Kind::Kept, .format = show::number(2),
         .measure = Measure::Share, .value = "={pit.sideshare}", .note = "Share of the wet walls that counts as soaking; 0 counts the bottom alone."},
        computed("Design soak rate", "pit_rate", show::number(2), Measure::InchesPerHour,
                 "IF(COUNT([Soak.Counts])=0;\"\";MIN([Soak.Counts])/{soil.safety})",
                 "Slowest hole's last reading, divided by the safety factor on Rules."),
        computed("Water it holds", "pit_storage", show::number(1), Measure::CubicFeet,
                 "IF(" + sized + ";IFERROR(PIT.STORAGE(pit_length;pit_width;pit_depth;pit_voids;units);\"\");\"\")", ""),
        computed("Hours to empty", "pit_hours", show::number(1), Measure::Hours,
                 "IF(AND(" + sized + ";ISNUMBER(pit_rate));IFERROR(PIT.DRAINTIME(pit_length;pit_width;pit_depth;pit_rate;pit_voids;pit_sides;units);\"\");\"\")",
                 "From full, between storms."),
        computed("Area x C into it", "pit_area", show::number(0), Measure::SquareFeet,
                 "IF(OR(pit_node=\"\";N(rain_rate)<=0);\"\";SUMPRODUCT(([Runs.To]=pit_node)*IFERROR(1*[Runs.Flow];0))/rain_rate*IF(units=\"metric\";3600;96.25))",
                 "Roofs and paving that drain here, counted with their runoff share."),
        computed("Rain it holds", "pit_held", show::number(2), Measure::Inches,
                 "IF(AND(ISNUMBER(pit_storage);N(pit_area)>0);IFERROR(PIT.RAINHELD(pit_storage;pit_area;units);\"\");\"\")",
                 "Rain that fills it, if nothing soaked away. More than that overflows at the tee."),
        computed("Rock", "pit_rock", show::number(2), Measure::CubicYards,
                 "IF(ISNUMBER(pit_storage);IFERROR(PIT.ROCK(pit_storage;pit_voids;0;units);\"\");\"\")", "In the pit, before waste."),
        computed("Fabric", "pit_fabric", show::number(0), Measure::SquareFeet,
                 "IF(" + sized + ";2*pit_length*pit_width+2*(pit_length+pit_width)*pit_depth+2*(pit_length+pit_width)*{fabric.overlap}/IF(units=\"metric\";1000;12);\"\")",
                 "Around the rock, lapped at the top."),
        {.label = "Check", .name = "pit_verdict", .kind = Kind::Verdict, .format = show::general,
         .value = "=IF(pit_node=\"\";\"\";IF(COUNTIF([Nodes.Node];pit_node)=0;\"NO: no node \"&pit_node&\" on Nodes\";"
                  "IF(NOT(" + sized + ");\"NO: length, width or rock depth is missing\";"
                  "IF(NOT(ISNUMBER(pit_rate));\"NO: no soak test below\";"
                  "IF(NOT(ISNUMBER(pit_hours));\"NO: \"&TRENCHBOOK.WHY(\"PIT.DRAINTIME\";pit_length;pit_width;pit_depth;pit_rate;pit_voids;pit_sides;units);"
                  "IF(pit_rate<{pit.rate.min};\"NO: the soil takes \"&TEXT(pit_rate;\"0.00\")&\", rule asks \"&{pit.rate.min};"
                  "IF(pit_rate>{pit.rate.max};\"NO: too fast to protect groundwater, more than \"&{pit.rate.max};"
                  "IF(pit_hours>{pit.drain.max};\"NO: takes \"&TEXT(pit_hours;\"0\")&\" h to empty, rule allows \"&{pit.drain.max};"
                  "IF(pit_held<1;\"OK; holds \"&TEXT(pit_held;\"0.00\")&IF(units=\"metric\";\" mm\";\" in\")&\" of rain, then bubbles over at the tee\";\"OK\")))))))))"},
    };

    Table soak;
    soak.name = "Soak";
    soak.rows = size.soak;
    const auto inches = [](const char* heading, const char* note) {
        return Column{.heading = heading, .kind = Kind::Measured, .format = show::number(2), .measure = Measure::Inches,
                      .width = 24, .validity = between(0, 120), .note = note};
    };
    soak.columns = {
        {.heading = "Hole", .kind = Kind::Measured, .width = 40, .note = "Name of the test hole."},
        {.heading = "Reading", .kind = Kind::Measured, .format = show::number(0), .width = 36, .validity = between(1, 99), .note = "1, 2, 3… in each hole; the last one counts."},
        inches("Hole diameter", ""),
        {.heading = "Gravel", .kind = Kind::Measured, .format = show::number(1), .measure = Measure::Inches, .width = 70, .validity = between(0, 24), .note = "Gravel under the mark from which depths are read; 0 if none."},
        {.heading = "Minutes", .kind = Kind::Measured, .format = show::number(0), .measure = Measure::Minutes, .width = 22, .validity = between(1, 1440)},
        inches("Water before", "Depth of water at the start of the interval."),
        inches("Water after", "Depth at its end."),
        {.heading = "Drop", .format = show::number(2), .measure = Measure::Inches, .width = 22,
         .formula = "IF(AND(ISNUMBER([Water before]);ISNUMBER([Water after]));[Water before]-[Water after];\"\")"},
        {.heading = "Soak rate", .format = show::number(2), .measure = Measure::InchesPerHour, .width = 24,
         .formula = "IF(ISNUMBER([Drop]);SOIL.RATE([Drop];[Minutes];[Hole diameter];[Water before];1;N([Gravel]);units);\"\")",
         .note = "Into the bottom, side walls taken out, before the safety factor."},
        {.heading = "Perc", .format = show::number(1), .width = 24,
         .formula = "IF(AND(ISNUMBER([Drop]);ISNUMBER([Minutes]));IF([Drop]>0;[Minutes]/[Drop];\"\");\"\")",
         .note = "Minutes for a drop of one. Shown because people speak in it; it is NOT the rate.", .unit = "=IF(units=\"metric\";\"min/mm\";\"min/in\")"},
        {.heading = "Counts", .format = show::number(2), .measure = Measure::InchesPerHour, .width = 22,
         .formula = "IF(AND([Hole]<>\"\";ISNUMBER([Soak rate]));IF(SUMPRODUCT(([Soak.Hole]=[Hole])*(N([Reading])<IF(ISNUMBER([Soak.Reading]);[Soak.Reading];0)))=0;[Soak rate];\"\");\"\")",
         .note = "The last reading of its hole."},
        {.heading = "Check", .kind = Kind::Verdict, .width = 80,
         .formula = "IFERROR(IF(AND(ISBLANK([Hole]);ISBLANK([Water before]);ISBLANK([Water after]));\"\";"
                    "IF(ISBLANK([Hole]);\"NO: hole has no name\";"
                    "IF(NOT(ISNUMBER([Reading]));\"NO: number of the reading is missing\";"
                    "IF(ISBLANK([Water before]);\"NO: Water before is missing\";"
                    "IF(ISBLANK([Water after]);\"NO: Water after is missing\";"
                    "IF(ISNUMBER([Soak rate]);IF(ISNUMBER([Counts]);\"OK: this one counts\";\"OK\");"
                    "\"NO: \"&TRENCHBOOK.WHY(\"SOIL.RATE\";[Drop];[Minutes];[Hole diameter];[Water before];1;N([Gravel]);units)))))));\"NO: a cell of this row holds an error\")"},
    };
    Sheet sheet;
    sheet.name = "Pit";
    sheet.title = "Pit";
    sheet.purpose = "A pit in the wrong soil is abandoned money: fill the soak test first. The pipe is sized as if the pit were not there.";
    sheet.parts = {form, soak};
    return sheet;
}

}  // namespace trenchbook::sheets
