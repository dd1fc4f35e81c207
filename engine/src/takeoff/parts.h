// What the parts of a takeoff hand to each other.
#pragma once

#include <deque>
#include <string>
#include <unordered_map>
#include <utility>
#include <vector>

#include "trenchbook/rules/standing.h"
#include "trenchbook/takeoff/takeoff.h"

#pragma GCC visibility push(hidden)
namespace trenchbook::counting {

// The runs that meet at a node.
struct Ends {
    std::vector<std::size_t> arriving;
    std::size_t leaving = Network::none;  // the first of them

    bool any() const { return leaving != Network::none || !arriving.empty(); }
};

// Ends by the network's number of a node.
std::vector<Ends> endsOf(const Network& lines);

Finding notCounted(Part part, std::size_t row, Standing rule, Text says,
                   Severity severity = Severity::NotJudged);

// "2.02 ft", "0.62 m".
std::string said(Length length, UnitSystem units, int decimals);
std::string said(Volume volume, UnitSystem units, int decimals);
std::string said(Area area, UnitSystem units, int decimals);
Text joined(const std::vector<Text>& parts, const char* between);

// Codes as price lists spell them: looked up like node names.
class Codes {
  public:
    explicit Codes(const TakeoffTerms& terms);

    // The code to buy for a piece's code.
    std::string bought(const std::string& code) const;
    // Of a pipe: the code that it is bought by, and the length of its stick; none where it is not known.
    const std::string& boughtPipe(const Pipe& pipe) const { return known(pipe).code; }
    std::optional<Length> stick(const Pipe& pipe) const { return known(pipe).stick; }

  private:
    // A job has few pipes and many lengths of them: each pipe is looked up once.
    struct Known {
        Pipe pipe;
        std::string code;
        std::optional<Length> stick;
    };
    const Known& known(const Pipe& pipe) const;
    mutable std::deque<Known> known_;

    std::unordered_map<std::string, std::string> buyAs_;
    std::unordered_map<std::string, Length> sticks_;
};

std::vector<RunTakeoff> countRuns(const Job& job, const SolvedJob& solved,
                                  const std::vector<std::optional<Length>>& sticks,
                                  std::vector<Finding>& findings);

// Joints between the sticks that make a length.
std::size_t bellsOf(Length length, Length stick);

std::vector<NodeTakeoff> countNodes(const Job& job, const SolvedJob& solved, const Codes& codes,
                                    const std::vector<RunTakeoff>& runs, std::vector<Finding>& findings);

Bulk sumUp(const Job& job, const SolvedJob& solved, const TakeoffTerms& terms, const Takeoff& takeoff,
           std::vector<Finding>& findings);

std::vector<WorkAmount> worksOf(const Job& job, const SolvedJob& solved, const TakeoffTerms& terms,
                                const Takeoff& takeoff, std::vector<Finding>& findings);

std::vector<TakeoffLine> linesOf(const Job& job, const Codes& codes, const TakeoffTerms& terms,
                                 const Takeoff& takeoff, std::vector<Finding>& findings);

}  // namespace trenchbook::counting
#pragma GCC visibility pop
