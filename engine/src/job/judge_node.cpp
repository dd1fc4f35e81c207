// Nodes: is it named once, known, level, joined; does water come out; can a cable follow the turn?
#include <unordered_map>
#include <unordered_set>

#include "job/run_rules.h"
#include "job/say.h"
#include "job/solve_runs.h"
#include "trenchbook/core/error.h"
#include "trenchbook/job/judge.h"
#include "trenchbook/takeoff/bends.h"

namespace trenchbook {
namespace {

// What a cable has behind it where it comes to a node, over all runs that enter.
struct Behind {
    Length length;
    std::size_t sharpTurns = 0;
    bool known = true;
};

std::vector<Behind> behindNodes(const SolvedJob& solved) {
    std::vector<Behind> at(solved.lines.nodes());
    for (std::size_t row = 0; row < solved.runs.size(); ++row) {
        const std::size_t node = solved.lines.toNode(row);
        if (node == Network::none) continue;
        const auto& since = solved.runs[row].since;
        at[node].known = at[node].known && since.has_value();
        if (!since) continue;
        at[node].length = std::max(at[node].length, since->length);
        at[node].sharpTurns = std::max(at[node].sharpTurns, since->sharpTurns);
    }
    return at;
}

class Judge {
  public:
    Judge(const Job& job, std::size_t row, const SolvedNode& is, const Behind& behind, std::size_t sameName,
          bool fed, std::vector<Finding>& findings)
        : job_(job),
          node_(job.nodes[row]),
          is_(is),
          behind_(behind),
          sameName_(sameName),
          fed_(fed),
          told_(job, Part::Nodes, row, findings) {}

    void judge() {
        told_.unusable(node_.unusable);
        name();
        kind();
        ground();
        joined();
        water();
        lid();
        grate();
        if (!node_.turns() || *node_.turns() <= Angle()) return;
        if (!node_.kinds.stillsWater()) bends();
        if (node_.kinds.takesCable()) return;
        unknownBehind();
        farTurn();
        sharpTurn();
    }

  private:
    void name() {
        if (nameKey(node_.name).empty()) {
            if (!RowFindings::stands(node_.unusable, "Node"))
                told_.tell(Severity::NotJudged, Standing::InputMissing,
                           {"the node has no name", "el nodo no tiene nombre"});
        } else if (sameName_ > 1) {
            told_.tell(Severity::No, Standing::NameOnce,
                       {"this name is used more than once", "este nombre se usa más de una vez"});
        }
    }

    void kind() {
        if (!node_.kinds.empty() || RowFindings::stands(node_.unusable, "Kind")) return;
        if (node_.kindGiven) {
            told_.tell(Severity::No, Standing::InputUnusable,
                       {"kind cannot be read", "no se entiende el tipo"});
        } else {
            told_.tell(Severity::NotJudged, Standing::InputMissing, {"kind is missing", "falta el tipo"});
        }
    }

    void ground() {
        if (node_.ground || RowFindings::stands(node_.unusable, "Ground") ||
            RowFindings::stands(node_.unusable, "Ground level"))
            return;
        const std::string shot = nameKey(node_.shot).empty() ? node_.name : node_.shot;
        if (nameKey(shot).empty()) return;
        told_.tell(Severity::NotJudged, Standing::InputMissing,
                   {"no level: shoot " + shot + " on Levels, or type Ground",
                    "sin nivel: lea " + shot + " en Levels, o escriba Ground"});
    }

    void joined() {
        if (nameKey(node_.name).empty() || is_.entering + is_.leaving > 0) return;
        told_.tell(Severity::Check, Standing::NodeJoined,
                   {"no run starts or ends here", "ningún tramo empieza ni termina aquí"});
    }

    // A downspout that stands here and nowhere on Water brings water that no flow counts.
    void water() {
        if (fed_) return;
        told_.tell(Severity::NotJudged, Standing::InputMissing,
                   {"water enters here, and no row of Water names this node: no flow counts it",
                    "aquí entra agua y ninguna fila de Water nombra este nodo: ningún caudal la cuenta"});
    }

    // Bends and wyes are closed: only where water can come out does it matter how high it stands.
    void lid() {
        if (!node_.kinds.open() || is_.entering + is_.leaving == 0) return;
        if (!is_.freeboard) {
            if (!is_.water)
                told_.tell(Severity::NotJudged, Standing::InputWaits,
                           {"how high the water stands here is not known (see Runs)",
                            "no se sabe a qué altura queda el agua (vea Runs)"});
            return;
        }
        const double least = job_.rules.length("freeboard.min").si(), free = is_.freeboard->si();
        if (free < -1e-9) {
            told_.tell(Severity::No, "freeboard.min", free,
                       Text{"water comes out here: it stands ", "aquí sale agua: queda "} +
                           amountText({-free, Unit::Feet}, job_.units) +
                           Text{" over the opening", " sobre la abertura"});
        } else if (free < least - 1e-9) {
            const Compared said = comparedText({free, Unit::Feet}, {least, Unit::Feet}, job_.units);
            told_.tell(Severity::Check, "freeboard.min", free,
                       Text{"water stands only ", "el agua queda solo "} + said.measured +
                           Text{" under the opening, rule asks ", " bajo la abertura, la regla pide "} +
                           said.allowed);
        }
    }

    // Water runs into a grate that is no higher than the ground around it.
    void grate() {
        if (!node_.kinds.has(NodeKind::Basin) && !node_.kinds.has(NodeKind::Channel)) return;
        if (!node_.opening || !node_.ground) return;
        const Length proud = *node_.opening - *node_.ground;
        if (!isOver(proud.si(), job_.rules.length("grate.over.max").si())) return;
        const Text far = amountText({proud.si(), Unit::Feet}, job_.units);
        told_.tell(Severity::Check, "grate.over.max", proud.si(),
                   Text{"the grate stands ", "la rejilla sobresale "} + far +
                       Text{" over the ground: water goes round it", " sobre el terreno: el agua la rodea"});
    }

    // Stocked bends, and what they make of a turn.
    std::string madeOf(Angle turn) const {
        static const Angle stocked[] = {Angle::degrees(22.5), Angle::degrees(45)};
        return makeupText(makeup(turn, stocked, Angle::degrees(job_.rules.number("bend.tolerance"))));
    }

    void bends() {
        try {
            madeOf(*node_.turn);
        } catch (const Error&) {
            const std::string turn = plain(node_.turn->degrees(), 1);
            told_.tell(Severity::No, "bend.tolerance",
                       {"no bends of 22.5 and 45 degrees make a turn of " + turn,
                        "ningún codo de 22.5 y 45 grados hace un giro de " + turn});
        }
    }

    // A turn is no trouble only when all that lies behind it is known.
    void unknownBehind() {
        const double least = std::min(job_.rules.number("cleanout.bend"), job_.rules.number("bend.sharp"));
        if (behind_.known || !isOver(node_.turn->degrees(), least)) return;
        told_.tell(Severity::NotJudged, Standing::InputWaits,
                   {"how far the last cleanout is from this turn is not known (see Runs)",
                    "no se sabe a qué distancia de este giro está el último registro (vea Runs)"});
    }

    // Turns close to each other share the first cleanout.
    void farTurn() {
        const double bend = job_.rules.number("cleanout.bend");
        const Length group = job_.rules.length("cleanout.group");
        if (!isOver(node_.turn->degrees(), bend) || !isOver(behind_.length.si(), group.si())) return;
        const Text far = amountText({behind_.length.si(), Unit::Feet}, job_.units, 0);
        told_.tell(Severity::Check, "cleanout.bend", node_.turn->degrees(),
                   Text{"turns more than " + plain(bend, 1) + " degrees, ",
                        "gira más de " + plain(bend, 1) + " grados, a "} +
                       far + Text{" from the last cleanout", " del último registro"});
    }

    void sharpTurn() {
        const double sharp = job_.rules.number("bend.sharp"), most = job_.rules.number("bend.sharp.most");
        const double before = static_cast<double>(behind_.sharpTurns);
        if (!isOver(node_.turn->degrees(), sharp) || before < most) return;
        const std::string count = plain(before, 0);
        Text says{"turns sharply, and " + count + " turns since the last cleanout did",
                  "gira bruscamente, y " + count + " giros desde el último registro también"};
        try {
            const std::string made = madeOf(*node_.turn), gentler = madeOf(Angle::degrees(sharp));
            says += {": make it " + made + " with pipe between, or " + gentler + " where the line can turn " +
                         plain(sharp, 1),
                     ": hágalo con " + made + " y tubo entre ellos, o " + gentler +
                         " donde la línea pueda girar " + plain(sharp, 1)};
        } catch (const Error&) {
            // No bends make it: that is told by itself.
        }
        told_.tell(Severity::Check, "bend.sharp.most", before, std::move(says));
    }

    const Job& job_;
    const Node& node_;
    const SolvedNode& is_;
    const Behind& behind_;
    std::size_t sameName_;
    bool fed_;  // by a row of Water, where water enters
    RowFindings told_;
};

}  // namespace

void judgeNodes(const Job& job, const SolvedJob& solved, std::vector<Finding>& findings) {
    std::unordered_map<std::string, std::size_t> named;
    for (const Node& node : job.nodes) ++named[nameKey(node.name)];
    const std::vector<Behind> behind = behindNodes(solved);
    const std::vector<std::string> names = unfedNodes(job);
    const std::unordered_set<std::string> unfed(names.begin(), names.end());
    for (std::size_t row = 0; row < job.nodes.size(); ++row) {
        const Node& node = job.nodes[row];
        if (node.blank) continue;
        const std::size_t at = solved.lines.node(node.name);
        Judge(job, row, solved.nodes[row], at == Network::none ? Behind{} : behind[at],
              named[nameKey(node.name)], !unfed.contains(nameKey(node.name)), findings)
            .judge();
    }
}

}  // namespace trenchbook
