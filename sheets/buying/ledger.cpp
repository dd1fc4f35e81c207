// Many jobs, one row each: what was estimated, spent, billed and paid, and how items and hours drift.
#include "buying/labor_lines.h"
#include "buying/money.h"
#include "templates/books.h"

namespace trenchbook::sheets {
namespace {

Column typed(const char* heading, double width, const char* note = "") {
    return {.heading = heading, .kind = Kind::Kept, .format = show::number(2), .width = width, .note = note};
}
Column share(const char* heading, const std::string& formula, const char* note) {
    return {.heading = heading, .format = show::percent(1), .width = 19, .formula = formula, .note = note};
}

// Hours by kind of work, a row a closed job and kind.
Table hours() {
    Table table;
    table.name = "Hours";
    table.rows = 300;
    table.columns = {
        {.heading = "Job", .kind = Kind::Kept, .width = 56},
        {.heading = "Check", .kind = Kind::Verdict, .width = 60, .wrapped = true},
        {.heading = "Work",
         .kind = Kind::Kept,
         .width = 58,
         .validity = chosenFrom("[Rates.Work]"),
         .note = "As on Labor and on Rates."},
        {.heading = "Amount",
         .kind = Kind::Kept,
         .format = show::number(2),
         .width = 24,
         .note = "As built, in the unit on Rates."},
        {.heading = "Hours",
         .kind = Kind::Kept,
         .format = show::number(1),
         .width = 24,
         .note = "Man-hours that it took."},
        {.heading = "Soil factor",
         .kind = Kind::Kept,
         .format = show::number(2),
         .width = 22,
         .note = "Of that job's Labor: 1 is loam."},
        {.heading = "Access factor",
         .kind = Kind::Kept,
         .format = show::number(2),
         .width = 22,
         .note = "Likewise: 1 is plain access."},
        {.heading = "Plain hours",
         .format = show::number(2),
         .width = 24,
         .formula =
             "IF(AND(COUNT([Hours];[Soil factor];[Access factor])=3;N([Soil factor])*N([Access factor])>0);"
             "[Hours]/([Soil factor]*[Access factor]);\"\")",
         .note = "Hours / (soil x access): as if in loam with plain access."},
    };
    judge(table, "Check",
          ownErrors({"Job", "Work", "Amount", "Hours", "Soil factor", "Access factor"}) +
              Cases{{"COUNTA([Job];[Work];[Amount];[Hours])=0", "\"\""},
                    {"[Job]=\"\"", "\"NO: which job?\""},
                    {"[Work]=\"\"", "\"NO: the work is missing\""},
                    {"COUNTIF([Rates.Work];[Work])=0", "\"NO: no rate for this work on Rates\""},
                    {"ISBLANK([Hours])", "\"NO: hours are missing\""},
                    {"ISBLANK([Amount])", "\"NO: the amount is missing\""},
                    {"COUNT([Amount];[Hours];[Soil factor];[Access factor])<4",
                     "\"NO: an amount is not a number\""},
                    {"OR([Amount]<=0;[Hours]<0;[Soil factor]<=0;[Access factor]<=0)",
                     "\"NO: amount and factors are above 0, hours 0 or more\""},
                    {"COUNTIF([Jobs.Job];[Job])=0", "\"CHECK: this job is not on Jobs\""}},
          "\"OK\"");
    return table;
}

// What the closed jobs teach, beside the start. The average needs no add-in, the learned rate does.
Table rates() {
    Table table;
    table.name = "Rates";
    table.columns = {
        {.heading = "Work", .kind = Kind::Kept, .width = 58, .note = "As on Labor."},
        {.heading = "Check", .kind = Kind::Verdict, .width = 60, .wrapped = true},
        {.heading = "Unit", .kind = Kind::Kept, .format = show::general, .width = 20},
        {.heading = "Start",
         .kind = Kind::Kept,
         .format = show::number(3),
         .width = 24,
         .validity = between(0.0001, 1000),
         .note = "Hours each before anything was learned, as Labor starts with."},
        {.heading = "Jobs",
         .format = show::number(0),
         .width = 16,
         .formula = "IF([Work]=\"\";\"\";COUNTIF([Hours.Work];[Work]))"},
        {.heading = "Average",
         .format = show::number(3),
         .width = 24,
         .formula =
             "IF(N([Jobs])>0;IFERROR(SUMIF([Hours.Work];[Work];[Hours.Plain hours])/SUMIF([Hours.Work];[Work];[Hours.Amount]);\"\");\"\")",
         .note = "All plain hours / all amounts."},
        {.heading = "Learned",
         .format = show::number(3),
         .width = 24,
         .formula =
             "IF(N([Jobs])>0;IFERROR(LEARN.RATE([Work];[Hours.Work];[Hours.Amount];[Hours.Plain hours];[Start];start_jobs);\"\");\"\")",
         .note = "Between start and average: few jobs move the start little, many decide."},
        {.heading = "Misses by",
         .format = show::percent(0),
         .width = 22,
         .formula =
             "IF(N([Jobs])>1;IFERROR(LEARN.ERROR([Work];[Hours.Work];[Hours.Amount];[Hours.Plain hours];[Start];start_jobs);\"\");\"\")",
         .note =
             "How far the hours of each job are from what the others teach: one left out at a time, root mean square."},
        {.heading = "Start misses by",
         .format = show::percent(0),
         .width = 22,
         .formula =
             "IF(N([Jobs])>0;IFERROR(SQRT(SUMPRODUCT(([Hours.Work]=[Work])*(IFERROR([Hours.Plain hours]/[Hours.Amount]/[Start]-1;0))^2)/[Jobs]);\"\");\"\")",
         .note = "The same of the start alone."},
    };
    judge(table, "Check",
          {{"[Work]=\"\"", "\"\""},
           {"N([Start])<=0", "\"NO: the start is missing or not above 0\""},
           {"N([Jobs])=0", "\"CHECK: no job yet\""},
           {"SUMPRODUCT(([Hours.Work]=[Work])*(LEFT([Hours.Check];2)=\"NO\"))>0",
            "\"NO: a row of jobs or items cannot be read\""},
           {"NOT(ISNUMBER([Learned]))", "\"NO: nothing is learned without the add-in\""},
           {"N([Jobs])=1", "\"CHECK: one job alone: its own error is not known\""},
           {"N([Misses by])>N([Start misses by])", "\"CHECK: the learned rate misses more than the start\""}},
          "\"OK\"");
    for (const LaborLine& line : laborLines())
        table.content.push_back({line.name, unitWord(line.per), perUnit(line.per, line.hours)});
    table.rows = static_cast<int>(table.content.size()) + 10;
    return table;
}

Form learning() {
    Form form;
    form.name = "Learning";
    form.noteSpan = 6;
    form.fields = {
        {.label = "The start counts as",
         .name = "start_jobs",
         .kind = Kind::Kept,
         .format = show::number(1),
         .value = "4",
         .validity = between(0, 1000),
         .note = "How many jobs the start of a rate is worth on Rates; common practice, no source.",
         .unit = "jobs"}};
    return form;
}

}  // namespace

Workbook ledgerBook() {
    Form sums;
    sums.name = "Ledger";
    sums.noteSpan = 6;
    const auto money = [](const char* label, const char* name, const std::string& formula,
                          const char* note = "") {
        return Field{.label = label,
                     .name = name,
                     .kind = Kind::Computed,
                     .format = show::money,
                     .measure = Measure::Dollars,
                     .value = "=" + formula,
                     .note = note};
    };
    const auto percent = [](const char* label, const char* name, const std::string& formula,
                            const char* note) {
        return Field{.label = label,
                     .name = name,
                     .kind = Kind::Computed,
                     .format = show::percent(1),
                     .value = "=" + formula,
                     .note = note};
    };
    sums.fields = {
        languageField(),
        {.label = "Jobs",
         .name = "ledger_jobs",
         .kind = Kind::Computed,
         .format = show::number(0),
         .value = "=SUMPRODUCT([Jobs.Job]<>\"\")"},
        money("Contracts", "ledger_contracts", "ROUND(SUM([Jobs.Contract]);2)"),
        money("Still due", "ledger_due", "ROUND(SUM([Jobs.Still due]);2)", "Billed and not paid."),
        percent("Cost off", "ledger_cost",
                "IF(SUM([Jobs.Counted estimate])>0;SUM([Jobs.Cost off])/SUM([Jobs.Counted estimate]);\"\")",
                "Finished jobs: actual against estimated cost, weighted by size."),
        percent("Margin", "ledger_margin",
                "IF(SUM([Jobs.Counted contract])>0;SUM([Jobs.Left])/SUM([Jobs.Counted contract]);\"\")",
                "Finished jobs: what was left of the contracts."),
        {.label = "Ready?", .name = "ledger_check", .kind = Kind::Verdict, .format = show::general},
    };
    judge(sums, "ledger_check",
          {{countOf("Jobs.Check", "NO") + "+" + countOf("Items.Check", "NO") + "+" +
                countOf("Hours.Check", "NO") + ">0",
            "\"NO: a row of jobs or items cannot be read\""},
           {"ledger_jobs=0", "\"CHECK: no closed job yet\""}},
          "\"OK\"");
    const std::string done = "AND(ISNUMBER([Estimated cost]);ISNUMBER([Actual cost]))";
    Table jobs;
    jobs.name = "Jobs";
    jobs.rows = 120;
    jobs.columns = {
        {.heading = "Job", .kind = Kind::Kept, .width = 56},
        {.heading = "Check", .kind = Kind::Verdict, .width = 60, .wrapped = true},
        {.heading = "Finished",
         .kind = Kind::Kept,
         .format = show::date,
         .width = 30,
         .note = "Blank while it runs."},
        typed("Contract", 26, "Agreed price and signed changes, from Account."),
        typed("Estimated cost", 26, "Direct cost on Quote when it was sold."),
        typed("Actual cost", 24, "From Close-out."),
        typed("Billed", 24, "To the owner."),
        typed("Paid", 24, "By the owner."),
        typed("Estimated hours", 21),
        typed("Actual hours", 21),
        typed("Pipe", 18, "Length laid, in the unit you keep for all jobs."),
        {.heading = "Soil", .kind = Kind::Kept, .format = show::general, .width = 20},
        typed("Crew", 16, "People."),
        typed("Weather days", 20, "Lost to weather."),
        typed("Call-backs", 18, "Hours of second visits, booked against the job."),
        {.heading = "Still due",
         .format = show::number(2),
         .width = 22,
         .formula = "IF(ISNUMBER([Billed]);ROUND([Billed]-N([Paid]);2);\"\")"},
        {.heading = "Cost off",
         .format = show::number(2),
         .width = 22,
         .formula = "IF(" + done + ";ROUND([Actual cost]-[Estimated cost];2);\"\")"},
        share("Cost share off",
              "IF(ISNUMBER([Cost off]);IF([Estimated cost]>0;[Cost off]/[Estimated cost];\"\");\"\")",
              "Above 0: dearer than estimated."),
        {.heading = "Left",
         .format = show::number(2),
         .width = 22,
         .formula =
             "IF(AND(ISNUMBER([Contract]);ISNUMBER([Actual cost]));ROUND([Contract]-[Actual cost];2);\"\")",
         .note = "For overhead and profit."},
        share("Margin", "IF(ISNUMBER([Left]);IF([Contract]>0;[Left]/[Contract];\"\");\"\")",
              "Left / contract."),
        share(
            "Hours share off",
            "IF(AND(ISNUMBER([Estimated hours]);ISNUMBER([Actual hours]));IF([Estimated hours]>0;[Actual hours]/[Estimated hours]-1;\"\");\"\")",
            "Above 0: slower than estimated."),
        {.heading = "Price by length",
         .format = show::number(2),
         .width = 20,
         .formula = "IF(AND(ISNUMBER([Contract]);N([Pipe])>0);[Contract]/[Pipe];\"\")"},
        {.heading = "Counted estimate",
         .format = show::number(2),
         .width = 22,
         .formula = "IF(" + done + ";[Estimated cost];\"\")",
         .note = "Estimates of finished jobs only."},
        {.heading = "Counted contract",
         .format = show::number(2),
         .width = 22,
         .formula = "IF(ISNUMBER([Left]);[Contract];\"\")"},
    };
    judge(
        jobs, "Check",
        ownErrors({"Job", "Finished", "Contract", "Estimated cost", "Actual cost", "Billed", "Paid",
                   "Estimated hours", "Actual hours", "Pipe"}) +
            Cases{
                {"AND([Job]=\"\";COUNTA([Contract];[Estimated cost];[Actual cost];[Billed];[Paid])=0)",
                 "\"\""},
                {"[Job]=\"\"", "\"NO: which job?\""},
                {"COUNTIF([Jobs.Job];[Job])>1", "\"NO: this job stands in two rows\""},
                {"COUNTA([Contract];[Estimated cost];[Actual cost];[Billed];[Paid];[Estimated hours];[Actual hours];[Pipe])>"
                 "COUNT([Contract];[Estimated cost];[Actual cost];[Billed];[Paid];[Estimated hours];[Actual hours];[Pipe])",
                 "\"NO: an amount is not a number\""},
                {"NOT(OR(ISBLANK([Finished]);ISNUMBER([Finished])))",
                 "\"NO: not a date: \"&[Finished]&\"; write it as 2026-05-31\""},
                {"N([Still due])<0", "\"CHECK: more was paid than billed\""},
                {"AND(ISNUMBER([Finished]);NOT(ISNUMBER([Actual cost])))",
                 "\"CHECK: finished, but not closed out\""},
                {"AND(ISNUMBER([Contract]);ISNUMBER([Finished]);N([Actual cost])>N([Contract]))",
                 "\"CHECK: the job cost \"&TEXT([Actual cost]-[Contract];\"#,##0.00\")&\" more than its contract\""},
                {"N([Left])<0", "\"CHECK: it cost more than it brought\""}},
        "\"OK\"");
    Table items;
    items.name = "Items";
    items.rows = 400;
    items.columns = {
        {.heading = "Job", .kind = Kind::Kept, .width = 56},
        {.heading = "Check", .kind = Kind::Verdict, .width = 60, .wrapped = true},
        {.heading = "Bought on", .kind = Kind::Kept, .format = show::date, .width = 30},
        {.heading = "Code", .kind = Kind::Kept, .width = 46, .note = "As in the price book."},
        typed("Estimated", 26, "Packs on the order."),
        typed("Bought", 24, "Packs paid for."),
        typed("Cost", 24, "Dollars paid for them, before tax."),
        {.heading = "Price",
         .format = show::number(2),
         .width = 24,
         .formula = "IF(AND(ISNUMBER([Cost]);ISNUMBER([Bought]));IF([Bought]>0;[Cost]/[Bought];\"\");\"\")"},
        {.heading = "New",
         .format = show::number(0),
         .width = 21,
         .formula =
             "IF([Code]=\"\";\"\";IF(COUNTIF(INDEX([Items.Code];1):[^Code];[Code])=0;MAX(INDEX([Items.New];1):[^New])+1;\"\"))",
         .note = "Numbers the codes."},
    };
    judge(items, "Check",
          ownErrors({"Job", "Bought on", "Code", "Estimated", "Bought", "Cost"}) +
              Cases{{"[Job]&[Code]&[Cost]&[Bought]=\"\"", "\"\""},
                    {"[Code]=\"\"", "\"NO: the code is missing\""},
                    {"NOT(ISNUMBER([Bought on]))", "\"NO: the date is missing or not a date\""},
                    {"COUNTA([Estimated];[Bought];[Cost])>COUNT([Estimated];[Bought];[Cost])",
                     "\"NO: an amount is not a number\""},
                    {"NOT(ISNUMBER([Price]))", "\"NO: bought and cost are needed\""},
                    {"COUNTIF([Jobs.Job];[Job])=0", "\"CHECK: this job is not on Jobs\""}},
          "\"OK\"");
    const auto ofCode = [](const std::string& column) {
        return "SUMIF([Items.Code];[Code];[Items." + column + "])";
    };
    Table trends;
    trends.name = "Trends";
    trends.rows = 100;
    trends.columns = {
        {.heading = "Code",
         .format = show::general,
         .width = 56,
         .formula = "IFERROR(INDEX([Items.Code];MATCH([#]-1;[Items.New];0));\"\")"},
        {.heading = "Times",
         .format = show::number(0),
         .width = 30,
         .formula = "IF([Code]=\"\";\"\";COUNTIF([Items.Code];[Code]))"},
        {.heading = "Average price",
         .format = show::number(2),
         .width = 46,
         .formula = "IF([Code]=\"\";\"\";IFERROR(" + ofCode("Cost") + "/" + ofCode("Bought") + ";\"\"))",
         .note = "All that was paid / all that was bought."},
        {.heading = "Last bought",
         .format = show::date,
         .width = 26,
         .formula = "IF([Code]=\"\";\"\";MAXIFS([Items.Bought on];[Items.Code];[Code]))"},
        {.heading = "Last price",
         .format = show::number(2),
         .width = 24,
         .formula =
             "IF([Code]=\"\";\"\";IFERROR(AVERAGEIFS([Items.Price];[Items.Code];[Code];[Items.Bought on];[Last bought]);\"\"))"},
        share(
            "Dearer by",
            "IF(AND(ISNUMBER([Last price]);ISNUMBER([Average price]));IF([Average price]>0;[Last price]/[Average price]-1;\"\");\"\")",
            "Last against average."),
        share(
            "Waste",
            "IF([Code]=\"\";\"\";IFERROR(SUMIFS([Items.Bought];[Items.Code];[Code];[Items.Estimated];\">0\")/" +
                ofCode("Estimated") + "-1;\"\"))",
            "Bought beyond the estimate, where there was one."),
    };
    const auto sheet = [](const char* name, const char* purpose, std::vector<Part> parts) {
        Sheet made;
        made.name = name;
        made.title = name;
        made.purpose = purpose;
        made.parts = std::move(parts);
        made.freezeColumns = 1;
        return made;
    };
    Workbook workbook;
    workbook.title = "Ledger";
    workbook.sheets = {
        sheet("Jobs", "One row a job: copy the sums of its Quote, Account and Close-out here as values.",
              {sums, jobs}),
        sheet("Items", "What was bought for which job; trends by item follow on the next sheet.", {items}),
        sheet("Hours", "What work took, a row a job and kind: from the job's Labor and the time sheets.",
              {hours()}),
        sheet(
            "Rates",
            "Hours each as the closed jobs teach them, for Labor of the next job. Learning needs the add-in, the rest does not.",
            {learning(), rates()}),
        sheet("Trends", "How prices and waste of each item drift over the jobs. Nothing is typed here.",
              {trends})};
    workbook.names = {{"job_name", "\"\""}, {"units", "\"US\""}};
    return workbook;
}

}  // namespace trenchbook::sheets
