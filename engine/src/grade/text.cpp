// The reason in words: two places, a rule at each, the feet, and what would cure it.
#include <cmath>
#include <cstdio>

#include "trenchbook/grade/grade.h"

namespace trenchbook {
namespace {

class Writer {
  public:
    Writer(const GradeJob& job, const GradeNames& names, UnitSystem units)
        : job_(job), names_(names), metric_(units == UnitSystem::Metric) {}

    Text text(const GradeReason& reason) const {
        switch (reason.kind) {
            case GradeReason::Kind::Fits:
                return fits(reason);
            case GradeReason::Kind::Shrinks:
                return shrinks(reason) + cures(reason);
            default:
                return shortOfFall(reason) + cures(reason);
        }
    }

  private:
    Text fits(const GradeReason& reason) const {
        const std::string spare = length(reason.spare());
        return Text{"OK: " + spare + " to spare where it is tightest. ",
                    "OK: sobran " + spare + " donde menos hay. "} +
               pair(reason);
    }

    Text shortOfFall(const GradeReason& reason) const {
        const std::string missing = length(reason.missing());
        Text said = Text{"NO: " + missing + " short. ", "NO: faltan " + missing + ". "} + pair(reason);
        if (reason.otherConflicts > 0) {
            const std::string count = std::to_string(reason.otherConflicts);
            said += {" Other runs that come too low: " + count + ".",
                     " Otros tramos que quedan muy bajos: " + count + "."};
        }
        return said;
    }

    Text shrinks(const GradeReason& reason) const {
        const std::string upper = run(reason.high.run);
        const std::string pipe = job_.pipes[reason.high.pipe].pipe.name;
        const std::string lower = run(reason.low.run) + " (" + listed(reason.low.run) + ")";
        return {"NO: no pipe may get smaller downstream, and " + lower + " lists none as large as " + pipe +
                    ", the least that " + upper + " can have.",
                "NO: ningún tubo puede reducirse aguas abajo, y " + lower +
                    " no lista ninguno tan grande como " + pipe + ", lo menos que " + upper +
                    " puede tener."};
    }

    // Both places with their rules, and the fall between them.
    Text pair(const GradeReason& reason) const {
        Text said = limit(reason.high, true) + Text::same(" ") + limit(reason.low, false);
        for (const GradeLimit& more : reason.also) said += Text::same(" ") + limit(more, isHigh(more));
        if (reason.path.empty()) return said;
        const std::string needed = length(reason.needed);
        const std::string available = length(reason.available);
        const std::string way = run(reason.path.front());
        const std::string last = run(reason.path.back());
        const bool one = reason.path.size() == 1;
        said += {" On the way (" + way + (one ? "" : " to " + last) + ") at least " + needed +
                     " of fall; there is " + available + ".",
                 " En el camino (" + way + (one ? "" : " a " + last) + ") se necesitan al menos " + needed +
                     " de caída; hay " + available + "."};
        return said;
    }

    static bool isHigh(const GradeLimit& limit) {
        using Rule = GradeLimit::Rule;
        return limit.rule == Rule::Cover || limit.rule == Rule::Ground || limit.rule == Rule::OutletHighest ||
               limit.rule == Rule::CrossingBelow;
    }

    // "A: invert at most 98.23 ft (12 in of cover over 4 SDR35, ground 99.56 ft)."
    Text limit(const GradeLimit& limit, bool high) const {
        const std::string level = length(limit.level);
        Text said = place(limit);
        if (limit.rule == GradeLimit::Rule::Fixed) {
            said += {": invert " + level, ": fondo del tubo " + level};
        } else if (high) {
            said += {": invert at most " + level, ": fondo del tubo a lo más " + level};
        } else {
            said += {": invert at least " + level, ": fondo del tubo al menos " + level};
        }
        return said + Text::same(" (") + rule(limit) + Text::same(").");
    }

    Text rule(const GradeLimit& limit) const {
        const GradeRun& row = job_.runs[limit.run];
        const GradePipe& pipe = job_.pipes[limit.pipe];
        const std::string ground = length(limit.upperEnd ? row.groundUp : row.groundDown);
        switch (limit.rule) {
            case GradeLimit::Rule::Cover: {
                const std::string cover = small(coverAt(limit) + pipe.extraCover);
                return {cover + " of cover over " + pipe.pipe.name + ", ground " + ground,
                        cover + " de tapado sobre " + pipe.pipe.name + ", terreno " + ground};
            }
            case GradeLimit::Rule::Ground:
                return {"daylight, ground " + ground, "a cielo abierto, terreno " + ground};
            case GradeLimit::Rule::OutletHighest:
                return {"highest outlet", "salida más alta"};
            case GradeLimit::Rule::OutletLowest:
                return {"lowest outlet", "salida más baja"};
            case GradeLimit::Rule::DeepestCut: {
                const std::string cut = length(job_.deepestCut);
                return {"deepest cut " + cut + ", ground " + ground,
                        "zanja más honda " + cut + ", terreno " + ground};
            }
            case GradeLimit::Rule::CrossingBelow: {
                const std::string level = length(row.crossings[limit.crossing].level);
                if (row.crossings[limit.crossing].cover)
                    return {"top of " + pipe.pipe.name + " at " + level + " for its cover",
                            "lomo de " + pipe.pipe.name + " a " + level + " por su tapado"};
                return {pipe.pipe.name + " passes below " + level,
                        pipe.pipe.name + " pasa por debajo de " + level};
            }
            case GradeLimit::Rule::CrossingAbove: {
                const std::string level = length(row.crossings[limit.crossing].level);
                return {pipe.pipe.name + " passes above " + level,
                        pipe.pipe.name + " pasa por encima de " + level};
            }
            default:
                return {"set by hand", "puesto a mano"};
        }
    }

    Text place(const GradeLimit& limit) const {
        if (limit.rule == GradeLimit::Rule::CrossingBelow || limit.rule == GradeLimit::Rule::CrossingAbove) {
            const GradeCrossing& crossing = job_.runs[limit.run].crossings[limit.crossing];
            const std::string distance = length(crossing.fromUpperEnd);
            if (crossing.cover)
                return {"Ground " + distance + " down " + run(limit.run),
                        "Terreno a " + distance + " del inicio de " + run(limit.run)};
            return {"Crossing " + distance + " down " + run(limit.run),
                    "Cruce a " + distance + " del inicio de " + run(limit.run)};
        }
        return Text::same(node(limit));
    }

    Text cures(const GradeReason& reason) const {
        if (reason.cures.empty())
            return {" No single change is enough: another outlet, two outlets, or a pump.",
                    " Ningún cambio por sí solo alcanza: otra salida, dos salidas, o una bomba."};
        Text said{" Any one of these is enough: ", " Basta uno de estos cambios: "};
        for (std::size_t i = 0; i < reason.cures.size(); ++i)
            said += Text::same(i == 0 ? "" : "; ") + cure(reason, reason.cures[i]);
        return said + Text::same(".");
    }

    Text cure(const GradeReason& reason, const GradeCure& cure) const {
        using Kind = GradeCure::Kind;
        const std::string by = length(cure.amount);
        const GradeRun& row = job_.runs[cure.run];
        const auto raised = [&](Length level) { return length(level + cure.amount) + " (+" + by + ")"; };
        const auto lowered = [&](Length level) { return length(level - cure.amount) + " (-" + by + ")"; };
        const auto fixed = [](const GradeLimit& limit, const GradeRun& at) {
            return limit.upperEnd ? *at.fixedUp : *at.fixedDown;
        };
        switch (cure.kind) {
            case Kind::LessCover: {
                const std::string cover = small(coverAt(reason.high) - cure.amount);
                const std::string at = node(reason.high);
                return {"least cover at " + at + " " + cover + " (-" + by + "), with pipe that bears it",
                        "tapado mínimo en " + at + " " + cover + " (-" + by + "), con tubo que lo resista"};
            }
            case Kind::HigherOutlet: {
                const std::string level = raised(*row.outletHighest);
                return {"highest outlet " + level, "salida más alta " + level};
            }
            case Kind::LowerOutlet: {
                const std::string level = lowered(*row.outletLowest);
                Text said{"lowest outlet " + level, "salida más baja " + level};
                if (!row.outletFloor)
                    said += {" if what it ends in lies lower", " si adonde llega está más bajo"};
                return said;
            }
            case Kind::DeeperCut: {
                const std::string cut = raised(job_.deepestCut);
                return {"deepest cut " + cut, "zanja más honda " + cut};
            }
            case Kind::MoveFixedUp: {
                const std::string level = node(reason.high) + " " + raised(fixed(reason.high, row));
                return {"invert by hand at " + level, "fondo a mano en " + level};
            }
            case Kind::MoveFixedDown: {
                const std::string level = node(reason.low) + " " + lowered(fixed(reason.low, row));
                return {"invert by hand at " + level, "fondo a mano en " + level};
            }
            case Kind::MoveCrossingUp: {
                const std::string level = raised(row.crossings[reason.high.crossing].level);
                if (row.crossings[reason.high.crossing].cover)
                    return {"cover there less by " + by, "tapado ahí menor en " + by};
                return {"level at the crossing " + level, "nivel del cruce " + level};
            }
            case Kind::MoveCrossingDown: {
                const std::string level = lowered(row.crossings[reason.low.crossing].level);
                return {"level at the crossing " + level, "nivel del cruce " + level};
            }
            case Kind::OtherPipe: {
                const std::string& pipe = job_.pipes[cure.pipe].pipe.name;
                Text said{pipe + " allowed from " + run(cure.run) + " to the outlet",
                          pipe + " permitido de " + run(cure.run) + " a la salida"};
                if (reason.kind == GradeReason::Kind::ShortOfFall)
                    said += {" (" + by + " to spare)", " (sobran " + by + ")"};
                return said;
            }
            default: {
                const std::string shorter = run(cure.run) + " " + lowered(row.length);
                return {"length of " + shorter, "largo de " + shorter};
            }
        }
    }

    Length coverAt(const GradeLimit& limit) const {
        const GradeRun& row = job_.runs[limit.run];
        return limit.upperEnd ? *row.coverUp : *row.coverDown;
    }

    std::string run(std::size_t index) const { return names_.from[index] + "-" + names_.to[index]; }
    std::string node(const GradeLimit& limit) const {
        return limit.upperEnd ? names_.from[limit.run] : names_.to[limit.run];
    }
    std::string listed(std::size_t index) const {
        std::string all;
        for (std::size_t pipe : job_.runs[index].pipes)
            all += (all.empty() ? "" : ", ") + job_.pipes[pipe].pipe.name;
        return all;
    }

    // Levels and falls with the places that the grid has, at least hundredths of a foot or millimetres.
    std::string length(Length value) const {
        const double grid = metric_ ? job_.grid.metres() : job_.grid.feet();
        int places = metric_ ? 3 : 2;
        for (double unit = std::pow(10, places);
             places < 5 && std::fabs(grid * unit - std::round(grid * unit)) > 1e-6; unit *= 10)
            ++places;
        return fixedPlaces(metric_ ? value.metres() : value.feet(), places) + (metric_ ? " m" : " ft");
    }
    std::string small(Length value) const {
        return metric_ ? fixedPlaces(value.millimetres(), 0) + " mm" : plain(value.inches(), 1) + " in";
    }
    static std::string fixedPlaces(double value, int places) {
        char buffer[64];
        std::snprintf(buffer, sizeof buffer, "%.*f", places, value);
        return std::string(buffer).find_first_not_of("-0.") == std::string::npos && buffer[0] == '-'
                   ? buffer + 1
                   : buffer;
    }

    const GradeJob& job_;
    const GradeNames& names_;
    bool metric_;
};

}  // namespace

Text gradeText(const GradeJob& job, const GradePlan& plan, const GradeNames& names, UnitSystem units) {
    return Writer(job, names, units).text(plan.reason);
}

}  // namespace trenchbook
