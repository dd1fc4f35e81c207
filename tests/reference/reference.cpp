#include "reference.h"

#include <gtest/gtest.h>

#include <cmath>
#include <cstdlib>
#include <fstream>
#include <functional>
#include <map>
#include <span>
#include <sstream>

namespace trenchbook::reference {
namespace {

// One record of a CSV file with quoted fields, which may hold line breaks. False at the end of the file.
bool readRecord(std::istream& in, std::vector<std::string>& fields) {
    fields.assign(1, "");
    bool quoted = false;
    bool any = false;
    for (char c; in.get(c);) {
        any = true;
        if (quoted) {
            if (c != '"') {
                fields.back() += c;
            } else if (in.peek() == '"') {
                fields.back() += static_cast<char>(in.get());
            } else {
                quoted = false;
            }
        } else if (c == '"') {
            quoted = true;
        } else if (c == ',') {
            fields.emplace_back();
        } else if (c == '\n') {
            return true;
        } else if (c != '\r') {
            fields.back() += c;
        }
    }
    return any;
}

std::string quoted(const std::string& text) {
    std::string out = "\"";
    for (char c : text) out += c == '"' ? std::string("\"\"") : std::string(1, c);
    return out + "\"";
}

std::string shortest(double value) {
    std::ostringstream out;
    out.precision(10);
    out << value;
    return out.str();
}

// Checks are appended to the file that TRENCHBOOK_CHECKS names, one line each, as they are made.
void record(const char* function, const std::string& id, const std::string& item, const std::string& printed,
            const std::string& ours, const std::string& tolerance, const std::string& provenance,
            const std::string& source, const std::string& note) {
    static const char* path = std::getenv("TRENCHBOOK_CHECKS");
    if (path == nullptr) return;
    static std::ofstream out(path, std::ios::app);
    const std::vector<std::string> fields = {function,  id,         item,   printed, ours,
                                             tolerance, provenance, source, note};
    for (std::size_t i = 0; i < fields.size(); ++i) out << (i ? "," : "") << quoted(fields[i]);
    out << std::endl;
}

}  // namespace

bool Row::has(std::string_view name) const {
    std::istringstream in(inputs);
    for (std::string pair; std::getline(in, pair, ';');)
        if (pair.substr(0, pair.find('=')) == name) return true;
    return false;
}

std::string Row::word(std::string_view name) const {
    std::istringstream in(inputs);
    for (std::string pair; std::getline(in, pair, ';');) {
        const auto equals = pair.find('=');
        if (equals != std::string::npos && pair.substr(0, equals) == name) return pair.substr(equals + 1);
    }
    ADD_FAILURE() << id << " has no input " << name << ": " << inputs;
    return "";
}

double Row::input(std::string_view name) const {
    const std::string text = word(name);
    char* end = nullptr;
    const double number = std::strtod(text.c_str(), &end);
    if (end == text.c_str()) ADD_FAILURE() << id << ": " << name << " is not a number: " << text;
    return number;
}

double Row::number() const {
    char* end = nullptr;
    const double read = std::strtod(value.c_str(), &end);
    if (end == value.c_str()) ADD_FAILURE() << id << ": the value is not a number: " << value;
    return read;
}

double Row::allowed() const {
    char* end = nullptr;
    const double read = std::strtod(tolerance.c_str(), &end);
    if (end == tolerance.c_str()) ADD_FAILURE() << id << ": no tolerance";
    return read;
}

std::vector<std::vector<std::string>> records(const std::string& path) {
    std::vector<std::vector<std::string>> read;
    std::ifstream in(path);
    for (std::vector<std::string> fields; readRecord(in, fields);) read.push_back(fields);
    if (read.empty()) ADD_FAILURE() << "cannot read " << path;
    return read;
}

const std::vector<Row>& rows(std::string_view file) {
    static std::map<std::string, std::vector<Row>, std::less<>> files;
    const auto known = files.find(file);
    if (known != files.end()) return known->second;

    std::vector<Row>& read = files[std::string(file)];
    const std::vector<std::vector<std::string>> all =
        records(std::string(TRENCHBOOK_REFERENCE_DIR) + "/" + std::string(file));
    if (all.empty()) return read;
    const std::vector<std::string>& headings = all.front();
    std::map<std::string, std::size_t> at;
    for (std::size_t i = 0; i < headings.size(); ++i) at[headings[i]] = i;
    for (const std::vector<std::string>& fields : std::span(all).subspan(1)) {
        if (fields.size() < headings.size()) continue;
        const auto field = [&](const char* name) { return fields[at.at(name)]; };
        read.push_back({field("id"), field("topic"), field("kind"), field("item"), field("inputs"),
                        field("output"), field("value"), field("unit"), field("tol_abs"), field("tol_basis"),
                        field("provenance"), field("source"), field("address"), field("note")});
    }
    if (read.empty()) ADD_FAILURE() << file << " has no rows";
    return read;
}

void check(const char* function, const Row& row, double ours, double factor, const char* because) {
    const double scaled = ours * factor;
    record(function, row.id, row.item + ": " + row.output + " at " + row.inputs, row.value + " " + row.unit,
           shortest(scaled), row.tolerance, row.provenance, row.source, because ? because : "");
    EXPECT_TRUE(std::fabs(scaled - row.number()) <= row.allowed() * (1 + 1e-9))
        << function << " against " << row.id << " (" << row.source << ")\n  " << row.item << ", "
        << row.output << " at " << row.inputs << "\n  printed " << row.value << " " << row.unit << ", ours "
        << shortest(scaled) << ", off by " << scaled - row.number() << ", tolerance " << row.tolerance << " ("
        << row.toleranceBasis << ")";
}

void checkMisprint(const char* function, const Row& row, double ours, double right, const char* because) {
    record(function, row.id, row.item + ": " + row.output + " at " + row.inputs, row.value + " " + row.unit,
           shortest(ours), row.tolerance, row.provenance, row.source, std::string("misprint: ") + because);
    EXPECT_NEAR(ours, right, row.allowed())
        << function << " against the corrected " << row.id << ": " << because;
}

void checkWords(const char* function, const Row& row, const std::string& ours) {
    record(function, row.id, row.item + ": " + row.output + " at " + row.inputs, row.value, ours, "exact",
           row.provenance, row.source, "");
    EXPECT_EQ(ours, row.value) << function << " against " << row.id << " (" << row.source << ") at "
                               << row.inputs;
}

void check(const char* function, const char* item, double ours, double printed, double tolerance,
           const char* source, const char* provenance) {
    record(function, "", item, shortest(printed), shortest(ours), shortest(tolerance), provenance, source,
           "");
    EXPECT_NEAR(ours, printed, tolerance) << function << ": " << item << " (" << source << ")";
}

void checkWords(const char* function, const char* item, const std::string& ours, const std::string& printed,
                const char* source, const char* provenance) {
    record(function, "", item, printed, ours, "exact", provenance, source, "");
    EXPECT_EQ(ours, printed) << function << ": " << item << " (" << source << ")";
}

}  // namespace trenchbook::reference
