#include "results/pen_chart.h"

#include <stdexcept>

namespace trenchbook::sheets {
namespace {

std::string heading(const char* axis, std::size_t pair) { return axis + std::to_string(pair + 1); }

}  // namespace

Chart penChart(const std::string& block, const addin::Pens& pens, const std::vector<PenLook>& looks,
               int width, int height) {
    if (looks.size() != pens.pens.size()) throw std::logic_error(block + ": each pen has a look");
    Chart chart;
    chart.width = width;
    chart.height = height;
    chart.toScale = true;
    for (std::size_t i = 0; i < looks.size(); ++i)
        for (const addin::PenStrip& strip : pens.pens[i].strips)
            chart.series.push_back({.block = block,
                                    .name = pens.pens[i].name,
                                    .firstRow = static_cast<int>(strip.first),
                                    .rows = static_cast<int>(strip.rows),
                                    .x = heading("x", strip.pair),
                                    .y = heading("y", strip.pair),
                                    .colour = looks[i].colour,
                                    .dash = looks[i].dash,
                                    .width = looks[i].width});
    return chart;
}

Block penBlock(const std::string& name, const std::string& formula, const addin::Pens& pens,
               const char* says) {
    Block block{.name = name, .formula = formula, .rows = static_cast<int>(pens.rows) + 1, .says = says};
    for (std::size_t pair = 0; pair < pens.pairs; ++pair)
        for (const char* axis : {"x", "y"}) block.columns.push_back({.heading = heading(axis, pair)});
    return block;
}

std::string penLeftOut(const std::string& block) {
    return "=IF(N(INDEX(<" + block + ".x1:*>;ROWS(" + block +
           ")))>0;\"NOT COMPLETE: there is more to draw than there is room for.\";\"\")";
}

}  // namespace trenchbook::sheets
