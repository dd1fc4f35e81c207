// A whole job under storms of many lengths: a row a storm.
#include "catalog/families.h"
#include "catalog/job_argument.h"
#include "catalog/rain_table.h"
#include "catalog/recent.h"
#include "trenchbook/job/storms.h"

namespace trenchbook::addin {
namespace {

constexpr std::size_t rainIndex = 9;  // of the job's arguments

struct TriedTables {
    std::shared_ptr<const SolvedTables> tables;
    std::vector<StormTried> storms;
};

// Numbers and words are asked one after the other: the storms of the last few jobs are kept.
std::shared_ptr<const TriedTables> triedTables(const Arguments& a) {
    static Recent<TriedTables> recent(4);
    const std::shared_ptr<const SolvedTables> tables = solvedTables(a);
    return recent.get(tables->question, [&] {
        std::optional<RainTable> rain;
        if (holdsAnything(a, rainIndex)) rain = rainTable(a, rainIndex);
        return TriedTables{tables, storms(tables->job, tables->solved, rain)};
    });
}

struct NumberColumn {
    const char* heading;
    Measure measure;
    std::optional<double> (*si)(const StormTried&);  // none: blank
};
template <class Kind>
std::optional<double> si(const std::optional<Kind>& quantity) {
    return quantity ? std::optional(quantity->si()) : std::nullopt;
}
std::optional<double> unless(bool without, double si) { return without ? std::nullopt : std::optional(si); }

const std::vector<NumberColumn>& numberColumns() {
    using S = const StormTried&;
    static const std::vector<NumberColumn> columns = {
        {"Duration", Measure::Minutes, [](S s) { return unless(s.duration.si() == 0, s.duration.si()); }},
        {"Rain", Measure::Inches, [](S s) { return unless(!s.inTable, s.depth.si()); }},
        {"Intensity", Measure::InchesPerHour, [](S s) { return unless(!s.inTable, s.intensity.si()); }},
        {"Most of capacity", Measure::Share, [](S s) { return s.share; }},
        {"Least freeboard", Measure::Feet, [](S s) { return si(s.freeboard); }},
        {"Inlets over", Measure::Plain,
         [](S s) { return unless(!s.inTable, static_cast<double>(s.overClean)); }},
        {"Over half blocked", Measure::Plain,
         [](S s) { return unless(!s.inTable, static_cast<double>(s.overHalfBlocked)); }},
        {"Not known", Measure::Plain,
         [](S s) { return unless(!s.inTable, static_cast<double>(s.notKnown)); }},
        {"Pit filled", Measure::Share, [](S s) { return s.pitFilled; }},
        {"Pit full after", Measure::Minutes, [](S s) { return si(s.pitFullAfter); }},
        {"Wells up for", Measure::Minutes, [](S s) { return unless(!s.inTable, s.wellsUpFor.si()); }},
        {"Wells up", Measure::CubicFeet, [](S s) { return unless(!s.inTable, s.wellsUp.si()); }},
        {"Fails after", Measure::Minutes,
         [](S s) { return unless(s.first == FailsFirst::Nothing, s.firstAfter.si()); }},
    };
    return columns;
}

struct WordColumn {
    const char* heading;
    Text (*of)(const Job&, const StormTried&);
};
const std::vector<WordColumn>& wordColumns() {
    using S = const StormTried&;
    static const std::vector<WordColumn> columns = {
        {"Storm", [](const Job&, S s) { return stormName(s); }},
        {"Most at run",
         [](const Job& job, S s) {
             if (s.shareRun == Network::none) return Text{};
             const Run& run = job.runs[s.shareRun];
             return Text::same(run.from + " - " + run.to);
         }},
        {"Least at node",
         [](const Job& job, S s) {
             return s.freeboardNode == Network::none ? Text{} : Text::same(job.nodes[s.freeboardNode].name);
         }},
        {"Fails first", [](const Job& job, S s) { return failsFirstText(job, s); }},
        {"Says", [](const Job& job, S s) { return stormSays(job, s); }},
    };
    return columns;
}

template <class Column>
std::string headings(const std::vector<Column>& columns) {
    std::string text;
    for (const Column& column : columns) {
        text += (text.empty() ? "" : ", ") + std::string(column.heading);
        if constexpr (requires { column.measure; })
            if (hasUnit(column.measure) || column.measure == Measure::Minutes)
                text += " (" + info(column.measure).us.en + ")";
    }
    return text;
}

// The job's example with a rain table in its place.
std::string example(const std::string& name) {
    const std::string tables = jobExample();
    return name + tables.substr(0, tables.size() - 1) +
           "; ; ; ; ; {\"\";2;10|\"5-min\";0.4;0.6|\"10-min\";0.7;1|\"60-min\";1.2;1.8})";
}

}  // namespace

std::vector<Function> stormFunctions() {
    constexpr const char* source =
        "blocks of even rain of the table's depths, and one centered storm of alternating blocks (FHWA HDS-2, "
        "example 6.6), each through the solved job; the pit as PIT.STORM";
    return {
        {.name = "JOB.STORMS",
         .says =
             {"what storms from 5 minutes to a day do to the job: lines, openings, inlets, pit; a row a "
              "storm",
              "qué le hacen a la obra tormentas de 5 minutos a un día: líneas, bocas, entradas, pozo; una "
              "fila por tormenta"},
         .arguments = jobArguments(),
         .later = jobLater(),
         .returns = Returns::NumberBlock,
         .measure = Measure::Feet,
         .columns = headings(numberColumns()),
         .source = source,
         .example = example("JOB.STORMS"),
         .call = [](const Arguments& a) -> Result {
             const std::shared_ptr<const TriedTables> tried = triedTables(a);
             Numbers block{.columns = numberColumns().size(), .items = {}};
             for (const StormTried& storm : tried->storms)
                 for (const NumberColumn& column : numberColumns()) {
                     const std::optional<double> si = column.si(storm);
                     block.items.push_back(si ? a.in(column.measure, *si) : blankCell());
                 }
             return block;
         }},
        {.name = "JOB.STORMS.TEXT",
         .says = {"the words beside JOB.STORMS: the storm, where it comes closest, what fails first, and a "
                  "sentence for the owner",
                  "las palabras junto a JOB.STORMS: la tormenta, dónde falta menos, qué falla primero, y una "
                  "frase para el dueño"},
         .arguments = jobArguments(),
         .later = jobLater(),
         .returns = Returns::WordBlock,
         .measure = Measure::Feet,
         .columns = headings(wordColumns()),
         .source = source,
         .example = example("JOB.STORMS.TEXT"),
         .call = [](const Arguments& a) -> Result {
             const std::shared_ptr<const TriedTables> tried = triedTables(a);
             Texts block{.columns = wordColumns().size(), .items = {}};
             for (const StormTried& storm : tried->storms)
                 for (const WordColumn& column : wordColumns())
                     block.items.push_back(column.of(tried->tables->job, storm).in(a.language()));
             return block;
         }},
    };
}

}  // namespace trenchbook::addin
