// What to buy: the codes that the takeoff counted, in packs, with prices; and what is added by hand.
#include "buying/money.h"

namespace trenchbook::sheets {
namespace {

std::string ofCode(const std::string& column) {
    return "INDEX([Prices." + column + "];MATCH([Code];[Prices.Code];0))";
}
std::string whenCode(const std::string& formula) { return "IF([Code]=\"\";\"\";" + formula + ")"; }
const std::string price = whenCode("IF(LEFT([Price check];2)=\"NO\";\"\";" + ofCode("Price") + ")");

Column text(const char* heading, const std::string& formula, double width, const char* note = "") {
    return {.heading = heading, .format = show::general, .width = width, .formula = formula, .note = note};
}

Column worked(const char* heading, const std::string& formula) {
    return {.heading = heading, .format = show::general, .width = 20, .formula = formula, .helper = true};
}

// Both tables have the same columns but for the first, the amount and its reason: counted above, typed below.
Table lines(const char* name, int rows, Column code, Column net, Column reason, const std::string& fewest,
            const Cases& faults, const Cases& later = {}) {
    const std::string amount = "[" + net.heading + "]";
    Table table;
    table.name = name;
    table.rows = rows;
    table.total = true;
    table.columns = {
        std::move(code),
        text("Item", whenCode("IFERROR(" + ofCode("Item") + ";\"not on Prices\")"), 62),
        {.heading = "Check", .kind = Kind::Verdict, .width = 60, .wrapped = true},
        text("Group", whenCode("IFERROR(" + ofCode("Group") + "&\"\";\"\")"), 22),
        std::move(net),
        text("Unit", whenCode("IFERROR(" + ofCode("Unit") + "&\"\";\"\")"), 15),
        {.heading = "Waste",
         .format = show::percent(0),
         .width = 14,
         .formula = whenCode("IF(ISNUMBER(" + ofCode("Waste") + ");" + ofCode("Waste") +
                             ";IFERROR(VLOOKUP(\"waste.\"&[Group];[Rules.Key:Value];2;0);0))"),
         .note =
             "From Prices, or from Rules by group. Fittings get whole spares instead: the share on Rules, rounded down."},
        {.heading = "Pack",
         .format = show::general,
         .width = 14,
         .formula = whenCode("IF([Packed]>0;[Packed];IF(" + soldLoose("[Unit]") + ";0;\"\"))"),
         .note = "Units sold together; 0 where it is sold loose, by weight or volume."},
        {.heading = "Order",
         .format = show::general,
         .width = 15,
         .formula =
             "IF(AND([Code]<>\"\";ISNUMBER([Needed]);N([Needed])>0;ISNUMBER([Pack]));IFERROR(IF([Pack]=0;"
             "ROUND(BUY.COUNT([Needed];[Waste];0.1)/10;1);MAX(BUY.COUNT([Needed];[Waste];[Pack]);[Fewest])"
             ");\"\");\"\")",
         .note =
             "Whole packs, loose goods to the tenth: the amount and its waste, rounded up. Pipe: never fewer than "
             "the cutting plan's sticks."},
        {.heading = "Price", .format = show::number(2), .width = 18, .formula = price},
        {.heading = "Amount",
         .format = show::money,
         .width = 21,
         .formula =
             "IF(AND(engine_there;ISNUMBER([Order]);ISNUMBER([Price]));ROUND([Order]*[Price];2);\"\")"},
        text("Taxable", whenCode("IFERROR(" + ofCode("Taxable") + "&\"\";\"\")"), 16),
        std::move(reason),
        worked("Price check", "IFERROR(" + ofCode("Check") + ";\"NO: no price for \"&[Code]&\" on Prices\")"),
        worked("Packed", whenCode("IFERROR(N(" + ofCode("Pack") + ");0)")),
        worked("Spares", "IF(AND([Group]=\"fitting\";NOT(ISNUMBER(" + ofCode("Waste") + ")));INT(" + amount +
                             "*{spare.fittings});0)"),
        worked("Needed", "IF(ISNUMBER(" + amount + ");IF(" + amount + ">0;" + amount + "+[Spares];0);\"\")"),
        worked("Fewest", fewest),
    };
    judge(table, "Check",
          faults + Cases{{"LEFT([Price check];2)=\"NO\"", "[Price check]"}} + later +
              Cases{{"NOT(ISNUMBER([Amount]))", "\"NO: the packs to order cannot be worked out\""}},
          "[Price check]");
    return table;
}

Table takeoff() {
    const auto counted = [](const char* column) {
        return "IFERROR(INDEX(" + std::string(column) + ";[#]-1);\"\")";
    };
    return lines(
        "Takeoff", 80,
        text("Code", counted("<pieces_words.Code:*>"), 50, "Everything that was counted, one line a code."),
        {.heading = "Net",
         .format = show::number(2),
         .width = 18,
         .formula = counted("<pieces_numbers.Net:*>"),
         .note = "Amount that goes into the ground, in the unit beside it."},
        {.heading = "Where it comes from",
         .kind = Kind::Label,
         .format = show::general,
         .width = 82,
         .formula = counted("<pieces_words.From:*>")},
        "IFERROR(N(INDEX(<pieces_numbers.Fewest sticks:*>;[#]-1));0)", {{"[Code]=\"\"", "\"\""}},
        {{"NOT(ISNUMBER([Net]))", "\"NO: the amount is not known: see the list above\""}});
}

Table additions(const JobSize& size) {
    return lines(
        "Additions", size.additions,
        {.heading = "Code", .kind = Kind::Measured, .width = 46, .validity = chosenFrom("[Prices.Code]")},
        {.heading = "Quantity",
         .kind = Kind::Measured,
         .format = show::general,
         .width = 18,
         .validity = between(0.01, 100000),
         .note = "Amount needed, in the unit beside it; waste and packs are added."},
        {.heading = "Why", .kind = Kind::Measured, .width = 82, .wrapped = true}, "0",
        ownErrors({"Code", "Quantity", "Why"}) +
            Cases{{"AND(ISBLANK([Code]);ISBLANK([Quantity]))", "\"\""},
                  {"ISBLANK([Code])", "\"NO: the code is missing\""},
                  {"ISBLANK([Quantity])", "\"NO: the quantity is missing\""},
                  {"NOT(ISNUMBER([Quantity]))", "\"NO: the quantity is not a number: \"&[Quantity]"},
                  {"[Quantity]<=0", "\"NO: the quantity is not above 0\""}});
}

Table codes() {
    Table table;
    table.name = "Codes";
    table.rows = 24;
    table.handedFrom = "Piece";
    table.handedTo = "Buy as";
    table.columns = {
        {.heading = "Piece",
         .kind = Kind::Kept,
         .width = 46,
         .note = "A code as it is counted: WYE-4SDR35, CEMENT."},
        {.heading = "Buy as",
         .kind = Kind::Kept,
         .width = 62,
         .validity = chosenFrom("[Prices.Code]"),
         .note = "The code on Prices to buy in its place."},
    };
    return table;
}

Form choices() {
    Form form;
    form.name = "Takeoff choices";
    form.noteSpan = 9;
    form.fields = {
        {.label = "New sod",
         .name = "sod_share",
         .kind = Kind::Kept,
         .format = show::percent(0),
         .value = "0.25",
         .validity = between(0, 1),
         .note =
             "Share of the lawn dug; the rest is cut, kept moist and laid back. Common practice, no source."},
        {.label = "Buy cleanouts asked",
         .name = "buy_asked",
         .kind = Kind::Kept,
         .value = "no",
         .validity = choice({"yes", "no"}),
         .note =
             "Those that the rules ask beyond Nodes: a wye, a bend and the fitting for each. Pipe of their risers and "
             "cement are not counted before they stand on Nodes."},
        hidden("More hand digging", "terms_hand_digging", "N(labor_handmore)"),
        hidden("Benchmark", "terms_benchmark", "crew_level"),
    };
    return form;
}

Form sums() {
    const std::string says = "IFERROR(<taken_words.Severity:*>=\"";
    const auto findings = [&](const char* severity) {
        return "SUMPRODUCT(1*" + says + severity + "\";FALSE()))";
    };
    Form form;
    form.name = "Takeoff sums";
    form.noteSpan = 9;
    form.fields = {
        {.label = "Lines without a price",
         .name = "takeoff_missing",
         .kind = Kind::Computed,
         .format = show::number(0),
         .value = "=" + countOf("Takeoff.Check", "NO") + "+" + countOf("Additions.Check", "NO"),
         .note = "They add nothing to the totals: see their Check."},
        {.label = "Not counted",
         .name = "takeoff_uncounted",
         .kind = Kind::Computed,
         .format = show::number(0),
         .value = "=" + findings("NO") + "+" + findings("NOT JUDGED"),
         .note = "Runs, nodes and goods whose amount is not known, listed below."},
        {.label = "Cleanouts asked",
         .name = "cleanouts_asked",
         .kind = Kind::Computed,
         .format = show::number(0),
         .value =
             "=" +
             withEngine("AGGREGATE(9;6;<runs_numbers.Cleanout at From:*>;<runs_numbers.Cleanouts along:*>)"),
         .note =
             "That the rules ask and Nodes does not have, listed below. Set them on Nodes, where the crew finds them."},
        hidden("Codes without a price", "takeoff_unpriced",
               "TEXTJOIN(\", \";1;counted_unpriced;added_unpriced)"),
        hidden(
            "Without a price", "takeoff_gaps",
            "IF(takeoff_unpriced=\"\";\"\";\"NO: no price for \"&IF(LEN(takeoff_unpriced)>40;LEFT(takeoff_unpriced;40)&\"…\";"
            "takeoff_unpriced)&\": type it on Prices, column Price, or bring it in from the price book\")"),
        hidden("Old prices", "takeoff_old",
               countOf("Takeoff.Check", "CHECK") + "+" + countOf("Additions.Check", "CHECK")),
        hidden("What the rules ask", "takeoff_asks",
               "IF(AND(N(cleanouts_asked)>0;buy_asked<>\"yes\");\"the rules ask \"&" +
                   saidCount("cleanouts_asked", "more cleanout than Nodes has",
                             "more cleanouts than Nodes has") +
                   ";\"\")"),
        hidden("What is old", "takeoff_ages",
               "IF(takeoff_old>0;" + saidCount("takeoff_old", "price is old", "prices are old") + ";\"\")"),
        {.label = "Ready?", .name = "takeoff_check", .kind = Kind::Verdict, .format = show::general},
    };
    judge(form, "takeoff_check",
          {{"NOT(engine_there)", "\"NO: nothing is counted without the add-in\""},
           {"takeoff_gaps<>\"\"", "takeoff_gaps"},
           {"NOT(ISNUMBER(sod_share))", "\"NO: the share of new sod is missing or not a number\""},
           {"OR(sod_share<0;sod_share>1)", "\"NO: the share of new sod is \"&sod_share&\": 25 % is 0.25\""},
           yesOrNo("buying the cleanouts asked", "buy_asked"),
           {"takeoff_uncounted>0",
            "\"NO: \"&" + saidCount("takeoff_uncounted", "amount is not known", "amounts are not known") +
                "&\": see the list below\""},
           {"IFERROR(<pieces_words.Code:" + std::to_string(takeoffRows) + "><>\"\";FALSE())",
            "\"NO: more codes than rows here\""},
           {"takeoff_missing>0", "\"NO: \"&" + saidCount("takeoff_missing", "line has no amount or no price",
                                                         "lines have no amount or no price")},
           {"SUMPRODUCT([Runs.From]<>\"\")=0", "\"CHECK: no runs yet\""},
           {"takeoff_asks&takeoff_ages<>\"\"", "\"CHECK: \"&TEXTJOIN(\"; \";1;takeoff_asks;takeoff_ages)"}},
          "\"OK\"");
    return form;
}

}  // namespace

Sheet takeoffSheet(const JobSize& size) {
    Paragraphs where;
    where.heading = "What is not counted, and cleanouts that the rules ask";
    where.span = 12;
    where.linesHigh = 3;
    where.lines = {
        "=IF(NOT(engine_there);\"Not known without the add-in.\";"
        "IF(takeoff_says=\"\";\"Nothing: everything is counted.\";takeoff_says))"};
    Sheet sheet;
    sheet.name = "Takeoff";
    sheet.title = "Takeoff";
    sheet.purpose =
        "What to buy, counted from nodes, runs and pit. Nothing is typed in the upper table; add what the "
        "drawing does not show in Additions below.";
    sheet.parts = {choices(), sums(), where, takeoff(), additions(size), codes()};
    return sheet;
}

}  // namespace trenchbook::sheets
