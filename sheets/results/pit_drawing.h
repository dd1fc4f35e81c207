// The pit cut open, as a sheet and as the block that its chart draws.
#pragma once

#include "templates/job.h"

namespace trenchbook::sheets {

Sheet pitDrawingSheet(const JobSize&);
std::string pitSectionCall();  // its strokes: "pit_strokes" on Workings

}  // namespace trenchbook::sheets
