#include "jobbook/blocks.h"

#include <com/sun/star/beans/XPropertySet.hpp>
#include <com/sun/star/sheet/XArrayFormulaRange.hpp>
#include <com/sun/star/sheet/XNamedRange.hpp>
#include <com/sun/star/sheet/XNamedRanges.hpp>

#include "jobbook/rows.h"
#include "kit/layout.h"
#include "kit/names.h"

namespace trenchbook::sheets {
namespace {

Reference<css::sheet::XArrayFormulaRange> arrayOf(const Area& area) {
    return {area.range(), UNO_QUERY_THROW};
}

void redefine(const Document& document, const std::string& name, const std::string& sheet, const Area& area) {
    const Reference<css::beans::XPropertySet> properties(document, UNO_QUERY_THROW);
    const Reference<css::sheet::XNamedRanges> names(properties->getPropertyValue("NamedRanges"),
                                                    UNO_QUERY_THROW);
    const Reference<css::sheet::XNamedRange> range(names->getByName(wide(name)), UNO_QUERY_THROW);
    const auto corner = [](sal_Int32 column, sal_Int32 row) {
        return "$" + columnName(column) + "$" + std::to_string(row + 1);
    };
    range->setContent(wide("$'" + sheet + "'." + corner(area.at.StartColumn, area.at.StartRow) + ":" +
                           corner(area.at.EndColumn, area.at.EndRow)));
}

class Blocks {
  public:
    Blocks(const Document& document, const Workbook& description)
        : document_(document), layout_(description) {
        for (std::size_t s = 0; s < description.sheets.size(); ++s)
            for (const Placed& place : layout_.parts(s))
                if (const Block* block = std::get_if<Block>(place.part))
                    blocks_.push_back({&description.sheets[s], block, place.lastRow - place.firstRow + 1});
    }

    // Neither through an array nor close above one does the office insert many rows. Workings have no rows to insert.
    void clearOnPapers() const {
        for (const auto& [sheet, block, height] : blocks_)
            if (const std::optional<Area> area = namedArea(document_, block->name);
                area && !sheet->workings) {
                const Unprotected open(area->sheet);
                arrayOf(*area)->setArrayFormula({});
            }
    }

    void set() const {
        for (const auto& [sheet, block, height] : blocks_) {
            std::optional<Area> area = namedArea(document_, block->name);
            if (!area) continue;
            const sal_Int32 more = height - (area->at.EndRow - area->at.StartRow + 1);
            if (more <= 0 && sheet->workings) continue;
            const Unprotected open(area->sheet);
            if (sheet->workings) arrayOf(*area)->setArrayFormula({});
            if (more > 0) {
                if (const std::optional<Area> list = namedArea(document_, listRangeName(block->name)))
                    insertRows(*list, list->at.EndRow, more);
                area->at.EndRow += more;
                redefine(document_, block->name, sheet->name, *area);
            }
            arrayOf(*area)->setArrayFormula(
                wide("=" + layout_.blockFormula(*sheet, *block, area->at.StartRow, area->at.EndRow)));
        }
    }

  private:
    struct Described {
        const Sheet* sheet;
        const Block* block;
        sal_Int32 height;
    };
    Document document_;
    Layout layout_;
    std::vector<Described> blocks_;
};

}  // namespace

void growJob(const Document& document, const Workbook& description) {
    const Blocks blocks(document, description);
    blocks.clearOnPapers();
    makeRoom(document, description);
    blocks.set();
}

}  // namespace trenchbook::sheets
