#include "catalog/arguments.h"
#include "catalog/families.h"

namespace trenchbook::addin {

std::vector<Function> inletFunctions() { return {}; }

}  // namespace trenchbook::addin
