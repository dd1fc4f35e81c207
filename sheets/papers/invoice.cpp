// The invoice to the owner, from Account: what was agreed, what changed, what was paid, what is due. It says why when it
// cannot be sent. Native formulas only.
#include "buying/money.h"
#include "papers/owner_words.h"

namespace trenchbook::sheets {
namespace {

// The cell of `column` in the row that is number `count` among those where `condition` (over the whole column) holds.
std::string nth(const std::string& count, const std::string& condition, const std::string& column) {
    return "IFERROR(INDEX([" + column + "];SUMPRODUCT(SMALL(IF(" + condition + ";ROW([" + column +
           "])-MIN(ROW([" + column + "]))+1;\"\");" + count + ")));\"\")";
}
// Lines beside a date and an amount; those of a whole table's rows close up.
Table listed(const char* name, int rows, const char* amount, const std::string& what, const std::string& date,
             const std::string& dollars) {
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
    };
    return table;
}
// What stands in an empty cell of another sheet is nothing, not 0.
std::string unlessBlank(const std::string& formula) { return "IF(" + formula + "=0;\"\";" + formula + ")"; }

}  // namespace

Sheet invoiceSheet(const JobSize&) {
    using namespace words;
    const std::string signedOnes = "[Changes.Signed]=\"yes\"", received = "ISNUMBER([Payments.Paid])";
    const auto ofChange = [&](const char* column) {
        return nth("[#]-2", signedOnes, std::string("Changes.") + column);
    };
    const auto ofPayment = [&](const char* column) {
        return nth("[#]-1", received, std::string("Payments.") + column);
    };
    const Table work =
        listed("Invoice lines", 14, "Amount",
               "IF([#]=2;\"Drainage work as agreed\";" + unlessBlank(ofChange("What")) + ")",
               "IF([#]=2;IF(ISNUMBER(agreed_date);agreed_date;\"\");" + unlessBlank(ofChange("Date")) + ")",
               "IF([#]=2;IF(ISNUMBER(agreed_price);agreed_price;\"\");" + ofChange("Amount") + ")");
    const Table paid = listed("Invoice payments", 14, "Paid",
                              unlessBlank(ofPayment("What")) + "&IF(" + ofPayment("How") + "<>\"\";\", \"&" +
                                  ofPayment("How") + ";\"\")",
                              unlessBlank(ofPayment("Date")), ofPayment("Paid"));

    const auto missing = [](const std::string& condition, const std::string& words) {
        return "IF(" + condition + ";\"" + words + "\";\"\")";
    };
    const std::string notReady = joined(
        "\"; \"", {missing("sender_name=\"\"", "our own name is missing on Account"),
                   missing("invoice_number=\"\"", "the invoice's number is missing on Account"),
                   missing("NOT(ISNUMBER(invoice_date))", "the invoice's date is missing on Account"),
                   missing("owner=\"\"", "the owner is missing on Job"),
                   missing("job_site=\"\"", "the site is missing on Job"),
                   "IF(LEFT(account_check;2)=\"NO\";MID(account_check;5;200);\"\")",
                   missing("ABS(SUM([Invoice lines.Amount])-SUM([Invoice payments.Paid])-due_now)>0.004",
                           "the lines here do not add up to what Account says is due")});
    Paragraphs head;
    head.span = 3;
    head.lines = {
        "=IF(" + notReady + "=\"\";\"\";\"NOT READY TO SEND: \"&" + notReady + ")",
        "=sender_name&IF(sender_address=\"\";\"\";CHAR(10)&sender_address)",
        "=\"Invoice \"&invoice_number&IF(ISNUMBER(invoice_date);\" of \"&TEXT(invoice_date;\"YYYY-MM-DD\");\"\")",
        "=\"For \"&owner&CHAR(10)&\"Work at \"&job_site",
    };
    Paragraphs workHeading, paidHeading, due;
    workHeading.heading = "The work";
    paidHeading.heading = "Received, with thanks";
    due.heading = "What is due";
    workHeading.span = paidHeading.span = due.span = 3;
    const std::string asked =
        "\"Please pay $ \"&TEXT(due_now;\"#,##0.00\")&IF(AND(ISNUMBER(invoice_date);ISNUMBER(days_to_pay));\", until \"&TEXT(invoice_date+days_to_pay;\"YYYY-MM-DD\");\"\")&\".\"&"
        "IF(how_to_pay=\"\";\"\";CHAR(10)&how_to_pay)";
    due.lines = {
        "=IF(" + notReady + "<>\"\";\"Not known yet.\";IF(due_now>0.004;" + asked +
            ";IF(due_now<-0.004;\"Nothing. \"&TEXT(-due_now;\"#,##0.00\")&\" more was paid than was due and will be sent back.\";\"Nothing: all is paid. Thank you.\")))",
        "=IF(COUNTIF([Changes.Signed];\"yes\")=0;\"\";\"Changes of the work are those that you signed.\")",
    };

    Sheet sheet;
    sheet.name = "Invoice";
    sheet.title = "Invoice";
    sheet.purpose = "For drainage work.";
    sheet.parts = {head, workHeading, work, paidHeading, paid, due};
    sheet.widths = {118, 30, 38};
    sheet.landscape = false;
    return sheet;
}

}  // namespace trenchbook::sheets
