// What people type for lengths, slopes, pipes and fittings: any bytes are read or refused with an Error of
// ours, and what was read comes back from its own writing.
#include <cmath>
#include <cstdint>
#include <cstdlib>
#include <string_view>

#include "trenchbook/core/error.h"
#include "trenchbook/core/tape.h"
#include "trenchbook/pipe/fittings.h"
#include "trenchbook/pipe/stock.h"

namespace {

void require(bool law) {
    if (!law) std::abort();
}

// Runs one reader; a refusal must name an argument and say something in both languages.
template <class Read>
void readOrRefuse(Read&& read) {
    using namespace trenchbook;
    try {
        read();
    } catch (const Error& error) {
        require(!error.argument().empty());
        require(!error.sentence(Language::English).empty() && !error.sentence(Language::Spanish).empty());
    }
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    using namespace trenchbook;
    const std::string_view text(reinterpret_cast<const char*>(data), size);

    for (BareNumber bare : {BareNumber::Feet, BareNumber::Metres})
        readOrRefuse([&] {
            const Length length = readTape(text, bare);
            require(std::isfinite(length.si()));
            if (std::fabs(length.feet()) > 1e6)
                return;  // beyond it the text's own rounding of a double shows
            const Length back = readTape(tapeText(length, 64));
            require(std::fabs((back - length).inches()) <= 0.5 / 64 + 1e-8);
            require(tapeText(back, 64) == tapeText(length, 64));
        });

    readOrRefuse([&] {
        const Slope slope = readSlope(text);
        require(std::isfinite(slope.si()));
        if (std::fabs(slope.si()) > 1e3) return;
        const Slope back = readSlope(slopeText(slope, SlopeStyle::Percent));
        require(std::fabs((back - slope).si()) <= 0.5e-4 + 1e-12);
        require(!slopeText(slope).empty() && !slopeText(slope, SlopeStyle::OneIn).empty());
    });
    readOrRefuse([&] { slopeStyle(text); });

    readOrRefuse([&] {
        const Pipe pipe = stockPipe(text);
        require(pipe.bore.si() > 0 && std::isfinite(pipe.bore.si()));
        require(pipe.roughness > 0);
        require(pipe.name.empty() != pipe.outside.has_value());
        if (!pipe.name.empty()) require(stockPipe(pipe.name).name == pipe.name);
    });

    readOrRefuse([&] {
        const Fitting& found = fitting(text);
        require(&fitting(found.name) == &found);
    });
    return 0;
}
