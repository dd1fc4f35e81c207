// Sentences about the job in plain words, for the papers that go to the owner: formulas that give text.
#pragma once

#include <string>
#include <vector>

namespace trenchbook::sheets::words {

// Quoted for a formula.
inline std::string quote(const std::string& text) { return "\"" + text + "\""; }

// "3 downspouts", nothing when there are none.
inline std::string counted(const std::string& kind, const std::string& one, const std::string& many) {
    const std::string count = "COUNTIF([Nodes.Kind];\"" + kind + "\")";
    return "IF(" + count + "=0;\"\";" + count + "&IF(" + count + "=1;\" " + one + "\";\" " + many + "\"))";
}

inline std::string joined(const std::string& between, const std::vector<std::string>& parts) {
    std::string list;
    for (const std::string& part : parts) list += ";" + part;
    return "TEXTJOIN(" + between + ";1" + list + ")";
}

const std::string length = "IF(units=\"metric\";\" m\";\" ft\")";

// "155 ft of 6 in SDR35, 134 ft of 4 in SDR35"
inline std::string pipes() {
    std::vector<std::string> parts;
    for (int row = 2; row <= 9; ++row) {
        const std::string at = ";" + std::to_string(row) + ")";
        parts.push_back("IF(INDEX([Pipes.Pipe]" + at + "=\"\";\"\";TEXT(INDEX([Pipes.Net]" + at + ";\"0\")&" +
                        length + "&\" of \"&INDEX([Pipes.In words]" + at + ")");
    }
    return joined("\", \"", parts);
}

inline std::string inlets() {
    return joined("\", \"", {counted("downspout", "downspout", "downspouts"),
                             counted("channel", "channel drain", "channel drains"),
                             counted("basin", "catch basin", "catch basins")});
}

const std::string hasPit = "AND(N(pit_length)>0;N(pit_width)>0;N(pit_depth)>0)";

inline std::string pit() {
    return "\"a pit \"&TEXT(pit_length;\"0.#\")&\" by \"&TEXT(pit_width;\"0.#\")&" + length +
           "&\" with \"&TEXT(pit_depth;\"0.#\")&" + length + "&\" of washed rock\"";
}

// The storm that the lines are laid out for, said so that nobody takes it for a promise.
inline std::string storm() {
    return "\"The lines are laid out for rain of \"&TEXT(rain_rate;\"0.0#\")&IF(units=\"metric\";\" mm\";\" in\")&\" an hour over \"&rain_minutes&\" minutes, "
           "as it comes about once in \"&rain_years&\" years. Bigger storms will overflow at inlets and at the outlet.\"";
}

}  // namespace trenchbook::sheets::words
