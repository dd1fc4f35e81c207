#include "trenchbook/takeoff/sticks.h"

#include <cmath>
#include <limits>

#include "takeoff/bins.h"
#include "trenchbook/core/error.h"

namespace trenchbook {
namespace {

using Micrometres = std::int64_t;

constexpr std::size_t mostPieces = 5'000;
constexpr double mostSticks = 100'000;
constexpr Micrometres forgiven = 50;
constexpr std::int64_t effort = 100'000'000;
constexpr std::int64_t asLongAsItTakes = std::numeric_limits<std::int64_t>::max();

Micrometres micrometres(Length length) { return std::llround(length.si() * 1e6); }
Length fromMicrometres(Micrometres length) { return Length::metres(static_cast<double>(length) * 1e-6); }

void requirePieces(std::span<const Length> pieces, Length stock) {
    using Kind = Error::Kind;
    if (pieces.empty())
        throw Error(Kind::BadArgument, "pieces", Text{"an empty list", "una lista vacía"},
                    {"at least one length", "al menos un largo"});
    double sticks = 0;
    for (const Length piece : pieces) {
        if (!(piece.si() > 0) || std::isinf(piece.si())) {
            const std::string feet = plain(piece.feet()), metres = plain(piece.metres());
            throw Error(Kind::BadArgument, "pieces",
                        {"one of the pieces is " + feet + " ft (" + metres + " m); allowed: lengths above 0.",
                         "una de las piezas es " + feet + " ft (" + metres +
                             " m); se admite: largos mayores que 0."});
        }
        sticks += std::ceil(piece / stock);
    }
    if (pieces.size() > mostPieces || sticks > mostSticks)
        throw Error(
            Kind::BadArgument, "pieces",
            Text{"", "una lista de "} + counted(pieces.size(), {"length", "largo"}, {"lengths", "largos"}),
            {"at most 5,000 lengths and 100,000 sticks", "como máximo 5,000 largos y 100,000 barras"});
}

// Far beyond what is sold as a stick; counting in micrometres holds for these.
void requireStock(Length stock) {
    requirePositive(stock, "stock");
    if (stock < Length::millimetres(1) || stock > Length::metres(30000))
        throw Error(Error::Kind::BadArgument, "stock", plain(stock.feet()) + " ft",
                    {"from 0.04 in (1 mm) to 98,425 ft (30 km)", "de 0.04 in (1 mm) a 98,425 ft (30 km)"});
}

}  // namespace

CuttingPlan cutSticks(std::span<const Length> pieces, Length stock, Length kerf) {
    requireStock(stock);
    requireNotNegative(kerf, "kerf");
    if (kerf >= stock)
        throw Error(Error::Kind::BadArgument, "kerf", plain(kerf.si()),
                    {"less than the stick", "menos que la barra"});
    requirePieces(pieces, stock);

    CuttingPlan plan;
    const Micrometres stick = micrometres(stock);
    const Micrometres cut = micrometres(kerf);

    // Whole sticks of the long pieces first; what remains of each is a piece like the others.
    std::vector<std::int64_t> items;
    std::vector<StickPart> parts;
    for (std::size_t i = 0; i < pieces.size(); ++i) {
        const Micrometres length = micrometres(pieces[i]);
        Micrometres whole = length / stick;
        Micrometres rest = length - whole * stick;
        if (rest <= forgiven && whole > 0) rest = 0;
        if (stick - rest <= forgiven) ++whole, rest = 0;
        for (; whole > 0; --whole) plan.sticks.push_back({{{i, stock}}, Length{}});
        if (rest == 0) continue;
        // Every piece with its cut, in a stick that is longer by one cut: k pieces need only k - 1 cuts when
        // the last ends where the stick ends.
        items.push_back(rest + cut);
        parts.push_back({i, pieces[i] > stock ? fromMicrometres(rest) : pieces[i]});
    }
    plan.fewest = plan.sticks.size();
    if (items.empty()) return plan;

    const Packing packing =
        packBins(items, stick + cut + forgiven, items.size() <= provedPieces ? asLongAsItTakes : effort);
    plan.fewest += packing.fewest;
    for (const std::vector<std::size_t>& bin : packing.bins) {
        Stick& cutStick = plan.sticks.emplace_back();
        Length left = stock;
        for (const std::size_t item : bin) {
            cutStick.parts.push_back(parts[item]);
            left = left - parts[item].length - kerf;
        }
        cutStick.offcut = std::max(left, Length{});
    }
    return plan;
}

}  // namespace trenchbook
