// What each inlet brings, and what it can take.
#include <cctype>
#include <charconv>
#include <cmath>

#include "job/solve_parts.h"
#include "trenchbook/core/error.h"
#include "trenchbook/water/channel.h"
#include "trenchbook/water/inlets.h"
#include "trenchbook/water/runoff.h"

namespace trenchbook {
namespace {

// Of what drains there; none while a part cannot be used, or nothing drains there at all.
std::optional<Area> areaTimesC(const JobInlet& inlet) {
    Area sum;
    bool any = false;
    for (const Drained* part : {&inlet.roof, &inlet.paved, &inlet.yard}) {
        if (!part->area) continue;
        if (!(*part->area > Area{}) || !part->coefficient) return std::nullopt;
        if (!(*part->coefficient > 0 && *part->coefficient <= 1)) return std::nullopt;
        sum += *part->area * *part->coefficient;
        any = true;
    }
    // A cell that stands there and cannot be used is not an area of 0.
    for (const Unusable& cell : inlet.unusable)
        if (cell.heading.ends_with(" area") || cell.heading.ends_with(" C")) any = false;
    return any ? std::optional(sum) : std::nullopt;
}

// "12x12", "4 x 4", "9", with or without marks of inches. The second is 0 where there is only one.
struct Size {
    Length first, second;
};
Size readSize(const std::string& typed, UnitSystem units) {
    const auto refuse = [&typed]() {
        return Error(
            Error::Kind::BadArgument, "Size", "\"" + typed + "\"",
            {"length x width such as 12x12, or a diameter", "largo x ancho como 12x12, o un diámetro"});
    };
    std::string text;
    for (std::size_t i = 0; i < typed.size(); ++i) {
        const auto c = static_cast<unsigned char>(typed[i]);
        if (typed.compare(i, 2, "\u00D7") == 0) {
            text += 'x';
            ++i;
        } else if (!std::isspace(c) && c != '"') {
            text += static_cast<char>(std::tolower(c));
        }
    }
    const auto number = [&](const std::string& part) {
        double value = 0;
        const auto read = std::from_chars(part.data(), part.data() + part.size(), value);
        if (read.ec != std::errc() || read.ptr != part.data() + part.size() || !(value > 0) ||
            !std::isfinite(value))
            throw refuse();
        return units == UnitSystem::Metric ? Length::millimetres(value) : Length::inches(value);
    };
    const std::size_t cross = text.find('x');
    if (cross == std::string::npos) return {number(text), Length{}};
    return {number(text.substr(0, cross)), number(text.substr(cross + 1))};
}

template <class Value>
Value given(const std::optional<Value>& value, const char* heading) {
    if (value) return *value;
    throw Error(Error::Kind::BadArgument, heading,
                Text{std::string(heading) + " is missing", std::string("falta ") + heading});
}

Flow grateTakes(const JobInlet& inlet, const Ruleset& rules, UnitSystem units) {
    const Size size = readSize(inlet.size, units);
    const double open = given(inlet.openShare, "Open share"), blocked = rules.number("grate.blocked");
    const Grate grate = size.second > Length{} ? rectangularGrate(size.first, size.second, open, blocked)
                                               : roundGrate(size.first, open, blocked);
    return grateCapacity(grate, given(inlet.ponding, "Ponding"));
}

Flow trenchDrainTakes(const JobInlet& inlet, UnitSystem units) {
    const Size size = readSize(inlet.size, units);
    if (!(size.second > Length{}))
        throw Error(Error::Kind::BadArgument, "Size", "\"" + inlet.size + "\"",
                    {"inside width x depth, such as 4x4", "ancho x profundidad interior, como 4x4"});
    const TrenchDrain drain{.width = size.first,
                            .length = given(inlet.length, "Length"),
                            .slope = inlet.floorSlope.value_or(Slope{})};
    return trenchCapacity(drain, size.second, Length{}, inlet.ponding.value_or(Length{}));
}

// None where the engine refuses.
template <class Call>
std::optional<Flow> unlessRefused(Call call) {
    try {
        return call();
    } catch (const Error&) {
        return std::nullopt;
    }
}

}  // namespace

Flow entryTakes(const JobInlet& inlet, const Ruleset& rules, UnitSystem units) {
    switch (inlet.entersBy) {
        case EntersBy::Downspout:
            return leaderCapacity(leaderDiameter(
                inlet.size, units == UnitSystem::Metric ? Length::millimetres(1) : Length::inches(1)));
        case EntersBy::Grate:
            return grateTakes(inlet, rules, units);
        case EntersBy::TrenchDrain:
            return trenchDrainTakes(inlet, units);
        case EntersBy::NotSaid:
            break;
    }
    throw Error(Error::Kind::BadArgument, "Enters by", Text{"Enters by is missing", "falta por dónde entra"});
}

Flow outletPipeTakes(const JobInlet& inlet) {
    return basinOutletFlow(given(inlet.outletPipe, "Outlet pipe").bore,
                           given(inlet.outletHead, "Outlet head"));
}

std::optional<Flow> SolvedInlet::takes() const {
    if (inletTakes && outletTakes) return std::min(*inletTakes, *outletTakes);
    return inletTakes ? inletTakes : outletTakes;
}

void solveInlets(const Job& job, SolvedJob& solved) {
    solved.inlets.assign(job.inlets.size(), {});
    for (std::size_t row = 0; row < job.inlets.size(); ++row) {
        const JobInlet& inlet = job.inlets[row];
        if (inlet.blank) continue;
        SolvedInlet& answer = solved.inlets[row];
        answer.areaTimesC = areaTimesC(inlet);
        const std::optional<RainRate> rain = job.facts.rain;
        if (answer.areaTimesC && rain && *rain > RainRate{}) answer.flow = *answer.areaTimesC * *rain;
        if (inlet.entersBy != EntersBy::NotSaid && !inlet.size.empty())
            answer.inletTakes = unlessRefused([&] { return entryTakes(inlet, job.rules, job.units); });
        if (inlet.outletPipe) answer.outletTakes = unlessRefused([&] { return outletPipeTakes(inlet); });
    }
}

}  // namespace trenchbook
