// Stock pipe: what the supply house sells, with the sizes that hydraulics and digging need.
//
//     Pipe pipe = stockPipe("4 sdr-35");
//     pipe.bore.inches();      // 3.975
//     pipe.system;             // "SDR35"
//
// Names are read forgivingly: case, spaces, dashes and "sch. 40" / "schedule 40" do not matter. What else
// tells one make from another, how it joins and which fittings take it, stands in its rows here and nowhere
// else, so that a new make is new rows of this table.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>

#include "trenchbook/core/units.h"

namespace trenchbook {

// How lengths of a pipe and its fittings are put together.
enum class Joint {
    SolventWeld,  // primer and cement in a socket
    Gasket,       // a rubber ring in the bell, pushed home
    Coupling,     // snapped or clamped on from outside
};

struct Pipe {
    std::string name = {};    // as stocked, "4 SDR35"; empty for a bare bore
    std::string system = {};  // the make without the size, "SDR35"; empty for a bare bore
    double nominal = 0;       // size class in inches, mostly the number in front; a bare bore itself
    Length bore = {};         // inside diameter
    std::optional<Length> outside = {};  // none for a bare bore
    double roughness = 0;                // Manning n that the stock row gives
    Joint joint = Joint::SolventWeld;    // of no meaning for a bare bore
    bool perforated = false;             // holes in its wall; takes the fittings of its make
    bool soldByOutside = false;          // the number in front is the outside diameter in mm: "110 SN4"
};

struct StockPipe {
    Pipe pipe;
    Length wall;         // the standard's least wall, or (outside - bore) / 2 for corrugated
    const char* source;  // where the dimensions come from
    const char* roughnessSource;
};

// The number in front as names and codes write it, "4", "1.5", "110", and with its unit, "4 in", "110 mm".
std::string sizeNumber(const Pipe& pipe);
std::string sizeWithUnit(const Pipe& pipe);

// Every stock pipe, by kind and size.
std::span<const StockPipe> stock();
// The stock pipe of a make in a nominal size; null where it is not made in that size.
const Pipe* stockSize(std::string_view system, double nominal);
// The next smaller size of its make, plain or perforated as it is; null where there is none.
const Pipe* nextSmaller(const Pipe& pipe);
// Whether a pipe goes into the fittings of another make as it is: the make's own pipe of this size has the
// same outside diameter and joins the same way. Never for a bare bore.
bool fitsInto(const Pipe& pipe, std::string_view system);

// A stock pipe by name, or a plain number as a bare bore in inches. Errors: BadArgument "pipe", naming the
// nearest stock names.
Pipe stockPipe(std::string_view name);
// A bare bore with the roughness 0.011 of smooth plastic. Errors: bore not above 0.
Pipe bareBore(Length bore);

// The outside diameter; BadArgument "pipe" for a bare bore, which has none.
Length outsideOf(const Pipe& pipe);
// Inside bottom (invert) to the outside top, and to the outside bottom: outside - wall, and wall.
Length invertToOutsideTop(const Pipe& pipe);
Length wallOf(const Pipe& pipe);

}  // namespace trenchbook
