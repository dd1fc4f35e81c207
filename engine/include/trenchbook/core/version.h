// The engine's version, "major.minor.patch". Results change only with a new major version or a changelog entry.
#pragma once

namespace trenchbook {

const char* version();

}
