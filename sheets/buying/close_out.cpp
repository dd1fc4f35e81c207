// Estimate against actual, by cause, when the job is done. Native formulas and values typed or copied.
#include "buying/money.h"

namespace trenchbook::sheets {
namespace {

Column typed(const char* heading, double width, const char* note) {
    return {
        .heading = heading, .kind = Kind::Measured, .format = show::number(2), .width = width, .note = note};
}
Column counted(const char* heading, double width, const std::string& formula, const char* note) {
    return {.heading = heading, .format = show::money, .width = width, .formula = formula, .note = note};
}

}  // namespace

Sheet closeOutSheet(const JobSize&) {
    const std::string read = "AND(ISNUMBER([Estimated amount]);ISNUMBER([Actual amount]))";
    const std::string split =
        "AND(" + read +
        ";ISNUMBER([Estimated quantity]);ISNUMBER([Actual quantity]);N([Estimated quantity])>0)";
    Table table;
    table.name = "Close-out";
    table.rows = 70;
    table.total = true;
    table.columns = {
        {.heading = "What",
         .kind = Kind::Measured,
         .width = 58,
         .note = "Item of Takeoff, work of Labor, or a whole line of Quote.",
         .wrapped = true},
        {.heading = "Check", .kind = Kind::Verdict, .width = 52, .wrapped = true},
        {.heading = "Group",
         .kind = Kind::Measured,
         .width = 26,
         .validity = choice({"materials", "tax", "delivery", "labor", "equipment", "disposal", "permits",
                             "subcontract", "call-back"})},
        typed("Estimated quantity", 22, "Packs or hours; blank for a lump sum."),
        counted("Estimated amount", 26, "",
                "As it stood on Quote when the job was sold: a value, not a formula."),
        typed("Actual quantity", 22, "Bought or worked."),
        counted("Actual amount", 26, "", "What it cost, from bills and time sheets."),
        counted("Difference", 26, "IF(" + read + ";ROUND([Actual amount]-[Estimated amount];2);\"\")",
                "Above 0: dearer than estimated."),
        counted(
            "By price", 26,
            "IF(" + split +
                ";ROUND([Actual amount]-[Actual quantity]*[Estimated amount]/[Estimated quantity];2)+0;IF(" +
                read + ";[Difference];\"\"))",
            "Actual amount - actual quantity x estimated price. Unit prices are not rounded on the way."),
        counted("By quantity", 26,
                "IF(" + split + ";ROUND([Difference]-[By price];2)+0;IF(" + read + ";0;\"\"))",
                "(Actual - estimated quantity) x estimated price."),
        {.heading = "Cause",
         .kind = Kind::Measured,
         .width = 30,
         .validity = choice({"price", "waste", "scope", "production", "estimate", "weather", "error"}, false),
         .note =
             "Why: price, waste, scope (the job changed), production (slower or faster), estimate, weather, error."},
        {.heading = "Code",
         .kind = Kind::Measured,
         .width = 46,
         .note = "As on Takeoff; bills are matched by it, and the ledger keeps what was bought by it."},
    };
    judge(
        table, "Check",
        ownErrors(
            {"What", "Group", "Estimated quantity", "Estimated amount", "Actual quantity", "Actual amount"}) +
            Cases{
                {"[What]&[Group]&[Estimated amount]&[Actual amount]=\"\"", "\"\""},
                {"ISBLANK([Estimated amount])", "\"NO: the estimate is missing; 0 where it was forgotten\""},
                {"NOT(ISNUMBER([Estimated amount]))",
                 "\"NO: the estimate is not a number: \"&[Estimated amount]"},
                {"ISBLANK([Actual amount])", "\"CHECK: not known yet; left out of the differences\""},
                {"NOT(ISNUMBER([Actual amount]))",
                 "\"NO: the actual amount is not a number: \"&[Actual amount]"},
                {"COUNTA([Estimated quantity];[Actual quantity])>COUNT([Estimated quantity];[Actual quantity])",
                 "\"NO: a quantity is not a number\""},
                {"N([Estimated quantity])<0", "\"NO: a negative quantity\""},
                {"[Group]=\"\"", "\"NO: the group is missing\""},
                {"AND(ABS([Difference])>0.1*ABS([Estimated amount]);[Cause]=\"\")",
                 "\"CHECK: more than a tenth off; what was the cause?\""}},
        "\"OK\"");
    for (Column& column : table.columns)
        if (column.heading == "Estimated amount" || column.heading == "Actual amount")
            column.kind = Kind::Measured;

    Table groups;
    groups.name = "Close-out groups";
    groups.total = true;
    groups.columns = {
        {.heading = "Group", .kind = Kind::Label, .width = 58},
        {.heading = "Open rows",
         .format = show::number(0),
         .width = 26,
         .formula = "COUNTIFS([Close-out.Group];[Group];[Close-out.Actual amount];\"=\")",
         .note = "Without an actual amount."},
        {.heading = "Rows",
         .format = show::number(0),
         .width = 22,
         .formula = "COUNTIF([Close-out.Group];[Group])"},
        counted("Estimate", 26, "ROUND(SUMIF([Close-out.Group];[Group];[Close-out.Estimated amount]);2)", ""),
        {.heading = "Share off",
         .format = show::percent(1),
         .width = 22,
         .formula = "IF([Estimate]=0;\"\";[Off]/[Estimate])",
         .note = "Difference / estimate."},
        counted("Actual", 26, "ROUND(SUMIF([Close-out.Group];[Group];[Close-out.Actual amount]);2)", ""),
        counted("Off", 26, "ROUND(SUMIF([Close-out.Group];[Group];[Close-out.Difference]);2)",
                "Rows with an actual amount only."),
        counted("Off by price", 26, "ROUND(SUMIF([Close-out.Group];[Group];[Close-out.By price]);2)", ""),
        counted("Off by quantity", 26, "ROUND(SUMIF([Close-out.Group];[Group];[Close-out.By quantity]);2)",
                ""),
    };
    for (const char* group : {"materials", "tax", "delivery", "labor", "equipment", "disposal", "permits",
                              "subcontract", "call-back"})
        groups.content.push_back({group});
    groups.rows = static_cast<int>(groups.content.size());

    Form result;
    result.name = "Close-out sums";
    result.heading = "What the job left";
    const auto money = [](const char* label, const char* name, const std::string& formula, const char* note) {
        return Field{.label = label,
                     .name = name,
                     .kind = Kind::Computed,
                     .format = show::money,
                     .measure = Measure::Dollars,
                     .value = "=" + formula,
                     .note = note};
    };
    result.fields = {
        money("Contract in all", "close_contract", "IF(ISNUMBER(agreed_price);due_contract;\"\")",
              "From Account: agreed price and signed changes."),
        money("Estimated cost", "close_estimate",
              "IF(COUNT([Close-out.Estimated amount])>0;ROUND(SUM([Close-out.Estimated amount]);2);\"\")",
              "As it was sold."),
        money("Actual cost", "close_cost",
              "IF(COUNT([Close-out.Actual amount])>0;ROUND(SUM([Close-out.Actual amount]);2);\"\")",
              "Of the rows that have one."),
        {.label = "Rows without an actual amount",
         .name = "close_open",
         .kind = Kind::Computed,
         .format = show::number(0),
         .value = "=SUM([Close-out groups.Open rows])"},
        money(
            "Left for overhead and profit", "close_left",
            "IF(AND(ISNUMBER(close_contract);ISNUMBER(close_cost);close_open=0);ROUND(close_contract-close_cost;2);\"\")",
            "Blank until every row has its cost."),
        {.label = "Margin",
         .name = "close_margin",
         .kind = Kind::Computed,
         .format = show::percent(1),
         .value = "=IF(AND(ISNUMBER(close_left);N(close_contract)>0);close_left/close_contract;\"\")"},
        money("Of the cost, call-backs", "close_callbacks",
              "ROUND(SUMIF([Close-out.Group];\"call-back\";[Close-out.Actual amount]);2)",
              "Second visits, booked against the job: group call-back, estimate 0, hours as quantity."),
        {.label = "Weather days",
         .name = "close_weather",
         .kind = Kind::Measured,
         .format = show::number(1),
         .validity = between(0, 365),
         .note = "Lost to weather; the ledger keeps them.",
         .unit = "days"},
        {.label = "Ready?", .name = "close_check", .kind = Kind::Verdict, .format = show::general},
    };
    judge(result, "close_check",
          {{countOf("Close-out.Check", "NO") + ">0",
            "\"NO: rows that cannot be read: \"&" + countOf("Close-out.Check", "NO")},
           notANumber("weather days", "close_weather"),
           {"COUNT([Close-out.Actual amount])=0", "\"CHECK: nothing is closed yet\""},
           {"NOT(ISNUMBER(close_contract))",
            "\"CHECK: no agreed price on Account: what is left is not known\""},
           {countOf("Close-out.Check", "CHECK") + ">0",
            "\"CHECK: rows still open: \"&" + countOf("Close-out.Check", "CHECK")},
           {"N(close_left)<0",
            "\"CHECK: the job cost \"&TEXT(-close_left;\"#,##0.00\")&\" more than its contract\""}},
          "\"OK\"");
    result.noteSpan = 6;
    Sheet sheet;
    sheet.name = "Close-out";
    sheet.title = "Close-out";
    sheet.purpose =
        "The estimate as it was sold, by command as values that stay; then what it really took, from bills and time sheets. Next time's prices and hours come from here.";
    sheet.parts = {result, groups, table};
    sheet.widths = {58, 44, 22, 26};
    return sheet;
}

}  // namespace trenchbook::sheets
