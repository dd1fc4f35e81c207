// The prices used on this job, each with its date: native formulas only.
#include "buying/money.h"

namespace trenchbook::sheets {

namespace {

// Groups that are goods; the others have lines of their own on Quote.
const std::vector<std::string> groups = {"pipe",      "fitting",  "device", "glue",       "rock",  "sand",
                                         "fabric",    "sod",      "soil",   "concrete",   "other", "delivery",
                                         "equipment", "disposal", "permit", "subcontract"};

}  // namespace

std::vector<Column> priceColumns() {
    return {
        // Before the code: from there on the table is handed to the engine, which may not read what rests on its answers.
        {.heading = "Check", .kind = Kind::Verdict, .width = 60, .wrapped = true},
        {.heading = "Code",
         .kind = Kind::Price,
         .width = 46,
         .note =
             "Short code, used once. Pipe and fittings: what it is, size and system, as Pieces writes them: "
             "PIPE-4SDR35, BEND45-4SDR35, WYE-6X4SDR35."},
        {.heading = "Item", .kind = Kind::Price, .width = 70, .wrapped = true},
        {.heading = "Group",
         .kind = Kind::Price,
         .width = 24,
         .validity = choice(groups),
         .note =
             "Goods: pipe, fitting, device, glue, rock, sand, fabric, sod, soil, concrete, other. Delivery, "
             "equipment, disposal, permit and subcontract have lines of their own on Quote."},
        {.heading = "Unit",
         .kind = Kind::Price,
         .width = 17,
         .note = "Unit that is counted: ft, sq ft, ton, pint (metric: m, m2, t, L); piece, load."},
        {.heading = "Pack",
         .kind = Kind::Price,
         .format = show::general,
         .width = 15,
         .validity = between(0, 100000),
         .note =
             "How many units are sold together: 10 for a stick of 10 ft, 1 for single pieces or whole tons. Blank: "
             "sold loose by ton or cu yd (metric: t or m3), ordered to the tenth; the price is for one unit."},
        {.heading = "Waste",
         .kind = Kind::Price,
         .format = show::percent(0),
         .width = 15,
         .validity = between(0, 1),
         .note =
             "Share added for waste. Blank: the share on Rules for its group; fittings get whole spares."},
        {.heading = "Price",
         .kind = Kind::Price,
         .format = show::number(2),
         .width = 20,
         .validity = between(0.01, 1000000),
         .note = "Dollars for one pack, before tax.",
         .unit = "$ a pack"},
        {.heading = "Supplier", .kind = Kind::Price, .width = 44},
        {.heading = "Their number",
         .kind = Kind::Price,
         .width = 30,
         .note = "The supplier's own item number; bills may have it in place of the code."},
        {.heading = "Priced on", .kind = Kind::Price, .format = show::date, .width = 23},
        {.heading = "Taxable",
         .kind = Kind::Price,
         .width = 17,
         .validity = choice({"yes", "no"}),
         .note = "Does the supplier charge sales tax on it?",
         .centred = true},
    };
}

void judgePrices(Table& table, const std::string& today, const std::string& oldest,
                 const std::string& needed) {
    const std::string age = "(" + today + "-[Priced on])";
    const std::vector<std::string> inputs = {"Code",  "Item",  "Group",    "Unit",      "Pack",
                                             "Waste", "Price", "Supplier", "Priced on", "Taxable"};
    judge(table, "Check",
          ownErrors(inputs) +
              std::vector<std::pair<std::string, std::string>>{
                  {"[Code]&[Item]&[Group]&[Unit]&[Pack]&[Price]=\"\"", "\"\""},
                  {"[Code]=\"\"", "\"NO: the code is missing\""},
                  {"ISNUMBER(FIND(\"*\";[Code]))+ISNUMBER(FIND(\"?\";[Code]))+ISNUMBER(FIND(\"~\";[Code]))>0",
                   "\"NO: a code may not hold * ? ~\""},
                  {"COUNTIF([Prices.Code];[Code])>1", "\"NO: another row has this code too\""},
                  {"ISBLANK([Price])", "IF(" + needed + ";\"NO: the price is missing\";\"no price yet\")"},
                  {"NOT(ISNUMBER([Price]))", "\"NO: the price is not a number: \"&[Price]"},
                  {"[Price]<=0", "\"NO: a price is above 0\""},
                  {"[Unit]=\"\"", "\"NO: the unit is missing\""},
                  {"NOT(OR(ISBLANK([Pack]);ISNUMBER([Pack])))", "\"NO: Pack is not a number: \"&[Pack]"},
                  {"[Pack]<0", "\"NO: a pack holds more than 0\""},
                  {"AND(N([Pack])=0;NOT(" + soldLoose("[Unit]") + "))",
                   "\"NO: Pack is missing; only tons and yards go without\""},
                  {"[Group]=\"\"", "\"NO: the group is missing\""},
                  {"NOT(OR(ISBLANK([Waste]);ISNUMBER([Waste])))", "\"NO: Waste is not a number: \"&[Waste]"},
                  {"OR(N([Waste])<0;N([Waste])>1)", "\"NO: Waste is a share: 5 % is 0.05\""},
                  {"AND([Taxable]<>\"yes\";[Taxable]<>\"no\")", "\"NO: Taxable is yes or no\""},
                  {"ISBLANK([Priced on])", "\"NO: no date: how old is this price?\""},
                  {"NOT(ISNUMBER([Priced on]))",
                   "\"NO: not a date: \"&[Priced on]&\"; write it as 2026-05-31\""},
                  {"NOT(ISNUMBER(" + today + "))", "\"CHECK: no date to count the price's age to\""},
                  {age + "<0", "\"CHECK: priced after \"&TEXT(" + today + ";\"YYYY-MM-DD\")"},
                  {age + ">" + oldest,
                   "\"CHECK: \"&" + age + "&\" days old; up to \"&" + oldest + "&\" is trusted\""}},
          "\"OK\"");
}

Sheet pricesSheet(const JobSize& size) {
    Table table;
    table.name = "Prices";
    table.columns = priceColumns();
    const std::vector<Column> before = {
        {.heading = "Last on",
         .kind = Kind::Price,
         .format = show::date,
         .width = 23,
         .note = "Date of the price before this one; jobbook prices --take keeps it here."},
        {.heading = "Last", .kind = Kind::Price, .format = show::number(2), .width = 20},
        {.heading = "Change",
         .format = show::percent(1),
         .width = 18,
         .formula = "IF(AND(ISNUMBER([Price]);ISNUMBER([Last]));IF([Last]>0;[Price]/[Last]-1;\"\");\"\")"},
    };
    table.columns.insert(table.columns.end() - 1, before.begin(), before.end());  // Check stays last
    judgePrices(table, "quote_date", "{price.age.max}",
                "COUNTIF([Takeoff.Code];[Code])+COUNTIF([Additions.Code];[Code])>0");
    table.content = usualRows(table.columns);
    table.handedFrom = "Code";
    table.handedTo = "Pack";
    table.rows = size.prices;
    Sheet sheet;
    sheet.name = "Prices";
    sheet.title = "Prices";
    sheet.purpose =
        "The price book's rows used on this job. One pack of the units costs the price; its age is counted to the quote's date.";
    sheet.parts = {table};
    sheet.freezeColumns = 2;
    return sheet;
}

}  // namespace trenchbook::sheets
