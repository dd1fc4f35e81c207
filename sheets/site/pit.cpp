// Does the soil take a pit, how big, how long until it is ready again.
#include "site/inputs.h"
#include "site/pit_parts.h"

namespace trenchbook::sheets {
namespace {

using namespace pit;

constexpr int reasonLines = 18;  // every limit at once, and the cautions

Field typed(const char* heading, const char* name, Format format = show::number(2), const char* value = "",
            Kind kind = Kind::Measured) {
    return input(InputTable::Pit, {heading, 0, format, "", kind}, name, value);
}
Field kept(const char* heading, const char* name, const char* value) {
    return typed(heading, name, show::number(2), value, Kind::Kept);
}

// What is typed, and what follows from it alone: the solved job takes this form whole.
Form sizeForm() {
    const std::string refused = "COUNTIF([Soak.Check];\"NO*\")>0";
    Form form;
    form.name = "Pit";
    form.heading = "Rock pit";
    form.noteSpan = 11;
    form.fields = {
        input(InputTable::Pit, {"Tee at node", 0, show::text, "[Nodes.Node]"}, "pit_node"),
        typed("Length", "pit_length"),
        typed("Width", "pit_width"),
        typed("Rock depth", "pit_depth"),
        kept("Soil over it", "pit_soil_over", "=IF(units=\"metric\";0.3;1)"),
        kept("Voids", "pit_voids", "={pit.voids}"),
        kept("Side share", "pit_sides", "={pit.sideshare}"),
        computed("Soak test", "pit_soak", show::general, Measure::Plain,
                 "IF(" + refused +
                     ";\"refused\";IF(COUNT([Soak.Counts])=0;\"\";IF(COUNTIF([Soak.Check];\"CHECK*\")>0;"
                     "\"open\";\"settled\")))",
                 "refused: a reading below cannot be used. open: the last three readings do not agree yet."),
        computed("Tested soak rate", "pit_tested", show::number(2), Measure::InchesPerHour,
                 "IF(OR(COUNT([Soak.Counts])=0;pit_soak=\"refused\");\"\";MIN([Soak.Counts]))",
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
        computed("Rock", "pit_rock", show::number(2), Measure::CubicYards,
                 when("ISNUMBER(pit_storage)", "PIT.ROCK(pit_storage;pit_voids;0;units)"),
                 "In the pit, before waste."),
        computed("Rock by weight", "pit_tons", show::number(2), Measure::ShortTons,
                 when("ISNUMBER(pit_rock)", "ROCK.TONS(pit_rock;{rock.density};0;units)"),
                 "By the density on Rules, before waste."),
        computed(
            "Fabric", "pit_fabric", show::number(0), Measure::SquareFeet,
            when(
                sized,
                "2*pit_length*pit_width+2*(pit_length+pit_width)*(pit_depth+{fabric.overlap}/IF(units=\"metric\";1000;12))"),
            "Around the rock, lapped at the top."),
    };
    return form;
}

// Its labels are the keys that PIT.CHECK reads.
Form factsForm() {
    const auto fact = [](const char* key, const char* name, Format format = show::number(1)) {
        return input(InputTable::PitFacts, {key, 0, format}, name);
    };
    const auto worked = [](const char* key, const char* name, Format format, Measure measure,
                           const std::string& formula,
                           const char* note) { return computed(key, name, format, measure, formula, note); };
    Form form;
    form.name = "Pit facts";
    form.heading = "What the rules ask about the pit";
    form.noteSpan = 11;
    form.fields = {
        worked("rate", "", show::number(2), Measure::InchesPerHour, "pit_rate", "Design soak rate, above."),
        worked("drain hours", "", show::number(1), Measure::Hours, "pit_hours", "From full to empty, above."),
        fact("high water", "pit_high_water"),
        worked("pit depth", "pit_bottom", show::number(2), Measure::Feet,
               "IF(N(pit_depth)>0;pit_depth+N(pit_soil_over);\"\")",
               "From the ground down to the pit's bottom."),
        worked("widest", "", show::number(2), Measure::Feet,
               "IF(" + sized + ";MAX(pit_length;pit_width);\"\")", ""),
        fact("foundation", "pit_foundation"),
        fact("lot line", "pit_lot_line"),
        fact("well", "pit_well"),
        fact("septic", "pit_septic"),
        fact("pool", "pit_pool"),
        fact("ground slope", "pit_slope", show::text),
        fact("soil group", "pit_group", show::text),
        worked(
            "perc", "pit_perc", show::number(1), Measure::Plain,
            "IF(ISNUMBER(pit_tested);SUMPRODUCT(MAX(ISNUMBER([Soak.Counts])*IFERROR(1*[Soak.Perc];0)));\"\")",
            "Slowest hole. It is what a permit asks for, not the rate."),
        fact("roof area", "pit_roof", show::number(0)),
        worked("rock depth", "", show::number(2), Measure::Feet, "IF(N(pit_depth)>0;pit_depth;\"\")", ""),
    };
    for (Field& field : form.fields)
        if (field.label == "perc") field.unit = "=IF(units=\"metric\";\"min/mm\";\"min/in\")";
    return form;
}

Form resultsForm() {
    const auto solved = [](const char* label, const char* name, Format format, Measure measure,
                           const char* note = "") {
        return computed(label, name, format, measure, answered(std::string("pit_numbers.") + label + ":1"),
                        note);
    };
    Form form;
    form.name = "Pit results";
    form.heading = "What comes of it";
    form.noteSpan = 11;
    form.fields = {
        verdict(
            "Check", "pit_verdict", "<pit_words.Check:1>",
            "Every reason stands on a line of its own below. What the pit cannot hold bubbles over at the tee.",
            true),
        solved("Area x C into it", "pit_area", show::number(0), Measure::SquareFeet,
               "Roofs and paving that drain here, counted with their runoff share."),
        solved("Rain it holds", "pit_held", show::number(2), Measure::Inches,
               "Rain that fills it, if nothing soaked away. More than that bubbles over at the tee."),
        solved("Flow at the tee", "pit_flow", show::number(1), Measure::Gpm, "As if the pit were not there."),
        solved("Water over the rim", "pit_rim_head", show::number(2), Measure::Feet,
               "Head that pushes the flow out over the rim, leaves in its grate: by the opening on Outlets."),
        solved("Bubble-up level", "pit_bubble_level", show::number(2), Measure::Feet,
               "Water level at the end of the line in a storm."),
    };
    return form;
}

// One reason a row, as the rules give it.
Table reasonsTable() {
    const std::string place = "MATCH(\"Pit\";<findings_words.Sheet:*>;0)+[#]-2";
    const auto ofFinding = [](const char* column) {
        return "IF([At]=\"\";\"\";INDEX(<findings_words." + std::string(column) + ":*>;[At])&\"\")";
    };
    Table table;
    table.name = "Pit reasons";
    table.rows = reasonLines;
    table.columns = {
        {.heading = "Rule",
         .width = labelWidth,
         .formula = ofFinding("Rule"),
         .note = "Its limit stands on Rules; a rule without a number, on Tables."},
        {.heading = "Kind", .width = valueWidth, .formula = ofFinding("Severity")},
        {.heading = "Reason",
         .width = 19,
         .formula = ofFinding("Says"),
         .note = "What speaks against the pit, every reason; then cautions, which refuse nothing.",
         .span = 8},
        {.heading = "At",
         .format = show::number(0),
         .width = 19,
         .formula =
             "IFERROR(IF(INDEX(<findings_words.Sheet:*>;" + place + ")=\"Pit\";" + place + ";\"\");\"\")",
         .helper = true},
    };
    return table;
}

}  // namespace

Sheet pitSheet(const JobSize& size) {
    Sheet sheet;
    sheet.name = "Pit";
    sheet.title = "Pit";
    sheet.purpose =
        "A pit in the wrong soil is abandoned money: fill the soak test first. The pipe is sized as if the "
        "pit were not there.";
    sheet.parts = {sizeForm(), factsForm(), resultsForm(), Break{}};
    std::vector<Part> storm = stormParts();
    for (Part& part : storm) sheet.parts.push_back(std::move(part));
    for (Part part :
         std::vector<Part>{Break{}, reasonsTable(), soakTable(size), moundForm(), Break{}, courseTable()})
        sheet.parts.push_back(std::move(part));
    return sheet;
}

}  // namespace trenchbook::sheets
