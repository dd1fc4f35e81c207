// The digging price by cut, in straight pieces; the first one is level, the last one goes on.
#pragma once

#include <vector>

#include "trenchbook/grade/grade.h"

#pragma GCC visibility push(hidden)
namespace trenchbook::grade {

class DigPrices {
  public:
    explicit DigPrices(const std::vector<DigPrice>& table) {
        if (table.empty()) return;
        pieces_.push_back({table[0].cut.si(), table[0].price.si(), 0});
        for (std::size_t row = 1; row < table.size(); ++row) {
            const DigPrice& above = table[row - 1];
            const DigPrice& here = table[row];
            const double rise = (here.price - above.price).si() / (here.cut - above.cut).si();
            pieces_.push_back({here.cut.si(), here.price.si(), rise});
        }
    }
    bool none() const { return pieces_.empty(); }
    // Neighbouring cuts mostly lie on one piece: the search starts at `piece` and leaves there what it found.
    PricePerLength at(Length cut, std::size_t& piece) const {
        const double depth = cut.si();
        while (piece + 1 < pieces_.size() && depth > pieces_[piece].end) ++piece;
        while (piece > 0 && depth <= pieces_[piece - 1].end) --piece;
        return PricePerLength::fromSi(pieces_[piece].price +
                                      pieces_[piece].rise * (depth - pieces_[piece].end));
    }

  private:
    struct Piece {
        double end, price, rise;  // price at the end
    };
    std::vector<Piece> pieces_;
};

}  // namespace trenchbook::grade
#pragma GCC visibility pop
