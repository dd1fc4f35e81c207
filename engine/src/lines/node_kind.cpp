#include "trenchbook/lines/node_kind.h"

#include <array>

#include "trenchbook/core/error.h"
#include "trenchbook/lines/network.h"

namespace trenchbook {
namespace {

const std::array<NodeKindInfo, nodeKindCount>& table() {
    static const std::array<NodeKindInfo, nodeKindCount> rows = {{
        {.kind = NodeKind::Downspout,
         .name = {"downspout", "bajante"},
         .words = {"downspout", "leader", "bajante"},
         .takesWater = true,
         .open = true,
         .upright = true,
         .loss = "wye run",
         .device = "DOWNSPOUT-"},
        {.kind = NodeKind::Channel,
         .name = {"channel", "canal con rejilla"},
         .words = {"channel", "trench drain", "canal con rejilla", "canal", "canaleta"},
         .takesWater = true,
         .open = true,
         .takesCable = true,
         .stillsWater = true,
         .body = "HUB-",
         .device = "CHANNEL-"},
        {.kind = NodeKind::Basin,
         .name = {"basin", "caja de registro"},
         .words = {"basin", "catch basin", "caja de registro", "caja"},
         .takesWater = true,
         .open = true,
         .takesCable = true,
         .stillsWater = true,
         .body = "HUB-",
         .device = "BASIN-"},
        {.kind = NodeKind::Bend, .name = {"bend", "codo"}, .words = {"bend", "elbow", "codo"}},
        {.kind = NodeKind::Cleanout,
         .name = {"cleanout", "registro de limpieza"},
         .words = {"cleanout", "clean-out", "registro de limpieza", "registro"},
         .open = true,
         .takesCable = true,
         .upright = true,
         .loss = "cleanout",
         .body = "CLEANOUT-"},
        {.kind = NodeKind::Wye, .name = {"wye", "ye"}, .words = {"wye", "y", "ye"}, .loss = "wye run"},
        {.kind = NodeKind::Crossing, .name = {"crossing", "cruce"}, .words = {"crossing", "cruce"}},
        {.kind = NodeKind::Tee,
         .name = {"tee", "te del pozo"},
         .words = {"tee", "te del pozo", "te"},
         .endsLine = true,
         .bubbles = true,
         .body = "TEE-",
         .device = "TEEGRATE-"},
        {.kind = NodeKind::Riser,
         .name = {"riser", "tubo vertical"},
         .words = {"riser", "bubbler", "tubo vertical"},
         .endsLine = true,
         .bubbles = true,
         .body = "TEE-",
         .device = "TEEGRATE-"},
        {.kind = NodeKind::PopUp,
         .name = {"pop-up", "tapa emergente"},
         .words = {"pop-up", "popup", "tapa emergente"},
         .endsLine = true,
         .bubbles = true,
         .body = "TEE-",
         .device = "POPUP-"},
        {.kind = NodeKind::Bank,
         .name = {"bank", "talud"},
         .words = {"bank", "daylight", "talud"},
         .endsLine = true,
         .device = "GUARD-"},
        {.kind = NodeKind::Ditch,
         .name = {"ditch", "cuneta"},
         .words = {"ditch", "swale", "cuneta", "zanja"},
         .endsLine = true,
         .device = "GUARD-"},
        {.kind = NodeKind::Curb,
         .name = {"curb", "bordillo"},
         .words = {"curb", "gutter", "bordillo"},
         .endsLine = true,
         .device = "CURB-"},
        {.kind = NodeKind::ExistingPipe,
         .name = {"existing pipe", "tubo existente"},
         .words = {"existing pipe", "tie-in", "public inlet", "tubo existente"},
         .endsLine = true,
         .device = "TIEIN-"},
        {.kind = NodeKind::PumpBasin,
         .name = {"pump basin", "cárcamo de bombeo"},
         .words = {"pump basin", "pump", "cárcamo de bombeo", "cárcamo"},
         .endsLine = true,
         .device = "PUMP-BASIN"},
        {.kind = NodeKind::Outlet,
         .name = {"outlet", "salida"},
         .words = {"outlet", "salida"},
         .endsLine = true,
         .device = "GUARD-"},
        {.kind = NodeKind::Cap,
         .name = {"cap", "tapa"},
         .words = {"cap", "tapa"},
         .open = true,
         .device = "CAP-"},
    }};
    return rows;
}

bool any(NodeKinds kinds, bool NodeKindInfo::*property) {
    for (const NodeKindInfo& row : table())
        if (kinds.has(row.kind) && row.*property) return true;
    return false;
}

const NodeKindInfo* named(const std::string& word) {
    for (const NodeKindInfo& row : table())
        for (const char* known : row.words)
            if (word == known) return &row;
    return nullptr;
}

}  // namespace

std::span<const NodeKindInfo> nodeKindTable() { return table(); }
const NodeKindInfo& info(NodeKind kind) { return table()[static_cast<std::size_t>(kind)]; }

bool NodeKinds::takesWater() const { return any(*this, &NodeKindInfo::takesWater); }
bool NodeKinds::open() const { return any(*this, &NodeKindInfo::open); }
bool NodeKinds::takesCable() const { return any(*this, &NodeKindInfo::takesCable); }
bool NodeKinds::stillsWater() const { return any(*this, &NodeKindInfo::stillsWater); }
bool NodeKinds::upright() const { return any(*this, &NodeKindInfo::upright); }
bool NodeKinds::endsLine() const { return any(*this, &NodeKindInfo::endsLine); }
bool NodeKinds::bubbles() const { return any(*this, &NodeKindInfo::bubbles); }

Text NodeKinds::text() const {
    Text said;
    for (const NodeKindInfo& row : table())
        if (has(row.kind)) said += (said.empty() ? Text() : Text::same(" + ")) + row.name;
    return said;
}

NodeKinds nodeKinds(std::string_view typed) {
    NodeKinds kinds;
    std::string_view rest = typed;
    while (true) {
        const std::size_t mark = rest.find_first_of("+,/&");
        const NodeKindInfo* row = named(nameKey(rest.substr(0, mark)));
        if (row == nullptr) {
            Text names;
            for (const NodeKindInfo& known : table())
                names += (names.empty() ? Text() : Text::same(", ")) + known.name;
            throw Error(Error::Kind::BadArgument, "kind", "\"" + std::string(typed.substr(0, 60)) + "\"",
                        names);
        }
        kinds.add(row->kind);
        if (mark == rest.npos) return kinds;
        rest.remove_prefix(mark + 1);
    }
}

}  // namespace trenchbook
