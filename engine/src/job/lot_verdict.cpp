#include "trenchbook/job/lot_verdict.h"

#include <optional>
#include <string>
#include <vector>

#include "trenchbook/rules/finding.h"

namespace trenchbook {
namespace {

// What is said of a row, the worst first when it is told.
class Said {
  public:
    void tell(Severity severity, Text says) {
        Finding finding{.severity = severity, .rule = "layout", .says = std::move(says)};
        findings_.push_back(std::move(finding));
    }
    void unusable(const std::vector<Unusable>& cells) {
        for (const Unusable& cell : cells) tell(Severity::No, cell.why);
    }
    void tie(const DrawnTape& tape, const Text& name) {
        if (!tape.trouble.empty()) tell(Severity::Check, name + tape.trouble);
        if (tape.slip)
            tell(Severity::Check, name + Text{"does not fit: tape it again", "no coincide: mida otra vez"});
    }
    // `fine` is what is told of a row that nothing is wrong with.
    LotVerdict told(const Text& fine) {
        sortFindings(findings_);
        const std::optional<Severity> worst = verdict(findings_);
        if (worst) return {severityWord(*worst), checkText(findings_)};
        return {Text::same("OK"), fine.empty() ? Text::same("OK") : Text::same("OK: ") + fine};
    }

  private:
    std::vector<Finding> findings_;
};

}  // namespace

LotVerdict lotPointVerdict(const Job& job, std::size_t row) {
    if (row >= job.lotPoints.size() || job.lotPoints[row].blank) return {};
    Said said;
    said.unusable(job.lotPoints[row].unusable);
    if (row >= job.drawn.points.size()) return said.told({});
    for (std::size_t i = 0; i < job.drawn.pointTies[row].size(); ++i)
        said.tie(job.drawn.pointTies[row][i], Text::same("Tie " + std::to_string(i + 1) + ": "));
    const DrawnPlace& place = job.drawn.points[row];
    if (!place.place.placed())
        said.tell(Severity::NotJudged, place.says);
    else if (place.place.by == PlacedBy::Turn || place.place.uncertain > weakPlace)
        said.tell(Severity::Check, place.says);
    return said.told(place.says);
}

LotVerdict lotTapeVerdict(const Job& job, std::size_t row) {
    if (row >= job.lotTapes.size() || job.lotTapes[row].blank) return {};
    Said said;
    const LotTape& typed = job.lotTapes[row];
    said.unusable(typed.unusable);
    if (row >= job.drawn.tapes.size()) return said.told({});
    const DrawnTape& tape = job.drawn.tapes[row];
    if (typed.unusable.empty()) said.tie(tape, {});
    if (tape.trouble.empty() && !tape.residual)
        said.tell(Severity::NotJudged, {"a point has no place yet", "un punto aún no tiene lugar"});
    return said.told({});
}

}  // namespace trenchbook
