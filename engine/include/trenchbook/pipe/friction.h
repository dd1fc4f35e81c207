// Head that a pipe running full loses to friction, by Manning or by Darcy-Weisbach.
//
//     manningLoss(Length::inches(3.975), Flow::gpm(100), Length::feet(100), 0.011).feet(); // 1.015
//     wallLoss(Length::inches(3.975), Flow::gpm(100), Length::feet(100), Length::inches(0.00006),
//              waterViscosity(Temperature::fahrenheit(60))).feet(); // 0.609
//
// Darcy-Weisbach h = f L/D V2/2g. The factor f: Colebrook (1939) 1/sqrt f = -2 log10(e/(3.7 D) + 2.51/(Re
// sqrt f)) solved to 1e-14 for Re of 4000 and more; 64/Re up to 2000; between them, where neither holds, on a
// straight line in Re (common practice, no source). Relative wall roughness up to 0.05, as far as Moody's
// chart (1944) goes.
#pragma once

#include "trenchbook/core/units.h"

namespace trenchbook {

// Manning's friction slope of the full pipe times the length. Errors: BadArgument "pipe", "flow", "length",
// "roughness".
Length manningLoss(Length bore, Flow flow, Length length, double roughness);

// f L/D V2/2g for a known factor.
Length darcyLoss(Length bore, Flow flow, Length length, double factor);
// f for Reynolds number V D / viscosity and wall roughness / bore. Errors: OutsideValidity "wall roughness".
double frictionFactor(double reynolds, double relativeRoughness);
// Both together. Wall roughness 0 is a smooth wall.
Length wallLoss(Length bore, Flow flow, Length length, Length wallRoughness, KinematicViscosity viscosity);

// Of water at ordinary pressure, 0 to 100 degrees Celsius, from viscosity (IAPWS SR6-08, 2011, 1 %) over
// density (Kell 1975, 0.001 %), coefficients from memory, checked against printed tables. Errors:
// OutsideValidity "water".
KinematicViscosity waterViscosity(Temperature water);

}  // namespace trenchbook
