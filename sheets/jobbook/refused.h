// What was asked cannot be done as things stand. Told in words, ready to print; nothing was written.
#pragma once

#include <stdexcept>

namespace trenchbook::sheets {

class Refused : public std::runtime_error {
  public:
    using std::runtime_error::runtime_error;
};

}  // namespace trenchbook::sheets
