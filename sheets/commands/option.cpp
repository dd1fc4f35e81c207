#include "commands/option.h"

#include <cmath>

#include "jobbook/refused.h"
#include "jobbook/value_text.h"

namespace trenchbook::sheets {

Steps noteOption(const Book& job, const Book& other, const std::string& file, const std::string& name,
                 double day) {
    if (other.names.count("price_total") == 0)
        throw Refused(file + " is not a job workbook: it has no price");
    const Value& price = other.value("price_total");
    const std::string check = other.text("quote_check");
    if (!std::holds_alternative<double>(price) || check.rfind("NO", 0) == 0)
        throw Refused(file + " has no price to compare with: " + check);
    if (other.text("units") != job.text("units")) throw Refused(file + " is in other units than this job");

    const BookPart& options = job.tableFor("Options");
    int place = 0;
    for (const Row& row : job.rows(options)) {
        place = row.ready;
        if (row.text("File") == file) break;
        ++place;
    }
    const int row = options.firstReady() + place;
    if (row > options.lastReady()) throw Refused("Options on Quote has no row left");
    Steps steps;
    const auto put = [&](const char* heading, const Value& value) {
        steps.put({options.at.sheet, job.column(options, heading), row}, value);
    };
    put("Option", name);
    put("Its price", price);
    put("On", day);
    put("File", file);
    return steps;
}

std::string optionNoted(const Book& job, const std::string& file) {
    for (const Row& row : job.rows(job.tableFor("Options"))) {
        if (row.text("File") != file) continue;
        const auto price = row.number("Its price"), against = row.number("Against this one");
        return row.text("Option") + ": $" + moneyText(price.value_or(0)) +
               (against ? ", " + moneyText(std::abs(*against)) + (*against < 0 ? " less" : " more") +
                              " than this job\n"
                        : "; this job has no price yet\n");
    }
    return "";
}

}  // namespace trenchbook::sheets
