// The rule book of a run as far as its own numbers reach: slope, water in the pipe, cover, wheels, cut, length. What
// is not known is not judged here.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "job/say.h"
#include "trenchbook/lines/cover_surface.h"

#pragma GCC visibility push(hidden)
namespace trenchbook {

// Cover between the ends, and where.
struct CoverPlace {
    Length cover;
    CoverSurface surface;
    Text where;           // "12 ft below A"
    bool atCurb = false;  // a few feet behind the curb that the pipe ends in
};

struct RunNumbers {
    std::optional<Length> length = {};
    std::optional<Slope> slope = {};
    std::optional<Flow> flow = {};
    std::optional<Length> coverUp = {}, coverDown = {};
    std::optional<CoverSurface> surfaceUp = {}, surfaceDown = {};
    std::vector<CoverPlace> between = {};
    double roughness = 0;
    std::string approval = {};                  // who let it be flatter or fuller, and when
    std::optional<Protection> protection = {};  // of a deep trench; none: nobody can say it here
    bool lies = false;                          // its inverts are measured, it is not laid
};

// "J. Doe, 2026-11-20": a name and a day, or at least words and figures.
bool saysWhoAndWhen(std::string_view words);

class RunRules {
  public:
    // `pipe` may be null: not known.
    RunRules(const RunNumbers& run, const Pipe* pipe, const Ruleset& rules, UnitSystem units,
             RowFindings& told)
        : run_(run), pipe_(pipe), rules_(rules), metric_(units == UnitSystem::Metric), told_(told) {}

    // False when it is flatter than the rules let it be, or does not fall at all.
    bool slope();
    void share();
    void velocity();
    void cover();
    void wheels();
    void cut();
    void length();
    // Perforated pipe: what it is no pipe for.
    void perforated();
    // At one place.
    void coverAt(std::optional<Length> cover, std::optional<CoverSurface> surface, const Text& where,
                 bool atCurb = false);

  private:
    // NO, or where a county has let it pass, a caution that quotes it.
    void tellUnlessApproved(const char* rule, double measured, Text says, bool approved);
    std::string flowSaid(Flow flow) const;
    std::string feet(Length length, int decimals) const;
    bool flows() const { return pipe_ != nullptr && run_.slope && run_.slope->si() > 0; }

    const RunNumbers& run_;
    const Pipe* pipe_;
    const Ruleset& rules_;
    bool metric_;
    RowFindings& told_;
};

// A value and its limit with as many digits as it takes to tell them apart.
struct Apart {
    std::string value, limit;
};
Apart apart(double value, double limit, int decimals);

}  // namespace trenchbook
#pragma GCC visibility pop
