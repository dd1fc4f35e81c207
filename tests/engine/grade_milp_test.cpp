// A second route to the least cost: the same job as a mixed-integer linear programme, solved by GLPK, a
// general-purpose solver that knows nothing of trees or grids.
#include <glpk.h>
#include <gtest/gtest.h>

#include <memory>

#include "grade_jobs.h"
#include "reference.h"

namespace trenchbook {
namespace {

using gradetest::described;
using gradetest::RandomJobs;
using gradetest::Rules;

// Levels are counted in steps of the grid from `base`, so that the solver sees small numbers.
class Programme {
  public:
    explicit Programme(const GradeJob& job)
        : rules_{job}, job_(job), grid_(job.grid.feet()), problem_(glp_create_prob(), glp_delete_prob) {
        base_ = std::floor(job.runs[0].groundDown.feet() / grid_);
        for (std::size_t run = 0; run < job.runs.size(); ++run) addRun(run);
        for (std::size_t run = 0; run < job.runs.size(); ++run)
            if (job.runs[run].below) addJoin(run, *job.runs[run].below);
    }

    // The least cost; infinite when there is no plan.
    double solve() {
        glp_term_out(GLP_OFF);
        glp_iocp control;
        glp_init_iocp(&control);
        control.presolve = GLP_ON;
        control.mip_gap = 0;
        control.tol_int = 1e-7;
        const int failure = glp_intopt(problem_.get(), &control);
        if (failure == GLP_ENOPFS || failure == GLP_ENODFS) return std::numeric_limits<double>::infinity();
        EXPECT_EQ(failure, 0);
        const int status = glp_mip_status(problem_.get());
        if (status == GLP_NOFEAS) return std::numeric_limits<double>::infinity();
        EXPECT_EQ(status, GLP_OPT);
        return glp_mip_obj_val(problem_.get());
    }

  private:
    struct Term {
        int column;
        double weight;
    };
    struct Columns {
        int up, down;
        std::vector<int> pipe;  // as listed in the run
    };

    int column(int kind, int bound, double least, double most, double cost = 0) {
        const int added = glp_add_cols(problem_.get(), 1);
        glp_set_col_kind(problem_.get(), added, kind);
        glp_set_col_bnds(problem_.get(), added, bound, least, most);
        glp_set_obj_coef(problem_.get(), added, cost);
        return added;
    }
    void row(std::vector<Term> terms, int bound, double least, double most) {
        std::vector<int> columns(1);
        std::vector<double> weights(1);
        for (const Term& term : terms) {
            columns.push_back(term.column);
            weights.push_back(term.weight);
        }
        const int added = glp_add_rows(problem_.get(), 1);
        glp_set_row_bnds(problem_.get(), added, bound, least, most);
        glp_set_mat_row(problem_.get(), added, static_cast<int>(terms.size()), columns.data(),
                        weights.data());
    }
    // sum of terms, and of what each pipe adds when it is chosen, <= 0
    template <class Adds>
    void notAbove(std::vector<Term> terms, std::size_t run, const Adds& adds) {
        for (std::size_t i = 0; i < job_.runs[run].pipes.size(); ++i)
            terms.push_back({columns_[run].pipe[i], adds(job_.runs[run].pipes[i])});
        row(terms, GLP_UP, 0, 1e-6);
    }

    void addRun(std::size_t index) {
        const GradeRun& run = job_.runs[index];
        const double length = run.length.feet();
        const auto level = [&](const std::optional<Length>& fixed) {
            if (!fixed) return column(GLP_IV, GLP_DB, -5000, 5000);
            return column(GLP_CV, GLP_FX, fixed->feet() / grid_ - base_, 0);
        };
        Columns& mine = columns_.emplace_back();
        mine.up = level(run.fixedUp);
        mine.down = level(run.fixedDown);
        std::vector<Term> one;
        for (std::size_t pipe : run.pipes) {
            mine.pipe.push_back(
                column(GLP_BV, GLP_DB, 0, 1, length * job_.pipes[pipe].price.dollarsPerFoot()));
            one.push_back({mine.pipe.back(), 1});
        }
        row(one, GLP_FX, 1, 1);

        addEnd(index, mine.up, run.groundUp.feet(), run.coverUp, false);
        addEnd(index, mine.down, run.groundDown.feet(), run.coverDown, !run.below);
        notAbove({{mine.down, 1}, {mine.up, -1}}, index,
                 [&](std::size_t pipe) { return rules_.slopeNeeded(index, pipe) * length / grid_; });
        if (!run.below) row({{mine.down, 1}}, GLP_LO, run.outletLowest->feet() / grid_ - base_ - 1e-6, 0);
        if (!run.below && run.outletHighest)
            row({{mine.down, 1}}, GLP_UP, 0, run.outletHighest->feet() / grid_ - base_ + 1e-6);
        for (const GradeCrossing& crossing : run.crossings) {
            const double share = crossing.fromUpperEnd / run.length;
            const double at = crossing.level.feet() / grid_ - base_;
            if (crossing.side == GradeCrossing::Side::Below) {
                notAbove({{mine.up, 1 - share}, {mine.down, share}}, index,
                         [&](std::size_t pipe) { return rules_.top(pipe) / grid_ - at; });
            } else {
                notAbove({{mine.up, share - 1}, {mine.down, -share}}, index,
                         [&](std::size_t pipe) { return rules_.wall(pipe) / grid_ + at; });
            }
        }
    }

    void addEnd(std::size_t index, int level, double ground, const std::optional<Length>& cover,
                bool outletEnd) {
        const double surface = ground / grid_ - base_;
        const double bedding = job_.bedding.feet();
        if (cover) {
            notAbove({{level, 1}}, index, [&](std::size_t pipe) {
                return (rules_.top(pipe) + cover->feet() + job_.pipes[pipe].extraCover.feet()) / grid_ -
                       surface;
            });
        } else if (!outletEnd) {
            notAbove({{level, 1}}, index,
                     [&](std::size_t pipe) { return -(rules_.wall(pipe) + bedding) / grid_ - surface; });
        }
        notAbove({{level, -1}}, index, [&](std::size_t pipe) {
            return surface + (rules_.wall(pipe) + bedding - job_.deepestCut.feet()) / grid_;
        });
        addDigging(index, level, ground);
    }

    // The digging price as a chain of straight pieces: the cut is a mixture of the two ends of one piece.
    void addDigging(std::size_t index, int level, double ground) {
        const double length = job_.runs[index].length.feet();
        std::vector<double> cuts = {-20};
        for (const DigPrice& price : job_.digging) cuts.push_back(price.cut.feet());
        cuts.push_back(cuts.back() + 20);
        std::vector<Term> mixture, all, pieces;
        for (double cut : cuts) {
            const int share = column(GLP_CV, GLP_DB, 0, 1, length / 2 * rules_.digPrice(cut));
            mixture.push_back({share, cut / grid_});
            all.push_back({share, 1});
        }
        for (std::size_t i = 0; i + 1 < cuts.size(); ++i) pieces.push_back({column(GLP_BV, GLP_DB, 0, 1), 1});
        row(all, GLP_FX, 1, 1);
        row(pieces, GLP_FX, 1, 1);
        for (std::size_t i = 0; i < cuts.size(); ++i) {
            std::vector<Term> near = {{all[i].column, 1}};
            if (i > 0) near.push_back({pieces[i - 1].column, -1});
            if (i < pieces.size()) near.push_back({pieces[i].column, -1});
            row(near, GLP_UP, 0, 0);
        }
        // mixture of cuts = ground - level + wall + bedding, in steps
        mixture.push_back({level, 1});
        for (std::size_t i = 0; i < job_.runs[index].pipes.size(); ++i)
            mixture.push_back({columns_[index].pipe[i], -rules_.wall(job_.runs[index].pipes[i]) / grid_});
        const double constant = (ground + job_.bedding.feet()) / grid_ - base_;
        row(mixture, GLP_FX, constant, constant);
    }

    void addJoin(std::size_t above, std::size_t below) {
        const auto add = [&](std::vector<Term> terms, const auto& measure) {
            for (std::size_t i = 0; i < job_.runs[above].pipes.size(); ++i)
                terms.push_back({columns_[above].pipe[i], -measure(job_.runs[above].pipes[i])});
            for (std::size_t i = 0; i < job_.runs[below].pipes.size(); ++i)
                terms.push_back({columns_[below].pipe[i], measure(job_.runs[below].pipes[i])});
            return terms;
        };
        const std::vector<Term> levels = {{columns_[below].up, 1}, {columns_[above].down, -1}};
        const int drop = column(GLP_CV, GLP_DB, -1, 10000, job_.dropPrice.dollarsPerFoot() * grid_);
        row({{columns_[below].up, 1}, {columns_[above].down, -1}, {drop, 1}}, GLP_FX, 0, 0);
        row(levels, GLP_UP, 0, 1e-6);
        if (job_.join == Join::Crown)
            row(add(levels, [&](std::size_t pipe) { return rules_.bore(pipe) / grid_; }), GLP_UP, 0, 1e-6);
        row(add({}, [&](std::size_t pipe) { return -rules_.nominal(pipe); }), GLP_UP, 0, 0);
    }

    Rules rules_;
    const GradeJob& job_;
    double grid_;
    double base_ = 0;
    std::unique_ptr<glp_prob, void (*)(glp_prob*)> problem_;
    std::vector<Columns> columns_;
};

TEST(GradeMilp, SameCostToTheCentOnRandomTrees) {
    RandomJobs random(20260102);
    int fits = 0;
    int impossible = 0;
    for (int trial = 0; trial < 600; ++trial) {
        const GradeJob job = random.job(1 + random.upTo(6), random.chance(0.5) ? 0.05 : 0.01, 3);
        const double least = Programme(job).solve();
        const GradePlan plan = planGrade(job);
        ASSERT_EQ(plan.fits, std::isfinite(least)) << "trial " << trial << "\n" << described(job);
        if (!plan.fits) {
            ++impossible;
            continue;
        }
        ++fits;
        ASSERT_NEAR(plan.cost.dollars(), least, 0.005) << "trial " << trial << "\n" << described(job);
        ASSERT_EQ(Rules{job}.broken(plan), "") << "trial " << trial << "\n" << described(job);
        if (fits % 25 == 0)
            reference::check("GRADE.PLAN",
                             ("least cost, random tree of " + std::to_string(job.runs.size()) +
                              " runs, no. " + std::to_string(trial))
                                 .c_str(),
                             plan.cost.dollars(), least, 0.005,
                             "GLPK 5.0, glp_intopt, the job as a mixed-integer programme", "library");
    }
    EXPECT_GT(fits, 100);
    EXPECT_GT(impossible, 100);
    RecordProperty("fits", fits);
    RecordProperty("impossible", impossible);
}

}  // namespace
}  // namespace trenchbook
