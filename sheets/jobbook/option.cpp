#include "jobbook/option.h"

#include "jobbook/fill.h"
#include "jobbook/refused.h"
#include "jobbook/value_text.h"

namespace trenchbook::sheets {

std::string noteOption(const Document& job, const Document& other, const std::string& file,
                       const std::string& name) {
    const std::optional<Area> total = namedArea(other, "price_total");
    if (!total) throw Refused(file + " is not a job workbook: it has no price");
    const Value price = valuesOf(*total).at(0).at(0);
    const std::string check = namedText(other, "quote_check");
    if (!std::holds_alternative<double>(price) || check.rfind("NO", 0) == 0)
        throw Refused(file + " has no price to compare with: " + check);
    if (namedText(other, "units") != namedText(job, "units"))
        throw Refused(file + " is in other units than this job");

    const std::vector<FoundPart> parts = partsOf(job);
    const FoundPart& options = partFor(parts, "Options", false);
    sal_Int32 place = 0;
    for (const Row& row : rowsOf(options)) {
        place = row.ready;
        if (row.text("File") == file) break;
        ++place;
    }
    if (place > options.lastReady() - options.firstReady()) throw Refused("Options on Quote has no row left");
    put(options, "Option", place, {name});
    put(options, "Its price", place, {price});
    put(options, "On", place, {today()});
    put(options, "File", place, {file});
    calculate(job);
    for (const Row& row : rowsOf(options)) {
        if (row.ready != place) continue;
        const auto against = row.number("Against this one");
        return name + ": $" + moneyText(std::get<double>(price)) +
               (against ? ", " + moneyText(std::abs(*against)) + (*against < 0 ? " less" : " more") +
                              " than this job\n"
                        : "; this job has no price yet\n");
    }
    return "";
}

}  // namespace trenchbook::sheets
