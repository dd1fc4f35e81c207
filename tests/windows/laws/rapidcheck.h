// Laws where RapidCheck is not built for the system: as much of it as our tests write, with a hundred tries from a fixed
// seed and no shrinking. On Linux the same laws run with RapidCheck itself.
#pragma once

#include <cstdint>
#include <exception>
#include <iostream>
#include <limits>
#include <random>
#include <sstream>
#include <string>
#include <vector>

namespace rc {

namespace detail {

struct Failed : std::exception {};
struct Discarded : std::exception {};

inline std::mt19937_64& source() {
    static std::mt19937_64 made(20260101);
    return made;
}
inline std::ostringstream& log() {
    static std::ostringstream made;
    return made;
}

[[noreturn]] inline void fail(const char* file, int line, const char* law) {
    log() << file << ":" << line << ": " << law << "\n";
    throw Failed();
}

}  // namespace detail

template <class Make>
struct Gen {
    Make make;
    auto operator*() const { return make(); }
};
template <class Make>
Gen(Make) -> Gen<Make>;

namespace gen {

// From `least` up to and without `end`.
template <class Number>
auto inRange(Number least, Number end) {
    return Gen{[least, end] {
        const auto width = static_cast<std::uint64_t>(end) - static_cast<std::uint64_t>(least);
        return static_cast<Number>(static_cast<std::uint64_t>(least) + detail::source()() % width);
    }};
}
template <class Items>
auto elementOf(Items items) {
    return Gen{[items] {
        return *(items.begin() + static_cast<std::ptrdiff_t>(*inRange<std::size_t>(0, items.size())));
    }};
}
template <class First, class... More>
auto element(First first, More... more) {
    return elementOf(std::vector<First>{first, static_cast<First>(more)...});
}
// Any truth or unsigned number.
template <class Kind>
auto arbitrary() {
    static_assert(std::is_unsigned_v<Kind>, "of other kinds our laws ask nothing");
    return Gen{[] {
        return static_cast<Kind>(std::is_same_v<Kind, bool> ? detail::source()() & 1 : detail::source()());
    }};
}
template <class Items, class Make>
auto container(Gen<Make> item) {
    return Gen{[item] {
        Items items;
        for (int left = *inRange(0, 40); left > 0; --left) items.push_back(*item);
        return items;
    }};
}
template <class Make>
auto nonEmpty(Gen<Make> items) {
    return Gen{[items] {
        auto made = *items;
        while (made.empty()) made = *items;
        return made;
    }};
}

}  // namespace gen

template <class Items>
std::string toString(const Items& items) {
    std::ostringstream text;
    for (const auto& item : items) text << item << " ";
    return text.str();
}

// False, and what was logged, when the law does not hold; also when too few tries were of use.
template <class Law>
bool check(const std::string& name, const Law& law) {
    constexpr int wanted = 100, most = 2000;
    int held = 0;
    for (int tried = 0; tried < most && held < wanted; ++tried) {
        detail::log().str("");
        try {
            law();
            ++held;
        } catch (const detail::Discarded&) {
        } catch (const detail::Failed&) {
            std::cout << name << " fails:\n" << detail::log().str();
            return false;
        } catch (const std::exception& error) {
            std::cout << name << " throws: " << error.what() << "\n" << detail::log().str();
            return false;
        }
    }
    if (held < wanted) std::cout << name << ": only " << held << " of " << most << " tries were of use\n";
    return held == wanted;
}
template <class Law>
bool check(const Law& law) {
    return check("the law", law);
}

}  // namespace rc

#define RC_ASSERT(law) \
    if (!(law)) rc::detail::fail(__FILE__, __LINE__, #law)
#define RC_PRE(met) \
    if (!(met)) throw rc::detail::Discarded()
#define RC_LOG() rc::detail::log() << "\n"
#define RC_ASSERT_THROWS_AS(act, Kind)                           \
    do {                                                         \
        bool thrown = false;                                     \
        try {                                                    \
            (void)(act);                                         \
        } catch (const Kind&) {                                  \
            thrown = true;                                       \
        }                                                        \
        if (!thrown) rc::detail::fail(__FILE__, __LINE__, #act); \
    } while (false)
