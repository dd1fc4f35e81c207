#include "catalog/arguments.h"
#include "catalog/families.h"

namespace trenchbook::addin {

std::vector<Function> tapeFunctions() { return {}; }

}  // namespace trenchbook::addin
