// What a worker moves by hand in an hour, as it was printed: digging, filling, carrying.
//
//     #include "trenchbook/takeoff/hand_output.h"
//     using namespace trenchbook;
//     const HandOutput& clay = handOutput(HandWork::Trench, Length::feet(4), "clay");
//     clay.perHour.cubicMetres();   // 0.46
//     handHours(clay).perCubicYard;  // 1.662 man-hours a cubic yard in place
//
// Source: Guild of Project Controls, wiki, output norms "excavate by hand", "excavate pits", "hand fill and compact", "hand
// transport of spoil". Trenches to 4.5 m, pits of at most 2 m2 to 3 m, fill in layers with compaction from the side, spoil carried
// to 20 m. A depth that lies on the border of two rows belongs to the shallower. Its rows for trimming are left out: their unit is
// doubtful. Nothing is put between rows and nothing beyond them.
// Errors: BadArgument "work", "soil" (a word that the table does not have for that work), "size" (not above 0, deeper or farther
// than printed); NoSolution "soil" where the table has that soil, but no row of this size.
#pragma once

#include <span>
#include <string_view>

#include "trenchbook/core/units.h"

namespace trenchbook {

enum class HandWork { Trench, Pit, Fill, Carry };

struct HandOutput {
    HandWork work;
    const char* soil;   // "" where the row does not tell soils apart
    Length over, upTo;  // depth of the digging, thickness of the layer, way that is carried
    Volume perHour;     // of a worker
};

std::span<const HandOutput> handOutputs();

// "trench", "pit", "fill", "carry", in Spanish "zanja", "pozo", "relleno", "acarreo".
HandWork handWorkNamed(std::string_view name);

// Soils: loose, firm, clay, boulder clay; for pits gravel, too; for fill loose, clay, hoggin, hardcore; in Spanish suelto, firme,
// arcilla, arcilla con bolos, grava, zahorra, cascote. Empty: firm, for fill loose. Carrying does not ask it.
const HandOutput& handOutput(HandWork work, Length size, std::string_view soil = {});

// Man-hours for one cubic yard (by .perCubicYard) or cubic meter.
struct HandHours {
    double perCubicYard = 0, perCubicMetre = 0;
};
HandHours handHours(const HandOutput& output);

}  // namespace trenchbook
