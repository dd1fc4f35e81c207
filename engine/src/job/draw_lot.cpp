#include "trenchbook/job/draw_lot.h"

#include <algorithm>
#include <cmath>

#include "job/lot_distances.h"
#include "job/lot_net.h"
#include "job/say.h"
#include "layout/plan_geometry.h"

namespace trenchbook {
namespace {

constexpr std::size_t none = LotNet::none;

class Drawer {
  public:
    Drawer(Job& job, LotNet lot) : job_(job), drawn_(job.drawn), lot_(std::move(lot)) {}

    void draw() {
        drawn_.plan = placePoints(lot_.net);
        for (std::size_t i = 0; i < lot_.sources.size(); ++i) record(i);
        for (const PlanSlip& slip : drawn_.plan.slips) tell(slip);
        for (const std::size_t point : lot_.ofRow) drawn_.points.push_back(place(point));
        for (const std::size_t point : lot_.ofNode) drawn_.nodes.push_back(place(point));
        turns();
        measureLot(job_, lot_);
        for (std::size_t i = 0; i < lot_.sources.size(); ++i)
            if (lot_.sources[i].kind == LotNet::Source::Kind::Run)
                drawn_.runs[lot_.sources[i].row].residual = drawn_.plan.residuals[i];
        fillDistances(job_);
    }

  private:
    DrawnTape* cell(std::size_t tape) {
        const LotNet::Source& source = lot_.sources[tape];
        switch (source.kind) {
            case LotNet::Source::Kind::PointTie:
                return &drawn_.pointTies[source.row][source.tie];
            case LotNet::Source::Kind::NodeTie:
                return &drawn_.nodeTies[source.row][source.tie];
            case LotNet::Source::Kind::Tape:
                return &drawn_.tapes[source.row];
            case LotNet::Source::Kind::Run:
                return nullptr;
        }
        return nullptr;
    }
    void record(std::size_t tape) {
        if (DrawnTape* told = cell(tape)) told->residual = drawn_.plan.residuals[tape];
    }

    Text feet(Length length) const { return amountText({length.si(), Unit::Feet}, job_.units); }
    // To a tenth of a foot, 3 cm: what a tape is good for.
    Text about(Length length) const {
        const bool metric = job_.units == UnitSystem::Metric;
        return Text::same(metric ? plain(length.metres(), 2) + " m" : plain(length.feet(), 1) + " ft");
    }

    Text label(std::size_t tape) const {
        const PlanTape& is = lot_.net.tapes[tape];
        const std::string &from = lot_.names[is.from], &to = lot_.names[is.to];
        if (is.wallEnd)
            return {"offset of " + to + " from the wall " + from + " to " + lot_.names[*is.wallEnd],
                    "distancia de " + to + " al muro de " + from + " a " + lot_.names[*is.wallEnd]};
        switch (lot_.sources[tape].kind) {
            case LotNet::Source::Kind::Run:
                return {"length from " + from + " to " + to, "longitud de " + from + " a " + to};
            case LotNet::Source::Kind::Tape:
                return {"tape from " + from + " to " + to, "cinta de " + from + " a " + to};
            default:
                return {"tie of " + to + " to " + from, "amarre de " + to + " a " + from};
        }
    }

    void tell(const PlanSlip& slip) {
        const Length off = slip.off < Length{} ? -slip.off : slip.off;
        Text says = label(slip.tape);
        if (slip.among.empty()) {
            const Length drawn = lot_.net.tapes[slip.tape].length - slip.off;
            says += Text{" is ", " falla por "} + about(off) + Text{" off: ", ": "} + about(drawn) +
                    Text{" by all the others", " según todas las demás"};
        } else {
            says +=
                Text{" does not agree with the others by ", " no coincide con las demás por "} + about(off);
            Text others;
            std::size_t listed = 0;
            for (const std::size_t tape : slip.among) {
                if (tape == slip.tape || listed == 3) continue;
                others += (listed++ == 0 ? Text{": it or the ", ": esa o "} : Text{", or the ", ", o "}) +
                          label(tape);
            }
            says += others + Text{"; tape one more", "; mida una más"};
        }
        for (const std::size_t tape : slip.among.empty() ? std::vector{slip.tape} : slip.among)
            if (DrawnTape* told = cell(tape)) told->slip = true;
        const LotNet::Source& source = lot_.sources[slip.tape];
        DrawnLot::Slip told{.off = slip.off, .says = std::move(says)};
        if (source.kind == LotNet::Source::Kind::NodeTie) told.on = DrawnLot::Slip::On::Node;
        if (source.kind == LotNet::Source::Kind::Run) told.on = DrawnLot::Slip::On::Run;
        told.row = source.row;
        drawn_.slips.push_back(std::move(told));
    }

    // The typed point that tells two places apart best.
    std::size_t decider(const PlanPoint& a, const PlanPoint& b) const {
        std::size_t best = none;
        Length most = Length::feet(2);
        for (std::size_t i = 0; i < lot_.net.points.size(); ++i) {
            if (!lot_.net.points[i].fixed) continue;
            const PlanPoint& from = *lot_.net.points[i].at;
            const Length apart = Length::fromSi(std::fabs((distance(from, a) - distance(from, b)).si()));
            if (apart > most) most = apart, best = i;
        }
        return best;
    }

    DrawnPlace place(std::size_t point) const {
        if (point == none) return {};
        DrawnPlace told{.place = drawn_.plan.points[point], .tapes = drawn_.plan.points[point].known};
        told.says = says(point, told);
        return told;
    }
    Text says(std::size_t point, const DrawnPlace& told) const {
        const PlacedPoint& is = told.place;
        const Text tapes = counted(is.known, {"tape", "cinta"}, {"tapes", "cintas"});
        const Text good = Text::same(", ± ") + about(is.uncertain);
        switch (is.by) {
            case PlacedBy::Hand:
                return {"typed", "escrito"};
            case PlacedBy::Tapes:
                if (is.uncertain > weakPlace)
                    return tapes + good +
                           Text{": they meet at a flat angle; tape it from another side",
                                ": se cortan en ángulo muy abierto; mida desde otro lado"};
                return tapes + good;
            case PlacedBy::Turn: {
                bool straight = false;
                for (std::size_t i = 0; i < lot_.net.turns.size(); ++i)
                    straight = straight || (lot_.assumed[i] && (lot_.net.turns[i].after == point ||
                                                                lot_.net.turns[i].before == point));
                return (straight ? Text{"a length, straight on: not measured",
                                        "una longitud, en línea recta: sin medir"}
                                 : Text{"a length and a turn", "una longitud y una vuelta"}) +
                       good + Text{"; tape it to a corner", "; mida a una esquina"};
            }
            case PlacedBy::TwoPlaces:
                return twoPlaces(point, is);
            case PlacedBy::Nothing:
                break;
        }
        std::size_t fixed = 0;
        for (const PlanStation& station : lot_.net.points) fixed += station.fixed;
        if (fixed < 2)
            return {"no place: type X and Y of two points on Layout",
                    "sin lugar: escriba X y Y de dos puntos en Layout"};
        if (is.known == 0) return {"no place: tape it to two corners", "sin lugar: mida a dos esquinas"};
        return Text{"no place: ", "sin lugar: "} + tapes +
               Text{"; tape it to another corner", "; mida a otra esquina"};
    }
    Text twoPlaces(std::size_t point, const PlacedPoint& is) const {
        if (!is.asked || !is.other)
            return {"waits for a point that may lie in two places",
                    "espera a un punto que puede estar en dos lugares"};
        const auto at = [&](const PlanPoint& place) {
            return feet(place.east) + Text::same(", ") + feet(place.north);
        };
        Text says = Text{"two places, ", "dos lugares, "} + at(*is.at) + Text{" or ", " o "} + at(*is.other) +
                    Text{": say its Side on Layout", ": diga su Side en Layout"};
        const std::size_t corner = decider(*is.at, *is.other);
        if (corner != none && corner != point)
            says += Text{", or tape it to " + lot_.names[corner], ", o mida a " + lot_.names[corner]};
        return says;
    }

    // How the lines turn as drawn; only between places that tapes gave.
    void turns() {
        drawn_.turns.resize(job_.nodes.size());
        for (std::size_t row = 0; row < job_.nodes.size(); ++row) {
            if (lot_.turnOfNode[row] == none) continue;
            const PlanTurn& turn = lot_.net.turns[lot_.turnOfNode[row]];
            bool known = true;
            for (const std::size_t point : {turn.before, turn.at, turn.after})
                known = known && drawn_.plan.points[point].placed() &&
                        drawn_.plan.points[point].by != PlacedBy::Turn;
            if (!known) continue;
            const auto at = [&](std::size_t point) { return layout::vec(*drawn_.plan.points[point].at); };
            const double is = layout::deflection(at(turn.before), at(turn.at), at(turn.after));
            drawn_.turns[row] = Angle::degrees(is);
            // What the errors of the three places do to it.
            double squares = 0;
            const auto side = [&](std::size_t end) {
                const double far = layout::size(at(end) - at(turn.at));
                squares += std::pow(drawn_.plan.points[end].uncertain.si() / far, 2) +
                           std::pow(drawn_.plan.points[turn.at].uncertain.si() / far, 2);
            };
            side(turn.before), side(turn.after);
            const double error = std::sqrt(squares) / layout::perDegree;
            const double off = std::fabs(std::fabs(is) - turn.turn.degrees());
            if (off > std::max(10.0, 3 * error)) tellTurn(row, is);
        }
    }
    void tellTurn(std::size_t row, double is) {
        const Node& node = job_.nodes[row];
        const Text drawn = Text{"the line turns ", "la línea da vuelta de "} +
                           Text::same(plain(std::fabs(is), 0) + "°") + Text{" as drawn", " según el plano"};
        drawn_.turnsOff.push_back(
            {.on = DrawnLot::Slip::On::Node,
             .row = row,
             .says = drawn + (node.turn ? Text{", Turn says ", ", Turn dice "} +
                                              Text::same(plain(node.turn->degrees(), 1) + "°")
                                        : Text{", Turn is blank: is a bend missing?",
                                               ", falta Turn: ¿falta un codo?"})});
    }

    Job& job_;
    DrawnLot& drawn_;
    LotNet lot_;
};

}  // namespace

void drawLot(Job& job) {
    job.drawn = {};
    const auto blank = [](const auto& row) { return row.blank; };
    if (std::all_of(job.lotPoints.begin(), job.lotPoints.end(), blank) &&
        std::all_of(job.lotTapes.begin(), job.lotTapes.end(), blank))
        return;
    LotNet lot = lotNet(job, job.drawn);
    Drawer(job, std::move(lot)).draw();
}

}  // namespace trenchbook
