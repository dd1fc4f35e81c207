#include "trenchbook/takeoff/cut_list.h"

#include <algorithm>

#include "trenchbook/core/error.h"
#include "trenchbook/takeoff/sticks.h"

namespace trenchbook {
namespace {

std::string both(Length length) { return plain(length.feet()) + " ft (" + plain(length.metres()) + " m)"; }

// The pieces of one kind: where they stand in the list, and what they are cut from.
struct Batch {
    std::string kind;
    Length stock;
    std::vector<std::size_t> rows = {};
    std::vector<Length> pieces = {};
};

std::vector<Batch> batchesOf(std::span<const PieceToCut> pieces) {
    std::vector<Batch> batches;
    for (std::size_t row = 0; row < pieces.size(); ++row) {
        const PieceToCut& piece = pieces[row];
        auto batch = std::find_if(batches.begin(), batches.end(),
                                  [&](const Batch& known) { return known.kind == piece.kind; });
        if (batch == batches.end()) batch = batches.insert(batches.end(), {piece.kind, piece.stock});
        if (batch->stock != piece.stock)
            throw Error(Error::Kind::BadArgument, "stock", both(piece.stock),
                        {"one length for each kind: " + both(batch->stock),
                         "un solo largo por clase: " + both(batch->stock)});
        batch->rows.push_back(row);
        batch->pieces.push_back(piece.length);
    }
    return batches;
}

void addRows(const Batch& batch, const CuttingPlan& plan, std::vector<CutRow>& rows) {
    std::size_t wholeOf = batch.pieces.size();  // the piece whose whole sticks the last row counts
    for (std::size_t i = 0; i < plan.sticks.size(); ++i) {
        const Stick& stick = plan.sticks[i];
        const bool whole = stick.parts.size() == 1 && stick.parts[0].length == batch.stock;
        if (whole && stick.parts[0].piece == wholeOf) {
            ++rows.back().many;
            continue;
        }
        wholeOf = whole ? stick.parts[0].piece : batch.pieces.size();
        for (const StickPart& part : stick.parts)
            rows.push_back({.piece = batch.rows[part.piece], .stick = i + 1, .length = part.length});
        rows.back().leftOver = stick.offcut;
    }
}

}  // namespace

CutList cutList(std::span<const PieceToCut> pieces, Length kerf) {
    CutList list;
    for (const Batch& batch : batchesOf(pieces)) {
        const CuttingPlan plan = cutSticks(batch.pieces, batch.stock, kerf);
        list.sticks.push_back({batch.kind, plan.sticks.size(), plan.fewest});
        addRows(batch, plan, list.rows);
    }
    return list;
}

}  // namespace trenchbook
