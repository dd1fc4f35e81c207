#include "commands/buy.h"

#include <algorithm>
#include <cmath>
#include <map>

#include "buying/money.h"
#include "jobbook/refused.h"
#include "jobbook/value_text.h"
#include "trenchbook/core/error.h"
#include "trenchbook/money/purchase.h"

namespace trenchbook::sheets {
namespace {

struct Offer {
    double price = 0;
    Value date{}, theirs{};
};

struct Good {
    std::string code;
    double packs = 0;
    std::vector<std::optional<Offer>> offers;  // by supplier
};

// What is to buy, by code; hire and delivery are no goods of a supplier's list.
std::vector<Good> goodsOf(const Book& job) {
    std::vector<Good> goods;
    for (const char* table : {"Takeoff", "Additions"})
        for (const Row& row : job.rows(job.tableFor(table))) {
            const std::string code = row.text("Code"), group = row.text("Group");
            const std::optional<double> packs = row.number("Order");
            if (code.empty() || !packs || group == "delivery" ||
                std::find(notOrdered.begin(), notOrdered.end(), group) != notOrdered.end())
                continue;
            const auto same =
                std::find_if(goods.begin(), goods.end(), [&](const Good& good) { return good.code == code; });
            if (same == goods.end())
                goods.push_back({code, *packs, {}});
            else
                same->packs += *packs;
        }
    return goods;
}

class Market {
  public:
    Market(const Book& job, const Book& book) : job_(job), prices_(job.tableFor("Prices")) {
        if (book.table("Offers") == nullptr || book.table("Suppliers") == nullptr)
            throw Refused(said(job, {"The second file is not a price book: it has no Offers",
                                     "El segundo archivo no es un libro de precios: no tiene Offers"}));
        if (const std::string check = job.text("takeoff_check"); check.rfind("NO", 0) == 0)
            throw Refused(said(job, {"Takeoff is not complete: ", "Takeoff no está completo: "}) + check);
        goods_ = goodsOf(job);
        if (goods_.empty())
            throw Refused(said(job, {"There is nothing to buy: Takeoff and Additions are empty",
                                     "No hay nada que comprar: Takeoff y Additions están vacíos"}));
        for (const Row& row : job.rows(prices_)) priced_.emplace(row.text("Code"), row);
        for (const Row& row : book.rows(book.tableFor("Suppliers")))
            if (const std::string name = row.text("Supplier"); !name.empty()) {
                suppliers_.push_back(name);
                deliveries_.push_back(row.number("Delivery").value_or(0));
                freeFrom_.push_back(row.number("Free from"));
                // What cannot be read would count as nothing: no delivery, or none free.
                if (const std::string check = row.text("Check"); check.rfind("NO", 0) == 0)
                    faults_ += (faults_.empty() ? "" : "\n") + ("Suppliers, " + name + ": ") + check;
            }
        for (Good& good : goods_) good.offers.resize(suppliers_.size());
        for (const Row& row : book.rows(book.tableFor("Offers"))) take(row);
        if (!faults_.empty()) throw Refused(faults_);
    }

    Buying buying(std::size_t most) const {
        Buying made;
        std::vector<const Good*> bought;
        std::vector<Purchase> list;
        for (const Good& good : goods_) {
            const bool offered = std::any_of(good.offers.begin(), good.offers.end(),
                                             [](const auto& offer) { return offer.has_value(); });
            if (!offered) {
                made.list +=
                    said(job_, {"  no offer, stays as on Prices: ", "  sin oferta, queda como en Prices: "}) +
                    good.code + "\n";
                continue;
            }
            bought.push_back(&good);
            Purchase line{.quantity = good.packs, .prices = {}};
            for (const auto& offer : good.offers)
                line.prices.push_back(offer ? std::optional(offer->price) : std::nullopt);
            list.push_back(std::move(line));
        }
        if (bought.empty())
            throw Refused(said(job_, {"Offers has nothing of what this job needs",
                                      "Offers no tiene nada de lo que pide esta obra"}));
        std::string table;
        for (std::size_t s = 0; s < suppliers_.size(); ++s) table += alone(list, s);
        Split split;
        try {
            split = cheapestSplit(list, deliveries_, most, freeFrom_);
        } catch (const Error& error) {
            throw Refused(error.sentence(languageOf(job_)));
        }
        made.cost = split.cost;
        std::string names;
        for (std::size_t s = 0; s < suppliers_.size(); ++s)
            if (split.used[s])
                names += (names.empty() ? "" : ", ") + suppliers_[s] +
                         (deliveries_[s] > 0 && split.delivery[s] == 0
                              ? said(job_, {" (delivers free)", " (entrega gratis)"})
                              : "");
        made.list = table + said(job_, {"  cheapest: $", "  lo más barato: $"}) + moneyText(split.cost) +
                    said(job_, {" from ", " de "}) + names + "\n" + made.list;
        for (std::size_t n = 0; n < bought.size(); ++n) write(*bought[n], split.supplier[n], made);
        const bool one = made.rows == 1;
        const std::string rows = std::to_string(made.rows);
        made.asks = said(job_, {"Bring in " + rows + (one ? " price" : " prices") + " of the cheapest way?",
                                "¿Traer " + rows + (one ? " precio" : " precios") + " de lo más barato?"});
        made.taken = said(job_, {"Taken: " + rows + (one ? " price." : " prices."),
                                 "Traídos: " + rows + (one ? " precio." : " precios.")});
        made.left = said(job_, {"Nothing was changed; %s brings in " + rows + (one ? " price." : " prices."),
                                "No se cambió nada; %s trae " + rows + (one ? " precio." : " precios.")});
        return made;
    }

  private:
    void take(const Row& row) {
        const std::string code = row.text("Code");
        const auto good =
            std::find_if(goods_.begin(), goods_.end(), [&](const Good& known) { return known.code == code; });
        if (good == goods_.end()) return;
        const auto fault = [&](const std::string& says) {
            faults_ += (faults_.empty() ? "" : "\n") +
                       ("Offers, " + code + " of " + row.text("Supplier") + ": ") + says;
        };
        const auto here = priced_.find(code);
        const auto supplier = std::find(suppliers_.begin(), suppliers_.end(), row.text("Supplier"));
        const std::optional<double> price = row.number("Price");
        if (const std::string check = row.text("Check"); check.rfind("NO", 0) == 0) return fault(check);
        if (supplier == suppliers_.end())
            return fault(
                said(job_, {"the supplier is not on Suppliers", "el proveedor no está en Suppliers"}));
        if (!price || *price <= 0) return fault(said(job_, {"no price above 0", "sin precio mayor que 0"}));
        if (here == priced_.end())
            return fault(said(
                job_, {"the code is not on the job's Prices", "el código no está en Prices de la obra"}));
        if (row.text("Unit") != here->second.text("Unit") || row.value("Pack") != here->second.value("Pack"))
            return fault(said(job_, {"sold by ", "se vende por "}) + row.text("Pack") + " " +
                         row.text("Unit") + said(job_, {", on Prices by ", ", en Prices por "}) +
                         here->second.text("Pack") + " " + here->second.text("Unit"));
        std::optional<Offer>& offer = good->offers[static_cast<std::size_t>(supplier - suppliers_.begin())];
        if (offer)
            return fault(said(job_, {"this supplier has two offers", "este proveedor tiene dos ofertas"}));
        offer = Offer{*price, row.value("Priced on"), row.value("Their number")};
    }

    // What he takes for all, or how much he does not sell.
    std::string alone(const std::vector<Purchase>& list, std::size_t supplier) const {
        double sum = 0;
        std::size_t missing = 0;
        for (const Purchase& line : list)
            if (line.prices[supplier])
                sum += std::round(100 * line.quantity * *line.prices[supplier]) / 100;
            else
                ++missing;
        if (!freeFrom_[supplier] || sum + 1e-6 < *freeFrom_[supplier]) sum += deliveries_[supplier];
        return "  " + suppliers_[supplier] + said(job_, {" alone: $", " solo: $"}) + moneyText(sum) +
               (missing == 0 ? ""
                             : said(job_, {", without " + std::to_string(missing) + " that he does not sell",
                                           ", sin " + std::to_string(missing) + " que no vende"})) +
               "\n";
    }

    void write(const Good& good, std::size_t supplier, Buying& made) const {
        const Offer& offer = *good.offers[supplier];
        const Row& old = priced_.at(good.code);
        made.list += "    " + good.code + ": " + moneyText(offer.price) + ", " + suppliers_[supplier] + "\n";
        if (old.number("Price") == offer.price && old.text("Supplier") == suppliers_[supplier] &&
            old.value("Priced on") == offer.date && old.value("Their number") == offer.theirs)
            return;
        ++made.rows;
        const auto put = [&](const char* heading, const Value& value) {
            made.steps.put(
                {prices_.at.sheet, job_.column(prices_, heading), prices_.firstReady() + old.ready}, value);
        };
        if (old.number("Price") && old.number("Price") != offer.price) {
            put("Last", old.value("Price"));
            put("Last on", old.value("Priced on"));
        }
        put("Price", offer.price);
        put("Supplier", suppliers_[supplier]);
        put("Their number", offer.theirs);
        put("Priced on", offer.date);
    }

    const Book& job_;
    const BookPart& prices_;
    std::vector<Good> goods_;
    std::map<std::string, Row> priced_;
    std::vector<std::string> suppliers_;
    std::vector<double> deliveries_;
    std::vector<std::optional<double>> freeFrom_;
    std::string faults_;
};

}  // namespace

std::string notTaken(const Buying& buying, const std::string& word) {
    std::string says = buying.left;
    return says.replace(says.find("%s"), 2, word);
}

Buying buyFrom(const Book& job, const Book& book, std::size_t most) { return Market(job, book).buying(most); }

}  // namespace trenchbook::sheets
