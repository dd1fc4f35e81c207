// Reading and writing comma-separated values, as spreadsheets and people write them.
//
// UTF-8 with or without a byte order mark; lines end in LF, CRLF or CR; a field in double quotes may hold
// commas, line ends and doubled quotes. A quote inside a field that does not start with one stands for
// itself, so that a tape reading needs no care:   5' 6-1/2",4 SDR35   is two fields. Every field knows the
// line and the column it came from.
#pragma once

#include <stdexcept>
#include <string>
#include <string_view>
#include <vector>

namespace trenchbook::sheets::csv {

struct Field {
    std::string text;  // without blanks around it, unless it was quoted
    int line = 0;      // 1-based line of the file where the field starts
    int column = 0;    // 1-based place among the fields of its row
};
using Row = std::vector<Field>;

// What stops a file from being read at all: an open quote, text after a closing quote, bytes that are not
// UTF-8.
class Fault : public std::runtime_error {
  public:
    Fault(int atLine, int atColumn, const std::string& what)
        : std::runtime_error(what), line(atLine), column(atColumn) {}
    int line, column;  // as in Field
};

// Rows without any text are left out.
std::vector<Row> read(std::string_view bytes);

// Quoted where needed, lines end in LF.
std::string write(const std::vector<std::vector<std::string>>& rows);

}  // namespace trenchbook::sheets::csv
