#include "jobbook/bring_prices.h"

#include <algorithm>
#include <cstdio>
#include <set>

#include "jobbook/fill.h"
#include "jobbook/refused.h"
#include "jobbook/value_text.h"

namespace trenchbook::sheets {
namespace {

// What a row says of its item, price and date apart.
constexpr const char* words[] = {"Item", "Group", "Unit", "Pack", "Waste", "Supplier", "Taxable"};

bool usable(const Row& row) { return row.text("Check").rfind("NO", 0) != 0; }

std::string priceAndDate(const Row& row) {
    const auto price = row.number("Price"), date = row.number("Priced on");
    return (price ? moneyText(*price) : "no price") + " of " + (date ? dateText(*date) : "no date");
}

std::string difference(const Row& old, const Row& now) {
    const auto before = old.number("Price"), after = now.number("Price");
    if (!before || !after || *before == *after) return "";
    char text[64];
    std::snprintf(text, sizeof text, "%+.2f", *after - *before);
    std::string said = std::string("; ") + text;
    if (*before > 0) {
        std::snprintf(text, sizeof text, " (%+.1f %%)", 100 * (*after / *before - 1));
        said += text;
    }
    // Prices of different packs say nothing about each other.
    return said + (old.value("Pack") == now.value("Pack") && old.value("Unit") == now.value("Unit")
                       ? ""
                       : ", for another pack");
}

std::string otherWords(const Row& old, const Row& now) {
    std::string said;
    for (const char* heading : words)
        if (old.value(heading) != now.value(heading))
            said += "; " + std::string(heading) + " \"" + old.text(heading) + "\" -> \"" + now.text(heading) +
                    "\"";
    return said;
}

// A heading with its lines; nothing when there are none.
std::string section(const std::string& heading, const std::vector<std::string>& lines) {
    if (lines.empty()) return "";
    std::string text = heading + " (" + std::to_string(lines.size()) + ")\n";
    for (const std::string& line : lines) text += "  " + line + "\n";
    return text;
}

class Comparison {
  public:
    Comparison(const Document& job, const Document& book, bool take)
        : parts_(partsOf(job)), prices_(partFor(parts_, "Prices", false)), take_(take) {
        const std::vector<FoundPart> bookParts = partsOf(book);
        if (findPart(bookParts, "Price book", true) == nullptr)
            throw Refused("The second file is not a price book");
        const std::vector<Row> bookRows = rowsOf(partFor(bookParts, "Prices", false));
        const std::vector<Row> jobRows = rowsOf(prices_);
        std::set<std::string> here;
        for (const Row& old : jobRows) {
            const std::string code = old.text("Code");
            next_ = std::max(next_, old.ready + 1);
            here.insert(code);
            const auto now = std::find_if(bookRows.begin(), bookRows.end(),
                                          [&](const Row& row) { return row.text("Code") == code; });
            if (code.empty() || now == bookRows.end()) {
                onlyHere_.push_back(code.empty() ? "a row without a code: " + old.text("Item") : code);
            } else {
                compare(code, old, *now);
            }
        }
        const std::set<std::string> asked = askedFor();
        for (const Row& now : bookRows) {
            const std::string code = now.text("Code");
            if (code.empty() || here.count(code) != 0) continue;
            if (asked.count(code) == 0) {
                onlyBook_.push_back(code);
            } else if (!usable(now)) {
                unusable_.push_back(code + ": " + now.text("Check"));
            } else {
                added_.push_back(code + ": " + priceAndDate(now));
                write(next_++, now);
            }
        }
    }

    std::string text() const {
        std::string said = section("Changed", changed_) + section("Same price, new date", dated_) +
                           section("Asked for here, only in the book", added_) +
                           section("Older in the book, left as it is", older_) +
                           section("Cannot be used: the book says", unusable_) +
                           section("Not in the book, left as it is", onlyHere_) +
                           section("Only in the book, not asked for here", onlyBook_);
        const std::size_t news = changed_.size() + dated_.size() + added_.size();
        if (news == 0) return said + "Nothing new in the book.\n";
        return said + (take_ ? "Taken: " : "Nothing was changed; --take brings in ") + std::to_string(news) +
               (news == 1 ? " row" : " rows") + ".\n";
    }

  private:
    // Codes of the takeoff, with a price or without.
    std::set<std::string> askedFor() const {
        std::set<std::string> codes;
        for (const char* table : {"Takeoff", "Additions"})
            if (const FoundPart* part = findPart(parts_, table, false))
                for (const Row& row : rowsOf(*part)) codes.insert(row.text("Code"));
        return codes;
    }

    void compare(const std::string& code, const Row& old, const Row& now) {
        if (!usable(now)) {
            unusable_.push_back(code + ": " + now.text("Check"));
            return;
        }
        const bool samePrice = old.value("Price") == now.value("Price");
        const std::string others = otherWords(old, now);
        const bool sameDate = old.value("Priced on") == now.value("Priced on");
        if (samePrice && sameDate && others.empty()) return;
        const std::string both = code + ": " + priceAndDate(old) + " -> " + priceAndDate(now);
        if (const auto before = old.number("Priced on"); before && now.number("Priced on") < before) {
            older_.push_back(both);
            return;
        }
        if (samePrice && others.empty()) {
            dated_.push_back(both);
        } else {
            changed_.push_back(both + difference(old, now) + others);
        }
        write(old.ready, now);
        if (!take_ || samePrice) return;
        put(prices_, "Last", old.ready, {old.number("Price") ? old.value("Price") : Value()});
        put(prices_, "Last on", old.ready, {old.number("Price") ? old.value("Priced on") : Value()});
    }

    void write(sal_Int32 ready, const Row& now) const {
        if (!take_) return;
        for (const char* heading : {"Code", "Price", "Priced on"})
            put(prices_, heading, ready, {now.value(heading)});
        for (const char* heading : words) put(prices_, heading, ready, {now.value(heading)});
    }

    std::vector<FoundPart> parts_;
    const FoundPart& prices_;
    bool take_;
    sal_Int32 next_ = 0;  // first row without a price
    std::vector<std::string> changed_, dated_, added_, older_, unusable_, onlyHere_, onlyBook_;
};

}  // namespace

std::string bringPrices(const Document& job, const Document& book, bool take) {
    return Comparison(job, book, take).text();
}

}  // namespace trenchbook::sheets
