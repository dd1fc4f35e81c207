#include "catalog/arguments.h"
#include "catalog/families.h"

namespace trenchbook::addin {

std::vector<Function> runoffFunctions() { return {}; }

}  // namespace trenchbook::addin
