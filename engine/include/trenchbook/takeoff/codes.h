// The pieces that lines are made of, and the codes they are bought by.
//
//     wye(stockPipe("6 SDR35"), stockPipe("4 SDR35")).code;           // "WYE-6X4SDR35"
//     bend(stockPipe("4 SDR35"), Angle::degrees(22.5)).code;          // "BEND22-4SDR35"
//     adapter(stockPipe("4 SDR35"), stockPipe("4 SCH40")).code;       // "ADAPTER-4SDR35-SCH40"
//
// A code says what a thing is: its kind, its sizes in inches (larger first), its make. A size with a fraction
// is written with a point: PIPE-1.5SCH40. Codes stand on the price list of a job: they are made here alone and
// never change. All makers refuse a bare bore, which nobody stocks: BadArgument "pipe".
//
// Sockets are the joints that a piece brings; each is made at its own size, so that a 6 x 4 wye takes the
// cement of two 6 in sockets and one 4 in socket.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "trenchbook/core/text.h"
#include "trenchbook/core/units.h"
#include "trenchbook/job/job.h"
#include "trenchbook/lines/node_kind.h"
#include "trenchbook/pipe/stock.h"
#include "trenchbook/rules/rules.h"

namespace trenchbook {

enum class PieceKind { Wye, Reducer, Bend, RiserBend, Coupling, Adapter, Body, Device };

struct Sockets {
    Pipe pipe;  // that is joined
    std::size_t count = 0;
};

struct Piece {
    PieceKind kind = PieceKind::Device;
    std::string code = {};
    Text name = {};  // "wye 6 x 4 SDR35"; of a device its code
    std::size_t count = 1;
    std::vector<Sockets> sockets = {};  // of one piece
};

// "4SDR35": the pipe as codes write it.
std::string pipeWord(const Pipe& pipe);
// "PIPE-4SDR35".
std::string pipeCode(const Pipe& pipe);
// Upright pipe into a line: as the line, but 4 in where the line is larger and its make has that size.
Pipe riserFor(const Pipe& line);

// A branch into a line. Of one size: "WYE-4SDR35".
Piece wye(const Pipe& line, const Pipe& branch);
// Where the line grows, or, read the other way, gets smaller.
Piece reducer(const Pipe& line, const Pipe& before);
Piece bend(const Pipe& pipe, Angle angle);
// The same elbow, turning a riser up.
Piece riserBend(const Pipe& riser);
Piece coupling(const Pipe& pipe);
// From a pipe into the fittings of the next one's make, at the size of the first.
Piece adapter(const Pipe& pipe, const Pipe& next);
// The size of a leader, a grate or a rim as codes write it: "3x4" is 3X4, "12x12" is 12.
std::string sizeWord(std::string_view typed);

// The fitting that a kind of node is built on (node_kind.h): the cleanout on its riser, the hub through which a
// pipe enters a box, the tee in the pit. Errors: BadArgument "kind" for a kind without one.
Piece body(NodeKind kind, const Pipe& pipe);
// What is set there where Nodes names no piece: the downspout's adapter, basin, channel, grate, guard, cap.
// Errors: BadArgument "kind" for a kind without one.
Piece device(NodeKind kind, const Pipe& pipe);
// The same with the code that Nodes names.
Piece device(NodeKind kind, const Pipe& pipe, const std::string& code);
// From a leader of this size into the riser: "DOWNSPOUT-3X4-4SDR35".
Piece leaderAdapter(const std::string& leader, const Pipe& riser);
// A ring that makes a basin deeper: the basin's code with -RISER.
Piece basinRing(const std::string& basin);

// What stands in a pump basin, and the valve on its discharge or at the end of a line: "PUMP", "CHECK-VALVE-2".
Piece pump();
Piece checkValve(const Pipe& pipe);
// What is there beside the pump when the power is out: "PUMP-ALARM", "PUMP-BATTERY", "PUMP-GENERATOR", or a second
// "PUMP"; none where nothing is bought for it.
std::optional<Piece> pumpStandby(PowerOut powerOut);

// Cement for the sockets, in pints, by the rules glue.joints.*; none for pipe that is not cemented.
double cementPints(const Sockets& sockets, const Ruleset& rules);
double cementPints(const Piece& piece, const Ruleset& rules);  // of all its count
std::size_t socketCount(const Piece& piece);                   // of all its count

}  // namespace trenchbook
