#include "catalog/arguments.h"
#include "catalog/families.h"

namespace trenchbook::addin {

std::vector<Function> pitFunctions() { return {}; }

}  // namespace trenchbook::addin
