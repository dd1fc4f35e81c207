// Pump: does it lift what comes, how often does it start, is its discharge right, what when the power is out, and does
// the basin stay in the ground?
#include <algorithm>

#include "job/outlet_ends.h"
#include "job/say.h"
#include "job/solve_parts.h"
#include "trenchbook/core/error.h"
#include "trenchbook/ground/flotation.h"
#include "trenchbook/job/judge.h"

namespace trenchbook {
namespace {

class Judge {
  public:
    Judge(const Job& job, const SolvedJob& solved, std::size_t row, std::vector<Finding>& findings)
        : job_(job),
          row_(row),
          pump_(job.pumps[row]),
          is_(solved.pumps[row]),
          end_(outletEnd(job, solved, pump_.node)),
          told_(job, Part::Pump, row, findings) {}

    void judge() {
        told_.unusable(pump_.unusable);
        if (!isBasin()) return;
        levels();
        keepsUp();
        cycles();
        pressure();
        discharge();
        lineRunsOut();
        powerOut();
        floats();
    }

  private:
    bool isBasin() {
        if (nameKey(pump_.node).empty()) {
            if (!stands("Basin"))
                told_.missing("Basin", {"which node is the pump basin?", "¿qué nodo es el cárcamo?"});
            return false;
        }
        const Text node = Text::same(pump_.node);
        for (std::size_t row = 0; row < row_; ++row)
            if (!job_.pumps[row].blank && nameKey(job_.pumps[row].node) == nameKey(pump_.node))
                return told_.tell(Severity::No, Standing::NameOnce,
                                  node + Text{" stands in an earlier row too", " ya está en otra fila"}),
                       false;
        if (end_.node == nullptr || !end_.node->kinds.has(NodeKind::PumpBasin))
            return told_.tell(Severity::No, Standing::NameKnown,
                              node + Text{" is no pump basin on Nodes", " no es cárcamo de bombeo en Nodes"}),
                   false;
        if (end_.ending.empty())
            return told_.tell(Severity::No, Standing::OutletRow,
                              Text{"no run ends at ", "ningún tramo termina en "} + node),
                   false;
        return true;
    }

    // Floor, stop, start and lid, one over the other.
    void levels() {
        needs(pump_.inside, "Inside diameter");
        needs(pump_.floor, "Floor");
        needs(pump_.on, "Pump on");
        needs(pump_.off, "Pump off");
        if (pump_.on && pump_.off && !(*pump_.on > *pump_.off))
            told_.tell(Severity::No, Standing::PumpOrder,
                       {"Pump on must lie over Pump off", "Pump on debe quedar sobre Pump off"});
        if (pump_.off && pump_.floor)
            told_.atLeastAbout(*pump_.off < *pump_.floor ? Severity::No : Severity::Check, "pump.off.min",
                               *pump_.off - *pump_.floor,
                               {"the pump stops over the floor of the basin by",
                                "la bomba para sobre el fondo del cárcamo a"});
        if (!end_.node->rim())
            told_.tell(
                Severity::NotJudged, Standing::InputWaits,
                {"the basin's lid has no level: see Nodes", "la tapa del cárcamo no tiene nivel: vea Nodes"});
        else if (pump_.on)
            told_.atLeastAbout(*end_.node->rim() > *pump_.on ? Severity::Check : Severity::No,
                               "freeboard.min", *end_.node->rim() - *pump_.on,
                               {"the lid over Pump on", "la tapa sobre Pump on"});
    }

    // What comes must go out.
    void keepsUp() {
        bool known = needs(pump_.pipe, "Discharge pipe");
        known = needs(pump_.length, "Discharge length") && known;
        known = needs(pump_.elbows, "Elbows", {"how many? 0: none", "¿cuántos? 0: ninguno"}) && known;
        known = needs(pump_.end, "Discharge level") && known;
        known = needs(pump_.checkValve, "Check valve") && known;
        if (pump_.curve.empty() && !stands("Pump curve"))
            told_.missing("Pump curve", {"from the maker's sheet", "de la hoja del fabricante"});
        if (!is_.inflow)
            told_.tell(Severity::NotJudged, Standing::InputWaits,
                       Text{"no flow at ", "sin caudal en "} + Text::same(pump_.node) +
                           Text{": an inlet upstream is not known (see Water)",
                                ": falta una entrada aguas arriba (vea Water)"});
        else if (!(*is_.inflow > Flow{}))
            told_.tell(Severity::No, Standing::WaterComes,
                       Text{"no water comes to ", "no llega agua a "} + Text::same(pump_.node) +
                           Text{": see Water", ": vea Water"});
        if (!known || !pump_.off || pump_.curve.empty()) return;
        if (!is_.gives) return refused();
        if (!is_.inflow) return;
        const double share = *is_.inflow / *is_.gives;
        if (isOver(share, job_.rules.number("pump.share.max")))
            told_.tell(Severity::No, "pump.share.max", share,
                       Text{"the pump gives ", "la bomba da "} + flowText(*is_.gives, job_.units) +
                           Text{" at ", " a "} + feet(*is_.head) + Text{", ", ", llegan "} +
                           flowText(*is_.inflow, job_.units) +
                           Text{" come: a larger pump or discharge pipe, or a second pump that helps",
                                ": una bomba o un tubo de descarga mayor, o una segunda bomba que ayude"});
    }
    // Why there is no duty point.
    void refused() {
        try {
            dutyPoint(dischargeOf(pump_).value(), pump_.curve);
        } catch (const Error& error) {
            told_.tell(error.kind() == Error::Kind::OutsideValidity ? Severity::NotJudged : Severity::No,
                       Standing::InputUnusable, Text{"pump: ", "bomba: "} + sentenceOf(error));
        }
    }

    void cycles() {
        if (is_.starts)
            told_.atMost(Severity::Check, "pump.starts.max", *is_.starts,
                         {"starts an hour, at the worst inflow:", "arranques por hora, con el peor caudal:"},
                         {"; floats farther apart, or a wider basin",
                          "; flotadores más separados, o un cárcamo más ancho"});
        if (is_.runs)
            told_.atLeast(Severity::Check, "pump.run.min", is_.runs->si(),
                          Text{"the pump empties the ", "la bomba vacía los "} + gallons(*is_.between) +
                              Text{" between its floats in", " entre sus flotadores en"});
    }

    // Common practice, no source; the standards of drain pipe are for flow without pressure.
    void pressure() {
        if (!pump_.pipe) return;
        if (pump_.pipe->perforated)
            told_.tell(Severity::No, Standing::PumpPressure,
                       {"perforated pipe is no discharge: it holds no pressure",
                        "un tubo perforado no es descarga: no aguanta presión"});
        else if (pump_.pipe->outside && pump_.pipe->system != "SCH40")
            told_.tell(Severity::Check, Standing::PumpPressure,
                       {"the discharge is under pressure, and " + pump_.pipe->system +
                            " is drain pipe: glued Schedule 40",
                        "la descarga va a presión, y " + pump_.pipe->system +
                            " es tubo de drenaje: cédula 40 pegada"});
    }

    // Silt settles in slow water, fast water hammers; what runs back is pumped again.
    void discharge() {
        if (is_.lift && *is_.lift < Length{})
            told_.tell(
                Severity::Check, Standing::PumpSiphon,
                {"the discharge ends under Pump off: it runs on as a siphon, and a pipe with fall would do",
                 "la descarga termina bajo Pump off: sigue como sifón, y bastaría un tubo con pendiente"});
        if (is_.speed) {
            told_.atLeast(Severity::Check, "pump.speed.min", is_.speed->si(),
                          {"speed in the discharge pipe", "velocidad en el tubo de descarga"},
                          {"; a smaller pipe", "; un tubo menor"});
            told_.atMost(Severity::Check, "pump.speed.max", is_.speed->si(),
                         {"speed in the discharge pipe", "velocidad en el tubo de descarga"},
                         {"; a larger pipe", "; un tubo mayor"});
            if (isOver(is_.speed->si(), job_.rules.velocity("velocity.outlet.max").si()))
                told_.tell(Severity::Caution, "velocity.outlet.max", is_.speed->si(),
                           {"the discharge ends on a splash block or stone, not on bare ground or grass",
                            "la descarga termina en losa o piedra, no en tierra ni pasto"});
        }
        if (pump_.checkValve.value_or(true) || !is_.runsBack || !is_.between) return;
        const double share = *is_.runsBack / *is_.between;
        if (isOver(share, job_.rules.number("pump.back.max")))
            told_.tell(isUnder(share, 1) ? Severity::Check : Severity::No, "pump.back.max", share,
                       Text{"without a check valve ", "sin válvula de retención "} + gallons(*is_.runsBack) +
                           Text{" run back at each stop, of ", " regresan en cada paro, de "} +
                           gallons(*is_.between) + Text{" between the floats", " entre los flotadores"});
    }

    // A line whose end stands under the pump's start holds water between storms and silts up.
    void lineRunsOut() {
        if (!pump_.on) return;
        if (!is_.underInvert)
            return told_.tell(Severity::NotJudged, "pump.below.min",
                              {"Pump on is not compared with the line: its end has no level yet",
                               "Pump on no se compara con la línea: su final todavía no tiene nivel"});
        told_.atLeastAbout(Severity::Check, "pump.below.min", *is_.underInvert,
                           {"Pump on under the line's invert", "Pump on bajo la cota de la línea"},
                           {"; or the line stands in water", "; si no, la línea queda con agua"});
    }

    void powerOut() {
        if (pump_.powerOut == PowerOut::NotSaid) {
            if (!stands("Power out"))
                told_.missing("Power out", {"what is there when the power fails? nothing, alarm, battery…",
                                            "¿qué hay cuando falla la luz? nada, alarma, batería…"});
            return;
        }
        if (!is_.lowestGrate)
            return told_.tell(
                Severity::NotJudged, Standing::InputWaits,
                {"how long the basin holds out without power is not judged: an opening over it, or a "
                 "run, has no level yet",
                 "no se juzga cuánto aguanta el cárcamo sin luz: una abertura o un tramo todavía no "
                 "tiene nivel"});
        if (!is_.outage) return;
        const Text at = Text::same(is_.grateAt);
        if (!(*is_.outage > Duration{}))
            return told_.tell(Severity::No, Standing::PumpOrder,
                              Text{"water stands at ", "el agua llega a "} + at +
                                  Text{" before the pump starts", " antes de que arranque la bomba"});
        const Text when = Text{"without the pump water stands at ", "sin la bomba el agua llega a "} + at +
                          Text{" after ", " a los "} + minutes(*is_.outage) +
                          Text{" of this storm", " de esta tormenta"};
        switch (pump_.powerOut) {
            case PowerOut::Nothing:
                return told_.tell(Severity::Check, Standing::PumpPowerOut,
                                  when + Text{": an alarm, a battery pump or an overflow",
                                              ": alarma, bomba de batería o rebose"});
            case PowerOut::Alarm:
                return told_.tell(
                    Severity::Caution, Standing::PumpPowerOut,
                    when + Text{": the alarm calls, it does not pump", ": la alarma avisa, no bombea"});
            case PowerOut::SecondPump:
                return told_.tell(Severity::Caution, Standing::PumpPowerOut,
                                  when + Text{": the second pump stops with the same power",
                                              ": la segunda bomba para con la misma luz"});
            case PowerOut::Battery:
            case PowerOut::Generator:
                return told_.tell(Severity::Caution, Standing::PumpPowerOut,
                                  when + Text{": try the battery or generator each season",
                                              ": pruebe la batería o el generador cada temporada"});
            default:
                return told_.tell(Severity::Caution, Standing::PumpPowerOut,
                                  when + Text{", unless its overflow lies lower and takes it",
                                              ", salvo que su rebose quede más bajo y baste"});
        }
    }

    void floats() {
        if (!needs(pump_.groundwater, "Groundwater",
                   {"the empty basin may float; where it stays dry, a level under Floor",
                    "el cárcamo vacío puede flotar; donde queda seco, un nivel bajo Floor"}) ||
            !pump_.floor || !(*pump_.groundwater > *pump_.floor))
            return;
        bool known = needs(pump_.outside, "Outside diameter");
        known = needs(pump_.weight, "Empty weight") && known;
        if (!known || !is_.held) return;
        if (pump_.inside && *pump_.outside < *pump_.inside)
            return told_.tell(Severity::No, Standing::InputUnusable,
                              {"Outside diameter is less than Inside diameter",
                               "Outside diameter es menor que Inside diameter"});
        const double asked = job_.rules.number("pump.float.min");
        if (!isUnder(*is_.held, asked)) return;
        told_.tell(*is_.held < 1 ? Severity::No : Severity::Check, "pump.float.min", *is_.held,
                   Text{"the empty basin is held down with ", "al cárcamo vacío lo sujetan "} +
                       Text::same(plain(*is_.held, 2)) +
                       Text{" times what lifts it, at least ", " veces lo que lo levanta, al menos "} +
                       Text::same(plain(asked, 2)) +
                       Text{": cast concrete to it (FLOAT.CONCRETE)",
                            ": cuele concreto unido a él (FLOAT.CONCRETE)"});
    }

    template <class Value>
    bool needs(const std::optional<Value>& value, const char* heading, Text why = {}) {
        return told_.needs(value, pump_.unusable, heading, std::move(why));
    }
    bool stands(const char* heading) const { return RowFindings::stands(pump_.unusable, heading); }
    Text feet(Length length) const { return amountText({length.si(), Unit::Feet}, job_.units); }
    Text minutes(Duration time) const { return amountText({time.si(), Unit::Minutes}, job_.units, 1); }
    Text gallons(Volume volume) const { return amountText({volume.si(), Unit::Gallons}, job_.units, 1); }

    const Job& job_;
    std::size_t row_;
    const Pump& pump_;
    const SolvedPump& is_;
    OutletEnd end_;
    RowFindings told_;
};

}  // namespace

void judgePumps(const Job& job, const SolvedJob& solved, std::vector<Finding>& findings) {
    for (std::size_t row = 0; row < job.pumps.size(); ++row)
        if (!job.pumps[row].blank) Judge(job, solved, row, findings).judge();
}

}  // namespace trenchbook
