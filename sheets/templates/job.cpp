#include "templates/job.h"

#include <algorithm>
#include <map>

#include "buying/money.h"
#include "kit/formulas.h"
#include "kit/look.h"
#include "kit/names.h"
#include "papers/order_paper.h"
#include "results/pit_drawing.h"
#include "spanish/spanish.h"
#include "templates/books.h"
#include "templates/fields_read.h"
#include "templates/steps_aside.h"

namespace trenchbook::sheets {
namespace {

// Forms that functions take whole, by the name of what is handed over. Their fields are found by label there.
const std::map<std::string, std::string>& handedForms() {
    static const std::map<std::string, std::string> all = {{"facts_in", "Job"},
                                                           {"pit_in", "Pit"},
                                                           {"pit_facts_in", "Pit facts"},
                                                           {"peak_in", "Peak"},
                                                           {"terms_in", "Takeoff choices"}};
    return all;
}
void keepHandedFields(Sheet& sheet) {
    for (Part& part : sheet.parts)
        if (Form* form = std::get_if<Form>(&part))
            for (const auto& [name, handed] : handedForms())
                for (Field& field : form->fields)
                    if (form->name == handed) field.foundByLabel = true;
}

// Ranges that functions take whole: a cell with an error of its own is handed over as a mark that spoils its row alone.
void nameHandedRanges(Workbook& workbook) {
    const auto handed = [&](const char* name, const std::string& range) {
        workbook.names[name] = handedCells(range);
    };
    for (const auto& [name, form] : handedForms()) handed(name.c_str(), formRangeName(form));
    handed("rules_in", "[Rules.Key:Value]");
    handed("rain_in", "[Rain.*]");
    handed("grade_pipes_in", "[Grade pipes.Pipe:Largest share]");
    handed("dig_cost_in", "[Dig cost.Cut:Price]");
    // Sentences name rows as the sheet counts them: from the row of headings.
    // A job without a drawing hands over nothing, which takes no time.
    workbook.names["lot_in"] = "IF(lot_there;layout_in;0)";
    workbook.names["laid_in"] = "IF(COUNTA([As built.Node])>0;" + handedName("As built") + ";0)";
    workbook.names["laid_shown"] = "IF(drawing_shows=\"as built\";laid_in;0)";
    workbook.names["lot_tapes_in"] = "IF(lot_there;tapes_in;0)";
    // Lines of the order that the supplier's paper shows.
    workbook.names["order_shown"] =
        "([Order.Code]<>\"\")*((order_for=\"\")+(IF([Order.Supplier]=\"\";order_supplier;[Order.Supplier])=order_for)>0)";
    workbook.names["runs_first"] = "MIN(ROW([Runs.From]))-2";
}

// In the order of the work; the tabs of a group have one color.
struct Group {
    unsigned tab;
    std::vector<Sheet (*)(const JobSize&)> sheets;
};
const std::vector<Group>& groups() {
    static const std::vector<Group> all = {
        // What is measured on the lot.
        {colour::clay,
         {jobSheet, levelsSheet, nodesSheet, rainSheet, waterSheet, runsSheet, groundSheet, crossingsSheet,
          outletsSheet, pitSheet, pumpSheet, layoutSheet, tapesSheet, asBuiltSheet}},
        // What follows from it.
        {colour::water, {drawingSheet, profileSheet, pitDrawingSheet, planSheet, peakSheet, stormsSheet}},
        // What it costs.
        {colour::good,
         {takeoffSheet, laborSheet, quoteSheet, orderSheet, billsSheet, accountSheet, datesSheet,
          closeOutSheet, pricesSheet}},
        // What is handed out.
        {colour::ink,
         {crewSheet, cutListSheet, recordSheet, proposalSheet, cancellationSheet, orderPaperSheet,
          invoiceSheet, careSheet}},
        // What all of it stands on.
        {colour::line, {rulesSheet, tablesSheet, functionsSheet, workingsSheet}},
    };
    return all;
}

// What tells whether anything is typed into a sheet: the first input column of its first table.
std::string firstInputColumn(const Sheet& sheet) {
    for (const Part& part : sheet.parts)
        if (const Table* table = std::get_if<Table>(&part))
            for (const Column& column : table->columns)
                if (isInput(column.kind) && column.formula.empty() && table->content.empty())
                    return "[" + table->name + "." + column.heading + "]";
    return "";
}

// What stands in front of a sheet's purpose in the list, a formula; empty where nothing ever does.
std::string inFront(const Sheet& sheet) {
    if (const std::string needed = neededWords(sheet); !needed.empty()) return needed;
    if (sheet.name == "Crossings")
        return "UPPER(IF(COUNTA([Crossings.What])=0;\"nothing typed: not needed where nothing else is buried\";\"\"))";
    const std::string typed = sheet.tab == colour::clay ? firstInputColumn(sheet) : "";
    return typed.empty() ? "" : "UPPER(IF(COUNTA(" + typed + ")=0;\"nothing typed\";\"\"))";
}

// A line for each sheet that follows.
Paragraphs contents(const std::vector<Sheet>& sheets) {
    Paragraphs list;
    list.heading = "What stands on which sheet";
    list.printed = false;
    list.linesHigh = 2;
    list.judged = true;
    for (const Sheet& sheet : sheets) {
        if (&sheet == &sheets.front() || sheet.workings) continue;
        const std::string purpose =
            sheet.purpose.starts_with('=') ? sheet.purpose.substr(1) : "\"" + sheet.purpose + "\"";
        const std::string front = inFront(sheet);
        list.names.push_back(sheet.name);
        list.lines.push_back(front.empty() ? "=" + purpose
                                           : "=TEXTJOIN(\". \";1;" + front + ";" + purpose + ")");
    }
    return list;
}

// Values that stand where a formula belongs, by sheet: a hidden field for each stretch of a table and for each form;
// typed_over on Job joins them.
Form typedOver(const std::vector<Sheet>& sheets) {
    Form form;
    form.name = "Typed over";
    std::vector<std::string> found;
    for (const Sheet& sheet : sheets) {
        if (sheet.tab != colour::clay && sheet.tab != colour::good)
            continue;  // on the others nothing is typed
        for (const Part& part : sheet.parts) {
            if (const Table* table = std::get_if<Table>(&part))
                for (const auto& [first, last] : workedOut(*table)) {
                    const std::string cells = "[" + table->name + "." + first + ":" + last + "]";
                    // The two thin rows hold no formulas.
                    found.push_back("IF(SUMPRODUCT(1-ISFORMULA(" + cells + "))>2*COLUMNS(" + cells + ");\"" +
                                    sheet.name + "\"&\" row \"&SUMPRODUCT(MAX((1-ISFORMULA(" + cells +
                                    "))*(ROW(" + cells + ")<MAX(ROW(" + cells + ")))*ROW(" + cells +
                                    ")));\"\")");
                }
            const Form* fields = std::get_if<Form>(&part);
            if (fields == nullptr || &sheet == &sheets.front()) continue;
            std::ptrdiff_t formulas = 0;
            std::string proposed;  // inputs that come with a formula, over which anybody may type
            for (const Field& field : fields->fields) {
                if (!staysInForm(field) || !field.value.starts_with('=')) continue;
                if (isInput(field.kind))
                    proposed += "-ISFORMULA(" + field.name + ")";
                else
                    ++formulas;
            }
            if (formulas > 0)
                found.push_back("IF(SUMPRODUCT(1*ISFORMULA(" + formRangeName(fields->name) + "))" + proposed +
                                "<" + std::to_string(formulas) + ";\"" + sheet.name + "\";\"\")");
        }
    }
    for (const std::string& formula : found)
        form.fields.push_back(hidden("Typed over " + std::to_string(form.fields.size() + 1), "", formula));
    return form;
}

// Hidden rows make a workbook slow to open: what only other formulas read stands on Workings, a form of such fields as a
// whole. What a command looks for in its form stays there.
void gatherHelpers(std::vector<Sheet>& sheets) {
    std::vector<Part> moved(1, Form{.name = "Workings"});
    for (Sheet& sheet : sheets)
        for (Part& part : sheet.parts)
            if (Form* form = std::get_if<Form>(&part)) {
                const auto moving = std::ranges::stable_partition(form->fields, staysInForm);
                for (Field& field : moving) field.label = sheet.name + ": " + field.label;
                if (moving.size() == form->fields.size()) {
                    form->heading = "";
                    moved.push_back(std::move(*form));
                    form->fields.clear();
                } else {
                    std::vector<Field>& fields = std::get<Form>(moved.front()).fields;
                    fields.insert(fields.end(), moving.begin(), moving.end());
                    form->fields.erase(moving.begin(), moving.end());
                }
            }
    for (Sheet& sheet : sheets)
        std::erase_if(sheet.parts, [](const Part& part) {
            const Form* form = std::get_if<Form>(&part);
            return form != nullptr && form->fields.empty();
        });
    std::vector<Part>& workings = sheets.back().parts;
    workings.insert(workings.begin(), moved.begin(), moved.end());
}

}  // namespace

JobSize largeJob() {
    JobSize size;
    size.levels = 60;
    size.nodes = 205;
    size.water = 60;
    size.runs = 200;
    size.crossings = 30;
    return size;
}

Workbook jobWorkbook(const JobSize& size) {
    Workbook workbook;
    workbook.title = "Drainage job";
    for (const Group& group : groups())
        for (const auto& sheet : group.sheets) {
            workbook.sheets.push_back(sheet(size));
            workbook.sheets.back().tab = group.tab;
            keepHandedFields(workbook.sheets.back());
        }
    workbook.sheets.front().parts.push_back(contents(workbook.sheets));
    workbook.sheets.front().parts.push_back(sheetsNeeded(workbook.sheets));
    workbook.sheets.front().parts.push_back(typedOver(workbook.sheets));
    workbook.sheets.front().parts.push_back(fieldsRead(workbook.sheets));
    gatherHelpers(workbook.sheets);
    workbook.sheets.back().parts.insert(workbook.sheets.back().parts.begin(), columnsRead(workbook.sheets));
    inBothLanguages(workbook, {"Proposal", "Cancellation", "Purchase order", "Invoice", "Care"});
    nameHandedRanges(workbook);
    for (int nth = 1; nth <= linesShown; ++nth)
        workbook.names["line_" + std::to_string(nth)] = "seen_" + std::to_string(nth);
    // The end of the sentence about each crossing, on the crew's page.
    workbook.names["crew_it"] =
        "crew_deep&TEXT([Crossings.Its depth];\"0.0\")&crew_clear&TEXT([Crossings.Clearance];\"0.0\")&crew_small";
    // The benchmark from which the crew measures down: the first known level of the level book.
    const std::string first = ";MATCH(TRUE();INDEX(ISNUMBER([Levels.Known level]);0);0));\"\")";
    workbook.names["crew_mark"] = "IFERROR(INDEX([Levels.Point]" + first;
    workbook.names["crew_level"] = "IFERROR(INDEX([Levels.Known level]" + first;
    return workbook;
}

const std::vector<Shipped>& shippedWorkbooks() {
    static const std::vector<Shipped> all = {{"job", [] { return jobWorkbook({}); }},
                                             {"large-job",
                                              [] {
                                                  Workbook large = jobWorkbook(largeJob());
                                                  large.title = "Large drainage job (200 runs)";
                                                  return large;
                                              }},
                                             {"price-book", priceBook},
                                             {"ledger", ledgerBook}};
    return all;
}

}  // namespace trenchbook::sheets
