#include "catalog/arguments.h"
#include "catalog/families.h"

namespace trenchbook::addin {

std::vector<Function> aboutFunctions() { return {}; }

}  // namespace trenchbook::addin
