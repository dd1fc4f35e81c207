#include "catalog/arguments.h"
#include "catalog/families.h"

namespace trenchbook::addin {

std::vector<Function> swaleFunctions() { return {}; }

}  // namespace trenchbook::addin
