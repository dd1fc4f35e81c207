// A small job as its tables, for tests of the functions that take a whole job.
#pragma once

#include <utility>
#include <vector>

#include "catalog_harness.h"
#include "trenchbook/job/views.h"

namespace trenchbook::addin::harness {

inline Range table(std::size_t columns, std::vector<Cell> cells) {
    return {cells.size() / columns, columns, std::move(cells)};
}

// A roof and a yard in three runs, a wye, and a bubbling tee; a blank row within each table.
struct Tables {
    Range facts = table(2, {"Rain", 6.0, "Duration", 5.0, "Today", 46400.0});
    Range nodes = table(5, {"Node", "Kind",      "Ground", "Rim or grate",
                            "Turn",  //
                            "",     "",          "ft",     "ft",
                            "deg",  //
                            "",     "",          "",       "",
                            "",  //
                            "A",    "cleanout",  100.0,    "",
                            "",  //
                            "B",    "wye",       99.6,     "",
                            "",  //
                            "C",    "downspout", 99.9,     "",
                            "",  //
                            "Out",  "bank",      97.5,     "",
                            ""});
    Range water = table(6, {"Inlet", "Node", "Roof area", "Roof C", "Yard area", "Yard C",  //
                            "front", "A",    1000.0,      0.95,     "",          "",        //
                            "",      "",     "",          "",       "",          "",        //
                            "back",  "C",    600.0,       "0.9",    800.0,       "25 %"});
    Range runs = table(9, {"Line",
                           "From",
                           "To",
                           "Length",
                           "Pipe",
                           "Slope",
                           "Outlet level",
                           "Surface up",
                           "Surface down",
                           "main",
                           "A",
                           "B",
                           40.0,
                           "4 SDR35",
                           "1%",
                           "",
                           "lawn",
                           "lawn",  //
                           "",
                           "",
                           "",
                           "",
                           "",
                           "",
                           "",
                           "",
                           "",  //
                           "main",
                           "B",
                           "Out",
                           "60'",
                           "4 SDR35",
                           "1%",
                           96.9,
                           "lawn",
                           "daylight",
                           "side",
                           "C",
                           "B",
                           25.0,
                           "4 SDR35",
                           "1%",
                           "",
                           "lawn",
                           "lawn"});
    Range crossings = table(7, {"What", "From", "To", "At", "Its depth", "Its diameter", "Passes",  //
                                "gas", "B", "Out", 20.0, 6.0, 1.0, "above"});

    std::vector<Value> values() const { return {facts, nodes, water, runs, crossings}; }
    std::vector<Value> with(const std::string& units, const std::string& language = "") const {
        std::vector<Value> all = values();
        all.resize(13);
        all.emplace_back(units);
        if (!language.empty()) all.emplace_back(language);
        return all;
    }
};

inline std::size_t at(Viewed viewed, const char* heading) {
    const auto place = numberView(viewed).place(heading);
    if (!place) throw std::runtime_error(heading);
    return *place;
}
inline double cell(const Numbers& block, std::size_t row, std::size_t column) {
    return block.items.at(row * block.columns + column);
}
inline std::string word(const Texts& block, std::size_t row, std::size_t column) {
    return block.items.at(row * block.columns + column);
}

}  // namespace trenchbook::addin::harness
