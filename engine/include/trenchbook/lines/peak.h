// Peak flow of every run by the rational method with travel time through the tree.
//
//     RainTable rain = RainTable::parse("duration,2,10\n5-min,0.4,0.6\n60-min,1.2,1.8", Length::inches(1));
//     const std::vector<Run> runs = {{.from = "A", .to = "Out", .length = Length::feet(60),
//                                     .pipe = stockPipe("4 SDR35"), .slope = Slope::percent(1)}};
//     std::vector<PeakInlet> inlets = {{"A", Area::squareFeet(1000), Duration::minutes(5)}};
//     linePeaks(Network(runs), runs, inlets, rain, 10, Travel::Flow)[0].value->flow.gpm();    // 74.8
//
// At the upper node of a run, area x C is the sum of all that drains to it, and the time is that of the
// longest path: the inlet's own minutes, or the time of a run that flows in plus its travel, whichever is
// most. The rain table gives the intensity for that duration, and flow = intensity x (area x C) (exact units;
// the books' Q = CiA in cfs and acres is smaller by 1.00833). Travel time is length / velocity, at normal
// depth for the flow (Travel::Flow; flow / full area when the run is overloaded) or always at flow / full
// area (Travel::Area), as tables worked by hand do. Sources: FHWA HDS-2, section 5 (rational method); Mays,
// Stormwater Collection Systems Design Handbook, 2001, chapter 15 (time of concentration along the sewers;
// tests/reference/02c).
//
// Validity: that of the rational method, and of the rain table: beyond its longest duration a run has no
// answer. A run that nothing drains to has no flow and adds no time.
#pragma once

#include <optional>
#include <span>
#include <string_view>
#include <vector>

#include "trenchbook/core/units.h"
#include "trenchbook/lines/network.h"
#include "trenchbook/water/rain.h"

namespace trenchbook {

enum class Travel { Flow, Area };
// "flow" or "area". Errors: BadArgument "travel".
Travel travelNamed(std::string_view name);

struct PeakInlet {
    std::string node;
    std::optional<Area> areaTimesC;  // none: cannot be read, spoils its run and what lies downstream
    std::optional<Duration> time;    // of the inlet; likewise
    Text trouble = {};               // why it cannot be read; empty: something is missing
};
struct Peak {
    Area areaTimesC;
    Duration time;  // at the run's upper node
    RainRate intensity;
    Flow flow;
    Velocity velocity;
};

// One answer a row; a row that cannot be computed spoils those downstream of it. `roughness` goes before that of
// the runs. Errors: BadArgument "length" where the number of rows differs, and those of the rain table but for a
// duration beyond it, which is the row's own fault.
std::vector<Worked<Peak>> linePeaks(const Network& lines, std::span<const Run> runs,
                                    std::span<const PeakInlet> inlets, const RainTable& rain,
                                    double returnYears, Travel travel, std::optional<double> roughness = {});

}  // namespace trenchbook
