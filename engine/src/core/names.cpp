#include "core/names.h"

namespace trenchbook::names {
namespace {

constexpr std::size_t mostSuggestions = 8;
constexpr std::string_view degrees = "°";

bool isWordCharacter(char c) {
    return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || static_cast<unsigned char>(c) >= 0x80;
}

// A beginning of three letters or more stands for the word: "drive" for "driveway".
bool begins(std::string_view whole, std::string_view part) {
    return part == whole || (part.size() >= 3 && whole.starts_with(part));
}

bool among(const std::string& word, const std::vector<std::string>& all) {
    return std::any_of(all.begin(), all.end(), [&](const std::string& other) { return begins(other, word); });
}

}  // namespace

std::vector<std::string> words(std::string_view text, std::string_view within) {
    std::vector<std::string> out;
    bool inside = false;
    std::string lower = nameKey(text);
    for (std::size_t at = lower.find(degrees); at != lower.npos; at = lower.find(degrees, at))
        lower.replace(at, degrees.size(), " ");
    for (std::size_t i = 0; i < lower.size(); ++i) {
        const char c = lower[i];
        const bool between =
            inside && i + 1 < lower.size() && isWordCharacter(lower[i + 1]) && within.find(c) != within.npos;
        if (!isWordCharacter(c) && !between) {
            inside = false;
            if (c == '<') out.emplace_back("under");
            if (c == '>') out.emplace_back("over");
            continue;
        }
        if (!inside) out.emplace_back();
        out.back() += c;
        inside = true;
    }
    for (std::string& word : out)
        if (word.size() > 3 && word.back() == 's' && word[word.size() - 2] != 's') word.pop_back();
    return out;
}

Vocabulary::Vocabulary(std::span<const Synonym> synonyms, std::string_view within) : within_(within) {
    for (const Synonym& synonym : synonyms)
        for (const std::string& word : names::words(synonym.said, within))
            plain_.emplace(word, synonym.plain);
}

std::vector<std::string> Vocabulary::words(std::string_view text) const {
    std::vector<std::string> all = names::words(text, within_);
    for (std::string& word : all)
        if (const auto plain = plain_.find(word); plain != plain_.end()) word = plain->second;
    std::sort(all.begin(), all.end());
    all.erase(std::unique(all.begin(), all.end()), all.end());
    if (!all.empty() && all.front().empty()) all.erase(all.begin());
    return all;
}

RunTogether::RunTogether(std::string_view text) {
    for (const char c : text) {
        if (c == ' ' || c == '\t' || c == '-' || c == '.' || c == '_' || c == '#') continue;
        const bool letter = (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
        if (size_ == buffer_.size() || !(letter || (c >= '0' && c <= '9'))) {
            size_ = 0;
            return;
        }
        buffer_[size_++] = c >= 'a' && c <= 'z' ? static_cast<char>(c - 32) : c;
    }
}

Phrases phrases(std::string_view name, std::string_view also) {
    Phrases all = {words(name)};
    while (!also.empty()) {
        const std::size_t bar = also.find('|');
        all.push_back(words(also.substr(0, bar)));
        also.remove_prefix(bar == also.npos ? also.size() : bar + 1);
    }
    return all;
}

std::string key(std::vector<std::string> words) {
    std::sort(words.begin(), words.end());
    std::string joined;
    for (const std::string& word : words) joined += word + ' ';
    return joined;
}

bool fits(const std::vector<std::string>& typed, const Phrases& row) {
    if (typed.empty()) return false;
    return std::any_of(row.begin(), row.end(), [&](const std::vector<std::string>& phrase) {
        return std::all_of(typed.begin(), typed.end(),
                           [&](const std::string& word) { return among(word, phrase); });
    });
}

std::size_t shared(const std::vector<std::string>& typed, const Phrases& row) {
    std::size_t most = 0;
    for (const std::vector<std::string>& phrase : row) {
        const auto count = std::count_if(typed.begin(), typed.end(),
                                         [&](const std::string& word) { return among(word, phrase); });
        most = std::max(most, static_cast<std::size_t>(count));
    }
    return most;
}

void refuse(const char* argument, std::string_view typed, const std::vector<std::string>& near) {
    std::string list;
    for (std::size_t i = 0; i < near.size() && i < mostSuggestions; ++i) {
        if (i > 0) list += "; ";
        list += near[i];
    }
    if (near.size() > mostSuggestions) list += "; ...";
    throw Error(Error::Kind::BadArgument, argument, "\"" + std::string(typed) + "\"",
                {"one name of the list, such as " + list, "un nombre de la lista, como " + list});
}

}  // namespace trenchbook::names
