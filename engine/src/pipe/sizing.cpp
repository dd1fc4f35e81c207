#include "trenchbook/pipe/sizing.h"

#include "trenchbook/core/error.h"
#include "trenchbook/pipe/circular.h"
#include "trenchbook/pipe/manning.h"

namespace trenchbook {

Pipe firstThatCarries(Flow flow, Slope slope, std::span<const Pipe> candidates, const SizingLimits& limits) {
    requirePositive(flow, "flow");
    requireSlope(slope, "slope");
    if (!(limits.largestShare > 0 && limits.largestShare <= 1))
        throw Error(Error::Kind::BadArgument, "largest share", plain(limits.largestShare),
                    {"above 0 and at most 1", "mayor que 0 y como máximo 1"});
    requireNotNegative(limits.leastVelocity, "least velocity");
    if (candidates.empty())
        throw Error(Error::Kind::BadArgument, "candidates", Text{"blank", "una lista vacía"},
                    {"stock names such as 4 SDR35", "nombres comerciales como 4 SDR35"});

    Flow most;
    bool tooSlow = false;
    for (const Pipe& pipe : candidates) {
        const double n = limits.roughness.value_or(pipe.roughness);
        const Flow carried = capacity(pipe.bore, slope, n) * limits.largestShare;
        most = std::max(most, carried);
        if (carried < flow) continue;
        if (uniformVelocity(pipe.bore, slope, flow, n) >= limits.leastVelocity) return pipe;
        tooSlow = true;
    }
    const auto gpm = [](Flow amount) {
        return plain(amount.gpm(), 1) + " gpm (" + plain(amount.litresPerSecond(), 2) + " L/s)";
    };
    if (tooSlow) {
        const std::string speed = plain(limits.leastVelocity.feetPerSecond(), 2) + " ft/s (" +
                                  plain(limits.leastVelocity.metresPerSecond(), 2) + " m/s)";
        throw Error(
            Error::Kind::NoSolution, "candidates",
            {"No candidate carries " + gpm(flow) + " at this slope with at least " + speed + ".",
             "Ningún candidato lleva " + gpm(flow) + " con esta pendiente a por lo menos " + speed + "."});
    }
    throw Error(Error::Kind::NoSolution, "candidates",
                {"No candidate carries " + gpm(flow) + " at this slope; the largest takes " + gpm(most) +
                     " at the share allowed.",
                 "Ningún candidato lleva " + gpm(flow) + " con esta pendiente; el mayor admite " + gpm(most) +
                     " con la parte permitida."});
}

Volume insideVolume(const Pipe& pipe, Length length) {
    requireNotNegative(length, "length");
    return fullArea(pipe.bore) * length;
}

Volume outsideVolume(const Pipe& pipe, Length length) {
    requireNotNegative(length, "length");
    return fullArea(outsideOf(pipe)) * length;
}

}  // namespace trenchbook
