// Every limit used, to be edited: county, owners' association and supplier have their own.
#include "trenchbook/rules/rules.h"

#include "templates/job.h"

namespace trenchbook::sheets {
namespace {

// Every digit: a slope of exactly the least must pass.
std::string exact(double value) {
    char digits[32];
    std::snprintf(digits, sizeof digits, "%.17g", value);
    return std::stod(plain(value, 6)) == value ? plain(value, 6) : digits;
}

}  // namespace

Sheet rulesSheet(const JobSize&) {
    Table table;
    table.name = "Rules";
    table.columns = {
        {.heading = "Key",
         .kind = Kind::Label,
         .width = 48,
         .note = "Name of the rule; formulas look it up. Do not change it."},
        {.heading = "Value",
         .kind = Kind::Kept,
         .format = show::general,
         .width = 20,
         .note = "In the unit beside it. Change it where a code or the owner says so."},
        {.heading = "Unit", .kind = Kind::Label, .format = show::general, .width = 22},
        {.heading = "What it is", .kind = Kind::Label, .width = 74},
        {.heading = "Source", .kind = Kind::Label, .width = 82},
        {.heading = "Ask", .kind = Kind::Label, .width = 46},
    };
    for (const Rule& rule : rules()) {
        const UnitInfo& unit = info(rule.unit);
        const double us = rule.in(UnitSystem::US);
        const double metric = rule.in(UnitSystem::Metric);
        const bool same = unit.us.en == unit.metric.en;
        table.content.push_back(
            {rule.key, same ? exact(us) : "=IF(units=\"metric\";" + exact(metric) + ";" + exact(us) + ")",
             same ? unit.us.en : "=IF(units=\"metric\";\"" + unit.metric.en + "\";\"" + unit.us.en + "\")",
             rule.says.en, rule.source, rule.ask.en});
    }
    table.rows = static_cast<int>(table.content.size());
    Sheet sheet;
    sheet.name = "Rules";
    sheet.title = "Rules";
    sheet.purpose =
        "Every limit that the checks use, with its source. Sources disagree; local codes and licensed practice decide. "
        "Rules without a number stand on Tables.";
    sheet.parts = {table};
    sheet.freezeColumns = 1;
    return sheet;
}

}  // namespace trenchbook::sheets
