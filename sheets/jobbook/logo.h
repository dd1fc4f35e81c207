// The contractor's logo: a picture that lies on Account, put there by whoever keeps the workbook or taken from the notes;
// the letterheads of all papers show it.
//
//     takeLogo(document, notes / "logo.png");    // onto Account, in place of the one there
//     letterheadLogos(document);                 // from there onto Proposal, Invoice, Care…
#pragma once

#include <filesystem>
#include <optional>

#include "jobbook/parts.h"

namespace trenchbook::sheets {

// logo.png, logo.jpg, logo.jpeg, logo.gif or logo.svg in a folder of notes.
std::optional<std::filesystem::path> logoFile(const std::filesystem::path& notes);

// Throws Refused where the file is no picture that the office can read.
void takeLogo(const Document& document, const std::filesystem::path& file);
// That of another workbook that is open, or of one's file; nothing happens where it has none.
void takeLogo(const Document& document, const Document& from);
void takeStoredLogo(const Document& document, const std::filesystem::path& workbook);

// In the upper right corner of each letterhead; where Account has no picture theirs go.
void letterheadLogos(const Document& document);

}  // namespace trenchbook::sheets
