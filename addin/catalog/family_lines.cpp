#include "catalog/arguments.h"
#include "catalog/families.h"

namespace trenchbook::addin {

std::vector<Function> lineFunctions() { return {}; }

}  // namespace trenchbook::addin
