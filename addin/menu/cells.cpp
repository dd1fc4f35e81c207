// What has to do with the cells in the window: the next one to fill, one explained, shots from a file.
#include "commands/explain.h"
#include "commands/next_missing.h"
#include "commands/print_ranges.h"
#include "commands/sheets_shown.h"
#include "commands/shots.h"
#include "jobbook/carry_out.h"
#include "jobbook/read_book.h"
#include "jobbook/worked_out.h"
#include "menu/boxes.h"
#include "menu/commands.h"
#include "menu/surroundings.h"

#include <fstream>
#include <sstream>

namespace trenchbook::addin {
namespace {

namespace fs = std::filesystem;

std::string contentsOf(const fs::path& file) {
    std::ifstream stream(file, std::ios::binary);
    if (!stream) throw Refused("cannot read " + file.string());
    std::ostringstream text;
    text << stream.rdbuf();
    return text.str();
}

}  // namespace

Answer nextMissing(Call& call) {
    const Document document = call.job();
    const sheets::Planned planned = sheets::nextMissing(sheets::readBook(document));
    sheets::carryOut(document, planned.steps);
    // The cursor has moved to it, and the row says what is wrong.
    return {call.in(planned.says), planned.steps.empty()};
}

Answer printRanges(Call& call) {
    const Document document = call.document();
    const sheets::Planned planned = sheets::printRanges(sheets::readBook(document));
    change(call, document, planned.steps);
    return {call.in(planned.says)};
}

Answer showSheets(Call& call) {
    const Document document = call.job();
    const sheets::Planned planned =
        sheets::showSheets(sheets::readBook(document),
                           call.flag("Every") ? sheets::SheetsShown::Every : sheets::SheetsShown::Turned);
    change(call, document, planned.steps);
    return {call.in(planned.says)};
}

Answer explainCell(Call& call) {
    const Document document = call.document();
    const sheets::Book book = sheets::readBook(document);
    if (!book.selected) throw Refused(call.in({"Select one cell first", "Seleccione primero una celda"}));
    // The job's language goes before the office's: whoever reads the papers asks.
    const Language language = call.text("Language") ? call.language() : sheets::languageOf(book);
    sheets::CellToExplain cell{*book.selected, sheets::formulaOf(document, *book.selected), {}};
    for (const std::string& name : sheets::blocksIn(book, cell.formula)) {
        const sheets::Rect& at = book.names.at(name);
        cell.blocks[name] = sheets::formulaOf(document, {at.sheet, at.column, at.row});
    }
    const std::vector<sheets::Value> answers =
        sheets::workedOut(document, cell.at, sheets::questions(cell, language));
    return {sheets::explainCell(book, cell, answers, language)};
}

Answer bringShots(Call& call) {
    const Document job = call.job();
    const fs::path file = fileToRead(call, "File", {"Shots as CSV", "Lecturas en CSV"}, {"csv", "txt"});
    const std::string csv = contentsOf(file);
    const sheets::Book book = sheets::readBook(job);
    sheets::ShotColumns columns, given;
    for (const sheets::ShotField& field : sheets::shotFields())
        if (const auto column = call.text(field.argument)) given[field.argument] = *column;
    columns = sheets::shotColumns(book, csv, given);
    if (!call.byProgram()) {
        // The person sees which column is taken for what, and mends it.
        std::vector<Asked> asked;
        for (const sheets::ShotField& field : sheets::shotFields())
            asked.push_back(
                {field.argument, field.label + Text(": column", ": columna"), columns[field.argument]});
        columns = filledIn(call, asked);
    }
    const sheets::Planned planned = sheets::bringShots(book, csv, columns, file.filename().string());
    change(call, job, planned.steps);
    return {call.in(planned.says)};
}

}  // namespace trenchbook::addin
