// The workings of a bill, as hidden columns: of Order, what was delivered and what should be billed for each line; of
// Bills, the state and the causes of each invoice line.
//
// What should have been billed is delivered x ordered price, the tax on it and the agreed charges. The difference is
// split line by line into causes that add up to it to the cent: each line's product and its product at the ordered
// price are rounded to cents first, and every cause is a difference of two such amounts. With AQ billed at AP, SQ
// delivered and SP ordered, price is AQ (AP - SP) and quantity (AQ - SQ) SP, the variances of cost accounting texts.
// Native formulas only.
#pragma once

#include "buying/money.h"

namespace trenchbook::sheets {

std::vector<Column> orderWorkings();
std::vector<Column> billWorkings();
std::vector<Column> ticketWorkings();

}  // namespace trenchbook::sheets
