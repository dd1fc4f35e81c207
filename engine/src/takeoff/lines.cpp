// What to buy: one line a code, with the places that it comes from.
#include <algorithm>
#include <array>
#include <map>
#include <utility>

#include "takeoff/parts.h"

namespace trenchbook::counting {
namespace {

enum class Source { Rules, Runs, Nodes };
const Text& sourceWord(Source source) {
    static const Text words[] = {Text::same("Rules"), Text::same("Runs"), Text::same("Nodes")};
    return words[static_cast<std::size_t>(source)];
}

// A place and how many are there.
struct Place {
    Source source;
    Text name;
    std::size_t count;
};

class Tally {
  public:
    explicit Tally(const Codes& codes) : codes_(codes) {}

    void pieces(const std::string& code, std::size_t count, Source source, const Text& place) {
        Entry& entry = at(codes_.bought(code));
        entry.net += static_cast<double>(count);
        const auto [found, fresh] = entry.index.emplace(std::pair(source, place.en), entry.places.size());
        if (fresh)
            entry.places.push_back({source, place, count});
        else
            entry.places[found->second].count += count;
    }
    std::vector<TakeoffLine> lines() const {
        std::vector<TakeoffLine> all;
        for (const Entry& entry : entries_)
            all.push_back({.code = entry.code, .net = NetAmount{entry.net}, .from = told(entry)});
        return all;
    }

  private:
    struct Entry {
        std::string code;
        double net = 0;
        std::vector<Place> places = {};  // in the order in which they came
        std::map<std::pair<Source, std::string>, std::size_t> index = {};
    };
    Entry& at(const std::string& code) {
        const auto [found, fresh] = index_.emplace(nameKey(code), entries_.size());
        if (fresh) entries_.push_back({.code = code});
        return entries_[found->second];
    }
    static Text told(const Entry& entry) {
        Text all;
        for (std::size_t i = 0; i < entry.places.size(); ++i) {
            const Place& place = entry.places[i];
            const bool goesOn = i > 0 && entry.places[i - 1].source == place.source;
            all += goesOn ? Text::same(", ")
                          : Text::same(i > 0 ? "; " : "") + sourceWord(place.source) + Text::same(": ");
            all += place.name;
            if (place.count > 1) all += Text::same(" x" + std::to_string(place.count));
        }
        return all;
    }

    const Codes& codes_;
    std::vector<Entry> entries_;
    std::unordered_map<std::string, std::size_t> index_;
};

// The pipes: net length, pieces and sticks; not known where a length or a riser of it is not.
std::vector<TakeoffLine> pipeLines(const Job& job, const Codes& codes, const Takeoff& takeoff) {
    struct Sum {
        std::string code;
        Length net = {};
        std::size_t pieces = 0;
        bool known = true;
    };
    std::vector<Sum> sums;
    const auto sumOf = [&](const std::string& code) -> Sum& {
        const auto found =
            std::find_if(sums.begin(), sums.end(), [&](const Sum& sum) { return sum.code == code; });
        return found != sums.end() ? *found : *sums.insert(sums.end(), Sum{.code = code});
    };
    for (const PipeLength& length : takeoff.lengths) {
        Sum& sum = sumOf(length.code);
        sum.net += length.length;
        ++sum.pieces;
    }
    for (const Run& run : job.runs)
        if (!run.blank && !run.existing && run.pipe && run.pipe->outside && !run.length)
            sumOf(codes.boughtPipe(*run.pipe)).known = false;
    for (const NodeTakeoff& node : takeoff.nodes)
        for (const Riser& riser : node.risers)
            if (!riser.length) sumOf(codes.boughtPipe(riser.pipe)).known = false;
    for (const NodeTakeoff& node : takeoff.nodes)
        if (node.discharge && !node.discharge->length)
            sumOf(codes.boughtPipe(node.discharge->pipe)).known = false;

    std::vector<TakeoffLine> lines;
    for (const Sum& sum : sums) {
        TakeoffLine line{.code = sum.code};
        if (sum.known) line.net = NetAmount{sum.net};
        const std::string pieces = std::to_string(sum.pieces);
        line.from = {"Runs and risers: " + pieces + " to cut",
                     "Runs y tubos verticales: " + pieces + " por cortar"};
        for (const SticksOfKind& sticks : takeoff.cuts.sticks) {
            if (sticks.kind != sum.code) continue;
            line.fewestSticks = sticks.count;
            const std::string count = std::to_string(sticks.count), least = std::to_string(sticks.fewest);
            line.from += sticks.count == sticks.fewest
                             ? Text{", fewest sticks " + count, ", barras mínimas " + count}
                             : Text{", sticks " + count + ", not under " + least,
                                    ", barras " + count + ", no menos de " + least};
        }
        lines.push_back(std::move(line));
    }
    return lines;
}

// A cleanout that the rules ask is a wye in the line, a bend, and the fitting on its riser.
void tallyAsked(const Job& job, const Takeoff& takeoff, Tally& tally) {
    for (const AskedHere& asked : takeoff.asked) {
        const std::optional<Pipe>& pipe = job.runs[asked.run].pipe;
        if (!pipe || !pipe->outside) continue;
        const Pipe riser = riserFor(*pipe);
        const Text place =
            asked.where + Text{" (riser and cement not counted)", " (sin tubo vertical ni cemento)"};
        for (const Piece& piece : {body(NodeKind::Cleanout, riser), riserBend(riser), wye(*pipe, riser)})
            tally.pieces(piece.code, asked.count, Source::Rules, place);
    }
}

void tallyPieces(const Job& job, const Takeoff& takeoff, Tally& tally) {
    for (std::size_t row = 0; row < job.runs.size(); ++row)
        if (const std::optional<Piece>& adapter = takeoff.runs[row].adapter)
            tally.pieces(adapter->code, adapter->count, Source::Runs,
                         {job.runs[row].from + " to " + job.runs[row].to,
                          job.runs[row].from + " a " + job.runs[row].to});
    // Kind by kind, as a supplier's list is read.
    std::map<PieceKind, std::vector<std::pair<std::size_t, const Piece*>>> byKind;
    for (std::size_t row = 0; row < job.nodes.size(); ++row)
        for (const Piece& piece : takeoff.nodes[row].pieces) byKind[piece.kind].emplace_back(row, &piece);
    for (const PieceKind kind : {PieceKind::Wye, PieceKind::Reducer, PieceKind::Bend, PieceKind::RiserBend,
                                 PieceKind::Coupling, PieceKind::Body, PieceKind::Device})
        for (const auto& [row, piece] : byKind[kind])
            tally.pieces(piece->code, piece->count, Source::Nodes, Text::same(job.nodes[row].name));
}

bool perforatedRun(const Run& run) { return !run.blank && !run.existing && run.pipe && run.pipe->perforated; }

// A sock over perforated pipe, a line a size; not known where a length is not.
void addSocks(const Job& job, const TakeoffTerms& terms, std::vector<TakeoffLine>& lines) {
    std::map<double, std::optional<Length>> bySize;
    for (const Run& run : job.runs) {
        if (!perforatedRun(run)) continue;
        std::optional<Length>& sum = bySize.try_emplace(run.pipe->nominal, Length()).first->second;
        if (sum && run.length)
            *sum += *run.length;
        else
            sum.reset();
    }
    for (const auto& [size, sum] : bySize) {
        TakeoffLine line{.code = terms.bulk.sock + plain(size),
                         .from = {"Runs: perforated pipe", "Runs: tubo perforado"}};
        if (sum) line.net = NetAmount{*sum};
        lines.push_back(std::move(line));
    }
}

const std::string& protectionCode(const BulkCodes& codes, Protection protection) {
    return protection == Protection::Sloping     ? codes.sloping
           : protection == Protection::TrenchBox ? codes.trenchBox
                                                 : codes.shoring;
}

std::vector<TakeoffLine> bulkLines(const Job& job, const TakeoffTerms& terms, const Takeoff& takeoff) {
    const Bulk& bulk = takeoff.bulk;
    const UnitSystem units = job.units;
    std::vector<TakeoffLine> lines;
    // What is not asked for has no line; what is not known has one without an amount.
    const auto add = [&](const std::string& code, const auto& amount, Text from) {
        if (!amount) {
            lines.push_back({.code = code, .from = {"a part is not known", "falta conocer una parte"}});
        } else if (const NetAmount net{*amount}; net.in(units) > 0) {
            lines.push_back({.code = code, .net = net, .from = std::move(from)});
        }
    };
    const auto volume = [&](std::optional<Volume> of, int decimals) {
        return Text::same(of ? said(*of, units, decimals) : "");
    };
    add(terms.bulk.cement, bulk.cementPints,
        Text{"Pieces and bells: ", "Piezas y campanas: "} +
            counted(bulk.glued, {"socket", "unión"}, {"sockets", "uniones"}) +
            Text{", joints a pint on Rules", ", uniones por pinta en Rules"});
    add(terms.bulk.primer, bulk.primerPints, {"cement x share on Rules", "cemento x la parte en Rules"});
    add(terms.bulk.bedding, bulk.beddingWeight,
        Text{"Runs: length x width x bedding = ", "Runs: largo x ancho x cama = "} + volume(bulk.bedding, 2));
    const bool perforated = std::any_of(job.runs.begin(), job.runs.end(), perforatedRun);
    add(terms.bulk.rock, bulk.rockWeight,
        (perforated ? Text{"Pit and perforated pipe: rock ", "Pozo y tubo perforado: roca "}
                    : Text{"Pit: rock ", "Pozo: roca "}) +
            volume(bulk.rock, 2) + Text{" x its own density", " x su propia densidad"});
    add(terms.bulk.fabric, bulk.fabric,
        {"Pit: all sides, overlap on Rules; under aprons",
         "Pit: todos los lados, traslape en Rules; bajo zampeados"});
    add(terms.bulk.apron, bulk.apronWeight,
        {"Outlets: stone aprons x density on Rules", "Outlets: zampeados x densidad en Rules"});
    add(terms.bulk.concrete, bulk.concreteBags,
        {"bags: around channel drains and cast to pump basins, concrete.bag on Rules",
         "sacos: alrededor de canales y con cárcamos, concrete.bag en Rules"});
    const auto overPipe = [&](const std::string& code, const char* rule) {
        const double share = job.rules.number(rule);
        if (share <= 0) return;
        add(code, bulk.laid ? std::optional(*bulk.laid * share) : std::nullopt,
            Text{"Runs and Pump: all lengths, ", "Runs y Pump: todos los largos, "} + Text::same(rule) +
                Text{" on Rules", " en Rules"});
    };
    overPipe(terms.bulk.warningTape, "tape.warning");
    overPipe(terms.bulk.locateWire, "wire.locate");
    add(terms.bulk.channel, bulk.channel,
        {"Water: lengths of the trench drains", "Water: largos de los canales"});
    addSocks(job, terms, lines);
    const std::string limit = said(job.rules.length("cut.protect"), units, 1);
    if (job.facts.protection != Protection::StableRock)
        add(protectionCode(terms.bulk, job.facts.protection), bulk.protect,
            {"Runs: trench " + limit + " deep or deeper", "Runs: zanja de " + limit + " o más"});
    // Where it is not known a finding says so; no kind of paving is asked for a price before.
    const auto paved = [&](const std::string& code, Area Paving::*kind) {
        if (bulk.paving)
            add(code, std::optional((*bulk.paving).*kind),
                {"Runs: length x trench width under it", "Runs: largo x ancho de zanja debajo"});
    };
    paved(terms.bulk.walk, &Paving::walk);
    paved(terms.bulk.drive, &Paving::drive);
    paved(terms.bulk.street, &Paving::street);
    const std::string share = plain(100 * terms.sodShare, 0) + "%";
    add(terms.bulk.sod, bulk.sod,
        Text{"Runs and pit: " + share + " of ", "Runs y pozo: " + share + " de "} +
            Text::same(bulk.lawn ? said(*bulk.lawn, units, 0) : "") + Text{" under lawn", " bajo césped"});
    add(terms.bulk.haul, bulk.haulLoads,
        Text{"bedding, pipe, rock and boxes take the room of ", "cama, tubo, roca y cajas ocupan "} +
            volume(bulk.surplus, 1) + Text{"; loose it is ", "; suelto son "} + volume(bulk.haulLoose, 1));
    return lines;
}

}  // namespace

std::vector<TakeoffLine> linesOf(const Job& job, const Codes& codes, const TakeoffTerms& terms,
                                 const Takeoff& takeoff, std::vector<Finding>& findings) {
    Tally tally(codes);
    if (terms.buyAsked) tallyAsked(job, takeoff, tally);
    tallyPieces(job, takeoff, tally);
    std::vector<TakeoffLine> lines = pipeLines(job, codes, takeoff);
    for (const std::vector<TakeoffLine>& more : {tally.lines(), bulkLines(job, terms, takeoff)})
        for (const TakeoffLine& line : more) {
            // Two goods of different measure that are bought by one code cannot be added up.
            const bool taken = std::any_of(lines.begin(), lines.end(), [&](const TakeoffLine& known) {
                return nameKey(known.code) == nameKey(line.code);
            });
            if (taken)
                findings.push_back(notCounted(
                    Part::Runs, Finding::whole, Standing::CodeOnce,
                    {line.code + " is bought for two kinds of goods: see what is bought in whose place",
                     line.code + " se compra para dos clases de material: revise las sustituciones"},
                    Severity::No));
            lines.push_back(line);
        }
    return lines;
}

}  // namespace trenchbook::counting
