#include "trenchbook/core/version.h"

#include "version.h"

namespace trenchbook {

const char* version() { return TRENCHBOOK_VERSION; }

}  // namespace trenchbook
