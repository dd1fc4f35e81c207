// Does the soil take a pit, how big, how long until it is ready again.
#include "site/pit_parts.h"

namespace trenchbook::sheets {
namespace {

using namespace pit;

const std::string findings =
    "PIT.CHECK([Rules.Key:Value];INDEX(form_Pit_facts;0;1);INDEX(form_Pit_facts;0;2);units)";
// What the engine says where it refuses the pit or a fact; else OK.
const std::string refusal =
    "IF(AND(" + sized +
    ";NOT(ISNUMBER(pit_storage)));TRENCHBOOK.WHY(\"PIT.STORAGE\";pit_length;pit_width;pit_depth;pit_voids;units);"
    "IF(AND(ISNUMBER(pit_storage);ISNUMBER(pit_rate);NOT(ISNUMBER(pit_hours)));TRENCHBOOK.WHY(\"PIT.DRAINTIME\";pit_length;pit_width;pit_depth;pit_rate;pit_voids;pit_sides;units);"
    "IFERROR(TRENCHBOOK.WHY(\"PIT.CHECK\";[Rules.Key:Value];INDEX(form_Pit_facts;0;1);INDEX(form_Pit_facts;0;2);units);\"a cell of the facts above holds an error\")))";
constexpr int findingLines = 18;  // every limit at once, and the cautions

Form sizeForm() {
    const auto feet = [](const char* label, const char* name, const char* note, double greatest) {
        return Field{.label = label,
                     .name = name,
                     .kind = Kind::Measured,
                     .format = show::number(2),
                     .measure = Measure::Feet,
                     .validity = between(0, greatest),
                     .note = note};
    };
    const auto share = [](const char* label, const char* name, const char* value, const char* note) {
        return Field{.label = label,
                     .name = name,
                     .kind = Kind::Kept,
                     .format = show::number(2),
                     .measure = Measure::Share,
                     .value = value,
                     .note = note};
    };
    Form form;
    form.name = "Pit";
    form.heading = "Rock pit";
    form.noteSpan = 11;
    form.fields = {
        {.label = "Tee at node",
         .name = "pit_node",
         .kind = Kind::Measured,
         .validity = chosenFrom("[Nodes.Node]"),
         .note = "The upturned tee in the pit. Blank: this job has no pit."},
        feet("Length", "pit_length", "", 300),
        feet("Width", "pit_width", "", 50),
        feet("Rock depth", "pit_depth",
             "From the pit's bottom up to where it bubbles over, without the soil above.", 20),
        {.label = "Soil over it",
         .name = "pit_soil_over",
         .kind = Kind::Kept,
         .format = show::number(2),
         .measure = Measure::Feet,
         .value = "=IF(units=\"metric\";0.3;1)",
         .validity = between(0, 10),
         .note = "Between rock and ground: a foot of soil, in common practice."},
        share("Voids", "pit_voids", "={pit.voids}", "Share of the rock's volume that water can fill."),
        share("Side share", "pit_sides", "={pit.sideshare}",
              "Share of the wet walls that counts as soaking; 0 counts the bottom alone."),
        computed("Tested soak rate", "pit_tested", show::number(2), Measure::InchesPerHour,
                 "IF(OR(COUNT([Soak.Counts])=0;COUNTIF([Soak.Check];\"NO*\")>0);\"\";MIN([Soak.Counts]))",
                 "Slowest hole of the soak test below; none while a reading there is refused."),
        computed("Design soak rate", "pit_rate", show::number(2), Measure::InchesPerHour,
                 "IF(ISNUMBER(pit_tested);pit_tested/{soil.safety};\"\")",
                 "Tested rate divided by the safety factor on Rules (soil.safety)."),
        computed("Water it holds", "pit_storage", show::number(1), Measure::CubicFeet,
                 when(sized, "PIT.STORAGE(pit_length;pit_width;pit_depth;pit_voids;units)")),
        computed("Hours to empty", "pit_hours", show::number(1), Measure::Hours,
                 when("AND(" + sized + ";ISNUMBER(pit_rate))",
                      "PIT.DRAINTIME(pit_length;pit_width;pit_depth;pit_rate;pit_voids;pit_sides;units)"),
                 "From full, between storms."),
        computed(
            "Area x C into it", "pit_area", show::number(0), Measure::SquareFeet,
            "IF(OR(pit_node=\"\";N(rain_rate)<=0);\"\";SUMPRODUCT(([Runs.To]=pit_node)*IFERROR(1*[Runs.Flow];0))/rain_rate*IF(units=\"metric\";3600;96.25))",
            "Roofs and paving that drain here, counted with their runoff share."),
        computed("Rain it holds", "pit_held", show::number(2), Measure::Inches,
                 when("AND(ISNUMBER(pit_storage);N(pit_area)>0)", "PIT.RAINHELD(pit_storage;pit_area;units)"),
                 "Rain that fills it, if nothing soaked away. More than that bubbles over at the tee."),
        computed("Rock", "pit_rock", show::number(2), Measure::CubicYards,
                 when("ISNUMBER(pit_storage)", "PIT.ROCK(pit_storage;pit_voids;0;units)"),
                 "In the pit, before waste."),
        computed("Rock by weight", "pit_tons", show::number(2), Measure::ShortTons,
                 when("ISNUMBER(pit_rock)", "ROCK.TONS(pit_rock;{rock.density};0;units)"),
                 "By the density on Rules, before waste."),
        computed(
            "Fabric", "pit_fabric", show::number(0), Measure::SquareFeet,
            "IF(" + sized +
                ";2*pit_length*pit_width+2*(pit_length+pit_width)*pit_depth+2*(pit_length+pit_width)*{fabric.overlap}/IF(units=\"metric\";1000;12);\"\")",
            "Around the rock, lapped at the top."),
        verdict(
            "Check", "pit_verdict",
            "IF(pit_node=\"\";\"\";IF(COUNTIF([Nodes.Node];pit_node)=0;\"NO: no node \"&pit_node&\" on Nodes\";"
            "IF(NOT(" +
                sized +
                ");\"NO: a size is missing\";"
                "IF(COUNTIF([Soak.Check];\"NO*\")>0;\"NO: a soak reading is refused\";"
                "IF(NOT(ISNUMBER(pit_reasons));\"NO: refused, reason below\";"
                "IF(pit_reasons>0;\"NO: \"&pit_reasons&IF(pit_reasons=1;\" reason\";\" reasons\")&\" on Pit\";"
                "IF(AND(has_well=\"yes\";NOT(ISNUMBER(pit_well)));\"CHECK: how far is the well?\";"
                "IF(AND(has_septic=\"yes\";NOT(ISNUMBER(pit_septic)));\"CHECK: how far is septic?\";"
                "IF(COUNTIF([Soak.Check];\"CHECK*\")>0;\"CHECK: soak test not settled\";"
                "IF(AND(pit_mound_verdict<>\"\";LEFT(pit_mound_verdict;2)<>\"OK\");\"CHECK: mound under the pit\";"
                "IF(N(pit_held)>0;\"OK; holds \"&TEXT(pit_held;IF(units=\"metric\";\"0\";\"0.00\"))&IF(units=\"metric\";\" mm\";\" in\")&\" of rain\";\"OK\")))))))))))",
            "Every reason stands on a line of its own below. What the pit cannot hold bubbles over at the tee."),
        computed(
            "Reasons against it", "pit_reasons", show::number(0), Measure::Plain,
            "IF(OR(pit_node=\"\";" + refusal +
                "<>\"OK\");\"\";SUMPRODUCT(([Pit reasons.Reason]<>\"\")*([Pit reasons.Reason]<>\"OK\")*(LEFT([Pit reasons.Reason];7)<>\"caution\")))"),
    };
    return form;
}

// Its labels are the keys that PIT.CHECK reads.
Form factsForm() {
    const auto away = [](const char* key, const char* name, const char* note) {
        return Field{.label = key,
                     .name = name,
                     .kind = Kind::Measured,
                     .format = show::number(1),
                     .measure = Measure::Feet,
                     .validity = between(0, 1000),
                     .note = note};
    };
    Form form;
    form.name = "Pit facts";
    form.heading = "What the rules ask about the pit";
    form.noteSpan = 11;
    form.fields = {
        computed("rate", "", show::number(2), Measure::InchesPerHour, "pit_rate", "Design soak rate, above."),
        computed("drain hours", "", show::number(1), Measure::Hours, "pit_hours",
                 "From full to empty, above."),
        away(
            "high water", "pit_high_water",
            "From the ground down to the highest water of the year: rust marks in the soil, a well log, the soil survey."),
        computed("pit depth", "pit_bottom", show::number(2), Measure::Feet,
                 "IF(N(pit_depth)>0;pit_depth+N(pit_soil_over);\"\")",
                 "From the ground down to the pit's bottom."),
        computed("widest", "", show::number(2), Measure::Feet,
                 "IF(" + sized + ";MAX(pit_length;pit_width);\"\")", ""),
        away("foundation", "pit_foundation",
             "Distance from the pit's edge to the nearest foundation, and so on."),
        away("lot line", "pit_lot_line", ""),
        away("well", "pit_well", "Blank: there is none, here and on the neighbors' lots."),
        away("septic", "pit_septic", "Tank or field. Blank: there is none."),
        away("pool", "pit_pool", "Its shell. Blank: there is none."),
        {.label = "ground slope",
         .name = "pit_slope",
         .kind = Kind::Measured,
         .measure = Measure::Slope,
         .note = "As 5%, 1:20 or 1/2 in/ft."},
        {.label = "soil group",
         .name = "pit_group",
         .kind = Kind::Measured,
         .validity = choice({"A", "B", "C", "D", "A/D", "B/D", "C/D"}),
         .note = "Hydrologic soil group, from the soil survey."},
        {.label = "perc",
         .name = "pit_perc",
         .kind = Kind::Computed,
         .format = show::number(1),
         .value =
             "=IF(ISNUMBER(pit_tested);SUMPRODUCT(MAX(ISNUMBER([Soak.Counts])*IFERROR(1*[Soak.Perc];0)));\"\")",
         .note = "Slowest hole. It is what a permit asks for, not the rate.",
         .unit = "=IF(units=\"metric\";\"min/mm\";\"min/in\")"},
        {.label = "roof area",
         .name = "pit_roof",
         .kind = Kind::Measured,
         .format = show::number(0),
         .measure = Measure::SquareFeet,
         .validity = between(0, 100000),
         .note = "Only where the county limits the roof on one pit; blank: it does not."},
        computed("rock depth", "", show::number(2), Measure::Feet, "IF(N(pit_depth)>0;pit_depth;\"\")", ""),
    };
    return form;
}

// One reason a row; what the engine does not take stands in the first.
Table reasonsTable() {
    Table table;
    table.name = "Pit reasons";
    table.rows = findingLines;
    table.columns = {
        {.heading = "Rule",
         .width = labelWidth,
         .formula = "IFERROR(REGEX([Reason];\"(?<=\\()[a-z.]+(?=\\)$)\");\"\")",
         .note = "Its limit stands on Rules."},
        {.heading = "Reason",
         .width = valueWidth,
         .formula = "IF(pit_node=\"\";\"\";IF(" + refusal + "<>\"OK\";IF([#]=2;" + refusal +
                    ";\"\");IFERROR(REGEX(" + findings + ";\"[^\\n]+\";;[#]-1);\"\")))",
         .note = "What speaks against the pit, every reason; then cautions, which refuse nothing.",
         .span = 8},
    };
    return table;
}

}  // namespace

Sheet pitSheet(const JobSize& size) {
    Sheet sheet;
    sheet.name = "Pit";
    sheet.title = "Pit";
    sheet.purpose =
        "A pit in the wrong soil is abandoned money: fill the soak test first. The pipe is sized as if the pit were not there.";
    // Charts stand above the tables: blank rows are hidden for printing, and charts do not move with them.
    sheet.parts = {sizeForm(), factsForm(), Break{}};
    std::vector<Part> storm = stormParts();
    for (Part& part : storm) sheet.parts.push_back(std::move(part));
    for (Part part : std::vector<Part>{Break{}, reasonsTable(), soakTable(size), teeForm(), moundForm(),
                                       Break{}, courseTable()})
        sheet.parts.push_back(std::move(part));
    return sheet;
}

}  // namespace trenchbook::sheets
