// Nodes: what stands near the trench, a footing, a tree, a septic system, a well.
#include <utility>
#include <vector>

#include "job/run_rules.h"
#include "job/say.h"
#include "trenchbook/ground/footing.h"
#include "trenchbook/job/judge.h"

namespace trenchbook {
namespace {

// By row of Nodes: the runs that meet there and are laid on this job.
std::vector<std::vector<std::size_t>> laidAt(const Job& job, const SolvedJob& solved) {
    std::vector<std::vector<std::size_t>> rows(job.nodes.size());
    for (std::size_t row = 0; row < solved.runs.size(); ++row) {
        if (job.runs[row].blank || job.runs[row].existing) continue;
        for (const std::size_t node : {solved.runs[row].upper, solved.runs[row].lower})
            if (node != Network::none) rows[node].push_back(row);
    }
    return rows;
}

class Judge {
  public:
    Judge(const Job& job, const SolvedJob& solved, std::size_t row, std::vector<std::size_t> runs,
          std::vector<Finding>& findings)
        : job_(job),
          solved_(solved),
          row_(row),
          node_(job.nodes[row]),
          runs_(std::move(runs)),
          told_(job, Part::Nodes, row, findings) {}

    void judge() {
        if (runs_.empty()) return;
        footing();
        tree();
        away(job_.facts.septic, node_.toSeptic, "To septic", "line.septic.min",
             Text{"to septic", "a la fosa séptica"} + byDrawing(node_.drawn.septic));
        away(job_.facts.well, node_.toWell, "To well", "line.well.min",
             Text{"to the well", "al pozo de agua"} + byDrawing(node_.drawn.well));
    }

  private:
    std::optional<Length> trenchBottom() const {
        std::optional<Length> lowest;
        for (const std::size_t row : runs_) {
            const SolvedRun& run = solved_.runs[row];
            const std::optional<Length>& invert = run.upper == row_ ? run.invertUp : run.invertDown;
            const std::optional<Pipe>& pipe = job_.runs[row].pipe;
            if (!invert || !pipe || !pipe->outside) return std::nullopt;
            const Length bottom = *invert - wallOf(*pipe) - job_.rules.length("bedding.depth");
            if (!lowest || bottom < *lowest) lowest = bottom;
        }
        return lowest;
    }

    // Below the line that falls 1:1 from the footing's bottom outer edge a trench takes what carries it.
    void footing() {
        if (!node_.toFooting && !node_.footingDepth) return;
        if (node_.drawn.footing && !node_.footingDepth &&
            !RowFindings::stands(node_.unusable, "Footing depth"))
            return footingNotKnown();
        const bool distance = told_.needs(node_.toFooting, node_.unusable, "To footing");
        const bool depth = told_.needs(node_.footingDepth, node_.unusable, "Footing depth");
        if (!distance || !depth) return;
        const std::optional<Length> bottom = trenchBottom();
        if (!node_.ground || !bottom)
            return told_.tell(Severity::NotJudged, Standing::InputWaits,
                              {"the trench beside the footing has no level yet (see Runs)",
                               "la zanja junto a la zapata todavía no tiene nivel (vea Runs)"});
        const Length over = footingClearance(*node_.ground - *node_.footingDepth, *bottom, *node_.toFooting);
        const Length least = job_.rules.length("footing.clear.min");
        if (over.si() >= least.si() - 1e-6) return;
        const Compared said = comparedText({over.si(), Unit::Feet}, {least.si(), Unit::Feet}, job_.units);
        const Text says =
            (over < Length()
                 ? Text{"trench bottom ", "fondo de zanja "} +
                       amountText({-over.si(), Unit::Feet}, job_.units) +
                       Text{" below the line 1:1 from the footing", " bajo la línea 1:1 de la zapata"}
                 : Text{"trench bottom over the line 1:1 from the footing ",
                        "fondo de zanja sobre la línea 1:1 de la zapata "} +
                       said.measured + Text{", at least ", ", al menos "} + said.allowed);
        if (saysWhoAndWhen(node_.engineer))
            told_.tell(Severity::Caution, "footing.clear.min", over.si(),
                       says + Text{"; engineer: " + node_.engineer, "; ingeniero: " + node_.engineer});
        else
            told_.tell(Severity::No, "footing.clear.min", over.si(),
                       says + Text{": an engineer's word is needed, who and when",
                                   ": hace falta la palabra de un ingeniero, quién y cuándo"});
    }

    // By the drawing a wall stands there, and nobody has told its footing. However shallow that is, a trench that is not
    // deeper than it is far away stays clear of it.
    void footingNotKnown() {
        const std::optional<Length> bottom = trenchBottom();
        if (!node_.ground || !bottom || *node_.ground - *bottom <= *node_.toFooting) return;
        told_.tell(Severity::NotJudged, "footing.clear.min",
                   Text{"the footing is ", "la zapata queda a "} +
                       amountText({node_.toFooting->si(), Unit::Feet}, job_.units) +
                       Text{" away by the drawing and the trench ", " según el plano y la zanja tiene "} +
                       amountText({(*node_.ground - *bottom).si(), Unit::Feet}, job_.units) +
                       Text{" deep: Footing depth is blank", " de hondo: falta Footing depth"});
    }

    void tree() {
        const Length roots = job_.rules.length("tree.roots");
        if (!node_.toTree || !isUnder(node_.toTree->si(), roots.si())) return;
        for (const std::size_t row : runs_) {
            const std::optional<Pipe>& pipe = job_.runs[row].pipe;
            if (!pipe || pipe->system.empty()) continue;
            const Text far = amountText({node_.toTree->si(), Unit::Feet}, job_.units) +
                             Text{" from a tree", " de un árbol"} + byDrawing(node_.drawn.tree);
            if (pipe->perforated)
                told_.tell(Severity::No, "tree.roots", node_.toTree->si(),
                           Text::same(pipe->name + " ") + Text{"lies ", "queda a "} + far +
                               Text{": roots grow into its holes", ": las raíces entran por sus agujeros"});
            else if (pipe->joint != Joint::SolventWeld)
                told_.tell(Severity::Check, "tree.roots", node_.toTree->si(),
                           Text::same(pipe->name + " ") + Text{"lies ", "queda a "} + far +
                               Text{": glued pipe or Schedule 40 there", ": ahí tubo pegado o cédula 40"});
        }
    }

    void away(Answer there, std::optional<Length> distance, const char* heading, const char* rule,
              Text what) {
        if (there == Answer::Yes)
            told_.needs(distance, node_.unusable, heading, {"Job says there is one", "Job dice que hay"});
        if (!distance) return;
        told_.atLeast(Severity::Check, rule, distance->si(), std::move(what),
                      {": ask the health department", ": pregunte al departamento de salud"});
    }

    const Job& job_;
    const SolvedJob& solved_;
    std::size_t row_;
    const Node& node_;
    std::vector<std::size_t> runs_;
    RowFindings told_;
};

}  // namespace

void judgeNear(const Job& job, const SolvedJob& solved, std::vector<Finding>& findings) {
    const auto asked = [](Answer answer) { return answer == Answer::Yes; };
    std::vector<std::vector<std::size_t>> runs = laidAt(job, solved);
    for (std::size_t row = 0; row < job.nodes.size(); ++row) {
        const Node& node = job.nodes[row];
        if (node.blank) continue;
        const bool any = node.toFooting || node.footingDepth || node.toTree || node.toSeptic || node.toWell;
        if (any || asked(job.facts.septic) || asked(job.facts.well))
            Judge(job, solved, row, std::move(runs[row]), findings).judge();
    }
}

}  // namespace trenchbook
