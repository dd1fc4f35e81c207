#include "trenchbook/layout/level_net.h"

#include <algorithm>
#include <cmath>
#include <map>

#include "layout/normal_equations.h"
#include "trenchbook/core/error.h"
#include "trenchbook/core/text.h"

namespace trenchbook {
namespace {

constexpr std::size_t none = static_cast<std::size_t>(-1);
constexpr double slipAt = 3.29, tellApart = 6, leastControl = 0.02;

// A reading: the level of the set-up's line of sight less that of the point.
struct Reading {
    std::size_t row = 0, setUp = 0, point = 0;
    double read = 0;
    bool back = false;
};

class Levels {
  public:
    Levels(std::span<const LevelRow> rows, double error) : error_(error) {
        std::size_t setUp = none;
        for (std::size_t i = 0; i < rows.size(); ++i) {
            pointOf_.push_back(none);
            const std::string key = nameKey(rows[i].point);
            if (key.empty()) continue;
            const auto [found, fresh] = points_.emplace(key, known_.size());
            if (fresh) known_.emplace_back();
            const std::size_t point = pointOf_.back() = found->second;
            if (rows[i].known) {
                if (known_[point] && std::fabs(*known_[point] - rows[i].known->si()) > 1e-9)
                    throw Error(
                        Error::Kind::BadArgument, "known",
                        Text::same(rows[i].point + " ") +
                            Text{"has two known levels that differ", "tiene dos cotas conocidas distintas"});
                known_[point] = rows[i].known->si();
            }
            if (rows[i].rod && setUp != none)
                readings_.push_back({i, setUp, point, rows[i].rod->si(), false});
            if (!rows[i].backsight) continue;
            setUp = setUps_++;
            readings_.push_back({i, setUp, point, rows[i].backsight->si(), true});
        }
        reach();
    }

    AdjustedLevels adjusted() {
        number();
        std::vector<std::pair<std::size_t, std::size_t>> pairs;
        for (const Reading& one : readings_)
            if (reached(one) && unknownPoint_[one.point] != none)
                pairs.emplace_back(unknownSetUp_[one.setUp], unknownPoint_[one.point]);
        layout::NormalEquations equations(unknowns_, pairs);
        std::vector<double> right(unknowns_, 0.0);
        for (const Reading& one : readings_) {
            if (!reached(one)) continue;
            const std::size_t sight = unknownSetUp_[one.setUp], at = unknownPoint_[one.point];
            equations.add(sight, sight, 1);
            const double held = at == none ? *known_[one.point] : 0;
            right[sight] += one.read + held;
            if (at == none) continue;
            equations.add(at, at, 1);
            equations.add(sight, at, -1);
            right[at] -= one.read;
        }
        equations.factor();
        const std::vector<double> answer = equations.solved(right);
        equations.invert();
        return told(equations, answer);
    }

  private:
    bool reached(const Reading& one) const { return sightReached_[one.setUp]; }

    // From known levels along the readings.
    void reach() {
        sightReached_.assign(setUps_, false);
        for (const std::optional<double>& known : known_) levelReached_.push_back(known.has_value());
        for (bool more = true; more;) {
            more = false;
            for (const Reading& one : readings_) {
                if (levelReached_[one.point] == sightReached_[one.setUp]) continue;
                levelReached_[one.point] = sightReached_[one.setUp] = true;
                more = true;
            }
        }
    }
    void number() {
        for (std::size_t i = 0; i < setUps_; ++i)
            unknownSetUp_.push_back(sightReached_[i] ? unknowns_++ : none);
        for (std::size_t i = 0; i < known_.size(); ++i)
            unknownPoint_.push_back(levelReached_[i] && !known_[i] ? unknowns_++ : none);
    }

    AdjustedLevels told(const layout::NormalEquations& equations, const std::vector<double>& answer) const {
        AdjustedLevels levels;
        levels.rows.resize(pointOf_.size());
        const auto level = [&](std::size_t point) {
            return unknownPoint_[point] == none ? *known_[point] : answer[unknownPoint_[point]];
        };
        for (std::size_t i = 0; i < pointOf_.size(); ++i) {
            const std::size_t point = pointOf_[i];
            if (point == none || !levelReached_[point]) continue;
            const std::size_t at = unknownPoint_[point];
            levels.rows[i].level = Length::fromSi(level(point));
            levels.rows[i].uncertain =
                Length::fromSi(at == none ? 0 : error_ * std::sqrt(equations.inverse(at, at)));
        }
        double sum = 0;
        std::size_t counted = 0;
        std::vector<double> standard;
        for (const Reading& one : readings_) {
            standard.push_back(0);
            if (!reached(one)) continue;
            const std::size_t sight = unknownSetUp_[one.setUp], at = unknownPoint_[one.point];
            const double off = one.read - (answer[sight] - level(one.point));
            (one.back ? levels.rows[one.row].backsightOff : levels.rows[one.row].rodOff) =
                Length::fromSi(off);
            sum += off * off / (error_ * error_);
            ++counted;
            double control = 1 - equations.inverse(sight, sight);
            if (at != none) control -= equations.inverse(at, at) - 2 * equations.inverse(sight, at);
            if (control > leastControl) standard.back() = std::fabs(off) / error_ / std::sqrt(control);
        }
        const auto worst = std::max_element(standard.begin(), standard.end());
        if (worst != standard.end() && *worst > slipAt)
            for (std::size_t i = 0; i < readings_.size(); ++i)
                if (standard[i] * standard[i] > *worst * *worst - tellApart && standard[i] > slipAt)
                    levels.rows[readings_[i].row].slip = true;
        if (counted > unknowns_) {
            levels.redundant = counted - unknowns_;
            levels.scatter = std::sqrt(sum / static_cast<double>(levels.redundant));
        }
        return levels;
    }

    double error_;
    std::map<std::string, std::size_t> points_;
    std::vector<std::size_t> pointOf_;  // by row
    std::vector<std::optional<double>> known_;
    std::vector<Reading> readings_;
    std::size_t setUps_ = 0, unknowns_ = 0;
    std::vector<char> sightReached_, levelReached_;
    std::vector<std::size_t> unknownSetUp_, unknownPoint_;
};

}  // namespace

AdjustedLevels adjustLevels(std::span<const LevelRow> rows, Length error) {
    requirePositive(error, "error");
    return Levels(rows, error.si()).adjusted();
}

}  // namespace trenchbook
