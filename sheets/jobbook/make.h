// Site notes to a filled, computed workbook.
#pragma once

#include "jobbook/parts.h"

namespace trenchbook::sheets {

// A job read from its site notes; no office is needed to find out what is wrong with them.
class Job {
  public:
    // Throws NotesError. Tables get as many ready rows as the notes need.
    explicit Job(const std::filesystem::path& folder);
    Job(const Job&) = delete;
    Job& operator=(const Job&) = delete;

    // A new document with the notes in it, computed and ready to be stored. From the template when its ready rows do,
    // which saves most of the time.
    Document make(Office& office) const;

  private:
    Document blank(Office& office) const;

    Workbook workbook_;
    bool readyRowsDo_ = true;
    SiteNotes notes_;  // points into the workbook
};

// Throws std::runtime_error when the office has no add-in of this version.
void requireAddin(Office& office);

}  // namespace trenchbook::sheets
