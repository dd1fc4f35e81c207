#include "trenchbook/lines/run.h"

#include <algorithm>

#include "trenchbook/lines/node.h"

namespace trenchbook {

Text troubleIn(const std::vector<Unusable>& cells, std::initializer_list<std::string_view> headings) {
    for (const Unusable& cell : cells)
        if (std::find(headings.begin(), headings.end(), cell.heading) != headings.end()) return cell.why;
    return {};
}

Text Run::trouble(std::initializer_list<std::string_view> headings) const {
    return troubleIn(unusable, headings);
}

std::optional<Angle> Node::turns() const {
    if (!troubleIn(unusable, {"Turn"}).empty()) return std::nullopt;
    return turn.value_or(Angle());
}

}  // namespace trenchbook
