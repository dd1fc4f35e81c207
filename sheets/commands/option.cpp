#include "commands/option.h"

#include <cmath>

#include "jobbook/refused.h"
#include "jobbook/value_text.h"

namespace trenchbook::sheets {

Steps noteOption(const Book& job, const Book& other, const std::string& file, const std::string& name,
                 double day) {
    if (other.names.count("price_total") == 0)
        throw Refused(file + said(job, {" is not a job workbook: it has no price",
                                        " no es un libro de obra: no tiene precio"}));
    const Value& price = other.value("price_total");
    const std::string check = other.text("quote_check");
    if (!std::holds_alternative<double>(price) || check.rfind("NO", 0) == 0)
        throw Refused(file +
                      said(job, {" has no price to compare with: ", " no tiene precio con que comparar: "}) +
                      check);
    if (other.text("units") != job.text("units"))
        throw Refused(
            file + said(job, {" is in other units than this job", " está en otras unidades que esta obra"}));

    const BookPart& options = job.tableFor("Options");
    int place = 0;
    for (const Row& row : job.rows(options)) {
        place = row.ready;
        if (row.text("File") == file) break;
        ++place;
    }
    const int row = options.firstReady() + place;
    if (row > options.lastReady())
        throw Refused(
            said(job, {"Options on Quote has no row left", "Options en Quote ya no tiene filas libres"}));
    Steps steps;
    const auto put = [&](const char* heading, const Value& value) {
        steps.put({options.at.sheet, job.column(options, heading), row}, value);
    };
    put("Option", name);
    put("Its price", price);
    put("On", day);
    put("This job then", job.value("price_total"));
    put("File", file);
    return steps;
}

std::string optionNoted(const Book& job, const std::string& file) {
    for (const Row& row : job.rows(job.tableFor("Options"))) {
        if (row.text("File") != file) continue;
        const auto price = row.number("Its price"), against = row.number("Against this one");
        const Text compared =
            !against ? Text("; this job has no price yet\n", "; esta obra aún no tiene precio\n")
                     : Text::same(", " + moneyText(std::abs(*against))) +
                           (*against < 0 ? Text(" less than this job\n", " menos que esta obra\n")
                                         : Text(" more than this job\n", " más que esta obra\n"));
        return row.text("Option") + ": $" + moneyText(price.value_or(0)) + said(job, compared);
    }
    return "";
}

}  // namespace trenchbook::sheets
