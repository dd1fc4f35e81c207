#include "catalog/arguments.h"
#include "catalog/families.h"

namespace trenchbook::addin {

std::vector<Function> pipeFunctions() { return {}; }

}  // namespace trenchbook::addin
