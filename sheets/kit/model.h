// A workbook described as data: sheets made of forms, tables, blocks, charts and paragraphs. layout.h gives the
// parts their cells and turns formulas into cell references; writer.h puts the result into an office document.
//
// Formulas are written with headings instead of addresses:
//     [Length]            the cell of column Length in this row
//     [^Length]           the same, one row up (the first row sees the thin blank row)
//     [Runs.Length]       the whole column of table Runs, from its thin first row to its closing row
//     [Rules.Key:Value]   the columns from Key to Value of table Rules
//     [Runs.*]            all columns of table Runs
//     [#]                 this row's place in its table, the thin first row being 1
//     {cover.lawn}        the value of that key on the Rules sheet
//     <Invert up>         this row's cell of the block that answers for this table and has that heading
//     <runs_numbers.Flow> the same of the block of that name, whatever table it answers for
//     <runs_numbers.Flow:*>  that block's whole column; with a number instead of *, the cell in that row of it
// Fields, blocks and input ranges are defined names and stand by name: units, rain_rate, flow_block, runs_in.
// Every member has a default, so that a description names what it needs and no more.
#pragma once

#include <algorithm>
#include <map>
#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "catalog/measure.h"

namespace trenchbook::sheets {

using addin::Measure;

// What a cell is for. Each kind is a named cell style with a border of its own, readable without colour; "new lot
// from this job" goes by these names, so they never change.
enum class Kind {
    Measured,  // measured on this lot
    Kept,      // kept from job to job: rules, rates, wording
    Price,     // from the price book
    Permit,    // permission, ticket, date, name, address
    Computed,
    Verdict,  // a computed Check in words: OK, CHECK or NO in front
    Label,    // fixed text
};
const char* styleName(Kind kind);
bool isInput(Kind kind);

// How a number is shown. Text cells take what is typed as it is: slopes, tape readings, names.
struct Format {
    enum class As { Text, Number, Percent, Money, Date, General } as = As::Text;
    int decimals = 0;
};
namespace show {
inline constexpr Format text{Format::As::Text, 0};
inline constexpr Format general{Format::As::General, 0};
inline constexpr Format money{Format::As::Money, 2};
inline constexpr Format date{Format::As::Date, 0};
inline constexpr Format percent(int decimals) { return {Format::As::Percent, decimals}; }
inline constexpr Format number(int decimals) { return {Format::As::Number, decimals}; }
}  // namespace show

// What may be typed. A list is a choice of words or a column of the workbook ("[Nodes.Node]").
struct Validity {
    std::vector<std::string> words{};
    std::string listFormula{};
    std::optional<double> least{}, greatest{};  // numbers between, in US units; doubled as a hint in the note
    bool strict = true;                         // false: other input is taken after a question
    bool several = false;                       // words may stand together: cleanout + downspout
};

struct Column {
    std::string heading{};  // jobbook reads it: never changes once released
    std::string
        shown{};  // papers only: formula of what stands in the heading's place, in the page's language
    Kind kind = Kind::Computed;
    Format format = show::text;
    Measure measure = Measure::Plain;  // its unit stands under the heading and follows the units switch
    double width = 20;                 // mm
    std::string formula{};  // Computed and Verdict; an input's formula is its starting value in each row
    Validity validity{};
    std::string note{};  // on the heading: what it is, unit, range
    std::string unit{};  // where a measure does not say it
    bool centred = false;
    bool wrapped = false;  // long text takes several lines
    bool helper = false;   // hidden: only other columns read it; where helpers end a table, behind all else
    int span = 1;          // columns that a table's last one takes, where others on the sheet are narrower
};

// Rows of one kind of thing. Under the headings and the units comes a thin blank row, then the ready rows, then a
// blank closing row; ranges run from the thin row to the closing row, so that rows inserted at either end count.
struct Table {
    std::string name{};  // for formulas and for the CSV file, usually the sheet's name
    std::vector<Column> columns{};
    int rows = 40;  // ready rows
    // Rows that come filled (rules, stock pipe): their cells in the order of the columns, verdicts left out.
    std::vector<std::vector<std::string>> content{};
    bool total = false;  // a row of totals under the closing row for Money columns
    // First and last heading of the input columns that an engine function takes as one range, headings included; their
    // range is the defined name handedName(name), "runs_in", with errors marked. Empty: none. See names.h.
    std::string handedFrom{}, handedTo{};
};

// The column that names a row: the first that is not a verdict.
inline std::size_t keyColumn(const Table& table) {
    std::size_t key = 0;
    while (table.columns.at(key).kind == Kind::Verdict) ++key;
    return key;
}
// What comes in a cell with the workbook; empty where nothing does.
inline std::string contentAt(const Table& table, std::size_t row, std::size_t column) {
    if (row >= table.content.size() || table.columns.at(column).kind == Kind::Verdict) return "";
    std::size_t place = 0;
    for (std::size_t c = 0; c < column; ++c) place += table.columns[c].kind == Kind::Verdict ? 0 : 1;
    return place < table.content[row].size() ? table.content[row][place] : "";
}

struct Field {
    std::string label{};  // jobbook reads it from field,value files
    std::string name{};   // defined name; empty when nothing refers to it
    Kind kind = Kind::Measured;
    Format format = show::text;
    Measure measure = Measure::Plain;
    std::string value{};  // starting value of an input, or the formula of a computed field (with =)
    Validity validity{};
    std::string note{};  // shown beside the value
    std::string unit{};
    bool wide = false;          // for long text: takes the note's columns too; the note goes to the label
    bool helper = false;        // only other formulas read it: a hidden row, in a job a row of Workings
    bool foundByLabel = false;  // in its form, by a command or a function that takes it whole
};

// Label, value, unit, note: one field a row, in the sheet's first four columns.
struct Form {
    std::string name{};  // CSV file; usually the sheet's name
    std::string heading{};
    std::vector<Field> fields{};
    int noteSpan = 1;  // columns that a note may take, where the sheet's tables have narrow ones
};

// In a job workbook what only formulas read stands on Workings; all other fields stay in the rows of their form, counted
// from 1 here.
inline bool staysInForm(const Field& field) { return !field.helper || field.foundByLabel; }
inline auto rowInForm(const Form& form, std::size_t field) {
    return 1 + std::count_if(form.fields.begin(), form.fields.begin() + static_cast<std::ptrdiff_t>(field),
                             staysInForm);
}

// A heading or line that starts with = is a formula giving text.
struct Paragraphs {
    std::string heading{};
    std::vector<std::string> lines{};
    std::vector<std::string>
        names{};            // for each line: a sheet's, in front of it in the first column, and leads to it
    int span = 4;           // columns that a line may take
    int linesHigh = 1;      // for long text: height in lines
    bool verdict = false;   // the first line is coloured as a verdict
    bool judged = false;    // each line is
    bool large = false;     // the first line in large letters: what a paper is about, such as its price
    bool outdoors = false;  // in the letters of lines that are read in the trench
    bool notice = false;    // all of it bold, as the law asks of what must be seen
    bool printed = true;    // false: for the screen alone, where it ends its sheet
};

struct BlockColumn {
    std::string heading{};  // for <…> marks; one block has it once
    std::string shown{};    // papers only: formula of what stands in the heading's place
    Format format = show::general;
    Measure measure = Measure::Plain;
    double width = 20;  // mm, on papers
    std::string unit{};
    std::string note{};
    bool centred = false;
    bool wrapped = false;
    bool pen = false;  // on papers, behind all others: no cells of the block but room to write into by hand
    bool standsOut = false;  // on papers: what the reader looks for first
};

// An array formula over a fixed block of cells, called once for a whole table; it gives numbers or text, never both.
// On a sheet of workings blocks stand side by side; on a paper a block stands in the flow of the parts with headings
// and units like a table, and its rows beyond the answer's end are blank. Nowhere are rows inserted or sorted through it.
struct Block {
    std::string name{};     // defined name, "runs_numbers"
    std::string formula{};  // without braces
    std::string
        table{};   // whose rows it answers for, the thin row first; it has Workbook::blockSpare rows more
    int rows = 0;  // height of a block that answers for no table
    std::vector<BlockColumn> columns{};
    std::string says{};  // what it holds, for the reader of Workings
    double rowHeight =
        0;  // mm, on papers that are read and written into outdoors: larger letters, rows at least so high
    int boxed = 0;  // of one column: each row is a box across so many columns of the sheet
};

struct Chart {
    std::string title{}, xTitle{}, yTitle{};
    enum class Dash { None, Short, LongShort };
    struct Series {
        std::string table{};         // or
        std::string block{};         // whose columns x and y are; y's heading is the legend
        std::string name{};          // of a part of a block: for whoever hears the workbook
        int firstRow = 0, rows = 0;  // that part, from 0; all rows where 0 are given
        std::string x{}, y{};
        unsigned colour = 0;
        Dash dash = Dash::None;
        double width = 0.6;  // of the line, mm
    };
    std::vector<Series> series{};
    double width = 240, height = 95;  // mm
    // A drawing whose columns are millimeters on it: the plot takes the whole chart, its axes, which are not shown, count
    // 0 to width and 0 to height; no legend and no titles.
    bool toScale = false;
    bool dated = false;  // x is a date, and each value has a mark
};

struct Break {};  // a page break

using Part = std::variant<Form, Table, Paragraphs, Block, Chart, Break>;

struct Sheet {
    std::string name{};
    std::string title{};           // with = in front a formula, in the page's language; the purpose too
    std::string purpose{};         // one line under the title: what to do here
    std::vector<Part> parts{};     // one under the other
    std::vector<double> widths{};  // mm, of the columns of forms and paragraphs; a table's own columns win
    bool landscape = true;
    bool printed = true;
    bool workings = false;    // only blocks, side by side
    bool locked = false;      // protected whole: nothing here is for typing
    unsigned tab = 0;         // colour of the sheet's tab, 0 = none
    int freezeColumns = 0;    // columns that stay in view beside the table, and come again on pages beside it
    bool trueSize = false;    // printed at 100 %, whatever the page
    bool paper = false;       // for somebody else: nothing but page numbers in the margins
    bool letterhead = false;  // title and purpose are those of its sender
    int pagesWide = 1;        // printed pages side by side, where one would be too small to read
};

struct Workbook {
    std::string title{};
    std::vector<Sheet> sheets{};
    std::map<std::string, std::string> names{};  // further defined names: name -> expression
    int blockSpare = 15;                         // rows that a block is taller than its table
};

}  // namespace trenchbook::sheets
