// Site notes against a small workbook: what is taken, and how each fault is told.
#include "jobbook/notes.h"

#include <gtest/gtest.h>

#include <fstream>

#include "jobbook/blank.h"

namespace {

using namespace trenchbook::sheets;
namespace fs = std::filesystem;

Workbook small() {
    Form job{.name = "Job",
             .fields = {
                 {.label = "Job", .name = "job_name"},
                 {.label = "Units", .name = "units", .value = "US", .validity = {.words = {"US", "metric"}}},
                 {.label = "Rain", .format = show::number(2)},
                 {.label = "Price", .kind = Kind::Computed, .format = show::money}}};
    Table runs{.name = "Runs",
               .columns = {{.heading = "From", .kind = Kind::Measured},
                           {.heading = "Length",
                            .kind = Kind::Measured,
                            .format = show::number(2),
                            .measure = Measure::Feet,
                            .validity = {.least = 0, .greatest = 300}},
                           {.heading = "Slope", .kind = Kind::Measured},
                           {.heading = "Flow", .format = show::number(1)}}};
    Table rules{.name = "Rules",
                .columns = {{.heading = "Key", .kind = Kind::Label},
                            {.heading = "Value", .kind = Kind::Kept, .format = show::number(2)},
                            {.heading = "Source", .kind = Kind::Label}},
                .content = {{"cover.lawn", "6", "a source"}, {"cover.drive", "12", "a source"}}};
    Table functions{.name = "Functions", .columns = {{.heading = "Name", .kind = Kind::Label}}};
    return {.title = "Small", .sheets = {{.name = "All", .parts = {job, runs, rules, functions}}}};
}

class Notes : public ::testing::Test {
  protected:
    void SetUp() override {
        std::string pattern = (fs::temp_directory_path() / "notes-XXXXXX").string();
        ASSERT_NE(mkdtemp(pattern.data()), nullptr);
        folder_ = pattern;
        give("job.csv", "field,value\nJob,Corner lot\n");
        give("runs.csv", "From,Length\nA,10\n");
    }
    void TearDown() override { fs::remove_all(folder_); }

    void give(const std::string& file, const std::string& bytes) { std::ofstream(folder_ / file) << bytes; }
    SiteNotes read() const { return readNotes(folder_, workbook_); }
    const TableNotes& table(const SiteNotes& notes, const std::string& name) const {
        for (const TableNotes& each : notes.tables)
            if (each.table->name == name) return each;
        throw std::out_of_range(name);
    }
    // Each fault of the folder, without the folder's own name.
    std::string faults() const {
        try {
            read();
            return "";
        } catch (const NotesError& wrong) {
            std::string all;
            for (const std::string& fault : wrong.faults())
                all += (all.empty() ? "" : "\n") + fault.substr(folder_.string().size() + 1);
            return all;
        }
    }

    Workbook workbook_ = small();
    fs::path folder_;
};

TEST_F(Notes, AnyOrderOfColumnsAndMissingOnes) {
    give("runs.csv", "Slope,From\r\n1/8 in/ft,A\r\n1:48,B\r\n");
    const SiteNotes notes = read();
    const TableNotes& runs = table(notes, "Runs");
    EXPECT_EQ(runs.columns, (std::vector<std::size_t>{2, 0}));
    ASSERT_EQ(runs.rows.size(), 2u);
    EXPECT_EQ(runs.rows[1], (std::vector<Value>{std::string("1:48"), std::string("B")}));
}

TEST_F(Notes, ShortRowsAndBlankColumns) {
    give("runs.csv", "From,Length,\nA\nB,12.5,\n");
    const SiteNotes notes = read();
    const TableNotes& runs = table(notes, "Runs");
    EXPECT_EQ(runs.rows[0], (std::vector<Value>{std::string("A"), Value()}));
    EXPECT_EQ(runs.rows[1], (std::vector<Value>{std::string("B"), 12.5}));
}

TEST_F(Notes, FixedRowsGoByTheirKey) {
    give("rules.csv", "Value,Key\n18,cover.drive\n");
    const SiteNotes notes = read();
    const TableNotes& rules = table(notes, "Rules");
    EXPECT_EQ(rules.columns, (std::vector<std::size_t>{1}));
    EXPECT_EQ(rules.places, (std::vector<std::size_t>{1}));
    EXPECT_EQ(rules.rows.at(0), (std::vector<Value>{18.0}));
    give("rules.csv", "Key,Value\ncover.roof,3\ncover.lawn,1\ncover.lawn,2\n");
    EXPECT_EQ(faults(),
              "rules.csv line 2, column 1 (Key): \"cover.roof\" is not a row of Rules\n"
              "rules.csv line 4, column 1 (Key): \"cover.lawn\" is there twice");
    give("rules.csv", "Value\n3\n");
    EXPECT_EQ(faults(),
              "rules.csv line 1, column 1: the column \"Key\" is missing: it says which row is meant");
}

TEST_F(Notes, MetricJobsHaveMetricLimits) {
    give("runs.csv", "From,Length\nA,100\n");
    EXPECT_EQ(faults(), "");
    give("job.csv", "field,value\nUnits,metric\n");
    EXPECT_EQ(faults(), "runs.csv line 2, column 2 (Length): \"100\" is outside 0 to 91.44 m");
}

TEST_F(Notes, EveryFaultWithFileLineAndColumn) {
    give("runs.csv", "From,Length,Flow,Depth,From\nA,x,1,2,B\n\nB,-4\nC,1,,,,stray\n");
    EXPECT_EQ(faults(),
              "runs.csv line 1, column 3: \"Flow\" is computed; leave the column out\n"
              "runs.csv line 1, column 4: \"Depth\" is not a heading of Runs; known are From, Length, Slope\n"
              "runs.csv line 1, column 5: the heading \"From\" is there twice\n"
              "runs.csv line 2, column 2 (Length): \"x\" is not a number\n"
              "runs.csv line 4, column 2 (Length): \"-4\" is outside 0 to 300 ft\n"
              "runs.csv line 5, column 6: \"stray\" stands under no heading");
}

TEST_F(Notes, FaultsOfForms) {
    give("job.csv", "field,value\nPrice,100\nHouse,x\nrain,4\nRain,lots\nUnits,imperial\nJob,a\nJob,b\n");
    EXPECT_EQ(
        faults(),
        "job.csv line 2, column 1 (field): \"Price\" is computed; leave it out\n"
        "job.csv line 3, column 1 (field): \"House\" is not a field of Job; known are Job, Units, Rain\n"
        "job.csv line 4, column 1 (field): \"rain\" is not a field of Job; write it as \"Rain\"\n"
        "job.csv line 5, column 2 (Rain): \"lots\" is not a number\n"
        "job.csv line 6, column 2 (Units): \"imperial\" is not one of: US, metric\n"
        "job.csv line 8, column 1 (field): \"Job\" is there twice");
    give("job.csv", "Job,Corner lot\n");
    EXPECT_EQ(faults(), "job.csv line 1, column 1: the first line must be field,value");
}

TEST_F(Notes, FilesThatAreMissingUnknownOrNotForTyping) {
    fs::remove(folder_ / "runs.csv");
    give("pipes.csv", "a\n1\n");
    give("Job.CSV", "field,value\n");
    give("functions.csv", "Name\nx\n");
    give("readme.txt", "not looked at");
    EXPECT_EQ(faults(),
              "Job.CSV: write the file name as job.csv\n"
              "functions.csv: everything there is computed, so there is nothing to bring in\n"
              "pipes.csv: no table has this name; known are job.csv, rules.csv, runs.csv\n"
              "runs.csv: this file is missing");
    folder_ /= "nowhere";
    EXPECT_THROW(read(), NotesError);
    folder_ = folder_.parent_path();
}

TEST_F(Notes, AFileThatCannotBeRead) {
    give("runs.csv", "From,Length\nA,\"10\n");
    EXPECT_EQ(faults(), "runs.csv line 2, column 2: the field starts with a quote that is never closed");
    give("runs.csv", "");
    EXPECT_EQ(faults(), "runs.csv: is empty; its first line holds the headings");
}

TEST_F(Notes, BlankNotesAreTakenAsTheyAre) {
    fs::remove_all(folder_);
    EXPECT_EQ(writeBlank(workbook_, folder_).size(), 3u);
    std::ifstream runs(folder_ / "runs.csv");
    std::string headings;
    std::getline(runs, headings);
    EXPECT_EQ(headings, "From,Length,Slope");
    const SiteNotes notes = read();
    EXPECT_TRUE(notes.forms.at(0).fields.empty());
    EXPECT_TRUE(table(notes, "Runs").rows.empty());
    EXPECT_THROW(writeBlank(workbook_, folder_), std::runtime_error) << "never over what is there";
}

}  // namespace
