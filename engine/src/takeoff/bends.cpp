#include "trenchbook/takeoff/bends.h"

#include <algorithm>
#include <cmath>
#include <functional>

#include "trenchbook/core/error.h"

namespace trenchbook {
namespace {

// Sums of halves and quarters are exact; anything else may be a rounding away from its limit.
constexpr double roundingDegrees = 1e-9;

// Searches the sums of exactly `count` pieces, the larger ones first.
class Search {
  public:
    Search(double turn, std::vector<double> kinds, double tolerance)
        : turn_(turn), kinds_(std::move(kinds)), tolerance_(tolerance + roundingDegrees) {}

    std::vector<double> best(std::size_t count) {
        best_.clear();
        bestOff_ = tolerance_;
        add(count, 0, 0);
        return best_;
    }

  private:
    void add(std::size_t left, std::size_t from, double sum) {
        if (left == 0) {
            const double off = std::fabs(sum - turn_);
            if (off < bestOff_ - roundingDegrees || (best_.empty() && off <= tolerance_)) {
                bestOff_ = off;
                best_ = chosen_;
            }
            return;
        }
        for (std::size_t kind = from; kind < kinds_.size(); ++kind) {
            const double count = static_cast<double>(left);
            if (sum + count * kinds_[kind] < turn_ - tolerance_)
                return;  // and smaller ones fall shorter still
            if (sum + kinds_[kind] + (count - 1) * kinds_.back() > turn_ + tolerance_) continue;
            chosen_.push_back(kinds_[kind]);
            add(left - 1, kind, sum + kinds_[kind]);
            chosen_.pop_back();
        }
    }

    double turn_;
    std::vector<double> kinds_;  // falling
    double tolerance_;
    std::vector<double> chosen_, best_;
    double bestOff_ = 0;
};

std::string list(const std::vector<double>& degrees) {
    std::string text;
    for (double piece : degrees) text += (text.empty() ? "" : ", ") + plain(piece);
    return text;
}

}  // namespace

std::vector<Angle> makeup(Angle turn, std::span<const Angle> pieces, Angle tolerance) {
    constexpr double leastPiece = 5, greatestPiece = 90, greatestTurn = 180;
    constexpr std::size_t mostKinds = 8;
    if (!(turn.degrees() > 0 && turn.degrees() <= greatestTurn))
        throw Error(Error::Kind::BadArgument, "turn", plain(turn.degrees()) + " deg",
                    {"above 0 and at most 180 deg", "mayor que 0 y como máximo 180 deg"});
    if (!(tolerance.degrees() >= 0 && tolerance.degrees() <= 22.5))
        throw Error(Error::Kind::BadArgument, "tolerance", plain(tolerance.degrees()) + " deg",
                    {"from 0 to 22.5 deg", "de 0 a 22.5 deg"});
    std::vector<double> kinds;
    for (Angle piece : pieces) kinds.push_back(piece.degrees());
    std::sort(kinds.begin(), kinds.end(), std::greater<>());
    kinds.erase(std::unique(kinds.begin(), kinds.end()), kinds.end());
    const bool sold = std::all_of(kinds.begin(), kinds.end(),
                                  [](double piece) { return piece >= leastPiece && piece <= greatestPiece; });
    if (kinds.empty() || kinds.size() > mostKinds || !sold)
        throw Error(Error::Kind::BadArgument, "pieces",
                    kinds.empty() ? Text{"blank", "una lista vacía"} : Text::same(list(kinds)),
                    {"1 to 8 angles from 5 to 90 deg", "de 1 a 8 ángulos de 5 a 90 deg"});

    if (turn <= tolerance) return {};
    Search search(turn.degrees(), kinds, tolerance.degrees());
    const auto most = static_cast<std::size_t>((turn + tolerance).degrees() / kinds.back()) + 1;
    for (std::size_t count = 1; count <= most; ++count) {
        const std::vector<double> found = search.best(count);
        if (found.empty()) continue;
        std::vector<Angle> made;
        for (double piece : found) made.push_back(Angle::degrees(piece));
        return made;
    }
    throw Error(Error::Kind::NoSolution, "turn", plain(turn.degrees()) + " deg",
                {"a sum of " + list(kinds) + " within " + plain(tolerance.degrees()) + " deg",
                 "una suma de " + list(kinds) + " con " + plain(tolerance.degrees()) + " deg de diferencia"});
}

std::string makeupText(std::span<const Angle> pieces) {
    if (pieces.empty()) return "0";
    std::string text;
    for (Angle piece : pieces) text += (text.empty() ? "" : " + ") + plain(piece.degrees());
    return text;
}

}  // namespace trenchbook
