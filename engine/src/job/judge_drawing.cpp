// The drawing: tapes that do not agree, lines that turn otherwise than typed, and what a run passes between
// its ends.
#include <algorithm>
#include <utility>

#include "job/lot_distances.h"
#include "job/say.h"
#include "trenchbook/ground/footing.h"
#include "trenchbook/job/judge.h"

namespace trenchbook {
namespace {

void tell(const Job& job, const DrawnLot::Slip& slip, Standing rule, std::vector<Finding>& findings) {
    using On = DrawnLot::Slip::On;
    const Part part = slip.on == On::Node ? Part::Nodes : slip.on == On::Run ? Part::Runs : Part::Job;
    RowFindings told(job, part, slip.on == On::Drawing ? Finding::whole : slip.row, findings);
    told.tell(Severity::Check, rule, slip.on == On::Drawing ? Text::same("Layout: ") + slip.says : slip.says);
}

// A row of Layout or Tapes that cannot be used, told as the sheet has no verdict of its own.
template <class Rows, class Name>
void unusable(const Job& job, const Rows& rows, const char* sheet, const Name& name,
              std::vector<Finding>& findings) {
    RowFindings told(job, Part::Job, Finding::whole, findings);
    for (const auto& row : rows)
        for (const Unusable& cell : row.unusable)
            told.tell(Severity::No, Standing::InputUnusable,
                      Text::same(std::string(sheet) + ", " + name(row) + ": ") + cell.why);
}

// What lies beside a run between its nodes: judged where it is nearer than to both of them, which are judged
// by themselves.
class Beside {
  public:
    Beside(const Job& job, const SolvedJob& solved, std::size_t row, std::vector<Finding>& findings)
        : job_(job),
          run_(job.runs[row]),
          is_(solved.runs[row]),
          drawn_(job.drawn.runs[row]),
          told_(job, Part::Runs, row, findings) {}

    void judge() {
        if (run_.existing || is_.upper == Network::none || is_.lower == Network::none) return;
        tree();
        away(&LotNear::septic, "line.septic.min", {"to septic", "a la fosa séptica"});
        away(&LotNear::well, "line.well.min", {"to the well", "al pozo de agua"});
        footing();
        walk();
    }

  private:
    std::optional<Length> nearer(std::optional<Length> LotNear::*kind) const {
        const std::optional<Length>& far = drawn_.near.*kind;
        if (!far) return std::nullopt;
        for (const std::size_t node : {is_.upper, is_.lower}) {
            const std::optional<Length>& there = job_.drawn.nodesNear[node].*kind;
            if (!there || *there < *far + Length::feet(0.1)) return std::nullopt;
        }
        return far;
    }

    void away(std::optional<Length> LotNear::*kind, const char* rule, Text what) {
        if (const std::optional<Length> far = nearer(kind))
            told_.atLeast(Severity::Check, rule, far->si(), std::move(what) + byDrawing(true),
                          {": ask the health department", ": pregunte al departamento de salud"});
    }

    void tree() {
        const std::optional<Length> far = nearer(&LotNear::tree);
        if (!far || !isUnder(far->si(), job_.rules.length("tree.roots").si())) return;
        if (!run_.pipe || run_.pipe->system.empty()) return;
        const Text says = Text::same(run_.pipe->name + " ") + Text{"passes a tree at ", "pasa a "} +
                          amountText({far->si(), Unit::Feet}, job_.units) + Text{"", " de un árbol"} +
                          byDrawing(true);
        if (run_.pipe->perforated)
            told_.tell(Severity::No, "tree.roots", far->si(),
                       says + Text{": roots grow into its holes", ": las raíces entran por sus agujeros"});
        else if (run_.pipe->joint != Joint::SolventWeld)
            told_.tell(Severity::Check, "tree.roots", far->si(),
                       says + Text{": glued pipe or Schedule 40 there", ": ahí tubo pegado o cédula 40"});
    }

    // At the nearest place of the nearest wall; its footing is taken as deep as at the nearer node.
    void footing() {
        const std::optional<Length> wall = nearer(&LotNear::building);
        if (!wall || !drawn_.nearestBuilding || !is_.cutUp || !is_.cutDown || !is_.groundUp ||
            !is_.groundDown)
            return;
        const double share = *drawn_.nearestBuilding;
        const Length cut = *is_.cutUp + (*is_.cutDown - *is_.cutUp) * share;
        const Length half = job_.nodes[is_.upper].drawn.footing && job_.nodes[is_.upper].toFooting
                                ? *job_.drawn.nodesNear[is_.upper].building - *job_.nodes[is_.upper].toFooting
                                : job_.rules.length("footing.beyond.wall");
        const Length far = std::max(Length{}, *wall - half);
        if (cut <= far) return;
        const Node& near = job_.nodes[share < 0.5 ? is_.upper : is_.lower];
        const Text place = Text{"between its nodes the footing is ", "entre sus nodos la zapata queda a "} +
                           amountText({far.si(), Unit::Feet}, job_.units) +
                           Text{" away by the drawing and the trench ", " según el plano y la zanja tiene "} +
                           amountText({cut.si(), Unit::Feet}, job_.units) + Text{" deep", " de hondo"};
        if (!near.footingDepth)
            return told_.tell(Severity::NotJudged, "footing.clear.min",
                              place + Text{": Footing depth of " + near.name + " is blank",
                                           ": falta Footing depth de " + near.name});
        const Length over = footingClearance(-*near.footingDepth, -cut, far);
        if (!isUnder(over.si(), job_.rules.length("footing.clear.min").si() - 1e-6)) return;
        told_.tell(Severity::No, "footing.clear.min", over.si(),
                   place + Text{": below the line 1:1 from the footing, an engineer's word is needed",
                                ": bajo la línea 1:1 de la zapata, hace falta la palabra de un ingeniero"});
    }

    // Under a walk, or deeper than its edge is away, the trench takes what carries it.
    void walk() {
        const std::optional<Length>& far = drawn_.near.walk;
        if (!far || !is_.cutUp || !is_.cutDown) return;
        const Length edge = std::max(Length{}, *far - halfTrench(job_, run_)),
                     cut = std::max(*is_.cutUp, *is_.cutDown);
        if (!isUnder(edge.si(), cut.si())) return;
        const Text deep = amountText({cut.si(), Unit::Feet}, job_.units);
        const Text says = edge > Length{}
                              ? Text{"by the drawing a walk is ", "según el plano hay un andador a "} +
                                    amountText({edge.si(), Unit::Feet}, job_.units) +
                                    Text{" from the trench, which is ", " de la zanja, que tiene "} + deep +
                                    Text{" deep", " de hondo"}
                              : Text{"by the drawing the trench goes under a walk, ",
                                     "según el plano la zanja pasa bajo un andador, a "} +
                                    deep + Text{" deep", " de hondo"};
        told_.tell(Severity::Caution, Standing::DigUnder,
                   says + Text{": hold it or take it up (29 CFR 1926.651(i))",
                               ": sosténgalo o levántelo (29 CFR 1926.651(i))"});
    }

    const Job& job_;
    const Run& run_;
    const SolvedRun& is_;
    const DrawnRun& drawn_;
    RowFindings told_;
};

}  // namespace

void judgeDrawing(const Job& job, const SolvedJob& solved, std::vector<Finding>& findings) {
    unusable(
        job, job.lotPoints, "Layout", [](const LotPoint& row) { return row.name; }, findings);
    unusable(
        job, job.lotTapes, "Tapes", [](const LotTape& row) { return row.from + " - " + row.to; }, findings);
    for (const DrawnLot::Slip& slip : job.drawn.slips) tell(job, slip, Standing::LayoutTape, findings);
    for (const DrawnLot::Slip& slip : job.drawn.turnsOff) tell(job, slip, Standing::LayoutTurn, findings);
    for (std::size_t row = 0; row < job.drawn.runs.size(); ++row)
        if (!job.runs[row].blank) Beside(job, solved, row, findings).judge();
}

}  // namespace trenchbook
