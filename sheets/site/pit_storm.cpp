// A storm through the pit, and where its water goes then.
#include "site/pit_parts.h"

#include "kit/judged.h"

namespace trenchbook::sheets::pit {
namespace {

constexpr int stormSteps = 48;  // half hours of a day: the 24-hour distributions are printed so and no finer
constexpr int drySteps = 24;    // two hours each

// Rows of the course from its first to the storm's last, or to the end of its day.
const std::string upTo(const std::string& rows) {
    return "INDEX([Pit course.Minute];1):INDEX([Pit course.Rain];" + rows + ")";
}
const std::string storm = upTo(std::to_string(stormSteps + 1));
const std::string day = upTo("1+pit_day_steps");
const std::string tableRain = "RAIN.DEPTH([Rain.*];pit_storm_hours*60;rain_years;units)";
const std::string allKnown = "AND(pit_node<>\"\";" + sized +
                             ";N(pit_area)>0;ISNUMBER(pit_rate);N(pit_storm_rain)>0;N(pit_storm_hours)>0)";
const std::string ready = "pit_storm_ready=1";  // the same, asked once

std::string ofStorm(int column) {
    return when(ready,
                "INDEX(PIT.STORM(" + storm + ";" + asBuilt + ";0;units);1;" + std::to_string(column) + ")");
}

}  // namespace

std::vector<Part> stormParts() {
    const auto worked = [](const char* label, const char* name, const std::string& formula) {
        Field field = computed(label, name, show::general, Measure::Plain, formula);
        field.helper = true;
        return field;
    };
    Form form;
    form.name = "Pit storm";
    form.heading = "A storm through the pit";
    form.noteSpan = 11;
    form.fields = {
        {.label = "Storm rain",
         .name = "pit_storm_typed",
         .kind = Kind::Kept,
         .format = show::number(2),
         .measure = Measure::Inches,
         .validity = between(0.1, 40),
         .note =
             "Depth of the whole storm. Blank: from the table pasted on Rain, for the return period on Job."},
        {.label = "Storm hours",
         .name = "pit_storm_hours",
         .kind = Kind::Kept,
         .format = show::number(2),
         .measure = Measure::Hours,
         .value = "24",
         .validity = between(0.05, 24),
         .note =
             "The types are storms of 24 hours; nested and even rain may be shorter, down to minutes: =10/60."},
        {.label = "Storm shape",
         .name = "pit_storm_shape",
         .kind = Kind::Kept,
         .value = "type II",
         .validity = choice({"type I", "type IA", "type II", "type III", "nested", "even"}),
         .note =
             "Published 24-hour distributions, type II for most of the inland United States; nested (alternating blocks) has every shorter storm of the table on Rain inside it."},
        computed("Rain of the storm", "pit_storm_rain", show::number(2), Measure::Inches,
                 "IF(ISNUMBER(pit_storm_typed);pit_storm_typed;IF(COUNTA([Rain.*])=0;\"\";IFERROR(" +
                     tableRain + ";\"\")))"),
        computed(
            "Shortest pit", "pit_shortest", show::number(1), Measure::Feet,
            when("AND(N(pit_area)>0;N(pit_width)>0;N(pit_depth)>0;ISNUMBER(pit_rate);N(pit_storm_rain)>0)",
                 "PIT.SIZE(" + storm + ";pit_area;pit_width;pit_depth;pit_rate;pit_voids;pit_sides;units)"),
            "Length, with this width and rock depth, that takes the whole storm."),
        worked("Everything known", "pit_storm_ready", "IF(" + allKnown + ";1;0)"),
        worked("Even, nested or a type", "pit_kind",
               "IF(pit_storm_shape=\"even\";1;IF(pit_storm_shape=\"nested\";2;3))"),
        worked("Storm minutes", "pit_minutes", "pit_storm_hours*60"),
        worked("Step", "pit_step", "pit_minutes/" + std::to_string(stormSteps)),
        worked("Steps of a day", "pit_day_steps", std::to_string(stormSteps) + "+(pit_storm_hours<24)"),
        // The types are shares of the depth: the storm of a table with one entry, 1.
        worked("Table of one", "pit_one", "\",10\"&CHAR(10)&\"24-hr,1\""),
        worked("Scale", "pit_scale",
               "IF(pit_kind=2;IFERROR(pit_storm_rain/" + tableRain + ";\"\");pit_storm_rain)"),
        worked("Minutes until it bubbles over", "pit_storm_over", ofStorm(3)),
        computed("Highest water", "pit_highest", show::number(2), Measure::Feet, ofStorm(1),
                 "Over the pit's bottom."),
        computed("Highest at", "", show::number(1), Measure::Hours, when(ready, "(" + ofStorm(2) + ")/60"),
                 "After the storm begins."),
        computed("Bubbles over from", "", show::number(1), Measure::Hours,
                 "IF(ISNUMBER(pit_storm_over);pit_storm_over/60;\"\")", "Blank: the pit takes it all."),
        computed("Bubbles over", "pit_overflow", show::number(0), Measure::CubicFeet, ofStorm(4),
                 "Runs over the ground at the tee."),
        computed("Soaks in", "pit_soaked", show::number(0), Measure::CubicFeet, ofStorm(5),
                 "Until the pit is empty again."),
        computed("Empty after", "pit_ready_hours", show::number(1), Measure::Hours, ofStorm(6),
                 "Counted from the storm's end."),
        computed("Balance error", "pit_balance", show::number(12), Measure::Plain, ofStorm(7),
                 "Water in less soaked, overflowed and left, as a share of all: nothing but rounding."),
        verdict("Storm", "pit_storm_verdict", "\"\""),
    };
    const std::string fallen = "(pit_area*pit_storm_rain/IF(units=\"metric\";1000;12))";
    judge(form, "pit_storm_verdict",
          {{"pit_node=\"\"", "\"\""},
           {"N(pit_storm_rain)<=0", "\"CHECK: storm rain is missing\""},
           {"pit_storm_ready=0", "\"CHECK: pit not known yet\""},
           {"AND(ISNUMBER(pit_highest);N(pit_overflow)>0)",
            "\"OK: \"&TEXT(pit_overflow/" + fallen + ";\"0%\")&\" of it bubbles over\""},
           {"ISNUMBER(pit_highest)", "\"OK: no overflow\""},
           {"AND(LEFT(pit_storm_shape;4)=\"type\";pit_storm_hours<>24)",
            "\"NO: \"&pit_storm_shape&\" needs 24 hours\""},
           {"AND(pit_storm_shape=\"nested\";COUNTA([Rain.*])=0)", "\"NO: nested needs Rain\""}},
          "\"NO: refused, as the pit above\"");
    Table days;
    days.name = "Pit days";
    days.rows = 4;
    const auto ofDay = [](int column) {
        return "IF(ISNUMBER([Start water]);IFERROR(INDEX(PIT.STORM(" + day + ";" + asBuilt +
               ";[Start water];units);1;" + std::to_string(column) + ");\"\");\"\")";
    };
    const auto dayEnd = [](int column) {
        return "IF(ISNUMBER([Start water]);IFERROR(INDEX(PIT.COURSE(" + day + ";" + asBuilt +
               ";[Start water];units);pit_day_steps;" + std::to_string(column) + ");\"\");\"\")";
    };
    days.columns = {
        {.heading = "Same storm on day", .format = show::number(0), .width = labelWidth, .formula = "[#]-1"},
        {.heading = "Start water",
         .format = show::number(2),
         .measure = Measure::Feet,
         .width = valueWidth,
         .formula = "IF(ISNUMBER(pit_highest);IF([#]=2;0;[^Left]);\"\")",
         .note = "What the day before left in the pit."},
        {.heading = "Highest",
         .format = show::number(2),
         .measure = Measure::Feet,
         .width = 19,
         .formula = ofDay(1)},
        {.heading = "Over",
         .format = show::number(0),
         .measure = Measure::CubicFeet,
         .width = 19,
         .formula = ofDay(4)},
        {.heading = "Soaked in",
         .format = show::number(0),
         .measure = Measure::CubicFeet,
         .width = 19,
         .formula = dayEnd(3)},
        {.heading = "Left",
         .format = show::number(2),
         .measure = Measure::Feet,
         .width = 18,
         .formula = dayEnd(2),
         .note = "24 hours after the storm of the day began."},
    };
    return {form, days};
}

Table courseTable() {
    Table table;
    table.name = "Pit course";
    table.rows = stormSteps + drySteps;
    const std::string steps = std::to_string(stormSteps);
    const auto ofCourse = [](int column) {
        return "IF(ISNUMBER([Minute]);IFERROR(INDEX(PIT.COURSE([Pit course.Minute:Rain];" + asBuilt +
               ";0;units);[#]-1;" + std::to_string(column) + ");\"\");\"\")";
    };
    table.columns = {
        {.heading = "Minute",
         .format = show::number(0),
         .measure = Measure::Minutes,
         .width = labelWidth,
         .formula = "IF(" + ready + ";IF([#]-1<=" + steps + ";([#]-1)*pit_step;1440+([#]-2-" + steps +
                    "+(pit_storm_hours>=24))*120);\"\")",
         .note = "End of the step."},
        {.heading = "Rain",
         .format = show::number(3),
         .measure = Measure::Inches,
         .width = valueWidth,
         .formula = "IF(ISNUMBER([Minute]);IF([#]-1>" + steps +
                    ";0;IFERROR(ROUND(pit_scale*IF(pit_kind=1;1/" + steps + ";[Share]);9);\"\"));\"\")",
         .note = "In the step."},
        {.heading = "Hour",
         .format = show::number(1),
         .measure = Measure::Hours,
         .width = 19,
         .formula = "IF(ISNUMBER([Minute]);[Minute]/60;\"\")"},
        {.heading = "Water",
         .format = show::number(2),
         .measure = Measure::Feet,
         .width = 19,
         .formula = ofCourse(2)},
        {.heading = "Soaked",
         .format = show::number(1),
         .measure = Measure::CubicFeet,
         .width = 18,
         .formula = ofCourse(3)},
        {.heading = "Bubbled over",
         .format = show::number(1),
         .measure = Measure::CubicFeet,
         .width = 19,
         .formula = ofCourse(4)},
        {.heading = "Share",
         .format = show::number(4),
         .width = 19,
         .formula = "IF(pit_kind>1;IFERROR(INDEX(pit_shares;[#]-1;2);\"\");\"\")",
         .note = "Of the storm's rain, by its shape.",
         .helper = true},
    };
    return table;
}

Block sharesBlock() {
    const std::string centered = "RAIN.STORM([Rain.*];pit_minutes;rain_years;pit_step;\"centered\";units)";
    const std::string typed = "RAIN.STORM(pit_one;pit_minutes;10;pit_step;pit_storm_shape)";
    return {.name = "pit_shares",
            .formula = "IF(pit_kind>1;IFERROR(IF(pit_kind=2;" + centered + ";" + typed + ");\"\");\"\")",
            .rows = stormSteps,
            .columns = {{"Minute"}, {"Share"}},
            .says = "The storm by its shape, a step a row"};
}

Form moundForm() {
    const std::string known =
        "AND(" + sized +
        ";N(pit_rate)>0;N(pit_hours)>0;N(pit_conductivity)>0;N(pit_yield)>0;N(pit_saturated)>0)";
    Form form;
    form.name = "Pit mound";
    form.heading = "Mound under the pit, where the water table is shallow";
    form.noteSpan = 11;
    form.fields = {
        {.label = "Conductivity",
         .name = "pit_conductivity",
         .kind = Kind::Measured,
         .format = show::number(2),
         .measure = Measure::FeetPerDay,
         .validity = between(0.001, 1000),
         .note = "Of the wet soil, sideways. Blank: no second opinion is asked."},
        {.label = "Specific yield",
         .name = "pit_yield",
         .kind = Kind::Measured,
         .format = show::number(2),
         .measure = Measure::Share,
         .validity = between(0.01, 0.5),
         .note = "Share of the soil that water can fill: sand 0.2, silt 0.1, clay 0.03."},
        {.label = "Saturated thickness",
         .name = "pit_saturated",
         .kind = Kind::Measured,
         .format = show::number(1),
         .measure = Measure::Feet,
         .validity = between(0.5, 500),
         .note = "Water-bearing soil under the water table."},
        computed("Mound hours", "pit_mound_hours", show::number(1), Measure::Hours,
                 when("N(pit_hours)>0", "pit_hours+IF(ISNUMBER(pit_highest);pit_storm_hours;0)"),
                 "Storm and emptying: all that time the bottom is taken as soaking at the full rate."),
        computed(
            "Mound", "pit_mound", show::number(2), Measure::Feet,
            when(
                known,
                "PIT.MOUND(pit_length;pit_width;pit_rate;pit_mound_hours;pit_conductivity;pit_yield;pit_saturated;units)"),
            "Rise of the water table under the pit's middle. Known to a factor of two at best."),
        computed(
            "Left over the mound", "pit_mound_room", show::number(2), Measure::Feet,
            when("AND(ISNUMBER(pit_mound);ISNUMBER(pit_high_water))", "pit_high_water-pit_bottom-pit_mound"),
            "From the top of the mound up to the pit's bottom."),
        verdict("Second opinion", "pit_mound_verdict", "\"\""),
    };
    judge(form, "pit_mound_verdict",
          {{"OR(pit_node=\"\";COUNT(pit_conductivity;pit_yield;pit_saturated)=0)", "\"\""},
           {"AND(NOT(ISNUMBER(pit_mound));" + known + ")", "\"NO: out of range\""},
           {"NOT(ISNUMBER(pit_mound))", "\"NO: a number is missing\""},
           {"NOT(ISNUMBER(pit_mound_room))", "\"CHECK: high water not known\""},
           {"pit_mound_room<0", "\"CHECK: mound reaches the pit\""}},
          "\"OK\"");
    return form;
}

}  // namespace trenchbook::sheets::pit
