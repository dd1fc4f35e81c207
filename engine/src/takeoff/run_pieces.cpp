// What one run needs: joints between its sticks, an adapter into the next make, trench, bedding, lawn.
#include <cmath>
#include <numbers>

#include "takeoff/parts.h"
#include "trenchbook/core/error.h"
#include "trenchbook/ground/earthwork.h"

namespace trenchbook::counting {
namespace {

// A run that ends where a stick ends needs no more: rounding must not add a joint.
constexpr double hair = 1e-9;

Length trenchWidth(const Run& run, const Ruleset& rules) {
    if (run.trenchWidth) return *run.trenchWidth;
    const double size = run.pipe ? run.pipe->nominal : 0;
    return rules.length(size < 6 ? "trench.width.4in" : size < 8 ? "trench.width.6in" : "trench.width.8in");
}

bool isLawn(CoverSurface surface) {
    return surface == CoverSurface::Lawn || surface == CoverSurface::LawnEnd;
}

// Bank volume below shovelThrow, of a cut that is straight between its ends.
Volume deeper(Length length, Length width, Length cutUp, Length cutDown) {
    const Length low = std::min(cutUp, cutDown) - shovelThrow, high = std::max(cutUp, cutDown) - shovelThrow;
    if (high <= Length()) return Volume();
    if (low >= Length()) return trenchVolume(length, width, low, high);
    return trenchVolume(length * (high / (high - low)), width, Length(), high);
}

class RunCount {
  public:
    RunCount(const Job& job, const SolvedJob& solved, std::size_t row, std::optional<Length> stick,
             const std::vector<bool>& boxes, std::vector<Finding>& findings)
        : job_(job),
          solved_(solved),
          row_(row),
          run_(job.runs[row]),
          stick_(stick),
          boxes_(boxes),
          findings_(findings) {}

    RunTakeoff counted() {
        if (run_.existing) return lies();
        if (!run_.length)
            missing({"the length is not known: pipe, digging and bedding of this run are not counted",
                     "falta el largo: tubo, excavación y cama de este tramo no se cuentan"});
        if (!run_.pipe)
            missing({"the pipe is not known: it is not counted", "falta el tubo: no se cuenta"});
        else if (!run_.pipe->outside)
            add(Severity::No, Standing::RunBareBore,
                {"a bare bore is sold by nobody: choose a stock pipe to count it",
                 "un diámetro interior solo no se vende: elija un tubo comercial para contarlo"});
        else
            joints();
        if (run_.length) trench();
        return std::move(answer_);
    }

  private:
    // Neither bought nor dug; new pipe of another make is joined to it all the same.
    RunTakeoff lies() {
        answer_.bells = 0;
        answer_.cementPints = 0;
        answer_.bank = answer_.bedding = answer_.pipeRoom = answer_.rock = Volume();
        answer_.deepBank = Volume();
        answer_.protect = Length();
        answer_.lawn = Area();
        answer_.paving = Paving();
        const std::size_t next = solved_.lines.downstream(row_);
        if (!run_.pipe || !run_.pipe->outside || next == Network::none || job_.runs[next].existing)
            return std::move(answer_);
        if (const std::optional<Pipe> pipe = nextPipe(); pipe && !fitsInto(*run_.pipe, pipe->system)) {
            answer_.adapter = adapter(*run_.pipe, *pipe);
            answer_.sockets = socketCount(*answer_.adapter);
            answer_.cementPints = cementPints(*answer_.adapter, job_.rules);
        }
        return std::move(answer_);
    }

    void joints() {
        const Pipe& pipe = *run_.pipe;
        if (const std::optional<Pipe> next = nextPipe(); next && !fitsInto(pipe, next->system))
            answer_.adapter = adapter(pipe, *next);
        const double adapterPints = answer_.adapter ? cementPints(*answer_.adapter, job_.rules) : 0;
        answer_.sockets = answer_.adapter ? socketCount(*answer_.adapter) : 0;
        if (!stick_) {
            add(Severity::No, Standing::InputMissing,
                {"no stick length is known for " + pipeCode(pipe),
                 "no se conoce el largo de barra de " + pipeCode(pipe)});
        } else if (run_.length) {
            answer_.bells = bellsOf(*run_.length, *stick_);
            answer_.sockets += *answer_.bells;
            answer_.cementPints = cementPints(Sockets{pipe, *answer_.bells}, job_.rules) + adapterPints;
        }
    }

    // The pipe that this one is pushed into: none at the end of a line, and where a box takes it by a hub.
    std::optional<Pipe> nextPipe() const {
        const std::size_t next = solved_.lines.downstream(row_);
        if (next == Network::none || !job_.runs[next].pipe || !job_.runs[next].pipe->outside)
            return std::nullopt;
        if (boxes_[solved_.lines.toNode(row_)]) return std::nullopt;
        return job_.runs[next].pipe;
    }

    void trench() {
        const Length length = *run_.length, width = trenchWidth(run_, job_.rules);
        answer_.trenchWidth = width;
        const Length bed = job_.rules.length("bedding.depth");
        answer_.bedding = length * width * bed;
        answer_.rock = Volume();
        if (run_.pipe && run_.pipe->outside) {
            const Length outside = *run_.pipe->outside;
            answer_.pipeRoom = outside * outside * (std::numbers::pi / 4) * length;
            if (run_.pipe->perforated) {
                const Length high = bed + outside + job_.rules.length("perforated.rock.over");
                answer_.bedding = Volume();
                answer_.rock = length * width * high - *answer_.pipeRoom;
            }
        }
        bank(length, width);
        if (run_.surfaceUp && run_.surfaceDown)
            surfaces(width);
        else
            missing({"what lies over an end is not known: lawn and paving are not counted",
                     "no se sabe qué hay sobre un extremo: césped y pavimento no se cuentan"});
    }

    // Length at which the cut, straight between the points that are known, reaches cut.protect.
    Length deepAlong() const {
        const SolvedRun& solved = solved_.runs[row_];
        // A cut of the limit to a hair is as deep as the limit.
        const Length limit = job_.rules.length("cut.protect") * (1 - hair);
        Length at, cut = *solved.cutUp, deep;
        const auto to = [&](Length next, Length there) {
            const Length low = std::min(cut, there), high = std::max(cut, there);
            if (low >= limit)
                deep += next - at;
            else if (high >= limit)
                deep += (next - at) * ((high - limit) / (high - low));
            at = next, cut = there;
        };
        for (const GroundPoint& point : solved.between)
            if (point.cut) to(point.at, *point.cut);
        to(*run_.length, *solved.cutDown);
        return deep;
    }

    // Of each stretch between two points whose ground is known, half goes with each of them.
    void surfaces(Length width) {
        answer_.lawn = Area();
        answer_.paving = Paving();
        const auto take = [&](Area area, CoverSurface surface) {
            if (isLawn(surface)) *answer_.lawn += area;
            if (surface == CoverSurface::Walk) answer_.paving->walk += area;
            if (surface == CoverSurface::Drive) answer_.paving->drive += area;
            if (surface == CoverSurface::Street) answer_.paving->street += area;
        };
        Length at;
        CoverSurface before = *run_.surfaceUp;
        const auto to = [&](Length next, CoverSurface surface) {
            const Area half = (next - at) * width * 0.5;
            take(half, before);
            take(half, surface);
            at = next, before = surface;
        };
        for (const GroundPoint& point : solved_.runs[row_].between)
            if (point.surface) to(point.at, *point.surface);
        to(*run_.length, *run_.surfaceDown);
    }

    void bank(Length length, Length width) {
        const SolvedRun& solved = solved_.runs[row_];
        if (!solved.cutUp || !solved.cutDown) {
            add(Severity::NotJudged, Standing::InputWaits,
                {"no cut yet: digging is not counted", "aún sin corte: la excavación no se cuenta"});
            return;
        }
        try {
            Length at, cut = *solved.cutUp;
            Volume bank, deep;
            const auto to = [&](Length next, Length cutThere) {
                if (next > at) {
                    bank += trenchVolume(next - at, width, cut, cutThere);
                    deep += deeper(next - at, width, cut, cutThere);
                }
                at = next, cut = cutThere;
            };
            for (const GroundPoint& point : solved.between)
                if (point.cut) to(point.at, *point.cut);
            to(length, *solved.cutDown);
            answer_.bank = bank;
            answer_.deepBank = deep;
            answer_.protect = deepAlong();
        } catch (const Error&) {
            add(Severity::No, Standing::PipeInGround,
                {"the trench bottom lies over the ground: digging is not counted",
                 "el fondo de zanja queda sobre el terreno: la excavación no se cuenta"});
        }
    }

    void missing(Text says) { add(Severity::NotJudged, Standing::InputMissing, std::move(says)); }
    void add(Severity severity, Standing rule, Text says) {
        findings_.push_back(notCounted(Part::Runs, row_, rule, std::move(says), severity));
    }

    const Job& job_;
    const SolvedJob& solved_;
    std::size_t row_;
    const Run& run_;
    std::optional<Length> stick_;
    const std::vector<bool>& boxes_;
    std::vector<Finding>& findings_;
    RunTakeoff answer_;
};

}  // namespace

std::size_t bellsOf(Length length, Length stick) {
    const double sticks = std::ceil(length / stick - hair);
    return sticks > 1 ? static_cast<std::size_t>(sticks) - 1 : 0;
}

std::vector<RunTakeoff> countRuns(const Job& job, const SolvedJob& solved,
                                  const std::vector<std::optional<Length>>& sticks,
                                  std::vector<Finding>& findings) {
    // By the network's number of a node: a basin or channel, which takes a pipe by a hub.
    std::vector<bool> boxes(solved.lines.nodes(), false);
    for (const Node& node : job.nodes)
        if (const std::size_t index = node.blank ? Network::none : solved.lines.node(node.name);
            index != Network::none)
            boxes[index] = boxes[index] || node.kinds.stillsWater();
    std::vector<RunTakeoff> counted(job.runs.size());
    for (std::size_t row = 0; row < job.runs.size(); ++row)
        if (!job.runs[row].blank)
            counted[row] = RunCount(job, solved, row, sticks[row], boxes, findings).counted();
    return counted;
}

}  // namespace trenchbook::counting
