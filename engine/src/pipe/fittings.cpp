#include "trenchbook/pipe/fittings.h"

#include <array>
#include <string>
#include <vector>

#include "core/names.h"
#include "trenchbook/core/error.h"
#include "trenchbook/pipe/circular.h"

namespace trenchbook {
namespace {

constexpr std::string_view specialLosses = "Civil engineering reference, table 26-3, special losses of head";
constexpr std::string_view angleRule =
    "Civil engineering reference, table 26-3: of the 90 bend of medium radius, "
    "0.75 for 45 and 0.5 for 22.5 degrees";
constexpr std::string_view minorLosses =
    "Environmental engineering reference, table 9.2, minor loss coefficients";
constexpr std::string_view culvertEntrances = "Mays, Water Resources Engineering, table 15.2.10 (AISI 1995)";
constexpr std::string_view mays = "Mays, Water Resources Engineering, chapter 15";
constexpr std::string_view elger =
    "Elger, Williams, Crowe and Roberson, Engineering Fluid Mechanics, chapter 7 and example 15.8";
constexpr std::string_view asTee =
    "as the run of a tee, civil engineering reference, table 26-3 (common practice)";

constexpr Fitting one(std::string_view name, double k, std::string_view source) {
    return {name, k, k, k, source};
}
constexpr Fitting between(std::string_view name, double least, double greatest, std::string_view source) {
    return {name, (least + greatest) / 2, least, greatest, source};
}

// The name as it stands here is made of the plain words below. Of two rows that a short name would fit, the
// short name is the one used for solvent-weld and gasketed drain fittings: the screwed pattern of medium
// radius.
constexpr std::array table = {
    one("90 bend", 0.75, specialLosses),
    one("90 bend short radius", 0.90, specialLosses),
    one("90 bend medium radius", 0.75, specialLosses),
    one("90 bend long radius", 0.60, specialLosses),
    between("90 bend flanged", 0.21, 0.30, specialLosses),
    between("90 bend flanged long radius", 0.14, 0.23, specialLosses),
    one("45 bend", 0.5625, angleRule),
    between("45 bend screwed", 0.30, 0.42, specialLosses),
    between("45 bend flanged", 0.20, 0.30, specialLosses),
    between("45 bend flanged long radius", 0.18, 0.20, specialLosses),
    between("45 bend standard", 0.20, 0.30, specialLosses),
    one("22.5 bend", 0.375, angleRule),
    one("11.25 bend", 0.1875, "half of the 22.5 bend (common practice, no source)"),
    between("90 bend r/d 1", 0.3, 0.6, minorLosses),
    one("45 bend r/d 1", 0.10, minorLosses),
    one("30 bend r/d 1", 0.06, minorLosses),
    between("90 bend r/d 1.5", 0.07, 0.33, minorLosses),
    one("45 bend r/d 1.5", 0.09, minorLosses),
    one("30 bend r/d 1.5", 0.06, minorLosses),
    one("90 miter", 1.10, minorLosses),
    between("60 miter", 0.40, 0.59, minorLosses),
    between("45 miter", 0.35, 0.44, minorLosses),
    between("30 miter", 0.11, 0.19, minorLosses),
    one("tee branch", 1.80, specialLosses),
    one("tee run", 0.60, specialLosses),
    between("tee bifurcating", 1.50, 1.80, specialLosses),
    one("wye branch", 1.35, "Civil engineering reference, table 26-3: 0.75 of the tee"),
    one("wye run", 0.60, asTee),
    one("cleanout", 0.60, asTee),
    one("basin straight through", 0.05, mays),
    one("entrance", 0.50, minorLosses),
    one("entrance flush", 0.50, minorLosses),
    between("entrance slightly rounded", 0.04, 0.5, minorLosses),
    between("entrance bell mouth", 0.03, 0.1, minorLosses),
    between("entrance projecting", 0.5, 0.9, minorLosses),
    one("entrance projecting from fill", 0.9, culvertEntrances),
    one("entrance headwall", 0.5, culvertEntrances),
    one("entrance headwall rounded", 0.2, culvertEntrances),
    one("entrance mitered to slope", 0.7, culvertEntrances),
    one("entrance end section", 0.5, culvertEntrances),
    one("entrance beveled ring", 0.25, culvertEntrances),
    one("exit", 1.0, elger),
    one("sudden expansion", 1.0, mays),
    one("gradual expansion", 0.2, mays),
    one("sudden contraction", 0.5, mays),
    one("gradual contraction", 0.1, mays),
    one("globe valve open", 10, elger),
    one("angle valve open", 5, elger),
    one("gate valve half open", 5.6, elger),
};

// Other words for the words of the table.
using names::Synonym;
constexpr std::array synonyms = {
    Synonym{"elbow", "bend"},
    Synonym{"ell", "bend"},
    Synonym{"codo", "bend"},
    Synonym{"curva", "bend"},
    Synonym{"te", "tee"},
    Synonym{"t", "tee"},
    Synonym{"y", "wye"},
    Synonym{"yee", "wye"},
    Synonym{"lateral", "wye"},
    Synonym{"ramal", "branch"},
    Synonym{"turn", "branch"},
    Synonym{"side", "branch"},
    Synonym{"through", "run"},
    Synonym{"straight", "run"},
    Synonym{"paso", "run"},
    Synonym{"recto", "run"},
    Synonym{"inlet", "entrance"},
    Synonym{"entry", "entrance"},
    Synonym{"entrada", "entrance"},
    Synonym{"outlet", "exit"},
    Synonym{"salida", "exit"},
    Synonym{"manhole", "basin"},
    Synonym{"box", "basin"},
    Synonym{"registro", "cleanout"},
    Synonym{"enlargement", "expansion"},
    Synonym{"reducer", "contraction"},
    Synonym{"mitre", "miter"},
    Synonym{"mitered", "miter"},
    Synonym{"square", "flush"},
    Synonym{"sharp", "flush"},
    Synonym{"corner", ""},
    Synonym{"edge", ""},
    Synonym{"corto", "short"},
    Synonym{"corta", "short"},
    Synonym{"medio", "medium"},
    Synonym{"largo", "long"},
    Synonym{"larga", "long"},
    Synonym{"sweep", "long"},
    Synonym{"radio", ""},
    Synonym{"radius", ""},
    Synonym{"rounded", "round"},
    Synonym{"deg", ""},
    Synonym{"degree", ""},
    Synonym{"grados", ""},
    Synonym{"de", ""},
    Synonym{"of", ""},
    Synonym{"a", ""},
    Synonym{"the", ""},
    Synonym{"with", ""},
    Synonym{"regular", ""},
    Synonym{"fitting", ""},
    Synonym{"pvc", ""},
    Synonym{"brusca", "sudden"},
    Synonym{"45s", "45"},
    Synonym{"90s", "90"},
    Synonym{"1/4", "90"},
    Synonym{"1/8", "45"},
    Synonym{"1/16", "22.5"},
    Synonym{"22-1/2", "22.5"},
    Synonym{"22½", "22.5"},
    Synonym{"wide", ""},
    Synonym{"to", ""},
    Synonym{"slope", ""},
    Synonym{"ampliación", "expansion"},
    Synonym{"válvula", "valve"},
};

// "Long sweep" and "long radius" come out alike.
const names::Vocabulary& vocabulary() {
    static const names::Vocabulary words(synonyms, "./-");
    return words;
}

}  // namespace

std::span<const Fitting> fittings() { return table; }

const Fitting& fitting(std::string_view name) {
    // A loss is never guessed: all the words must be there, and no other.
    static const names::Table<Fitting> known(table, vocabulary());
    const std::string_view typed = name.substr(0, 80);
    std::vector<std::string> words = vocabulary().words(typed);
    if (const Fitting* found = known.exact(words)) return *found;
    words.emplace_back("bend");  // `90 long sweep` leaves the bend unsaid
    if (const Fitting* found = known.exact(words)) return *found;
    known.refuse(words, "fitting", typed);
}

Length fittingLoss(Length bore, Flow flow, double k) {
    requireNotNegative(k, "K");
    requirePositive(bore, "pipe");
    requireNotNegative(flow, "flow");
    const double velocity = (flow / fullArea(bore)).si();
    return Length::fromSi(k * velocity * velocity / (2 * gravity));
}

}  // namespace trenchbook
