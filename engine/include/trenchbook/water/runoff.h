// How much of the rain runs off: peak flow, volume and depth, and the roof area that collects it.
//
//     rationalFlow(Area::squareFeet(1200), 0.95, RainRate::inchesPerHour(4)).gpm();  // 47.38
//     runoffDepth(Length::inches(5), 80).inches();                                   // 2.89
//
// Errors: BadArgument for areas and rain not above 0, shares outside 0 to 1, and for a coefficient that was
// typed as a percent, which has its own sentence.
#pragma once

#include "trenchbook/core/units.h"

namespace trenchbook {

// Rational method, Q = C i A with nothing rounded: in US units, gpm = C x in/hr x sq ft / 96.25. (Books that
// write Q = CiA in cfs and acres drop a factor of 1.00833.) Meant for small plots, up to some 200 acres (80
// hectares), with rain that lasts as long as the water takes to arrive. FHWA HDS-2, section 5.2.
Flow rationalFlow(Area area, double coefficient, RainRate intensity);

// The share of a rain depth that runs off an area: V = C P A.
Volume runoffVolume(Area area, double coefficient, Length rain);

// NRCS curve-number runoff, Q = (P - Ia)^2 / (P - Ia + S) with S = 1000/CN - 10 inches and Ia = initialShare
// x S; 0 while the rain is below Ia. TR-55 eq. 2-1 to 2-4; NEH 630, chapter 10. Curve numbers 10 to 100; the
// published tables run from 30 to 98. For depths of less than half an inch (13 mm) of runoff it is a rough
// guide (TR-55, ch. 2).
Length runoffDepth(Length rain, double curveNumber, double initialShare = 0.2);

// Curve number of pervious ground (`pervious`) with hard surfaces on `imperviousShare` of it (curve number
// 98), of which `unconnectedShare` drains onto the pervious ground first. NEH 630, chapter 9, eq. 9-1 and
// 9-2:
//     CN = CNp + I (98 - CNp) (1 - 0.5 R)
// R counts only while the hard surfaces are under 30 % of the area: above, the rest cannot absorb much more.
double compositeCurveNumber(double pervious, double imperviousShare, double unconnectedShare = 0);

// Roof area that counts for its drains: plan area x pitch factor, and a share of the walls that shed on it.
// Half of the wall is the model plumbing codes' rule; a pitch factor (1 to 1.3) allows for rain driven
// against a steep roof (published gutter guides) and replaces, not joins, the use of the sloped area.
Area roofArea(Area plan, Area wall = {}, double wallShare = 0.5, double pitchFactor = 1);

// Refuses what is not a runoff coefficient (above 0, at most 1).
void requireCoefficient(double coefficient, const char* argument = "coefficient");

}  // namespace trenchbook
