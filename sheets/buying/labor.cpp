// Hours by kind of work, from the amounts that the other sheets know.
#include "buying/labor_lines.h"
#include "buying/money.h"
#include "papers/owner_words.h"

namespace trenchbook::sheets {
namespace {

// What the papers take from the counted job, each under a name of its own.
Form quantities() {
    const auto quantity = [](const char* label, const char* name, const std::string& formula,
                             Measure measure) {
        return Field{.label = label,
                     .name = name,
                     .kind = Kind::Computed,
                     .format = show::number(0),
                     .measure = measure,
                     .value = "=" + formula};
    };
    const auto nodes = [&](const char* label, const char* name, const std::string& kind) {
        return quantity(label, name, "SUMPRODUCT(1*ISNUMBER(SEARCH(\"" + kind + "\";[Nodes.Kind])))",
                        Measure::Plain);
    };
    Form form;
    form.name = "Quantities";
    form.heading = "What the job counts";
    form.fields = {
        quantity("Pipe in the ground", "qty_pipe_length",
                 withEngine("AGGREGATE(9;6;<runs_numbers.Length:*>)"), Measure::Feet),
        nodes("Cleanouts", "qty_cleanouts", "cleanout"),
        nodes("Downspouts", "qty_downspouts", "downspout"),
        nodes("Channel drains", "qty_channels", "channel"),
        nodes("Catch basins", "qty_basins", "basin"),
    };
    form.noteSpan = 5;
    return form;
}

// A blank factor would dig for nothing and a text for 0 hours, both silently. What the cells' own ranges keep from the
// keyboard comes in by pasting.
Cases termFaults() {
    Cases cases = {{"ISBLANK(labor_wage)", "\"NO: the wage is missing\""},
                   notANumber("the wage", "labor_wage"),
                   {"labor_wage<=0", "\"NO: the wage is not above 0\""},
                   {"labor_wage<5", "\"NO: the wage is below 5 an hour\""},
                   {"ISBLANK(labor_crew)", "\"NO: the crew is missing\""},
                   notANumber("the crew", "labor_crew"),
                   {"labor_crew<1", "\"NO: the crew is below 1\""},
                   {"ISBLANK(labor_access)", "\"NO: the access factor is missing; 1 is plain access\""},
                   notANumber("the access factor", "labor_access"),
                   {"labor_access<=0", "\"NO: the access factor is not above 0; 1 is plain access\""},
                   {"OR(labor_access<0.5;labor_access>5)", "\"NO: the access factor is not from 0.5 to 5\""},
                   {"NOT(OR(ISBLANK(labor_use);labor_use=\"as kept\";labor_use=\"what the jobs say\"))",
                    "\"NO: hours each are as kept or what the jobs say\""},
                   yesOrNo("roots or rock", "labor_roots"),
                   yesOrNo("wet ground", "labor_wet")};
    const std::pair<const char*, const char*> lengths[] = {
        {"labor_handmore", "hand digging beside crossings"}, {"labor_sawcut", "the concrete saw-cut"}};
    for (const auto& [name, words] : lengths) {
        cases.push_back(notANumber(words, name));
        cases.emplace_back(std::string("N(") + name + ")<0", std::string("\"NO: ") + words + " is below 0\"");
    }
    cases.emplace_back("labor_wage>200", "\"CHECK: the wage is above 200 an hour\"");
    cases.emplace_back("labor_crew>20", "\"CHECK: the crew is above 20\"");
    return cases;
}

}  // namespace

Sheet laborSheet(const JobSize&) {
    const std::string soilFactor = "IF(ISNUMBER(SEARCH(\"clay\";soil));{labor.soil.clay};1)";
    Form terms;
    terms.name = "Labor terms";
    const auto yesNo = [](const char* label, const char* name, const char* note) {
        return Field{.label = label,
                     .name = name,
                     .kind = Kind::Measured,
                     .value = "no",
                     .validity = choice({"yes", "no"}),
                     .note = note};
    };
    terms.fields = {
        {.label = "Wage",
         .name = "labor_wage",
         .kind = Kind::Kept,
         .format = show::money,
         .measure = Measure::Dollars,
         .value = "26",
         .validity = between(5, 200),
         .note = "Average of the crew, an hour, before burden. Invented; type your own."},
        {.label = "Crew",
         .name = "labor_crew",
         .kind = Kind::Kept,
         .format = show::number(0),
         .value = "3",
         .validity = between(1, 20),
         .unit = "people"},
        {.label = "Roots or rock in the ground",
         .name = "labor_roots",
         .kind = Kind::Measured,
         .value = "no",
         .validity = choice({"yes", "no"}),
         .note = "Multiplies digging by the factor on Rules."},
        yesNo("Wet ground", "labor_wet", "Multiplies digging by the factor on Rules."),
        {.label = "Access factor",
         .name = "labor_access",
         .kind = Kind::Measured,
         .format = show::number(2),
         .value = "1",
         .validity = between(0.5, 5),
         .note =
             "1 through a wide gate; 1.2 to 1.5 where machine or barrow must go round. Common practice, no source."},
        {.label = "Hand digging beside crossings",
         .name = "labor_handmore",
         .kind = Kind::Measured,
         .format = show::number(1),
         .measure = Measure::Feet,
         .value = "0",
         .validity = between(0, 2000),
         .note = "Roots, tight corners, along walls."},
        {.label = "Hand digging, all",
         .name = "labor_handfeet",
         .kind = Kind::Computed,
         .format = show::number(1),
         .measure = Measure::Feet,
         .value = "=" + amountOf(std::string("\"") + workKey(Work::HandDigLength) + "\"")},
        {.label = "Concrete saw-cut",
         .name = "labor_sawcut",
         .kind = Kind::Measured,
         .format = show::number(1),
         .measure = Measure::Feet,
         .value = "0",
         .validity = between(0, 1000)},
        {.label = "Hours each are",
         .name = "labor_use",
         .kind = Kind::Kept,
         .value = "as kept",
         .validity = choice({"as kept", "what the jobs say"}),
         .note =
             "What the jobs say: the learned hours where a row has them, from how many jobs stands beside them."},
        {.label = "Soil factor",
         .name = "labor_soil",
         .kind = Kind::Computed,
         .format = show::number(2),
         .value = "=" + soilFactor +
                  "*IF(labor_roots=\"yes\";{labor.soil.roots};1)*IF(labor_wet=\"yes\";{labor.soil.wet};1)",
         .note = "From the soil on Job and the two answers above."},
    };
    Table table;
    table.name = "Labor";
    table.columns = {
        {.heading = "Work", .kind = Kind::Label, .width = 58},
        {.heading = "Check", .kind = Kind::Verdict, .width = 44, .wrapped = true},
        {.heading = "Quantity", .format = show::number(1), .width = 26},
        {.heading = "Unit", .kind = Kind::Label, .format = show::general, .width = 20},
        {.heading = "Hours each",
         .kind = Kind::Kept,
         .format = show::number(3),
         .width = 24,
         .validity = between(0, 1000),
         .note =
             "Man-hours for one unit, in loam with good access. Digging and filling by hand: output norms of the Guild of "
             "Project Controls; the rest common practice, no source. Keep your own here."},
        {.heading = "Learned",
         .kind = Kind::Kept,
         .format = show::number(3),
         .width = 20,
         .validity = between(0, 1000),
         .note = "Hours each as the ledger's closed jobs teach them, a value with its date; never a link."},
        {.heading = "From jobs",
         .kind = Kind::Kept,
         .format = show::number(0),
         .width = 16,
         .validity = between(1, 10000)},
        {.heading = "Learned on", .kind = Kind::Kept, .format = show::date, .width = 22},
        {.heading = "Soil factor", .format = show::number(2), .width = 22},
        {.heading = "Access factor", .format = show::number(2), .width = 22},
        {.heading = "Hours",
         .format = show::number(1),
         .width = 22,
         .formula =
             "IF(AND(ISNUMBER([Quantity]);ISNUMBER([Used]));ROUND([Quantity]*[Used]*[Soil factor]*[Access factor];6);\"\")"},
        {.heading = "Where it comes from", .kind = Kind::Label, .width = 70},
        {.heading = "Used",
         .format = show::number(3),
         .width = 20,
         .formula = "IF(AND(labor_use=\"what the jobs say\";ISNUMBER([Learned]));[Learned];[Hours each])",
         .helper = true},
        {.heading = "Key", .kind = Kind::Label, .width = 20, .helper = true},  // of the work on Workings
    };
    judge(table, "Check",
          {{"[Work]=\"\"", "\"\""},
           {"ISERROR([Hours each])", "\"NO: Hours each holds an error\""},
           {"NOT(ISNUMBER([Quantity]))", "\"NO: the quantity is not known\""},
           {"NOT(ISNUMBER([Hours each]))", "\"NO: hours each is not a number\""},
           {"[Hours each]<0", "\"NO: hours are not negative\""},
           {"AND(NOT(ISBLANK([Learned]));N([Learned])<=0)", "\"NO: learned hours are above 0\""},
           {"AND(ISNUMBER([Learned]);NOT(ISNUMBER([From jobs])))", "\"NO: learned from how many jobs?\""}},
          "\"OK\"");
    for (const LaborLine& line : laborLines())
        table.content.push_back(
            {line.name, line.key.empty() ? "=labor_sawcut" : "=IFERROR(" + amountOf("[Key]") + ";\"\")",
             unitWord(line.per), perUnit(line.per, line.hours), "", "", "", line.soil ? "=labor_soil" : "1",
             line.access ? "=N(labor_access)" : "1", "", line.where, "", line.key});
    table.rows = static_cast<int>(table.content.size());

    Form sums;
    sums.name = "Labor sums";
    sums.fields = {
        {.label = "Hours, all",
         .name = "labor_hours",
         .kind = Kind::Computed,
         .format = show::number(1),
         .value = "=" + withEngine("ROUND(SUM([Labor.Hours]);1)"),
         .unit = "man-hours"},
        {.label = "Days on the job",
         .name = "labor_days",
         .kind = Kind::Computed,
         .format = show::number(1),
         .value = "=IF(AND(engine_there;N(labor_crew)>0);ROUND(labor_hours/(labor_crew*{labor.day});1);\"\")",
         .unit = "days"},
        {.label = "Burden on the wage",
         .name = "labor_burden",
         .kind = Kind::Computed,
         .format = show::percent(1),
         .value = "={labor.burden}",
         .note = "From Rules: taxes, insurance, paid time. The table below works it out."},
        {.label = "Rate with burden",
         .name = "labor_rate",
         .kind = Kind::Computed,
         .format = show::money,
         .measure = Measure::Dollars,
         .value = "=ROUND(N(labor_wage)*(1+labor_burden);2)"},
        {.label = "Labor",
         .name = "labor_cost",
         .kind = Kind::Computed,
         .format = show::money,
         .measure = Measure::Dollars,
         .value = "=" + withEngine("ROUND(labor_hours*labor_rate;2)")},
        {.label = "Ready?", .name = "labor_check", .kind = Kind::Verdict, .format = show::general},
    };
    judge(sums, "labor_check",
          {{"NOT(engine_there)", "\"NO: no hours without the add-in\""},
           {countOf("Labor.Check", "NO") + ">0",
            "\"NO: lines without hours: \"&" + countOf("Labor.Check", "NO")},
           {"LEFT(labor_terms_check;2)=\"NO\"", "labor_terms_check"},
           {"labor_hours<=0", "\"NO: no hours\""},
           {startsWith("labor_terms_check", "CHECK"), "labor_terms_check"}},
          "\"OK\"");
    terms.fields.push_back(hidden("Terms", "labor_terms_check", ""));
    judge(terms, "labor_terms_check", termFaults(), "\"OK\"");

    Table burden;
    burden.name = "Burden";
    burden.rows = 10;
    burden.total = true;
    burden.columns = {
        {.heading = "Part",
         .kind = Kind::Kept,
         .width = 58,
         .note = "Tax, insurance, paid time, for one person and year."},
        {.heading = "Base",
         .kind = Kind::Kept,
         .format = show::number(2),
         .width = 26,
         .note = "Wages it is counted on: the year's, or the cap of the tax. Blank: the year's wages."},
        {.heading = "Share",
         .kind = Kind::Kept,
         .format = show::percent(2),
         .width = 20,
         .validity = between(0, 1)},
        {.heading = "Fixed amount",
         .kind = Kind::Kept,
         .format = show::number(2),
         .width = 24,
         .note = "In place of a share: insurance paid by the year."},
        {.heading = "A year",
         .format = show::money,
         .width = 22,
         .formula =
             "IF([Part]=\"\";\"\";IF(ISNUMBER([Fixed amount]);ROUND([Fixed amount];2);IF(ISNUMBER([Share]);ROUND(IF(ISNUMBER([Base]);[Base];N(burden_wages))*[Share];2);\"\")))"},
    };
    Form worked;
    worked.name = "Burden sums";
    worked.heading = "Burden worked out";
    worked.fields = {
        {.label = "Wages a year",
         .name = "burden_wages",
         .kind = Kind::Kept,
         .format = show::money,
         .measure = Measure::Dollars,
         .note = "Overtime, bonus and allowances included."},
        {.label = "Hours worked a year",
         .name = "burden_hours",
         .kind = Kind::Kept,
         .format = show::number(0),
         .measure = Measure::Hours,
         .note = "Without vacation, holidays and sick days."},
        {.label = "Hour with burden",
         .name = "burden_rate",
         .kind = Kind::Computed,
         .format = show::money,
         .measure = Measure::Dollars,
         .value =
             "=IF(AND(ISNUMBER(burden_wages);ISNUMBER(burden_hours);N(burden_hours)>0);ROUND((burden_wages+SUM([Burden.A year]))/burden_hours;2);\"\")",
         .note = "To compare with the rate above; put the share it means into Rules."},
        {.label = "Share on the wage it means",
         .name = "burden_share",
         .kind = Kind::Computed,
         .format = show::percent(1),
         .value = "=IF(AND(ISNUMBER(burden_rate);N(labor_wage)>0);burden_rate/labor_wage-1;\"\")"},
    };
    Sheet sheet;
    sheet.name = "Labor";
    sheet.title = "Labor";
    sheet.purpose =
        "Man-hours by kind of work. Quantities come from the other sheets; hours each are yours to keep.";
    terms.noteSpan = sums.noteSpan = worked.noteSpan = 5;
    sheet.parts = {terms, table, sums, quantities(), worked, burden, ownersWords()};
    sheet.widths = {58, 36, 22, 24};
    return sheet;
}

}  // namespace trenchbook::sheets
