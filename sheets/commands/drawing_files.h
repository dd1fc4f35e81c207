// The lot's drawing for other programs: DXF in feet or meters of the lot, and GeoJSON in longitude and latitude where
// two points of Layout have both typed; each once as planned and, where As built has rows, once as built.
//
//     for (const DrawingFile& file : drawingFiles(book).files) write(folder / file.name, file.text);
#pragma once

#include <string>
#include <vector>

#include "commands/book.h"
#include "trenchbook/core/text.h"

namespace trenchbook::sheets {

struct DrawingFile {
    std::string name, text;  // "drawing.dxf"
};
struct DrawingFiles {
    std::vector<DrawingFile> files{};
    Text says{};  // why there is no GeoJSON, or how far the places typed and the drawing disagree
};

// Throws Refused where nothing has a place.
DrawingFiles drawingFiles(const Book& book);

}  // namespace trenchbook::sheets
