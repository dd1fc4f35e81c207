// The order as its supplier reads it: sender, where it goes, lines with his own item numbers, what they come to. Of an
// order from several suppliers it shows the lines of the one who is named on Order. Native formulas only.
#include "papers/order_paper.h"

#include "buying/money.h"
#include "papers/owner_words.h"

namespace trenchbook::sheets {
namespace {

std::string day(const char* name) { return "TEXT(" + std::string(name) + ";\"YYYY-MM-DD\")"; }

}  // namespace

Sheet orderPaperSheet(const JobSize& size) {
    Paragraphs head;
    head.span = 7;
    head.large = true;
    head.lines = {
        "=\"Purchase order \"&order_number",
        "=IF(LEFT(order_check;2)=\"NO\";\"NOT READY TO SEND: see Ready? on Order.\";\"\")",
        "=\"To: \"&IF(order_for=\"\";order_supplier;order_for)",
        "=\"Issued on \"&IF(ISNUMBER(order_date);" + day("order_date") +
            ";\"__________\")&IF(ISNUMBER(order_deliver);\".   Deliver on \"&" + day("order_deliver") +
            ";\"\")&\".\"",
        "=IF(order_place&job_site=\"\";\"\";\"Deliver to: \"&TEXTJOIN(\", \";1;job_site;order_place))",
        "=IF(job_name=\"\";\"\";\"For: \"&job_name)",
    };
    const auto column = [](const char* heading, double width, bool centred = false) {
        return BlockColumn{.heading = heading,
                           .shown = std::string("=\"") + heading + "\"",
                           .width = width,
                           .centred = centred,
                           .wrapped = true};
    };
    const auto money = [](const char* heading, double width) {
        return BlockColumn{.heading = heading,
                           .shown = std::string("=\"") + heading + "\"",
                           .format = show::money,
                           .width = width};
    };
    Block lines{
        .name = "order_paper_lines",
        .formula =
            "IF(order_shown;CHOOSE({1;2;3;4;5;6;7};[Order.Their number]&\"\";[Order.Code]&\"\";"
            "[Order.Item]&\"\";[Order.Quantity];[Order.Unit]&\"\";[Order.Price];[Order.Amount]);\"\")",
        .rows = size.orders + 2,
        .columns = {column("Your number", 23), column("Our code", 43), column("Item", 53),
                    column("Quantity", 18, true), column("Unit", 18), money("Price", 14),
                    money("Amount", 17)}};
    Paragraphs sums;
    sums.span = 7;
    sums.lines = {
        "=IF(ISNUMBER(order_paper_tax);\"Goods and charges $ \"&TEXT(order_paper_sum;\"#,##0.00\")&\", sales tax $ \"&TEXT(order_paper_tax;\"#,##0.00\")&\", in all $ \"&TEXT(order_paper_sum+order_paper_tax;\"#,##0.00\")&\".\";\"\")",
        "=\"Please put the number of this order on every ticket and invoice, and tell us before you deliver anything else or at another price.\"",
        "=IF(sender_name=\"\";\"\";\"Ordered by \"&sender_name&\": ______________________________     Date: ______________\")",
    };
    Sheet sheet;
    sheet.name = "Purchase order";
    sheet.title = "=letter_name";
    sheet.purpose = "=letter_line";
    sheet.parts = {head, lines, sums};
    sheet.widths = {23, 46, 53, 15, 18, 14, 17};
    sheet.landscape = false;
    sheet.trueSize = sheet.paper = sheet.letterhead = true;
    return sheet;
}

}  // namespace trenchbook::sheets
