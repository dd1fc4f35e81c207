// Random grade jobs, and the rules of a plan written down a second time, in feet and without any grid logic,
// so that what the engine plans is judged by something else.
#pragma once

#include <cmath>
#include <cstdint>
#include <limits>
#include <ostream>
#include <random>
#include <sstream>
#include <string>
#include <vector>

#include "trenchbook/grade/grade.h"
#include "trenchbook/pipe/stock.h"

namespace trenchbook::gradetest {

// Feet. A limit that is met within a millionth of the grid counts as met, as the header promises.
struct Rules {
    const GradeJob& job;
    double eps = 1e-6 * job.grid.feet() * 1.01;

    double top(std::size_t pipe) const { return invertToOutsideTop(job.pipes[pipe].pipe).feet(); }
    double wall(std::size_t pipe) const { return wallOf(job.pipes[pipe].pipe).feet(); }
    double bore(std::size_t pipe) const { return job.pipes[pipe].pipe.bore.feet(); }
    double nominal(std::size_t pipe) const { return job.pipes[pipe].pipe.nominal; }

    // Manning in SI, written out: the slope at which flow = share x capacity of the full pipe.
    double slopeNeeded(std::size_t run, std::size_t pipe) const {
        const GradePipe& row = job.pipes[pipe];
        const double n = row.roughness > 0 ? row.roughness : row.pipe.roughness;
        const double d = row.pipe.bore.metres();
        const double area = 3.14159265358979323846 * d * d / 4;
        const double flow = job.runs[run].flow.cubicMetresPerSecond() / row.largestShare;
        const double forFlow = std::pow(flow * n / (area * std::pow(d / 4, 2.0 / 3)), 2);
        return std::max(row.leastSlope.fraction(), forFlow);
    }
    double cut(double ground, double invert, std::size_t pipe) const {
        return ground - invert + wall(pipe) + job.bedding.feet();
    }
    double digPrice(double cutFeet) const {
        const auto& table = job.digging;
        if (table.empty()) return 0;
        if (table.size() == 1 || cutFeet <= table[0].cut.feet()) return table[0].price.dollarsPerFoot();
        for (std::size_t i = 1; i < table.size(); ++i) {
            const double a = table[i - 1].cut.feet();
            const double b = table[i].cut.feet();
            if (cutFeet <= b || i + 1 == table.size()) {
                const double pa = table[i - 1].price.dollarsPerFoot();
                const double pb = table[i].price.dollarsPerFoot();
                return pa + (pb - pa) * (cutFeet - a) / (b - a);
            }
        }
        return 0;
    }
    double cost(std::size_t index, double up, double down, std::size_t pipe) const {
        const GradeRun& run = job.runs[index];
        const double length = run.length.feet();
        return length * job.pipes[pipe].price.dollarsPerFoot() +
               length *
                   (digPrice(cut(run.groundUp.feet(), up, pipe)) +
                    digPrice(cut(run.groundDown.feet(), down, pipe))) /
                   2;
    }

    // Empty, or the first rule that a run breaks.
    std::string brokenInRun(std::size_t index, double up, double down, std::size_t pipe) const {
        const GradeRun& run = job.runs[index];
        const auto end = [&](double level, Length groundLevel, const std::optional<Length>& cover,
                             const std::optional<Length>& fixed, bool outletEnd) -> std::string {
            const double ground = groundLevel.feet();
            if (cover &&
                ground - (level + top(pipe)) < cover->feet() + job.pipes[pipe].extraCover.feet() - eps)
                return "cover";
            if (!cover && !outletEnd && cut(ground, level, pipe) < -eps) return "ground";
            if (cut(ground, level, pipe) > job.deepestCut.feet() + eps) return "deepest cut";
            if (fixed && std::fabs(level - fixed->feet()) > eps) return "fixed";
            if (!fixed && std::fabs(level / job.grid.feet() - std::round(level / job.grid.feet())) > 1e-5)
                return "grid";
            return "";
        };
        std::string broken = end(up, run.groundUp, run.coverUp, run.fixedUp, false);
        if (broken.empty()) broken = end(down, run.groundDown, run.coverDown, run.fixedDown, !run.below);
        if (!broken.empty()) return broken;
        if (up - down < slopeNeeded(index, pipe) * run.length.feet() - eps) return "slope";
        if (!run.below && down < run.outletLowest->feet() - eps) return "outlet lowest";
        if (!run.below && run.outletHighest && down > run.outletHighest->feet() + eps)
            return "outlet highest";
        for (const GradeCrossing& crossing : run.crossings) {
            const double share = crossing.fromUpperEnd / run.length;
            const double invert = up + (down - up) * share;
            if (crossing.side == GradeCrossing::Side::Below) {
                if (invert + top(pipe) > crossing.level.feet() + eps) return "crossing below";
            } else if (invert - wall(pipe) < crossing.level.feet() - eps) {
                return "crossing above";
            }
        }
        return "";
    }
    std::string brokenAtJoin(double downAbove, std::size_t pipeAbove, double up, std::size_t pipe) const {
        if (nominal(pipeAbove) > nominal(pipe)) return "shrinks";
        if (downAbove < up - eps) return "join: invert";
        if (job.join == Join::Crown && downAbove + bore(pipeAbove) < up + bore(pipe) - eps)
            return "join: crown";
        return "";
    }
    std::string broken(const GradePlan& plan) const {
        for (std::size_t i = 0; i < job.runs.size(); ++i) {
            const GradedRun& run = plan.runs[i];
            const std::string said = brokenInRun(i, run.invertUp.feet(), run.invertDown.feet(), run.pipe);
            if (!said.empty()) return said + " in run " + std::to_string(i);
            if (!job.runs[i].below) continue;
            const GradedRun& below = plan.runs[*job.runs[i].below];
            const std::string joined =
                brokenAtJoin(run.invertDown.feet(), run.pipe, below.invertUp.feet(), below.pipe);
            if (!joined.empty()) return joined + " below run " + std::to_string(i);
        }
        return "";
    }
    double cost(const GradePlan& plan) const {
        double total = 0;
        for (std::size_t i = 0; i < job.runs.size(); ++i)
            total +=
                cost(i, plan.runs[i].invertUp.feet(), plan.runs[i].invertDown.feet(), plan.runs[i].pipe) +
                (job.runs[i].below
                     ? dropCost(plan.runs[i].invertDown.feet(), plan.runs[*job.runs[i].below].invertUp.feet())
                     : 0);
        return total;
    }
    double dropCost(double from, double to) const { return (from - to) * job.dropPrice.dollarsPerFoot(); }
};

inline std::string described(const GradeJob& job) {
    std::ostringstream out;
    out.precision(12);
    out << "grid " << job.grid.feet() << ", deepest " << job.deepestCut.feet() << ", bedding "
        << job.bedding.feet() << ", join " << (job.join == Join::Crown ? "crown" : "invert") << "\npipes:";
    for (const GradePipe& pipe : job.pipes)
        out << "\n  " << pipe.pipe.name << " $" << pipe.price.dollarsPerFoot() << " slope "
            << pipe.leastSlope.fraction() << " extra " << pipe.extraCover.feet() << " share "
            << pipe.largestShare;
    out << "\ndrop $" << job.dropPrice.dollarsPerFoot() << ", digging:";
    for (const DigPrice& row : job.digging) out << " " << row.cut.feet() << "/" << row.price.dollarsPerFoot();
    const auto maybe = [&](const std::optional<Length>& level) {
        return level ? std::to_string(level->feet()) : std::string("-");
    };
    for (std::size_t i = 0; i < job.runs.size(); ++i) {
        const GradeRun& run = job.runs[i];
        out << "\nrun " << i << " -> " << (run.below ? std::to_string(*run.below) : "out") << " L "
            << run.length.feet() << " ground " << run.groundUp.feet() << ".." << run.groundDown.feet()
            << " cover " << maybe(run.coverUp) << ".." << maybe(run.coverDown) << " fixed "
            << maybe(run.fixedUp) << ".." << maybe(run.fixedDown) << " flow " << run.flow.gpm() << " outlet "
            << maybe(run.outletLowest) << ".." << maybe(run.outletHighest) << " pipes";
        for (std::size_t pipe : run.pipes) out << " " << pipe;
        for (const GradeCrossing& crossing : run.crossings)
            out << " crossing " << crossing.fromUpperEnd.feet()
                << (crossing.side == GradeCrossing::Side::Below ? " below " : " above ")
                << crossing.level.feet();
    }
    return out.str();
}

// A job as it could stand in a yard, with every kind of rule; about half of them cannot be built.
class RandomJobs {
  public:
    explicit RandomJobs(std::uint32_t seed) : random_(seed), drops_(seed + 1) {}

    double crossings = 0.1;  // chance of each of two in a run

    double real(double least, double most) {
        return std::uniform_real_distribution<double>(least, most)(random_);
    }
    std::size_t upTo(std::size_t most) {
        return std::uniform_int_distribution<std::size_t>(0, most)(random_);
    }
    bool chance(double share) { return real(0, 1) < share; }

    GradeJob job(std::size_t runs, double gridFeet, double deepest) {
        GradeJob job;
        job.grid = Length::feet(gridFeet);
        job.deepestCut = Length::feet(real(0.7, 1.0) * deepest);
        job.bedding = Length::feet(chance(0.5) ? 0 : real(0, 0.3));
        job.join = chance(0.5) ? Join::Crown : Join::Invert;
        const char* names[] = {"4 SDR35", "4 SCH40", "6 SDR35", "3 SCH40"};
        for (const char* name : names) {
            GradePipe pipe;
            pipe.pipe = stockPipe(name);
            pipe.price = PricePerLength::dollarsPerFoot(real(1, 2) * pipe.pipe.nominal / 3);
            pipe.leastSlope = Slope::fraction(real(0.002, 0.012) * 6 / pipe.pipe.nominal);
            pipe.extraCover = Length::inches(chance(0.5) ? 0 : real(0, 4));
            pipe.largestShare = real(0.6, 1);
            job.pipes.push_back(pipe);
        }
        double cut = real(0, 0.8);
        double price = real(1, 4);
        for (std::size_t row = 0; row <= upTo(3); ++row) {
            job.digging.push_back({Length::feet(cut), PricePerLength::dollarsPerFoot(price)});
            cut += real(0.3, 1.5);
            price += real(0, 6);
        }
        if (drops_() % 2)
            job.dropPrice = PricePerLength::dollarsPerFoot(std::uniform_real_distribution(0.0, 60.0)(drops_));
        // Run 0 is the outlet run; each further one joins an earlier one. Ground rises away from the outlet.
        std::vector<double> level(runs + 1);
        level[0] = real(-3, 120);
        for (std::size_t i = 0; i < runs; ++i) {
            GradeRun run;
            const std::size_t below = i == 0 ? 0 : upTo(i - 1);
            if (i > 0) run.below = below;
            run.length = Length::feet(real(10, 60));
            const double down = i == 0 ? level[0] : level[below + 1];
            level[i + 1] = down + real(-0.004, 0.025) * run.length.feet();
            run.groundDown = Length::feet(down);
            run.groundUp = Length::feet(level[i + 1]);
            if (chance(0.9)) run.coverUp = Length::inches(real(4, 12));
            if (chance(i == 0 ? 0.3 : 0.9)) run.coverDown = Length::inches(real(4, 12));
            for (std::size_t pipe = 0; pipe < job.pipes.size(); ++pipe)
                if (chance(0.6)) run.pipes.push_back(pipe);
            if (run.pipes.empty()) run.pipes.push_back(upTo(job.pipes.size() - 1));
            if (chance(0.7)) run.flow = Flow::gpm(real(0, 60));
            if (i == 0) run.outletLowest = Length::feet(down - real(0.5, 1) * deepest * 0.95);
            if (i == 0 && chance(0.5))
                run.outletHighest = *run.outletLowest + Length::feet(real(0, 1) * deepest);
            if (chance(0.05))
                run.fixedUp = Length::feet(onGrid(run.groundUp.feet() - real(0.3, 0.8) * deepest, gridFeet));
            if (chance(0.05)) run.fixedDown = Length::feet(onGrid(down - real(0.3, 0.9) * deepest, gridFeet));
            for (int n = 0; n < 2; ++n) {
                if (!chance(crossings)) continue;
                GradeCrossing crossing;
                const double share = chance(0.1) ? 0 : chance(0.1) ? 1 : real(0, 1);
                crossing.fromUpperEnd = share * run.length;
                crossing.side = chance(0.5) ? GradeCrossing::Side::Below : GradeCrossing::Side::Above;
                const double ground = level[i + 1] + (down - level[i + 1]) * share;
                crossing.level = Length::feet(ground - real(0.2, 0.9) * deepest);
                run.crossings.push_back(crossing);
            }
            job.runs.push_back(run);
        }
        return job;
    }

  private:
    // Half of the inverts set by hand are not on the grid.
    double onGrid(double level, double grid) { return chance(0.5) ? level : std::round(level / grid) * grid; }

    std::mt19937 random_;
    std::mt19937 drops_;  // of prices of drops
};

}  // namespace trenchbook::gradetest
