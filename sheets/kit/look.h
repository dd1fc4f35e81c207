// How the workbooks look: one palette, one set of cell styles, one page.
#pragma once

#include <com/sun/star/sheet/XSpreadsheetDocument.hpp>

#include "kit/model.h"
#include "office/office.h"

namespace trenchbook::sheets {

namespace colour {
inline constexpr unsigned ink = 0x26323A;       // text, heading bars
inline constexpr unsigned clay = 0x9C4F2E;      // titles, the pipe
inline constexpr unsigned sand = 0xF4EDE2;      // unit rows
inline constexpr unsigned measured = 0xFFF8DF;  // inputs by kind
inline constexpr unsigned kept = 0xEDF3EA;
inline constexpr unsigned price = 0xE9EFF6;
inline constexpr unsigned permit = 0xF7EBEA;
inline constexpr unsigned line = 0xB9B2A5;  // borders of cells that are no input
inline constexpr unsigned edge = 0x7F776A;  // of inputs: their kinds are told by it, so it has to be seen
inline constexpr unsigned good = 0x2F6B3C;
inline constexpr unsigned look = 0x8A5A00;
inline constexpr unsigned bad = 0xA3201D;
inline constexpr unsigned water = 0x2C6E9B;
inline constexpr unsigned ground = 0x6B5B3E;
}  // namespace colour

// Styles beside those of the kinds.
namespace style {
inline constexpr const char* title = "Sheet title";
inline constexpr const char* purpose = "Sheet purpose";
inline constexpr const char* section = "Section";
inline constexpr const char* heading = "Heading";
inline constexpr const char* unit = "Unit";
inline constexpr const char* edge = "Edge row";
inline constexpr const char* fieldLabel = "Field label";
inline constexpr const char* fieldNote = "Field note";
inline constexpr const char* prose = "Prose";
inline constexpr const char* large = "Large";
inline constexpr const char* notice = "Notice";
inline constexpr const char* link = "Link";
inline constexpr const char* total = "Total";
inline constexpr const char* outdoors = "Outdoors";  // lines that are read and written into in the trench
inline constexpr const char* outdoorsText = "Outdoors text";
inline constexpr const char* standsOut = "Stands out";  // the number there that is looked for first
inline constexpr const char* boxed = "Boxed";           // what nobody may pass over
inline constexpr const char* typedOver = "Typed over";  // a value where a formula belongs
inline constexpr const char* verdictOk = "Verdict OK";
inline constexpr const char* verdictLook = "Verdict CHECK";
inline constexpr const char* verdictNo = "Verdict NO";
}  // namespace style

void makeCellStyles(const Reference<css::sheet::XSpreadsheetDocument>& document);
// A page style for one sheet: `pagesWide` pages wide, or at 100 %; job, sheet name and page numbers in the margins.
enum class Paper { Letter, A4 };
std::optional<Paper> paperNamed(const std::string& name);  // "Letter", "A4"
struct PaperSize {
    sal_Int32 width, height;  // 1/100 mm
};
PaperSize paperSize(Paper paper, bool landscape);
void makePageStyle(const Reference<css::sheet::XSpreadsheetDocument>& document, const std::string& name,
                   bool landscape, int pagesWide, Paper paper, bool trueSize = false, bool forOthers = false);

}  // namespace trenchbook::sheets
