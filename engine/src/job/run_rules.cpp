#include "job/run_rules.h"

#include <algorithm>

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

}  // namespace

Apart apart(double value, double limit, int decimals) {
    for (; decimals < 6; ++decimals)
        if (plain(value, decimals) != plain(limit, decimals)) break;
    return {plain(value, decimals), plain(limit, decimals)};
}

bool RunRules::slope() {
    if (!run_.slope || pipe_ == nullptr) return false;
    const double slope = run_.slope->fraction();
    const char* rule = leastSlopeKey(pipe_->nominal);
    if (slope < 0) {
        const std::string percent = plain(-100 * slope, 3) + "%";
        told_.tell(Severity::No, rule, slope, {"runs uphill by " + percent, "sube " + percent});
        return false;
    }
    if (slope == 0) {
        told_.tell(Severity::No, rule, slope, {"no fall", "sin desnivel"});
        return false;
    }
    const Slope least = rules_.slope(rule);
    if (slope >= (least - rules_.slope("slope.tolerance")).fraction() * (1 - hair)) return true;
    const Apart said = apart(100 * slope, least.percent(), 2);
    const std::string trade = metric_ ? "" : " (" + slopeText(least) + ")";
    const std::string size = plain(pipe_->nominal, 3);
    told_.tell(
        Severity::No, rule, slope,
        {"too flat: " + said.value + "%, at least " + said.limit + "%" + trade + " for " + size + " in pipe",
         "muy plano: " + said.value + "%, al menos " + said.limit + "%" + trade + " para tubo de " + size +
             " in"});
    return false;
}

void RunRules::share() {
    if (!flows() || !run_.flow) return;
    const Flow full = capacity(pipe_->bore, *run_.slope, run_.roughness);
    const double share = *run_.flow / full, most = rules_.number("share.max");
    if (share > 1 + hair) {
        const std::string carried = flowSaid(*run_.flow), holds = flowSaid(full);
        told_.tell(Severity::No, "share.max", share,
                   {"overloaded: " + carried + " in a pipe that carries " + holds + " full",
                    "sobrecargado: " + carried + " en un tubo que lleva " + holds + " lleno"});
    } else if (share > most * (1 + hair)) {
        const Apart said = apart(100 * share, 100 * most, 0);
        told_.tell(Severity::No, "share.max", share,
                   {"too full: " + said.value + "% of the full pipe's flow, at most " + said.limit + "%",
                    "muy lleno: " + said.value + "% del caudal a tubo lleno, máximo " + said.limit + "%"});
    }
}

void RunRules::velocity() {
    if (!flows()) return;
    const auto speed = [&](Velocity v) { return metric_ ? v.metresPerSecond() : v.feetPerSecond(); };
    const std::string unit = metric_ ? " m/s" : " ft/s";
    const Velocity least = rules_.velocity("velocity.min");
    const Velocity atFull = fullVelocity(pipe_->bore, *run_.slope, run_.roughness);
    if (atFull < least * (1 - hair)) {
        const Apart said = apart(speed(atFull), speed(least), 1);
        told_.tell(Severity::No, "velocity.min", atFull.si(),
                   {"slow: " + said.value + " flowing full, at least " + said.limit + unit + " to keep clean",
                    "lento: " + said.value + " a tubo lleno, al menos " + said.limit + unit +
                        " para que se limpie"});
    }
    if (!run_.flow || run_.flow->si() <= 0) return;
    const Velocity greatest = rules_.velocity("velocity.max");
    const Velocity atFlow = uniformVelocity(pipe_->bore, *run_.slope, *run_.flow, run_.roughness);
    if (atFlow > greatest * (1 + hair)) {
        const Apart said = apart(speed(atFlow), speed(greatest), 1);
        told_.tell(Severity::No, "velocity.max", atFlow.si(),
                   {"fast: " + said.value + ", at most " + said.limit + unit,
                    "rápido: " + said.value + ", máximo " + said.limit + unit});
    }
}

void RunRules::cover() {
    coverAt(run_.coverUp, run_.surfaceUp, {"at the upper end", "en el extremo de arriba"});
    coverAt(run_.coverDown, run_.surfaceDown, {"at the lower end", "en el extremo de abajo"});
}

void RunRules::coverAt(std::optional<Length> cover, std::optional<CoverSurface> surface, const Text& where) {
    if (!cover || !surface || pipe_ == nullptr) return;
    const char* rule = leastCoverKey(*surface, *pipe_);
    if (rule == nullptr) return;
    const Length least = rules_.length(rule);
    if (cover->si() >= least.si() - hair) return;
    const auto depth = [&](Length value) { return metric_ ? value.millimetres() : value.inches(); };
    const std::string unit = metric_ ? " mm" : " in";
    const Apart said = apart(depth(*cover), depth(least), 1);
    told_.tell(Severity::No, rule, cover->si(),
               Text{"shallow ", "poca cobertura "} + where + Text::same(": " + said.value + unit) +
                   Text{" under ", " bajo "} + coverSurfaces()[static_cast<std::size_t>(*surface)].name +
                   Text{", at least ", ", al menos "} + Text::same(said.limit + unit));
}

void RunRules::wheels() {
    const auto driven = [](std::optional<CoverSurface> surface) {
        return surface == CoverSurface::Drive || surface == CoverSurface::Street;
    };
    if (pipe_ == nullptr || (!driven(run_.surfaceUp) && !driven(run_.surfaceDown))) return;
    const Rule* rule = findRule("wheels." + pipeKindKey(*pipe_));
    if (rule == nullptr || rules_.number(rule->key) != 0) return;
    told_.tell(Severity::No, rule->key,
               {pipeName(*pipe_) + " is not for under wheels", pipeName(*pipe_) + " no va bajo ruedas"});
}

void RunRules::cut() {
    if (pipe_ == nullptr || (!run_.coverUp && !run_.coverDown)) return;
    Length deepest = run_.coverUp ? *run_.coverUp : *run_.coverDown;
    if (run_.coverDown) deepest = std::max(deepest, *run_.coverDown);
    deepest += pipe_->outside.value_or(pipe_->bore) + rules_.length("bedding.depth");
    const auto reaches = [&](const char* key) { return deepest.si() >= rules_.length(key).si() - hair; };
    const std::string said = feet(deepest, metric_ ? 2 : 1);
    if (reaches("cut.engineer")) {
        told_.tell(Severity::No, "cut.engineer", deepest.si(),
                   {"cut " + said + ": the protection is an engineer's to design",
                    "corte " + said + ": la protección la diseña un ingeniero"});
    } else if (reaches("cut.protect")) {
        told_.tell(Severity::Check, "cut.protect", deepest.si(),
                   {"cut " + said + ": protective system, unless in stable rock",
                    "corte " + said + ": sistema de protección, salvo en roca estable"});
    } else if (reaches("cut.exit")) {
        told_.tell(Severity::Caution, "cut.exit", deepest.si(),
                   {"cut " + said + ": a safe way out within 25 ft (7.6 m)",
                    "corte " + said + ": salida segura a menos de 25 ft (7.6 m)"});
    }
}

void RunRules::length() {
    const Length longest = rules_.length("length.max");
    if (!run_.length || run_.length->si() <= longest.si() * (1 + hair)) return;
    const std::string is = feet(*run_.length, 1), most = feet(longest, 1);
    told_.tell(Severity::No, "length.max", run_.length->si(),
               {"long: " + is + ", at most " + most, "largo: " + is + ", máximo " + most});
}

std::string RunRules::flowSaid(Flow flow) const {
    return metric_ ? plain(flow.litresPerSecond(), 2) + " L/s" : plain(flow.gpm(), 1) + " gpm";
}

std::string RunRules::feet(Length length, int decimals) const {
    return metric_ ? plain(length.metres(), decimals) + " m" : plain(length.feet(), decimals) + " ft";
}

}  // namespace trenchbook
