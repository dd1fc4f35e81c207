#include "jobbook/csv.h"

#include <algorithm>

namespace trenchbook::sheets::csv {
namespace {

constexpr std::string_view byteOrderMark = "\xEF\xBB\xBF";

// Length of the UTF-8 character at the start of `bytes`, 0 when it is none (RFC 3629, section 4).
std::size_t characterLength(std::string_view bytes) {
    const auto at = [&](std::size_t i) {
        return i < bytes.size() ? static_cast<unsigned char>(bytes[i]) : 0u;
    };
    const auto follows = [&](std::size_t i, unsigned least = 0x80, unsigned greatest = 0xBF) {
        return at(i) >= least && at(i) <= greatest;
    };
    const unsigned first = at(0);
    if (first < 0x80) return 1;
    if (first >= 0xC2 && first <= 0xDF) return follows(1) ? 2 : 0;
    if (first >= 0xE0 && first <= 0xEF) {
        const unsigned least = first == 0xE0 ? 0xA0 : 0x80;
        const unsigned greatest = first == 0xED ? 0x9F : 0xBF;
        return follows(1, least, greatest) && follows(2) ? 3 : 0;
    }
    if (first >= 0xF0 && first <= 0xF4) {
        const unsigned least = first == 0xF0 ? 0x90 : 0x80;
        const unsigned greatest = first == 0xF4 ? 0x8F : 0xBF;
        return follows(1, least, greatest) && follows(2) && follows(3) ? 4 : 0;
    }
    return 0;
}

std::string trimmed(const std::string& text) {
    const auto from = text.find_first_not_of(" \t");
    if (from == std::string::npos) return "";
    return text.substr(from, text.find_last_not_of(" \t") - from + 1);
}

// Also what reading would take off: blanks at the ends, a byte order mark.
bool needsQuotes(const std::string& text) {
    return text.find_first_of(",\"\r\n") != std::string::npos || text != trimmed(text) ||
           text.rfind(byteOrderMark, 0) == 0;
}

class Reader {
  public:
    explicit Reader(std::string_view bytes) : left_(bytes) {
        if (left_.substr(0, byteOrderMark.size()) == byteOrderMark) left_.remove_prefix(byteOrderMark.size());
    }

    std::vector<Row> rows() {
        std::vector<Row> all;
        while (!left_.empty()) {
            Row row = nextRow();
            if (std::any_of(row.begin(), row.end(), [](const Field& field) { return !field.text.empty(); }))
                all.push_back(std::move(row));
        }
        return all;
    }

  private:
    bool atLineEnd() const { return left_.empty() || left_[0] == '\n' || left_[0] == '\r'; }
    void skipLineEnd() {
        if (left_.empty()) return;
        left_.remove_prefix(left_.substr(0, 2) == "\r\n" ? 2 : 1);
        ++line_;
    }
    void take(std::string& into, int column) {
        const std::size_t length = characterLength(left_);
        if (length == 0) throw Fault(line_, column, "is not UTF-8 text; save the file as UTF-8");
        if (left_[0] == '\0') throw Fault(line_, column, "holds a zero byte; this is not a text file");
        into.append(left_.substr(0, length));
        left_.remove_prefix(length);
    }

    Row nextRow() {
        Row row;
        for (;;) {
            row.push_back(nextField(static_cast<int>(row.size()) + 1));
            if (atLineEnd()) break;
            left_.remove_prefix(1);  // the comma
        }
        skipLineEnd();
        return row;
    }

    Field nextField(int column) {
        Field field{"", line_, column};
        while (!left_.empty() && (left_[0] == ' ' || left_[0] == '\t')) left_.remove_prefix(1);
        if (left_.empty() || left_[0] != '"') {
            while (!atLineEnd() && left_[0] != ',') take(field.text, column);
            field.text = trimmed(field.text);
            return field;
        }
        left_.remove_prefix(1);
        for (;;) {
            if (left_.empty()) throw Fault(field.line, column, "starts with a quote that is never closed");
            if (left_.substr(0, 2) == "\"\"") {
                field.text += '"';
                left_.remove_prefix(2);
            } else if (left_[0] == '"') {
                left_.remove_prefix(1);
                break;
            } else if (atLineEnd()) {
                field.text += '\n';
                skipLineEnd();
            } else {
                take(field.text, column);
            }
        }
        while (!left_.empty() && (left_[0] == ' ' || left_[0] == '\t')) left_.remove_prefix(1);
        if (!atLineEnd() && left_[0] != ',')
            throw Fault(line_, column,
                        "goes on after its closing quote; double the quotes inside a quoted field");
        return field;
    }

    std::string_view left_;
    int line_ = 1;
};

}  // namespace

std::vector<Row> read(std::string_view bytes) { return Reader(bytes).rows(); }

std::string write(const std::vector<std::vector<std::string>>& rows) {
    std::string out;
    for (const auto& row : rows) {
        bool first = true;
        for (const std::string& text : row) {
            if (!first) out += ',';
            first = false;
            if (!needsQuotes(text)) {
                out += text;
                continue;
            }
            out += '"';
            for (const char c : text) out += c == '"' ? std::string("\"\"") : std::string(1, c);
            out += '"';
        }
        out += '\n';
    }
    return out;
}

}  // namespace trenchbook::sheets::csv
