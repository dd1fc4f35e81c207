#include "job/run_rules.h"

#include <algorithm>
#include <string_view>

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

bool saysWhoAndWhen(std::string_view words) {
    const auto any = [&](auto is) { return std::any_of(words.begin(), words.end(), is); };
    return any([](char c) { return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z'); }) &&
           any([](char c) { return c >= '0' && c <= '9'; });
}

void RunRules::tellUnlessApproved(const char* rule, double measured, Text says, bool approved) {
    if (!approved) return told_.tell(Severity::No, rule, measured, std::move(says));
    told_.tell(Severity::Caution, rule, measured,
               std::move(says) + Text{"; approved: " + run_.approval, "; aprobado: " + run_.approval});
}

bool RunRules::slope() {
    if (!run_.slope || pipe_ == nullptr) return false;
    const double slope = run_.slope->fraction();
    const char* rule = leastSlopeRule(*pipe_);
    const Slope least = rules_.slope(rule);
    if (slope < 0) {
        const std::string percent = plain(-100 * slope, 3) + "%";
        const Text uphill{"runs uphill by " + percent, "sube " + percent};
        told_.tell(Severity::No, rule, slope,
                   run_.lies
                       ? Text{"back fall in a known pipe: ", "contrapendiente en un tubo conocido: "} + uphill
                       : uphill);
        return false;
    }
    if (slope == 0 && least.fraction() > 0) {
        told_.tell(Severity::No, rule, slope, {"no fall", "sin desnivel"});
        return false;
    }
    if (slope >= (least - rules_.slope("slope.tolerance")).fraction() * (1 - hair)) return true;
    const Apart said = apart(100 * slope, least.percent(), 2);
    const std::string trade = metric_ ? "" : " (" + slopeText(least) + ")";
    // Pipe sold by inches has a name without a unit, too.
    const std::string size = metric_ && !pipe_->name.empty() ? pipe_->name : sizeWithUnit(*pipe_);
    tellUnlessApproved(
        rule, slope,
        {"too flat: " + said.value + "%, at least " + said.limit + "%" + trade + " for " + size + " pipe",
         "muy plano: " + said.value + "%, al menos " + said.limit + "%" + trade + " para tubo de " + size},
        saysWhoAndWhen(run_.approval));
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
        tellUnlessApproved(
            "share.max", share,
            {"too full: " + said.value + "% of the full pipe's flow, at most " + said.limit + "%",
             "muy lleno: " + said.value + "% del caudal a tubo lleno, máximo " + said.limit + "%"},
            saysWhoAndWhen(run_.approval));
    }
}

void RunRules::velocity() {
    if (!flows()) return;
    const auto speed = [&](Velocity v) { return metric_ ? v.metresPerSecond() : v.feetPerSecond(); };
    const std::string unit = metric_ ? " m/s" : " ft/s";
    const Velocity least = rules_.velocity("velocity.min");
    const Velocity atFull = fullVelocity(pipe_->bore, *run_.slope, run_.roughness);
    // Silt leaves perforated pipe no other way either: it lies in rock and a sock.
    if (atFull < least * (1 - hair) && !pipe_->perforated) {
        const Apart said = apart(speed(atFull), speed(least), 1);
        const std::string words = nameKey(run_.approval);
        const bool named =
            words.find("velocity") != std::string::npos || words.find("velocidad") != std::string::npos;
        tellUnlessApproved(
            "velocity.min", atFull.si(),
            {"slow: " + said.value + " flowing full, at least " + said.limit + unit + " to keep clean",
             "lento: " + said.value + " a tubo lleno, al menos " + said.limit + unit + " para que se limpie"},
            named && saysWhoAndWhen(run_.approval));
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
    for (const CoverPlace& place : run_.between)
        coverAt(place.cover, place.surface, place.where, place.atCurb);
    coverAt(run_.coverDown, run_.surfaceDown, {"at the lower end", "en el extremo de abajo"});
}

// A curb of 6 in leaves an inch or two over a 4 in pipe, whoever lays it: the city's detail says which pipe lies there.
void RunRules::coverAt(std::optional<Length> cover, std::optional<CoverSurface> surface, const Text& where,
                       bool atCurb) {
    if (!cover || !surface || pipe_ == nullptr) return;
    const char* rule = leastCoverKey(*surface, *pipe_);
    if (rule == nullptr) return;
    const Length least = rules_.length(rule);
    if (cover->si() >= least.si() - hair) return;
    const auto depth = [&](Length value) { return metric_ ? value.millimetres() : value.inches(); };
    const std::string unit = metric_ ? " mm" : " in";
    const Apart said = apart(depth(*cover), depth(least), 1);
    told_.tell(atCurb ? Severity::Check : Severity::No, rule, cover->si(),
               Text{"shallow ", "poca cobertura "} + where + Text::same(": " + said.value + unit) +
                   Text{" under ", " bajo "} + coverSurfaces()[static_cast<std::size_t>(*surface)].name +
                   Text{", at least ", ", al menos "} + Text::same(said.limit + unit) +
                   (atCurb ? Text{": lay the pipe of the city's curb detail",
                                  ": ponga el tubo del detalle municipal de bordillo"}
                           : Text()));
}

void RunRules::wheels() {
    const auto driven = [](std::optional<CoverSurface> surface) {
        return surface == CoverSurface::Drive || surface == CoverSurface::Street;
    };
    const bool between = std::any_of(run_.between.begin(), run_.between.end(),
                                     [&](const CoverPlace& place) { return driven(place.surface); });
    if (pipe_ == nullptr || (!driven(run_.surfaceUp) && !driven(run_.surfaceDown) && !between)) return;
    const Rule* own = findRule("wheels." + pipeKindKey(*pipe_));
    const Rule* rules[] = {pipe_->perforated ? findRule("wheels.perforated") : nullptr, own};
    for (const Rule* rule : rules) {
        if (rule == nullptr || rules_.number(rule->key) != 0) continue;
        told_.tell(Severity::No, rule->key,
                   {pipeName(*pipe_) + " is not for under wheels", pipeName(*pipe_) + " no va bajo ruedas"});
        return;
    }
}

void RunRules::cut() {
    std::optional<Length> most;
    const auto look = [&](std::optional<Length> cover) {
        if (cover && (!most || *cover > *most)) most = cover;
    };
    look(run_.coverUp);
    look(run_.coverDown);
    for (const CoverPlace& place : run_.between) look(place.cover);
    if (pipe_ == nullptr || !most) return;
    const Length deepest = *most + pipe_->outside.value_or(pipe_->bore) + rules_.length("bedding.depth");
    const auto reaches = [&](const char* key) { return deepest.si() >= rules_.length(key).si() - hair; };
    const std::string said = feet(deepest, metric_ ? 2 : 1);
    if (reaches("cut.engineer")) {
        told_.tell(Severity::No, "cut.engineer", deepest.si(),
                   {"cut " + said + ": the protection is an engineer's to design",
                    "corte " + said + ": la protección la diseña un ingeniero"});
    } else if (reaches("cut.protect")) {
        const Text needed{"cut " + said + ": protective system, unless in stable rock",
                          "corte " + said + ": sistema de protección, salvo en roca estable"};
        if (!run_.protection)
            told_.tell(Severity::Check, "cut.protect", deepest.si(), needed);
        else if (*run_.protection == Protection::NotSaid)
            told_.tell(Severity::No, "cut.protect", deepest.si(),
                       needed + Text{"; say on Job which (Trench protection)",
                                     "; diga en Job cuál (Trench protection)"});
        else if (*run_.protection == Protection::StableRock)
            told_.tell(
                Severity::Caution, "cut.protect", deepest.si(),
                {"cut " + said + " in stable rock: a competent person confirms it before anyone goes in",
                 "corte " + said + " en roca estable: una persona competente lo confirma antes de entrar"});
        else
            told_.tell(Severity::Caution, "cut.protect", deepest.si(),
                       Text{"cut " + said + ": protected by ", "corte " + said + ": protegido con "} +
                           protectionWord(*run_.protection));
    } else if (reaches("cut.exit")) {
        told_.tell(Severity::Caution, "cut.exit", deepest.si(),
                   {"cut " + said + ": a safe way out within 25 ft (7.6 m)",
                    "corte " + said + ": salida segura a menos de 25 ft (7.6 m)"});
    }
}

void RunRules::perforated() {
    if (pipe_ == nullptr || !pipe_->perforated) return;
    if (run_.slope && run_.slope->si() == 0 && run_.flow && run_.flow->si() > 0)
        told_.tell(Severity::Check, "slope.min.perforated", 0,
                   {"level perforated pipe: how much it carries is not judged",
                    "tubo perforado a nivel: cuánto lleva no se juzga"});
    told_.tell(
        Severity::Caution, Standing::RunPerforated,
        {"perforated pipe: in a sock and washed rock, never for sanitary waste; its leakage is not counted",
         "tubo perforado: con funda y roca lavada, nunca para aguas negras; su fuga no se cuenta"});
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
