#include "job/lot_net.h"

#include <map>
#include <optional>
#include <unordered_map>

#include "trenchbook/core/error.h"
#include "trenchbook/core/tape.h"

namespace trenchbook {
namespace {

constexpr std::size_t none = LotNet::none;

class Maker {
  public:
    Maker(const Job& job, DrawnLot& drawn) : job_(job), drawn_(drawn), lines_(job.runs) {}

    LotNet make() {
        points();
        buildings();
        ties();
        tapes();
        runs();
        turns();
        return std::move(made_);
    }

  private:
    // The point of a name; a new one where the name is.
    std::size_t named(const std::string& name) {
        const std::string key = nameKey(name);
        if (key.empty()) return none;
        const auto [found, fresh] = byName_.emplace(key, made_.names.size());
        if (fresh) {
            made_.names.push_back(name);
            made_.net.points.emplace_back();
        }
        return found->second;
    }
    std::size_t known(const std::string& name) const {
        const auto found = byName_.find(nameKey(name));
        return found == byName_.end() ? none : found->second;
    }

    void points() {
        for (const LotPoint& row : job_.lotPoints) {
            const std::size_t at = row.blank ? none : named(row.name);
            made_.ofRow.push_back(at);
            if (at == none || !row.east || !row.north || made_.net.points[at].fixed) continue;
            made_.net.points[at].at = PlanPoint{*row.east, *row.north};
            made_.net.points[at].fixed = true;
        }
        for (const Node& node : job_.nodes) made_.ofNode.push_back(node.blank ? none : named(node.name));
    }

    // Their corners alone: a tape does not go through a house.
    void buildings() {
        std::map<std::string, std::vector<std::size_t>> corners;
        for (std::size_t row = 0; row < job_.lotPoints.size(); ++row)
            if (made_.ofRow[row] != none && job_.lotPoints[row].what == LotThing::Building)
                corners[nameKey(job_.lotPoints[row].object)].push_back(made_.ofRow[row]);
        for (auto& [name, all] : corners)
            if (all.size() > 2) made_.net.buildings.push_back(std::move(all));
    }

    void ties() {
        drawn_.pointTies.resize(job_.lotPoints.size());
        for (std::size_t row = 0; row < job_.lotPoints.size(); ++row) {
            const LotPoint& point = job_.lotPoints[row];
            std::vector<std::size_t> to;
            for (std::size_t i = 0; i < point.ties.size(); ++i)
                to.push_back(tie(made_.ofRow[row], point.ties[i], drawn_.pointTies[row][i],
                                 {LotNet::Source::Kind::PointTie, row, i}));
            side(made_.ofRow[row], point.side, to);
        }
        drawn_.nodeTies.resize(job_.nodes.size());
        for (std::size_t row = 0; row < job_.nodes.size(); ++row) {
            const std::string* const typed[] = {&job_.nodes[row].tie1, &job_.nodes[row].tie2};
            std::vector<std::size_t> to;
            for (std::size_t i = 0; i < 2; ++i)
                to.push_back(tie(made_.ofNode[row], *typed[i], drawn_.nodeTies[row][i],
                                 {LotNet::Source::Kind::NodeTie, row, i}));
            nodeTies_.emplace(made_.ofNode[row], to);
        }
        // A node's row on Layout may tell the side of its ties on Nodes.
        for (std::size_t row = 0; row < job_.lotPoints.size(); ++row) {
            const auto found = nodeTies_.find(made_.ofRow[row]);
            if (found != nodeTies_.end()) side(made_.ofRow[row], job_.lotPoints[row].side, found->second);
        }
    }
    void side(std::size_t point, Hand hand, const std::vector<std::size_t>& to) {
        if (point == none || hand == Hand::NotSaid || made_.net.points[point].side) return;
        if (to.size() < 2 || to[0] == none || to[1] == none || to[0] == to[1]) return;
        made_.net.points[point].side = PlanSide{to[0], to[1], hand == Hand::Left};
    }

    // The point that a tie leads to; none where it is not used.
    std::size_t tie(std::size_t from, const std::string& typed, DrawnTape& drawn, LotNet::Source source) {
        if (from == none || trimmed(typed).empty()) return none;
        const std::string words = trimmed(typed);
        // The longest known name that it begins with; behind it the distance.
        std::size_t to = none, length = 0;
        for (std::size_t end = words.find(' '); end != std::string::npos; end = words.find(' ', end + 1)) {
            const std::size_t found = known(words.substr(0, end));
            if (found != none) to = found, length = end;
        }
        if (to == none) {
            drawn.trouble = {"no point of Layout or Nodes begins \"" + words + "\"",
                             "ningún punto de Layout o Nodes empieza \"" + words + "\""};
            return none;
        }
        try {
            const Length far =
                readTape(words.substr(length + 1),
                         job_.units == UnitSystem::Metric ? BareNumber::Metres : BareNumber::Feet);
            return add({.from = to, .to = from, .length = far, .error = error(), .sight = true}, drawn,
                       source)
                       ? to
                       : none;
        } catch (const Error&) {
            drawn.trouble = {
                "\"" + words + "\": a point and a distance, such as " + made_.names[to] + " 31.5",
                "\"" + words + "\": un punto y una distancia, como " + made_.names[to] + " 31.5"};
            return none;
        }
    }

    bool add(const PlanTape& tape, DrawnTape& drawn, LotNet::Source source) {
        const std::size_t end = tape.wallEnd.value_or(tape.from);
        if (tape.from == tape.to || end == tape.to || (tape.wallEnd && end == tape.from)) {
            drawn.trouble = {"it goes from a point to itself", "va de un punto a sí mismo"};
            return false;
        }
        if (!tape.wallEnd && !(tape.length > Length{})) {
            drawn.trouble = {"it must be above 0", "debe ser mayor que 0"};
            return false;
        }
        drawn.typed = tape.length;
        made_.net.tapes.push_back(tape);
        made_.sources.push_back(source);
        return true;
    }
    Length error() const { return job_.rules.length("tape.error"); }

    void tapes() {
        drawn_.tapes.resize(job_.lotTapes.size());
        for (std::size_t row = 0; row < job_.lotTapes.size(); ++row) {
            const LotTape& typed = job_.lotTapes[row];
            DrawnTape& drawn = drawn_.tapes[row];
            if (typed.blank) continue;
            PlanTape tape{.from = known(typed.from), .to = known(typed.to), .error = error(), .sight = true};
            const bool wall = !trimmed(typed.wallEnd).empty();
            if (wall) tape.wallEnd = known(typed.wallEnd);
            for (const std::string* name : {&typed.from, &typed.to, &typed.wallEnd}) {
                if ((name == &typed.wallEnd && !wall) || known(*name) != none) continue;
                drawn.trouble = trimmed(*name).empty() ? Text{"From or To is blank", "falta From o To"}
                                                       : Text{*name + " is no point of Layout or Nodes",
                                                              *name + " no es punto de Layout ni de Nodes"};
            }
            if (!drawn.trouble.empty()) continue;
            if (!typed.length) {
                const Text why = troubleIn(typed.unusable, {"Length"});
                drawn.trouble = why.empty() ? Text{"Length is blank", "falta Length"} : why;
                continue;
            }
            tape.length = *typed.length;
            add(tape, drawn, {LotNet::Source::Kind::Tape, row, 0});
        }
    }

    void runs() {
        for (std::size_t row = 0; row < job_.runs.size(); ++row) {
            const Run& run = job_.runs[row];
            const std::size_t from = known(run.from), to = known(run.to);
            if (run.blank || !run.length || !(*run.length > Length{}) || from == none || to == none ||
                from == to)
                continue;
            DrawnTape unused;
            add({.from = from, .to = to, .length = *run.length, .error = 2.0 * error()}, unused,
                {LotNet::Source::Kind::Run, row, 0});
        }
    }

    // The line that goes on at a node: of those that come in the one with its name, or the only one.
    std::size_t before(std::size_t leaving, const std::vector<std::size_t>& entering) const {
        std::size_t same = none, count = 0;
        for (const std::size_t row : entering)
            if (nameKey(job_.runs[row].line) == nameKey(job_.runs[leaving].line)) same = row, ++count;
        if (count == 1) return same;
        return entering.size() == 1 ? entering.front() : none;
    }

    void turns() {
        made_.turnOfNode.assign(job_.nodes.size(), none);
        std::vector<std::vector<std::size_t>> entering(lines_.nodes());
        for (std::size_t row = 0; row < job_.runs.size(); ++row)
            if (!lines_.blank(row) && lines_.toNode(row) != Network::none &&
                lines_.fromNode(row) != Network::none)
                entering[lines_.toNode(row)].push_back(row);
        std::map<std::size_t, Hand> hands;
        for (std::size_t row = 0; row < job_.lotPoints.size(); ++row)
            if (made_.ofRow[row] != none) hands.emplace(made_.ofRow[row], job_.lotPoints[row].turns);
        for (std::size_t row = 0; row < job_.nodes.size(); ++row) {
            const Node& node = job_.nodes[row];
            const std::size_t at = node.blank ? Network::none : lines_.node(node.name);
            if (at == Network::none || lines_.leaving(at) == Network::none) continue;
            const std::size_t leaving = lines_.leaving(at), in = before(leaving, entering[at]);
            const std::optional<Angle> turns = node.turns();
            if (in == none || !turns || (!node.turn && node.kinds.has(NodeKind::Bend))) continue;
            PlanTurn turn{.before = known(job_.runs[in].from),
                          .at = made_.ofNode[row],
                          .after = known(job_.runs[leaving].to),
                          .turn = *turns};
            if (turn.before == none || turn.after == none || turn.before == turn.after ||
                turn.before == turn.at || turn.after == turn.at)
                continue;
            if (!node.turn) turn.error = Angle::degrees(10);
            const auto hand = hands.find(turn.at);
            if (hand != hands.end() && hand->second != Hand::NotSaid) turn.left = hand->second == Hand::Left;
            made_.turnOfNode[row] = made_.net.turns.size();
            made_.turnNode.push_back(row);
            made_.assumed.push_back(!node.turn);
            made_.net.turns.push_back(turn);
        }
    }

    const Job& job_;
    DrawnLot& drawn_;
    Network lines_;
    LotNet made_;
    std::unordered_map<std::string, std::size_t> byName_;
    std::map<std::size_t, std::vector<std::size_t>> nodeTies_;
};

}  // namespace

LotNet lotNet(const Job& job, DrawnLot& drawn) { return Maker(job, drawn).make(); }

}  // namespace trenchbook
