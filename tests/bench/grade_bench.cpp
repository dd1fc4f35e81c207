// The grade plan and its reason, on a yard that grows: a main with branches, a window of 6 ft on the rod's grid
// of 0.01 ft, three pipe sizes in every run. The bar: 1,000 runs within 200 ms, plan and reason together, and time
// that grows at most as runs^1.1.
#include <benchmark/benchmark.h>

#include "trenchbook/grade/grade.h"

namespace trenchbook {
namespace {

GradeJob yard(int runs, bool fits) {
    GradeJob job;
    for (const char* name : {"4 SDR35", "6 SDR35", "8 SDR35"}) {
        GradePipe pipe;
        pipe.pipe = stockPipe(name);
        pipe.price = PricePerLength::dollarsPerFoot(0.6 * pipe.pipe.nominal);
        pipe.leastSlope = Slope::percent(4 / pipe.pipe.nominal);
        job.pipes.push_back(pipe);
    }
    for (const auto& [cut, price] : {std::pair{1.0, 4.0}, {2.0, 6.0}, {4.0, 15.0}, {8.0, 60.0}})
        job.digging.push_back({Length::feet(cut), PricePerLength::dollarsPerFoot(price)});
    job.deepestCut = Length::feet(7.5);
    // A branch of three runs at every fourth run of the main; the ground rises uphill by 1.2 %.
    std::vector<double> ground = {0};
    std::size_t main = 0;
    for (int i = 0; i < runs; ++i) {
        GradeRun run;
        std::size_t below = static_cast<std::size_t>(i) - 1;
        if (i % 4 == 0 && i > 0) {
            below = main;
            main = static_cast<std::size_t>(i);
        }
        if (i > 0) run.below = below;
        run.length = Length::feet(20 + (i * 7) % 30);
        const double down = i == 0 ? 0 : ground[below + 1];
        ground.push_back(down + 0.012 * run.length.feet() + 0.1 * ((i * 5) % 3 - 1));
        run.groundDown = Length::feet(down);
        run.groundUp = Length::feet(ground.back());
        run.pipes = {0, 1, 2};
        run.coverUp = run.coverDown = Length::inches(9);
        run.flow = Flow::gpm(10 + i % 25);
        if (i == 0) run.outletLowest = Length::feet(fits ? -6.8 : -0.9);
        job.runs.push_back(run);
    }
    return job;
}

void planAndReason(benchmark::State& state, bool fits) {
    const GradeJob job = yard(static_cast<int>(state.range(0)), fits);
    GradeNames names;
    names.from.assign(job.runs.size(), "A");
    names.to.assign(job.runs.size(), "B");
    for (auto _ : state) {
        const GradePlan plan = planGrade(job);
        if (plan.fits != fits) state.SkipWithError("the yard does not come out as meant");
        benchmark::DoNotOptimize(gradeText(job, plan, names));
    }
    state.SetComplexityN(state.range(0));
}

void gradeThatFits(benchmark::State& state) { planAndReason(state, true); }
void gradeThatDoesNot(benchmark::State& state) { planAndReason(state, false); }

BENCHMARK(gradeThatFits)->Unit(benchmark::kMillisecond)->RangeMultiplier(10)->Range(100, 10000)->Complexity();
BENCHMARK(gradeThatDoesNot)
    ->Unit(benchmark::kMillisecond)
    ->RangeMultiplier(10)
    ->Range(100, 10000)
    ->Complexity();

}  // namespace
}  // namespace trenchbook
