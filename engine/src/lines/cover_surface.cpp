#include "trenchbook/lines/cover_surface.h"

#include "core/names.h"
#include "trenchbook/core/error.h"
#include "trenchbook/pipe/size_class.h"

namespace trenchbook {
std::span<const CoverSurfaceInfo> coverSurfaces() {
    // In the order of the enumeration. Words of two parts are matched as a whole first.
    static const std::vector<CoverSurfaceInfo> known = {
        {CoverSurface::Lawn,
         {"lawn", "césped"},
         "cover.lawn",
         {"lawn", "grass", "sod", "turf", "yard", "césped", "cesped", "pasto", "zacate", "jardín", "jardin"}},
        {CoverSurface::LawnEnd,
         {"end of lawn", "fin de césped"},
         "cover.end",
         {"end of lawn", "lawn end", "end", "last feet", "fin de césped", "fin de cesped", "final"}},
        {CoverSurface::Bed,
         {"bed", "jardinera"},
         "cover.bed",
         {"bed", "beds", "planting", "mulch", "garden", "jardinera", "jardineras", "mantillo"}},
        {CoverSurface::Walk,
         {"walk", "andador"},
         "cover.walk",
         {"walk", "walkway", "path", "patio", "deck", "sidewalk", "pavers", "andador", "banqueta", "acera",
          "terraza", "adoquín", "adoquin"}},
        {CoverSurface::Drive,
         {"drive", "entrada de autos"},
         "cover.drive",
         {"drive", "driveway", "apron", "parking", "gravel", "entrada", "cochera", "estacionamiento",
          "grava"}},
        {CoverSurface::Street,
         {"street", "calle"},
         "cover.street",
         {"street", "road", "alley", "calle", "camino"}},
        {CoverSurface::Daylight,
         {"daylight", "a cielo abierto"},
         nullptr,
         {"daylight", "outlet", "open", "none", "a cielo abierto", "salida", "ninguna"}},
    };
    return known;
}

CoverSurface coverSurface(std::string_view typed, const char* argument) {
    const std::string key = nameKey(typed);
    for (const CoverSurfaceInfo& row : coverSurfaces())
        for (const char* word : row.words)
            if (key == word) return row.surface;
    // Only a whole name exempts a run from cover; among the other words the strongest counts.
    std::optional<CoverSurface> strongest;
    for (const std::string& part : names::words(key))
        for (const CoverSurfaceInfo& row : coverSurfaces())
            for (const char* word : row.words)
                if (row.rule != nullptr && names::words(word) == std::vector{part} &&
                    (!strongest || row.surface > *strongest))
                    strongest = row.surface;
    if (strongest) return *strongest;
    Text known;
    for (const CoverSurfaceInfo& row : coverSurfaces())
        known += (known.empty() ? Text() : Text::same(", ")) + row.name;
    throw Error(Error::Kind::BadArgument, argument, "\"" + std::string(typed) + "\"", known);
}

const char* leastCoverKey(CoverSurface surface, const Pipe& pipe) {
    const char* general = coverSurfaces()[static_cast<std::size_t>(surface)].rule;
    if (general == nullptr) return nullptr;
    const Rule* own = findRule(general + std::string(".") + pipeKindKey(pipe));
    return own != nullptr ? own->key : general;
}

std::optional<Length> leastCover(CoverSurface surface, const Pipe& pipe, const Ruleset& rules) {
    const char* key = leastCoverKey(surface, pipe);
    return key == nullptr ? std::nullopt : std::optional(rules.length(key));
}

}  // namespace trenchbook
