// The engine's version, "major.minor.patch". Results change only with a new major version or a changelog entry.
//
//     version();    // "0.1.0"
#pragma once

namespace trenchbook {

const char* version();

}
