// What is set at one node: how the runs that meet there join, the risers that come in, the turn, the device.
#include <algorithm>
#include <array>
#include <cmath>
#include <unordered_map>

#include "takeoff/parts.h"
#include "trenchbook/core/error.h"
#include "trenchbook/takeoff/bends.h"

namespace trenchbook::counting {
namespace {

const std::array<Angle, 2>& elbowsSold() {
    static const std::array<Angle, 2> angles = {Angle::degrees(22.5), Angle::degrees(45)};
    return angles;
}

// What other tables say of a node.
struct Beside {
    std::vector<const JobInlet*> inlets = {};
    const Outlet* outlet = nullptr;
};
using BesideNodes = std::unordered_map<std::string, Beside>;

BesideNodes besideNodes(const Job& job) {
    BesideNodes all;
    for (const JobInlet& inlet : job.inlets)
        if (!inlet.blank) all[nameKey(inlet.node)].inlets.push_back(&inlet);
    for (const Outlet& outlet : job.outlets)
        if (!outlet.blank) all[nameKey(outlet.node)].outlet = &outlet;
    return all;
}

class NodeCount {
  public:
    NodeCount(const Job& job, const SolvedJob& solved, const Codes& codes, std::size_t row, const Ends& ends,
              const Beside& beside, const std::vector<RunTakeoff>& runs, std::vector<Finding>& findings)
        : job_(job),
          solved_(solved),
          codes_(codes),
          row_(row),
          node_(job.nodes[row]),
          ends_(ends),
          beside_(beside),
          runs_(runs),
          findings_(findings) {}

    NodeTakeoff counted() {
        // Where only pipes meet that lie there already nothing is set.
        const auto lies = [&](std::size_t run) { return job_.runs[run].existing; };
        if (!pumped() && ends_.any() && std::all_of(ends_.arriving.begin(), ends_.arriving.end(), lies) &&
            (ends_.leaving == Network::none || lies(ends_.leaving))) {
            if (!node_.device.empty() || anyPiece())
                add(Severity::Caution, Standing::TakeoffLeavesOut,
                    {"only pipe that lies there meets here: what stands here counts as there already",
                     "aquí solo llega tubo que ya existe: lo que hay aquí cuenta como ya puesto"});
            return {.counted = true};
        }
        if (!pipesKnown()) return {};
        if (!node_.unusable.empty() && node_.kinds.empty() && node_.kindGiven)
            add(Severity::NotJudged, Standing::InputUnusable,
                {"what stands here cannot be read: its pieces are not counted",
                 "no se entiende qué hay aquí: sus piezas no se cuentan"});
        else if (node_.kinds.empty())
            add(Severity::NotJudged, Standing::InputMissing,
                {"what stands here is not said: its pieces are not counted",
                 "no se dice qué hay aquí: sus piezas no se cuentan"});
        findLine();
        boxed_ = node_.kinds.stillsWater() || pumped();
        if (boxed_)
            hubs();
        else
            joins();
        for (const NodeKindInfo& kind : nodeKindTable())
            if (node_.kinds.has(kind.kind) && kind.upright)
                for (std::size_t i = 0; i < (kind.kind == NodeKind::Downspout ? downspouts() : 1); ++i)
                    upright(kind.kind);
        if (!boxed_) {
            turn();
            turnedUp();
            cutIn();
            couple();
        }
        devices();
        rings();
        if (beside_.outlet != nullptr && beside_.outlet->checkValve.value_or(false) && !pumped())
            put(checkValve(line_));
        if (node_.kinds.has(NodeKind::Wye) && !has(PieceKind::Wye))
            add(Severity::Check, Standing::TakeoffLeavesOut,
                {"nothing joins at this wye: none is counted", "nada se une en esta ye: no se cuenta"});
        if (pumped()) pumpAndDischarge();
        finish();
        return std::move(answer_);
    }

  private:
    bool anyPiece() const {
        for (const NodeKindInfo& kind : nodeKindTable())
            if (node_.kinds.has(kind.kind) && (kind.body != nullptr || kind.device != nullptr)) return true;
        return false;
    }
    bool has(PieceKind kind) const {
        for (const Piece& piece : answer_.pieces)
            if (piece.kind == kind) return true;
        return false;
    }
    // As many as come down here by Water; one where no row says so.
    std::size_t downspouts() const {
        std::size_t count = 0;
        for (const JobInlet* inlet : beside_.inlets) count += inlet->entersBy == EntersBy::Downspout ? 1 : 0;
        return std::max<std::size_t>(1, count);
    }
    const Pipe& pipeOf(std::size_t run) const { return *job_.runs[run].pipe; }

    // Every run that meets here has a stock pipe.
    bool pipesKnown() {
        std::vector<std::size_t> meeting = ends_.arriving;
        if (ends_.leaving != Network::none) meeting.push_back(ends_.leaving);
        for (const std::size_t run : meeting) {
            const std::string name = solved_.lines.segmentName(run);
            if (!job_.runs[run].pipe) {
                add(Severity::NotJudged, Standing::InputMissing,
                    {"the pipe of " + name + " is not known: nothing is counted here",
                     "falta el tubo de " + name + ": aquí no se cuenta nada"});
                return false;
            }
            if (!pipeOf(run).outside) {
                add(Severity::No, Standing::RunBareBore,
                    {name + " is a bare bore, which nobody sells: nothing is counted here",
                     name + " es un diámetro solo, que no se vende: aquí no se cuenta nada"});
                return false;
            }
        }
        return true;
    }

    // The pipe that goes through: of the run that leaves; at the end of a line, of the largest that arrives.
    void findLine() {
        const auto smaller = [&](std::size_t a, std::size_t b) {
            return pipeOf(a).nominal < pipeOf(b).nominal;
        };
        const auto largest = std::max_element(ends_.arriving.begin(), ends_.arriving.end(), smaller);
        line_ = pipeOf(ends_.leaving != Network::none ? ends_.leaving : *largest);
    }

    void hubs() {
        const NodeKind box = node_.kinds.has(NodeKind::Basin) ? NodeKind::Basin : NodeKind::Channel;
        for (const std::size_t run : ends_.arriving) put(body(box, pipeOf(run)));
        if (ends_.leaving != Network::none) put(body(box, pipeOf(ends_.leaving)));
    }

    void joins() {
        if (ends_.arriving.empty()) return;
        const std::size_t through = goesThrough();
        if (pipeOf(through).nominal != line_.nominal) put(reducer(line_, pipeOf(through)));
        for (const std::size_t run : ends_.arriving)
            if (run != through) branch(run);
    }

    // The first that has the line's size; where none has, the largest.
    std::size_t goesThrough() const {
        std::size_t best = ends_.arriving.front();
        for (const std::size_t run : ends_.arriving) {
            if (pipeOf(run).nominal == line_.nominal) return run;
            if (pipeOf(run).nominal > pipeOf(best).nominal) best = run;
        }
        return best;
    }

    void branch(std::size_t run) {
        const Pipe& pipe = pipeOf(run);
        if (pipe.nominal <= line_.nominal) return put(wye(line_, pipe));
        const std::string sizes = pipe.name, into = line_.name;
        add(Severity::No, Standing::PieceStocked,
            {"no wye takes a branch of " + sizes + " into " + into + ": it is not counted",
             "no hay ye que reciba " + sizes + " en " + into + ": no se cuenta"});
    }

    void upright(NodeKind kind) {
        const Pipe riser = riserFor(line_);
        const bool endsThePipe = !boxed_ && ends_.arriving.empty() && answer_.risers.empty();
        if (boxed_)
            put(body(node_.kinds.has(NodeKind::Basin) ? NodeKind::Basin : NodeKind::Channel, riser));
        else if (!endsThePipe)
            put(wye(line_, riser));
        else if (riser.nominal != line_.nominal)
            put(reducer(line_, riser));
        Piece bends = riserBend(riser);
        bends.count = boxed_ || endsThePipe ? 2 : 1;
        put(bends);
        if (info(kind).body != nullptr) put(body(kind, riser));
        // A cleanout ends at its cap, a downspout at the ground.
        rise(kind, riser, kind == NodeKind::Cleanout ? node_.rim() : node_.ground, lineInvert());
    }

    // A tee with its branch in the line and a riser on top.
    void turnedUp() {
        for (const NodeKindInfo& kind : nodeKindTable()) {
            if (!node_.kinds.has(kind.kind) || !kind.bubbles) continue;
            put(body(kind.kind, line_));
            rise(kind.kind, line_, node_.rim(), lineInvert());
        }
    }

    void rise(NodeKind kind, const Pipe& pipe, std::optional<Length> top, std::optional<Length> invert) {
        Riser riser{.kind = kind, .pipe = pipe, .length = {}};
        if (!top || !invert)
            add(Severity::NotJudged, Standing::InputWaits,
                {"the riser's length is not known yet: it is not counted",
                 "aún no se sabe el largo del tubo vertical: no se cuenta"});
        else if (*top <= *invert)
            add(Severity::No, Standing::PipeInGround,
                {"the pipe lies over the top of its riser: the riser is not counted",
                 "el tubo queda sobre el extremo del tubo vertical: este no se cuenta"});
        else
            riser.length = *top - *invert;
        answer_.risers.push_back(std::move(riser));
    }

    std::optional<Length> lineInvert() const {
        if (ends_.leaving != Network::none) return solved_.runs[ends_.leaving].invertUp;
        std::optional<Length> lowest;
        for (const std::size_t run : ends_.arriving) {
            const std::optional<Length> invert = solved_.runs[run].invertDown;
            if (!invert) return std::nullopt;
            if (!lowest || *invert < *lowest) lowest = invert;
        }
        return lowest;
    }

    void turn() {
        if (!node_.turn || node_.turn->degrees() <= 0) return;
        const Rule* tolerance = findRule("bend.tolerance");
        try {
            for (const Angle angle :
                 makeup(*node_.turn, elbowsSold(), Angle::degrees(job_.rules.number(tolerance->key))))
                put(bend(line_, angle));
        } catch (const Error&) {
            const double degrees = node_.turn->degrees();
            const std::string turn = plain(degrees, 1);
            findings_.push_back(
                {.severity = Severity::No,
                 .part = Part::Nodes,
                 .row = row_,
                 .rule = tolerance->key,
                 .measured = Amount{degrees, Unit::Degrees},
                 .allowed = Amount{job_.rules.number(tolerance->key), Unit::Degrees},
                 .says = {
                     "no bends of 22.5 and 45 make a turn of " + turn + " degrees: nothing is counted for it",
                     "ningún codo de 22.5 y 45 hace un giro de " + turn + " grados: no se cuenta nada"}});
        }
    }

    // A wye that is cut into a pipe that lies there is closed with a coupling.
    void cutIn() {
        if (ends_.leaving == Network::none || !job_.runs[ends_.leaving].existing) return;
        std::size_t wyes = 0;
        for (const Piece& piece : answer_.pieces)
            if (piece.kind == PieceKind::Wye) wyes += piece.count;
        Piece closing = coupling(line_);
        closing.count = wyes;
        if (wyes > 0) put(closing);
    }

    // Two runs that meet without any fitting.
    void couple() {
        if (ends_.arriving.empty() || ends_.leaving == Network::none || !answer_.pieces.empty()) return;
        for (const std::size_t run : ends_.arriving)
            if (runs_[run].adapter) return;
        put(coupling(line_));
    }

    // The piece that Nodes names stands for the usual one that it is a variety of, or, where only one kind
    // stands here, for that one's; else it comes on top.
    void devices() {
        std::vector<NodeKind> usual;
        std::size_t kinds = 0;
        for (const NodeKindInfo& kind : nodeKindTable()) {
            if (!node_.kinds.has(kind.kind)) continue;
            ++kinds;
            if (kind.device != nullptr) usual.push_back(kind.kind);
        }
        std::optional<NodeKind> replaced;
        if (!node_.device.empty())
            for (const NodeKind kind : usual)
                if (kinds == 1 || variety(node_.device) == variety(info(kind).device)) replaced = kind;
        for (const NodeKind kind : usual)
            for (Piece& piece : kind == replaced ? named(kind) : usualDevices(kind)) put(piece);
        if (!node_.device.empty() && !replaced)
            put({.kind = PieceKind::Device, .code = node_.device, .name = Text::same(node_.device)});
    }
    // A downspout's own piece stands for that of each that comes down here.
    std::vector<Piece> named(NodeKind kind) const {
        Piece piece = device(kind, devicePipe(kind), node_.device);
        if (kind == NodeKind::Downspout) piece.count = downspouts();
        return {piece};
    }
    // By the sizes on Water and Outlets where they are said.
    std::vector<Piece> usualDevices(NodeKind kind) const {
        const Pipe pipe = devicePipe(kind);
        std::vector<Piece> pieces;
        for (const JobInlet* inlet : beside_.inlets) {
            if (kind == NodeKind::Downspout && inlet->entersBy == EntersBy::Downspout)
                pieces.push_back(inlet->size.empty() ? device(kind, pipe)
                                                     : leaderAdapter(sizeWord(inlet->size), pipe));
            if (kind == NodeKind::Basin && pieces.empty() && inlet->entersBy == EntersBy::Grate &&
                !inlet->size.empty())
                pieces.push_back(device(kind, pipe, info(kind).device + sizeWord(inlet->size)));
        }
        if (info(kind).bubbles && beside_.outlet != nullptr && beside_.outlet->across) {
            const Length across = *beside_.outlet->across;
            const bool metric = job_.units == UnitSystem::Metric;
            pieces.push_back(device(
                kind, pipe,
                info(kind).device + plain(metric ? across.millimetres() : across.inches(), metric ? 0 : 2)));
        }
        if (pieces.empty()) pieces.push_back(device(kind, pipe));
        return pieces;
    }
    // Rings between the basin and its grate, where the pipe leaves deeper than the basin is.
    void rings() {
        if (!node_.kinds.has(NodeKind::Basin)) return;
        const std::optional<Length> rim = node_.rim(), invert = lineInvert();
        if (!rim || !invert)
            return add(Severity::NotJudged, Standing::InputWaits,
                       {"the basin's depth is not known yet: its rings are not counted",
                        "aún no se sabe la profundidad de la caja: sus anillos no se cuentan"});
        constexpr double hair = 1e-9;
        const Length more = *rim - *invert - job_.rules.length("basin.depth");
        const double count = std::ceil(more / job_.rules.length("basin.riser") - hair);
        if (count < 1) return;
        const auto basin = std::find_if(answer_.pieces.begin(), answer_.pieces.end(), [](const Piece& piece) {
            return piece.kind == PieceKind::Device && variety(piece.code) == "basin";
        });
        Piece ring = basinRing(basin != answer_.pieces.end() ? basin->code : node_.device);
        ring.count = static_cast<std::size_t>(count);
        put(ring);
    }
    // "DOWNSPOUT" of "DOWNSPOUT-2X3".
    static std::string variety(std::string_view code) { return nameKey(code.substr(0, code.find('-'))); }
    Pipe devicePipe(NodeKind kind) const { return info(kind).upright ? riserFor(line_) : line_; }

    bool pumped() const { return node_.kinds.has(NodeKind::PumpBasin); }

    // The pump as its row on Pump says, and the pipe that it lifts through.
    void pumpAndDischarge() {
        const auto row = std::find_if(job_.pumps.begin(), job_.pumps.end(), [&](const Pump& pump) {
            return !pump.blank && nameKey(pump.node) == nameKey(node_.name);
        });
        if (row == job_.pumps.end())
            return add(Severity::NotJudged, Standing::OutletRow,
                       {"no row on Pump: the pump and its discharge are not counted",
                        "sin fila en Pump: la bomba y su descarga no se cuentan"});
        put(pump());
        if (const std::optional<Piece> more = pumpStandby(row->powerOut)) put(*more);
        if (row->powerOut == PowerOut::Overflow)
            add(Severity::Caution, Standing::TakeoffLeavesOut,
                {"the overflow's pipe is counted only where it stands on Runs",
                 "el tubo del rebose solo se cuenta si está en Runs"});
        if (!row->pipe)
            return add(Severity::NotJudged, Standing::InputMissing,
                       {"the discharge pipe is not known: it is not counted",
                        "falta el tubo de descarga: no se cuenta"});
        if (!row->pipe->outside)
            return add(Severity::No, Standing::RunBareBore,
                       {"the discharge is a bare bore, which nobody sells: it is not counted",
                        "la descarga es un diámetro solo, que no se vende: no se cuenta"});
        discharge(*row);
    }
    void discharge(const Pump& pump) {
        const Pipe& pipe = *pump.pipe;
        if (!pump.checkValve || !pump.elbows)
            add(Severity::NotJudged, Standing::InputMissing,
                {"check valve or elbows of the discharge are not said: not counted",
                 "no se dicen válvula o codos de la descarga: no se cuentan"});
        if (pump.checkValve.value_or(false)) put(checkValve(pipe));
        Piece elbows = bend(pipe, Angle::degrees(90));
        elbows.count = static_cast<std::size_t>(std::ceil(pump.elbows.value_or(0)));
        if (elbows.count > 0) put(elbows);
        answer_.discharge = Discharge{.pipe = pipe, .length = pump.length};
        if (!pump.length)
            return add(Severity::NotJudged, Standing::InputMissing,
                       {"the discharge's length is not known: it is not counted",
                        "falta el largo de la descarga: no se cuenta"});
        if (const std::optional<Length> stick = codes_.stick(pipe))
            answer_.discharge->bells = bellsOf(*pump.length, *stick);
        else
            add(Severity::No, Standing::InputMissing,
                {"no stick length is known for " + pipeCode(pipe),
                 "no se conoce el largo de barra de " + pipeCode(pipe)});
        add(Severity::Caution, Standing::TakeoffLeavesOut,
            {"electrician, sod and spoil of the discharge's trench are not counted: put them on Additions",
             "electricista, pasto y tierra sobrante de la descarga no se cuentan: póngalos en Additions"});
    }

    void put(const Piece& piece) {
        for (Piece& known : answer_.pieces)
            if (known.code == piece.code && known.kind == piece.kind) {
                known.count += piece.count;
                return;
            }
        answer_.pieces.push_back(piece);
    }

    void finish() {
        answer_.counted = true;
        std::stable_sort(answer_.pieces.begin(), answer_.pieces.end(),
                         [](const Piece& a, const Piece& b) { return a.kind < b.kind; });
        std::vector<Text> words;
        for (const Piece& piece : answer_.pieces) {
            answer_.sockets += socketCount(piece);
            answer_.cementPints += cementPints(piece, job_.rules);
            words.push_back(Text::same(std::to_string(piece.count) + " x ") + piece.name);
        }
        for (const Riser& riser : answer_.risers)
            if (riser.length)
                words.push_back(Text{"riser ", "tubo vertical "} +
                                Text::same(riser.pipe.name + " " + said(*riser.length, job_.units, 2)));
        if (const std::optional<Discharge>& pipe = answer_.discharge) {
            const Sockets joints{pipe->pipe, pipe->bells.value_or(0)};
            answer_.sockets += joints.count;
            answer_.cementPints += cementPints(joints, job_.rules);
            if (pipe->length)
                words.push_back(Text{"discharge ", "descarga "} +
                                Text::same(pipe->pipe.name + " " + said(*pipe->length, job_.units, 2)));
        }
        answer_.words = joined(words, "; ");
    }

    void add(Severity severity, Standing rule, Text says) {
        findings_.push_back(notCounted(Part::Nodes, row_, rule, std::move(says), severity));
    }

    const Job& job_;
    const SolvedJob& solved_;
    const Codes& codes_;
    std::size_t row_;
    const Node& node_;
    const Ends& ends_;
    const Beside& beside_;
    const std::vector<RunTakeoff>& runs_;
    std::vector<Finding>& findings_;
    Pipe line_;
    bool boxed_ = false;
    NodeTakeoff answer_;
};

}  // namespace

std::vector<Ends> endsOf(const Network& lines) {
    std::vector<Ends> ends(lines.nodes());
    for (std::size_t row = 0; row < lines.rows(); ++row) {
        const std::size_t from = lines.fromNode(row), to = lines.toNode(row);
        if (to != Network::none) ends[to].arriving.push_back(row);
        if (from != Network::none && ends[from].leaving == Network::none) ends[from].leaving = row;
    }
    return ends;
}

namespace {

// What water enters by is bought where Nodes has it.
void enteredBy(const Job& job, std::vector<Finding>& findings) {
    std::unordered_map<std::string, NodeKinds> kinds;
    for (const Node& node : job.nodes)
        if (!node.blank) kinds.emplace(nameKey(node.name), node.kinds);
    const auto tell = [&](std::size_t row, const Text& what) {
        const std::string& node = job.inlets[row].node;
        findings.push_back(
            notCounted(Part::Water, row, Standing::TakeoffLeavesOut,
                       Text{"Nodes has no ", "Nodes no tiene "} + what +
                           Text{" at " + node + ": none is counted", " en " + node + ": no se cuenta"},
                       Severity::Check));
    };
    for (std::size_t row = 0; row < job.inlets.size(); ++row) {
        const JobInlet& inlet = job.inlets[row];
        const auto found = inlet.blank ? kinds.end() : kinds.find(nameKey(inlet.node));
        if (found == kinds.end() || found->second.empty()) continue;
        const NodeKinds& here = found->second;
        const bool box = here.stillsWater() || here.has(NodeKind::PumpBasin);
        if (inlet.entersBy == EntersBy::Downspout && !here.has(NodeKind::Downspout))
            tell(row, info(NodeKind::Downspout).name);
        else if (inlet.entersBy == EntersBy::Grate && !box)
            tell(row, info(NodeKind::Basin).name);
        else if (const bool channel = inlet.entersBy == EntersBy::TrenchDrain ||
                                      (inlet.entersBy == EntersBy::NotSaid && inlet.length);
                 channel && !here.has(NodeKind::Channel))
            tell(row, info(NodeKind::Channel).name);
    }
}

}  // namespace

std::vector<NodeTakeoff> countNodes(const Job& job, const SolvedJob& solved, const Codes& codes,
                                    const std::vector<RunTakeoff>& runs, std::vector<Finding>& findings) {
    const Network& lines = solved.lines;
    const std::vector<Ends> ends = endsOf(lines);
    const BesideNodes beside = besideNodes(job);
    const Beside nothing;
    std::vector<bool> listed(ends.size(), false);
    std::vector<NodeTakeoff> counted(job.nodes.size());
    for (std::size_t row = 0; row < job.nodes.size(); ++row) {
        const Node& node = job.nodes[row];
        if (node.blank) continue;
        const std::size_t index = lines.node(node.name);
        if (index == Network::none) {
            findings.push_back(notCounted(Part::Nodes, row, Standing::NodeJoined,
                                          {"no run starts or ends here: nothing is counted",
                                           "ningún tramo empieza ni termina aquí: no se cuenta nada"},
                                          Severity::Check));
        } else if (listed[index]) {
            findings.push_back(notCounted(Part::Nodes, row, Standing::NameOnce,
                                          {"this node stands in an earlier row too: it is counted once",
                                           "este nodo ya está en otra fila: se cuenta una vez"},
                                          Severity::No));
        } else {
            listed[index] = true;
            const auto found = beside.find(nameKey(node.name));
            counted[row] = NodeCount(job, solved, codes, row, ends[index],
                                     found == beside.end() ? nothing : found->second, runs, findings)
                               .counted();
        }
    }
    enteredBy(job, findings);
    // A point that Nodes does not have is told once, at the first run that uses it.
    for (std::size_t row = 0; row < lines.rows(); ++row)
        for (const bool upper : {true, false}) {
            const std::size_t index = upper ? lines.fromNode(row) : lines.toNode(row);
            if (index == Network::none || listed[index]) continue;
            listed[index] = true;
            const std::string name = upper ? job.runs[row].from : job.runs[row].to;
            findings.push_back(notCounted(Part::Runs, row, Standing::NameKnown,
                                          {"Nodes has no " + name + ": its pieces are not counted",
                                           "Nodes no tiene " + name + ": sus piezas no se cuentan"}));
        }
    return counted;
}

}  // namespace trenchbook::counting
