// JOB.PIT.SECTION, which stands among the functions that show a job from the side.
#pragma once

#include "catalog/function.h"

namespace trenchbook::addin {

Function sectionFunction();

}  // namespace trenchbook::addin
