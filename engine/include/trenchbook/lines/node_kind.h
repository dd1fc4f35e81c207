// What may stand at a node: one table for what goes in there, what its lid is, what it costs the water, what it is
// made of. A node may be several things at once: a cleanout where a downspout joins.
//
//     NodeKinds kinds = nodeKinds("cleanout + downspout");
//     kinds.has(NodeKind::Cleanout);    // true
//     kinds.takesCable();               // true
#pragma once

#include <cstdint>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "trenchbook/core/text.h"

namespace trenchbook {

// In the order of the table.
enum class NodeKind {
    Downspout,
    Channel,
    Basin,
    Bend,
    Cleanout,
    Wye,
    Crossing,
    Tee,           // turned up over a rock pit
    Riser,         // turned up without a pit
    PopUp,         // the same under a lid that the water lifts
    Bank,          // daylight on a bank: the water falls away
    Ditch,         // or swale
    Curb,          // through it into the gutter
    ExistingPipe,  // or a public inlet
    PumpBasin,
    Outlet,  // how the line ends is not said
    Cap
};
inline constexpr std::size_t nodeKindCount = 17;

struct NodeKindInfo {
    NodeKind kind;
    Text name;                       // as the sheets show it
    std::vector<const char*> words;  // that mean it, in either language
    bool takesWater = false;         // an inlet on Water may enter here
    bool open = false;  // water can come out: how high it stands below the opening is judged (freeboard.min)
    bool takesCable = false;     // an opening for a cable: cleanouts are counted from here
    bool stillsWater = false;    // a box in which water comes to rest and is sped up anew
    bool upright = false;        // a riser comes in from above through a wye, or ends the line with two bends
    bool endsLine = false;       // water leaves the pipe here
    bool bubbles = false;        // it comes out over a rim
    const char* loss = nullptr;  // fitting whose loss the pipe that goes on bears; null: none of its own
    const char* body =
        nullptr;  // start of the code of the piece set here: "CLEANOUT-", "HUB-", "TEE-"; null: none
    const char* device =
        nullptr;  // start of the code of the device by default: "DOWNSPOUT-", "BASIN-"; null: none
};
std::span<const NodeKindInfo> nodeKindTable();
const NodeKindInfo& info(NodeKind kind);

class NodeKinds {
  public:
    bool has(NodeKind kind) const { return (bits_ >> static_cast<unsigned>(kind)) & 1U; }
    void add(NodeKind kind) { bits_ |= 1U << static_cast<unsigned>(kind); }
    bool empty() const { return bits_ == 0; }
    bool takesWater() const;
    bool open() const;
    bool takesCable() const;
    bool stillsWater() const;
    bool upright() const;
    bool endsLine() const;
    bool bubbles() const;
    // "downspout + cleanout": in the order of the table.
    Text text() const;

    bool operator==(const NodeKinds&) const = default;

  private:
    std::uint32_t bits_ = 0;
};

// The kinds in a cell, with + , / or & between them. Errors: BadArgument "kind", with the words there are.
NodeKinds nodeKinds(std::string_view typed);

}  // namespace trenchbook
