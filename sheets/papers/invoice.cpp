// The invoice to the owner, from Account: what was agreed, what changed, what was paid, what is due. It says why when it
// cannot be sent. Native formulas only.
#include "buying/money.h"

namespace trenchbook::sheets {
namespace {

// Lines beside a date and an amount; those of a whole table's rows close up.
Table listed(const char* name, int rows, const char* amount, const std::string& what, const std::string& date,
             const std::string& dollars, const std::string& condition, const std::string& source,
             const std::string& count) {
    Table table;
    table.name = name;
    table.rows = rows;
    table.total = true;
    table.columns = {
        {.heading = "What", .format = show::general, .width = 118, .formula = what, .wrapped = true},
        {.heading = "Date", .format = show::date, .width = 30, .formula = date, .centred = true},
        {.heading = amount,
         .format = show::money,
         .measure = Measure::Dollars,
         .width = 38,
         .formula = dollars},
        // Where the line with this number stands among those that count.
        {.heading = "Row",
         .format = show::general,
         .width = 20,
         .formula = "IFERROR(SUMPRODUCT(SMALL(IF(" + condition + ";ROW([" + source + "])-MIN(ROW([" + source +
                    "]))+1;\"\");" + count + "));\"\")",
         .helper = true},
    };
    return table;
}
// What stands in an empty cell of another sheet is nothing, not 0.
std::string unlessBlank(const std::string& formula) { return "IF(" + formula + "=0;\"\";" + formula + ")"; }

}  // namespace

Sheet invoiceSheet(const JobSize&) {
    const std::string signedOnes = "[Changes.Signed]=\"yes\"", received = "ISNUMBER([Payments.Paid])";
    const auto ofChange = [&](const char* column) {
        return "IFERROR(INDEX([Changes." + std::string(column) + "];[Row]);\"\")";
    };
    const auto ofPayment = [&](const char* column) {
        return "IFERROR(INDEX([Payments." + std::string(column) + "];[Row]);\"\")";
    };
    const Table work =
        listed("Invoice lines", 14, "Amount",
               "IF([#]=2;\"Drainage work as agreed\";" + unlessBlank(ofChange("What")) + ")",
               "IF([#]=2;IF(ISNUMBER(agreed_date);agreed_date;\"\");" + unlessBlank(ofChange("Date")) + ")",
               "IF([#]=2;IF(ISNUMBER(agreed_price);agreed_price;\"\");" + ofChange("Amount") + ")",
               signedOnes, "Changes.Signed", "[#]-2");
    const Table paid =
        listed("Invoice payments", 14, "Paid",
               unlessBlank(ofPayment("What")) + "&IF(" + ofPayment("How") + "<>\"\";\", \"&" +
                   ofPayment("How") + ";\"\")",
               unlessBlank(ofPayment("Date")), ofPayment("Paid"), received, "Payments.Paid", "[#]-1");

    Paragraphs head;
    head.span = 3;
    head.lines = {
        "=\"Invoice\"",
        "=IF(invoice_missing=\"\";\"\";\"NOT READY TO SEND: \"&invoice_missing)",
        "=\"Invoice \"&invoice_number&IF(ISNUMBER(invoice_date);\" of \"&TEXT(invoice_date;\"YYYY-MM-DD\");\"\")",
        "=\"For \"&owner&CHAR(10)&\"Work at \"&job_site",
    };
    head.large = true;
    Paragraphs workHeading, paidHeading, due, close;
    workHeading.heading = "The work";
    paidHeading.heading = "Received, with thanks";
    due.heading = "What is due";
    workHeading.span = paidHeading.span = due.span = close.span = 3;
    due.large = true;
    due.linesHigh = 2;
    due.lines = {
        "=IF(invoice_missing<>\"\";\"Not known yet.\";IF(due_now>0.004;said_due;IF(due_now<-0.004;\"Nothing. \"&TEXT(-due_now;\"#,##0.00\")&\" more was paid than was due and will be sent back.\";\"Nothing: all is paid. Thank you.\")))",
        "=IF(AND(invoice_missing=\"\";due_now>0.004);how_to_pay&\"\";\"\")",
        "=IF(AND(invoice_missing=\"\";N(due_retained)>0);\"Kept back as agreed and not due yet: $ \"&TEXT(due_retained;\"#,##0.00\")&\".\";\"\")"};
    close.lines = {
        "=IF(COUNTIF([Changes.Signed];\"yes\")=0;\"\";\"Changes of the work are those that you signed.\")",
    };

    Sheet sheet;
    sheet.name = "Invoice";
    sheet.title = "=letter_name";
    sheet.purpose = "=letter_line";
    sheet.parts = {head, due, workHeading, work, paidHeading, paid, close};
    sheet.widths = {118, 30, 38};
    sheet.landscape = false;
    sheet.trueSize = sheet.paper = sheet.letterhead = true;
    return sheet;
}

}  // namespace trenchbook::sheets
