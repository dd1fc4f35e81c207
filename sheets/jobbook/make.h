// Site notes to a filled, computed workbook.
#pragma once

#include <functional>

#include "jobbook/parts.h"

namespace trenchbook::sheets {

// What is to be filled into a job workbook whose tables have as many ready rows as that needs.
class Job {
  public:
    // From site notes; throws NotesError. No office is needed to find out what is wrong with them.
    explicit Job(const std::filesystem::path& folder);
    // A new lot: what an old job's workbook keeps from job to job.
    explicit Job(const Document& old);
    Job(const Job&) = delete;
    Job& operator=(const Job&) = delete;

    // A new document with the notes in it, computed and ready to be stored: the template, its tables with more rows and
    // its blocks taller where the ready ones do not do.
    Document make(Office& office) const;

    const Workbook& workbook() const { return workbook_; }

  private:
    explicit Job(const std::function<SiteNotes(const Workbook&)>& read);

    Workbook workbook_;
    bool readyRowsDo_ = true;
    SiteNotes notes_;  // points into the workbook
};

// Gives the document the job's name as its title, which stands on every page.
void nameDocument(const Document& document);
// Throws std::runtime_error when the office has no add-in of this version.
void requireAddin(Office& office);

}  // namespace trenchbook::sheets
