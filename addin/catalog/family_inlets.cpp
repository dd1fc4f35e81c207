// What grates, basins, trench drains and downspouts can take.
#include "catalog/common.h"
#include "trenchbook/water/channel.h"
#include "trenchbook/water/inlets.h"

namespace trenchbook::addin {
namespace {

constexpr const char* grateSource =
    "Lesser of weir (3.0 P h^1.5) and orifice (0.67 A (2 g h)^0.5): Texas DOT, Hydraulic Design Manual, "
    "chapter 10";
constexpr const char* channelSource =
    "Spatially varied flow with lateral inflow, momentum equation with friction and slope, integrated (Hinds "
    "1926; Chow 1959, chapter 12)";

Argument inches(const char* name, Text says) {
    return {.name = name, .measure = Measure::Inches, .says = says};
}
Argument withDefault(Argument argument, const char* fallback) {
    argument.fallback = fallback;
    argument.optional = true;
    return argument;
}

// GRATE.CAPACITY and GRATE.PONDING: length, width, open share in a row, blocked share and walls in a row.
std::vector<Argument> grateArguments(std::size_t first, Argument load) {
    std::vector<Argument> all = {
        within(inches("length", {"length of the grate, or diameter of a round one",
                                 "largo de la rejilla, o diámetro de una redonda"}),
               aboveZero),
        within(inches("width", {"width of the grate; blank for a round one",
                                "ancho de la rejilla; en blanco si es redonda"}),
               zeroOrMore),
        {.name = "open share",
         .measure = Measure::Share,
         .says = {"clear opening over outside area", "abertura libre entre área exterior"},
         .limits = ownWords(someShare)}};
    all.insert(all.begin() + static_cast<std::ptrdiff_t>(first), std::move(load));
    all.push_back(withDefault({.name = "blocked share",
                               .measure = Measure::Share,
                               .says = {"part blocked by leaves", "parte tapada por hojas"},
                               .limits = ownWords(levelOrSlope)},
                              "0.5"));
    all.push_back(withDefault(
        within(inches("along walls", {"edge that lies along walls", "borde que queda junto a paredes"}),
               zeroOrMore),
        "0"));
    return all;
}

// The grate whose length is argument `at`.
Grate grate(const Arguments& in, std::size_t at) {
    const Length length = in.quantity<Length>(at);
    const Length width = in.quantity(at + 1, Length{});  // blank arrives as 0
    const double open = in.number(at + 2);
    const double blocked = in.number(4, 0.5);
    const Length walls = in.quantity(5, Length{});
    return width == Length{} ? roundGrate(length, open, blocked, walls)
                             : rectangularGrate(length, width, open, blocked, walls);
}

Argument channelWidth() {
    return within(inches("width", {"inside width of the channel", "ancho interior del canal"}), aboveZero);
}
Argument channelLength() {
    return {.name = "length",
            .measure = Measure::Feet,
            .says = {"length that drains to one outlet", "largo que drena a una salida"},
            .limits = aboveZero};
}
Argument channelSlope() {
    return {.name = "slope",
            .measure = Measure::Slope,
            .says = {"slope of the floor toward the outlet", "pendiente del fondo hacia la salida"},
            .fallback = "0",
            .optional = true,
            .limits = levelOrSlope};
}
Argument channelRoughness() {
    return {.name = "roughness",
            .says = {"Manning n", "n de Manning"},
            .fallback = "0.010",
            .optional = true,
            .limits = manningLimits};
}
Argument outletDepthArgument() {
    return withDefault(
        within(inches("water depth at the outlet",
                      {"water standing at the outlet, over the floor; \"free\" when it falls away",
                       "agua en la salida, sobre el fondo; \"free\" cuando cae libre"}),
               zeroOrMore),
        "\"free\"");
}

TrenchDrain drain(const Arguments& in, std::size_t width, std::size_t length) {
    TrenchDrain made{.width = in.quantity<Length>(width), .length = in.quantity<Length>(length)};
    if (in.given(length + 1)) made.slope = in.slope(length + 1);
    made.roughness = in.number(length + 2, made.roughness);
    return made;
}

Length outletDepth(const Arguments& in, std::size_t index) {
    if (const std::string* word = std::get_if<std::string>(&in.raw(index)))
        if (*word == "free" || *word == "Free" || *word == "FREE" || *word == "libre") return {};
    return in.quantity(index, Length{});
}

}  // namespace

std::vector<Function> inletFunctions() {
    return {
        {.name = "GRATE.CAPACITY",
         .says = {"Flow that a grate in a low spot takes", "Caudal que recibe una rejilla en un punto bajo"},
         .arguments = grateArguments(
             3,
             within(inches("ponding", {"water standing on the grate", "agua sobre la rejilla"}), aboveZero)),
         .measure = Measure::Gpm,
         .source = grateSource,
         .example = "GRATE.CAPACITY(12; 12; 0.4; 1)",
         .call = [](const Arguments& in) -> Result {
             return in.answer(grateCapacity(grate(in, 0), in.quantity<Length>(3)));
         }},
        {.name = "GRATE.PONDING",
         .says = {"How deep water stands on a grate", "Qué tan hondo se acumula el agua sobre una rejilla"},
         .arguments = grateArguments(0, {.name = "flow",
                                         .measure = Measure::Gpm,
                                         .says = {"water that arrives", "agua que llega"},
                                         .limits = aboveZero}),
         .measure = Measure::Inches,
         .source = grateSource,
         .example = "GRATE.PONDING(60; 12; 12; 0.4)",
         .call = [](const Arguments& in) -> Result {
             return in.answer(gratePonding(grate(in, 1), in.quantity<Flow>(0)));
         }},
        {.name = "BASIN.OUTLET",
         .says = {"Flow that leaves a basin or channel end through its outlet pipe",
                  "Caudal que sale de un registro o del extremo de un canal por su tubo"},
         .arguments = {pipeArgument(), within(inches("head", {"water in the basin over the pipe's invert",
                                                              "agua en el registro sobre el fondo del tubo"}),
                                              aboveZero)},
         .measure = Measure::Gpm,
         .source = "Culvert inlet control, square edge: weir, then orifice (FHWA HDS-5; Mays, table 16.2.1)",
         .example = "BASIN.OUTLET(\"4 SDR35\"; 8)",
         .call = [](const Arguments& in) -> Result {
             return in.answer(basinOutletFlow(in.pipe(0).bore, in.quantity<Length>(1)));
         }},
        {.name = "CHANNEL.CAPACITY",
         .says = {"Flow that a trench drain takes in along its length",
                  "Caudal que recibe un canal de drenaje a lo largo"},
         .arguments = {channelWidth(),
                       within(
                           inches("depth", {"inside depth of the channel", "profundidad interior del canal"}),
                           aboveZero),
                       channelLength(), channelSlope(), channelRoughness(),
                       withDefault(within(inches("freeboard", {"kept free below the rim",
                                                               "que queda libre bajo el borde"}),
                                          zeroOrMore),
                                   "0"),
                       outletDepthArgument()},
         .measure = Measure::Gpm,
         .source = channelSource,
         .example = "CHANNEL.CAPACITY(4; 4; 20)",
         .call = [](const Arguments& in) -> Result {
             return in.answer(trenchCapacity(drain(in, 0, 2), in.quantity<Length>(1),
                                             in.quantity(5, Length{}), outletDepth(in, 6)));
         }},
        {.name = "CHANNEL.DEPTH",
         .says = {"Deepest water in a trench drain", "Agua más honda en un canal de drenaje"},
         .arguments = {{.name = "flow",
                        .measure = Measure::Gpm,
                        .says = {"flow at the outlet, taken in evenly along the channel",
                                 "caudal en la salida, recibido por igual a lo largo"},
                        .limits = aboveZero},
                       channelWidth(),
                       channelLength(),
                       channelSlope(),
                       channelRoughness(),
                       outletDepthArgument()},
         .measure = Measure::Inches,
         .source = channelSource,
         .example = "CHANNEL.DEPTH(60; 4; 20)",
         .call = [](const Arguments& in) -> Result {
             return in.answer(deepestInDrain(drain(in, 1, 2), in.quantity<Flow>(0), outletDepth(in, 5)));
         }},
        {.name = "DOWNSPOUT.CAPACITY",
         .says = {"Flow that a downspout takes", "Caudal que lleva una bajada"},
         .arguments = {within(inches("size", {"2x3, 3x4, or a diameter", "2x3, 3x4, o un diámetro"}),
                              aboveZero),
                       {.name = "fill",
                        .measure = Measure::Share,
                        .says = {"share of the cross section that is water, at most 1/3",
                                 "parte de la sección que lleva agua, 1/3 como máximo"},
                        .fallback = "7/24",
                        .optional = true,
                        .limits = Limits{.greatest = 1.0 / 3, .above = true, .toldByFunction = true}}},
         .measure = Measure::Gpm,
         .source = "Leader formula of the plumbing codes, 27.8 r^(5/3) D^(8/3) gpm; National Standard "
                   "Plumbing Code "
                   "(2006), table 13.6.1; rectangular leaders by the largest circle inside",
         .example = "DOWNSPOUT.CAPACITY(\"3x4\")",
         .call = [](const Arguments& in) -> Result {
             const bool named = std::holds_alternative<std::string>(in.raw(0)) && in.given(0);
             const Length diameter =
                 named ? leaderDiameter(in.text(0), Length::fromSi(in.from(Measure::Inches, 1)))
                       : in.quantity<Length>(0);
             return in.answer(leaderCapacity(diameter, in.number(1, 7.0 / 24)));
         }},
    };
}

}  // namespace trenchbook::addin
