// The order as it was issued: values that do not move when Runs does. Native formulas only.
#include "buying/bill_lines.h"

namespace trenchbook::sheets {

Sheet orderSheet(const JobSize& size) {
    const auto permit = [](const char* label, const char* name, Format format, const char* note) {
        return Field{.label = label, .name = name, .kind = Kind::Permit, .format = format, .note = note};
    };
    std::string others;
    for (const std::string& group : notOrdered) others += (others.empty() ? "\"" : ";\"") + group + "\"";
    const auto forgottenOn = [&](const std::string& table) {
        return "SUMPRODUCT(([" + table + ".Code]<>\"\")*ISNA(MATCH([" + table + ".Group];{" + others +
               "};0))*(COUNTIF([Order.Code];[" + table + ".Code])=0))";
    };
    Form head;
    head.name = "Order head";
    head.noteSpan = 6;
    head.fields = {
        permit("Order", "order_number", show::text, "Number that tickets and invoices refer to."),
        permit("Supplier", "order_supplier", show::text, ""),
        permit("Issued on", "order_date", show::date,
               "The lines below are of this day; they stay as they are when the job changes."),
        permit("Deliver on", "order_deliver", show::date, ""),
        permit("Deliver to", "order_place", show::text,
               "Where the truck can stand and where bulk goods are dropped."),
        {.label = "Goods and charges",
         .name = "order_sum",
         .kind = Kind::Computed,
         .format = show::money,
         .measure = Measure::Dollars,
         .value = "=ROUND(SUM([Order.Amount]);2)"},
        {.label = "Sales tax",
         .name = "order_tax",
         .kind = Kind::Computed,
         .format = show::money,
         .measure = Measure::Dollars,
         .value =
             "=IF(AND(ISNUMBER({tax.material});N({tax.material})>=0;N({tax.material})<0.5);ROUND(SUMIF([Order.Taxable];\"yes\";[Order.Amount])*{tax.material};2);\"\")",
         .note = "Rounded once, on the taxable total."},
        {.label = "Order in all",
         .name = "order_total",
         .kind = Kind::Computed,
         .format = show::money,
         .measure = Measure::Dollars,
         .value = "=IF(ISNUMBER(order_tax);ROUND(order_sum+order_tax;2);\"\")"},
        {.label = "Paper for",
         .name = "order_for",
         .kind = Kind::Permit,
         .validity = chosenFrom("[Order.Supplier]"),
         .note =
             "Whose lines the sheet Purchase order shows; blank: all. Papers are made for each supplier."},
        hidden("Goods on the paper", "order_paper_sum",
               "SUMPRODUCT(order_shown*IFERROR(1*[Order.Amount];0))"),
        hidden("Its taxable goods", "order_paper_taxable",
               "SUMPRODUCT(order_shown*([Order.Taxable]=\"yes\")*IFERROR(1*[Order.Amount];0))"),
        hidden("Its tax", "order_paper_tax",
               "IF(ISNUMBER(order_tax);ROUND(order_paper_taxable*{tax.material};2);\"\")"),
        hidden("Codes of Takeoff not ordered", "order_forgotten_counted", forgottenOn("Takeoff")),
        hidden("Codes of Additions not ordered", "order_forgotten_added", forgottenOn("Additions")),
        hidden("Codes not ordered", "order_forgotten",
               withEngine("order_forgotten_counted+order_forgotten_added")),
        {.label = "Ready?", .name = "order_check", .kind = Kind::Verdict, .format = show::general},
    };
    judge(head, "order_check",
          {{"SUMPRODUCT([Order.Code]<>\"\")=0", "\"CHECK: nothing is ordered yet\""},
           {countOf("Order.Check", "NO") + ">0",
            "\"NO: lines that cannot stand like this: \"&" + countOf("Order.Check", "NO")},
           {"SUMPRODUCT(([Order.Code]<>\"\")*([Order.Check]=\"\"))>0",
            "\"NO: an inserted row has no formulas: copy a whole row into it\""},
           {"NOT(ISNUMBER(order_tax))", "\"NO: tax.material on Rules is not a share: 7.25 % is 0.0725\""},
           {"OR(order_number=\"\";order_supplier=\"\";NOT(ISNUMBER(order_date)))",
            "\"NO: number, supplier or date is missing\""},
           {"AND(ISNUMBER(quote_date);order_date<N(quote_date))",
            "\"CHECK: issued before the quote's date on Job\""},
           {"AND(ISNUMBER(quote_date);order_date>N(quote_date)+{quote.days})",
            "\"CHECK: issued after the quoted price held: ask the supplier for prices of the day\""},
           {"IFERROR(N(order_forgotten)>0;FALSE())",
            "\"CHECK: \"&" + saidCount("order_forgotten", "code on Takeoff is not ordered",
                                       "codes on Takeoff are not ordered")},
           {countOf("Order.Check", "CHECK") + ">0",
            "\"CHECK: lines that differ from Takeoff: \"&" + countOf("Order.Check", "CHECK")},
           {"NOT(engine_there)", "\"CHECK: as issued; not compared with Takeoff without the add-in\""}},
          "\"OK\"");

    const std::string now =
        "IFERROR(SUMIF([Takeoff.Code];[Code];[Takeoff.Order])+SUMIF([Additions.Code];[Code];[Additions.Order]);\"\")";
    const std::vector<std::string> inputs = {"Code", "Item", "Quantity", "Unit", "Price", "Taxable", "Sort"};
    Table table;
    table.name = "Order";
    table.rows = size.orders;
    table.total = true;
    table.columns = {
        {.heading = "Code",
         .kind = Kind::Measured,
         .width = 46,
         .note = "As on Takeoff; tickets and invoices are matched by it. Once only."},
        {.heading = "Item", .kind = Kind::Measured, .width = 70, .wrapped = true},
        {.heading = "Check", .kind = Kind::Verdict, .width = 60, .wrapped = true},
        {.heading = "Quantity", .kind = Kind::Measured, .format = show::general, .width = 20},
        {.heading = "Unit",
         .kind = Kind::Measured,
         .width = 24,
         .note = "What one pack is: stick, piece, ton. Bulk goods: ton or cu yd (metric: t or m3)."},
        {.heading = "Price", .kind = Kind::Measured, .format = show::number(2), .width = 20},
        {.heading = "Taxable",
         .kind = Kind::Measured,
         .width = 17,
         .validity = choice({"yes", "no"}),
         .centred = true},
        {.heading = "Sort",
         .kind = Kind::Measured,
         .width = 18,
         .validity = choice({"goods", "charge"}),
         .note = "charge: agreed, but on no delivery ticket: delivery, deposit for pallets. Blank: goods."},
        {.heading = "Supplier", .kind = Kind::Measured, .width = 44, .note = "Who sells this line."},
        {.heading = "Their number",
         .kind = Kind::Measured,
         .width = 30,
         .note = "His own item number; bills may have it in place of the code."},
        {.heading = "Tons a yard",
         .kind = Kind::Measured,
         .format = show::number(2),
         .width = 22,
         .validity = between(0.1, 5),
         .note =
             "Bulk goods: short tons in a cu yd (metric: t in a m3), so that a ticket by the other unit is read."},
        {.heading = "Amount",
         .format = show::money,
         .width = 24,
         .formula =
             "IF(AND(ISNUMBER([Quantity]);N([Quantity])>=0;ISNUMBER([Price]));ROUND([Quantity]*[Price];2);\"\")"},
        {.heading = "Takeoff now",
         .format = show::general,
         .width = 24,
         .formula = "IF(OR([Code]=\"\";NOT(engine_there));\"\";" + now + ")",
         .note = "Packs that Takeoff asks for today."},
    };
    for (const Column& column : orderWorkings()) table.columns.push_back(column);
    judge(table, "Check",
          ownErrors(inputs) +
              std::vector<std::pair<std::string, std::string>>{
                  {"[Code]&[Item]&[Quantity]&[Price]=\"\"", "\"\""},
                  {"[Code]=\"\"", "\"NO: the code is missing\""},
                  {"COUNTIF([Order.Code];[Code])>1", "\"NO: this code is ordered in two rows; add them up\""},
                  {"NOT(ISNUMBER([Quantity]))", "\"NO: the quantity is missing or not a number\""},
                  {"[Quantity]<0", "\"NO: a negative quantity\""},
                  {"NOT(ISNUMBER([Price]))", "\"NO: the price is missing or not a number: \"&[Price]"},
                  {"[Price]<0", "\"NO: a negative price\""},
                  {"[Unit]=\"\"", "\"NO: the unit is missing\""},
                  {"AND([Taxable]<>\"yes\";[Taxable]<>\"no\")", "\"NO: Taxable is yes or no\""},
                  {"NOT(ISNUMBER([Takeoff now]))", "\"OK\""},
                  {"[Takeoff now]=0", "\"CHECK: not on Takeoff\""},
                  {"[Takeoff now]<>[Quantity]", "\"CHECK: Takeoff now asks for \"&[Takeoff now]"}},
          "\"OK\"");
    Paragraphs sender;
    sender.span = 3;
    sender.linesHigh = 2;
    sender.lines = {"=\"From: \"&TEXTJOIN(\", \";1;sender_name;sender_address)"};
    Sheet sheet;
    sheet.name = "Order";
    sheet.title = "Order";
    sheet.purpose =
        "The order as issued: Takeoff's lines as values of that day (jobbook order copies them). Bills are checked against this sheet.";
    sheet.parts = {sender, head, table};
    sheet.widths = {46, 70, 20, 24};
    return sheet;
}

}  // namespace trenchbook::sheets
