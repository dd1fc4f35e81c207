#include "formula/depends.h"

#include <deque>
#include <map>
#include <stdexcept>

#include "formula/parse.h"
#include "kit/formulas.h"
#include "kit/names.h"

namespace trenchbook::sheets {
namespace {

const std::string columnMark = ", column ";  // as forEachFormula() names the place

// A sheet may have two tables with a column of one heading.
std::string columnName(const Sheet& sheet, const Table& table, const std::string& heading) {
    return sheet.name + (table.name == sheet.name ? "" : ", " + table.name) + columnMark + heading;
}

// One thing that formulas read or stand in: a column, a field, a block, a defined name; named as a reader would.
class Graph {
  public:
    explicit Graph(const Workbook& workbook) {
        for (const Sheet& sheet : workbook.sheets)
            for (const Part& part : sheet.parts) know(sheet, part);
        forEachFormula(workbook, [&](const FormulaPlace& at) {
            if (at.in == FormulaPlace::In::Choice || at.in == FormulaPlace::In::Heading) return;
            const std::string reader =
                at.block != nullptr ? at.block->name
                : !at.name.empty()  ? at.name
                : at.table != nullptr
                    ? columnName(*at.sheet, *at.table,
                                 at.where.substr(at.where.find(columnMark) + columnMark.size()))
                    : at.where;
            collect(parseFormula(at.formula), at.table, reads_[reader]);
        });
    }

    std::vector<std::string> wayToABlock(const std::string& start) const {
        if (blocks_.count(start) == 0) throw std::logic_error("no block is named " + start);
        std::map<std::string, std::string> cameFrom;
        std::deque<std::string> next{start};
        while (!next.empty()) {
            const std::string reader = next.front();
            next.pop_front();
            const auto known = reads_.find(reader);
            if (known == reads_.end()) continue;
            for (const std::string& read : known->second) {
                if (blocks_.count(read) != 0) return way(cameFrom, start, reader, read);
                if (cameFrom.emplace(read, reader).second) next.push_back(read);
            }
        }
        return {};
    }

  private:
    static std::vector<std::string> way(const std::map<std::string, std::string>& cameFrom,
                                        const std::string& start, std::string reader,
                                        const std::string& end) {
        std::vector<std::string> backwards{end};
        for (; reader != start; reader = cameFrom.at(reader)) backwards.push_back(reader);
        backwards.push_back(start);
        return {backwards.rbegin(), backwards.rend()};
    }

    void know(const Sheet& sheet, const Part& part) {
        if (const Table* table = std::get_if<Table>(&part)) {
            tables_[table->name] = {&sheet, table};
            named_[tableRangeName(table->name)] =
                span(*table, table->columns.front().heading, table->columns.back().heading);
            if (!table->handedFrom.empty())
                named_[handedName(table->name)] = span(*table, table->handedFrom, table->handedTo);
        } else if (const Form* form = std::get_if<Form>(&part)) {
            for (const Field& field : form->fields) {
                const std::string where = sheet.name + ", " + field.label;
                if (!field.name.empty()) named_[field.name] = {where};
                named_[formRangeName(form->name)].push_back(where);
            }
        } else if (const Block* block = std::get_if<Block>(&part)) {
            blocks_[block->name] = block;
        }
    }

    std::vector<std::string> span(const Table& table, const std::string& first,
                                  const std::string& last) const {
        std::vector<std::string> columns;
        bool inside = false;
        for (const Column& column : table.columns) {
            inside = inside || column.heading == first;
            if (inside) columns.push_back(columnName(*tables_.at(table.name).sheet, table, column.heading));
            if (column.heading == last) break;
        }
        return columns;
    }

    void collect(const Node& node, const Table* own, std::vector<std::string>& into) const {
        const auto add = [&](const std::vector<std::string>& more) {
            into.insert(into.end(), more.begin(), more.end());
        };
        if (node.is == Node::Is::Table) add(ofTable(node.text, own));
        if (node.is == Node::Is::Rule) add(ofTable("Rules.Value", own));
        if (node.is == Node::Is::Block) into.push_back(ofBlock(node.text, own));
        if (node.is == Node::Is::Name) {
            const auto found = named_.find(node.text);
            add(found == named_.end() ? std::vector<std::string>{node.text} : found->second);
        }
        for (const Node& part : node.parts) collect(part, own, into);
    }
    std::vector<std::string> ofTable(const std::string& mark, const Table* own) const {
        if (mark == "#") return {};
        const auto dot = mark.find('.');
        const auto found = dot == std::string::npos ? tables_.end() : tables_.find(mark.substr(0, dot));
        if (found == tables_.end()) {
            const std::string heading = mark[0] == '^' ? mark.substr(1) : mark;
            return own == nullptr ? std::vector<std::string>{} : span(*own, heading, heading);
        }
        const Table& table = *found->second.table;
        const std::string columns = mark.substr(dot + 1);
        if (columns == "*") return span(table, table.columns.front().heading, table.columns.back().heading);
        const auto colon = columns.find(':');
        return span(table, columns.substr(0, colon),
                    colon == std::string::npos ? columns : columns.substr(colon + 1));
    }
    std::string ofBlock(const std::string& mark, const Table* own) const {
        const auto dot = mark.find('.');
        if (dot != std::string::npos && blocks_.count(mark.substr(0, dot)) != 0) return mark.substr(0, dot);
        for (const auto& [name, block] : blocks_)
            for (const BlockColumn& column : block->columns)
                if (own != nullptr && block->table == own->name && column.heading == mark) return name;
        return mark;
    }

    struct Known {
        const Sheet* sheet;
        const Table* table;
    };
    std::map<std::string, Known> tables_;
    std::map<std::string, const Block*> blocks_;
    std::map<std::string, std::vector<std::string>> named_;  // what a name of the kit stands for
    std::map<std::string, std::vector<std::string>> reads_;
};

}  // namespace

std::vector<std::string> solvedInput(const Workbook& workbook, const std::string& block) {
    return Graph(workbook).wayToABlock(block);
}

}  // namespace trenchbook::sheets
