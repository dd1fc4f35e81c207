// The price book: today's prices of everything, and what each cost before.
#include "buying/money.h"
#include "kit/look.h"
#include "templates/books.h"

namespace trenchbook::sheets {

namespace {

// The prices of one code over time, from History and Prices, drawn.
Sheet courseOfAPrice() {
    Form shown;
    shown.name = "Price course";
    shown.heading = "Which price";
    shown.noteSpan = 3;
    shown.fields = {
        {.label = "Code",
         .name = "course_typed",
         .kind = Kind::Kept,
         .validity = chosenFrom("[Prices.Code]"),
         .note = "Blank: the first one of History."},
        hidden(
            "Code drawn", "course_code",
            "IF(TRIM(course_typed)<>\"\";TRIM(course_typed);IFERROR(INDEX([History.Code];MATCH(\"?*\";[History.Code];0));\"\"))"),
        hidden("Row on Prices", "course_place", "IFERROR(MATCH(course_code;[Prices.Code];0);0)"),
        hidden(
            "Price of today", "course_today",
            "IF(course_place>0;IF(ISNUMBER(INDEX([Prices.Price];course_place));INDEX([Prices.Price];course_place);0);0)"),
        hidden(
            "On", "course_today_on",
            "IF(N(course_today)>0;IF(ISNUMBER(INDEX([Prices.Priced on];course_place));INDEX([Prices.Priced on];course_place);0);0)"),
        {.label = "What it is",
         .kind = Kind::Computed,
         .format = show::general,
         .value =
             "=IF(course_place>0;course_code&\": \"&INDEX([Prices.Item];course_place)&\"\";course_code&\"\")",
         .wide = true},
        {.label = "Prices drawn",
         .name = "course_count",
         .kind = Kind::Computed,
         .format = show::number(0),
         .value = "=COUNT([Course.Price])"},
        {.label = "Change over all of it",
         .name = "course_change",
         .kind = Kind::Computed,
         .format = show::percent(1),
         .value = "=IF(course_count>1;INDEX([Course.Price];course_count+1)/INDEX([Course.Price];2)-1;\"\")",
         .note = "The last price drawn over the first."},
        {.label = "Ready?", .name = "course_check", .kind = Kind::Verdict, .format = show::general},
    };
    judge(
        shown, "course_check",
        {{"course_code=\"\"", "\"CHECK: no code is typed, and History has none\""},
         {"AND(course_place=0;COUNTIF([History.Code];course_code)=0)",
          "\"NO: neither Prices nor History has \"&course_code"},
         {"course_count=0", "\"CHECK: no price with a date\""},
         {"course_count=1", "\"CHECK: one price is no course yet\""},
         {"COUNTIFS([History.Code];course_code;[History.Price];\">0\";[History.Priced on];\">\"&MAX([Course.On]))>0",
          "\"CHECK: more prices than are drawn: the oldest stand here\""}},
        "\"OK\"");
    Table course;
    course.name = "Course";
    course.rows = 60;
    course.columns = {
        {.heading = "On", .format = show::date, .width = 46, .formula = "IF([Day]>0;[Day];\"\")"},
        {.heading = "Price",
         .format = show::number(2),
         .width = 60,
         .formula =
             "IF([Day]>0;IFERROR(AVERAGEIFS([History.Price];[History.Code];course_code;[History.Priced on];[Day];[History.Price];\">0\");course_today);\"\")"},
        // The next later day of History, then that of Prices; 0 behind the last.
        {.heading = "Next",
         .format = show::number(0),
         .width = 20,
         .formula =
             "IF(course_code=\"\";0;MINIFS([History.Priced on];[History.Code];course_code;[History.Priced on];\">\"&N([^Day]);[History.Price];\">0\"))",
         .helper = true},
        {.heading = "Day",
         .format = show::number(0),
         .width = 20,
         .formula =
             "IF(AND([#]>2;N([^Day])=0);0;IF([Next]>0;[Next];IF(course_today_on>N([^Day]);course_today_on;0)))",
         .helper = true},
    };
    Chart chart;
    chart.title = "What it cost";
    chart.xTitle = "Date";
    chart.yTitle = "Price of one pack";
    chart.width = 240;
    chart.height = 90;
    chart.dated = true;
    chart.series = {{.table = "Course", .x = "On", .y = "Price", .colour = colour::water}};
    Sheet sheet;
    sheet.name = "Course";
    sheet.title = "Course of a price";
    sheet.purpose = "What one code cost over time: old prices from History, the last from Prices.";
    sheet.parts = {shown, chart, course};
    sheet.widths = {46, 60, 44, 30};
    return sheet;
}

}  // namespace

Workbook priceBook() {
    Form book;
    book.name = "Price book";
    book.noteSpan = 6;
    book.fields = {
        languageField(),
        {.label = "Ages counted to",
         .name = "book_date",
         .kind = Kind::Kept,
         .format = show::date,
         .value = "=TODAY()",
         .note = "Today, or a date typed over it."},
        {.label = "Trusted for",
         .name = "book_oldest",
         .kind = Kind::Kept,
         .format = show::number(0),
         .value = "30",
         .validity = between(1, 730),
         .note = "30 to 60 days, less when prices move; common practice, no source.",
         .unit = "days"},
        {.label = "Rows",
         .name = "book_rows",
         .kind = Kind::Computed,
         .format = show::number(0),
         .value = "=SUMPRODUCT([Prices.Code]<>\"\")"},
        {.label = "Ready?",
         .name = "book_check",
         .kind = Kind::Verdict,
         .format = show::general,
         .note =
             "A job takes copies of these rows with their dates; it does not follow this book by itself."},
    };
    judge(book, "book_check",
          {{countOf("Prices.Check", "NO") + ">0",
            "\"NO: rows that cannot be used: \"&" + countOf("Prices.Check", "NO")},
           {countOf("Prices.Check", "CHECK") + ">0",
            "\"CHECK: old prices: \"&" + countOf("Prices.Check", "CHECK")},
           {"COUNT([Prices.Price])<book_rows",
            "\"CHECK: rows without a price: \"&(book_rows-COUNT([Prices.Price]))"}},
          "\"OK\"");
    Table prices;
    prices.name = "Prices";
    prices.rows = 300;
    prices.columns = priceColumns();
    // The last three prices of the history before this row's date; a row without a price is none.
    std::string before = "[Priced on]";
    for (const char* which : {"Last", "Before", "Earlier"}) {
        const std::string day =
            std::string("MAXIFS([History.Priced on];[History.Code];[Code];[History.Priced on];\"<\"&") +
            before + ";[History.Price];\">0\")";
        // 0 where the history has none.
        const std::string found = std::string(which) + " day";
        prices.columns.push_back({.heading = found,
                                  .format = show::number(0),
                                  .width = 20,
                                  .formula = "IF(AND([Code]<>\"\";ISNUMBER(" + before + "));" + day + ";0)",
                                  .helper = true});
        prices.columns.push_back({.heading = std::string(which) + " on",
                                  .format = show::date,
                                  .width = 23,
                                  .formula = "IF([" + found + "]>0;[" + found + "];\"\")"});
        prices.columns.push_back(
            {.heading = which,
             .format = show::number(2),
             .width = 20,
             .formula =
                 "IF(ISNUMBER([" + std::string(which) +
                 " on]);IFERROR(AVERAGEIFS([History.Price];[History.Code];[Code];[History.Priced on];[" +
                 which + " on]);\"\");\"\")"});
        before = "[" + std::string(which) + " on]";
    }
    prices.columns.push_back(
        {.heading = "Change",
         .format = show::percent(1),
         .width = 18,
         .formula = "IF(AND(ISNUMBER([Price]);ISNUMBER([Last]));IF([Last]>0;[Price]/[Last]-1;\"\");\"\")"});
    judgePrices(prices, "book_date", "book_oldest", "NOT(ISBLANK([Priced on]))");
    prices.content = usualRows(prices.columns);

    Table history;
    history.name = "History";
    history.rows = 600;
    history.columns = {
        {.heading = "Code", .kind = Kind::Price, .width = 46},
        {.heading = "Check", .kind = Kind::Verdict, .width = 60, .wrapped = true},
        {.heading = "Supplier", .kind = Kind::Price, .width = 70},
        {.heading = "Priced on", .kind = Kind::Price, .format = show::date, .width = 24},
        {.heading = "Price",
         .kind = Kind::Price,
         .format = show::number(2),
         .width = 20,
         .note = "Of one pack, before tax."},
    };
    judge(history, "Check",
          ownErrors({"Code", "Priced on", "Price"}) +
              std::vector<std::pair<std::string, std::string>>{
                  {"[Code]&[Price]&[Priced on]=\"\"", "\"\""},
                  {"[Code]=\"\"", "\"NO: the code is missing\""},
                  {"NOT(ISNUMBER([Price]))", "\"NO: the price is missing or not a number\""},
                  {"NOT(ISNUMBER([Priced on]))", "\"NO: not a date; write it as 2026-05-31\""},
                  {"COUNTIF([Prices.Code];[Code])=0", "\"CHECK: no longer in the book\""}},
          "\"OK\"");
    Table suppliers;
    suppliers.name = "Suppliers";
    suppliers.rows = 12;
    suppliers.columns = {
        {.heading = "Supplier", .kind = Kind::Price, .width = 46, .note = "As the offers below name him."},
        {.heading = "Check", .kind = Kind::Verdict, .width = 60, .wrapped = true},
        {.heading = "Delivery",
         .kind = Kind::Price,
         .format = show::number(2),
         .width = 44,
         .validity = between(0, 100000),
         .note = "Dollars that one delivery of his costs; blank: none."},
        {.heading = "Note", .kind = Kind::Price, .width = 30, .wrapped = true},
        {.heading = "Free from",
         .kind = Kind::Price,
         .format = show::number(2),
         .width = 17,
         .validity = between(0, 1000000),
         .note = "From so much of his goods on one delivery he brings them free; blank: never."},
    };
    judge(suppliers, "Check",
          ownErrors({"Supplier", "Delivery", "Free from"}) +
              Cases{{"AND([Supplier]=\"\";ISBLANK([Delivery]);ISBLANK([Free from]))", "\"\""},
                    {"[Supplier]=\"\"", "\"NO: which supplier?\""},
                    {"COUNTIF([Suppliers.Supplier];[Supplier])>1", "\"NO: this supplier stands here twice\""},
                    {"NOT(OR(ISBLANK([Delivery]);ISNUMBER([Delivery])))",
                     "\"NO: not a number\"&" + numberToType("[Delivery]")},
                    {"NOT(OR(ISBLANK([Free from]);ISNUMBER([Free from])))",
                     "\"NO: not a number\"&" + numberToType("[Free from]")},
                    {"OR(N([Delivery])<0;N([Free from])<0)", "\"NO: a negative price\""}},
          "\"OK\"");
    Table offers;
    offers.name = "Offers";
    offers.rows = 300;
    offers.columns = {
        {.heading = "Code", .kind = Kind::Price, .width = 46, .note = "As on Prices."},
        {.heading = "Check", .kind = Kind::Verdict, .width = 60, .wrapped = true},
        {.heading = "Supplier",
         .kind = Kind::Price,
         .width = 44,
         .validity = chosenFrom("[Suppliers.Supplier]")},
        {.heading = "Their number", .kind = Kind::Price, .width = 30, .note = "His own item number."},
        {.heading = "Unit", .kind = Kind::Price, .width = 17, .note = "As on Prices: one code has one unit."},
        {.heading = "Pack",
         .kind = Kind::Price,
         .format = show::general,
         .width = 15,
         .note = "As on Prices; blank where it is sold loose."},
        {.heading = "Price",
         .kind = Kind::Price,
         .format = show::number(2),
         .width = 20,
         .note = "Of one pack, before tax."},
        {.heading = "Priced on", .kind = Kind::Price, .format = show::date, .width = 23},
        {.heading = "Row on Prices",
         .format = show::number(0),
         .width = 18,
         .formula = "IF([Code]=\"\";0;IFERROR(MATCH([Code];[Prices.Code];0);0))",
         .helper = true},
    };
    const std::string offerAge = "(book_date-[Priced on])";
    judge(
        offers, "Check",
        ownErrors({"Code", "Supplier", "Unit", "Pack", "Price", "Priced on"}) +
            Cases{{"[Code]&[Supplier]&[Price]=\"\"", "\"\""},
                  {"[Code]=\"\"", "\"NO: the code is missing\""},
                  {"[Row on Prices]=0", "\"NO: this code is not on Prices\""},
                  {"COUNTIF([Suppliers.Supplier];[Supplier])=0", "\"NO: this supplier is not on Suppliers\""},
                  {"COUNTIFS([Offers.Code];[Code];[Offers.Supplier];[Supplier])>1",
                   "\"NO: two offers of one supplier for one code\""},
                  {"LOWER(TRIM([Unit]))<>LOWER(TRIM(INDEX([Prices.Unit];[Row on Prices])))",
                   "\"NO: two units for one code: on Prices it is \"&INDEX([Prices.Unit];[Row on Prices])"},
                  {"N([Pack])<>N(INDEX([Prices.Pack];[Row on Prices]))",
                   "\"NO: another pack than on Prices: \"&INDEX([Prices.Pack];[Row on Prices])"},
                  {"NOT(ISNUMBER([Price]))", "\"NO: the price is missing or not a number\""},
                  {"[Price]<=0", "\"NO: a price is above 0\""},
                  {"NOT(ISNUMBER([Priced on]))", "\"NO: not a date; write it as 2026-05-31\""},
                  {offerAge + "<0", "\"CHECK: priced after \"&TEXT(book_date;\"YYYY-MM-DD\")"},
                  {offerAge + ">book_oldest",
                   "\"CHECK: \"&" + offerAge + "&\" days old; up to \"&book_oldest&\" is trusted\""}},
        "\"OK\"");
    Sheet sideBySide;
    sideBySide.name = "Offers";
    sideBySide.title = "Offers";
    sideBySide.purpose =
        "Prices of several suppliers side by side, a row each; jobbook buy finds the cheapest way with deliveries counted.";
    sideBySide.parts = {suppliers, offers};
    sideBySide.freezeColumns = 1;
    Sheet today;
    today.name = "Prices";
    today.title = "Price book";
    today.purpose =
        "One row for each thing you buy. When a price changes, move the old one to History first.";
    today.parts = {book, prices};
    today.freezeColumns = 2;
    Sheet past;
    past.name = "History";
    past.title = "Price history";
    past.purpose = "Old prices, one row each, in any order.";
    past.parts = {history};
    Workbook workbook;
    workbook.title = "Price book";
    workbook.sheets = {today, past, courseOfAPrice(), sideBySide};
    workbook.names = {{"job_name", "\"\""}, {"units", "\"US\""}};
    return workbook;
}

}  // namespace trenchbook::sheets
