#include "commands/learn.h"

#include <algorithm>
#include <cmath>
#include <cstdio>

#include "jobbook/refused.h"

namespace trenchbook::sheets {
namespace {

std::string threeDecimals(double value) {
    char text[40];
    std::snprintf(text, sizeof text, "%.3f", value);
    return text;
}

void requireBoth(const Book& ledger, const Book& job) {
    if (ledger.form("Ledger") == nullptr || ledger.table("Hours") == nullptr)
        throw Refused(said(job, {"The ledger is none: it has no table Hours",
                                 "El libro de obras no lo es: no tiene la tabla Hours"}));
    if (job.table("Labor") == nullptr || job.table("Close-out") == nullptr)
        throw Refused(said(
            job, {"The job is none: it has no table Labor", "La obra no lo es: no tiene la tabla Labor"}));
}

std::optional<double> numberOf(const Book& book, const std::string& name) {
    const Value& value = book.value(name);
    const double* number = std::get_if<double>(&value);
    return number == nullptr ? std::nullopt : std::optional(*number);
}

// Rows of a table are filled from its first free one on.
class Filler {
  public:
    Filler(const Book& book, const Book& job, const std::string& table, Steps& steps)
        : book_(book), job_(job), table_(book.tableFor(table)), steps_(steps) {
        for (const Row& row : book.rows(table_)) next_ = std::max(next_, row.ready + 1);
    }

    void row(const std::vector<std::pair<const char*, Value>>& cells) {
        const int at = table_.firstReady() + next_++;
        if (at > table_.lastReady())
            throw Refused(table_.name + said(job_, {" has no row left: insert rows above its last one",
                                                    " ya no tiene filas: inserte filas sobre la última"}));
        for (const auto& [heading, value] : cells)
            if (!isBlank(value)) steps_.put({table_.at.sheet, book_.column(table_, heading), at}, value);
    }

  private:
    const Book &book_, &job_;
    const BookPart& table_;
    Steps& steps_;
    int next_ = 0;
};

}  // namespace

Learned learnFrom(const Book& ledger, const Book& job, double today) {
    requireBoth(ledger, job);
    const BookPart &rates = ledger.tableFor("Rates"), &labor = job.tableFor("Labor");
    const std::vector<Row> known = ledger.rows(rates);
    Learned learned;
    for (const Row& line : job.rows(labor)) {
        const auto rate = std::find_if(known.begin(), known.end(), [&](const Row& row) {
            return row.text("Work") == line.text("Work") && row.number("Jobs").value_or(0) > 0;
        });
        if (rate == known.end()) continue;
        const std::optional<double> hours = rate->number("Learned");
        const std::string check = rate->text("Check");
        if (!hours || check.rfind("NO", 0) == 0)
            throw Refused("Rates, " + line.text("Work") + ": " +
                          (check.empty() ? said(job, {"nothing is learned", "no se aprende nada"}) : check));
        if (rate->text("Unit") != line.text("Unit"))
            throw Refused("Rates, " + line.text("Work") +
                          said(job, {": the ledger counts it by ", ": el libro lo cuenta por "}) +
                          rate->text("Unit") + said(job, {", the job by ", ", la obra por "}) +
                          line.text("Unit"));
        const double rounded = std::round(*hours * 1e4) / 1e4;
        const auto put = [&](const char* heading, double value) {
            learned.steps.put({labor.at.sheet, job.column(labor, heading), labor.firstReady() + line.ready},
                              value);
        };
        put("Learned", rounded);
        put("From jobs", *rate->number("Jobs"));
        put("Learned on", today);
        const std::optional<double> kept = line.number("Hours each"), misses = rate->number("Misses by");
        learned.list += "  " + line.text("Work") + ": " + (kept ? threeDecimals(*kept) : "?") + " -> " +
                        threeDecimals(rounded) + said(job, {", from ", ", de "}) + rate->text("Jobs") +
                        said(job, {" jobs", " obras"}) +
                        (misses ? said(job, {", misses by ", ", falla por "}) +
                                      std::to_string(static_cast<int>(std::lround(100 * *misses))) + " %"
                                : "") +
                        "\n";
        ++learned.rows;
    }
    learned.list =
        said(job, {"Learned, beside the kept hours on Labor: ", "Aprendido, junto a las horas de Labor: "}) +
        std::to_string(learned.rows) + "\n" + learned.list;
    return learned;
}

Learned closeInto(const Book& ledger, const Book& job, double finished) {
    requireBoth(ledger, job);
    const std::string name = job.text("job_name");
    if (name.empty())
        throw Refused(said(job, {"The job has no name on Job", "La obra no tiene nombre en Job"}));
    for (const Row& row : ledger.rows(ledger.tableFor("Jobs")))
        if (row.text("Job") == name)
            throw Refused(said(job, {"The ledger has this job already: ", "El libro ya tiene esta obra: "}) +
                          name);
    const std::string check = job.text("close_check");
    if (check.rfind("NO", 0) == 0 || numberOf(job, "close_cost").value_or(0) <= 0)
        throw Refused(said(job, {"Close-out is not filled in: ", "Close-out no está lleno: "}) +
                      (check.empty() ? said(job, {"no actual cost", "sin costo real"}) : check));
    if (const double open = numberOf(job, "close_open").value_or(0); open > 0)
        throw Refused(said(job, {"Close-out is not filled in: rows without an actual amount: ",
                                 "Close-out no está lleno: filas sin cantidad real: "}) +
                      std::to_string(std::lround(open)));
    Learned closed;
    const std::vector<Row> labor = job.rows(job.tableFor("Labor"));
    Filler hours(ledger, job, "Hours", closed.steps);
    Filler items(ledger, job, "Items", closed.steps);
    const double bought = numberOf(job, "order_date").value_or(finished);
    double estimated = 0, worked = 0, callBacks = 0;
    for (const Row& row : job.rows(job.tableFor("Close-out"))) {
        const std::optional<double> took = row.number("Actual quantity");
        if (const std::string code = row.text("Code"); !code.empty() && took && *took > 0)
            items.row({{"Job", name},
                       {"Bought on", bought},
                       {"Code", code},
                       {"Estimated", row.value("Estimated quantity")},
                       {"Bought", *took},
                       {"Cost", row.value("Actual amount")}});
        if (row.text("Group") == "call-back") callBacks += took.value_or(0);
        if (row.text("Group") != "labor") continue;
        estimated += row.number("Estimated quantity").value_or(0);
        if (!took) {
            closed.list += said(job, {"  not learned from: ", "  no se aprende de: "}) + row.text("What") +
                           said(job, {", no hours\n", ", sin horas\n"});
            continue;
        }
        worked += *took;
        const auto line = std::find_if(labor.begin(), labor.end(), [&](const Row& work) {
            return work.text("Work") == row.text("What");
        });
        if (line == labor.end() || line->number("Quantity").value_or(0) <= 0) {
            closed.list += said(job, {"  not learned from: ", "  no se aprende de: "}) + row.text("What") +
                           said(job, {", no amount of it on Labor\n", ", sin cantidad en Labor\n"});
            continue;
        }
        hours.row({{"Job", name},
                   {"Work", row.text("What")},
                   {"Amount", *line->number("Quantity")},
                   {"Hours", *took},
                   {"Soil factor", line->value("Soil factor")},
                   {"Access factor", line->value("Access factor")}});
        ++closed.rows;
    }
    Filler(ledger, job, "Jobs", closed.steps)
        .row({{"Job", name},
              {"Finished", finished},
              {"Contract", job.value("close_contract")},
              {"Estimated cost", job.value("close_estimate")},
              {"Actual cost", job.value("close_cost")},
              {"Billed", numberOf(job, "invoice_date") ? job.value("close_contract") : Value()},
              {"Paid", job.value("due_paid")},
              {"Estimated hours", estimated > 0 ? Value(estimated) : Value()},
              {"Actual hours", worked > 0 ? Value(worked) : Value()},
              {"Pipe", job.value("qty_pipe_length")},
              {"Soil", job.value("soil")},
              {"Crew", job.value("labor_crew")},
              {"Weather days", job.value("close_weather")},
              {"Call-backs", callBacks}});
    closed.list = said(job, {"Into the ledger:\n", "Al libro de obras:\n"}) + closed.list + "  " + name +
                  ": " + std::to_string(closed.rows) +
                  said(job, {" kinds of work\n", " clases de trabajo\n"});
    return closed;
}

}  // namespace trenchbook::sheets
