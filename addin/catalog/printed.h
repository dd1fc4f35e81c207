// Numbers as papers print them.
#pragma once

#include <cstdio>
#include <string>

namespace trenchbook::addin {

// "31.20": money, and lengths on paper.
inline std::string twoDecimals(double number) {
    char buffer[40];
    std::snprintf(buffer, sizeof buffer, "%.2f", number);
    return buffer;
}

}  // namespace trenchbook::addin
