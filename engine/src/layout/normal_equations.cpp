#include "layout/normal_equations.h"

#include <algorithm>
#include <iterator>
#include <set>

namespace trenchbook::layout {
namespace {

using List = std::vector<std::size_t>;

}  // namespace

NormalEquations::NormalEquations(std::size_t size,
                                 std::span<const std::pair<std::size_t, std::size_t>> coupled)
    : place_(size), given_(size) {
    std::vector<List> near(size);
    for (const auto& [a, b] : coupled) {
        if (a == b) continue;
        near[a].push_back(b);
        near[b].push_back(a);
    }
    std::set<std::pair<std::size_t, std::size_t>> byDegree;
    for (std::size_t i = 0; i < size; ++i) {
        std::sort(near[i].begin(), near[i].end());
        near[i].erase(std::unique(near[i].begin(), near[i].end()), near[i].end());
        byDegree.emplace(near[i].size(), i);
    }
    std::vector<List> below(size);
    List joined;
    for (std::size_t step = 0; step < size; ++step) {
        const std::size_t next = byDegree.begin()->second;
        byDegree.erase(byDegree.begin());
        place_[next] = step;
        for (const std::size_t neighbor : near[next]) {
            byDegree.erase({near[neighbor].size(), neighbor});
            joined.clear();
            std::set_union(near[neighbor].begin(), near[neighbor].end(), near[next].begin(), near[next].end(),
                           std::back_inserter(joined));
            std::erase_if(joined, [&](std::size_t i) { return i == next || i == neighbor; });
            near[neighbor] = joined;
            byDegree.emplace(near[neighbor].size(), neighbor);
        }
        below[step] = std::move(near[next]);
    }
    for (std::size_t step = 0; step < size; ++step) {
        List& rows = given_[step].rows;
        for (const std::size_t unknown : below[step]) rows.push_back(place_[unknown]);
        std::sort(rows.begin(), rows.end());
        given_[step].values.resize(rows.size());
    }
}

void NormalEquations::clear() {
    for (Column& column : given_) {
        std::fill(column.values.begin(), column.values.end(), 0.0);
        column.diagonal = 0;
    }
}

double& NormalEquations::entry(std::vector<Column>& columns, std::size_t row, std::size_t column) const {
    const auto [low, high] = std::minmax(row, column);
    Column& in = columns[low];
    if (low == high) return in.diagonal;
    const auto found = std::lower_bound(in.rows.begin(), in.rows.end(), high);
    return in.values[static_cast<std::size_t>(found - in.rows.begin())];
}

double NormalEquations::read(const std::vector<Column>& columns, std::size_t row, std::size_t column) {
    const auto [low, high] = std::minmax(row, column);
    const Column& in = columns[low];
    if (low == high) return in.diagonal;
    const auto found = std::lower_bound(in.rows.begin(), in.rows.end(), high);
    return in.values[static_cast<std::size_t>(found - in.rows.begin())];
}

void NormalEquations::add(std::size_t row, std::size_t column, double value) {
    entry(given_, place_[row], place_[column]) += value;
}

bool NormalEquations::factor() {
    double greatest = 0;
    for (const Column& column : given_) greatest = std::max(greatest, column.diagonal);
    for (Column& column : given_) {
        if (!(column.diagonal > 1e-13 * greatest)) return false;
        for (std::size_t i = 0; i < column.rows.size(); ++i) {
            const double scaled = column.values[i] / column.diagonal;
            Column& to = given_[column.rows[i]];
            to.diagonal -= scaled * column.values[i];
            // The rest of this column's rows stand among those of the column it goes into, in the same order.
            std::size_t at = 0;
            for (std::size_t k = i + 1; k < column.rows.size(); ++k) {
                while (to.rows[at] != column.rows[k]) ++at;
                to.values[at] -= scaled * column.values[k];
            }
        }
        for (double& value : column.values) value /= column.diagonal;
    }
    return true;
}

std::vector<double> NormalEquations::solved(std::span<const double> right) const {
    std::vector<double> x(right.size());
    for (std::size_t i = 0; i < right.size(); ++i) x[place_[i]] = right[i];
    for (std::size_t j = 0; j < given_.size(); ++j)
        for (std::size_t i = 0; i < given_[j].rows.size(); ++i)
            x[given_[j].rows[i]] -= given_[j].values[i] * x[j];
    for (std::size_t j = given_.size(); j-- > 0;) {
        x[j] /= given_[j].diagonal;
        for (std::size_t i = 0; i < given_[j].rows.size(); ++i)
            x[j] -= given_[j].values[i] * x[given_[j].rows[i]];
    }
    std::vector<double> answer(right.size());
    for (std::size_t i = 0; i < right.size(); ++i) answer[i] = x[place_[i]];
    return answer;
}

// Takahashi, Fagan and Chin (1973): from the last unknown to the first, entries of the inverse from later
// ones.
void NormalEquations::invert() {
    inverse_ = given_;
    for (std::size_t j = given_.size(); j-- > 0;) {
        const Column& from = given_[j];
        Column& to = inverse_[j];
        for (std::size_t i = from.rows.size(); i-- > 0;) {
            double sum = 0;
            for (std::size_t k = 0; k < from.rows.size(); ++k)
                sum += from.values[k] * read(inverse_, from.rows[i], from.rows[k]);
            to.values[i] = -sum;
        }
        double sum = 0;
        for (std::size_t k = 0; k < from.rows.size(); ++k) sum += from.values[k] * to.values[k];
        to.diagonal = 1 / from.diagonal - sum;
    }
}

double NormalEquations::inverse(std::size_t row, std::size_t column) const {
    return read(inverse_, place_[row], place_[column]);
}

}  // namespace trenchbook::layout
