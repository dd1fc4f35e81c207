#include "catalog/arguments.h"
#include "catalog/families.h"

namespace trenchbook::addin {

std::vector<Function> runFunctions() { return {}; }

}  // namespace trenchbook::addin
