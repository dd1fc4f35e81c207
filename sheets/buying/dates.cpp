// Money in time: what the state lets one ask before the work, the days to cancel, when the work may start and what holds it, the
// steps of payment. Native formulas only; DEPOSIT.LIMIT, DAYS.CANCEL and START.DATE tell the same anywhere else.
#include <cstdio>

#include "buying/money.h"
#include "papers/owner_words.h"
#include "trenchbook/money/state_law.h"

namespace trenchbook::sheets {
namespace {

Field day(const char* label, const char* name, const std::string& formula, const char* note = "") {
    return {.label = label,
            .name = name,
            .kind = Kind::Computed,
            .format = show::date,
            .value = "=" + formula,
            .note = note};
}
Column typedDay(const char* heading, const char* note) {
    return {.heading = heading, .kind = Kind::Measured, .format = show::date, .width = 26, .note = note};
}

std::string digits(double value) {
    char text[32];
    std::snprintf(text, sizeof text, "%.15g", value);
    return text;
}
std::string digits(const std::optional<int>& value) { return value ? std::to_string(*value) : ""; }

const char* wordOf(SpecialOrders special) {
    if (special == SpecialOrders::Added) return "added";
    return special == SpecialOrders::IfGreater ? "where greater" : "";
}

std::string ofLaw(const char* column) { return "INDEX([States." + std::string(column) + "];law_row)"; }

Form law() {
    Form form;
    form.name = "Dates";
    form.heading = "What the law lets us ask, and when we may start";
    form.noteSpan = 5;
    form.fields = {
        {.label = "State",
         .name = "law_state",
         .kind = Kind::Kept,
         .format = show::text,
         .note = "Two letters, as in the table of states below."},
        {.label = "Goods ordered for this job alone",
         .name = "special_orders",
         .kind = Kind::Measured,
         .format = show::money,
         .measure = Measure::Dollars,
         .validity = between(0, 1000000),
         .note = "Some states let a deposit hold their cost."},
        hidden("Row of the state", "law_row",
               "IF(TRIM(law_state)=\"\";0;IFERROR(MATCH(TRIM(law_state);[States.State];0);0))"),
        hidden("Share of the state", "law_share", "IF(law_row>0;N(" + ofLaw("Share") + ");0)"),
        hidden("Amount of the state", "law_amount", "IF(law_row>0;N(" + ofLaw("Amount") + ");0)"),
        hidden("Above this price", "law_above", "IF(law_row>0;N(" + ofLaw("Above price") + ");0)"),
        // The limit holds for the price that is offered, too, before anything is signed.
        hidden("Price that the limit is of", "law_price",
               "IF(N(due_contract)>0;due_contract;N(price_total))"),
        hidden(
            "Limit without special orders", "law_plain",
            "IF(AND(law_share+law_amount>0;law_price>law_above);MIN(IF(law_share>0;law_share*law_price;9E9);IF(law_amount>0;law_amount;9E9));\"\")"),
        moneyField("Largest deposit of this state", "law_deposit",
                   "IF(ISNUMBER(law_plain);ROUNDDOWN(IF(" + ofLaw("Special orders") +
                       "=\"added\";law_plain+N(special_orders);IF(" + ofLaw("Special orders") +
                       "=\"where greater\";MAX(law_plain;N(special_orders));law_plain))+0.000001;2);\"\")",
                   "Blank where no limit of the state was read: ask. No advice; laws change."),
        {.label = "Section and text",
         .name = "law_says",
         .kind = Kind::Computed,
         .format = show::general,
         .value = "=IF(law_row=0;\"ask the state: nothing of it was read\";IF(" + ofLaw("Deposit, section") +
                  "=\"\";\"ask the state: nothing of it was read\";" + ofLaw("Deposit, section") + "))",
         .wide = true},
        day("Signed on", "law_signed", "IF(ISNUMBER(agreed_date);agreed_date;\"\")", "From Account."),
        day("Last day to cancel", "law_cancel",
            "IF(ISNUMBER(law_signed);WORKDAY.INTL(law_signed;{cancel.days};11;INDEX(form_Federal_holidays;0;2));\"\")",
            "Business days on Rules (cancel.days), Saturdays counted, Sundays and holidays not: 16 CFR 429.0(f), e-CFR of February 2021."),
        day("Work may start on", "start_day",
            "IF(OR(COUNT([Waits.Ready on])=0;waits_open>0);\"\";WORKDAY(MAX([Waits.Ready on])-1;1;[Holidays.Day]))",
            "First working day on which all that is waited for is over."),
        hidden("Waits without an end", "waits_open",
               "SUMPRODUCT(([Waits.What]<>\"\")*(1-ISNUMBER([Waits.Ready on])))"),
        {.label = "Held by",
         .name = "start_held",
         .kind = Kind::Computed,
         .format = show::general,
         .value =
             "=IF(ISNUMBER(start_day);INDEX([Waits.What];MATCH(MAX([Waits.Ready on]);[Waits.Ready on];0));\"\")",
         .wide = true},
        {.label = "Days on the job, if not as on Labor",
         .name = "crew_days_typed",
         .kind = Kind::Measured,
         .format = show::number(1),
         .validity = between(0, 365),
         .unit = "days"},
        day("Done by", "done_day",
            "IF(AND(ISNUMBER(start_day);N(crew_days)>0);WORKDAY(start_day-1;ROUNDUP(crew_days;0);[Holidays.Day]);\"\")",
            "Working days of the crew from the start, weather not counted."),
        hidden("Days on the job", "crew_days",
               "IF(ISNUMBER(crew_days_typed);crew_days_typed;IF(ISNUMBER(labor_days);labor_days;\"\"))"),
        {.label = "Ready?", .name = "dates_check", .kind = Kind::Verdict, .format = show::general},
    };
    judge(form, "dates_check",
          {{countOf("Steps.Check", "NO") + ">0", "\"NO: a step of payment cannot stand like this\""},
           {"COUNTA([Holidays.Day])>COUNT([Holidays.Day])", "\"NO: the day of a holiday is not a date\""},
           {"AND(TRIM(law_state)<>\"\";law_row=0)",
            "\"CHECK: nothing of \"&law_state&\" was read: ask the state\""},
           {"waits_open>0", "\"CHECK: the start is not known: something is not asked for\""},
           {"AND(ISNUMBER(done_day);ISNUMBER(ticket_until);N(ticket_until)<N(done_day))",
            "\"CHECK: the ticket ends on \"&TEXT(ticket_until;\"YYYY-MM-DD\")&\", before the work is done\""},
           {"NOT(ISNUMBER(law_signed))", "\"CHECK: not signed yet\""},
           {"NOT(ISNUMBER(law_deposit))", "\"CHECK: the state's largest deposit is not known: ask\""}},
          "\"OK\"");
    return form;
}

Table waits() {
    Table table;
    table.name = "Waits";
    table.rows = 8;
    table.columns = {
        {.heading = "What",
         .kind = Kind::Measured,
         .width = 66,
         .note = "What must be over before the first shovel: ticket, permit, association, delivery."},
        {.heading = "Check", .kind = Kind::Verdict, .width = 46, .wrapped = true},
        typedDay("Asked on", "Called, asked for, ordered; its day does not count."),
        {.heading = "Days",
         .kind = Kind::Measured,
         .format = show::number(0),
         .width = 20,
         .validity = between(0, 365),
         .note = "That it takes."},
        {.heading = "Counted",
         .kind = Kind::Measured,
         .width = 24,
         .validity = choice({"working", "calendar"}),
         .note = "working: Monday to Friday without holidays. Blank: working."},
        typedDay("Got on", "There since, or promised for; then the days do not count."),
        {.heading = "Ready on",
         .format = show::date,
         .width = 26,
         .formula =
             "IF([What]=\"\";\"\";IF(ISNUMBER([Got on]);[Got on];IF(AND(ISNUMBER([Asked on]);ISNUMBER([Days]));IF([Counted]=\"calendar\";[Asked on]+[Days];WORKDAY([Asked on];[Days];[Holidays.Day]));\"\")))"},
    };
    judge(table, "Check",
          ownErrors({"What", "Asked on", "Days", "Counted", "Got on"}) +
              Cases{{"AND([What]=\"\";COUNT([Asked on];[Days];[Got on])=0)", "\"\""},
                    {"[What]=\"\"", "IF(ISFORMULA([What]);\"\";\"NO: what is waited for?\")"},
                    {"NOT(OR([Asked on]=\"\";ISNUMBER([Asked on])))", "\"NO: not a date: \"&[Asked on]"},
                    {"NOT(OR([Got on]=\"\";ISNUMBER([Got on])))", "\"NO: not a date: \"&[Got on]"},
                    {"NOT(ISNUMBER([Ready on]))", "\"CHECK: not asked for yet, or its days are missing\""},
                    {"N([Days])<0", "\"NO: days are 0 or more\""},
                    {"AND(ISNUMBER([Got on]);ISNUMBER([Asked on]);N([Got on])<N([Asked on]))",
                     "\"CHECK: there before it was asked for?\""}},
          "\"OK\"");
    const auto dateOf = [](const std::string& name) {
        return "=IF(ISNUMBER(" + name + ");" + name + ";\"\")";
    };
    table.content = {
        {"The owner may cancel", dateOf("law_signed"), "", "", "=IF(ISNUMBER(law_cancel);law_cancel+1;\"\")"},
        {"Locate ticket (811)", dateOf("ticket_called"), "={ticket.wait}", "working", dateOf("ticket_from")},
        {"=IF(OR(outlet_permission=\"got\";outlet_permission=\"needs none\");\"\";\"Permission for the outlet\")"},
        {"=IF(has_hoa=\"yes\";\"Owners' association\";\"\")"},
        {"Goods on the lot", dateOf("order_date"), "", "", dateOf("order_deliver")},
    };
    return table;
}

Table steps() {
    Table table;
    table.name = "Steps";
    table.rows = 6;
    table.total = true;
    table.columns = {
        {.heading = "Step",
         .kind = Kind::Measured,
         .width = 66,
         .note =
             "Of payment: the first is the deposit. One row without share and fixed amount takes what is left."},
        {.heading = "Check", .kind = Kind::Verdict, .width = 46, .wrapped = true},
        {.heading = "Share",
         .kind = Kind::Measured,
         .format = show::percent(1),
         .width = 26,
         .validity = between(0, 1),
         .note =
             "Of the contract in all, signed changes included; of the price offered before it is signed."},
        {.heading = "Fixed",
         .kind = Kind::Measured,
         .format = show::number(2),
         .width = 20,
         .validity = between(0, 10000000),
         .note = "Dollars, in place of a share."},
        {.heading = "Amount",
         .format = show::money,
         .width = 24,
         .formula =
             "IF([Step]=\"\";\"\";IF(ISNUMBER([Named]);[Named];IF(COUNTIFS([Steps.Step];\"?*\";[Steps.Named];\"open\")=1;ROUND(law_price-SUM([Steps.Named]);2);\"\")))"},
        {.heading = "Due on",
         .kind = Kind::Measured,
         .format = show::date,
         .width = 26,
         .note = "As agreed."},
        {.heading = "Named",
         .format = show::number(2),
         .width = 24,
         .formula =
             "IF([Step]=\"\";\"\";IF(ISNUMBER([Fixed]);ROUND([Fixed];2);IF(ISNUMBER([Share]);ROUND([Share]*law_price;2);\"open\")))",
         .helper = true},
        {.heading = "Said",
         .format = show::general,
         .width = 24,
         .formula =
             "IF(ISNUMBER([Amount]);[Step]&\": \"&TEXT([Amount];\"#,##0.00\")&IF(ISNUMBER([Due on]);\" (\"&TEXT([Due on];\"YYYY-MM-DD\")&\")\";\"\");\"\")",
         .helper = true},
    };
    judge(table, "Check",
          ownErrors({"Step", "Share", "Fixed", "Due on"}) +
              Cases{{"[Step]&[Share]&[Fixed]=\"\"", "\"\""},
                    {"[Step]=\"\"", "\"NO: what is this payment for?\""},
                    {"COUNTA([Share];[Fixed])>COUNT([Share];[Fixed])", "\"NO: an amount is not a number\""},
                    {"COUNT([Share];[Fixed])=2", "\"NO: a share or a fixed amount, not both\""},
                    {"NOT(ISNUMBER([Amount]))", "\"NO: one step alone may take what is left\""},
                    {"[Amount]<0", "\"NO: the other steps come to more than the contract\""},
                    {"AND([#]=2;ISNUMBER(law_deposit);[Amount]>N(law_deposit))",
                     "\"NO: over the state's largest deposit of \"&TEXT(law_deposit;\"#,##0.00\")"},
                    {"AND(COUNTIF([Steps.Named];\"open\")=0;ABS(SUM([Steps.Amount])-law_price)>0.004)",
                     "\"NO: the steps do not come to the contract\""},
                    {"AND([#]=2;NOT(ISNUMBER(law_deposit)))",
                     "\"CHECK: ask the state what a deposit may be\""}},
          "\"OK\"");
    return table;
}

Table holidays() {
    Table table;
    table.name = "Holidays";
    table.rows = holidayRows;
    table.columns = {
        {.heading = "Holiday",
         .kind = Kind::Kept,
         .width = 66,
         .note = "Days on which nobody works; none is known here."},
        {.heading = "Day", .kind = Kind::Kept, .format = show::date, .width = 46},
    };
    return table;
}

Table states() {
    Table table;
    table.name = "States";
    const auto kept = [](const char* heading, double width, Format format, const char* note) {
        return Column{.heading = heading, .kind = Kind::Kept, .format = format, .width = width, .note = note};
    };
    table.columns = {
        kept("State", 66, show::text, "Two letters. What was not read is blank: ask, and type it here."),
        kept("Deposit, section", 46, show::general, "And which text of it was read."),
        kept("Share", 26, show::percent(2), "Largest deposit, of the price."),
        kept("Amount", 20, show::number(2), "Largest deposit; of the two the lesser."),
        kept("Special orders", 24, show::general,
             "added, or where greater: goods made or ordered for the job alone."),
        kept("Above price", 26, show::number(2), "The limit holds above this price."),
        kept("Ticket wait", 26, show::number(0), "Working days from the call, its day not counted."),
        kept("Ticket life", 20, show::number(0), "Days from the first day of digging."),
        kept("Life counted", 24, show::general, ""),
        kept("Ticket, section", 70, show::general, ""),
    };
    for (Column& column : table.columns)
        if (column.heading.ends_with("section")) column.wrapped = true;
    table.columns[4].validity = choice({"added", "where greater"});
    for (const StateLaw& read : stateLaws())
        table.content.push_back(
            {read.state, read.depositSource, read.depositShare ? digits(*read.depositShare) : "",
             read.depositAmount ? digits(*read.depositAmount) : "", wordOf(read.special),
             read.abovePrice > 0 ? digits(read.abovePrice) : "", digits(read.ticketWait),
             digits(read.ticketLife),
             read.ticketLife ? (read.lifeInWorkingDays ? "working" : "calendar") : "", read.ticketSource});
    table.rows = static_cast<int>(table.content.size()) + 6;
    return table;
}

}  // namespace

Sheet datesSheet(const JobSize&) {
    Sheet sheet;
    sheet.name = "Dates";
    sheet.title = "Dates";
    sheet.purpose =
        "When the work may start and what holds it, the last day to cancel, the steps of payment under the state's limit. What of a law was not read is to be asked.";
    sheet.parts = {law(), steps(), waits(), holidays(), states(), federalHolidays()};
    sheet.widths = {66, 46, 26, 20};
    return sheet;
}

}  // namespace trenchbook::sheets
