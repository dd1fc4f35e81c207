#include "trenchbook/money/learned_rate.h"

#include <cmath>
#include <vector>

#include "trenchbook/core/error.h"
#include "trenchbook/money/fit.h"

namespace trenchbook {
namespace {

double rateOf(std::span<const WorkDone> jobs, double start, double startJobs, std::size_t without) {
    std::vector<double> amounts, hours, weights;
    double sum = 0;
    for (std::size_t i = 0; i < jobs.size(); ++i) {
        if (i == without) continue;
        amounts.push_back(jobs[i].quantity);
        hours.push_back(jobs[i].hours);
        weights.push_back(1 / jobs[i].quantity);
        sum += jobs[i].quantity;
    }
    // Of one job and a start that is worth nothing there is no line but its own.
    if (amounts.size() == 1 && startJobs == 0) return hours[0] / amounts[0];
    const double mean = sum / static_cast<double>(amounts.size());
    return fitOrigin(amounts, hours, {.slope = start, .weight = startJobs * mean}, weights).slope;
}

}  // namespace

LearnedRate learnRate(std::span<const WorkDone> jobs, double start, double startJobs) {
    if (jobs.empty())
        throw Error(
            Error::Kind::BadArgument, "jobs", Text{"none", "ninguna"},
            {"one job at least that has an amount and hours", "al menos una obra con cantidad y horas"});
    requirePositive(start, "start");
    requireNotNegative(startJobs, "start jobs");
    for (const WorkDone& job : jobs) {
        requirePositive(job.quantity, "quantity");
        requireNotNegative(job.hours, "hours");
    }
    LearnedRate learned{.manHours = rateOf(jobs, start, startJobs, jobs.size()), .jobs = jobs.size()};
    double others = 0, alone = 0;
    for (std::size_t i = 0; i < jobs.size(); ++i) {
        const double is = jobs[i].hours / jobs[i].quantity;
        alone += (is / start - 1) * (is / start - 1);
        if (jobs.size() < 2) continue;
        const double said = rateOf(jobs, start, startJobs, i);
        others += (is / said - 1) * (is / said - 1);
    }
    const auto count = static_cast<double>(jobs.size());
    learned.startError = std::sqrt(alone / count);
    if (jobs.size() > 1) learned.leftOutError = std::sqrt(others / count);
    return learned;
}

}  // namespace trenchbook
