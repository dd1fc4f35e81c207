// Symmetric positive definite equations with few terms, solved by L D L' with a least-degree order, and those
// entries of the inverse that stand where an equation has a term.
#pragma once

#include <cstddef>
#include <span>
#include <utility>
#include <vector>

#pragma GCC visibility push(hidden)
namespace trenchbook::layout {

class NormalEquations {
  public:
    // `coupled`: pairs of unknowns that stand in one observation together. Unknowns 0 to size - 1.
    NormalEquations(std::size_t size, std::span<const std::pair<std::size_t, std::size_t>> coupled);

    void clear();
    // Adds to the entry of a pair that was named; either order.
    void add(std::size_t row, std::size_t column, double value);
    // False where they have no one answer.
    bool factor();
    std::vector<double> solved(std::span<const double> right) const;
    // After factor(): finds the inverse, then reads it.
    void invert();
    double inverse(std::size_t row, std::size_t column) const;

  private:
    struct Column {
        std::vector<std::size_t> rows;  // below the diagonal, in order of elimination
        std::vector<double> values;
        double diagonal = 0;
    };
    double& entry(std::vector<Column>& columns, std::size_t row, std::size_t column) const;
    static double read(const std::vector<Column>& columns, std::size_t row, std::size_t column);

    std::vector<std::size_t> place_;  // of an unknown in the order of elimination
    std::vector<Column> given_, inverse_;
};

}  // namespace trenchbook::layout
#pragma GCC visibility pop
