// Site notes: any bytes are read or refused with a place; what was read is read again from its own writing.
#include <cstdint>
#include <cstdlib>

#include "jobbook/csv.h"
#include "jobbook/value_text.h"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    using namespace trenchbook::sheets;
    try {
        std::vector<std::vector<std::string>> texts;
        for (const csv::Row& row : csv::read({reinterpret_cast<const char*>(data), size})) {
            auto& line = texts.emplace_back();
            for (const csv::Field& field : row) {
                if (field.line < 1 || field.column < 1) std::abort();
                line.push_back(field.text);
                for (const Format& format : {show::number(2), show::percent(0), show::date, show::general}) {
                    try {
                        readValue(field.text, {format, {}, Measure::Feet}, true);
                    } catch (const std::invalid_argument&) {
                    }
                }
            }
        }
        std::vector<std::vector<std::string>> again;
        for (const csv::Row& row : csv::read(csv::write(texts))) {
            auto& line = again.emplace_back();
            for (const csv::Field& field : row) line.push_back(field.text);
        }
        if (texts != again) std::abort();
    } catch (const csv::Fault& fault) {
        if (fault.line < 1 || fault.column < 1) std::abort();
    }
    return 0;
}
