#include "commands/prices.h"

#include <algorithm>
#include <cstdio>
#include <set>

#include "jobbook/refused.h"
#include "jobbook/value_text.h"

namespace trenchbook::sheets {
namespace {

// What a row says of its item, price and date apart.
constexpr const char* words[] = {"Item",  "Group",    "Unit",         "Pack",
                                 "Waste", "Supplier", "Their number", "Taxable"};

bool usable(const Row& row) { return row.number("Price") && row.text("Check").rfind("NO", 0) != 0; }

Text priceAndDate(const Row& row) {
    const auto price = row.number("Price"), date = row.number("Priced on");
    return (price ? Text::same(moneyText(*price)) : Text("no price", "sin precio")) +
           (date ? Text(" of ", " del ") + Text::same(dateText(*date)) : Text(" of no date", " sin fecha"));
}

Text difference(const Row& old, const Row& now) {
    const auto before = old.number("Price"), after = now.number("Price");
    if (!before || !after || *before == *after) return {};
    char text[64];
    std::snprintf(text, sizeof text, "%+.2f", *after - *before);
    std::string said = std::string("; ") + text;
    if (*before > 0) {
        std::snprintf(text, sizeof text, " (%+.1f %%)", 100 * (*after / *before - 1));
        said += text;
    }
    // Prices of different packs say nothing about each other.
    return Text::same(said) +
           (old.value("Pack") == now.value("Pack") && old.value("Unit") == now.value("Unit")
                ? Text()
                : Text(", for another pack", ", de otro paquete"));
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
Text section(const Text& heading, const std::vector<Text>& lines) {
    if (lines.empty()) return {};
    Text text = heading + Text::same(" (" + std::to_string(lines.size()) + ")\n");
    for (const Text& line : lines) text += Text::same("  ") + line + Text::same("\n");
    return text;
}

class Comparison {
  public:
    Comparison(const Book& job, const Book& book) : job_(job), prices_(job.tableFor("Prices")) {
        if (book.form("Price book") == nullptr)
            throw Refused(said(job, {"The second file is not a price book",
                                     "El segundo archivo no es un libro de precios"}));
        const std::vector<Row> bookRows = book.rows(book.tableFor("Prices"));
        const std::set<std::string> asked = askedFor();
        std::set<std::string> here;
        for (const Row& old : job_.rows(prices_)) {
            const std::string code = old.text("Code");
            next_ = std::max(next_, old.ready + 1);
            here.insert(code);
            const auto now = std::find_if(bookRows.begin(), bookRows.end(),
                                          [&](const Row& row) { return row.text("Code") == code; });
            // Usual goods that nobody has priced and this job does not need.
            if (asked.count(code) == 0 &&
                isBlank(now == bookRows.end() ? old.value("Price") : now->value("Price")))
                continue;
            if (code.empty() || now == bookRows.end()) {
                onlyHere_.push_back(code.empty() ? Text("a row without a code: ", "una fila sin código: ") +
                                                       Text::same(old.text("Item"))
                                                 : Text::same(code));
            } else {
                compare(code, old, *now);
            }
        }
        for (const Row& now : bookRows) {
            const std::string code = now.text("Code");
            if (code.empty() || here.count(code) != 0) continue;
            if (asked.count(code) == 0) {
                if (isBlank(now.value("Price"))) continue;
                onlyBook_.push_back(Text::same(code));
            } else if (!usable(now)) {
                unusable_.push_back(Text::same(code + ": " + now.text("Check")));
            } else {
                added_.push_back(Text::same(code + ": ") + priceAndDate(now));
                write(next_++, now);
            }
        }
    }

    PriceNews news() {
        const std::size_t rows = changed_.size() + dated_.size() + added_.size();
        const Text list =
            section({"Changed", "Cambiado"}, changed_) +
            section({"Same price, new date", "Mismo precio, fecha nueva"}, dated_) +
            section({"Asked for here, only in the book", "Hace falta aquí, solo en el libro"}, added_) +
            section({"Older in the book, left as it is", "Más viejo en el libro, queda como está"}, older_) +
            section({"Cannot be used: the book says", "No se puede usar: el libro dice"}, unusable_) +
            section({"Not in the book, left as it is", "No está en el libro, queda como está"}, onlyHere_) +
            section({"Only in the book, not asked for here", "Solo en el libro, aquí no hace falta"},
                    onlyBook_) +
            (rows == 0 ? Text("Nothing new in the book.\n", "Nada nuevo en el libro.\n") : Text());
        const Text many = counted(rows, {"row", "fila"}, {"rows", "filas"});
        return {std::move(steps_),
                said(job_, list),
                rows,
                said(job_, Text("Bring in ", "¿Traer ") + many + Text::same("?")),
                said(job_, Text("Taken: ", "Traído: ") + many + Text::same(".")),
                said(job_, Text("Nothing was changed; %s brings in ", "No se cambió nada; %s trae ") + many +
                               Text::same("."))};
    }

  private:
    // Codes of the takeoff, with a price or without.
    std::set<std::string> askedFor() const {
        std::set<std::string> codes;
        for (const char* name : {"Takeoff", "Additions"})
            if (const BookPart* table = job_.table(name))
                for (const Row& row : job_.rows(*table)) codes.insert(row.text("Code"));
        return codes;
    }

    void compare(const std::string& code, const Row& old, const Row& now) {
        if (!usable(now)) {
            unusable_.push_back(Text::same(code + ": " + now.text("Check")));
            return;
        }
        const bool samePrice = old.value("Price") == now.value("Price");
        const std::string others = otherWords(old, now);
        const bool sameDate = old.value("Priced on") == now.value("Priced on");
        if (samePrice && sameDate && others.empty()) return;
        const Text both =
            Text::same(code + ": ") + priceAndDate(old) + Text::same(" -> ") + priceAndDate(now);
        if (const auto before = old.number("Priced on"); before && now.number("Priced on") < before) {
            older_.push_back(both);
            return;
        }
        if (samePrice && others.empty()) {
            dated_.push_back(both);
        } else {
            changed_.push_back(both + difference(old, now) + Text::same(others));
        }
        write(old.ready, now);
        if (samePrice) return;
        put("Last", old.ready, old.number("Price") ? old.value("Price") : Value());
        put("Last on", old.ready, old.number("Price") ? old.value("Priced on") : Value());
    }

    void write(int ready, const Row& now) {
        for (const char* heading : {"Code", "Price", "Priced on"}) put(heading, ready, now.value(heading));
        for (const char* heading : words) put(heading, ready, now.value(heading));
    }

    void put(const char* heading, int ready, const Value& value) {
        const int row = prices_.firstReady() + ready;
        if (row > prices_.lastReady())
            throw Refused(
                said(job_,
                     {"Prices has no row left for what the book adds: insert rows above its last one",
                      "Prices ya no tiene filas para lo que el libro añade: inserte filas sobre la última"}));
        steps_.put({prices_.at.sheet, job_.column(prices_, heading), row}, value);
    }

    const Book& job_;
    const BookPart& prices_;
    Steps steps_;
    int next_ = 0;  // first row without a price
    std::vector<Text> changed_, dated_, added_, older_, unusable_, onlyHere_, onlyBook_;
};

}  // namespace

std::string notTaken(const PriceNews& news, const std::string& word) {
    std::string says = news.left;
    return says.replace(says.find("%s"), 2, word);
}

PriceNews priceNews(const Book& job, const Book& book) { return Comparison(job, book).news(); }

}  // namespace trenchbook::sheets
