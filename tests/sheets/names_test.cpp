// Names that users' files carry: sheets, tables and forms with the headings and labels that are typed under,
// the defined names that formulas go by, rule keys, styles of the cell kinds. What is released neither goes
// nor changes; what is new is added with
//
//     TRENCHBOOK_ADD_NAMES=1 build/tests/sheets_tests --gtest_filter='SheetNames.*'
#include <gtest/gtest.h>

#include <algorithm>
#include <cstdlib>
#include <fstream>
#include <iterator>
#include <set>
#include <string>

#include "jobbook/notes.h"
#include "templates/job.h"
#include "trenchbook/rules/rules.h"

namespace trenchbook::sheets {
namespace {

using Names = std::set<std::string>;

void collect(const std::string& book, const Form& form, Names& names) {
    names.insert(book + " file " + notesFile(form.name));
    for (const Field& field : form.fields) {
        if (isInput(field.kind)) names.insert(book + " file " + notesFile(form.name) + ": " + field.label);
        // Hidden fields are workings: nobody types into them and no file of a user names them.
        if (!field.name.empty() && !field.helper) names.insert(book + " name " + field.name);
    }
}

void collect(const std::string& book, const Table& table, Names& names) {
    names.insert(book + " file " + notesFile(table.name));
    // The first column of fixed rows is not typed, but says which row a note is for.
    for (const Column& column : table.columns)
        if (isInput(column.kind) ||
            (hasFixedRows(table) && takesNotes(table) && &column == &table.columns.front()))
            names.insert(book + " file " + notesFile(table.name) + ": " + column.heading);
}

Names current() {
    Names names;
    for (const Shipped& shipped : shippedWorkbooks()) {
        const std::string book = shipped.file;
        const Workbook workbook = shipped.make();
        for (const auto& [name, expression] : workbook.names) names.insert(book + " name " + name);
        for (const Sheet& sheet : workbook.sheets) {
            names.insert(book + " sheet " + sheet.name);
            for (const Part& part : sheet.parts) {
                if (const Form* form = std::get_if<Form>(&part)) collect(book, *form, names);
                if (const Table* table = std::get_if<Table>(&part)) collect(book, *table, names);
                if (const Block* block = std::get_if<Block>(&part))
                    names.insert(book + " name " + block->name);
            }
        }
    }
    for (const Rule& rule : rules()) names.insert(std::string("rule ") + rule.key);
    for (const Kind kind :
         {Kind::Measured, Kind::Kept, Kind::Price, Kind::Permit, Kind::Computed, Kind::Verdict, Kind::Label})
        names.insert(std::string("style ") + styleName(kind));
    return names;
}

Names frozen() {
    Names names;
    std::ifstream in(TRENCHBOOK_SHEET_NAMES);
    for (std::string line; std::getline(in, line);) names.insert(line);
    return names;
}

TEST(SheetNames, AreThoseThatFilesCarry) {
    Names known = frozen();
    const Names now = current();
    if (std::getenv("TRENCHBOOK_ADD_NAMES") != nullptr) {
        known.insert(now.begin(), now.end());
        std::ofstream out(TRENCHBOOK_SHEET_NAMES);
        for (const std::string& name : known) out << name << "\n";
        ASSERT_TRUE(out.flush()) << "cannot write " << TRENCHBOOK_SHEET_NAMES;
    }
    ASSERT_FALSE(known.empty()) << "cannot read " << TRENCHBOOK_SHEET_NAMES;
    for (const std::string& name : now)
        EXPECT_TRUE(known.count(name)) << "new: " << name << "\nadd it with TRENCHBOOK_ADD_NAMES=1";
    for (const std::string& name : known)
        EXPECT_TRUE(now.count(name)) << "gone, and still in users' files: " << name;
}

// A list that could not tell a vanished heading from one that is there would be no list.
TEST(SheetNames, HoldWhatJobbookReads) {
    const Names now = current();
    for (const char* name :
         {"job sheet Runs", "job file runs.csv: Length", "job file job.csv: Rain", "job name units",
          "job file rules.csv: Key", "job file rules.csv: Value", "price-book file history.csv: Price",
          "ledger sheet Jobs", "rule cover.lawn", "style Measured on this lot", "job name runs_numbers"})
        EXPECT_TRUE(now.count(name)) << name;
    EXPECT_FALSE(now.count("job file runs.csv: Capacity")) << "computed: nobody types under it";
}

}  // namespace
}  // namespace trenchbook::sheets
