// Site notes: a folder with one CSV a table or form, checked against the workbook they are for before any
// office is started. What comes out can be put into the sheets as it is.
#pragma once

#include <filesystem>
#include <set>
#include <string>
#include <vector>

#include "commands/value.h"
#include "jobbook/refused.h"
#include "kit/model.h"

namespace trenchbook::sheets {

struct TableNotes {
    const Table* table = nullptr;
    std::vector<std::size_t> columns;      // places of the columns given, in the table
    std::vector<std::vector<Value>> rows;  // one value a given column
    // Tables with fixed rows (rules, hours): the ready row each note is for. Empty: one after the other.
    std::vector<std::size_t> places;
    // Row and column (as in `rows`) of blanks where the formula that came with the workbook stays.
    std::set<std::pair<std::size_t, std::size_t>> own;
};

struct FormNotes {
    const Form* form = nullptr;
    std::vector<std::pair<std::size_t, Value>> fields;  // place of the field in the form, value
};

struct SiteNotes {
    std::vector<TableNotes> tables;
    std::vector<FormNotes> forms;
};

// One fault of the notes, ready to print: `runs.csv line 5, column 4 (Length): "abc" is not a number`.
class NotesError : public Refused {
  public:
    explicit NotesError(std::vector<std::string> faults);
    const std::vector<std::string>& faults() const { return faults_; }

  private:
    std::vector<std::string> faults_;
};

// Whether notes are a whole job's, or come on top of a job that is there.
struct NotesFor {
    bool wholeJob = true;  // job.csv and runs.csv must be there
    bool metric = false;   // the units where the notes do not say
};
// Throws NotesError with every fault found. The workbook must outlive the notes.
SiteNotes readNotes(const std::filesystem::path& folder, const Workbook& workbook, const NotesFor& what = {});

// The file a table or form is read from and written to: "runs.csv", "order-head.csv".
std::string notesFile(const std::string& part);

// Whether notes can be given for it at all: it has an input column (field).
bool takesNotes(const Table& table);
bool takesNotes(const Form& form);
// A table whose rows are fixed: its first column is not for typing and names the row.
bool hasFixedRows(const Table& table);

}  // namespace trenchbook::sheets
