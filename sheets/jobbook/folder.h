// whole.pdf is the job's folder: a cover with contents and verdict, then what a reader of the job needs, in order. Sheets
// that are looked up and not read, and those that go to others as papers of their own, are no part of it.
#pragma once

#include <set>

#include <memory>

#include "jobbook/parts.h"

namespace trenchbook::sheets {

// The sheets of this job's folder, in its order: those whose tables this job fills.
std::vector<std::string> folderSheets(const Document& document);

// Changes the document for printing and leaves it so: close it afterwards.
class Folder {
  public:
    // Puts a sheet for the cover in front and the others behind it in the order of the folder, the crew's before the
    // drawing, which goes with them. The note for the owner stands before the drawing until finish(): its reader
    // takes it first.
    explicit Folder(const Document& document);
    ~Folder();
    Folder(const Folder&) = delete;
    Folder& operator=(const Folder&) = delete;

    const std::vector<std::string>& sheets() const { return sheets_; }  // the cover first
    // This sheet to its last part and without the columns that nobody reads on paper, so that no page is nearly empty.
    void trim(const std::string& sheet);
    // The same for all, in the folder's order; then writes the cover.
    void finish();

  private:
    class Cover;
    Document document_;
    std::vector<FoundPart> parts_;
    std::unique_ptr<Cover> cover_;
    std::vector<std::string> sheets_;
    bool careInFront_ = false;
};

}  // namespace trenchbook::sheets
