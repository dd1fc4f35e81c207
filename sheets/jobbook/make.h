// Site notes to a filled, computed workbook.
#pragma once

#include <functional>

#include "commands/book.h"
#include "commands/sheets_shown.h"
#include "jobbook/parts.h"

namespace trenchbook::sheets {

// What is to be filled into a job workbook whose tables have as many ready rows as that needs.
class Job {
  public:
    // From site notes, into the template startsFrom(); throws NotesError. No office is needed to find out what is wrong with them.
    explicit Job(const std::filesystem::path& folder);
    // A new lot, into the template "job": what an old job's workbook keeps from job to job.
    explicit Job(const Book& old);
    Job(const Job&) = delete;
    Job& operator=(const Job&) = delete;

    // The template of the job's size, as shippedWorkbooks() names it.
    const std::string& startsFrom() const { return startsFrom_; }

    // Puts the notes into a document that was made from that template, computes it and makes it ready to be stored: its
    // tables get more rows and its blocks are taller where the ready ones do not do.
    void fill(const Document& document) const;

    const Workbook& workbook() const { return workbook_; }

  private:
    explicit Job(const std::function<SiteNotes(const Workbook&)>& read, bool mayStartLarge);

    std::string startsFrom_ = "job";
    Workbook workbook_;
    bool readyRowsDo_ = true;
    SiteNotes notes_;  // points into the workbook
};

// Sheets step aside and come back as the computed job needs them.
void arrangeSheets(const Document& document, SheetsShown shown);
// Gives the document the job's name as its title, which stands on every page.
void nameDocument(const Document& document);
// A document from a template remembers the path it lay in: that path is this machine's alone.
void forgetTemplate(const Document& document);
// Throws std::runtime_error when the office has no add-in of this version.
void requireAddin(Office& office);

}  // namespace trenchbook::sheets
