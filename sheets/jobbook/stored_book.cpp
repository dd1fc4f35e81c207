#include "jobbook/stored_book.h"

#include <expat.h>

#include <algorithm>
#include <charconv>
#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <memory>
#include <string_view>

#include "jobbook/packed.h"
#include "jobbook/resolved.h"

namespace trenchbook::sheets {
namespace {

// OpenDocument 1.3, part 3: chapter 9 has the tables, 19.3 to 19.389 the attributes. Names are read with the prefixes that all
// offices write, when the file gives them these meanings.
constexpr std::pair<const char*, const char*> prefixes[] = {
    {"xmlns:office", "urn:oasis:names:tc:opendocument:xmlns:office:1.0"},
    {"xmlns:table", "urn:oasis:names:tc:opendocument:xmlns:table:1.0"},
    {"xmlns:text", "urn:oasis:names:tc:opendocument:xmlns:text:1.0"},
    {"xmlns:draw", "urn:oasis:names:tc:opendocument:xmlns:drawing:1.0"},
};

// The file is right and says something that is not read here.
struct NotReadHere {};

class Attributes {
  public:
    explicit Attributes(const char** given) : given_(given) {}
    std::optional<std::string> find(std::string_view name) const {
        for (const char** at = given_; *at != nullptr; at += 2)
            if (name == *at) return at[1];
        return std::nullopt;
    }
    std::string text(std::string_view name) const { return find(name).value_or(""); }
    // How often a thing stands there, once where nothing is said.
    int count(std::string_view name) const {
        const auto found = find(name);
        return found ? std::max(1, std::atoi(found->c_str())) : 1;
    }

  private:
    const char** given_;
};

double daysOf(const std::string& date) {
    int year = 0, hours = 0, minutes = 0;
    unsigned month = 0, day = 0;
    double seconds = 0;
    if (std::sscanf(date.c_str(), "%d-%u-%uT%d:%d:%lf", &year, &month, &day, &hours, &minutes, &seconds) < 3)
        throw NotReadHere();
    using namespace std::chrono;
    const sys_days at = std::chrono::year(year) / month / day;
    const sys_days dayNought = std::chrono::year(1899) / 12 / 30;
    return static_cast<double>((at - dayNought).count()) + hours / 24.0 + minutes / 1440.0 + seconds / 86400;
}

double daysOfTime(const std::string& time) {
    int hours = 0, minutes = 0;
    double seconds = 0;
    if (std::sscanf(time.c_str(), "PT%dH%dM%lfS", &hours, &minutes, &seconds) != 3) throw NotReadHere();
    return hours / 24.0 + minutes / 1440.0 + seconds / 86400;
}

// "$Runs.$A$5:.$D$92", "$'Close-out'.$B$3": a range of cells; nothing for anything else.
std::optional<Rect> rectOf(std::string_view address, const std::vector<BookSheet>& sheets) {
    const auto next = [&](char c) {
        const bool there = address.starts_with(c);
        if (there) address.remove_prefix(1);
        return there;
    };
    const auto sheetName = [&] {
        std::string name;
        if (!next('\'')) {
            for (; !address.empty() && address.front() != '.'; address.remove_prefix(1))
                name += address.front();
            return name;
        }
        while (!address.empty()) {
            if (next('\'') && !address.starts_with('\'')) break;  // doubled within
            name += address.front();
            address.remove_prefix(1);
        }
        return name;
    };
    const auto corner = [&](Place& at) {
        next('$');
        if (const std::string name = sheetName(); !name.empty()) {
            const auto sheet = std::find_if(sheets.begin(), sheets.end(),
                                            [&](const BookSheet& one) { return one.name == name; });
            if (sheet == sheets.end()) return false;
            at.sheet = static_cast<int>(sheet - sheets.begin());
        }
        next('.');
        next('$');
        at.column = -1;
        for (; !address.empty() && address.front() >= 'A' && address.front() <= 'Z'; address.remove_prefix(1))
            at.column = (at.column + 1) * 26 + (address.front() - 'A');
        next('$');
        const auto end = std::from_chars(address.data(), address.data() + address.size(), at.row);
        if (end.ec != std::errc() || at.column < 0) return false;
        address.remove_prefix(static_cast<std::size_t>(end.ptr - address.data()));
        --at.row;
        return true;
    };
    Place first;
    if (!corner(first)) return std::nullopt;
    Place last = first;
    if (next(':') && !corner(last)) return std::nullopt;
    if (!address.empty() || last.sheet != first.sheet) return std::nullopt;
    return Rect{first.sheet, first.column, first.row, last.column, last.row};
}

class Reader {
  public:
    Reader(std::filesystem::path file, const std::set<std::string>& sheets)
        : file_(std::move(file)), asked_(sheets) {}

    void begin(std::string_view name, const Attributes& given) {
        if (beside_ > 0 || isBeside(name)) {
            ++beside_;
        } else if (name == "office:document-content") {
            for (const auto& [prefix, meaning] : prefixes)
                if (given.text(prefix) != meaning) throw NotReadHere();
        } else if (name == "table:table") {
            beginSheet(given);
        } else if (name == "table:table-column") {
            const std::string shown = given.text("table:visibility");
            hidden_.insert(hidden_.end(),
                           static_cast<std::size_t>(given.count("table:number-columns-repeated")),
                           shown == "collapse" || shown == "filter");
        } else if (name == "table:table-row") {
            repeatRow_ = given.count("table:number-rows-repeated");
            row_.clear();
        } else if (name == "table:table-cell" || name == "table:covered-table-cell") {
            beginCell(given);
        } else if (name == "text:p") {
            if (paragraphs_++ > 0) text_ += '\n';
        } else if (name == "text:s") {
            text_.append(static_cast<std::size_t>(given.count("text:c")), ' ');
        } else if (name == "text:tab") {
            text_ += '\t';
        } else if (name == "text:line-break") {
            text_ += '\n';
        } else if (name == "table:named-range" && !inSheet_) {
            ranges_.emplace_back(given.text("table:name"), given.text("table:cell-range-address"));
        } else if (name == "table:null-date") {
            throw NotReadHere();
        }
    }
    void characters(std::string_view more) {
        if (inCell_ && paragraphs_ > 0 && beside_ == 0) text_ += more;
    }
    void end(std::string_view name) {
        if (beside_ > 0) {
            --beside_;
        } else if (name == "table:table") {
            endSheet();
        } else if (name == "table:table-row") {
            endRow();
        } else if (name == "table:table-cell" || name == "table:covered-table-cell") {
            endCell();
        }
    }

    Book book() && {
        std::vector<std::string> names;
        for (const BookSheet& sheet : book_.sheets) names.push_back(sheet.name);
        for (const auto& [name, address] : ranges_)
            if (const auto at = rectOf(address, book_.sheets)) book_.names[name] = *at;
        book_.parts = partsAmong(book_.names, names);
        return std::move(book_);
    }

  private:
    struct Cell {
        Value value{};
        bool formula = false;
    };

    // Texts that belong to no cell: notes, drawings, what an office keeps for undoing.
    static bool isBeside(std::string_view name) {
        return name == "office:annotation" || name == "table:shapes" || name == "table:dde-links" ||
               name == "table:tracked-changes" || name.starts_with("draw:");
    }

    void beginSheet(const Attributes& given) {
        if (inSheet_) throw NotReadHere();  // a table in a cell
        inSheet_ = true;
        BookSheet& sheet = book_.sheets.emplace_back();
        sheet.name = given.text("table:name");
        wanted_ = asked_.count(sheet.name) != 0;
        hidden_.clear();
        rows_.clear();
        place_ = 0;
    }
    void endSheet() {
        inSheet_ = false;
        if (!wanted_) return;
        BookSheet& sheet = book_.sheets.back();
        for (const auto& [row, cells] : rows_)
            sheet.columns = std::max(sheet.columns, static_cast<int>(cells.size()));
        sheet.rows = rows_.empty() ? 0 : rows_.rbegin()->first + 1;
        const auto width = static_cast<std::size_t>(sheet.columns);
        sheet.cells.resize(width * static_cast<std::size_t>(sheet.rows));
        sheet.formulas.resize(sheet.cells.size());
        for (auto& [row, cells] : rows_)
            for (std::size_t c = 0; c < cells.size(); ++c) {
                const std::size_t at = static_cast<std::size_t>(row) * width + c;
                sheet.cells[at] = std::move(cells[c].value);
                sheet.formulas[at] = cells[c].formula;
            }
        hidden_.resize(width);
        sheet.hidden = hidden_;
    }
    void endRow() {
        while (!row_.empty() && isNothing(row_.back())) row_.pop_back();
        if (wanted_ && !row_.empty()) {
            for (int r = 0; r < repeatRow_; ++r) rows_[place_ + r] = row_;
            held_ += row_.size() * static_cast<std::size_t>(repeatRow_);
            if (held_ > most) throw NotReadHere();
        }
        place_ += repeatRow_;
    }

    void beginCell(const Attributes& given) {
        inCell_ = true;
        text_.clear();
        paragraphs_ = 0;
        repeatCell_ = given.count("table:number-columns-repeated");
        const auto formula = given.find("table:formula");
        if (formula) requireKnown(*formula);
        cell_ = {{}, formula.has_value()};
        const std::string type = given.text("office:value-type");
        isText_ = type == "string";
        string_ = given.find("office:string-value");
        if (type == "float" || type == "percentage" || type == "currency")
            cell_.value = std::strtod(given.text("office:value").c_str(), nullptr);
        else if (type == "date")
            cell_.value = daysOf(given.text("office:date-value"));
        else if (type == "time")
            cell_.value = daysOfTime(given.text("office:time-value"));
        else if (type == "boolean")
            cell_.value = given.text("office:boolean-value") == "true" ? 1.0 : 0.0;
    }
    void endCell() {
        inCell_ = false;
        // Of an error the string is empty and the shown text its code.
        if (isText_) {
            const std::string text = string_ && !string_->empty() ? *string_ : text_;
            if (!text.empty()) cell_.value = text;
        }
        // Blanks to the end of the sheet are told as one, and dropped with the row's end.
        if (isNothing(cell_)) repeatCell_ = std::min(repeatCell_, widest);
        row_.insert(row_.end(), static_cast<std::size_t>(repeatCell_), cell_);
    }
    static bool isNothing(const Cell& cell) { return isBlank(cell.value) && !cell.formula; }

    void requireKnown(const std::string& formula) const {
        if (const auto function = unknownInFile(formula))
            refuseUnknown(file_, book_.sheets.back().name, static_cast<int>(row_.size()), place_, *function);
    }

    static constexpr std::size_t most = 20'000'000;  // cells
    static constexpr int widest = 16384;             // columns, as the office has them

    std::filesystem::path file_;
    const std::set<std::string>& asked_;
    Book book_;
    std::vector<std::pair<std::string, std::string>> ranges_;
    int beside_ = 0;  // depth
    bool inSheet_ = false, wanted_ = false, inCell_ = false;
    std::vector<bool> hidden_;
    std::map<int, std::vector<Cell>> rows_;
    std::size_t held_ = 0;
    int place_ = 0, repeatRow_ = 1, repeatCell_ = 1, paragraphs_ = 0;
    std::vector<Cell> row_;
    Cell cell_;
    bool isText_ = false;
    std::optional<std::string> string_;
    std::string text_;
};

// Between expat, which is C, and the reader: an exception waits until expat has come back.
struct Parsing {
    XML_Parser parser;
    Reader& reader;
    std::exception_ptr thrown{};

    template <class Work>
    void guarded(const Work& work) {
        if (thrown) return;
        try {
            work();
        } catch (...) {
            thrown = std::current_exception();
            XML_StopParser(parser, XML_FALSE);
        }
    }
};

bool parse(const std::string& content, Reader& reader) {
    const std::unique_ptr<XML_ParserStruct, void (*)(XML_Parser)> parser(XML_ParserCreate("UTF-8"),
                                                                         XML_ParserFree);
    Parsing parsing{parser.get(), reader};
    XML_SetUserData(parser.get(), &parsing);
    XML_SetElementHandler(
        parser.get(),
        [](void* data, const char* name, const char** given) {
            auto* at = static_cast<Parsing*>(data);
            at->guarded([&] { at->reader.begin(name, Attributes(given)); });
        },
        [](void* data, const char* name) {
            auto* at = static_cast<Parsing*>(data);
            at->guarded([&] { at->reader.end(name); });
        });
    XML_SetCharacterDataHandler(parser.get(), [](void* data, const char* text, int size) {
        auto* at = static_cast<Parsing*>(data);
        at->guarded([&] { at->reader.characters({text, static_cast<std::size_t>(size)}); });
    });
    const bool whole =
        XML_Parse(parser.get(), content.data(), static_cast<int>(content.size()), XML_TRUE) == XML_STATUS_OK;
    if (parsing.thrown) std::rethrow_exception(parsing.thrown);
    return whole;
}

}  // namespace

std::optional<Book> storedBook(const std::filesystem::path& file, const std::set<std::string>& sheets) {
    if (file.extension() != ".ods") return std::nullopt;
    const std::optional<std::string> content = unpacked(file, "content.xml");
    if (!content) return std::nullopt;
    Reader reader(file, sheets);
    try {
        if (!parse(*content, reader)) return std::nullopt;
    } catch (const NotReadHere&) {
        return std::nullopt;
    }
    return std::move(reader).book();
}

}  // namespace trenchbook::sheets
