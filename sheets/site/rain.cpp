// The local rain frequency table, pasted as it is printed. Job reads it once; nothing else does.
#include "templates/job.h"

namespace trenchbook::sheets {

Sheet rainSheet(const JobSize& size) {
    Paragraphs where;
    where.heading = "Where the table comes from";
    where.span = 11;
    where.lines = {
        "United States: NOAA's Precipitation Frequency Data Server, hdsc.nws.noaa.gov/pfds: find the lot, data type "
        "precipitation depth, then copy the table or save it as CSV. Elsewhere: the weather service's table.",
        "Paste it into the boxed cells, a printed cell in each: durations (5-min, 2-hr, 1-day) in the first column, return "
        "periods in years on the line above them. Titles, bounds in brackets and footers may stay.",
        "A title that says inches, millimeters or intensity is believed; without one the numbers are depths in the job's "
        "unit. Job takes the rain for its return period and duration from here, unless Rain is typed there.",
    };

    Table table;
    table.name = "Rain";
    table.rows = size.rain;
    table.columns = {
        {.heading = "Duration",
         .kind = Kind::Kept,
         .width = 62,
         .note =
             "First column of the printed table: 5-min, 2-hr, 1-day. A line of a CSV file that stands whole in "
             "this cell is read too."}};
    for (int entry = 1; entry <= 10; ++entry)
        table.columns.push_back(
            {.heading = "Entry " + std::to_string(entry),
             .kind = Kind::Kept,
             .width = 26,
             .note = entry == 1
                         ? "Under the return period on the table's own first line, as all entries; bounds in "
                           "brackets are passed over."
                         : ""});

    Sheet sheet;
    sheet.name = "Rain";
    sheet.title = "Rain";
    sheet.purpose =
        "The local rain frequency table as it is printed. Leave it blank when the rain is typed on Job.";
    sheet.parts = {where, table};
    return sheet;
}

}  // namespace trenchbook::sheets
