#include "trenchbook/water/surfaces.h"

#include "core/names.h"

namespace trenchbook {
namespace {

constexpr const char* hds2C =
    "FHWA HDS-2, 2nd ed. (2002), table of runoff coefficients for the rational formula";
constexpr const char* course = "University of Illinois, course TSM 352, table of runoff coefficients";
constexpr const char* trade = "common practice, no source";

// Low and high end. "Street" rows serve drives and patios of the same material.
constexpr RunoffSurface runoff[] = {
    {"Roofs", "roof|techo|tejado|azotea|shingle|metal roof|tile roof", 0.75, 0.95, hds2C},
    {"Street, concrete", "concrete|concreto|concrete drive|concrete patio|deck|pool deck|slab", 0.80, 0.95,
     hds2C},
    {"Street, asphalt", "asphalt|asfalto|blacktop|asphalt drive", 0.70, 0.95, hds2C},
    {"Street, brick", "brick|pavers|ladrillo|adoqu\u00EDn|paver patio", 0.70, 0.85, hds2C},
    {"Drives and walks", "drive|driveway|walk|sidewalk|patio|entrada|banqueta|acera", 0.75, 0.85, hds2C},
    {"Gravel", "grava|gravel drive|crushed stone", 0.50, 0.70, trade},
    {"Bare packed soil, smooth", "tierra compactada|packed dirt|dirt", 0.30, 0.60, course},
    {"Lawn, sandy soil, flat (under 2 %)", "c\u00E9sped arenoso plano", 0.05, 0.10, hds2C},
    {"Lawn, sandy soil, average (2 to 7 %)", "c\u00E9sped arenoso medio", 0.10, 0.15, hds2C},
    {"Lawn, sandy soil, steep (over 7 %)", "c\u00E9sped arenoso empinado", 0.15, 0.20, hds2C},
    {"Lawn, heavy soil, flat (under 2 %)", "lawn, clay, flat|c\u00E9sped arcilloso plano", 0.13, 0.17, hds2C},
    {"Lawn, heavy soil, average (2 to 7 %)", "lawn, clay, average|c\u00E9sped arcilloso medio", 0.18, 0.22,
     hds2C},
    {"Lawn, heavy soil, steep (over 7 %)", "lawn, clay, steep|c\u00E9sped arcilloso empinado", 0.25, 0.35,
     hds2C},
    {"Business, downtown", "", 0.70, 0.95, hds2C},
    {"Business, neighborhood", "", 0.50, 0.70, hds2C},
    {"Residential, single family", "single family lot|house lot|casa unifamiliar", 0.30, 0.50, hds2C},
    {"Residential, multi-units detached", "", 0.40, 0.60, hds2C},
    {"Residential, multi-units attached", "row houses", 0.60, 0.75, hds2C},
    {"Residential, suburban", "suburb", 0.25, 0.40, hds2C},
    {"Apartment dwelling areas", "apartments", 0.50, 0.70, hds2C},
    {"Industrial, light", "", 0.50, 0.80, hds2C},
    {"Industrial, heavy", "", 0.60, 0.90, hds2C},
    {"Parks, cemeteries", "park|cemetery|parque|cementerio", 0.10, 0.25, hds2C},
    {"Playgrounds", "playground|patio de juegos", 0.20, 0.40, hds2C},
    {"Railroad yards", "", 0.20, 0.40, hds2C},
    {"Unimproved areas", "unimproved|bald\u00EDo", 0.10, 0.30, hds2C},
};

constexpr const char* tr55a = "NRCS TR-55 (1986), table 2-2a";
constexpr const char* tr55c = "NRCS TR-55 (1986), table 2-2c";
constexpr const char* tr55Memory = "NRCS TR-55 (1986), table 2-2c, from memory";

constexpr GroundCover cover[] = {
    {"Open space, poor (under 50 % grass)",
     "lawn, poor|grass, poor|c\u00E9sped malo",
     {68, 79, 86, 89},
     tr55a},
    {"Open space, fair (50 to 75 % grass)",
     "lawn, fair|grass, fair|c\u00E9sped regular",
     {49, 69, 79, 84},
     tr55a},
    {"Open space, good (over 75 % grass)",
     "lawn, good|grass, good|c\u00E9sped bueno",
     {39, 61, 74, 80},
     tr55a},
    {"Paved parking lots, roofs, driveways",
     "roof|driveway|patio|concrete|asphalt|techo|pavimento",
     {98, 98, 98, 98},
     tr55a},
    {"Streets, paved, curbs and storm sewers", "street, curbed", {98, 98, 98, 98}, tr55a},
    {"Streets, paved, open ditches incl. right-of-way", "street, ditches", {83, 89, 92, 93}, tr55a},
    {"Gravel streets incl. right-of-way", "gravel|grava", {76, 85, 89, 91}, tr55a},
    {"Dirt streets incl. right-of-way", "dirt|tierra", {72, 82, 87, 89}, tr55a},
    {"Natural desert landscaping (pervious only)", "", {63, 77, 85, 88}, tr55a},
    {"Artificial desert landscaping", "", {96, 96, 96, 96}, tr55a},
    {"Commercial and business", "", {89, 92, 94, 95}, tr55a},
    {"Industrial", "", {81, 88, 91, 93}, tr55a},
    {"Residential 1/8 acre or less", "", {77, 85, 90, 92}, tr55a},
    {"Residential 1/4 acre", "", {61, 75, 83, 87}, tr55a},
    {"Residential 1/3 acre", "", {57, 72, 81, 86}, tr55a},
    {"Residential 1/2 acre", "", {54, 70, 80, 85}, tr55a},
    {"Residential 1 acre", "", {51, 68, 79, 84}, tr55a},
    {"Residential 2 acres", "", {46, 65, 77, 82}, tr55a},
    {"Newly graded, no vegetation", "bare soil|graded|suelo desnudo", {77, 86, 91, 94}, tr55a},
    {"Pasture, poor", "", {68, 79, 86, 89}, tr55c},
    {"Pasture, fair", "", {49, 69, 79, 84}, tr55c},
    {"Pasture, good", "", {39, 61, 74, 80}, tr55c},
    {"Meadow", "pradera", {30, 58, 71, 78}, tr55Memory},
    {"Brush, poor", "", {48, 67, 77, 83}, tr55c},
    {"Brush, fair", "", {35, 56, 70, 77}, tr55c},
    {"Brush, good", "", {30, 48, 65, 73}, tr55c},
    {"Woods-grass, poor", "orchard, poor", {57, 73, 82, 86}, tr55c},
    {"Woods-grass, fair", "orchard, fair", {43, 65, 76, 82}, tr55c},
    {"Woods-grass, good", "orchard, good", {32, 58, 72, 79}, tr55c},
    {"Woods, poor", "", {45, 66, 77, 83}, tr55c},
    {"Woods, fair", "", {36, 60, 73, 79}, tr55c},
    {"Woods, good", "", {30, 55, 70, 77}, tr55c},
    {"Farmsteads", "farmstead|granja", {59, 74, 82, 86}, tr55Memory},
};

constexpr const char* hds2Sheet = "FHWA HDS-2, 2nd ed. (2002), table of n for sheet flow";

constexpr SheetSurface sheet[] = {
    {"Smooth asphalt", "asphalt|asfalto", 0.011, hds2Sheet},
    {"Smooth concrete", "concrete|concreto", 0.012, hds2Sheet},
    {"Concrete lining", "", 0.013, hds2Sheet},
    {"Good wood", "wood|wooden deck|madera", 0.014, hds2Sheet},
    {"Brick with cement mortar", "brick|pavers|ladrillo", 0.014, hds2Sheet},
    {"Vitrified clay", "", 0.015, hds2Sheet},
    {"Cast iron", "", 0.015, hds2Sheet},
    {"Corrugated metal pipe", "", 0.024, hds2Sheet},
    {"Cement rubble", "", 0.024, hds2Sheet},
    {"Fallow, no residue", "bare soil|suelo desnudo", 0.050, hds2Sheet},
    {"Cultivated, residue 20 % or less", "cultivated, residue <=20%", 0.060, hds2Sheet},
    {"Cultivated, residue over 20 %", "cultivated, residue >20%", 0.170, hds2Sheet},
    {"Range, natural", "", 0.130, hds2Sheet},
    {"Short grass prairie", "short grass|lawn|c\u00E9sped", 0.150, hds2Sheet},
    {"Dense grasses", "dense grass|pasto denso", 0.240, hds2Sheet},
    {"Bermuda grass", "bermuda", 0.410, hds2Sheet},
    {"Woods, light underbrush", "", 0.400, hds2Sheet},
    {"Woods, dense underbrush", "", 0.800, hds2Sheet},
};

// V / sqrt(slope) follows from Manning's equation at the flow depth and n that the handbook assumes for each
// cover.
constexpr const char* neh15 = "NRCS NEH 630, chapter 15 (2010), table 15-3; TR-55 (1986), figure 3-1";

constexpr ShallowSurface shallow[] = {
    {"Pavement", "paved|small upland gullies|pavimento|concrete|asphalt", Velocity::feetPerSecond(20.3282),
     neh15},
    {"Grassed waterways", "unpaved|grassed waterway|swale|sin pavimento", Velocity::feetPerSecond(16.1345),
     neh15},
    {"Nearly bare and untilled", "bare soil|gravel|tierra|grava", Velocity::feetPerSecond(9.965), neh15},
    {"Cultivated straight row", "cultivated|garden bed", Velocity::feetPerSecond(8.762), neh15},
    {"Short-grass pasture", "short grass|lawn|c\u00E9sped", Velocity::feetPerSecond(6.962), neh15},
    {"Minimum tillage, woodlands", "woodland|mulch|bosque", Velocity::feetPerSecond(5.032), neh15},
    {"Forest with heavy litter, hay meadow", "forest|meadow|heavy ground litter",
     Velocity::feetPerSecond(2.516), neh15},
};

}  // namespace

std::span<const RunoffSurface> runoffSurfaces() { return runoff; }
std::span<const GroundCover> groundCovers() { return cover; }
std::span<const SheetSurface> sheetSurfaces() { return sheet; }
std::span<const ShallowSurface> shallowSurfaces() { return shallow; }

RangePart rangePart(std::string_view name) {
    const std::vector<std::string> word = names::words(name);
    if (word.size() == 1) {
        if (word[0] == "low") return RangePart::Low;
        if (word[0] == "mid" || word[0] == "middle") return RangePart::Mid;
        if (word[0] == "high") return RangePart::High;
    }
    throw Error(Error::Kind::BadArgument, "which", "\"" + std::string(name) + "\"",
                Text::same("\"low\", \"mid\", \"high\""));
}

double runoffCoefficient(std::string_view surface, RangePart part) {
    static const names::Table table(runoffSurfaces());
    const RunoffSurface& row = table.find(surface, "surface");
    switch (part) {
        case RangePart::Low:
            return row.low;
        case RangePart::High:
            return row.high;
        case RangePart::Mid:
            break;
    }
    return (row.low + row.high) / 2;
}

double curveNumber(std::string_view typedCover, std::string_view soilGroup) {
    static const names::Table table(groundCovers());
    const GroundCover& row = table.find(typedCover, "cover");
    const std::vector<std::string> word = names::words(soilGroup);
    if (!word.empty() && word.back().size() == 1 && word.back()[0] >= 'a' && word.back()[0] <= 'd' &&
        (word.size() == 1 || word.front() == "group" || word.front() == "hsg" || word.front() == "grupo"))
        return row.curveNumbers[static_cast<std::size_t>(word.back()[0] - 'a')];
    throw Error(Error::Kind::BadArgument, "soil group", "\"" + std::string(soilGroup) + "\"",
                {"A, B, C or D (the soil survey tells it)", "A, B, C o D (lo dice el estudio de suelos)"});
}

double sheetRoughness(std::string_view surface) {
    static const names::Table table(sheetSurfaces());
    return table.find(surface, "roughness").roughness;
}

const ShallowSurface& shallowSurface(std::string_view surface) {
    static const names::Table table(shallowSurfaces());
    return table.find(surface, "surface");
}

}  // namespace trenchbook
