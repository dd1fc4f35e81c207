#include "kit/formulas.h"

#include <set>

namespace trenchbook::sheets {
namespace {

bool isFormula(const std::string& text) { return text.rfind('=', 0) == 0; }

class Walk {
  public:
    explicit Walk(const std::function<void(const FormulaPlace&)>& visit) : visit_(visit) {}

    void head(const Sheet& sheet) {
        ifFormula(FormulaPlace::In::Line, sheet, sheet.name + ", title", sheet.title);
        ifFormula(FormulaPlace::In::Line, sheet, sheet.name + ", purpose", sheet.purpose);
        ifFormula(FormulaPlace::In::Line, sheet, sheet.name + ", legend", legendFormula(sheet));
    }

    void part(const Sheet& sheet, const Table& table) {
        for (const Column& column : table.columns) {
            const std::string where = sheet.name + ", column " + column.heading;
            const auto tell = [&](FormulaPlace::In in, const std::string& formula) {
                visit_({.in = in, .sheet = &sheet, .table = &table, .where = where, .formula = formula});
            };
            if (!column.formula.empty()) tell(FormulaPlace::In::Column, column.formula);
            if (isFormula(column.shown)) tell(FormulaPlace::In::Heading, column.shown.substr(1));
            choices(sheet, column.validity, where);
            const auto at = static_cast<std::size_t>(&column - table.columns.data());
            for (std::size_t r = 0; r < table.content.size(); ++r)
                if (const std::string cell = contentAt(table, r, at); isFormula(cell))
                    tell(FormulaPlace::In::Fixed, cell.substr(1));
        }
    }
    void part(const Sheet& sheet, const Form& form) {
        ifFormula(FormulaPlace::In::Line, sheet, sheet.name + ", heading", form.heading);
        for (const Field& field : form.fields) {
            const std::string where = sheet.name + ", " + field.label;
            ifFormula(FormulaPlace::In::Field, sheet, where, field.value);
            choices(sheet, field.validity, where);
        }
    }
    void part(const Sheet& sheet, const Paragraphs& text) {
        ifFormula(FormulaPlace::In::Line, sheet, sheet.name + ", heading", text.heading);
        for (const std::string& line : text.lines)
            ifFormula(FormulaPlace::In::Line, sheet, sheet.name + ", line of " + text.heading, line);
    }
    void part(const Sheet& sheet, const Block& block) {
        const std::string where = sheet.name + ", block " + block.name;
        visit_({.in = FormulaPlace::In::Block,
                .sheet = &sheet,
                .block = &block,
                .where = where,
                .formula = block.formula});
        for (const BlockColumn& column : block.columns)
            ifFormula(FormulaPlace::In::Heading, sheet, where + ", heading " + column.heading, column.shown);
    }
    void part(const Sheet&, const Chart&) {}
    void part(const Sheet&, const Break&) {}

  private:
    void ifFormula(FormulaPlace::In in, const Sheet& sheet, const std::string& where,
                   const std::string& text) {
        if (isFormula(text)) visit_({.in = in, .sheet = &sheet, .where = where, .formula = text.substr(1)});
    }
    void choices(const Sheet& sheet, const Validity& validity, const std::string& where) {
        if (!validity.listFormula.empty())
            visit_({.in = FormulaPlace::In::Choice,
                    .sheet = &sheet,
                    .where = where + ", its choices",
                    .formula = validity.listFormula});
    }

    const std::function<void(const FormulaPlace&)>& visit_;
};

}  // namespace

void forEachFormula(const Workbook& workbook, const std::function<void(const FormulaPlace&)>& visit) {
    Walk walk(visit);
    for (const Sheet& sheet : workbook.sheets) {
        walk.head(sheet);
        for (const Part& part : sheet.parts)
            std::visit([&](const auto& one) { walk.part(sheet, one); }, part);
    }
    for (const auto& [name, expression] : workbook.names)
        visit({.in = FormulaPlace::In::Name, .where = "name " + name, .name = name, .formula = expression});
}

std::string unitFormula(Measure measure, const std::string& fixed) {
    if (!fixed.empty()) return fixed;
    if (measure == Measure::Plain || measure == Measure::Words || measure == Measure::Table ||
        measure == Measure::Pipe || measure == Measure::Slope || measure == Measure::Share)
        return "";
    const auto& unit = addin::info(measure);
    if (!addin::hasUnit(measure)) return unit.us.en;
    return "=IF(units=\"metric\";\"" + unit.metric.en + "\";\"" + unit.us.en + "\")";
}

std::string limitFormula(double us, Measure measure) {
    if (us == 0 || !addin::hasUnit(measure)) return plain(us, 6);
    const double metric = us * addin::info(measure).siPerUs / addin::info(measure).siPerMetric;
    return "IF(units=\"metric\";" + plain(metric, 9) + ";" + plain(us, 6) + ")";
}

std::string titleFormula(const Sheet& sheet) {
    const std::string& title = sheet.title;
    if (sheet.letterhead) return title;
    const std::string words = isFormula(title) ? title.substr(1) : "\"" + title + "\"";
    if (sheet.paper) return "=" + words;  // the job stands in the page's margin
    return "=" + words + "&IF(job_name=\"\";\"\";\"  ·  \"&job_name)";
}

std::string legendFormula(const Sheet& sheet) {
    std::set<Kind> kinds;
    for (const Part& part : sheet.parts) {
        if (const Table* table = std::get_if<Table>(&part))
            for (const Column& column : table->columns) kinds.insert(column.kind);
        if (const Form* form = std::get_if<Form>(&part))
            for (const Field& field : form->fields) kinds.insert(field.kind);
    }
    // Papers, where at most the wording is typed, go to people who type nothing.
    if (kinds.count(Kind::Measured) + kinds.count(Kind::Price) + kinds.count(Kind::Permit) == 0) return "";
    std::string words = "=\"Frames of cells: \"";
    const char* between = "";
    for (const auto& [kind, meaning] : std::initializer_list<std::pair<Kind, const char*>>{
             {Kind::Measured, "solid, measured on this lot"},
             {Kind::Kept, "dashed, kept from job to job"},
             {Kind::Price, "dotted, from the price book"},
             {Kind::Permit, "double, permission, ticket, date or name"},
             {Kind::Computed, "thin, worked out: nothing is typed there"}}) {
        if (kinds.count(kind) == 0) continue;
        words += (*between == 0 ? "" : "&\"; \"") + std::string("&\"") + meaning + "\"";
        between = "; ";
    }
    return words + "&\". Go to a heading for its meaning.\"";
}

std::vector<std::pair<std::string, std::string>> workedOut(const Table& table) {
    std::vector<std::pair<std::string, std::string>> stretches;
    bool open = false;
    for (const Column& column : table.columns) {
        const bool inside =
            column.kind == Kind::Computed && !column.formula.empty() && !column.helper && column.span == 1;
        if (inside && open) stretches.back().second = column.heading;
        if (inside && !open) stretches.emplace_back(column.heading, column.heading);
        open = inside;
    }
    return stretches;
}

std::string headingCell(const Column& column) {
    const bool words = isInput(column.kind) &&
                       (column.format.as == Format::As::Text || column.format.as == Format::As::General);
    return words ? "=\"" + column.heading + "\"" : column.heading;
}

}  // namespace trenchbook::sheets
