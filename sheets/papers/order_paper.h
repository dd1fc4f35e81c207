// What a supplier gets of the order.
#pragma once

#include "templates/job.h"

namespace trenchbook::sheets {

Sheet orderPaperSheet(const JobSize& size);

}  // namespace trenchbook::sheets
