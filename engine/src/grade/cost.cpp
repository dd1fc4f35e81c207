#include <algorithm>

#include "grade/dig_prices.h"
#include "trenchbook/core/error.h"
#include "trenchbook/grade/grade.h"

namespace trenchbook {

std::vector<Money> laidCost(const GradeJob& job, std::span<const LaidRun> laid) {
    checkGradeRules(job);
    if (laid.size() != job.runs.size())
        throw Error(Error::Kind::BadArgument, "length",
                    Text{"", "de "} + counted(laid.size(), {"row", "fila"}, {"rows", "filas"}),
                    counted(job.runs.size(), {"row", "fila"}, {"rows", "filas"}));
    const grade::DigPrices prices(job.digging);
    std::vector<Money> costs;
    for (std::size_t row = 0; row < laid.size(); ++row) {
        const GradeRun& run = job.runs[row];
        const LaidRun& here = laid[row];
        if (here.pipe >= job.pipes.size())
            throw Error(Error::Kind::BadArgument, "pipe table", std::to_string(here.pipe + 1),
                        {"a row of the pipe table", "una fila de la tabla de tubos"});
        const GradePipe& pipe = job.pipes[here.pipe];
        std::size_t piece = 0;
        const auto digging = [&](Length ground, Length invert) {
            const Length cut = ground - invert + wallOf(pipe.pipe) + job.bedding;
            return prices.none() ? PricePerLength() : prices.at(cut, piece);
        };
        Money cost = run.length * pipe.price + run.length / 2 * digging(run.groundUp, here.invertUp) +
                     run.length / 2 * digging(run.groundDown, here.invertDown);
        if (run.below)
            cost += std::max(here.invertDown - laid[*run.below].invertUp, Length()) * job.dropPrice;
        costs.push_back(cost);
    }
    return costs;
}

}  // namespace trenchbook
