// Order, delivery tickets and invoices side by side: what was billed, what should have been, and why they differ.
//
// What should have been billed is delivered x ordered price, the tax on it and the agreed charges. The difference is
// split line by line into causes that add up to it to the cent: each line's product and its product at the ordered
// price are rounded to cents first, and every cause is a difference of two such amounts. With AQ billed at AP, SQ
// delivered and SP ordered, price is AQ (AP - SP) and quantity (AQ - SQ) SP, the variances of cost accounting texts.
// Native formulas only.
#include "buying/money.h"

namespace trenchbook::sheets {
namespace {

using Cases = std::vector<std::pair<std::string, std::string>>;

// Cells of the order's row of a line.
std::string ofOrder(const std::string& column) { return "INDEX([Order." + column + "];[Order row])"; }
std::string ofMatch(const std::string& column) { return "INDEX([Match." + column + "];[Order row])"; }
// The cell of the mirrored table in this row's place.
std::string here(const std::string& column) { return "INDEX([" + column + "];[#])"; }
std::string whenRow(const std::string& state, const std::string& formula) {
    return "IF([State]=\"" + state + "\";" + formula + ";0)";
}

Column money(const char* heading, const std::string& formula, const char* note = "", double width = 22) {
    return {.heading = heading, .format = show::number(2), .width = width, .formula = formula, .note = note};
}

// One row for each row of Order.
Table match(const JobSize& size) {
    const std::string guard = "IF(OR([Code]=\"\";NOT(ISNUMBER(" + here("Order.Price") + ")));\"\";";
    Table table;
    table.name = "Match";
    table.rows = size.prices;
    table.columns = {
        {.heading = "Code",
         .format = show::general,
         .width = 34,
         .formula = "IFERROR(" + here("Order.Code") + "&\"\";\"\")",
         .note = "Each row is the row in the same place on Order."},
        money("Delivered",
              "IF([Code]=\"\";\"\";IF(" + here("Order.Sort") + "=\"charge\";N(" + here("Order.Quantity") +
                  ");SUMIF([Tickets.Code];[Code];[Tickets.Quantity])))",
              "From the tickets; agreed charges count as ordered."),
        money("Returned", "IF([Code]=\"\";\"\";SUMIF([Tickets.Code];[Code];[Tickets.Returned]))"),
        money("Kept", "IF([Code]=\"\";\"\";[Delivered]-[Returned])"),
        money("Should be billed", guard + "ROUND([Kept]*" + here("Order.Price") + ";2))",
              "Kept x ordered price."),
        money("Billed quantity",
              "IF([Code]=\"\";\"\";SUMIF([Bill lines.Order code];[Code];[Bill lines.Quantity]))",
              "On all invoices, lines billed twice included."),
        money(
            "Counted quantity",
            "IF([Code]=\"\";\"\";SUMIFS([Bill lines.Quantity];[Bill lines.Order code];[Code];[Bill lines.State];\"match\"))"),
        money("Counted",
              "IF([Code]=\"\";\"\";ROUND(SUMIF([Bill lines.Order code];[Code];[Bill lines.Counted]);2))",
              "Its lines at the ordered price."),
        {.heading = "Unit lines",
         .format = show::number(0),
         .width = 20,
         .formula =
             "IF([Code]=\"\";\"\";COUNTIFS([Bill lines.Order code];[Code];[Bill lines.State];\"unit\"))"},
        {.heading = "Lines",
         .format = show::number(0),
         .width = 20,
         .formula =
             "IF([Code]=\"\";\"\";[Unit lines]+COUNTIFS([Bill lines.Order code];[Code];[Bill lines.State];\"match\"))"},
        money("Not billed yet", "IF(AND(ISNUMBER([Should be billed]);[Lines]=0);-[Should be billed];0)",
              "Delivered, but on no invoice."),
        money("Taxable part", "IF(AND(ISNUMBER([Should be billed]);" + here("Order.Taxable") +
                                  "=\"yes\");[Should be billed];0)"),
        money(
            "Free quantity",
            "IF([Code]=\"\";\"\";IF(ISNUMBER(MATCH(LOWER(" + here("Order.Unit") +
                ");{\"ton\";\"tons\";\"t\";\"tonne\";\"cu yd\";\"cy\";\"yd\";\"m3\";\"cu ft\"};0));[Kept]*{bill.quantity.bulk};0))",
            "Difference that passes: bulk goods by the rule, counted pieces none."),
    };
    return table;
}

// One row for each row of Bills.
Table lines(const JobSize& size) {
    const std::string sameUnit =
        "LOWER(TRIM(" + here("Bills.Unit") + "))=LOWER(TRIM(" + ofOrder("Unit") + "))";
    const auto above = [](const char* column) {
        return std::string("INDEX([Bill lines.") + column + "];1):[^" + column + "]";
    };
    const std::string excess = "(" + ofMatch("Counted quantity") + "-" + ofMatch("Kept") + ")";
    const std::string rest = "[Code difference]";
    const std::string plain = "AND([First]=1;" + ofMatch("Unit lines") + "=0)";
    const std::string credit = "IF(AND(" + rest + ">0;" + ofMatch("Delivered") + ">0);MIN(" + rest +
                               ";ROUND(MIN(" + ofMatch("Returned") + ";MAX(0;" + excess + "))*" +
                               ofOrder("Price") + ";2));0)";
    Table table;
    table.name = "Bill lines";
    table.rows = size.bills;
    table.columns = {
        money(
            "Quantity",
            "IFERROR(IF(ISNUMBER(" + here("Bills.Quantity") + ");" + here("Bills.Quantity") + ";\"\");\"\")",
            "Each row is the line in the same place on Bills.", 34),
        money("Price",
              "IFERROR(IF(ISNUMBER(" + here("Bills.Price") + ");" + here("Bills.Price") + ";\"\");\"\")"),
        money("Product", "IF(AND(ISNUMBER([Quantity]);ISNUMBER([Price]));ROUND([Quantity]*[Price];2);\"\")",
              "Quantity x price, in cents."),
        money("Amount",
              "IFERROR(IF(ISNUMBER(" + here("Bills.Amount") + ");ROUND(" + here("Bills.Amount") +
                  ";2);IF(ISBLANK(" + here("Bills.Amount") + ");[Product];\"\"));\"\")",
              "As billed; where the invoice shows none, the product."),
        {.heading = "Order code",
         .format = show::general,
         .width = 34,
         .formula = "IFERROR(IF(" + here("Bills.Stands for") + "<>\"\";" + here("Bills.Stands for") + ";" +
                    here("Bills.Code") + ")&\"\";\"\")"},
        {.heading = "Order row",
         .format = show::number(0),
         .width = 20,
         .formula = "IF([Order code]=\"\";\"\";IFERROR(MATCH([Order code];[Order.Code];0);\"\"))"},
        {.heading = "Twice",
         .format = show::number(0),
         .width = 18,
         .formula =
             "IF(AND(ISNUMBER([Order row]);ISNUMBER([Product]);ISNUMBER([Amount]);N([Quantity])>0);IF(AND(SUMPRODUCT((" +
             above("Order code") + "=[Order code])*(" + above("Quantity") + "=[Quantity])*(" +
             above("Price") + "=[Price]))>0;" + ofMatch("Billed quantity") + "-" + ofMatch("Kept") +
             "-SUMIF(" + above("Order code") + ";[Order code];" + above("Twice quantity") +
             ")>=[Quantity]-0.000001);1;0);0)",
         .note = "The same line stands above, and without it the quantity would be right or still too high."},
        money("Twice quantity", "[Twice]*N([Quantity])"),
        {.heading = "State",
         .format = show::general,
         .width = 24,
         .formula =
             firstOf({{"AND([Amount]=\"\";[Order code]=\"\")", "\"\""},
                      {"[Amount]=\"\"", "\"unread\""},
                      {"[Order code]=\"\"", "\"no code\""},
                      {"[Order row]=\"\"",
                       "IF(SUMPRODUCT(([Charge words.Word]<>\"\")*ISNUMBER(SEARCH([Charge words.Word];" +
                           here("Bills.Code") + "&\" \"&" + here("Bills.Item") +
                           ")))>0;\"surcharge\";\"not ordered\")"},
                      {"OR([Product]=\"\";NOT(ISNUMBER(" + ofOrder("Price") + ")))", "\"unclear\""},
                      {"[Twice]=1", "\"twice\""},
                      {sameUnit, "\"match\""}},
                     "\"unit\"")},
        money("Counted",
              whenRow("match", "ROUND([Quantity]*" + ofOrder("Price") + ";2)") + "+" +
                  whenRow("unit", "[Product]"),
              "At the ordered price."),
        {.heading = "First",
         .format = show::number(0),
         .width = 18,
         .formula = "IF(OR([State]=\"match\";[State]=\"unit\");IF(COUNTIFS(" + above("Order code") +
                    ";[Order code];" + above("State") + ";\"match\")+COUNTIFS(" + above("Order code") +
                    ";[Order code];" + above("State") + ";\"unit\")=0;1;0);0)",
         .note = "The first line of its code carries the difference of the whole code."},
        money("Code difference",
              "IF([First]=1;ROUND(" + ofMatch("Counted") + "-" + ofMatch("Should be billed") + ";2);0)",
              "Lines at the ordered price against delivered at the ordered price."),
        money("Arithmetic", "IF(OR([State]=\"match\";[State]=\"unit\");ROUND([Amount]-[Product];2);0)"),
        money("Price part", "IF(AND([State]=\"match\";" + here("Bills.Stands for") +
                                "=\"\");ROUND([Product]-[Counted];2);0)"),
        money("Substitution", "IF(AND([State]=\"match\";" + here("Bills.Stands for") +
                                  "<>\"\");ROUND([Product]-[Counted];2);0)"),
        money("Unit mix-up",
              "IF(AND([First]=1;N([Order row])>0);IF(" + ofMatch("Unit lines") + ">0;" + rest + ";0);0)"),
        money("Not delivered", "IF([First]=1;IF(AND(" + plain + ";" + rest + ">0;" + ofMatch("Delivered") +
                                   "=0);" + rest + ";0);0)"),
        money("Credit not given", "IF([First]=1;IF(" + plain + ";" + credit + ";0);0)"),
        money("Quantity part",
              "IF([First]=1;IF(" + plain + ";ROUND(" + rest + "-[Not delivered]-[Credit not given];2);0);0)"),
        money("Billed twice", whenRow("twice", "[Amount]")),
        money("Surcharge", whenRow("surcharge", "[Amount]")),
        money("Not ordered", whenRow("not ordered", "[Amount]")),
        money("Unclear", "IF(OR([State]=\"no code\";[State]=\"unclear\");[Amount];0)"),
        money(
            "Difference",
            "ROUND([Arithmetic]+[Price part]+[Substitution]+[Unit mix-up]+[Not delivered]+[Credit not given]+[Quantity part]+[Billed twice]+[Surcharge]+[Not ordered]+[Unclear];2)"),
        money("Price held", "IF(AND([State]=\"match\";[Price part]>0);IF([Price]-" + ofOrder("Price") +
                                ">MAX(" + ofOrder("Price") +
                                "*{bill.price.share};{bill.price.amount})+0.0000001;[Price part];0);0)"),
        money("Quantity held", "IF([First]=1;IF(AND([Quantity part]>0;" + excess + ">" +
                                   ofMatch("Free quantity") + "+0.0000001);[Quantity part];0);0)"),
        money(
            "Held",
            "ROUND(MAX(0;[Arithmetic])+[Price held]+MAX(0;[Substitution])+MAX(0;[Unit mix-up])+MAX(0;[Not delivered])+MAX(0;[Credit not given])+[Quantity held]+"
            "MAX(0;[Billed twice])+MAX(0;[Surcharge])+MAX(0;[Not ordered])+MAX(0;[Unclear]);2)",
            "Beyond what passes."),
        {.heading = "Taxed",
         .format = show::number(0),
         .width = 18,
         .formula = "IF([State]=\"\";0;IF(ISNUMBER([Order row]);IF(" + ofOrder("Taxable") +
                    "=\"yes\";1;0);IF(" + here("Bills.Taxed") + "=\"no\";0;1)))"},
        money("Taxed amount", "IF(ISNUMBER([Amount]);[Taxed]*[Amount];0)"),
        money("Taxed held", "[Taxed]*[Held]"),
    };
    return table;
}

}  // namespace

Sheet billWorkingsSheet(const JobSize& size) {
    Sheet sheet;
    sheet.name = "Bill workings";
    sheet.title = "Bill workings";
    sheet.purpose =
        "How each cent of difference on Bills is found: one row for each line of the order and of the invoices. Nothing is typed here.";
    sheet.parts = {match(size), lines(size)};
    sheet.printed = false;
    sheet.locked = true;
    return sheet;
}

Sheet billsSheet(const JobSize& size) {
    const auto sum = [](const char* label, const char* name, const std::string& formula, const char* note) {
        return Field{.label = label,
                     .name = name,
                     .kind = Kind::Computed,
                     .format = show::money,
                     .measure = Measure::Dollars,
                     .value = "=ROUND(" + formula + ";2)",
                     .note = note};
    };
    const auto cause = [&](const char* label, const char* name, const char* column, const char* note) {
        return sum(label, name, std::string("SUM([Bill lines.") + column + "])", note);
    };
    const std::string rate =
        "IF(AND(ISNUMBER({tax.material});N({tax.material})>=0;N({tax.material})<0.5);{tax.material};\"\")";
    Form verdict;
    verdict.name = "Bill verdict";
    verdict.heading = "Pay or hold";
    verdict.fields = {
        {.label = "Tax rate",
         .name = "bill_rate",
         .kind = Kind::Computed,
         .format = show::percent(3),
         .value = "=" + rate,
         .note = "tax.material on Rules, as a share: 0.0725 is 7.25 %."},
        sum("Billed", "billed", "SUM([Bill lines.Amount])+SUM([Invoices.Tax])+SUM([Invoices.Total off])",
            "All invoices: lines, tax, and what a total does not add up by."),
        sum("Should have been billed", "bill_should", "SUM([Match.Should be billed])+N(bill_should_tax)",
            "Delivered x ordered price, agreed charges, tax."),
        sum("of this tax", "bill_should_tax", "SUM([Match.Taxable part])*N(bill_rate)",
            "Rounded once, on the taxable total."),
        sum("Difference", "bill_difference", "billed-bill_should", "Above 0: billed too much."),
        sum("Hold", "bill_hold",
            "SUM([Bill lines.Held])+SUM([Bill lines.Taxed held])*N(bill_rate)+bill_tax_held+MAX(0;cause_totals)",
            "Overcharges beyond what passes, with the tax on them."),
        sum("Pay", "bill_pay", "billed-bill_hold", ""),
        {.label = "Verdict",
         .name = "bill_check",
         .kind = Kind::Verdict,
         .format = show::general,
         .value =
             "=" +
             firstOf({{"SUMPRODUCT([Bills.Code]&[Bills.Item]&[Bills.Amount]<>\"\")=0",
                       "\"CHECK: no invoice yet\""},
                      {"NOT(ISNUMBER(bill_rate))",
                       "\"NO: tax.material on Rules is not a share: 7.25 % is 0.0725\""},
                      {"SUMPRODUCT([Order.Code]<>\"\")=0", "\"NO: no order to compare with\""},
                      {countOf("Order.Check", "NO") + "+" + countOf("Tickets.Check", "NO") +
                           "+COUNTIF([Bill lines.State];\"unread\")+" +
                           countOf("Invoices.Check", "NO: cannot") + ">0",
                       "\"NO: hold everything: a row of order, tickets or invoices cannot be read\""},
                      {"ABS(cause_sum-bill_difference)>0.004", "\"NO: the causes do not add up\""},
                      {"bill_hold>0",
                       "\"NO: hold \"&TEXT(bill_hold;\"#,##0.00\")&\", pay \"&TEXT(bill_pay;\"#,##0.00\")"}},
                     "\"OK: pay \"&TEXT(bill_pay;\"#,##0.00\")")},
    };
    Form causes;
    causes.name = "Bill causes";
    causes.heading = "The difference by cause";
    causes.fields = {
        cause("Price", "cause_price", "Price part",
              "Billed at another price than ordered: (billed price - ordered price) x billed quantity."),
        cause("Quantity", "cause_quantity", "Quantity part",
              "Billed more or less than was delivered: (billed - kept) x ordered price."),
        cause("Not delivered", "cause_undelivered", "Not delivered", "On no ticket at all."),
        cause("Credit not given", "cause_credit", "Credit not given", "Returned by ticket, billed as kept."),
        cause("Arithmetic", "cause_arithmetic", "Arithmetic", "The line's amount is not quantity x price."),
        cause("Unit mix-up", "cause_unit", "Unit mix-up",
              "Billed in another unit than ordered: ton for yard, stick for foot."),
        cause("Billed twice", "cause_twice", "Billed twice",
              "The same line again, on this or another invoice."),
        cause("Not ordered", "cause_unordered", "Not ordered", "The code is not on the order."),
        cause("Surcharge", "cause_surcharge", "Surcharge", "A charge that was not agreed."),
        cause("Substitution", "cause_substitution", "Substitution",
              "Another product stands for the one ordered, at another price."),
        cause("Unclear", "cause_unclear", "Unclear", "No code, or no quantity or price: ask the supplier."),
        sum("Delivered, not billed", "cause_unbilled", "SUM([Match.Not billed yet])",
            "Comes with a later invoice, or is forgotten."),
        sum("Tax", "cause_tax", "SUM([Invoices.Tax off])",
            "Tax billed that is not rate x taxable lines as billed."),
        sum("Tax on the above", "cause_tax_follows", "SUM([Invoices.Tax due])-bill_should_tax",
            "Tax that follows from the other differences; may be cents of rounding."),
        sum("Invoice totals", "cause_totals", "SUM([Invoices.Total off])",
            "A total that is not lines + tax."),
        sum("All causes", "cause_sum",
            "cause_price+cause_quantity+cause_undelivered+cause_credit+cause_arithmetic+cause_unit+cause_twice+cause_unordered+cause_surcharge+cause_substitution+cause_unclear+cause_unbilled+"
            "cause_tax+cause_tax_follows+cause_totals",
            "Equals the difference above, to the cent."),
        sum("Tax held", "bill_tax_held",
            "SUMIF([Invoices.Tax off];\">\"&{bill.tax.amount};[Invoices.Tax off])",
            "Beyond what passes for tax on one invoice."),
    };
    verdict.noteSpan = causes.noteSpan = 7;

    Table invoices;
    invoices.name = "Invoices";
    invoices.rows = 12;
    const std::string ofInvoice = "[Bills.Invoice];[Invoice];";
    invoices.columns = {
        {.heading = "Invoice",
         .kind = Kind::Permit,
         .width = 34,
         .note = "Number on the paper; lines below refer to it."},
        {.heading = "Supplier", .kind = Kind::Permit, .width = 46},
        {.heading = "Note", .kind = Kind::Permit, .width = 56, .wrapped = true},
        {.heading = "Date", .kind = Kind::Permit, .format = show::date, .width = 22},
        {.heading = "Tax",
         .kind = Kind::Measured,
         .format = show::number(2),
         .width = 20,
         .note = "Sales tax as billed, in dollars."},
        {.heading = "Total",
         .kind = Kind::Measured,
         .format = show::number(2),
         .width = 20,
         .note = "Total as billed. Blank: lines + tax."},
        money("Lines", "IF([Invoice]=\"\";\"\";ROUND(SUMIF(" + ofInvoice + "[Bill lines.Amount]);2))",
              "Its lines below, added up."),
        money(
            "Tax due",
            "IF([Invoice]=\"\";\"\";ROUND(SUMIF(" + ofInvoice + "[Bill lines.Taxed amount])*N(bill_rate);2))",
            "Rate x taxable lines as billed, rounded once.", 26),
        money("Tax off", "IF([Invoice]=\"\";\"\";ROUND(N([Tax])-[Tax due];2))", "", 18),
        money("Total off",
              "IF([Invoice]=\"\";\"\";IF(ISNUMBER([Total]);ROUND([Total]-[Lines]-N([Tax]);2);0))", "", 22),
        {.heading = "Check",
         .kind = Kind::Verdict,
         .width = 66,
         .formula = firstOf(
             ownErrors({"Invoice", "Date", "Tax", "Total"}) +
                 Cases{{"AND([Invoice]=\"\";[Tax]=\"\";[Total]=\"\")", "\"\""},
                       {"[Invoice]=\"\"", "\"NO: cannot be matched: the number is missing\""},
                       {"COUNTIF([Invoices.Invoice];[Invoice])>1",
                        "\"NO: cannot be matched: this number stands here twice\""},
                       {"NOT(OR(ISBLANK([Date]);ISNUMBER([Date])))",
                        "\"CHECK: not a date: \"&[Date]&\"; write it as 2026-05-31\""},
                       {"NOT(OR(ISBLANK([Tax]);ISNUMBER([Tax])))", "\"NO: cannot be read: tax is \"&[Tax]"},
                       {"NOT(OR(ISBLANK([Total]);ISNUMBER([Total])))",
                        "\"NO: cannot be read: total is \"&[Total]"},
                       {"[Tax off]>{bill.tax.amount}", "\"NO: \"&TEXT([Tax off];\"0.00\")&\" too much tax\""},
                       {"[Total off]>0.004",
                        "\"NO: the total is \"&TEXT([Total off];\"0.00\")&\" over its lines and tax\""},
                       {"[Tax off]<-{bill.tax.amount}",
                        "\"CHECK: \"&TEXT(-[Tax off];\"0.00\")&\" too little tax; you may owe it yourself\""},
                       {"[Total off]<-0.004",
                        "\"CHECK: the total is \"&TEXT(-[Total off];\"0.00\")&\" under its lines and tax\""}},
             "\"OK\"")},
    };

    // What a line's Check tells: each cause with its dollars, overcharges first.
    const auto say = [](const std::string& words, const std::string& column, const std::string& over) {
        return "IF(" + over + ">0;\"" + words + " +\"&TEXT(" + here("Bill lines." + column) +
               ";\"0.00\");\"\")";
    };
    const auto held = [&](const std::string& words, const std::string& column) {
        return say(words, column, here("Bill lines." + column));
    };
    const std::string overcharges =
        "TEXTJOIN(\"; \";1;" + say("price", "Price part", here("Bill lines.Price held")) + ";" +
        say("more than delivered", "Quantity part", here("Bill lines.Quantity held")) + ";" +
        held("not delivered", "Not delivered") + ";" + held("credit not given", "Credit not given") + ";" +
        held("arithmetic", "Arithmetic") + ";" + held("unit mix-up", "Unit mix-up") + ";" +
        held("billed twice", "Billed twice") + ";" + held("not ordered", "Not ordered") + ";" +
        held("surcharge", "Surcharge") + ";" + held("substitution", "Substitution") + ";" +
        held("unclear", "Unclear") + ")";
    Table bills;
    bills.name = "Bills";
    bills.rows = size.bills;
    bills.columns = {
        {.heading = "Invoice",
         .kind = Kind::Permit,
         .width = 34,
         .note = "Number of the invoice it stands on."},
        {.heading = "Code", .kind = Kind::Measured, .width = 46, .note = "The order's code."},
        {.heading = "Item",
         .kind = Kind::Measured,
         .width = 56,
         .note = "As the invoice says it.",
         .wrapped = true},
        {.heading = "Quantity",
         .kind = Kind::Measured,
         .format = show::general,
         .width = 22,
         .note = "A credit is negative."},
        {.heading = "Unit",
         .kind = Kind::Measured,
         .width = 20,
         .note = "As the invoice says it; another unit than ordered is reported."},
        {.heading = "Price", .kind = Kind::Measured, .format = show::number(2), .width = 20},
        {.heading = "Amount",
         .kind = Kind::Measured,
         .format = show::number(2),
         .width = 22,
         .note = "The line's amount as billed. Blank: quantity x price."},
        {.heading = "Stands for",
         .kind = Kind::Measured,
         .width = 26,
         .validity = chosenFrom("[Order.Code]"),
         .note = "The ordered code that this product replaces."},
        {.heading = "Taxed",
         .kind = Kind::Measured,
         .width = 18,
         .validity = choice({"yes", "no"}),
         .note = "Only for lines that were not ordered.",
         .centred = true},
        money("Difference",
              "IF(" + here("Bill lines.State") + "=\"\";\"\";" + here("Bill lines.Difference") + ")",
              "Billed too much on this line; the difference of a whole code stands on its first line."),
        {.heading = "Check",
         .kind = Kind::Verdict,
         .width = 66,
         .formula = firstOf(
             ownErrors({"Invoice", "Code", "Item", "Quantity", "Unit", "Price", "Amount", "Stands for"}) +
                 Cases{{"[Invoice]&[Code]&[Item]&[Quantity]&[Price]&[Amount]=\"\"", "\"\""},
                       {"NOT(OR(ISBLANK([Amount]);ISNUMBER([Amount])))",
                        "\"NO: the amount is not a number: \"&[Amount]"},
                       {"NOT(ISNUMBER(" + here("Bill lines.Amount") + "))",
                        "\"NO: no amount, and no quantity and price to work it out\""},
                       {"[Code]=\"\"", "\"NO: no code: which line of the order is it?\""},
                       {"[Invoice]=\"\"", "\"NO: which invoice?\""},
                       {"COUNTIF([Invoices.Invoice];[Invoice])=0",
                        "\"NO: invoice \"&[Invoice]&\" is not in the list above\""},
                       {"AND([Stands for]<>\"\";COUNTIF([Order.Code];[Stands for])=0)",
                        "\"NO: \"&[Stands for]&\" is not on the order\""},
                       {here("Bill lines.Held") + ">0", "\"NO: \"&" + overcharges},
                       {"[Difference]>0", "\"OK: \"&TEXT([Difference];\"0.00\")&\" too much, passes\""},
                       {"[Difference]<0", "\"OK: \"&TEXT(-[Difference];\"0.00\")&\" too little\""}},
             "\"OK\"")},
    };

    Table tickets;
    tickets.name = "Tickets";
    tickets.rows = size.bills;
    tickets.columns = {
        {.heading = "Ticket",
         .kind = Kind::Permit,
         .width = 34,
         .note = "Delivery ticket, weigh ticket or return slip."},
        {.heading = "Code",
         .kind = Kind::Measured,
         .width = 46,
         .note = "The order's code; what stands for another is written under the code ordered."},
        {.heading = "Item", .kind = Kind::Measured, .width = 56, .wrapped = true},
        {.heading = "Quantity",
         .kind = Kind::Measured,
         .format = show::general,
         .width = 22,
         .note = "Delivered, in the order's unit."},
        {.heading = "Unit", .kind = Kind::Measured, .width = 20},
        {.heading = "Returned",
         .kind = Kind::Measured,
         .format = show::general,
         .width = 20,
         .note = "Taken back for credit, in the order's unit; not negative."},
        {.heading = "Date", .kind = Kind::Permit, .format = show::date, .width = 22},
        {.heading = "Check",
         .kind = Kind::Verdict,
         .width = 26,
         .formula = firstOf(
             ownErrors({"Code", "Item", "Quantity", "Unit", "Returned", "Date"}) +
                 Cases{
                     {"[Ticket]&[Code]&[Item]&[Quantity]&[Returned]=\"\"", "\"\""},
                     {"[Code]=\"\"", "\"NO: no code\""},
                     {"AND(ISBLANK([Quantity]);ISBLANK([Returned]))", "\"NO: no quantity\""},
                     {"NOT(OR(ISBLANK([Quantity]);ISNUMBER([Quantity])))",
                      "\"NO: not a number: \"&[Quantity]"},
                     {"NOT(OR(ISBLANK([Returned]);ISNUMBER([Returned])))",
                      "\"NO: not a number: \"&[Returned]"},
                     {"OR(N([Quantity])<0;N([Returned])<0)",
                      "\"NO: negative; write returns under Returned\""},
                     {"NOT(OR(ISBLANK([Date]);ISNUMBER([Date])))", "\"NO: not a date: \"&[Date]"},
                     {"COUNTIF([Order.Code];[Code])=0", "\"CHECK: not ordered\""},
                     {"AND([Unit]<>\"\";LOWER(TRIM([Unit]))<>LOWER(TRIM(INDEX([Order.Unit];MATCH([Code];[Order.Code];0)))))",
                      "\"NO: ordered by \"&INDEX([Order.Unit];MATCH([Code];[Order.Code];0))"}},
             "\"OK\"")},
    };

    Table words;
    words.name = "Charge words";
    words.rows = 12;
    words.columns = {
        {.heading = "Word",
         .kind = Kind::Kept,
         .width = 34,
         .note = "A line that was not ordered and holds one of these words is a surcharge, not goods."}};
    for (const char* word :
         {"fuel", "surcharge", "fee", "freight", "delivery", "handling", "environmental", "pallet"})
        words.content.push_back({word});

    Sheet sheet;
    sheet.name = "Bills";
    sheet.title = "Bills";
    sheet.purpose =
        "Paste tickets and invoice lines in any order; each is matched to the order by its code. What passes is on Rules under bill.";
    sheet.parts = {verdict, causes, invoices, bills, tickets, words};
    sheet.widths = {34, 46, 56, 22};
    return sheet;
}

}  // namespace trenchbook::sheets
