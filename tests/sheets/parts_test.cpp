// Names of tables and forms in the shipped workbooks: they are the names of the CSV files.
#include <gtest/gtest.h>

#include <set>

#include "jobbook/notes.h"
#include "templates/job.h"

namespace {

using namespace trenchbook::sheets;

TEST(Parts, EveryTableAndFormHasAFileOfItsOwn) {
    for (const Shipped& shipped : shippedWorkbooks()) {
        std::set<std::string> files;
        const auto add = [&](const std::string& name) {
            EXPECT_TRUE(files.insert(notesFile(name)).second)
                << shipped.file << ": two parts are called " << name;
            EXPECT_EQ(name.find_first_of("/\\_.,;:"), std::string::npos) << name;
        };
        const Workbook workbook = shipped.make();
        for (const Sheet& sheet : workbook.sheets) {
            for (const Part& part : sheet.parts) {
                if (const Form* form = std::get_if<Form>(&part)) add(form->name);
                if (const Table* table = std::get_if<Table>(&part)) add(table->name);
            }
        }
    }
}

// A column that cannot be told from another by its heading could not be read.
TEST(Parts, HeadingsAndLabelsAreUnique) {
    for (const Shipped& shipped : shippedWorkbooks()) {
        const Workbook workbook = shipped.make();
        for (const Sheet& sheet : workbook.sheets) {
            for (const Part& part : sheet.parts) {
                std::set<std::string> seen;
                if (const Form* form = std::get_if<Form>(&part)) {
                    for (const Field& field : form->fields)
                        EXPECT_TRUE(seen.insert(field.label).second) << form->name << ": " << field.label;
                }
                if (const Table* table = std::get_if<Table>(&part)) {
                    for (const Column& column : table->columns)
                        EXPECT_TRUE(seen.insert(column.heading).second)
                            << table->name << ": " << column.heading;
                }
            }
        }
    }
}

// Job counts what cannot be used by the ; between and the unusual numbers by the = behind (fields_words).
TEST(Parts, NoLabelLooksLikeTheSignsBetweenThem) {
    std::size_t labels = 0;
    for (const Sheet& sheet : jobWorkbook({}).sheets)
        for (const Part& part : sheet.parts) {
            const auto plain = [&](const std::string& label) {
                ++labels;
                EXPECT_EQ(label.find('='), std::string::npos) << sheet.name << ": " << label;
                EXPECT_EQ(label.find("; "), std::string::npos) << sheet.name << ": " << label;
            };
            if (const Form* form = std::get_if<Form>(&part))
                for (const Field& field : form->fields)
                    if (isInput(field.kind)) plain(field.label);
            if (const Table* table = std::get_if<Table>(&part))
                for (const Column& column : table->columns) plain(column.heading);
        }
    EXPECT_GT(labels, 300u);
}

}  // namespace
