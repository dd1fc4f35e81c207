// Runs: the whole judgement of a run, in the order of the rule book.
#include "trenchbook/job/judge_run.h"

#include <algorithm>
#include <cmath>
#include <span>

#include "job/run_rules.h"
#include "job/say.h"
#include "trenchbook/job/judge.h"
#include "trenchbook/pipe/size_class.h"

namespace trenchbook {
namespace {

// The places between the ends at which cover is known, from the upper end down.
std::vector<CoverPlace> coversBetween(const Job& job, const Run& run, const SolvedRun& is) {
    std::vector<CoverPlace> places;
    const Length exempt = job.rules.length("cover.daylight.within");
    const Text far = amountText({exempt.si(), Unit::Feet}, job.units);
    const auto nearEnd = [&](std::optional<Length> cover, const std::string& end, std::size_t node) {
        if (cover)
            places.push_back({*cover, CoverSurface::LawnEnd,
                              far + Text{" from " + end + " in daylight", " de " + end + " a cielo abierto"},
                              node != Network::none && job.nodes[node].kinds.has(NodeKind::Curb)});
    };
    nearEnd(is.coverNearUp, run.from, is.upper);
    for (const GroundPoint& point : is.between)
        if (point.cover && point.surface)
            places.push_back({*point.cover, *point.surface,
                              amountText({point.at.si(), Unit::Feet}, job.units) +
                                  Text{" below " + run.from, " aguas abajo de " + run.from}});
    nearEnd(is.coverNearDown, run.to, is.lower);
    return places;
}

class Judge {
  public:
    Judge(const Job& job, const SolvedJob& solved, std::size_t row, std::vector<Finding>& findings)
        : job_(job),
          solved_(solved),
          lines_(solved.lines),
          row_(row),
          run_(job.runs[row]),
          is_(solved.runs[row]),
          findings_(findings),
          told_(job, Part::Runs, row, findings),
          numbers_{.length = run_.length,
                   .slope = is_.slope,
                   .flow = is_.flow,
                   .coverUp = is_.coverUp,
                   .coverDown = is_.coverDown,
                   .surfaceUp = run_.surfaceUp,
                   .surfaceDown = run_.surfaceDown,
                   .between = coversBetween(job, run_, is_),
                   .roughness = run_.manning(),
                   .approval = run_.approval,
                   .protection = job.facts.protection,
                   .lies = run_.known()},
          rules_(numbers_, run_.pipe ? &*run_.pipe : nullptr, job.rules, job.units, told_) {}

    void judge() {
        const std::size_t before = findings_.size();
        // What was typed.
        told_.unusable(run_.unusable);
        names();
        end(run_.from, is_.upper, is_.groundUp);
        end(run_.to, is_.lower, is_.groundDown);
        inputs();
        trench();
        // What could not be worked out.
        waits();
        // What was worked out.
        if (rules_.slope()) fallInHand();
        rules_.share();
        rules_.velocity();
        outside();
        if (run_.existing) {
            liesThere();
        } else {
            rules_.cover();
            rules_.wheels();
            rules_.cut();
            rules_.length();
            bank();
        }
        perforated();
        singleWall();
        join();
        cleanouts();
        turns();
        approval();
        if (!verdict(std::span(findings_).subspan(before))) smaller();
    }

  private:
    // A row has two names, one way on, and no way back to itself.
    void names() {
        if (lines_.blank(row_))
            return told_.tell(Severity::NotJudged, Standing::InputMissing,
                              {"From and To are missing", "faltan From y To"});
        const Text said = faultText(lines_, is_.fault, row_, job_.firstRunRow);
        switch (is_.fault.kind) {
            case Fault::Kind::NowhereToGo:
            case Fault::Kind::FromNowhere:
                return told_.tell(Severity::NotJudged, Standing::InputMissing, said);
            case Fault::Kind::JoinsItself:
            case Fault::Kind::TwoWaysOut:
            case Fault::Kind::Loop:
                return told_.tell(Severity::No, Standing::RunOneWay, said);
            case Fault::Kind::GetsSmaller:
                return told_.tell(Severity::No, Standing::RunBoreShrinks, said);
            case Fault::Kind::None:
            case Fault::Kind::Unnamed:
            case Fault::Kind::BadCell:
            case Fault::Kind::Waiting:
                return;
        }
    }

    // Each end is a node with a ground level.
    void end(const std::string& name, std::size_t node, std::optional<Length> ground) {
        if (nameKey(name).empty()) return;
        if (node == Network::none) {
            told_.tell(Severity::No, Standing::NameKnown,
                       {"no node " + name + " on Nodes", "no hay nodo " + name + " en Nodes"});
        } else if (!ground) {
            told_.tell(Severity::NotJudged, Standing::InputMissing,
                       {"no ground level for " + name + " on Nodes",
                        "falta el nivel del terreno de " + name + " en Nodes"});
        }
    }

    void inputs() {
        told_.needs(run_.length, run_.unusable, "Length");
        told_.needs(run_.pipe, run_.unusable, "Pipe");
        if (run_.knownUp || run_.knownDown) {
            told_.needs(run_.knownUp, run_.unusable, "Known invert up");
            told_.needs(run_.knownDown, run_.unusable, "Known invert down");
            if (run_.slope)
                told_.tell(
                    Severity::Check, Standing::InputUnread,
                    {"Slope is not read: the inverts are known", "Slope no se lee: las cotas se conocen"});
        } else {
            told_.needs(run_.slope, run_.unusable, "Slope");
        }
        if (!run_.existing) {
            told_.needs(run_.surfaceUp, run_.unusable, "Surface up");
            told_.needs(run_.surfaceDown, run_.unusable, "Surface down");
        }
        if (lines_.outlet(row_) && !run_.fixedDown && !run_.knownDown)
            told_.needs(run_.outletLevel, run_.unusable, "Outlet level",
                        {"no row goes on from here", "ninguna fila sigue de aquí"});
    }

    // No pipe goes into a trench that is narrower; its rock and soil would be counted too small.
    void trench() {
        if (run_.existing || !run_.trenchWidth || !run_.pipe) return;
        const Length pipe = run_.pipe->outside.value_or(run_.pipe->bore);
        if (!isUnder(run_.trenchWidth->si(), pipe.si())) return;
        const Compared widths =
            comparedText({run_.trenchWidth->si(), Unit::Inches}, {pipe.si(), Unit::Inches}, job_.units);
        told_.tell(Severity::No, Standing::InputUnusable,
                   Text::same("Trench width ") + widths.measured +
                       Text{": narrower than the pipe, ", ": más angosto que el tubo, "} + widths.allowed);
    }

    // A number that hangs on another row, or on an inlet. What its own cells lack has been told.
    void waits() {
        if (lines_.blank(row_) || lines_.fault(row_)) return;
        const auto because = [&](const Text& what, const Fault& fault) {
            const Text why = faultText(lines_, fault, row_, job_.firstRunRow);
            told_.tell(Severity::NotJudged, Standing::InputWaits,
                       what.empty() ? why : what + Text::same(": ") + why);
        };
        if (is_.fault.kind == Fault::Kind::Waiting) return because({}, is_.fault);
        if (!run_.length || !run_.pipe || !(run_.slope || run_.known())) return;
        if (is_.invertFault.kind == Fault::Kind::Waiting) because({"no invert", "sin cota"}, is_.invertFault);
        if (!is_.flow) because({"no flow", "sin caudal"}, is_.flowFault);
        if (is_.flow && is_.invertUp && !is_.water)
            because({"no water level", "sin nivel del agua"}, is_.waterFault);
    }

    // Pipe is laid within a tolerance, and sharp fittings take some of the fall.
    void fallInHand() {
        if (!is_.spareFall) return;
        const Length spare = std::max(*is_.spareFall, Length());
        if (sharpFitting())
            told_.atLeastAbout(Severity::Check, "slope.spare", spare,
                               {"fall in hand at the sharp turn of " + run_.from,
                                "desnivel de reserva en el giro brusco de " + run_.from});
        const Length off = job_.rules.length("aslaid.tolerance");
        const Slope may = Slope::fraction((*is_.spareFall - off) / *run_.length +
                                          job_.rules.slope(leastSlopeRule(*run_.pipe)).fraction());
        const std::string percent = plain(may.percent(), 2) + "%";
        told_.atLeastAbout(Severity::Caution, "aslaid.tolerance", spare,
                           {"fall in hand", "desnivel de reserva"},
                           {" of as-laid tolerance: as laid the slope may become " + percent,
                            " de tolerancia al tender: ya tendido puede quedar en " + percent});
    }
    bool sharpFitting() const {
        if (is_.upper == Network::none || lines_.upstream(row_).empty()) return false;
        const std::optional<Angle> turn = job_.nodes[is_.upper].turns();
        return turn && isOver(turn->degrees(), job_.rules.number("bend.sharp"));
    }

    void outside() {
        if (run_.pipe && !run_.pipe->outside)
            told_.tell(
                Severity::NotJudged, Standing::RunBareBore,
                {"cover and cut: a bare bore has no outside; name a stock pipe",
                 "cobertura y corte: un diámetro interior no tiene exterior; nombre un tubo comercial"});
    }

    void liesThere() {
        told_.tell(
            Severity::Caution, Standing::RunExisting,
            {"existing pipe: neither cover nor state is judged; look into it before it is relied on",
             "tubo existente: no se juzgan cobertura ni estado; revíselo por dentro antes de confiar en él"});
    }

    // Perforated pipe leaks: no roof water near the house.
    void perforated() {
        rules_.perforated();
        if (!run_.pipe || !run_.pipe->perforated || !carriesRoof()) return;
        std::optional<Length> house;
        for (const std::size_t node : {is_.upper, is_.lower})
            if (node != Network::none && job_.nodes[node].fromHouse &&
                (!house || *job_.nodes[node].fromHouse < *house))
                house = job_.nodes[node].fromHouse;
        // Between its ends it may come nearer.
        if (row_ < job_.drawn.runs.size())
            if (const std::optional<Length>& near = job_.drawn.runs[row_].near.building;
                near && (!house || *near < *house))
                house = near;
        if (!house)
            return told_.tell(Severity::NotJudged, "perforated.foundation.min",
                              {"perforated pipe with roof water: From house is missing on Nodes",
                               "tubo perforado con agua de techo: falta From house en Nodes"});
        told_.atLeast(
            Severity::No, "perforated.foundation.min", house->si(),
            {"perforated pipe with roof water from the house", "tubo perforado con agua de techo a la casa"});
    }
    void singleWall() {
        if (run_.pipe && run_.pipe->system == "CORRUGATED")
            told_.tell(
                Severity::Caution, Standing::RunCorrugated,
                {"corrugated pipe: a snake tears it, roots find its joints, and sags hold water",
                 "tubo corrugado: la guía lo rompe, las raíces hallan sus juntas y las panzas guardan agua"});
    }
    bool carriesRoof() const {
        for (const JobInlet& inlet : job_.inlets) {
            if (inlet.blank || !inlet.roof.area || inlet.roof.area->si() <= 0) continue;
            const std::size_t node = lines_.node(inlet.node);
            std::size_t row = node == Network::none ? Network::none : lines_.leaving(node);
            for (std::size_t steps = 0; row != Network::none && steps <= lines_.rows(); ++steps) {
                if (row == row_) return true;
                row = lines_.downstream(row);
            }
        }
        return false;
    }

    // An approval that nobody can look up is none.
    void approval() {
        if (nameKey(run_.approval).empty() || saysWhoAndWhen(run_.approval)) return;
        told_.tell(Severity::Check, Standing::ApprovalSigned,
                   {"Approval does not say who and when: it is not counted",
                    "Approval no dice quién ni cuándo: no se cuenta"});
    }

    // The next smaller stock size of its make, where that passes every rule of this run too.
    void smaller() {
        if (run_.existing || run_.known() || !run_.pipe || run_.pipe->system.empty() || !is_.flow ||
            !is_.slope || !is_.water || is_.water->fullShare > 0)
            return;
        const Pipe* next = nextSmaller(*run_.pipe);
        if (next == nullptr || isUnder(Length::inches(next->nominal).si(), job_.rules.si("size.least")))
            return;
        for (const std::size_t above : lines_.upstream(row_))
            if (!job_.runs[above].pipe || job_.runs[above].pipe->bore > next->bore) return;
        RunNumbers numbers = numbers_;
        numbers.roughness = run_.roughness > 0 ? run_.roughness : next->roughness;
        std::vector<Finding> found;
        RowFindings told(job_, Part::Runs, row_, found);
        RunRules book(numbers, next, job_.rules, job_.units, told);
        book.slope();
        book.share();
        book.velocity();
        book.cover();
        book.wheels();
        if (verdict(found)) return;
        told_.tell(Severity::Saving, "size.least", Length::inches(next->nominal).si(),
                   {next->name + " passes every rule of this run too",
                    next->name + " también cumple todas las reglas de este tramo"});
    }

    // It comes in at or above the run that goes on.
    void join() {
        const std::size_t next = lines_.wayOn(row_);
        if (next == Network::none || !is_.invertDown || !solved_.runs[next].invertUp) return;
        const Length short_ = *solved_.runs[next].invertUp - *is_.invertDown;
        if (short_ <= Length::feet(0.0005)) return;
        const Text much = amountText({short_.si(), Unit::Feet}, job_.units);
        told_.tell(Severity::No, Standing::RunJoinLower,
                   Text{"comes in ", "entra "} + much +
                       Text{" lower than the run that leaves " + run_.to,
                            " más bajo que el tramo que sale de " + run_.to});
    }

    // A cable reaches less far through small pipe. Told on the run in which the limit is passed, not again on each
    // run below it.
    void cleanouts() {
        if (!run_.length || !run_.pipe || is_.fault.blocks()) return;
        if (!is_.since)
            return told_.tell(Severity::NotJudged, Standing::InputWaits,
                              {"way to the last cleanout: a turn upstream is not known",
                               "camino al último registro: no se conoce un giro arriba"});
        if (!tooFar(row_)) return;
        const bool startsHere = is_.since->length <= *run_.length;
        const auto above = lines_.upstream(row_);
        if (!startsHere && std::any_of(above.begin(), above.end(), [&](std::size_t r) { return tooFar(r); }))
            return;
        const char* rule = cleanoutSpacingKey(*run_.pipe);
        const Apart said = apart(inFeet(is_.since->length), inFeet(job_.rules.length(rule)), 0);
        const std::string unit = metric() ? " m" : " ft";
        told_.tell(Severity::Check, rule, is_.since->length.si(),
                   Text{said.value + unit + " of pipe since ", said.value + unit + " de tubo desde "} +
                       (is_.since->fromHead ? Text{"the head of the line, which has no cleanout",
                                                   "el inicio de la línea, que no tiene registro"}
                                            : Text{"the last cleanout", "el último registro"}) +
                       Text{", rule asks one every " + said.limit + unit,
                            ", la regla pide uno cada " + said.limit + unit});
    }
    bool tooFar(std::size_t row) const {
        const auto& since = solved_.runs[row].since;
        const auto& pipe = job_.runs[row].pipe;
        return since && pipe && isOver(since->length.si(), job_.rules.length(cleanoutSpacingKey(*pipe)).si());
    }

    void turns() {
        if (!is_.since) return;
        const double most = job_.rules.number("cleanout.turn"), turned = is_.since->turned.degrees();
        const double here =
            is_.upper == Network::none ? 0 : job_.nodes[is_.upper].turn.value_or(Angle()).degrees();
        if (!isOver(turned, most) || isOver(turned - here, most)) return;
        const Apart said = apart(turned, most, 0);
        told_.tell(
            Severity::Check, "cleanout.turn", turned,
            {"turns " + said.value + " degrees since the last cleanout, rule allows " + said.limit,
             "gira " + said.value + " grados desde el último registro, la regla admite " + said.limit});
    }

    // Between two shots the ground counts as straight: a bank or a step hides in a steep or sudden fall. Common
    // practice, no source: 4 ft within 20 ft, or 4 % over more than 25 ft.
    void bank() {
        if (!is_.groundUp || !is_.groundDown || !run_.length) return;
        Length at, ground = *is_.groundUp;
        for (const GroundPoint& point : is_.between) {
            if (bankBetween(ground, point.ground, point.at - at)) return;
            at = point.at, ground = point.ground;
        }
        bankBetween(ground, *is_.groundDown, *run_.length - at);
    }
    bool bankBetween(Length up, Length down, Length apart) {
        const double fall = std::fabs(inFeet(up - down)), along = inFeet(apart);
        const bool sudden = isOver(fall, metric() ? 1.2 : 4) && along < (metric() ? 6 : 20);
        const bool steep = isOver(fall, 0.04 * along) && along > (metric() ? 7.5 : 25);
        if (!sudden && !steep) return false;
        const Text much = amountText({std::fabs((up - down).si()), Unit::Feet}, job_.units, 1);
        told_.tell(Severity::Check, Standing::GroundBreak,
                   Text{"the ground falls ", "el terreno baja "} + much +
                       Text{" between two shots: shoot the break", " entre dos lecturas: lea el quiebre"});
        return true;
    }

    bool metric() const { return job_.units == UnitSystem::Metric; }
    double inFeet(Length length) const { return metric() ? length.metres() : length.feet(); }

    const Job& job_;
    const SolvedJob& solved_;
    const Network& lines_;
    std::size_t row_;
    const Run& run_;
    const SolvedRun& is_;
    std::vector<Finding>& findings_;
    RowFindings told_;
    RunNumbers numbers_;
    RunRules rules_;
};

}  // namespace

void judgeRuns(const Job& job, const SolvedJob& solved, std::vector<Finding>& findings) {
    for (std::size_t row = 0; row < job.runs.size(); ++row)
        if (!job.runs[row].blank) Judge(job, solved, row, findings).judge();
}

std::vector<Finding> judgeRun(const RunFacts& facts, const Ruleset& rules, UnitSystem units) {
    requirePositive(facts.length, "length");
    requireNotNegative(facts.flow, "flow");
    requirePositive(facts.roughness, "roughness");
    RunNumbers run{.length = facts.length,
                   .slope = facts.slope,
                   .flow = facts.flow,
                   .coverUp = facts.coverUp,
                   .coverDown = facts.coverDown,
                   .surfaceUp = facts.surfaceUp,
                   .surfaceDown = facts.surfaceDown,
                   .roughness = facts.roughness};
    // An end in daylight asks no cover, but that of the ground a few feet from it, straight between the ends.
    const Length exempt = rules.length("cover.daylight.within");
    const Text far = amountText({exempt.si(), Unit::Feet}, units);
    if (facts.coverUp && facts.coverDown && exempt < facts.length) {
        const auto near = [&](Length end, Length other, const Text& which) {
            run.between.push_back({end + (other - end) * (exempt / facts.length), CoverSurface::LawnEnd,
                                   far + Text{" from the ", " del extremo de "} + which});
        };
        if (facts.surfaceUp == CoverSurface::Daylight)
            near(*facts.coverUp, *facts.coverDown, {"upper end in daylight", "arriba a cielo abierto"});
        if (facts.surfaceDown == CoverSurface::Daylight)
            near(*facts.coverDown, *facts.coverUp, {"lower end in daylight", "abajo a cielo abierto"});
    }
    std::vector<Finding> findings;
    RowFindings told(rules, units, Part::Runs, Finding::whole, findings);
    RunRules book(run, &facts.pipe, rules, units, told);
    book.slope();
    book.share();
    book.velocity();
    book.cover();
    book.wheels();
    book.cut();
    book.length();
    return findings;
}

std::vector<Text> runReasons(const RunFacts& facts, const Ruleset& rules, UnitSystem units) {
    std::vector<Text> reasons;
    for (Finding& finding : judgeRun(facts, rules, units)) reasons.push_back(std::move(finding.says));
    return reasons;
}

Text checkRun(const RunFacts& facts, const Ruleset& rules, UnitSystem units) {
    Text said;
    for (const Text& reason : runReasons(facts, rules, units))
        said += (said.empty() ? Text() : Text::same("; ")) + reason;
    return said.empty() ? Text::same("OK") : said;
}

}  // namespace trenchbook
