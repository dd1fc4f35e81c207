// Outlets: how each line ends. Does what it ends in carry the water, can that water come back, does the opening let it
// out, does the line empty, does the ground hold, and is the outlet where it may be?
#include <set>

#include "job/outlet_ends.h"
#include "job/outlet_kind.h"
#include "job/say.h"
#include "job/solve_parts.h"
#include "trenchbook/core/error.h"
#include "trenchbook/job/judge.h"
#include "trenchbook/water/outlet_opening.h"
#include "trenchbook/water/swale.h"

namespace trenchbook {
namespace {

class Judge {
  public:
    Judge(const Job& job, const SolvedJob& solved, std::size_t row, std::vector<Finding>& findings)
        : job_(job),
          solved_(solved),
          row_(row),
          outlet_(job.outlets[row]),
          is_(solved.outlets[row]),
          end_(outletEnd(job, solved, outlet_.node)),
          kinds_(end_.node == nullptr ? NodeKinds{} : end_.node->kinds),
          asked_(asked(job, kinds_)),
          findings_(findings),
          told_(job, Part::Outlets, row, findings) {}

    void judge() {
        told_.unusable(outlet_.unusable);
        const bool comes = waterComes();
        place();
        if (kinds_.bubbles()) {
            if (comes) opening();
            rim();
            rimOverSwale();
            emptying();
        } else {
            overFlowLine();
            if (comes) backwater();
            if (comes) scour();
            if (kinds_.has(NodeKind::ExistingPipe)) theirPipe();
            if (kinds_.has(NodeKind::PumpBasin)) itsPump();
        }
        if (comes && swaleGiven()) swale();
    }

  private:
    // Whether water comes there at all. True when its flow is known.
    bool waterComes() {
        if (nameKey(outlet_.node).empty()) {
            if (!stands("Outlet"))
                told_.missing("Outlet", {"which node ends a line here?", "¿qué nodo termina una línea?"});
            return false;
        }
        const Text node = Text::same(outlet_.node);
        if (end_.ending.empty())
            return told_.tell(Severity::No, Standing::OutletRow,
                              Text{"no run ends at ", "ningún tramo termina en "} + node),
                   false;
        if (solved_.lines.leaving(end_.place) != Network::none)
            told_.tell(Severity::No, Standing::NodeEnd,
                       Text{"a run leaves ", "un tramo sale de "} + node +
                           Text{": the water goes on in the pipe", ": el agua sigue en el tubo"});
        if (!is_.lineFlow) {
            told_.tell(Severity::NotJudged, Standing::InputWaits,
                       Text{"no flow at ", "sin caudal en "} + node +
                           Text{": an inlet upstream is not known (see Water)",
                                ": falta una entrada aguas arriba (vea Water)"});
            return false;
        }
        if (*is_.lineFlow > Flow{}) return true;
        if (is_.flow && *is_.flow > Flow{}) return true;
        told_.tell(
            Severity::No, Standing::WaterComes,
            Text{"no water comes to ", "no llega agua a "} + node + Text{": see Water", ": vea Water"});
        return false;
    }

    // Distances that are given are judged; one that is blank is told where this kind of end asks for it.
    void place() {
        keepsAway(outlet_.lotLine, asked_.lotLine, "To lot line", "outlet.line.min",
                  Text{"outlet to the lot line", "salida al lindero"} + byDrawing(outlet_.drawn.lotLine));
        keepsAway(outlet_.walk, asked_.walk, "To walk", "outlet.walk.min",
                  Text{"outlet to the public walk", "salida a la banqueta pública"} +
                      byDrawing(outlet_.drawn.walk));
        keepsAway(
            outlet_.foundation, asked_.foundation, "To foundation", "outlet.foundation.min",
            Text{"outlet to the foundation", "salida al cimiento"} + byDrawing(outlet_.drawn.foundation));
    }
    void keepsAway(const std::optional<Length>& distance, bool asked, const char* heading, const char* rule,
                   const Text& what) {
        if (distance)
            told_.atLeast(Severity::No, rule, distance->si(), what);
        else if (asked && !stands(heading))
            blank(rule, what, heading);
    }
    void blank(const char* rule, const Text& what, const char* heading) {
        told_.tell(Severity::NotJudged, rule,
                   what + Text{std::string(" is not judged: ") + heading + " is blank",
                               std::string(" sin juzgar: falta ") + heading});
    }

    // It silts shut where it lies on the bottom, and cannot run out under it. A gutter is swept, and a curb is no higher
    // than the pipe and an inch or two: there it may lie on the bottom, as in an existing pipe.
    void overFlowLine() {
        const Text what{"outlet over the flow line", "salida sobre el fondo"};
        if (!outlet_.flowLine) {
            if (asked_.flowLine && !stands("Flow line")) blank("outlet.above.min", what, "Flow line");
        } else if (!is_.overFlowLine) {
            told_.tell(Severity::NotJudged, "outlet.above.min",
                       what + Text{" is not judged: the outlet has no level yet",
                                   " sin juzgar: la salida todavía no tiene nivel"});
        } else if (*is_.overFlowLine < -Length::feet(0.0005)) {
            told_.tell(Severity::No, "outlet.above.min", is_.overFlowLine->si(),
                       Text{"the pipe ends ", "el tubo termina "} + feet(-*is_.overFlowLine) +
                           Text{" under the flow line", " bajo el fondo"});
        } else if (!kinds_.has(NodeKind::ExistingPipe) && !kinds_.has(NodeKind::Curb)) {
            told_.atLeast(Severity::Check, "outlet.above.min", is_.overFlowLine->si(), what);
            if (!outlet_.apronStone)
                told_.atMost(Severity::Check, "outlet.above.max", is_.overFlowLine->si(), what,
                             {": stone where the water lands, or a lower outlet",
                              ": piedra donde cae el agua, o una salida más baja"});
        }
    }

    // Water that stands over the pipe's end comes back into it.
    void backwater() {
        const bool seen = kinds_.has(NodeKind::Curb) || kinds_.has(NodeKind::ExistingPipe);
        if (!is_.water && seen)
            return told_.missing("Outlet water",
                                 {"on Runs: how high does the water stand there in a storm?",
                                  "en Runs: ¿a qué altura llega ahí el agua en una tormenta?"});
        if (!is_.water || is_.overFlowLine == std::nullopt || !outlet_.flowLine) return;
        const std::optional<Length> bore = widestBore(job_, end_);
        const Length over = *is_.water - (*outlet_.flowLine + *is_.overFlowLine);
        if (!bore || over <= Length{}) return;
        const Text says = Text{"the water that it ends in stands ", "el agua en que termina queda "} +
                          feet(over) + Text{" over its invert", " sobre su cota"};
        if (!isOver(over / *bore, job_.rules.number("outlet.backwater.max")))
            return told_.tell(Severity::Caution, "outlet.backwater.max", over / *bore,
                              says + Text{": silt settles there", ": ahí se asienta el lodo"});
        if (outlet_.checkValve.value_or(false))
            return told_.tell(Severity::Caution, "outlet.backwater.max", over / *bore,
                              says + Text{": the check valve is to be cleaned each season",
                                          ": la válvula de retención se limpia cada temporada"});
        told_.tell(Severity::Check, "outlet.backwater.max", over / *bore,
                   says + Text{": a check valve, or a higher outlet",
                               ": válvula de retención, o una salida más alta"});
    }

    // Whether it carries what comes is not seen from here.
    void theirPipe() {
        if (!is_.lineFlow) return;
        told_.tell(Severity::Caution, Standing::OutletExistingPipe,
                   Text{"the existing pipe must carry ", "el tubo existente debe llevar "} +
                       flowText(*is_.lineFlow, job_.units) +
                       Text{" more: ask its owner", " más: pregunte a su dueño"});
    }

    // The end is as good as its pump.
    void itsPump() {
        const std::string key = nameKey(outlet_.node);
        for (std::size_t row = 0; row < job_.pumps.size(); ++row) {
            if (job_.pumps[row].blank || nameKey(job_.pumps[row].node) != key) continue;
            bool fails = false, open = false;
            for (const Finding& finding : findings_) {
                if (finding.part != Part::Pump || finding.row != row) continue;
                fails = fails || finding.severity == Severity::No;
                open = open || finding.severity == Severity::NotJudged;
            }
            if (fails)
                told_.tell(Severity::No, Standing::OutletPump,
                           {"the pump or its basin will not do: see Pump",
                            "la bomba o su cárcamo no sirve: vea Pump"});
            else if (open)
                told_.tell(Severity::NotJudged, Standing::OutletPump,
                           {"the pump or its basin is not judged yet: see Pump",
                            "la bomba o su cárcamo aún no se juzga: vea Pump"});
            return;
        }
        told_.tell(Severity::NotJudged, Standing::OutletRow,
                   {"the pump basin has no row on Pump", "el cárcamo no tiene fila en Pump"});
    }

    // Fast water digs a hole where it leaves the pipe, unless it falls on stone.
    void scour() {
        if (!kinds_.has(NodeKind::Bank) && !kinds_.has(NodeKind::Ditch)) {
            if (outlet_.apronStone)
                told_.tell(Severity::Check, Standing::InputUnread,
                           {"Apron stone: only on a bank or in a ditch",
                            "Apron stone: solo en un talud o una cuneta"});
            return;
        }
        if (outlet_.apronStone) return apron();
        if (is_.endVelocity)
            told_.atMost(Severity::Check, "velocity.outlet.max", is_.endVelocity->si(),
                         {"the water leaves the pipe at", "el agua sale del tubo a"},
                         {"; a stone apron, or a flatter last run",
                          "; zampeado de piedra, o un último tramo más tendido"});
    }
    void apron() {
        if (is_.apron)
            return told_.tell(Severity::Caution, Standing::OutletApron,
                              Text{"stone apron ", "zampeado de "} + feet(is_.apron->length) +
                                  Text{" long, ", " de largo, de "} + feet(is_.apron->widthAtPipe) +
                                  Text{" to ", " a "} + feet(is_.apron->widthAtEnd) +
                                  Text{" wide, ", " de ancho, "} + inches(is_.apron->thickness) +
                                  Text{" thick, over fabric", " de grueso, sobre geotextil"});
        try {
            apronAt(job_, solved_, row_, end_);
            told_.tell(Severity::NotJudged, Standing::InputWaits,
                       {"the stone apron cannot be sized yet: the pipe's end has no level",
                        "aún no se puede dimensionar el zampeado: el tubo no tiene nivel"});
        } catch (const Error& error) {
            told_.tell(Severity::No, Standing::InputUnusable,
                       Text{"stone apron: ", "zampeado: "} + sentenceOf(error));
        }
    }

    // The rim or grate that the water wells up through.
    void opening() {
        if (!told_.needs(
                outlet_.openShare, outlet_.unusable, "Open share",
                {"clear opening of the grate, 1 without one", "abertura libre de la rejilla, 1 sin rejilla"}))
            return;
        if (is_.head) {
            if (*outlet_.openShare < 1)
                told_.tell(Severity::Caution, "grate.blocked", job_.rules.number("grate.blocked"),
                           Text{"water wells up ", "el agua brota "} + feet(*is_.head) +
                               Text{" over the rim with leaves in the grate, ",
                                    " sobre el borde con hojas en la rejilla, "} +
                               feet(*is_.headClean) + Text{" when it is clean", " con la rejilla limpia"});
            return;
        }
        const std::optional<Length> across = outlet_.across ? outlet_.across : widestBore(job_, end_);
        if (!across) return;
        try {
            outletHead(roundGrate(*across, *outlet_.openShare, job_.rules.number("grate.blocked")),
                       *is_.lineFlow);
        } catch (const Error& error) {
            told_.tell(Severity::No, Standing::InputUnusable, Text{"rim: ", "borde: "} + sentenceOf(error));
        }
    }

    // Flush with ground that leads the water off.
    void rim() {
        if (end_.node != nullptr && end_.node->rim() && end_.node->ground) {
            const Length proud = *end_.node->rim() - *end_.node->ground;
            told_.atLeastAbout(Severity::Check, "outlet.rim.min", proud,
                               {"rim over the ground around it", "borde sobre el terreno que lo rodea"});
            if (isOver(proud.si(), job_.rules.length("outlet.rim.max").si()))
                told_.tell(Severity::Caution, "outlet.rim.max", proud.si(),
                           Text{"the rim stands ", "el borde sobresale "} + feet(proud) +
                               Text{" over the ground: mower and feet", ": podadora y pies"});
        }
        if (outlet_.groundFalls)
            told_.atLeast(Severity::Check, "ground.away.min", outlet_.groundFalls->si(),
                          {"the ground beyond the rim falls", "el terreno tras el borde baja"});
        else if (asked_.groundFalls && !stands("Ground falls"))
            blank("ground.away.min", {"ground beyond the rim", "terreno tras el borde"}, "Ground falls");
    }

    // Where the rim's water runs on: not uphill, and not back.
    void rimOverSwale() {
        if (is_.overFlowLine && *is_.overFlowLine < -Length::feet(0.0005))
            return told_.tell(Severity::No, "outlet.above.min", is_.overFlowLine->si(),
                              Text{"the rim lies ", "el borde queda "} + feet(-*is_.overFlowLine) +
                                  Text{" under the flow line that its water should run to",
                                       " bajo el fondo al que debe correr su agua"});
        if (const std::optional<Length> over = swaleOverRim(outlet_, end_, is_))
            told_.tell(Severity::Check, Standing::OutletUnderWater,
                       Text{"the swale stands ", "la cuneta queda "} + feet(*over) +
                           Text{" over the rim: it runs into the line, and its silt with it",
                                " sobre el borde: entra en la línea, con su lodo"});
    }

    // What stays behind the rim: a pit or a weep hole lets it out.
    void emptying() {
        if (nameKey(job_.pit.node) == nameKey(outlet_.node) && kinds_.has(NodeKind::Tee)) {
            if (is_.stays && is_.empties)
                told_.atMost(Severity::Check, "outlet.empty.max", is_.empties->si(),
                             gallons(*is_.stays) + Text{" stay in the line until the pit is empty, after",
                                                        " quedan en la línea hasta que el pozo se vacía, a"});
            return;
        }
        if (!told_.needs(outlet_.weepHole, outlet_.unusable, "Weep hole",
                         {"what lets out the water that stays in the line? 0: nothing",
                          "¿por dónde sale el agua que queda en la línea? 0: por nada"}))
            return;
        if (!is_.stays) return;
        if (*outlet_.weepHole <= Length{})
            return told_.tell(
                Severity::Check, "outlet.empty.max",
                gallons(*is_.stays) +
                    Text{" stay in the line after each rain: mosquitoes, and frost may burst it; a weep "
                         "hole into stone, or a pit",
                         " quedan en la línea tras cada lluvia: mosquitos, y la helada puede romperla; un "
                         "agujero de goteo a piedra, o un pozo"});
        if (is_.empties)
            told_.atMost(Severity::Check, "outlet.empty.max", is_.empties->si(),
                         gallons(*is_.stays) +
                             Text{" stay in the line and weep away in", " quedan en la línea y gotean en"},
                         {"; a larger hole", "; un agujero mayor"});
    }

    bool swaleGiven() const {
        return outlet_.bottom || outlet_.sideSlope || outlet_.slope || outlet_.roughness || outlet_.deep ||
               (kinds_.has(NodeKind::Ditch) && job_.runs[end_.ending.front()].outletWater == std::nullopt);
    }

    void swale() {
        if (!is_.flow) return;  // Other flow cannot be used: told
        bool known = told_.needs(outlet_.bottom, outlet_.unusable, "Bottom");
        known = told_.needs(outlet_.sideSlope, outlet_.unusable, "Side slope") && known;
        known = told_.needs(outlet_.slope, outlet_.unusable, "Slope") && known;
        known = told_.needs(outlet_.roughness, outlet_.unusable, "Roughness") && known;
        if (told_.needs(outlet_.deep, outlet_.unusable, "Deep",
                        {"how deep is the swale?", "¿qué tan honda es?"}) &&
            !(*outlet_.deep > Length{}))
            told_.tell(Severity::No, Standing::InputUnusable,
                       {"Deep must be above 0", "Deep debe ser mayor que 0"});
        if (!known) return;
        if (is_.velocity) return carries();
        try {
            const Swale swale{.bottom = *outlet_.bottom, .sideSlope = *outlet_.sideSlope};
            swaleVelocity(swale, *is_.flow, *outlet_.slope, *outlet_.roughness);
        } catch (const Error& error) {
            told_.tell(Severity::No, Standing::InputUnusable, sentenceOf(error));
        }
    }

    void carries() {
        if (is_.spare && *is_.spare < Length{})
            told_.tell(Severity::No, "freeboard.min", is_.spare->si(),
                       Text{"runs over: the water is ", "se desborda: el agua tiene "} + feet(*is_.depth) +
                           Text{" deep, the swale ", " de hondo, la cuneta "} + feet(*outlet_.deep));
        else if (is_.spare)
            told_.atLeast(Severity::Check, "freeboard.min", is_.spare->si(), {"freeboard", "bordo libre"});
        told_.atMost(Severity::No, "velocity.outlet.max", is_.velocity->si(),
                     {"too fast for grass:", "muy rápida para el pasto:"},
                     {"; stone, or a flatter and wider swale", "; piedra, o una cuneta más ancha y tendida"});
        if (isUnder(is_.depth->si(), is_.critical->si()))
            told_.tell(Severity::Check, Standing::SwaleShoots,
                       Text{"the water shoots: shallower than its critical depth of ",
                            "el agua corre en régimen rápido: menos honda que su tirante crítico de "} +
                           feet(*is_.critical));
        if (outlet_.foundation && outlet_.slope &&
            !isOver(outlet_.foundation->si(), job_.rules.length("ground.away.within").si()))
            told_.atLeast(
                Severity::Check, "ground.away.min", outlet_.slope->si(),
                {"the swale lies near the house and falls", "la cuneta está junto a la casa y baja"});
    }

    Text inches(Length length) const { return amountText({length.si(), Unit::Inches}, job_.units, 0); }
    Text feet(Length length) const { return amountText({length.si(), Unit::Feet}, job_.units); }
    Text gallons(Volume volume) const {
        return job_.units == UnitSystem::Metric
                   ? Text{plain(1000 * volume.si(), 0) + " liters", plain(1000 * volume.si(), 0) + " litros"}
                   : Text{plain(volume.gallons(), 0) + " gallons", plain(volume.gallons(), 0) + " galones"};
    }
    bool stands(const char* heading) const { return RowFindings::stands(outlet_.unusable, heading); }

    const Job& job_;
    const SolvedJob& solved_;
    std::size_t row_;
    const Outlet& outlet_;
    const SolvedOutlet& is_;
    OutletEnd end_;
    NodeKinds kinds_;
    OutletAsked asked_;
    const std::vector<Finding>& findings_;  // what was told before
    RowFindings told_;
};

// Each end of a line says what it is, and stands on Outlets.
void ends(const Job& job, const SolvedJob& solved, std::vector<Finding>& findings) {
    std::set<std::string> listed;
    for (const Outlet& outlet : job.outlets)
        if (!outlet.blank) listed.insert(nameKey(outlet.node));
    for (std::size_t row = 0; row < job.nodes.size(); ++row) {
        const Node& node = job.nodes[row];
        const std::size_t at = node.blank ? Network::none : solved.lines.node(node.name);
        if (at == Network::none || solved.nodes[row].entering == 0) continue;
        RowFindings told(job, Part::Nodes, row, findings);
        if (solved.nodes[row].leaving > 0) {
            if (node.kinds.endsLine())
                told.tell(
                    Severity::No, Standing::NodeEnd,
                    {"the line ends here, and a run leaves it", "la línea termina aquí, y un tramo sale"});
            continue;
        }
        if (!node.kinds.empty() && (!node.kinds.endsLine() || node.kinds.has(NodeKind::Outlet)))
            told.tell(
                Severity::NotJudged, Standing::NodeEnd,
                {"how does the line end here? bank, ditch, curb, tee, riser, pop-up, existing pipe or pump basin",
                 "¿cómo termina aquí la línea? talud, cuneta, bordillo, te del pozo, tubo vertical, tapa "
                 "emergente, tubo existente o cárcamo de bombeo"});
        if (!listed.contains(nameKey(node.name)))
            told.tell(Severity::NotJudged, Standing::OutletRow,
                      {"the line ends here: it has no row on Outlets",
                       "la línea termina aquí: no tiene fila en Outlets"});
    }
}

}  // namespace

void judgeOutlets(const Job& job, const SolvedJob& solved, std::vector<Finding>& findings) {
    ends(job, solved, findings);
    for (std::size_t row = 0; row < job.outlets.size(); ++row)
        if (!job.outlets[row].blank) Judge(job, solved, row, findings).judge();
}

}  // namespace trenchbook
