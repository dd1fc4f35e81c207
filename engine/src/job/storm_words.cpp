// Storms in words.
#include <string>

#include "job/say.h"
#include "trenchbook/job/storms.h"

namespace trenchbook {
namespace {

// Up to a quarter of an hour it is called a cloudburst; common practice, no source.
constexpr Duration cloudburst = Duration::minutes(15);

Text depthText(Length depth, UnitSystem units) {
    return amountText({depth.si(), Unit::Inches}, units, units == UnitSystem::Metric ? 0 : 2);
}

bool inMinutes(Duration duration) { return duration < Duration::minutes(119); }
std::string count(Duration duration) {
    return plain(inMinutes(duration) ? duration.minutes() : duration.hours(), 1);
}

std::string counted(std::size_t count, const char* one, const char* many) {
    return std::to_string(count) + " " + (count == 1 ? one : many);
}

// "10-minute cloudburst of 1 in", "centered storm of 24 hours, 4 in".
Text stormOf(const StormTried& storm, UnitSystem units) {
    const std::string number = count(storm.duration);
    const Text depth = depthText(storm.depth, units);
    if (storm.centered)
        return Text{"centered storm of " + number + (inMinutes(storm.duration) ? " minutes, " : " hours, "),
                    "tormenta centrada de " + number +
                        (inMinutes(storm.duration) ? " minutos, " : " horas, ")} +
               depth;
    const bool burst = storm.duration <= cloudburst;
    return Text{number + (inMinutes(storm.duration) ? "-minute " : "-hour ") +
                    (burst ? "cloudburst of " : "rain of "),
                std::string(burst ? "aguacero de " : "lluvia de ") + number +
                    (inMinutes(storm.duration) ? " minutos y " : " horas y ")} +
           depth;
}

// "after 5 minutes", "at once".
Text after(Duration time) {
    if (time < Duration::minutes(1)) return {"at once", "enseguida"};
    const bool hours = time >= Duration::hours(2);
    const std::string number = plain(hours ? time.hours() : time.minutes(), hours ? 1 : 0);
    const bool one = number == "1";
    return {"after " + number +
                (hours ? " hours"
                 : one ? " minute"
                       : " minutes"),
            "a los " + number +
                (hours ? " horas"
                 : one ? " minuto"
                       : " minutos")};
}
// "for 5 minutes"
Text lasting(Duration time) {
    if (time < Duration::minutes(1)) return {"for less than a minute", "por menos de un minuto"};
    const bool hours = time >= Duration::hours(2);
    const std::string number = plain(hours ? time.hours() : time.minutes(), hours ? 1 : 0);
    const bool one = number == "1";
    return {"for " + number +
                (hours ? " hours"
                 : one ? " minute"
                       : " minutes"),
            "por " + number +
                (hours ? " horas"
                 : one ? " minuto"
                       : " minutos")};
}

const std::string& nodeName(const Job& job, std::size_t row) { return job.nodes[row].name; }
Text inletName(const Job& job, std::size_t row) {
    const JobInlet& inlet = job.inlets[row];
    return Text::same(inlet.name.empty() ? inlet.node : inlet.name);
}

Text volumeText(Volume volume, UnitSystem units) {
    return amountText({volume.si(), Unit::CubicFeet}, units, units == UnitSystem::Metric ? 1 : 0);
}

// What the pit does with it.
Text pitSays(const Job& job, const StormTried& storm) {
    if (!storm.pitFilled) return {};
    if (!storm.pitFullAfter) {
        const std::string filled = plain(*storm.pitFilled * 100, 0);
        return {"the pit takes it all and is " + filled + " % full at most",
                "el pozo lo recibe todo y se llena cuando más al " + filled + " %"};
    }
    return Text{"the pit is full ", "el pozo se llena "} + after(*storm.pitFullAfter) +
           Text{"; then water wells up at " + job.pit.node + ", ",
                "; luego brota agua en " + job.pit.node + ", "} +
           volumeText(storm.wellsUp, job.units) + Text::same(" ") + lasting(storm.wellsUpFor);
}

Text nodeSays(const Job& job, const StormTried& storm) {
    if (!storm.freeboard) return {};
    const std::string& name = nodeName(job, storm.freeboardNode);
    const Length free = *storm.freeboard;
    const Text height = amountText({(free < Length{} ? -free : free).si(), Unit::Feet}, job.units, 2);
    if (free < Length{})
        return Text{"water would stand ", "el agua quedaría "} + height +
               Text{" over the opening at " + name + ": it comes out there",
                    " sobre la boca de " + name + ": sale por ahí"};
    return Text{"the water in the lines stays ", "el agua en las líneas queda "} + height +
           Text{" below the opening at " + name, " bajo la boca de " + name};
}

Text inletSays(const Job& job, const StormTried& storm) {
    if (storm.overHalfBlocked == 0) return {};
    const Text name = inletName(job, storm.worstInlet);
    const auto more = [&](std::size_t count) {
        return count < 2 ? Text{}
                         : Text{" and " + counted(count - 1, "more inlet", "more inlets"),
                                " y " + counted(count - 1, "entrada más", "entradas más")};
    };
    if (storm.overClean > 0)
        return Text{"more comes to ", "llega más agua a "} + name + more(storm.overClean) +
               Text{" than goes in, even when clean", " de la que entra, aun con todo limpio"};
    return Text{"with half of the grate blocked more comes to ",
                "con media rejilla tapada llega más agua a "} +
           name + more(storm.overHalfBlocked) + Text{" than goes in", " de la que entra"};
}

Text pumpSays(const Job& job, const StormTried& storm) {
    if (storm.pump == Network::none) return {};
    const std::string& name = job.pumps[storm.pump].node;
    const Text more{"more comes to the pump at " + name + " than it lifts",
                    "a la bomba en " + name + " llega más de lo que sube"};
    return storm.pumpAfter ? more + Text{", and its basin runs over ", ", y su cárcamo se desborda "} +
                                 after(*storm.pumpAfter)
                           : more + Text{", and its basin holds the rest", ", y su cárcamo guarda el resto"};
}

Text joined(std::initializer_list<Text> parts) {
    Text all;
    for (const Text& part : parts) {
        if (part.empty()) continue;
        if (!all.empty()) all += Text::same("; ");
        all += part;
    }
    return all;
}

}  // namespace

Text stormName(const StormTried& storm) {
    if (storm.duration.si() == 0) return {"centered (alternating blocks)", "centrada (bloques alternos)"};
    const Text time = Text::same(count(storm.duration) + (inMinutes(storm.duration) ? " min" : " h"));
    return storm.centered ? time + Text{", centered (alternating blocks)", ", centrada (bloques alternos)"}
                          : time;
}

Text stormSays(const Job& job, const StormTried& storm) {
    if (!storm.inTable && storm.centered)
        return {"centered storm: the rain table has too few durations; not tried",
                "tormenta centrada: la tabla de lluvia tiene muy pocas duraciones; no se probó"};
    if (!storm.inTable)
        return stormName(storm) +
               Text{" is not in the rain table; not tried", " no está en la tabla de lluvia; no se probó"};
    Text said =
        joined({pitSays(job, storm), pumpSays(job, storm), nodeSays(job, storm), inletSays(job, storm)});
    if (storm.notKnown > 0)
        said = joined({said, Text{"not known well enough to tell: ", "no se conoce lo bastante: "} +
                                 Text{counted(storm.notKnown, "inlet or opening", "inlets and openings"),
                                      counted(storm.notKnown, "entrada o boca", "entradas y bocas")}});
    if (said.empty())
        said = {"nothing is known that could be tried", "no se conoce nada que se pudiera probar"};
    return (storm.centered ? Text{"In a ", "En una "} : Text{"In a ", "En "}) + stormOf(storm, job.units) +
           Text::same(", ") + said + Text::same(".");
}

Text failsFirstText(const Job& job, const StormTried& storm) {
    if (!storm.inTable) return {"not in the table", "no está en la tabla"};
    switch (storm.first) {
        case FailsFirst::Pit:
            return Text{"pit full ", "pozo lleno "} + after(storm.firstAfter);
        case FailsFirst::Node:
            return Text{"water over the opening at " + nodeName(job, storm.freeboardNode) + " ",
                        "agua sobre la boca de " + nodeName(job, storm.freeboardNode) + " "} +
                   after(storm.firstAfter);
        case FailsFirst::Inlet:
            return Text{"inlet ", "entrada "} + inletName(job, storm.worstInlet) +
                   Text{" too small ", " insuficiente "} + after(storm.firstAfter);
        case FailsFirst::Pump:
            return Text{"pump " + job.pumps[storm.pump].node + " too small ",
                        "bomba " + job.pumps[storm.pump].node + " insuficiente "} +
                   after(storm.firstAfter);
        case FailsFirst::Nothing:
            break;
    }
    if (storm.notKnown > 0) return {"not known", "no se sabe"};
    return {"nothing", "nada"};
}

}  // namespace trenchbook
