// The families of functions, one file each. A new family is declared here and listed in catalog.cpp.
#pragma once

#include <vector>

#include "catalog/function.h"

namespace trenchbook::addin {

std::vector<Function> tapeFunctions();
std::vector<Function> rainFunctions();
std::vector<Function> runoffFunctions();
std::vector<Function> inletFunctions();
std::vector<Function> pipeFunctions();
std::vector<Function> runFunctions();
std::vector<Function> jobFunctions();
std::vector<Function> stormFunctions();
std::vector<Function> takeoffFunctions();
std::vector<Function> planFunctions();
std::vector<Function> profileFunctions();
std::vector<Function> lineFunctions();
std::vector<Function> stationFunctions();
std::vector<Function> gradeFunctions();
std::vector<Function> soilFunctions();
std::vector<Function> pitFunctions();
std::vector<Function> perforatedFunctions();
std::vector<Function> swaleFunctions();
std::vector<Function> outletFunctions();
std::vector<Function> pumpFunctions();
std::vector<Function> structureFunctions();
std::vector<Function> buriedFunctions();
std::vector<Function> buyingFunctions();
std::vector<Function> purchaseFunctions();
std::vector<Function> moneyFunctions();
std::vector<Function> calendarFunctions();
std::vector<Function> layoutFunctions();
std::vector<Function> aboutFunctions();

}  // namespace trenchbook::addin
