#include "jobbook/summary.h"

#include <algorithm>
#include <cctype>
#include <com/sun/star/container/XNamed.hpp>
#include <com/sun/star/table/XColumnRowRange.hpp>
#include <cstdio>
#include <map>
#include <set>

#include "jobbook/value_text.h"
#include "trenchbook/rules/finding.h"

namespace trenchbook::sheets {
namespace {

// The words in front, in either language, whole: "NOT JUDGED: …" is no "NO", "OK; caution: …" is an OK.
bool says(const std::string& verdict, const std::string& word) {
    return verdict.rfind(word, 0) == 0 &&
           (verdict.size() == word.size() || !std::isupper(static_cast<unsigned char>(verdict[word.size()])));
}
bool says(const std::string& verdict, Severity severity) {
    return says(verdict, severityWord(severity).en) || says(verdict, severityWord(severity).es);
}
// What stops the job comes first: NO, then what nobody has judged and other lines in capitals, then CHECK.
int urgency(const std::string& verdict) {
    if (says(verdict, Severity::No)) return 0;
    if (says(verdict, Severity::NotJudged) || verdict.rfind("NO", 0) == 0) return 1;
    return says(verdict, Severity::Check) ? 2 : 3;
}
bool needsALook(const std::string& verdict) { return urgency(verdict) < 3; }

std::string fixed(double value, int decimals) {
    char buffer[64];
    std::snprintf(buffer, sizeof buffer, "%.*f", decimals, value);
    const std::string text = buffer;
    return text.find_first_not_of("-0.") == std::string::npos && text[0] == '-' ? text.substr(1) : text;
}

std::string line(const std::string& label, const std::string& words) {
    std::string text = "  " + label;
    text.resize(std::max<std::size_t>(text.size() + 1, 20), ' ');
    return text + words + "\n";
}

class Summary {
  public:
    explicit Summary(const Document& document)
        : document_(document),
          parts_(shownPartsOf(document)),
          metric_(namedText(document, "units") == "metric") {
        if (const FoundPart* runs = findPart(parts_, "Runs", false)) runs_ = rowsOf(*runs);
        for (const FoundPart& part : parts_) part.isForm() ? judgeForm(part) : judgeTable(part);
        // As the sheets have them within each.
        std::stable_sort(looks_.begin(), looks_.end(), [](const auto& one, const auto& other) {
            return urgency(one.second) < urgency(other.second);
        });
    }

    std::string text() const {
        std::string name = namedText(document_, "job_name");
        std::string out = (name.empty() ? "A job without a name" : name) + "\n";
        out += line("Verdicts", std::to_string(ok_) + (ok_ == 1 ? " row OK, " : " rows OK, ") +
                                    std::to_string(check_) + " to CHECK, " + std::to_string(no_) +
                                    " with NO, " + std::to_string(open_) + " not judged");
        constexpr std::size_t most = 25;
        for (std::size_t n = 0; n < looks_.size() && n < most; ++n)
            out += "    " + looks_[n].first + ": " + looks_[n].second + "\n";
        if (looks_.size() > most)
            out += "    and " + std::to_string(looks_.size() - most) + " more, see the Check columns\n";
        return out + leastSpare() + outletFlows() + price();
    }

  private:
    void judgeForm(const FoundPart& part) {
        const Reference<css::table::XColumnRowRange> lines(part.area.range(), UNO_QUERY_THROW);
        sal_Int32 row = 0;
        for (const auto& cells : valuesOf(part.area)) {
            const std::string label = textOf(cells[0]), verdict = textOf(cells[1]);
            const sal_Int32 here = row++;
            // Job's own summary of the tables, and lines that stand on several sheets, are said once; what a hidden row
            // keeps for other cells is no verdict.
            if (label == "First NO" || !needsALook(verdict) ||
                !isVisible(Reference<css::uno::XInterface>(lines->getRows()->getByIndex(here), UNO_QUERY)) ||
                !said_.insert(verdict).second)
                continue;
            looks_.emplace_back(
                narrow(Reference<css::container::XNamed>(part.area.sheet, UNO_QUERY_THROW)->getName()),
                verdict);
        }
    }

    void judgeTable(const FoundPart& part) {
        for (const Row& row : rowsOf(part)) {
            const std::string verdict = row.text("Check");
            ok_ += says(verdict, "OK");
            check_ += says(verdict, Severity::Check);
            no_ += says(verdict, Severity::No);
            open_ += says(verdict, Severity::NotJudged);
            if (needsALook(verdict)) looks_.emplace_back(part.name + " " + nameOf(part, row), verdict);
        }
    }

    // The row's own name: both ends of a run, else its first cell that is no verdict.
    std::string nameOf(const FoundPart& part, const Row& row) const {
        if (part.name == "Runs") return row.text("From") + " to " + row.text("To");
        for (const std::string& heading : headingsOf(part))
            if (heading != "Verdict" && heading != "Check") return row.text(heading);
        return "";
    }

    std::string leastSpare() const {
        const Row* tightest = nullptr;
        const auto spare = [](const Row& row) { return row.number("Extra fall"); };
        for (const Row& row : runs_)
            if (spare(row) && (tightest == nullptr || *spare(row) < *spare(*tightest))) tightest = &row;
        if (tightest == nullptr) return line("Least spare fall", "not known: no run has its levels yet");
        return line("Least spare fall", fixed(*spare(*tightest), 2) + (metric_ ? " m" : " ft") + " from " +
                                            tightest->text("From") + " to " + tightest->text("To"));
    }

    std::string outletFlows() const {
        std::set<std::string> goOn;
        for (const Row& row : runs_) goOn.insert(row.text("From"));
        std::map<std::string, double> flows;  // several runs may end at one outlet
        std::map<std::string, std::string> lines;
        for (const Row& row : runs_) {
            const std::string end = row.text("To");
            const std::optional<double> flow = row.number("Flow");
            if (end.empty() || goOn.count(end) != 0 || !flow) continue;
            flows[end] += *flow;
            lines[end] = row.text("Line");
        }
        std::string out;
        for (const auto& [end, flow] : flows)
            out += line("Flow at " + end, fixed(flow, metric_ ? 2 : 0) + (metric_ ? " L/s" : " gpm") +
                                              (lines[end].empty() ? "" : " (line " + lines[end] + ")"));
        return out;
    }

    std::string price() const {
        const std::optional<Area> area = namedArea(document_, "price_total");
        if (!area) return "";
        const Value value = valuesOf(*area).at(0).at(0);
        const double* dollars = std::get_if<double>(&value);
        if (dollars == nullptr) return line("Price", "not known yet");
        const bool whole = !says(namedText(document_, "quote_check"), Severity::No);
        return line("Price",
                    "$" + moneyText(*dollars) + (whole ? "" : ", and something is missing in it: see Quote"));
    }

    Document document_;
    std::vector<FoundPart> parts_;
    bool metric_;
    std::vector<Row> runs_;
    int ok_ = 0, check_ = 0, no_ = 0, open_ = 0;
    std::vector<std::pair<std::string, std::string>> looks_;  // row, verdict
    std::set<std::string> said_;
};

}  // namespace

std::string summaryOf(const Document& document) { return Summary(document).text(); }

}  // namespace trenchbook::sheets
