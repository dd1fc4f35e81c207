// A program elsewhere that links the installed engine: calls it, catches its error, and leaves with 0 when both are
// as the headers say.
#include <cmath>
#include <cstdio>

#include "trenchbook/core/error.h"
#include "trenchbook/pipe/manning.h"
#include "trenchbook/pipe/stock.h"
#include "trenchbook/rules/rules.h"

using namespace trenchbook;

int main() {
    const Pipe pipe = stockPipe("4 SDR35");
    // Manning by hand: A R^(2/3) S^(1/2) / n of a 3.975 in bore at 1 % and n 0.011, in SI.
    const double bore = 3.975 * 0.0254;
    const double byHand = 3.14159265358979 * bore * bore / 4 * std::pow(bore / 4, 2.0 / 3) * 0.1 / 0.011;
    const double ours = capacity(pipe.bore, Slope::percent(1), 0.011).cubicMetresPerSecond();
    std::printf("4 SDR35 at 1 %%: %.6f m3/s, by hand %.6f\n", ours, byHand);
    if (std::fabs(ours / byHand - 1) > 1e-9) return 1;

    try {
        stockPipe("4 SRD35");
        return 2;
    } catch (const Error& error) {
        std::printf("%s\n", error.sentence(Language::English).c_str());
        if (error.argument() != "pipe" || error.kind() != Error::Kind::BadArgument) return 3;
    }
    return rules().empty() ? 4 : 0;
}
