// Water: does every inlet bring what it says, to a node that has a way out, through an opening that takes it?
#include <unordered_map>
#include <unordered_set>

#include "job/say.h"
#include "job/solve_parts.h"
#include "trenchbook/core/error.h"
#include "trenchbook/job/judge.h"
#include "trenchbook/water/runoff.h"

namespace trenchbook {
namespace {

struct Surface {
    const char *area, *coefficient;  // headings
    const Drained& drained;
};

Text entryName(EntersBy entry) {
    switch (entry) {
        case EntersBy::Downspout:
            return {"downspout", "bajante"};
        case EntersBy::Grate:
            return {"grate", "rejilla"};
        default:
            return {"trench drain", "canal con rejilla"};
    }
}

// What names mean on the other tables, looked up once.
struct Names {
    std::unordered_set<std::string> left;  // nodes that a run leaves
    std::unordered_set<std::string> used;  // nodes at either end of a run
    std::unordered_map<std::string, const Node*> nodes;
    std::unordered_map<std::string, std::vector<std::size_t>> inlets;

    explicit Names(const Job& job) {
        for (const Run& run : job.runs) {
            if (run.blank) continue;
            left.insert(nameKey(run.from));
            used.insert({nameKey(run.from), nameKey(run.to)});
        }
        for (const Node& node : job.nodes)
            if (!node.blank) nodes.emplace(nameKey(node.name), &node);
        for (std::size_t row = 0; row < job.inlets.size(); ++row)
            if (const std::string key = nameKey(job.inlets[row].name); !key.empty())
                inlets[key].push_back(row);
    }
};

class Judge {
  public:
    Judge(const Job& job, const SolvedJob& solved, std::vector<Finding>& findings)
        : job_(job), solved_(solved), findings_(findings), names_(job) {}

    void judge(std::size_t row) {
        const JobInlet& inlet = job_.inlets[row];
        RowFindings told(job_, Part::Water, row, findings_);
        told.unusable(inlet.unusable);
        whereItGoes(inlet, told);
        standsTwice(row, told);
        whatItBrings(inlet, told);
        entry(inlet, solved_.inlets[row], told);
        outletPipe(inlet, solved_.inlets[row], told);
    }

  private:
    void whereItGoes(const JobInlet& inlet, RowFindings& told) const {
        const std::string node = nameKey(inlet.node);
        if (node.empty()) {
            if (!RowFindings::stands(inlet.unusable, "Node"))
                told.missing("Node", {"where does the water go?", "¿a dónde va el agua?"});
            return;
        }
        const auto known = names_.nodes.find(node);
        if (known == names_.nodes.end() && !names_.used.contains(node))
            return told.tell(
                Severity::No, Standing::NameKnown,
                {"no node " + inlet.node + " on Nodes", "no hay nodo " + inlet.node + " en Nodes"});
        if (!names_.left.contains(node))
            told.tell(Severity::No, Standing::InletWayOn,
                      {"no run leaves node " + inlet.node + "; its water goes nowhere",
                       "ningún tramo sale del nodo " + inlet.node + "; su agua no va a ningún lado"});
        if (known == names_.nodes.end()) return;
        const NodeKinds kinds = known->second->kinds;
        if (!kinds.empty() && !kinds.takesWater())
            told.tell(Severity::Check, Standing::NodeWater,
                      Text{"node " + inlet.node + " is a ", "el nodo " + inlet.node + " es "} + kinds.text() +
                          Text{": no water enters there", ": ahí no entra agua"});
    }

    // Water that is counted twice.
    void standsTwice(std::size_t row, RowFindings& told) const {
        const JobInlet& inlet = job_.inlets[row];
        const auto all = names_.inlets.find(nameKey(inlet.name));
        if (all == names_.inlets.end() || all->second.size() < 2) return;
        for (const std::size_t other : all->second) {
            if (nameKey(job_.inlets[other].node) == nameKey(inlet.node)) continue;
            return told.tell(Severity::No, Standing::InletTwice,
                             {inlet.name + " also brings its water to node " + job_.inlets[other].node +
                                  ": it is counted twice",
                              inlet.name + " también lleva su agua al nodo " + job_.inlets[other].node +
                                  ": se cuenta dos veces"});
        }
        told.tell(Severity::Check, Standing::InletTwice,
                  {"the name " + inlet.name + " stands " + std::to_string(all->second.size()) +
                       " times: is its water counted twice?",
                   "el nombre " + inlet.name + " aparece " + std::to_string(all->second.size()) +
                       " veces: ¿se cuenta dos veces su agua?"});
    }

    void whatItBrings(const JobInlet& inlet, RowFindings& told) const {
        if (!job_.facts.rain)
            told.tell(Severity::NotJudged, Standing::InputMissing,
                      {"the rain on Job is missing", "falta la lluvia en Job"});
        const Surface surfaces[] = {{"Roof area", "Roof C", inlet.roof},
                                    {"Paved area", "Paved C", inlet.paved},
                                    {"Yard area", "Yard C", inlet.yard}};
        bool any = false;
        for (const Surface& surface : surfaces) {
            any = any || surface.drained.area || RowFindings::stands(inlet.unusable, surface.area);
            drains(inlet, surface, told);
        }
        if (!any)
            told.tell(Severity::NotJudged, Standing::InputMissing,
                      {"no area drains here", "ninguna superficie drena aquí"});
        if (job_.peak && !inlet.time && !job_.facts.duration)
            told.needs(inlet.time, inlet.unusable, "Minutes");
    }

    // Area and coefficient are blamed each for its own.
    static void drains(const JobInlet& inlet, const Surface& surface, RowFindings& told) {
        const Drained& drained = surface.drained;
        if (!drained.area) return;
        if (!(*drained.area > Area{}))
            told.tell(Severity::No, Standing::InputUnusable,
                      {std::string(surface.area) + " must be above 0",
                       std::string(surface.area) + " debe ser mayor que 0"});
        if (!told.needs(drained.coefficient, inlet.unusable, surface.coefficient)) return;
        try {
            requireCoefficient(*drained.coefficient, surface.coefficient);
            if (&drained == &inlet.roof)
                told.atLeast(Severity::Check, "runoff.roof.min", *drained.coefficient,
                             {"the share that runs off the roof (Roof C) is",
                              "la parte que escurre del techo (Roof C) es"});
        } catch (const Error& error) {
            told.tell(Severity::No, Standing::InputUnusable, sentenceOf(error));
        }
    }

    void entry(const JobInlet& inlet, const SolvedInlet& solved, RowFindings& told) const {
        if (inlet.entersBy == EntersBy::NotSaid) {
            if (!inlet.outletPipe && !RowFindings::stands(inlet.unusable, "Enters by"))
                told.tell(Severity::Caution, Standing::InletEntry,
                          {"not compared with what it takes: Enters by is blank",
                           "sin comparar con lo que recibe: falta por dónde entra"});
            return;
        }
        const Text name = entryName(inlet.entersBy);
        if (inlet.size.empty()) {
            if (!RowFindings::stands(inlet.unusable, "Size"))
                told.tell(Severity::NotJudged, Standing::InputMissing,
                          Text{"Size of the ", "falta Size de "} + name + Text{" is missing", ""});
            return;
        }
        if (solved.inletTakes) return compare(name, *solved.inletTakes, solved.flow, told);
        refused(name, inlet, told, [&] { entryTakes(inlet, job_.rules, job_.units); });
    }

    void outletPipe(const JobInlet& inlet, const SolvedInlet& solved, RowFindings& told) const {
        if (!inlet.outletPipe) return;
        headInTheBox(inlet, told);
        const Text name{"outlet pipe", "tubo de salida"};
        if (solved.outletTakes) return compare(name, *solved.outletTakes, solved.flow, told);
        refused(name, inlet, told, [&] { outletPipeTakes(inlet); });
    }

    // Water does not stand higher in a box than the grate through which it comes.
    void headInTheBox(const JobInlet& inlet, RowFindings& told) const {
        const auto node = names_.nodes.find(nameKey(inlet.node));
        const std::size_t at = solved_.lines.node(inlet.node);
        const std::size_t run = at == Network::none ? Network::none : solved_.lines.leaving(at);
        if (!inlet.outletHead || node == names_.nodes.end() || run == Network::none) return;
        const std::optional<Length> rim = node->second->rim(), invert = solved_.runs[run].invertUp;
        if (!node->second->kinds.stillsWater() || !rim || !invert) return;
        const Length most = *rim - *invert;
        constexpr Length readings = Length::feet(0.005);  // levels are read to a hundredth of a foot
        if (*inlet.outletHead <= most + readings) return;
        const auto inches = [&](Length length) {
            return amountText({length.si(), Unit::Inches}, job_.units, 1);
        };
        told.tell(
            Severity::Check, Standing::InletHead,
            Text::same("Outlet head ") + inches(*inlet.outletHead) +
                Text{": the grate lies only ", ": la rejilla queda solo a "} + inches(most) +
                Text{" over the pipe that leaves " + inlet.node, " sobre el tubo que sale de " + inlet.node});
    }

    // Why there is no number. A cell that is missing is no refusal, and one that was told already is not told again.
    template <class Call>
    static void refused(const Text& name, const JobInlet& inlet, RowFindings& told, Call call) {
        try {
            call();
        } catch (const Error& error) {
            if (RowFindings::stands(inlet.unusable, error.argument())) return;
            const Text why = sentenceOf(error);
            const bool missing = why.en.ends_with("is missing");
            told.tell(missing ? Severity::NotJudged : Severity::No,
                      missing ? Standing::InputMissing : Standing::InputUnusable,
                      name + Text::same(": ") + why);
        }
    }

    // More than all of it is refused; more than the share that the rules allow is looked at.
    void compare(const Text& name, Flow takes, std::optional<Flow> arrives, RowFindings& told) const {
        if (!arrives || !(takes > Flow{})) return;
        const double share = *arrives / takes, most = job_.rules.number("share.max");
        if (!isOver(share, most)) return;
        told.tell(isOver(share, 1) ? Severity::No : Severity::Check, "share.max", share,
                  name + Text{" takes ", " recibe "} + flowText(takes, job_.units) + Text::same(", ") +
                      flowText(*arrives, job_.units) + Text{" arrive", " llegan"});
    }

    const Job& job_;
    const SolvedJob& solved_;
    std::vector<Finding>& findings_;
    Names names_;
};

}  // namespace

void judgeInlets(const Job& job, const SolvedJob& solved, std::vector<Finding>& findings) {
    Judge judge(job, solved, findings);
    for (std::size_t row = 0; row < job.inlets.size(); ++row)
        if (!job.inlets[row].blank) judge.judge(row);
}

}  // namespace trenchbook
