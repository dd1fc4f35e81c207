#include "trenchbook/lines/cover.h"

#include <algorithm>
#include <cmath>

#include "trenchbook/core/error.h"
#include "trenchbook/core/tape.h"
#include "trenchbook/pipe/circular.h"
#include "trenchbook/pipe/manning.h"
#include "trenchbook/pipe/size_class.h"

namespace trenchbook {
namespace {

constexpr double hair = 1e-9;

std::string pipeName(const Pipe& pipe) {
    return pipe.name.empty() ? plain(pipe.nominal, 3) + " in" : pipe.name;
}

// A value and its limit with as many digits as it takes to tell them apart.
struct Pair {
    std::string value, limit;
};
Pair apart(double value, double limit, int decimals) {
    for (; decimals < 6; ++decimals)
        if (plain(value, decimals) != plain(limit, decimals)) break;
    return {plain(value, decimals), plain(limit, decimals)};
}

class Reasons {
  public:
    Reasons(const RunFacts& facts, const Ruleset& rules, UnitSystem units)
        : facts_(facts), rules_(rules), metric_(units == UnitSystem::Metric) {}

    std::vector<Text> all() {
        const bool falls = slope();
        if (falls) water();
        end(facts_.coverUp, facts_.surfaceUp, {"at the upper end", "en el extremo de arriba"});
        end(facts_.coverDown, facts_.surfaceDown, {"at the lower end", "en el extremo de abajo"});
        wheels();
        cut();
        length();
        return std::move(reasons_);
    }

  private:
    // False when there is no fall, without which nothing else can be said about the flow.
    bool slope() {
        const double slope = facts_.slope.fraction();
        if (slope < 0) {
            const std::string percent = plain(-100 * slope, 3) + "%";
            add("runs uphill by " + percent, "sube " + percent);
            return false;
        }
        if (slope == 0) {
            add("no fall", "sin desnivel");
            return false;
        }
        const Slope least = rules_.slope(leastSlopeKey(facts_.pipe.nominal));
        if (slope < (least - rules_.slope("slope.tolerance")).fraction() * (1 - hair)) {
            const Pair said = apart(100 * slope, least.percent(), 2);
            const std::string trade = metric_ ? "" : " (" + slopeText(least) + ")";
            const std::string size = plain(facts_.pipe.nominal, 3);
            add("too flat: " + said.value + "%, at least " + said.limit + "%" + trade + " for " + size +
                    " in pipe",
                "muy plano: " + said.value + "%, al menos " + said.limit + "%" + trade + " para tubo de " +
                    size + " in");
        }
        return true;
    }

    void water() {
        const Pipe& pipe = facts_.pipe;
        const Flow full = capacity(pipe.bore, facts_.slope, facts_.roughness);
        const double share = facts_.flow / full;
        const double most = rules_.number("share.max");
        if (share > 1 + hair) {
            const std::string carried = flow(facts_.flow), holds = flow(full);
            add("overloaded: " + carried + " in a pipe that carries " + holds + " full",
                "sobrecargado: " + carried + " en un tubo que lleva " + holds + " lleno");
        } else if (share > most * (1 + hair)) {
            const Pair said = apart(100 * share, 100 * most, 0);
            add("too full: " + said.value + "% of the full pipe's flow, at most " + said.limit + "%",
                "muy lleno: " + said.value + "% del caudal a tubo lleno, máximo " + said.limit + "%");
        }

        const Velocity least = rules_.velocity("velocity.min");
        const Velocity atFull = full / fullArea(pipe.bore);
        if (atFull < least * (1 - hair)) {
            const Pair said = apart(speed(atFull), speed(least), 1);
            add("slow: " + said.value + " flowing full, at least " + said.limit + speedUnit() +
                    " to keep clean",
                "lento: " + said.value + " a tubo lleno, al menos " + said.limit + speedUnit() +
                    " para que se limpie");
        }
        const Velocity greatest = rules_.velocity("velocity.max");
        const Velocity atFlow = facts_.flow.si() > 0
                                    ? uniformVelocity(pipe.bore, facts_.slope, facts_.flow, facts_.roughness)
                                    : Velocity();
        if (atFlow > greatest * (1 + hair)) {
            const Pair said = apart(speed(atFlow), speed(greatest), 1);
            add("fast: " + said.value + ", at most " + said.limit + speedUnit(),
                "rápido: " + said.value + ", máximo " + said.limit + speedUnit());
        }
    }

    void end(std::optional<Length> cover, CoverSurface surface, const Text& where) {
        const std::optional<Length> least = leastCover(surface, facts_.pipe, rules_);
        if (!cover || !least || cover->si() >= least->si() - hair) return;
        const Pair said = apart(depth(*cover), depth(*least), 1);
        const Text& over = coverSurfaces()[static_cast<std::size_t>(surface)].name;
        reasons_.push_back(Text{"shallow ", "poca cobertura "} + where +
                           Text::same(": " + said.value + depthUnit()) + Text{" under ", " bajo "} + over +
                           Text{", at least ", ", al menos "} + Text::same(said.limit + depthUnit()));
    }

    void wheels() {
        const auto driven = [](CoverSurface surface) {
            return surface == CoverSurface::Drive || surface == CoverSurface::Street;
        };
        if (!driven(facts_.surfaceUp) && !driven(facts_.surfaceDown)) return;
        const Rule* rule = findRule("wheels." + pipeKindKey(facts_.pipe));
        if (rule == nullptr || rules_.number(rule->key) != 0) return;
        add(pipeName(facts_.pipe) + " is not for under wheels", pipeName(facts_.pipe) + " no va bajo ruedas");
    }

    void cut() {
        if (!facts_.coverUp && !facts_.coverDown) return;
        Length deepest = facts_.coverUp ? *facts_.coverUp : *facts_.coverDown;
        if (facts_.coverDown) deepest = std::max(deepest, *facts_.coverDown);
        deepest += facts_.pipe.outside.value_or(facts_.pipe.bore) + rules_.length("bedding.depth");
        const auto reaches = [&](const char* key) { return deepest.si() >= rules_.length(key).si() - hair; };
        const std::string said =
            metric_ ? plain(deepest.metres(), 2) + " m" : plain(deepest.feet(), 1) + " ft";
        if (reaches("cut.engineer")) {
            add("cut " + said + ": the protection is an engineer's to design",
                "corte " + said + ": la protección la diseña un ingeniero");
        } else if (reaches("cut.protect")) {
            add("cut " + said + ": protective system, unless in stable rock",
                "corte " + said + ": sistema de protección, salvo en roca estable");
        } else if (reaches("cut.exit")) {
            add("cut " + said + ": a safe way out within 25 ft (7.6 m)",
                "corte " + said + ": salida segura a menos de 25 ft (7.6 m)");
        }
    }

    void length() {
        const Length longest = rules_.length("length.max");
        if (facts_.length.si() <= longest.si() * (1 + hair)) return;
        const auto said = [&](Length l) {
            return metric_ ? plain(l.metres(), 1) + " m" : plain(l.feet(), 1) + " ft";
        };
        add("long: " + said(facts_.length) + ", at most " + said(longest),
            "largo: " + said(facts_.length) + ", máximo " + said(longest));
    }

    void add(std::string en, std::string es) { reasons_.emplace_back(std::move(en), std::move(es)); }
    std::string flow(Flow value) const {
        return metric_ ? plain(value.litresPerSecond(), 2) + " L/s" : plain(value.gpm(), 1) + " gpm";
    }
    double speed(Velocity value) const { return metric_ ? value.metresPerSecond() : value.feetPerSecond(); }
    const char* speedUnit() const { return metric_ ? " m/s" : " ft/s"; }
    double depth(Length value) const { return metric_ ? value.millimetres() : value.inches(); }
    const char* depthUnit() const { return metric_ ? " mm" : " in"; }

    const RunFacts& facts_;
    const Ruleset& rules_;
    bool metric_;
    std::vector<Text> reasons_;
};

}  // namespace

Length runDrop(Length length, Slope slope, Length fittings) {
    requirePositive(length, "length");
    requirePositive(slope, "slope");
    requireNotNegative(fittings, "fittings drop");
    return slope * length + fittings;
}

Slope runSlope(Length length, Length levelUp, Length levelDown) {
    requirePositive(length, "length");
    return Slope::fraction((levelUp - levelDown) / length);
}

Length coverOver(Length ground, Length invert, const Pipe& pipe) {
    return ground - invert - invertToOutsideTop(pipe);
}

Length trenchCut(Length ground, Length invert, const Pipe& pipe, Length bedding) {
    requireNotNegative(bedding, "bedding");
    return ground - invert + wallOf(pipe) + bedding;
}

std::vector<Text> runReasons(const RunFacts& facts, const Ruleset& rules, UnitSystem units) {
    requirePositive(facts.length, "length");
    requireNotNegative(facts.flow, "flow");
    requirePositive(facts.roughness, "roughness");
    return Reasons(facts, rules, units).all();
}

Text checkRun(const RunFacts& facts, const Ruleset& rules, UnitSystem units) {
    Text said;
    for (const Text& reason : runReasons(facts, rules, units))
        said += (said.empty() ? Text() : Text::same("; ")) + reason;
    return said.empty() ? Text::same("OK") : said;
}

}  // namespace trenchbook
