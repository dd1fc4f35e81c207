#include "catalog/host.h"

#include <mutex>

namespace trenchbook::addin {
namespace {

struct Told {
    std::mutex guard;
    std::string name = "no office";
};

Told& told() {
    static Told once;
    return once;
}

}  // namespace

void setHost(std::string name) {
    const std::lock_guard lock(told().guard);
    told().name = std::move(name);
}

std::string host() {
    const std::lock_guard lock(told().guard);
    return told().name;
}

}  // namespace trenchbook::addin
