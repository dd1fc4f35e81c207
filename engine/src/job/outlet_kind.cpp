#include "job/outlet_kind.h"

#include "trenchbook/lines/network.h"

namespace trenchbook {

const OutletKind& outletKind(std::string_view outlet) {
    static const OutletKind kinds[] = {
        // name, flow line, lot line, walk, foundation
        {{"own swale", "zanja propia"}, true, true, true, true},
        {{"easement swale", "zanja de servidumbre"}, true, false, true, true},
        {{"roadside ditch", "cuneta"}, true, false, false, false},
        {{"curb", "bordillo"}, false, false, false, false},
        {{"public inlet", "sumidero público"}, false, false, false, false},
        {{"rock pit with overflow", "pozo de piedra con rebose"}, false, false, false, false},
    };
    static const OutletKind other{{}, false, false, false, false};
    for (const OutletKind& kind : kinds)
        if (const std::string typed = nameKey(outlet); typed == kind.name.en || typed == kind.name.es)
            return kind;
    return other;
}

}  // namespace trenchbook
