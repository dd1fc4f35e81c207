// Published values as tests: reads the tables beside this file and records every check made against them, so
// that docs/checks.md (function, source, printed value, ours, tolerance) is generated from the tests themselves.
//
//     for (const Row& row : rows("01a_circular_elements_computed.csv"))
//         if (row.output == "A/Af") check("PIPE.CAPACITY", row, areaShare(row.input("d/D")));
//
// A check fails when ours differs from the printed value by more than the row's own tolerance. Where a source is
// misprinted, check() takes the right value and says why.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace trenchbook::reference {

struct Row {
    std::string id, topic, kind, item, inputs, output, value, unit, tolerance, toleranceBasis, provenance,
        source, address, note;

    // The number after `name=` among the inputs ("D_in=4;n=0.009"); fails the test when it is not there.
    double input(std::string_view name) const;
    bool has(std::string_view name) const;
    std::string word(std::string_view name) const;  // the text after `name=`, up to the next `;`
    double number() const;                          // value as a number
    double allowed() const;                         // tol_abs as a number
};

// All records of a CSV file, fields in quotes or not; none fails the test.
std::vector<std::vector<std::string>> records(const std::string& path);

// All rows of a table under tests/reference, columns by their headings.
const std::vector<Row>& rows(std::string_view file);

// Compares and records one row. `factor` turns ours into the row's unit and constant where the source uses a
// rounded constant (Manning 1.486 for 1.48592); the reason goes into `because`.
void check(const char* function, const Row& row, double ours, double factor = 1,
           const char* because = nullptr);

// A row whose printed value is wrong: `right` is what its own inputs give, with the reason.
void checkMisprint(const char* function, const Row& row, double ours, double right, const char* because);

// A row that holds words (a rule, a size name).
void checkWords(const char* function, const Row& row, const std::string& ours);

// A published value that is not in a table: printed value, tolerance (half a unit in its last digit unless the
// source rounds on the way), and where it stands. provenance: "read", "memory", "computed", "common practice",
// or "library" for a general-purpose library's answer.
void check(const char* function, const char* item, double ours, double printed, double tolerance,
           const char* source, const char* provenance);
void checkWords(const char* function, const char* item, const std::string& ours, const std::string& printed,
                const char* source, const char* provenance);

}  // namespace trenchbook::reference
