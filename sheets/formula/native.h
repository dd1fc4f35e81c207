// The spreadsheet's own functions that the workbooks may call: those that Calc 7.4 has, with least and most arguments
// as Calc's own function list gives them (a test asks it).
#pragma once

#include <string_view>

namespace trenchbook::sheets {

struct NativeFunction {
    std::string_view name;
    int least, most;  // arguments
};
const NativeFunction* nativeFunction(std::string_view name);  // null when there is none

}  // namespace trenchbook::sheets
