#include "buying/bill_lines.h"

namespace trenchbook::sheets {
namespace {

Column text(const char* heading, const std::string& formula, const char* note = "") {
    return {.heading = heading,
            .format = show::general,
            .width = 24,
            .formula = formula,
            .note = note,
            .helper = true};
}
Column money(const char* heading, const std::string& formula, const char* note = "") {
    return {.heading = heading,
            .format = show::number(2),
            .width = 22,
            .formula = formula,
            .note = note,
            .helper = true};
}
Column count(const char* heading, const std::string& formula, const char* note = "") {
    return {.heading = heading,
            .format = show::number(0),
            .width = 18,
            .formula = formula,
            .note = note,
            .helper = true};
}

// A cell of the order's row that an invoice line is matched to.
std::string ofOrder(const std::string& column) { return "INDEX([Order." + column + "];[Order row])"; }
// The order's code for what a bill or ticket says: the code itself, or the one whose supplier numbers it like this.
std::string orderedAs(const std::string& said) {
    return "IF(ISNUMBER(MATCH(" + said + ";[Order.Code];0));" + said + ";IFERROR(INDEX([Order.Code];MATCH(" +
           said + ";[Order.Their number];0));" + said + "))";
}
std::string whenState(const std::string& state, const std::string& formula) {
    return "IF([State]=\"" + state + "\";" + formula + ";0)";
}
std::string whenCode(const std::string& formula) { return "IF([Code read]=\"\";\"\";" + formula + ")"; }
std::string linesOf(const std::string& state) {
    return "COUNTIFS([Bills.Order code];[Code read];[Bills.State];\"" + state + "\")";
}
// The cells of a column of Bills above this row.
std::string above(const std::string& column) { return "INDEX([Bills." + column + "];1):[^" + column + "]"; }

}  // namespace

std::vector<Column> orderWorkings() {
    return {
        text("Code read", "IFERROR([Code]&\"\";\"\")"),
        money(
            "Delivered",
            whenCode(
                "IF([Sort]=\"charge\";N([Quantity]);SUMIF([Tickets.Order code];[Code read];[Tickets.Quantity read]))"),
            "From the tickets; agreed charges count as ordered."),
        money("Returned", whenCode("SUMIF([Tickets.Order code];[Code read];[Tickets.Returned read])")),
        money("Kept", whenCode("[Delivered]-[Returned]")),
        money("Should be billed",
              "IF(OR([Code read]=\"\";NOT(ISNUMBER([Price])));\"\";ROUND([Kept]*[Price];2))",
              "Kept x ordered price."),
        money("Billed quantity", whenCode("SUMIF([Bills.Order code];[Code read];[Bills.Quantity read])"),
              "On all invoices, lines billed twice included."),
        money(
            "Counted quantity",
            whenCode("SUMIFS([Bills.Quantity read];[Bills.Order code];[Code read];[Bills.State];\"match\")")),
        money("Counted", whenCode("ROUND(SUMIF([Bills.Order code];[Code read];[Bills.Line counted]);2)"),
              "Its lines at the ordered price."),
        count("Unit lines", whenCode(linesOf("unit"))),
        money("Not billed yet",
              "IF(ISNUMBER([Should be billed]);IF([Unit lines]+" + linesOf("match") +
                  "=0;-[Should be billed];0);0)",
              "Delivered, but on no invoice."),
        money("Free quantity", whenCode("IF(" + soldLoose("[Unit]") + ";[Kept]*{bill.quantity.bulk};0)"),
              "Difference that passes: bulk goods by the rule, counted pieces none."),
    };
}

std::vector<Column> ticketWorkings() {
    // The first four are weights, the others volumes.
    const auto weighed = [](const std::string& unit) {
        return "(MATCH(LOWER(TRIM(" + unit +
               "));{\"ton\";\"tons\";\"t\";\"tonne\";\"cu yd\";\"cy\";\"yd\";\"m3\"};0)<5)";
    };
    const auto read = [](const std::string& column) {
        return "IFERROR(IF(ISNUMBER(" + column + ");" + column + "*[Times];\"\");\"\")";
    };
    return {
        text("Order code", "IFERROR(IF([Code]=\"\";\"\";" + orderedAs("[Code]") + ")&\"\";\"\")"),
        count("Order row", "IF([Order code]=\"\";\"\";IFERROR(MATCH([Order code];[Order.Code];0);\"\"))"),
        {.heading = "Times",
         .format = show::number(6),
         .width = 18,
         // No tons a yard, or another unit than these: the quantity stands as it is.
         .formula = "IFERROR((1/(1/" + ofOrder("Tons a yard") + "))^(" + weighed(ofOrder("Unit")) + "-" +
                    weighed("[Unit]") + ");1)",
         .note = "From the ticket's unit to the order's, by the product's own density.",
         .helper = true},
        money("Quantity read", read("[Quantity]")),
        money("Returned read", read("[Returned]")),
    };
}

std::vector<Column> billWorkings() {
    const std::string number = "ISNUMBER([Order row])";
    const std::string counts = "OR([State]=\"match\";[State]=\"unit\")";
    std::vector<Column> made = {
        money("Quantity read", "IFERROR(IF(ISNUMBER([Quantity]);[Quantity];\"\");\"\")"),
        money("Price read", "IFERROR(IF(ISNUMBER([Price]);[Price];\"\");\"\")"),
        money(
            "Product",
            "IF(AND(ISNUMBER([Quantity read]);ISNUMBER([Price read]));ROUND([Quantity read]*[Price read];2);\"\")",
            "Quantity x price, in cents."),
        money("Amount read",
              "IFERROR(IF(ISNUMBER([Amount]);ROUND([Amount];2);IF(ISBLANK([Amount]);[Product];\"\"));\"\")",
              "As billed; where the invoice shows none, the product."),
        text("Order code", "IFERROR(IF([Stands for]<>\"\";[Stands for];IF([Code]=\"\";\"\";" +
                               orderedAs("[Code]") + "))&\"\";\"\")"),
        count("Order row", "IF([Order code]=\"\";\"\";IFERROR(MATCH([Order code];[Order.Code];0);\"\"))"),
        money("Ordered price",
              "IF(" + number + ";IF(ISNUMBER(" + ofOrder("Price") + ");" + ofOrder("Price") + ";\"\");\"\")"),
        count("Same unit",
              "IF(" + number + ";IF(LOWER(TRIM([Unit]))=LOWER(TRIM(" + ofOrder("Unit") + "));1;0);0)"),
        count(
            "Charge words",
            "IF(ISERROR([Code]&[Item]);0;SUMPRODUCT(([Charge words.Word]<>\"\")*ISNUMBER(SEARCH([Charge words.Word];[Code]&\" \"&[Item]))))"),
        count("Same above",
              "SUMPRODUCT((" + above("Order code") + "=[Order code])*(" + above("Quantity read") +
                  "=[Quantity read])*(" + above("Price read") + "=[Price read]))",
              "Lines above with the same code, quantity and price."),
        money("Billed over",
              "IF(" + number + ";" + ofOrder("Billed quantity") + "-" + ofOrder("Kept") + "-SUMIFS(" +
                  above("Quantity read") + ";" + above("Order code") + ";[Order code];" + above("Twice") +
                  ";1);0)",
              "Quantity billed beyond what was kept, without the lines above that were billed twice."),
        count(
            "Twice",
            "IF(AND(" + number +
                ";ISNUMBER([Product]);ISNUMBER([Amount read]);N([Quantity read])>0;[Same above]>0);IF([Billed over]>=[Quantity read]-0.000001;1;0);0)",
            "The same line stands above, and without it the quantity would be right or still too high."),
        text("State", firstOf({{"AND([Amount read]=\"\";[Order code]=\"\")", "\"\""},
                               {"[Amount read]=\"\"", "\"unread\""},
                               {"[Order code]=\"\"", "\"no code\""},
                               {"[Order row]=\"\"", "IF([Charge words]>0;\"surcharge\";\"not ordered\")"},
                               {"OR([Product]=\"\";[Ordered price]=\"\")", "\"unclear\""},
                               {"[Twice]=1", "\"billed twice\""}},
                              "IF([Same unit]=1;\"match\";\"unit\")")),
        money("Line counted",
              whenState("match", "ROUND([Quantity read]*[Ordered price];2)") + "+" +
                  whenState("unit", "[Product]"),
              "At the ordered price."),
        count("First",
              "IF(" + counts + ";IF(COUNTIFS(" + above("Order code") + ";[Order code];" + above("State") +
                  ";\"match\")+COUNTIFS(" + above("Order code") + ";[Order code];" + above("State") +
                  ";\"unit\")=0;1;0);0)",
              "The first line of its code carries the difference of the whole code."),
        money("Code difference",
              "IF([First]=1;ROUND(" + ofOrder("Counted") + "-" + ofOrder("Should be billed") + ";2);0)",
              "Lines at the ordered price against delivered at the ordered price."),
        count("Plain", "IF([First]=1;IF(" + ofOrder("Unit lines") + "=0;1;0);0)",
              "First of its code, all of whose lines are in the order's unit."),
        money("Excess", "IF([First]=1;" + ofOrder("Counted quantity") + "-" + ofOrder("Kept") + ";0)"),
        money("Arithmetic", "IF(" + counts + ";ROUND([Amount read]-[Product];2);0)"),
        money("Price part",
              "IF(AND([State]=\"match\";[Stands for]=\"\");ROUND([Product]-[Line counted];2);0)"),
        money("Substitution",
              "IF(AND([State]=\"match\";[Stands for]<>\"\");ROUND([Product]-[Line counted];2);0)"),
        money("Unit mix-up", "IF(AND([First]=1;[Plain]=0);[Code difference];0)"),
        money("Not delivered", "IF([Plain]=1;IF(AND([Code difference]>0;" + ofOrder("Delivered") +
                                   "=0);[Code difference];0);0)"),
        money("Credit not given", "IF([Plain]=1;IF(AND([Code difference]>0;" + ofOrder("Delivered") +
                                      ">0);MIN([Code difference];ROUND(MIN(" + ofOrder("Returned") +
                                      ";MAX(0;[Excess]))*[Ordered price];2));0);0)"),
        money("Quantity part",
              "IF([Plain]=1;ROUND([Code difference]-[Not delivered]-[Credit not given];2);0)"),
        money(
            "Whole line",
            "IF(ISNUMBER(MATCH([State];{\"billed twice\";\"surcharge\";\"not ordered\";\"no code\";\"unclear\"};0));"
            "[Amount read];0)",
            "A line that is not to be paid at all."),
        money(
            "Price held",
            "IF(AND([State]=\"match\";[Price part]>0);IF([Price read]-[Ordered price]>MAX([Ordered price]*{bill.price.share};{bill.price.amount})+0.0000001;[Price part];0);0)"),
        money("Quantity held", "IF(AND([First]=1;[Quantity part]>0);IF([Excess]>" + ofOrder("Free quantity") +
                                   "+0.0000001;[Quantity part];0);0)"),
        money(
            "Held",
            "ROUND(MAX(0;[Arithmetic])+[Price held]+MAX(0;[Substitution])+MAX(0;[Unit mix-up])+MAX(0;[Not delivered])+MAX(0;[Credit not given])+[Quantity held]+"
            "MAX(0;[Whole line]);2)",
            "Beyond what passes."),
        count("Taxed read", "IF([State]=\"\";0;IF(" + number + ";IF(" + ofOrder("Taxable") +
                                "=\"yes\";1;0);IF([Taxed]=\"no\";0;1)))"),
    };

    // What a line's Check tells: each cause with its dollars, overcharges first.
    const auto say = [](const std::string& words, const std::string& column, const std::string& over) {
        return ";IF([" + over + "]>0;\"" + words + " +\"&TEXT([" + column + "];\"0.00\");\"\")";
    };
    const auto held = [&](const std::string& words, const std::string& column) {
        return say(words, column, column);
    };
    const auto told = [](const std::string& texts) { return "TEXTJOIN(\"; \";1" + texts + ")"; };
    made.push_back(text("Whole line is", firstOf({{"[Whole line]<=0", "\"\""},
                                                  {"[State]=\"billed twice\"", "\"billed twice +\""},
                                                  {"[State]=\"surcharge\"", "\"surcharge +\""},
                                                  {"[State]=\"not ordered\"", "\"not ordered +\""}},
                                                 "\"unclear +\"")));
    made.push_back(text("Told 1", told(say("price", "Price part", "Price held") +
                                       say("more than delivered", "Quantity part", "Quantity held") +
                                       held("not delivered", "Not delivered") +
                                       held("credit not given", "Credit not given"))));
    made.push_back(
        text("Told 2", told(held("arithmetic", "Arithmetic") + held("unit mix-up", "Unit mix-up") +
                            held("substitution", "Substitution") +
                            ";IF([Whole line]>0;[Whole line is]&TEXT([Whole line];\"0.00\");\"\")")));
    return made;
}

}  // namespace trenchbook::sheets
