#include "trenchbook/job/job.h"

namespace trenchbook {

Text protectionWord(Protection protection) {
    static const Text words[] = {{},
                                 {"sloping", "taludes"},
                                 {"shoring", "entibado"},
                                 {"trench box", "cajón de zanja"},
                                 {"stable rock", "roca estable"}};
    return words[static_cast<std::size_t>(protection)];
}

}  // namespace trenchbook
