#include "catalog/arguments.h"
#include "catalog/families.h"

namespace trenchbook::addin {

std::vector<Function> rainFunctions() { return {}; }

}  // namespace trenchbook::addin
