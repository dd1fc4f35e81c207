#include "trenchbook/takeoff/codes.h"

#include <algorithm>
#include <cmath>

#include "trenchbook/core/error.h"

namespace trenchbook {
namespace {

// Only up to this size is a riser as large as its line.
constexpr double largestRiser = 4;
// Where no grate on Water says how large.
constexpr const char* usualBasin = "BASIN-12";

std::string requireSystem(const Pipe& pipe) {
    outsideOf(pipe);  // refuses a bare bore
    return pipe.system;
}

// A fitting of `line`'s make at the size of `other`.
Pipe inMakeOf(const Pipe& line, const Pipe& other) {
    if (const Pipe* own = stockSize(line.system, other.nominal)) return *own;
    Pipe made = line;
    made.nominal = other.nominal;
    made.soldByOutside = false;
    return made;
}

// "6", "X", "4": larger first; "4" alone where both are one size.
std::string sizesBeside(const Pipe& line, const Pipe& other, const char* between) {
    if (line.nominal == other.nominal) return sizeNumber(line);
    const bool up = line.nominal < other.nominal;
    const std::string own = sizeNumber(line), others = sizeNumber(inMakeOf(line, other));
    return up ? others + between + own : own + between + others;
}
// "6X4SDR35"
std::string sizesWord(const Pipe& line, const Pipe& other) {
    const std::string system = requireSystem(line);
    requireSystem(other);
    return sizesBeside(line, other, "X") + system;
}
std::string sizesName(const Pipe& line, const Pipe& other) {
    if (line.nominal == other.nominal) return line.name;
    return sizesBeside(line, other, " x ") + " " + line.system;
}

Text named(const char* english, const char* spanish, const std::string& sizes) {
    return {english + (" " + sizes), spanish + (" " + sizes)};
}

Piece elbow(PieceKind kind, const Pipe& pipe, Angle angle) {
    const std::string degrees = plain(angle.degrees());
    return {.kind = kind,
            .code = "BEND" + plain(std::floor(angle.degrees())) + "-" + pipeWord(pipe),
            .name = {degrees + " bend " + pipe.name, "codo de " + degrees + ", " + pipe.name},
            .sockets = {{pipe, 2}}};
}

[[noreturn]] void refuse(NodeKind kind) {
    throw Error(Error::Kind::BadArgument, "kind", info(kind).name,
                {"a kind that a piece is set for", "una clase para la que se pone una pieza"});
}

}  // namespace

std::string pipeWord(const Pipe& pipe) {
    const std::string system = requireSystem(pipe);
    return sizeNumber(pipe) + system;
}

std::string pipeCode(const Pipe& pipe) { return "PIPE-" + pipeWord(pipe) + (pipe.perforated ? "PERF" : ""); }

Pipe riserFor(const Pipe& line) {
    const Pipe* smaller =
        line.nominal > largestRiser ? stockSize(requireSystem(line), largestRiser) : nullptr;
    return smaller != nullptr ? *smaller : line;
}

Piece wye(const Pipe& line, const Pipe& branch) {
    return {.kind = PieceKind::Wye,
            .code = "WYE-" + sizesWord(line, branch),
            .name = named("wye", "ye", sizesName(line, branch)),
            .sockets = {{line, 2}, {inMakeOf(line, branch), 1}}};
}

Piece reducer(const Pipe& line, const Pipe& before) {
    return {.kind = PieceKind::Reducer,
            .code = "REDUCER-" + sizesWord(line, before),
            .name = named("reducer", "reducción", sizesName(line, before)),
            .sockets = {{line, 1}, {inMakeOf(line, before), 1}}};
}

Piece bend(const Pipe& pipe, Angle angle) { return elbow(PieceKind::Bend, pipe, angle); }

Piece riserBend(const Pipe& riser) {
    Piece piece = elbow(PieceKind::RiserBend, riser, Angle::degrees(45));
    piece.name += {" for the riser", ", para el tubo vertical"};
    return piece;
}

Piece coupling(const Pipe& pipe) {
    return {.kind = PieceKind::Coupling,
            .code = "COUPLING-" + pipeWord(pipe),
            .name = named("coupling", "cople", pipe.name),
            .sockets = {{pipe, 2}}};
}

Piece adapter(const Pipe& pipe, const Pipe& next) {
    const std::string system = requireSystem(next);
    return {.kind = PieceKind::Adapter,
            .code = "ADAPTER-" + pipeWord(pipe) + "-" + system,
            .name = {"adapter " + pipe.name + " to " + system, "adaptador " + pipe.name + " a " + system},
            .sockets = {{pipe, 1}, {inMakeOf(next, pipe), 1}}};
}

Piece body(NodeKind kind, const Pipe& pipe) {
    const char* prefix = info(kind).body;
    if (prefix == nullptr) refuse(kind);
    const bool tee = info(kind).bubbles;
    const bool cleanout = kind == NodeKind::Cleanout;
    return {.kind = PieceKind::Body,
            .code = prefix + pipeWord(pipe),
            .name = tee        ? named("tee", "te", pipe.name)
                    : cleanout ? named("cleanout fitting", "registro de limpieza", pipe.name)
                               : named("hub", "boquilla", pipe.name),
            .sockets = {{pipe, tee ? 3U : 1U}}};
}

std::string sizeWord(std::string_view typed) {
    std::string word;
    for (const char letter : typed)
        if (letter != ' ' && letter != '"') word += letter == 'x' ? 'X' : letter;
    const std::size_t cross = word.find('X');
    const bool square = cross != word.npos && word.substr(0, cross) == word.substr(cross + 1);
    return square ? word.substr(0, cross) : word;
}

Piece device(NodeKind kind, const Pipe& pipe) {
    const char* prefix = info(kind).device;
    if (prefix == nullptr) refuse(kind);
    if (kind == NodeKind::Basin) return device(kind, pipe, usualBasin);
    std::string code = prefix;
    // Grates and guards go by the size alone, what is joined to the pipe by its make too.
    const bool joined = kind == NodeKind::Downspout || kind == NodeKind::Cap || kind == NodeKind::Curb ||
                        kind == NodeKind::ExistingPipe;
    const std::string word = pipeWord(pipe);
    if (code.ends_with('-')) code += joined ? word : sizeNumber(pipe);
    return device(kind, pipe, code);
}

Piece device(NodeKind kind, const Pipe& pipe, const std::string& code) {
    Piece piece{.kind = PieceKind::Device, .code = code, .name = Text::same(code)};
    const bool onPipeEnd = info(kind).endsLine && !info(kind).bubbles && kind != NodeKind::PumpBasin;
    if (kind == NodeKind::Downspout || kind == NodeKind::Cap || onPipeEnd) piece.sockets = {{pipe, 1}};
    return piece;
}

Piece leaderAdapter(const std::string& leader, const Pipe& riser) {
    return device(NodeKind::Downspout, riser,
                  info(NodeKind::Downspout).device + leader + "-" + pipeWord(riser));
}

Piece basinRing(const std::string& basin) {
    return {.kind = PieceKind::Device, .code = basin + "-RISER", .name = Text::same(basin + "-RISER")};
}

Piece pump() { return {.code = "PUMP", .name = {"pump", "bomba"}}; }

Piece checkValve(const Pipe& pipe) {
    requireSystem(pipe);
    return {.code = "CHECK-VALVE-" + sizeNumber(pipe),
            .name = named("check valve", "válvula de retención", pipe.name),
            .sockets = {{pipe, 2}}};
}

std::optional<Piece> pumpStandby(PowerOut powerOut) {
    switch (powerOut) {
        case PowerOut::Alarm:
            return Piece{.code = "PUMP-ALARM", .name = {"high water alarm", "alarma de nivel alto"}};
        case PowerOut::SecondPump:
            return pump();
        case PowerOut::Battery:
            return Piece{.code = "PUMP-BATTERY", .name = {"battery pump", "bomba de batería"}};
        case PowerOut::Generator:
            return Piece{.code = "PUMP-GENERATOR", .name = {"generator", "generador"}};
        default:
            return std::nullopt;
    }
}

double cementPints(const Sockets& sockets, const Ruleset& rules) {
    if (sockets.pipe.joint != Joint::SolventWeld) return 0;
    const double size = sockets.pipe.nominal;
    const char* rule = size < 4   ? "glue.joints.3in"
                       : size < 6 ? "glue.joints.4in"
                       : size < 8 ? "glue.joints.6in"
                                  : "glue.joints.8in";
    return static_cast<double>(sockets.count) / rules.number(rule);
}

double cementPints(const Piece& piece, const Ruleset& rules) {
    double pints = 0;
    for (const Sockets& sockets : piece.sockets) pints += cementPints(sockets, rules);
    return pints * static_cast<double>(piece.count);
}

std::size_t socketCount(const Piece& piece) {
    std::size_t count = 0;
    for (const Sockets& sockets : piece.sockets) count += sockets.count;
    return count * piece.count;
}

}  // namespace trenchbook
