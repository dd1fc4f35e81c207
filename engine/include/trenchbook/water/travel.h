// How long water takes to arrive: over the ground as a sheet, in shallow rills, or along a small channel.
//
//     sheetTime(Length::feet(60), Slope::percent(2), 0.15, Length::inches(3.5)).minutes();    // 6.9
//
// On a small yard the sum is mostly under the 5 minutes of the shortest rain in the tables; then it does not
// matter.
#pragma once

#include "trenchbook/core/units.h"

namespace trenchbook {

// The longest path that stays a sheet before the water gathers: NRCS NEH 630, chapter 15 (2010); TR-55 (1986)
// still allowed 300 ft.
inline constexpr Length longestSheet = Length::feet(100);

// Kinematic sheet flow, T = 0.007 (n L)^0.8 / (P2^0.5 s^0.4) hours with L in ft and P2, the two-year 24-hour
// rain, in inches. TR-55 (1986), eq. 3-3. `roughness` is the n of sheet flow (surfaces.h), 0.005 to 1.
// Errors: BadArgument "length", "slope", "roughness", "two-year day rain"; OutsideValidity "length" beyond
// 100 ft.
Duration sheetTime(Length length, Slope slope, double roughness, Length twoYearDayRain);

// Shallow concentrated flow, V = k sqrt(s), k the surface's velocity at slope 1 (surfaces.h). NRCS NEH 630,
// chapter 15, table 15-3; TR-55, figure 3-1. Errors: BadArgument "length", "slope", "surface".
Velocity shallowVelocity(Slope slope, Velocity atUnitSlope);
Duration shallowTime(Length length, Slope slope, Velocity atUnitSlope);

// Kirpich (1940), T = 0.0078 L^0.77 S^-0.385 minutes with L in ft: small steep catchments with a defined
// channel. NRCS prints 0.007, ten per cent less; published multipliers for paved paths (0.4) and concrete
// channels (0.2) are left to the caller. Errors: BadArgument "length", "slope".
Duration kirpichTime(Length length, Slope slope);

}  // namespace trenchbook
