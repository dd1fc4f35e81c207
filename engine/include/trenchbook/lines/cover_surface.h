// What lies over a pipe, which decides the cover that it needs: one table of surfaces and the words that mean them.
//
//     CoverSurface surface = coverSurface("gravel driveway", "surface up");      // CoverSurface::Drive
//     leastCover(surface, stockPipe("4 SDR35"), Ruleset())->inches();            // 24
//
// Not to be mixed up with what rain runs off (water/surfaces.h).
#pragma once

#include <optional>
#include <span>
#include <string_view>
#include <vector>

#include "trenchbook/core/text.h"
#include "trenchbook/core/units.h"
#include "trenchbook/pipe/stock.h"
#include "trenchbook/rules/rules.h"

namespace trenchbook {

enum class CoverSurface { Lawn, LawnEnd, Bed, Walk, Drive, Street, Daylight };
struct CoverSurfaceInfo {
    CoverSurface surface;
    Text name;                       // as the tables show it
    const char* rule;                // key of its least cover; null: exempt
    std::vector<const char*> words;  // that mean it, matched as whole words
};
std::span<const CoverSurfaceInfo> coverSurfaces();
// By name, forgiving: "lawn", "Front lawn", "gravel driveway", "césped". Where several words are known, the
// one that asks for the strongest cover counts ("lawn beside the driveway" is a drive). Errors: BadArgument
// with the argument's name.
CoverSurface coverSurface(std::string_view words, const char* argument);

// The key of the least cover for a surface and a pipe: "cover.drive.sch40" where there is such a rule, else
// "cover.drive"; null where exempt.
const char* leastCoverKey(CoverSurface surface, const Pipe& pipe);
// That cover; none where exempt.
std::optional<Length> leastCover(CoverSurface surface, const Pipe& pipe, const Ruleset& rules);

}  // namespace trenchbook
