#include "catalog/arguments.h"
#include "catalog/families.h"

namespace trenchbook::addin {

std::vector<Function> buyingFunctions() { return {}; }

}  // namespace trenchbook::addin
