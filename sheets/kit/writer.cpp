#include "kit/writer.h"

#include <algorithm>
#include <com/sun/star/beans/XPropertySet.hpp>
#include <com/sun/star/document/XDocumentPropertiesSupplier.hpp>
#include <com/sun/star/frame/XModel.hpp>
#include <com/sun/star/sheet/ConditionOperator.hpp>
#include <com/sun/star/sheet/ValidationAlertStyle.hpp>
#include <com/sun/star/sheet/ValidationType.hpp>
#include <com/sun/star/sheet/XArrayFormulaRange.hpp>
#include <com/sun/star/sheet/XCellRangeAddressable.hpp>
#include <com/sun/star/sheet/XCellRangeData.hpp>
#include <com/sun/star/sheet/XCellRangeFormula.hpp>
#include <com/sun/star/sheet/XNamedRanges.hpp>
#include <com/sun/star/sheet/XPrintAreas.hpp>
#include <com/sun/star/sheet/XSheetCondition.hpp>
#include <com/sun/star/sheet/XSheetConditionalEntries.hpp>
#include <com/sun/star/sheet/XSpreadsheet.hpp>
#include <com/sun/star/sheet/XSpreadsheetView.hpp>
#include <com/sun/star/sheet/XViewFreezable.hpp>
#include <com/sun/star/sheet/XViewPane.hpp>
#include <com/sun/star/table/CellHoriJustify.hpp>
#include <com/sun/star/table/XColumnRowRange.hpp>
#include <com/sun/star/text/XTextRange.hpp>
#include <com/sun/star/util/XMergeable.hpp>
#include <com/sun/star/util/XNumberFormatTypes.hpp>
#include <com/sun/star/util/XNumberFormatsSupplier.hpp>
#include <com/sun/star/util/XProtectable.hpp>
#include <com/sun/star/view/XSelectionSupplier.hpp>
#include <sstream>
#include <utility>

#include "kit/charts.h"
#include "kit/formulas.h"
#include "kit/links.h"

namespace trenchbook::sheets {
namespace {

using css::beans::XPropertySet;
using css::table::XCellRange;
using css::uno::Any;
using css::uno::Sequence;

void set(const Reference<css::uno::XInterface>& target, const char* name, const Any& value) {
    Reference<XPropertySet>(target, UNO_QUERY_THROW)
        ->setPropertyValue(rtl::OUString::createFromAscii(name), value);
}

constexpr const char *labelsStay = "Labels stay as they are", *besideThem = "Type into the box beside it.";
constexpr const char *headingsStay = "Headings stay as they are", *belowThem = "Type below them.";
constexpr const char *nothingTyped = "Nothing is typed here",
                     *oneAnswer = "These cells are one answer, worked out from the sheets before.";

// Short lines, each with some room behind it: the office makes the box of a help a little narrower than its words.
std::string inLines(const std::string& text) {
    constexpr std::size_t most = 60;  // characters
    const std::string room = text.empty() ? "" : "\u00a0\u00a0\u00a0\u00a0\u00a0\u00a0";
    std::istringstream words(text);
    std::string lines, line;
    for (std::string word; words >> word; line += (line.empty() ? "" : " ") + word)
        if (!line.empty() && line.size() + 1 + word.size() > most) {
            lines += line + room + "\n";
            line.clear();
        }
    return lines + line + room;
}

// Writes one sheet of the workbook; keeps the office objects that all parts need.
class SheetWriter {
  public:
    SheetWriter(const Layout& layout, std::size_t index, const Office& office,
                const Reference<css::sheet::XSpreadsheetDocument>& document, Paper paper)
        : layout_(layout),
          office_(office),
          sheet_(layout.workbook().sheets[index]),
          parts_(layout.parts(index)),
          document_(document),
          cells_(document->getSheets()->getByName(wide(sheet_.name)), UNO_QUERY_THROW),
          paper_(paper) {}

    // Names and fixed cells first, formulas when every name of the workbook is known.
    void writeFrame();
    void writeFormulas();
    void finish();

  private:
    // Rows that stay in sight: down to the headings of the table that begins the sheet, or that ends it after a few
    // fields. Headings with another table below them would stand over the wrong columns.
    int headingRows() const;
    // Rows that nothing typed makes higher keep the height they have. The office measures all others anew, cell by cell,
    // whenever the workbook is opened, which was a quarter of the time that it took.
    void settleHeights();
    // Rows that come filled, as high as in columns a little narrower: letters on another screen take more room.
    void fitWithRoom(const Table& table, const Placed& place);
    // Where typing begins: the first empty cell for input; the sheet's corner where it has none on the first screen, for
    // then what was worked out is to be seen.
    CellPlace firstInput() const;

    Reference<XCellRange> range(int column, int row, int lastColumn, int lastRow) {
        return cells_->getCellRangeByPosition(column, row, lastColumn, lastRow);
    }
    Reference<css::table::XCell> cell(int column, int row) { return cells_->getCellByPosition(column, row); }
    void put(int column, int row, const std::string& what) {
        if (what.empty()) return;
        if (what[0] == '=') {
            cell(column, row)->setFormula(wide(what));
        } else {
            Reference<css::text::XTextRange>(cell(column, row), UNO_QUERY_THROW)->setString(wide(what));
        }
    }
    void style(const Reference<XCellRange>& target, const char* name) {
        set(target, "CellStyle", Any(wide(name)));
    }
    void format(const Reference<XCellRange>& target, const Format& as);
    void validate(const Reference<XCellRange>& target, const Validity& validity, Measure measure);
    struct Help {
        std::string about, text;
    };
    void refuseTyping(const Reference<XCellRange>& target, const char* title, const char* message,
                      const Help& help = {});
    // A cell that takes no typing and, when it is gone to, says what stands below or beside it. Notes would do the same
    // and take fifty times as long whenever the workbook is opened.
    void help(int column, int row, const char* title, const char* message, const Help& says) {
        if (!says.text.empty()) refuseTyping(range(column, row, column, row), title, message, says);
    }
    void verdictColours(const Reference<XCellRange>& target, int column, int row);
    void markTypedOver(const Reference<XCellRange>& target, int column, int row);
    // Cells of the range from this one on look so where the condition holds.
    struct Look {
        std::string condition;
        const char* style;
    };
    void lookWhere(const Reference<XCellRange>& target, int column, int row, const std::vector<Look>& looks);
    void define(const std::string& name, int column, int row, int lastColumn, int lastRow);
    void rowHeight(int row, double mm);
    void hideColumn(int column);
    void hideRow(int row);
    void merge(int column, int row, int lastColumn) {
        Reference<css::util::XMergeable>(range(column, row, lastColumn, row), UNO_QUERY_THROW)->merge(true);
    }
    int lastColumn() const;

    void frame(const Form& form, const Placed& place);
    void frame(const Table& table, const Placed& place);
    void frame(const Paragraphs& text, const Placed& place);
    void frame(const Block& block, const Placed& place);
    static int lastCell(const Block& block, const Placed& place);
    void box(const Block& block, const Placed& place);
    void frame(const Chart&, const Placed&) {}
    void frame(const Break&, const Placed& place) {
        const Reference<css::table::XColumnRowRange> rows(range(0, place.at.row, 0, place.at.row),
                                                          UNO_QUERY_THROW);
        set(Reference<css::uno::XInterface>(rows->getRows()->getByIndex(0), UNO_QUERY_THROW),
            "IsStartOfNewPage", Any(true));
    }
    void formulas(const Form& form, const Placed& place);
    void formulas(const Table& table, const Placed& place);
    void fixedContent(const Table& table, const Layout::TablePlace& own, int number, int first);
    void formulas(const Paragraphs& text, const Placed& place);
    void formulas(const Block& block, const Placed& place);
    void formulas(const Chart&, const Placed&) {}
    void formulas(const Break&, const Placed&) {}

    const Layout& layout_;
    const Office& office_;
    const Sheet& sheet_;
    const std::vector<Placed>& parts_;
    Reference<css::sheet::XSpreadsheetDocument> document_;
    Reference<css::sheet::XSpreadsheet> cells_;
    Paper paper_;
    std::map<std::string, sal_Int32> formats_;
};

int SheetWriter::lastColumn() const {
    int last = 0;
    for (const Placed& place : parts_) {
        if (const Table* table = std::get_if<Table>(place.part))
            last = std::max(last, layout_.table(table->name).lastColumn());
        if (const Block* block = std::get_if<Block>(place.part))
            last = std::max(
                last, place.at.column + std::max(block->boxed, static_cast<int>(block->columns.size())) - 1);
        if (const Form* form = std::get_if<Form>(place.part)) last = std::max(last, form->noteSpan + 2);
        if (const Paragraphs* text = std::get_if<Paragraphs>(place.part))
            last = std::max(last, text->span - 1);
    }
    return last;
}

void SheetWriter::format(const Reference<XCellRange>& target, const Format& as) {
    std::string code;
    const std::string zeros =
        as.decimals > 0 ? "." + std::string(static_cast<std::size_t>(as.decimals), '0') : "";
    switch (as.as) {
        case Format::As::Text:
            code = "@";
            break;
        case Format::As::Number:
            code = "#,##0" + zeros;
            break;
        case Format::As::Percent:
            code = "0" + zeros + "%";
            break;
        case Format::As::Money:
            code = "#,##0.00";
            break;
        case Format::As::Date:
            code = "YYYY-MM-DD";
            break;
        case Format::As::General:
            return;
    }
    if (!formats_.count(code)) {
        const Reference<css::util::XNumberFormatsSupplier> supplier(document_, UNO_QUERY_THROW);
        const auto formats = supplier->getNumberFormats();
        css::lang::Locale locale;
        locale.Language = "en";
        locale.Country = "US";
        sal_Int32 key = formats->queryKey(wide(code), locale, false);
        if (key < 0) key = formats->addNew(wide(code), locale);
        formats_[code] = key;
    }
    set(target, "NumberFormat", Any(formats_[code]));
}

void SheetWriter::validate(const Reference<XCellRange>& target, const Validity& validity, Measure measure) {
    const bool list = !validity.words.empty() || !validity.listFormula.empty();
    if (!list && !validity.least && !validity.greatest) return;
    Reference<XPropertySet> target_set(target, UNO_QUERY_THROW);
    Reference<XPropertySet> rule(target_set->getPropertyValue("Validation"), UNO_QUERY_THROW);
    const Reference<css::sheet::XSheetCondition> condition(rule, UNO_QUERY_THROW);
    if (list) {
        set(rule, "Type", Any(css::sheet::ValidationType_LIST));
        std::string choices;
        for (const std::string& word : validity.words)
            choices += (choices.empty() ? "\"" : ";\"") + word + "\"";
        condition->setFormula1(
            wide(validity.listFormula.empty() ? choices : layout_.expand(validity.listFormula, nullptr, 0)));
        std::string offered;
        for (const std::string& word : validity.words)
            if (!validity.several || word.find(" + ") == word.npos)
                offered += (offered.empty() ? "" : ", ") + word;
        set(rule, "ErrorTitle", Any(wide("Not in the list")));
        set(rule, "ErrorMessage",
            Any(wide((offered.empty() ? "" : "The list: " + offered + ". ") +
                     (validity.several ? "Several stand with + between. " : "") +
                     (validity.strict ? "Alt+Down opens it in the cell." : "OK keeps what you typed."))));
    } else {
        set(rule, "Type", Any(css::sheet::ValidationType_DECIMAL));
        condition->setOperator(css::sheet::ConditionOperator_BETWEEN);
        condition->setFormula1(wide(limitFormula(validity.least.value_or(-1e9), measure)));
        condition->setFormula2(wide(limitFormula(validity.greatest.value_or(1e9), measure)));
        set(rule, "ErrorTitle", Any(wide("Please check this value")));
        const auto usual = [&](double perUnit, const std::string& unit) {
            const auto side = [&](const std::optional<double>& at) {
                return at ? plain(*at * perUnit, 3) : std::string("anything");
            };
            return side(validity.least) + " to " + side(validity.greatest) + (unit.empty() ? "" : " " + unit);
        };
        const auto& unit = addin::info(measure);
        std::string words = "Usual here: " + usual(1, measure == Measure::Plain ? "" : unit.us.en);
        if (addin::hasUnit(measure))
            words += "; in a metric job " + usual(unit.siPerUs / unit.siPerMetric, unit.metric.en);
        set(rule, "ErrorMessage", Any(wide(words + ".")));
    }
    set(rule, "ErrorAlertStyle",
        Any(validity.strict && list ? css::sheet::ValidationAlertStyle_STOP
                                    : css::sheet::ValidationAlertStyle_INFO));
    set(rule, "ShowErrorMessage", Any(true));
    set(rule, "IgnoreBlankCells", Any(true));
    target_set->setPropertyValue("Validation", Any(rule));
}

// For cells that others read at their place; a protected sheet would also refuse to insert rows.
void SheetWriter::refuseTyping(const Reference<XCellRange>& target, const char* title, const char* message,
                               const Help& help) {
    const Reference<XPropertySet> target_set(target, UNO_QUERY_THROW);
    const Reference<XPropertySet> rule(target_set->getPropertyValue("Validation"), UNO_QUERY_THROW);
    set(rule, "Type", Any(css::sheet::ValidationType_TEXT_LEN));
    const Reference<css::sheet::XSheetCondition> condition(rule, UNO_QUERY_THROW);
    condition->setOperator(css::sheet::ConditionOperator_EQUAL);
    condition->setFormula1("0");
    set(rule, "ErrorAlertStyle", Any(css::sheet::ValidationAlertStyle_STOP));
    set(rule, "ErrorTitle", Any(wide(title)));
    set(rule, "ErrorMessage", Any(wide(message)));
    set(rule, "ShowErrorMessage", Any(true));
    set(rule, "InputTitle", Any(wide(help.about)));
    set(rule, "InputMessage", Any(wide(inLines(help.text))));
    set(rule, "ShowInputMessage", Any(!help.text.empty()));
    target_set->setPropertyValue("Validation", Any(rule));
}

void SheetWriter::lookWhere(const Reference<XCellRange>& target, int column, int row,
                            const std::vector<Look>& looks) {
    const Reference<XPropertySet> target_set(target, UNO_QUERY_THROW);
    const Reference<css::sheet::XSheetConditionalEntries> entries(
        target_set->getPropertyValue("ConditionalFormat"), UNO_QUERY_THROW);
    css::table::CellAddress anchor;
    anchor.Sheet =
        Reference<css::sheet::XCellRangeAddressable>(target, UNO_QUERY_THROW)->getRangeAddress().Sheet;
    anchor.Column = column;
    anchor.Row = row;
    for (const Look& look : looks)
        entries->addNew(properties({property("Operator", Any(css::sheet::ConditionOperator_FORMULA)),
                                    property("Formula1", Any(wide(look.condition))),
                                    property("SourcePosition", Any(anchor)),
                                    property("StyleName", Any(wide(look.style)))}));
    target_set->setPropertyValue("ConditionalFormat", Any(entries));
}

void SheetWriter::verdictColours(const Reference<XCellRange>& target, int column, int row) {
    const std::string address = columnName(column) + std::to_string(row + 1);
    std::vector<Look> looks;
    for (const auto& [word, styleFor] :
         std::initializer_list<std::pair<std::string, const char*>>{{"NO", style::verdictNo},
                                                                    {"SIN", style::verdictNo},
                                                                    {"CHECK", style::verdictLook},
                                                                    {"REVISE", style::verdictLook},
                                                                    {"OK", style::verdictOk}})
        looks.push_back(
            {"LEFT(" + address + ";" + std::to_string(word.size()) + ")=\"" + word + "\"", styleFor});
    lookWhere(target, column, row, looks);
}

void SheetWriter::markTypedOver(const Reference<XCellRange>& target, int column, int row) {
    lookWhere(target, column, row,
              {{"NOT(ISFORMULA(" + columnName(column) + std::to_string(row + 1) + "))", style::typedOver}});
}

void SheetWriter::define(const std::string& name, int column, int row, int lastColumn, int lastRow) {
    const Reference<XPropertySet> properties(document_, UNO_QUERY_THROW);
    const Reference<css::sheet::XNamedRanges> names(properties->getPropertyValue("NamedRanges"),
                                                    UNO_QUERY_THROW);
    std::string address = "$'" + sheet_.name + "'.$" + columnName(column) + "$" + std::to_string(row + 1);
    if (column != lastColumn || row != lastRow)
        address += ":$" + columnName(lastColumn) + "$" + std::to_string(lastRow + 1);
    names->addNewByName(wide(name), wide(address), css::table::CellAddress(), 0);
}

void SheetWriter::rowHeight(int row, double mm) {
    const Reference<css::table::XColumnRowRange> rows(range(0, row, 0, row), UNO_QUERY_THROW);
    set(Reference<css::uno::XInterface>(rows->getRows()->getByIndex(0), UNO_QUERY_THROW), "Height",
        Any(static_cast<sal_Int32>(mm * 100)));
}

void SheetWriter::hideColumn(int column) {
    const Reference<css::table::XColumnRowRange> columns(range(column, 0, column, 0), UNO_QUERY_THROW);
    set(Reference<css::uno::XInterface>(columns->getColumns()->getByIndex(0), UNO_QUERY_THROW), "IsVisible",
        Any(false));
}

void SheetWriter::hideRow(int row) {
    const Reference<css::table::XColumnRowRange> rows(range(0, row, 0, row), UNO_QUERY_THROW);
    set(Reference<css::uno::XInterface>(rows->getRows()->getByIndex(0), UNO_QUERY_THROW), "IsVisible",
        Any(false));
}

void SheetWriter::writeFrame() {
    const Reference<css::table::XColumnRowRange> all(cells_, UNO_QUERY_THROW);
    const auto widen = [&](int column, double mm) {
        set(Reference<css::uno::XInterface>(all->getColumns()->getByIndex(column), UNO_QUERY_THROW), "Width",
            Any(static_cast<sal_Int32>(mm * 100)));
    };
    for (std::size_t c = 0; c < sheet_.widths.size(); ++c) widen(static_cast<int>(c), sheet_.widths[c]);

    style(range(0, 0, 0, 0), style::title);
    style(range(0, 1, 0, 2), style::purpose);
    if (sheet_.purpose.rfind('=', 0) != 0) put(0, 1, sheet_.purpose);
    rowHeight(0, 8.5);
    for (const Placed& place : parts_) {
        if (const Table* table = std::get_if<Table>(place.part))
            for (std::size_t c = 0; c < table->columns.size(); ++c)
                widen(layout_.table(table->name).columnAt(static_cast<int>(c)), table->columns[c].width);
        if (const Block* block = std::get_if<Block>(place.part); block != nullptr && !sheet_.workings)
            for (std::size_t c = 0; c < block->columns.size() && block->boxed == 0; ++c)
                widen(static_cast<int>(c), block->columns[c].width);
        std::visit([&](const auto& part) { frame(part, place); }, *place.part);
    }
    if (sheet_.tab != 0) set(cells_, "TabColor", Any(static_cast<sal_Int32>(sheet_.tab)));
}

void SheetWriter::frame(const Form& form, const Placed& place) {
    if (!form.heading.empty()) {
        style(range(0, place.at.row, 0, place.at.row), style::section);
        if (form.heading.front() != '=') put(0, place.at.row, form.heading);
    }
    define(formRangeName(form.name), 0, place.firstRow, 1, place.lastRow);
    style(range(0, place.firstRow, 0, place.lastRow), style::fieldLabel);
    if (!sheet_.workings) refuseTyping(range(0, place.firstRow, 0, place.lastRow), labelsStay, besideThem);
    style(range(2, place.firstRow, 2, place.lastRow), style::fieldNote);
    style(range(3, place.firstRow, 3, place.lastRow), style::fieldNote);
    int row = place.firstRow;
    for (const Field& field : form.fields) {
        put(0, row, field.label);
        const bool wide = field.wide || (field.kind == Kind::Verdict && field.note.empty());
        if (wide) {
            help(0, row, labelsStay, besideThem, {field.label, field.note});
            style(range(1, row, 2 + form.noteSpan, row), styleName(field.kind));
            merge(1, row, 2 + form.noteSpan);
        } else {
            put(3, row, field.note);
        }
        if (form.noteSpan > 1 && !field.note.empty() && !wide) {
            style(range(3, row, 2 + form.noteSpan, row), style::fieldNote);
            merge(3, row, 2 + form.noteSpan);
        }
        const auto value = range(1, row, 1, row);
        style(value, styleName(field.kind));
        format(value, field.kind == Kind::Verdict || field.value.rfind("=", 0) == 0
                          ? (field.format.as == Format::As::Text ? show::general : field.format)
                          : field.format);
        if (field.format.as == Format::As::Text)
            set(value, "HoriJustify", Any(css::table::CellHoriJustify_LEFT));
        validate(value, field.validity, field.measure);
        if (!field.name.empty()) define(field.name, 1, row, 1, row);
        if (field.helper && !sheet_.workings) hideRow(row);
        ++row;
    }
}

void SheetWriter::frame(const Table& table, const Placed& place) {
    const Layout::TablePlace& own = layout_.table(table.name);
    const int last = own.lastColumn();
    const int headings = place.at.row;
    // Nothing between its columns and its hidden ones, which stand behind the sheet's widest table.
    const int shown = std::min(own.firstHelper - 1, last);
    for (const auto& [from, to] : {std::pair(0, shown), std::pair(shown + 1 + own.helperShift, last)}) {
        if (from > to) continue;
        style(range(from, headings, to, headings), style::heading);
        style(range(from, headings + 1, to, headings + 1), style::unit);
        // The thin row stands where the unit row ends and the closing row after the ready rows; both take no input.
        for (const int edge : {place.firstRow, place.lastRow})
            style(range(from, edge, to, edge), style::edge);
    }
    for (const int edge : {place.firstRow, place.lastRow}) rowHeight(edge, 1.6);
    define(tableRangeName(table.name), 0, headings, last, place.lastRow);

    int number = 0;
    const int first = place.firstRow + 1;
    const int end = place.lastRow - 1;
    for (const Column& spec : table.columns) {
        const int column = own.columnAt(number++);
        put(column, headings, headingCell(spec));
        const auto body = range(column, first, column, end);
        style(body, styleName(spec.kind));
        const bool formula = !spec.formula.empty();
        format(body, formula && spec.format.as == Format::As::Text ? show::general : spec.format);
        if (spec.helper) hideColumn(column);
        if (spec.centred) set(body, "HoriJustify", Any(css::table::CellHoriJustify_CENTER));
        if (spec.wrapped) set(body, "IsTextWrapped", Any(true));
        validate(body, spec.validity, spec.measure);
        if (spec.kind == Kind::Verdict) verdictColours(body, column, first);
        if (spec.span > 1) {
            style(range(column, headings, column + spec.span - 1, headings), style::heading);
            style(range(column, headings + 1, column + spec.span - 1, headings + 1), style::unit);
            style(range(column, first, column + spec.span - 1, end), styleName(spec.kind));
            for (int row = headings; row <= end; ++row)
                if (row != place.firstRow) merge(column, row, column + spec.span - 1);
        }
        if (table.total && spec.format.as == Format::As::Money && column > 0) {
            style(range(column, place.lastRow + 1, column, place.lastRow + 1), style::total);
            format(range(column, place.lastRow + 1, column, place.lastRow + 1), show::money);
        }
    }
    for (const auto& [from, to] : workedOut(table)) {
        const int start = own.columnOf(from);
        markTypedOver(range(start, first, own.columnOf(to), end), start, first);
    }
    for (const int edge : {place.firstRow, place.lastRow})
        refuseTyping(range(0, edge, last, edge), "This row stays blank",
                     "It marks the table's edge: insert rows between the two thin rows.");
    refuseTyping(range(0, headings, last, headings + 1), headingsStay, belowThem);
    number = 0;
    for (const Column& spec : table.columns) {
        const int column = own.columnAt(number++);
        if (!spec.helper) help(column, headings, headingsStay, belowThem, {spec.heading, spec.note});
    }
}

void SheetWriter::frame(const Paragraphs& text, const Placed& place) {
    if (!text.heading.empty()) {
        style(range(0, place.at.row, 0, place.at.row), style::section);
        if (text.heading.front() != '=') put(0, place.at.row, text.heading);
    }
    const int first = text.names.empty() ? 0 : 1;
    if (first == 1) style(range(0, place.firstRow, 0, place.lastRow), style::link);
    for (int row = place.firstRow; row <= place.lastRow; ++row) {
        merge(first, row, text.span - 1);
        style(range(first, row, text.span - 1, row), style::prose);
        // Letters that are read in the trench are larger.
        if (text.linesHigh > 1 || text.outdoors) rowHeight(row, (text.outdoors ? 5.2 : 4.3) * text.linesHigh);
    }
    if (text.outdoors) style(range(first, place.firstRow, text.span - 1, place.lastRow), style::outdoorsText);
    if (text.notice) style(range(first, place.firstRow, text.span - 1, place.lastRow), style::notice);
    if (text.large) style(range(first, place.firstRow, text.span - 1, place.firstRow), style::large);
    if (text.verdict || text.judged)
        verdictColours(
            range(first, place.firstRow, text.span - 1, text.judged ? place.lastRow : place.firstRow), first,
            place.firstRow);
}

// The last column that the block's formula fills.
int SheetWriter::lastCell(const Block& block, const Placed& place) {
    const auto cells = std::count_if(block.columns.begin(), block.columns.end(),
                                     [](const BlockColumn& column) { return !column.pen; });
    return place.at.column + static_cast<int>(cells) - 1;
}

// Its heading is that of a part; under it a box a row.
void SheetWriter::box(const Block& block, const Placed& place) {
    const int last = place.at.column + block.boxed - 1;
    rowHeight(place.at.row + 1, 0.5);
    for (int row = place.firstRow; row <= place.lastRow; ++row) {
        style(range(place.at.column, row, last, row), style::boxed);
        merge(place.at.column, row, last);
    }
}

void SheetWriter::frame(const Block& block, const Placed& place) {
    const int column = place.at.column;
    const int last = column + static_cast<int>(block.columns.size()) - 1;
    int headings = place.at.row;
    if (sheet_.workings) {
        style(range(column, headings, column, headings), style::section);
        put(column, headings, block.name);
        style(range(column, headings + 1, column, headings + 1), style::fieldNote);
        put(column, headings + 1, block.says);
        headings += 2;
    } else {
        style(range(column, headings + 1, last, headings + 1), style::unit);
        const bool outdoors = block.rowHeight > 0;
        style(range(column, place.firstRow, last, place.lastRow),
              outdoors ? style::outdoors : styleName(Kind::Computed));
        for (int row = place.firstRow; outdoors && row <= place.lastRow; ++row)
            rowHeight(row, block.rowHeight);
        if (block.boxed > 0) box(block, place);
        refuseTyping(range(column, headings, last, place.firstRow - 1), nothingTyped, oneAnswer);
        // In the answer's own cells the office itself refuses to change a part of an array.
        if (const int pen = lastCell(block, place) + 1; pen <= last)
            refuseTyping(range(pen, place.firstRow, last, place.lastRow), nothingTyped, oneAnswer);
        define(listRangeName(block.name), column, headings, last, place.lastRow);
    }
    style(range(column, headings, last, headings), block.boxed > 0 ? style::section : style::heading);
    for (int c = column; c <= last; ++c) {
        const BlockColumn& spec = block.columns[static_cast<std::size_t>(c - column)];
        put(c, headings, spec.heading);
        if (sheet_.workings) continue;
        help(c, headings, nothingTyped, oneAnswer, {spec.heading, spec.note});
        const auto body = range(c, place.firstRow, c, place.lastRow);
        format(body, spec.format);
        if (spec.standsOut) style(body, style::standsOut);
        if (spec.centred) set(body, "HoriJustify", Any(css::table::CellHoriJustify_CENTER));
        if (spec.wrapped) set(body, "IsTextWrapped", Any(true));
    }
    define(block.name, column, place.firstRow, lastCell(block, place), place.lastRow);
}

void SheetWriter::writeFormulas() {
    put(0, 0, layout_.expand(titleFormula(sheet_), nullptr, 0));
    if (sheet_.purpose.rfind('=', 0) == 0) put(0, 1, layout_.expand(sheet_.purpose, nullptr, 1));
    put(0, 2, layout_.expand(legendFormula(sheet_), nullptr, 2));
    for (const Placed& place : parts_)
        std::visit([&](const auto& part) { formulas(part, place); }, *place.part);
}

void SheetWriter::formulas(const Form& form, const Placed& place) {
    if (form.heading.starts_with('='))
        put(0, place.at.row, layout_.expand(form.heading, nullptr, place.at.row));
    int row = place.firstRow;
    for (const Field& field : form.fields) {
        const bool typed = field.format.as == Format::As::Number || field.format.as == Format::As::Percent ||
                           field.format.as == Format::As::Money;
        if (field.value.rfind("=", 0) == 0) {
            put(1, row, layout_.expand(field.value, nullptr, row));
            if (field.kind == Kind::Verdict) verdictColours(range(1, row, 1, row), 1, row);
        } else if (!field.value.empty() && typed) {
            cell(1, row)->setValue(std::stod(field.value));
        } else {
            put(1, row, field.value);
        }
        put(2, row, unitFormula(field.measure, field.unit));
        ++row;
    }
}

void SheetWriter::formulas(const Table& table, const Placed& place) {
    const Layout::TablePlace& own = layout_.table(table.name);
    const int first = place.firstRow + 1;
    const int end = place.lastRow - 1;
    int number = 0;
    for (const Column& spec : table.columns) {
        const int column = own.columnAt(number++);
        if (!spec.shown.empty()) put(column, place.at.row, layout_.expand(spec.shown, nullptr, place.at.row));
        put(column, place.at.row + 1, unitFormula(spec.measure, spec.unit));
        if (!spec.formula.empty()) {
            Sequence<Sequence<rtl::OUString>> lines(end - first + 1);
            for (int row = first; row <= end; ++row) {
                Sequence<rtl::OUString> line(1);
                line.getArray()[0] = wide("=" + layout_.expand(spec.formula, &own, row));
                lines.getArray()[row - first] = line;
            }
            Reference<css::sheet::XCellRangeFormula>(range(column, first, column, end), UNO_QUERY_THROW)
                ->setFormulaArray(lines);
        }
        if (table.total && spec.format.as == Format::As::Money && column > 0) {
            const std::string letter = columnName(column);
            const std::string amounts = letter + std::to_string(place.firstRow + 1) + ":" + letter +
                                        std::to_string(place.lastRow + 1);
            put(column, place.lastRow + 1, "=IF(COUNT(" + amounts + ")=0;\"\";SUM(" + amounts + "))");
        }
    }
    if (!table.content.empty())
        for (std::size_t c = 0; c < table.columns.size(); ++c)
            fixedContent(table, own, static_cast<int>(c), first);
}

// A column of fixed rows in one call; its formulas, which that call would take for text, one by one.
void SheetWriter::fixedContent(const Table& table, const Layout::TablePlace& own, int number, int first) {
    const auto at = static_cast<std::size_t>(number);
    const int column = own.columnAt(number);
    const bool text = table.columns[at].format.as == Format::As::Text;
    Sequence<Sequence<Any>> lines(static_cast<sal_Int32>(table.content.size()));
    bool filled = false;
    for (std::size_t r = 0; r < table.content.size(); ++r) {
        const std::string what = contentAt(table, r, at);
        filled = filled || !what.empty();
        char* rest = nullptr;
        const double value = std::strtod(what.c_str(), &rest);
        const bool isNumber = !text && !what.empty() && *rest == '\0';
        Sequence<Any> line(1);
        line.getArray()[0] = isNumber ? Any(value) : Any(wide(what.rfind("=", 0) == 0 ? "" : what));
        lines.getArray()[r] = line;
    }
    if (!filled) return;
    Reference<css::sheet::XCellRangeData>(range(column, first, column, first + lines.getLength() - 1),
                                          UNO_QUERY_THROW)
        ->setDataArray(lines);
    for (std::size_t r = 0; r < table.content.size(); ++r) {
        const int row = first + static_cast<int>(r);
        if (const std::string cell = contentAt(table, r, at); cell.starts_with('='))
            put(column, row, "=" + layout_.expand(cell.substr(1), &own, row));
    }
}

void SheetWriter::formulas(const Paragraphs& text, const Placed& place) {
    if (text.heading.rfind("=", 0) == 0)
        put(0, place.at.row, layout_.expand(text.heading, nullptr, place.at.row));
    const int column = text.names.empty() ? 0 : 1;
    for (std::size_t n = 0; n < text.lines.size(); ++n) {
        const std::string& line = text.lines[n];
        const int row = place.firstRow + static_cast<int>(n);
        if (column == 1) put(0, row, text.names[n]);
        put(column, row, line.rfind("=", 0) == 0 ? layout_.expand(line, nullptr, row) : line);
    }
}

void SheetWriter::formulas(const Block& block, const Placed& place) {
    const int column = place.at.column;
    const int last = column + static_cast<int>(block.columns.size()) - 1;
    const std::string formula = layout_.blockFormula(sheet_, block, place.firstRow, place.lastRow);
    Reference<css::sheet::XArrayFormulaRange>(
        range(column, place.firstRow, lastCell(block, place), place.lastRow), UNO_QUERY_THROW)
        ->setArrayFormula(wide("=" + formula));
    if (sheet_.workings) return set(cells_, "IsVisible", Any(false));
    for (int c = column; c <= last; ++c) {
        const BlockColumn& spec = block.columns[static_cast<std::size_t>(c - column)];
        if (!spec.shown.empty()) put(c, place.at.row, layout_.expand(spec.shown, nullptr, place.at.row));
        put(c, place.at.row + 1, unitFormula(spec.measure, spec.unit));
    }
}

void SheetWriter::settleHeights() {
    if (sheet_.workings) {  // hundreds of cells a row, which nobody looks at
        int last = 0;
        for (const Placed& place : parts_) last = std::max(last, place.lastRow);
        const Reference<css::table::XColumnRowRange> all(range(0, 0, 0, last), UNO_QUERY_THROW);
        return set(Reference<css::uno::XInterface>(all->getRows(), UNO_QUERY_THROW), "Height",
                   Any(sal_Int32(452)));
    }
    constexpr sal_Int32 oneLine =
        600;  // hundredths of a millimeter; two lines of the workbook's letters take over 800
    enum class Row { OneLine, Settled, Grows };
    std::vector<Row> kinds;
    for (const Placed& place : parts_) {
        kinds.resize(std::max(kinds.size(), static_cast<std::size_t>(place.lastRow) + 2), Row::OneLine);
        const Table* table = std::get_if<Table>(place.part);
        if (table == nullptr) continue;
        const bool full = table->content.size() == static_cast<std::size_t>(table->rows);
        if (full) fitWithRoom(*table, place);
        if (full || std::any_of(table->columns.begin(), table->columns.end(), [](const Column& column) {
                return column.wrapped || column.kind == Kind::Label;
            }))
            std::fill(kinds.begin() + place.firstRow + 1, kinds.begin() + place.lastRow,
                      full ? Row::Settled : Row::Grows);
    }
    const auto rows = Reference<css::table::XColumnRowRange>(cells_, UNO_QUERY_THROW)->getRows();
    const auto heightOf = [&](int row) {
        sal_Int32 height = 0;
        Reference<XPropertySet>(rows->getByIndex(row), UNO_QUERY_THROW)->getPropertyValue("Height") >>=
            height;
        return height;
    };
    const auto end = static_cast<int>(kinds.size());
    for (int first = 0; first < end;) {
        const Row kind = kinds[static_cast<std::size_t>(first)];
        const sal_Int32 height = kind == Row::Grows ? 0 : heightOf(first);
        int next = first + 1;
        if (height > 0 && (kind == Row::Settled || height < oneLine)) {
            while (next < end && kinds[static_cast<std::size_t>(next)] == kind && heightOf(next) == height)
                ++next;
            const Reference<css::table::XColumnRowRange> same(range(0, first, 0, next - 1), UNO_QUERY_THROW);
            set(Reference<css::uno::XInterface>(same->getRows(), UNO_QUERY_THROW), "Height", Any(height));
        }
        first = next;
    }
}

void SheetWriter::fitWithRoom(const Table& table, const Placed& place) {
    constexpr double narrower = 0.94;
    const auto columns = Reference<css::table::XColumnRowRange>(cells_, UNO_QUERY_THROW)->getColumns();
    std::vector<sal_Int32> widths;
    const auto columnOf = [&](std::size_t number) {
        return Reference<XPropertySet>(
            columns->getByIndex(layout_.table(table.name).columnAt(static_cast<int>(number))),
            UNO_QUERY_THROW);
    };
    for (std::size_t c = 0; c < table.columns.size(); ++c) {
        columnOf(c)->getPropertyValue("Width") >>= widths.emplace_back();
        columnOf(c)->setPropertyValue("Width", Any(static_cast<sal_Int32>(widths.back() * narrower)));
    }
    const Reference<css::table::XColumnRowRange> body(range(0, place.firstRow + 1, 0, place.lastRow - 1),
                                                      UNO_QUERY_THROW);
    set(Reference<css::uno::XInterface>(body->getRows(), UNO_QUERY_THROW), "OptimalHeight", Any(true));
    for (std::size_t c = 0; c < table.columns.size(); ++c)
        columnOf(c)->setPropertyValue("Width", Any(widths[c]));
}

void SheetWriter::finish() {
    settleHeights();
    const Reference<css::sheet::XPrintAreas> areas(cells_, UNO_QUERY_THROW);
    if (sheet_.printed) {
        makePageStyle(document_, sheet_.name, sheet_.landscape, sheet_.pagesWide, paper_, sheet_.trueSize,
                      sheet_.paper);
        set(cells_, "PageStyle", Any(wide(sheet_.name)));
        int lastRow = 3;
        for (const Placed& place : parts_) {
            const Paragraphs* words = std::get_if<Paragraphs>(place.part);
            if (words == nullptr || words->printed) lastRow = std::max(lastRow, place.lastRow + 1);
        }
        Sequence<css::table::CellRangeAddress> printed(1);
        printed.getArray()[0] =
            Reference<css::sheet::XCellRangeAddressable>(range(0, 0, lastColumn(), lastRow), UNO_QUERY_THROW)
                ->getRangeAddress();
        // Title and headings come again on every page of a sheet that is one table, headings alone where the table
        // ends a sheet of several parts. Beside repeated columns the title
        // would be cut off: there the page's header, which names job and sheet, stands for it.
        const bool oneTable = parts_.size() == 1 && std::holds_alternative<Table>(*parts_[0].part);
        if (oneTable && sheet_.pagesWide > 1) printed.getArray()[0].StartRow = parts_[0].at.row;
        areas->setPrintAreas(printed);
        const auto isTable = [](const Placed& place) { return std::holds_alternative<Table>(*place.part); };
        const bool endsWithItsTable =
            !parts_.empty() &&
            (std::holds_alternative<Block>(*parts_.back().part) ||
             (isTable(parts_.back()) && std::count_if(parts_.begin(), parts_.end(), isTable) == 1));
        if (endsWithItsTable) {
            css::table::CellRangeAddress rows = printed[0];
            if (!oneTable) rows.StartRow = parts_.back().at.row;
            rows.EndRow = isTable(parts_.back()) ? parts_.back().firstRow : parts_.back().firstRow - 1;
            areas->setTitleRows(rows);
            areas->setPrintTitleRows(true);
            if (sheet_.pagesWide > 1 && sheet_.freezeColumns > 0) {
                css::table::CellRangeAddress columns = printed[0];
                columns.StartColumn = 0;
                columns.EndColumn = sheet_.freezeColumns - 1;
                areas->setTitleColumns(columns);
                areas->setPrintTitleColumns(true);
            }
        }
    } else {
        areas->setPrintAreas({});
    }
    for (const Placed& place : parts_)
        if (const Paragraphs* text = std::get_if<Paragraphs>(place.part))
            for (std::size_t n = 0; n < text->names.size(); ++n)
                addLink(document_, cells_, {0, place.firstRow + static_cast<int>(n)}, text->names[n]);
    int count = 0;
    for (const Placed& place : parts_)
        if (const Chart* chart = std::get_if<Chart>(place.part))
            addChart(office_, document_, cells_, *chart, layout_, {place.at.column, place.at.row}, ++count);
    if (sheet_.locked) Reference<css::util::XProtectable>(cells_, UNO_QUERY_THROW)->protect(rtl::OUString());

    const Reference<css::frame::XModel> model(document_, UNO_QUERY_THROW);
    const Reference<css::sheet::XSpreadsheetView> view(model->getCurrentController(), UNO_QUERY);
    const Reference<css::sheet::XViewFreezable> freezer(view, UNO_QUERY);
    if (!freezer.is()) return;
    view->setActiveSheet(cells_);
    set(view, "ShowGrid", Any(false));
    set(view, "ShowPageBreaks", Any(false));
    const int rows = headingRows();
    if (rows > 0 || sheet_.freezeColumns > 0) freezer->freezeAtPosition(sheet_.freezeColumns, rows);
    const CellPlace first = firstInput();
    Reference<css::view::XSelectionSupplier>(view, UNO_QUERY_THROW)
        ->select(Any(cell(first.column, first.row)));
    Reference<css::sheet::XViewPane>(view, UNO_QUERY_THROW)->setFirstVisibleRow(rows);
}

int SheetWriter::headingRows() const {
    constexpr int most = 13;  // rows in sight: leaves room for the table on a small screen
    int hidden = 0;
    for (const Placed& place : parts_)
        if (const Form* form = std::get_if<Form>(place.part))
            hidden += static_cast<int>(std::ranges::count_if(form->fields, &Field::helper));
    for (std::size_t i : {std::size_t{0}, parts_.size() - 1}) {
        if (i >= parts_.size() || !std::holds_alternative<Table>(*parts_[i].part)) continue;
        if (parts_[i].firstRow - (i > 0 ? hidden : 0) <= most) return parts_[i].firstRow;
    }
    return 0;
}

CellPlace SheetWriter::firstInput() const {
    constexpr int onFirstScreen = 30;  // rows
    for (const Placed& place : parts_) {
        if (place.firstRow > onFirstScreen) break;
        if (const Table* table = std::get_if<Table>(place.part)) {
            for (std::size_t i = 0; i < table->columns.size(); ++i)
                if (isInput(table->columns[i].kind) && table->columns[i].formula.empty())
                    return {layout_.table(table->name).columnAt(static_cast<int>(i)), place.firstRow + 1};
        } else if (const Form* form = std::get_if<Form>(place.part)) {
            for (std::size_t i = 0; i < form->fields.size(); ++i)
                if (isInput(form->fields[i].kind) && form->fields[i].value.empty())
                    return {place.at.column + 1, place.firstRow + static_cast<int>(i)};
        }
    }
    return {0, 0};
}

}  // namespace

void write(const Layout& layout, const Office& office,
           const Reference<css::sheet::XSpreadsheetDocument>& document, Paper paper) {
    const Workbook& workbook = layout.workbook();
    const Reference<css::frame::XModel> model(document, UNO_QUERY_THROW);
    model->lockControllers();
    makeCellStyles(document);
    const auto sheets = document->getSheets();
    const Sequence<rtl::OUString> before = sheets->getElementNames();
    for (std::size_t s = 0; s < workbook.sheets.size(); ++s)
        sheets->insertNewByName(wide(workbook.sheets[s].name),
                                static_cast<sal_Int16>(before.getLength() + s));
    for (const rtl::OUString& name : before) sheets->removeByName(name);

    const Reference<XPropertySet> documentSet(document, UNO_QUERY_THROW);
    const Reference<css::sheet::XNamedRanges> names(documentSet->getPropertyValue("NamedRanges"),
                                                    UNO_QUERY_THROW);
    std::vector<SheetWriter> writers;
    for (std::size_t s = 0; s < workbook.sheets.size(); ++s)
        writers.emplace_back(layout, s, office, document, paper);
    for (SheetWriter& writer : writers) writer.writeFrame();
    // Those that the kit makes first: the workbook's own may read them.
    for (const bool own : {false, true})
        for (const auto& [name, expression] : layout.names())
            if ((workbook.names.count(name) != 0) == own)
                names->addNewByName(wide(name), wide(expression), css::table::CellAddress(), 0);
    for (SheetWriter& writer : writers) writer.writeFormulas();
    model->unlockControllers();
    for (SheetWriter& writer : writers) writer.finish();

    const Reference<css::sheet::XSpreadsheetView> view(model->getCurrentController(), UNO_QUERY);
    if (view.is())
        view->setActiveSheet(Reference<css::sheet::XSpreadsheet>(
            sheets->getByName(wide(workbook.sheets[0].name)), UNO_QUERY_THROW));
    const Reference<css::document::XDocumentPropertiesSupplier> about(document, UNO_QUERY_THROW);
    about->getDocumentProperties()->setTitle(wide(workbook.title));
}

}  // namespace trenchbook::sheets
