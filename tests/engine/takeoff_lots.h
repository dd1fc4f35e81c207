// Small lots for the tests of the takeoff: level ground, every trench 3 ft deep, inverts 2.75 ft under it.
#pragma once

#include <map>
#include <string>
#include <vector>

#include "trenchbook/takeoff/takeoff.h"

namespace trenchbook::lots {

inline constexpr double groundFeet = 100, invertFeet = 97.25, cutFeet = 3;

class Lot {
  public:
    Lot& run(std::string from, std::string to, double feet, const std::string& pipe,
             CoverSurface surface = CoverSurface::Lawn) {
        Run made{.from = std::move(from), .to = std::move(to), .length = Length::feet(feet)};
        made.pipe = stockPipe(pipe);
        made.surfaceUp = made.surfaceDown = surface;
        made.blank = false;
        job.runs.push_back(made);
        return *this;
    }
    Lot& node(std::string name, const std::string& kinds, double turn = 0, std::string device = "") {
        Node made{.name = std::move(name), .kinds = nodeKinds(kinds), .ground = Length::feet(groundFeet)};
        if (turn > 0) made.turn = Angle::degrees(turn);
        made.device = std::move(device);
        made.kindGiven = true;
        made.blank = false;
        job.nodes.push_back(made);
        return *this;
    }

    // A row of Water that gives a channel its length.
    Lot& trenchDrain(std::string node, double feet) {
        JobInlet made{.name = "drain at " + node,
                      .node = std::move(node),
                      .entersBy = EntersBy::TrenchDrain,
                      .length = Length::feet(feet)};
        made.blank = false;
        job.inlets.push_back(made);
        return *this;
    }

    SolvedJob solved() const {
        std::vector<std::string> from, to;
        for (const Run& run : job.runs) {
            from.push_back(run.from);
            to.push_back(run.to);
        }
        SolvedJob made{.lines = Network(from, to)};
        made.runs.resize(job.runs.size());
        for (SolvedRun& run : made.runs) {
            run.invertUp = run.invertDown = Length::feet(invertFeet);
            run.cutUp = run.cutDown = Length::feet(cutFeet);
        }
        made.nodes.resize(job.nodes.size());
        made.crossings.resize(job.crossings.size());
        return made;
    }
    Takeoff takeoff() const { return takeOff(job, solved(), terms); }

    Job job;
    TakeoffTerms terms = tenFootSticks();

  private:
    static TakeoffTerms tenFootSticks() {
        TakeoffTerms terms;
        for (const StockPipe& row : stock()) terms.sticks[pipeCode(row.pipe)] = Length::feet(10);
        return terms;
    }
};

// All codes of a takeoff with their amounts in the units of the job; -1 where one is not known.
inline std::map<std::string, double> amounts(const Takeoff& takeoff, UnitSystem units = UnitSystem::US) {
    std::map<std::string, double> all;
    for (const TakeoffLine& line : takeoff.lines) all[line.code] += line.net ? line.net->in(units) : -1;
    return all;
}

// The same without pipe and bulk goods: pieces alone.
inline std::map<std::string, double> pieces(const Takeoff& takeoff) {
    std::map<std::string, double> all;
    for (const RunTakeoff& run : takeoff.runs)
        if (run.adapter) all[run.adapter->code] += static_cast<double>(run.adapter->count);
    for (const NodeTakeoff& node : takeoff.nodes)
        for (const Piece& piece : node.pieces) all[piece.code] += static_cast<double>(piece.count);
    return all;
}

inline std::string english(std::span<const Finding> findings) {
    std::string all;
    for (const Finding& finding : findings) all += (all.empty() ? "" : " | ") + finding.says.en;
    return all;
}

}  // namespace trenchbook::lots
