#include "trenchbook/ground/pit_check.h"

#include <cctype>
#include <cmath>

#include "trenchbook/core/error.h"
#include "trenchbook/core/tape.h"

namespace trenchbook {
namespace {

constexpr double hair = 1e-9;

const PitFactInfo& about(PitFact fact) { return pitFactTable()[static_cast<std::size_t>(fact)]; }

const PitFactInfo& known(std::string_view key) {
    for (const PitFactInfo& info : pitFactTable())
        if (nameKey(key) == nameKey(info.key)) return info;
    std::string keys;
    for (const PitFactInfo& info : pitFactTable()) keys += (keys.empty() ? "" : ", ") + std::string(info.key);
    throw Error(Error::Kind::BadArgument, "key", "\"" + std::string(key) + "\"", Text::same(keys));
}

std::string writtenIn(double si, Unit unit, UnitSystem units) {
    if (unit == Unit::Slope) return plain(100 * si, 2) + " %";
    return plain(si / info(unit).si(units), 2) + " " + info(unit).written(units).en;
}

// A limit that one fact has to keep.
struct Limit {
    PitFact fact;
    const char* rule;
    enum class Side { AtLeast, AtMost } side;
    Text fails;
};

const std::vector<Limit>& limits() {
    using enum Limit::Side;
    static const std::vector<Limit> table = {
        {PitFact::Rate, "pit.rate.min", AtLeast, {"soil takes too little", "el suelo absorbe muy poco"}},
        {PitFact::Rate,
         "pit.rate.max",
         AtMost,
         {"soil takes too much to clean the water", "el suelo absorbe demasiado para limpiar el agua"}},
        {PitFact::Perc, "pit.perc.max", AtMost, {"percolation too slow", "percolación muy lenta"}},
        {PitFact::DrainHours, "pit.drain.max", AtMost, {"too long to empty", "tarda mucho en vaciarse"}},
        {PitFact::Foundation,
         "pit.setback.foundation.min",
         AtLeast,
         {"too near the foundation", "muy cerca del cimiento"}},
        {PitFact::LotLine,
         "pit.setback.line.min",
         AtLeast,
         {"too near the lot line", "muy cerca del lindero"}},
        {PitFact::Well, "pit.setback.well.min", AtLeast, {"too near a well", "muy cerca de un pozo de agua"}},
        {PitFact::Septic,
         "pit.setback.septic.min",
         AtLeast,
         {"too near the septic tank or field", "muy cerca de la fosa o campo séptico"}},
        {PitFact::Pool, "pit.setback.pool.min", AtLeast, {"too near the pool", "muy cerca de la alberca"}},
        {PitFact::GroundSlope, "pit.slope.max", AtMost, {"ground too steep", "terreno muy inclinado"}},
        {PitFact::RoofArea,
         "pit.area.max",
         AtMost,
         {"too much roof for one pit", "demasiado techo para un solo pozo de absorción"}},
        {PitFact::RockDepth, "pit.rock.depth.min", AtLeast, {"too little rock", "muy poca piedra"}},
        {PitFact::RockDepth, "pit.rock.depth.max", AtMost, {"rock too deep", "piedra demasiado profunda"}},
    };
    return table;
}

class Check {
  public:
    Check(const PitFacts& facts, const Ruleset& rules, UnitSystem units)
        : facts_(facts), rules_(rules), units_(units) {}

    PitVerdict all() {
        missing();
        for (const Limit& limit : limits()) keep(limit);
        separation();
        aspect();
        soilGroup();
        cautions();
        return std::move(verdict_);
    }

  private:
    double rule(const char* key) const { return rules_.si(key); }
    void refuse(const char* ruleKey, std::optional<double> measured, const Text& says) {
        verdict_.reasons.push_back({ruleKey, says + Text::same(std::string(" (") + ruleKey + ")"), measured});
    }
    void caution(const char* ruleKey, double measured, const Text& says) {
        verdict_.cautions.push_back(
            {ruleKey, says + Text::same(std::string(" (") + ruleKey + ")"), measured});
    }

    void missing() {
        for (const PitFactInfo& info : pitFactTable())
            if (info.needed && !facts_[info.fact])
                verdict_.reasons.push_back({"", Text{"not known yet: ", "falta saber: "} + info.says});
    }

    void keep(const Limit& limit) {
        const std::optional<double> value = facts_[limit.fact];
        if (!value) return;
        const double bound = rule(limit.rule);
        const bool least = limit.side == Limit::Side::AtLeast;
        const double miss = least ? bound - *value : *value - bound;
        if (miss <= hair * bound) return;
        const Unit unit = about(limit.fact).unit;
        refuse(limit.rule, *value,
               limit.fails + Text::same(": " + writtenIn(*value, unit, units_)) +
                   (least ? Text{", at least ", ", al menos "} : Text{", at most ", ", como máximo "}) +
                   Text::same(writtenIn(bound, unit, units_)));
    }

    void separation() {
        const std::optional<double> water = facts_[PitFact::HighWater], depth = facts_[PitFact::PitDepth];
        if (!water || !depth) return;
        const double bound = rule("pit.separation.min");
        const double between = *water - *depth;
        if (between >= bound - hair * *water) return;
        const std::string feet = writtenIn(std::fabs(between), Unit::Feet, units_);
        if (between < -hair * *water)
            return refuse(
                "pit.separation.min", between,
                {"high water stands " + feet + " above the pit's bottom: the pit would fill from below",
                 "el agua alta está " + feet +
                     " sobre el fondo: el pozo de absorción se llenaría desde abajo"});
        const std::string least = writtenIn(bound, Unit::Feet, units_);
        refuse("pit.separation.min", between,
               {"bottom too near high water: " + feet + ", at least " + least,
                "fondo muy cerca del agua alta: " + feet + ", al menos " + least});
    }

    void aspect() {
        const std::optional<double> depth = facts_[PitFact::PitDepth], widest = facts_[PitFact::Widest];
        if (!depth || !widest || *depth <= *widest * rule("pit.aspect.max") * (1 + hair)) return;
        const std::string deep = writtenIn(*depth, Unit::Feet, units_);
        const std::string wide = writtenIn(*widest, Unit::Feet, units_);
        refuse("pit.aspect.max", *depth / *widest,
               {"deep for its width, " + deep + " against " + wide +
                    ": it may count as a drainage well; ask the state's injection-well office first",
                "hondo para su ancho, " + deep + " contra " + wide +
                    ": puede contar como pozo de drenaje; pregunte antes a "
                    "la oficina estatal de pozos de inyección"});
    }

    void soilGroup() {
        if (facts_[PitFact::SoilGroup] == 4.0 && rule("pit.group.d") == 0)
            refuse("pit.group.d", std::nullopt,
                   {"soil group D: too tight for a pit",
                    "grupo de suelo D: muy cerrado para un pozo de absorción"});
    }

    void cautions() {
        const std::optional<double> depth = facts_[PitFact::PitDepth];
        if (!depth) return;
        const std::string deep = writtenIn(*depth, Unit::Feet, units_);
        const auto reached = [&](const char* key) { return *depth >= rule(key) * (1 - hair); };
        if (reached("cut.exit"))
            caution("cut.exit", *depth,
                    {deep + " deep: a safe way out within 25 ft (7.6 m) of every worker",
                     deep + " de hondo: una salida segura a menos de 25 ft (7.6 m) de cada trabajador"});
        if (reached("cut.protect"))
            caution("cut.protect", *depth,
                    {deep + " deep: slope, shore or shield the sides unless in stable rock",
                     deep + " de hondo: taludes, ademe o caja de protección, salvo en roca estable"});
        if (*depth > rule("cut.engineer") * (1 + hair))
            caution("cut.engineer", *depth,
                    {deep + " deep: an engineer designs the protection",
                     deep + " de hondo: un ingeniero diseña la protección"});
    }

    const PitFacts& facts_;
    const Ruleset& rules_;
    UnitSystem units_;
    PitVerdict verdict_;
};

}  // namespace

std::span<const PitFactInfo> pitFactTable() {
    static const std::array<PitFactInfo, pitFactCount> table = {{
        {PitFact::Rate,
         "rate",
         Unit::InchesPerHour,
         true,
         {"the soil's design rate (soak test)", "la tasa de diseño del suelo (prueba de absorción)"}},
        {PitFact::DrainHours,
         "drain hours",
         Unit::Hours,
         true,
         {"hours to empty", "las horas para vaciarse"}},
        {PitFact::HighWater,
         "high water",
         Unit::Feet,
         true,
         {"depth to seasonal high water", "la profundidad del agua alta de temporada"}},
        {PitFact::PitDepth,
         "pit depth",
         Unit::Feet,
         true,
         {"depth of the pit's bottom below the ground", "la profundidad del fondo bajo el terreno"}},
        {PitFact::Widest,
         "widest",
         Unit::Feet,
         true,
         {"widest dimension of the pit", "la mayor dimensión del pozo de absorción"}},
        {PitFact::Foundation,
         "foundation",
         Unit::Feet,
         true,
         {"distance to the foundation", "la distancia al cimiento"}},
        {PitFact::LotLine,
         "lot line",
         Unit::Feet,
         true,
         {"distance to the lot line", "la distancia al lindero"}},
        {PitFact::Well, "well", Unit::Feet, false, {"distance to a well", "la distancia a un pozo de agua"}},
        {PitFact::Septic,
         "septic",
         Unit::Feet,
         false,
         {"distance to the septic tank or field", "la distancia a la fosa o campo séptico"}},
        {PitFact::Pool, "pool", Unit::Feet, false, {"distance to the pool", "la distancia a la alberca"}},
        {PitFact::GroundSlope,
         "ground slope",
         Unit::Slope,
         true,
         {"slope of the ground", "la pendiente del terreno"}},
        {PitFact::SoilGroup,
         "soil group",
         Unit::Number,
         true,
         {"hydrologic soil group", "el grupo hidrológico del suelo"}},
        {PitFact::Perc,
         "perc",
         Unit::MinutesPerInch,
         false,
         {"percolation test", "la prueba de percolación"}},
        {PitFact::RoofArea,
         "roof area",
         Unit::SquareFeet,
         false,
         {"roof and deck on the pit", "el techo y terraza que drenan aquí"}},
        {PitFact::RockDepth, "rock depth", Unit::Feet, false, {"depth of rock", "la altura de piedra"}},
    }};
    return table;
}

void PitFacts::set(std::string_view key, double value, UnitSystem units) {
    const PitFactInfo& fact = known(key);
    const std::string name = fact.key;
    if (fact.fact == PitFact::SoilGroup) return set(key, std::string_view(plain(value)), units);
    if (!(value >= 0) || std::isinf(value))
        throw Error(Error::Kind::BadArgument, "value",
                    {name + " is " + plain(value) + "; allowed: 0 or more.",
                     name + " es " + plain(value) + "; se admite: 0 o más."});
    if (fact.unit == Unit::Slope && value > 1)
        throw Error(
            Error::Kind::BadArgument, "value",
            {name + " is " + plain(value) + "; allowed: a fraction from 0 to 1, or text such as 10% or 1:10.",
             name + " es " + plain(value) + "; se admite: una fracción de 0 a 1, o texto como 10% o 1:10."});
    si_[static_cast<std::size_t>(fact.fact)] = value * info(fact.unit).si(units);
}

void PitFacts::set(std::string_view key, std::string_view typed, UnitSystem units) {
    const PitFactInfo& fact = known(key);
    std::optional<double>& si = si_[static_cast<std::size_t>(fact.fact)];
    const std::string word = nameKey(typed);
    if (word.empty()) {
        si.reset();
        return;
    }
    const std::string name = fact.key;
    const auto refuse = [&](const Text& allowed) {
        const std::string text = "\"" + std::string(typed) + "\"; ";
        throw Error(Error::Kind::BadArgument, "value",
                    Text{name + " is " + text + "allowed: ", name + " es " + text + "se admite: "} + allowed +
                        Text::same("."));
    };
    if (fact.fact == PitFact::SoilGroup) {
        const auto isGroup = [](char c) { return c >= 'a' && c <= 'd'; };
        if (word.size() == 1 && isGroup(word[0])) {
            si = word[0] - 'a' + 1;
        } else if (word.size() == 3 && isGroup(word[0]) && word[1] == '/' && word[2] == 'd') {
            si = 4;
        } else {
            refuse({"A, B, C, D, or a dual group such as B/D", "A, B, C, D, o un grupo doble como B/D"});
        }
        return;
    }
    try {
        if (fact.unit == Unit::Slope) return set(key, readSlope(typed).fraction(), units);
        if (fact.unit == Unit::Feet) {
            const bool metric = units == UnitSystem::Metric;
            const Length length = readTape(typed, metric ? BareNumber::Metres : BareNumber::Feet);
            return set(key, metric ? length.metres() : length.feet(), units);
        }
    } catch (const Error& error) {
        if (error.argument() == "value") throw;
    }
    refuse({"a number", "un número"});
}

Text PitVerdict::text() const {
    Text said = reasons.empty() ? Text::same("OK") : Text();
    const auto line = [&](const Text& says) { said += (said.empty() ? Text() : Text::same("\n")) + says; };
    for (const PitFinding& reason : reasons) line(reason.says);
    for (const PitFinding& caution : cautions) line(Text{"caution: ", "precaución: "} + caution.says);
    return said;
}

PitVerdict checkPit(const PitFacts& facts, const Ruleset& rules, UnitSystem units) {
    return Check(facts, rules, units).all();
}

}  // namespace trenchbook
