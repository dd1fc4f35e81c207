// Water in a round pipe: the wetted segment at any depth, and what momentum and energy make of it.
//
//     Segment half = segmentAt(Length::inches(6), Length::inches(3));
//     half.area.squareInches();                                    // 14.137
//     criticalDepth(Length::inches(4), Flow::gpm(100)).inches();   // 3.19
//
// Geometry with the half angle a between the invert and the water's edge, D the bore:
//     depth = D sin2(a/2)                 surface width = D sin a
//     area = D2/4 (a - sin a cos a)       wetted perimeter = D a
//     area x depth of its centroid = D3/24 (3 sin a - sin3 a - 3 a cos a)
// (Chow, Open-Channel Hydraulics, 1959, table 2-1 and section 3-6, from memory; plain geometry.) Differences
// that cancel near the invert are summed as series: every value is right to 1e-12 relative from a trickle
// (depth of 1e-12 bores) to full. Above the crown the pipe is full and under pressure: no surface, the
// pressure counts.
#pragma once

#include "trenchbook/core/units.h"

namespace trenchbook {

struct Segment {
    Length depth;  // over the invert; may exceed the bore
    Area area;
    Length wettedPerimeter;
    Length surfaceWidth;     // 0 when full
    Length hydraulicRadius;  // area / wetted perimeter; 0 when dry
    Volume pressureMoment;   // area x depth of its centroid under the water level
};

// Errors: bore not above 0, depth below 0 (BadArgument "bore", "depth").
Segment segmentAt(Length bore, Length depth);
Area fullArea(Length bore);

// Momentum function (specific force) Q2/(g A) + A z, in m3: what a jump keeps. Errors: dry segment with flow.
Volume momentum(const Segment& segment, Flow flow);
// Depth + velocity head; energy over the invert. Errors: dry segment with flow.
Length specificEnergy(const Segment& segment, Flow flow);
// Q sqrt(T / (g A3)): below 1 calm, above 1 shooting; 0 when full, which has no surface.
double froudeNumber(const Segment& segment, Flow flow);

// Depth at which the flow passes with the least energy: Q2 T = g A3. Always below the crown; 0 without flow.
// Newton's method in ln(fill / (1 - fill)), in which the curve is nearly straight at both ends: 1e-12
// relative. Errors: bore not above 0, flow below 0.
Length criticalDepth(Length bore, Flow flow);

// The depth behind a jump: the calm depth with the momentum function of this shooting one; above the bore
// where the pipe runs full behind it. Depths at or above the critical come back as they are. Errors: as
// segmentAt; depth 0.
Length sequentDepth(Length bore, Length depth, Flow flow);

}  // namespace trenchbook
