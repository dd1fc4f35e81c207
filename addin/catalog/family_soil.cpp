#include "catalog/arguments.h"
#include "catalog/families.h"

namespace trenchbook::addin {

std::vector<Function> soilFunctions() { return {}; }

}  // namespace trenchbook::addin
