// Order, delivery tickets and invoices side by side: what was billed, what should have been, and why they differ. The
// workings of each line are hidden columns: see bill_lines.h. Native formulas only.
#include "buying/bill_lines.h"

namespace trenchbook::sheets {
namespace {

// Computed columns of Invoices and Bills that a reader sees.
Column money(const char* heading, const std::string& formula, const char* note = "", double width = 22) {
    return {.heading = heading, .format = show::number(2), .width = width, .formula = formula, .note = note};
}

}  // namespace

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
        return sum(label, name, std::string("SUM([Bills.") + column + "])", note);
    };
    // Lines of these states are not to be paid at all.
    const auto whole = [&](const char* label, const char* name, const std::vector<std::string>& states,
                           const char* note) {
        std::string formula;
        for (const std::string& state : states)
            formula +=
                (formula.empty() ? "" : "+") + ("SUMIF([Bills.State];\"" + state + "\";[Bills.Amount read])");
        return sum(label, name, formula, note);
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
        sum("Billed", "billed", "SUM([Bills.Amount read])+SUM([Invoices.Tax])+SUM([Invoices.Total off])",
            "All invoices: lines, tax, and what a total does not add up by."),
        sum("Should have been billed", "bill_should", "SUM([Order.Should be billed])+N(bill_should_tax)",
            "Delivered x ordered price, agreed charges, tax."),
        sum("of this tax", "bill_should_tax",
            "SUMIF([Order.Taxable];\"yes\";[Order.Should be billed])*N(bill_rate)",
            "Rounded once, on the taxable total."),
        sum("Difference", "bill_difference", "billed-bill_should", "Above 0: billed too much."),
        sum("Hold", "bill_hold",
            "SUM([Bills.Held])+SUM([Invoices.Tax kept back])+bill_tax_held+MAX(0;cause_totals)",
            "Overcharges beyond what passes, with the tax on them."),
        sum("Pay", "bill_pay", "billed-bill_hold", ""),
        hidden("Rows without formulas", "bill_bare",
               "SUMPRODUCT(([Bills.Code]&[Bills.Item]&[Bills.Amount]<>\"\")*([Bills.Check]=\"\"))+"
               "SUMPRODUCT(([Order.Code]<>\"\")*([Order.Check]=\"\"))"),
        hidden("Rows that cannot be read", "bill_unread",
               countOf("Order.Check", "NO") + "+" + countOf("Tickets.Check", "NO") +
                   "+COUNTIF([Bills.State];\"unread\")+" + countOf("Invoices.Check", "NO: cannot")),
        {.label = "Verdict", .name = "bill_check", .kind = Kind::Verdict, .format = show::general},
    };
    judge(verdict, "bill_check",
          {{"SUMPRODUCT([Bills.Code]&[Bills.Item]&[Bills.Amount]<>\"\")=0", "\"CHECK: no invoice yet\""},
           {"NOT(ISNUMBER(bill_rate))", "\"NO: tax.material on Rules is not a share: 7.25 % is 0.0725\""},
           {"SUMPRODUCT([Order.Code]<>\"\")=0", "\"NO: no order to compare with\""},
           {"bill_bare>0",
            "\"NO: hold everything: an inserted row has no formulas: copy a whole row into it\""},
           {"bill_unread>0", "\"NO: hold everything: a row of order, tickets or invoices cannot be read\""},
           {"ABS(cause_sum-bill_difference)>0.004", "\"NO: the causes do not add up\""},
           {"bill_hold>0",
            "\"NO: hold \"&TEXT(bill_hold;\"#,##0.00\")&\", pay \"&TEXT(bill_pay;\"#,##0.00\")"}},
          "\"OK: pay \"&TEXT(bill_pay;\"#,##0.00\")");
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
              "Billed in another unit than ordered: ton for yard, stick for length."),
        whole("Billed twice", "cause_twice", {"billed twice"},
              "The same line again, on this or another invoice."),
        whole("Not ordered", "cause_unordered", {"not ordered"}, "The code is not on the order."),
        whole("Surcharge", "cause_surcharge", {"surcharge"}, "A charge that was not agreed."),
        cause("Substitution", "cause_substitution", "Substitution",
              "Another product stands for the one ordered, at another price."),
        whole("Unclear", "cause_unclear", {"no code", "unclear"},
              "No code, or no quantity or price: ask the supplier."),
        sum("Delivered, not billed", "cause_unbilled", "SUM([Order.Not billed yet])",
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
    const auto taxed = [](const std::string& column) {
        return "SUMIFS([Bills." + column + "];[Bills.Invoice];[Invoice];[Bills.Taxed read];1)";
    };
    invoices.columns = {
        {.heading = "Invoice", .kind = Kind::Permit, .width = 34},
        {.heading = "Check", .kind = Kind::Verdict, .width = 60, .wrapped = true},
        {.heading = "Supplier", .kind = Kind::Permit, .width = 46},
        {.heading = "Note", .kind = Kind::Permit, .width = 56, .wrapped = true},
        {.heading = "Date", .kind = Kind::Permit, .format = show::date, .width = 22},
        {.heading = "Tax", .kind = Kind::Measured, .format = show::number(2), .width = 20},
        {.heading = "Total",
         .kind = Kind::Measured,
         .format = show::number(2),
         .width = 20,
         .note = "Total as billed. Blank: lines + tax."},
        money("Lines", "IF([Invoice]=\"\";\"\";ROUND(SUMIF(" + ofInvoice + "[Bills.Amount read]);2))"),
        money("Tax due", "IF([Invoice]=\"\";\"\";ROUND(" + taxed("Amount read") + "*N(bill_rate);2))",
              "Rate x taxable lines as billed, rounded once.", 26),
        money("Tax off", "IF([Invoice]=\"\";\"\";ROUND(N([Tax])-[Tax due];2))", "", 18),
        money("Total off",
              "IF([Invoice]=\"\";\"\";IF(ISNUMBER([Total]);ROUND([Total]-[Lines]-N([Tax]);2);0))", "", 22),
    };
    // Tax is rounded once on each invoice, so what is held of it is the tax billed less the tax on what is paid.
    for (Column column :
         {money("Tax passes", "IF([Invoice]=\"\";0;ROUND((" + taxed("Amount read") + "-" + taxed("Held") +
                                  ")*N(bill_rate);2))"),
          money("Tax kept back",
                "IF([Invoice]=\"\";0;MAX(0;ROUND(MIN([Tax due];N([Tax]))-[Tax passes];2)))")}) {
        column.helper = true;
        invoices.columns.push_back(column);
    }
    judge(invoices, "Check",
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
          "\"OK\"");

    Table bills;
    bills.name = "Bills";
    bills.rows = size.bills;
    bills.columns = {
        {.heading = "Invoice", .kind = Kind::Permit, .width = 34},
        {.heading = "Check", .kind = Kind::Verdict, .width = 60, .wrapped = true},
        {.heading = "Code",
         .kind = Kind::Measured,
         .width = 46,
         .note = "The order's code, or the supplier's own number."},
        {.heading = "Item", .kind = Kind::Measured, .width = 56, .wrapped = true},
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
        money(
            "Difference",
            "IF([State]=\"\";\"\";ROUND([Arithmetic]+[Price part]+[Substitution]+[Unit mix-up]+[Not delivered]+"
            "[Credit not given]+[Quantity part]+[Whole line];2))",
            "Billed too much on this line; the difference of a whole code stands on its first line."),
    };
    for (const Column& column : billWorkings()) bills.columns.push_back(column);
    judge(bills, "Check",
          ownErrors({"Invoice", "Code", "Item", "Quantity", "Unit", "Price", "Amount", "Stands for"}) +
              Cases{{"[Invoice]&[Code]&[Item]&[Quantity]&[Price]&[Amount]=\"\"", "\"\""},
                    {"NOT(OR(ISBLANK([Amount]);ISNUMBER([Amount])))",
                     "\"NO: the amount is not a number: \"&[Amount]"},
                    {"NOT(ISNUMBER([Amount read]))",
                     "\"NO: no amount, and no quantity and price to work it out\""},
                    {"[Code]=\"\"", "\"NO: no code: which line of the order is it?\""},
                    {"[Invoice]=\"\"", "\"NO: which invoice?\""},
                    {"COUNTIF([Invoices.Invoice];[Invoice])=0",
                     "\"NO: invoice \"&[Invoice]&\" is not in the list above\""},
                    {"AND([Stands for]<>\"\";COUNTIF([Order.Code];[Stands for])=0)",
                     "\"NO: \"&[Stands for]&\" is not on the order\""},
                    {"[Held]>0", "\"NO: \"&TEXTJOIN(\"; \";1;[Told 1];[Told 2])"},
                    {"[Difference]>0", "\"OK: \"&TEXT([Difference];\"0.00\")&\" too much, passes\""},
                    {"[Difference]<0", "\"OK: \"&TEXT(-[Difference];\"0.00\")&\" too little\""}},
          "\"OK\"");

    Table tickets;
    tickets.name = "Tickets";
    tickets.rows = size.bills;
    tickets.columns = {
        {.heading = "Ticket", .kind = Kind::Permit, .width = 34},
        {.heading = "Check", .kind = Kind::Verdict, .width = 26, .wrapped = true},
        {.heading = "Code",
         .kind = Kind::Measured,
         .width = 46,
         .note = "The order's code; what stands for another is written under the code ordered."},
        {.heading = "Item", .kind = Kind::Measured, .width = 56, .wrapped = true},
        {.heading = "Quantity",
         .kind = Kind::Measured,
         .format = show::general,
         .width = 22,
         .note =
             "Delivered, in the order's unit; tons for yards where the order has the product's tons a yard."},
        {.heading = "Unit", .kind = Kind::Measured, .width = 20},
        {.heading = "Returned",
         .kind = Kind::Measured,
         .format = show::general,
         .width = 20,
         .note = "Taken back for credit, in the order's unit; not negative."},
        {.heading = "Date", .kind = Kind::Permit, .format = show::date, .width = 22},
    };
    for (const Column& column : ticketWorkings()) tickets.columns.push_back(column);
    judge(
        tickets, "Check",
        ownErrors({"Code", "Item", "Quantity", "Unit", "Returned", "Date"}) +
            Cases{
                {"[Ticket]&[Code]&[Item]&[Quantity]&[Returned]=\"\"", "\"\""},
                {"[Code]=\"\"", "\"NO: no code\""},
                {"AND(ISBLANK([Quantity]);ISBLANK([Returned]))", "\"NO: no quantity\""},
                {"NOT(OR(ISBLANK([Quantity]);ISNUMBER([Quantity])))", "\"NO: not a number: \"&[Quantity]"},
                {"NOT(OR(ISBLANK([Returned]);ISNUMBER([Returned])))", "\"NO: not a number: \"&[Returned]"},
                {"OR(N([Quantity])<0;N([Returned])<0)", "\"NO: negative; write returns under Returned\""},
                {"NOT(OR(ISBLANK([Date]);ISNUMBER([Date])))", "\"NO: not a date: \"&[Date]"},
                {"NOT(ISNUMBER([Order row]))", "\"CHECK: not ordered\""},
                {"[Times]<>1",
                 "\"OK: \"&TEXT([Quantity read];\"0.00\")&\" \"&INDEX([Order.Unit];[Order row])&\" as ordered\""},
                {"AND([Unit]<>\"\";LOWER(TRIM([Unit]))<>LOWER(TRIM(INDEX([Order.Unit];[Order row]))))",
                 "\"NO: ordered by \"&INDEX([Order.Unit];[Order row])"}},
        "\"OK\"");

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
    sheet.widths = {34, 58, 46, 46};
    return sheet;
}

}  // namespace trenchbook::sheets
