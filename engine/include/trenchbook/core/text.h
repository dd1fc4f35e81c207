// A sentence in the two languages the crew reads; the engine hands out both, and the caller picks one.
//
//     Text("fall in hand", "desnivel de reserva").in(Language::Spanish);    // "desnivel de reserva"
#pragma once

#include <string>
#include <string_view>
#include <utility>

namespace trenchbook {

enum class Language { English, Spanish };

struct Text {
    std::string en;
    std::string es;

    Text() = default;
    Text(std::string english, std::string spanish) : en(std::move(english)), es(std::move(spanish)) {}
    // The same in both languages: names, numbers, units.
    static Text same(std::string_view both) { return {std::string(both), std::string(both)}; }

    const std::string& in(Language language) const { return language == Language::Spanish ? es : en; }
    bool empty() const { return en.empty(); }

    Text& operator+=(const Text& more) {
        en += more.en;
        es += more.es;
        return *this;
    }
    friend Text operator+(Text first, const Text& second) { return first += second; }
};

// A number as people write it: at most `decimals` digits after the point, no trailing zeros ("0.5", "12", "-3.25").
std::string plain(double value, int decimals = 4);

// A count and what is counted: counted(1, {"run", "tramo"}, {"runs", "tramos"}) is "1 run".
inline Text counted(std::size_t count, const Text& one, const Text& many) {
    return Text::same(std::to_string(count) + " ") + (count == 1 ? one : many);
}

// Without the blanks around it.
std::string trimmed(std::string_view text);
// A name as it is matched everywhere: trimmed, lower case (also Á, Ñ…).
std::string nameKey(std::string_view name);

}  // namespace trenchbook
