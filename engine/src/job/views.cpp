#include "trenchbook/job/views.h"

#include <array>

#include "job/view_parts.h"

namespace trenchbook {

// Both by place in Viewed.
const NumberView& numberView(Viewed viewed) {
    static const std::array<NumberView, viewedCount> all = {
        views::runNumbers(),      views::nodeNumbers(),   views::inletNumbers(), views::shotNumbers(),
        views::crossingNumbers(), views::outletNumbers(), views::pumpNumbers(),  views::pitNumbers(),
        views::findingNumbers(),  views::countNumbers()};
    return all[static_cast<std::size_t>(viewed)];
}

const WordView& wordView(Viewed viewed) {
    static const std::array<WordView, viewedCount> all = {views::runWords(),      views::nodeWords(),
                                                          views::inletWords(),    views::shotWords(),
                                                          views::crossingWords(), views::outletWords(),
                                                          views::pumpWords(),     views::pitWords(),
                                                          views::findingWords(),  WordView{}};
    return all[static_cast<std::size_t>(viewed)];
}

}  // namespace trenchbook
