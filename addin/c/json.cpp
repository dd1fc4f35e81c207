#include "c/json.h"

#include <cstdio>

namespace trenchbook::addin {
namespace {

using sheets::Place;
using sheets::Rect;

std::string placed(const Place& at) { return jsonList({json(at.sheet), json(at.column), json(at.row)}); }
std::string placed(const Rect& at) {
    return jsonList({json(at.sheet), json(at.column), json(at.row), json(at.lastColumn), json(at.lastRow)});
}

std::string written(const sheets::PutCells& step) {
    std::vector<std::string> rows;
    for (const auto& row : step.rows) {
        std::vector<std::string> cells;
        for (const sheets::Value& cell : row) cells.push_back(json(cell));
        rows.push_back(jsonList(cells));
    }
    return Json()
        .field("do", std::string("put"))
        .add("at", placed(step.at))
        .add("rows", jsonList(rows))
        .text();
}
std::string written(const sheets::Unprotect& step) {
    return Json().field("do", std::string("unprotect")).field("sheet", step.sheet).text();
}
std::string written(const sheets::ClearFormulas& step) {
    return Json().field("do", std::string("clear")).add("area", placed(step.area)).text();
}
std::string written(const sheets::NoteCell& step) {
    return Json().field("do", std::string("note")).add("at", placed(step.at)).field("says", step.says).text();
}
std::string written(const sheets::AddRows& step) {
    return Json()
        .field("do", std::string("rows"))
        .add("pattern", placed(step.pattern))
        .field("before", step.before)
        .field("count", step.count)
        .text();
}
std::string written(const sheets::PrintArea& step) {
    return Json().field("do", std::string("print")).add("area", placed(step.area)).text();
}
std::string written(const sheets::Select& step) {
    return Json().field("do", std::string("select")).add("at", placed(step.at)).text();
}
std::string written(const sheets::ShowSheet& step) {
    return Json()
        .field("do", std::string("show"))
        .field("sheet", step.sheet)
        .field("visible", step.visible ? 1 : 0)
        .text();
}
std::string written(const sheets::Remember& step) {
    return Json()
        .field("do", std::string("remember"))
        .field("name", step.name)
        .field("text", step.text)
        .text();
}

}  // namespace

std::string json(double number) {
    char text[40];
    std::snprintf(text, sizeof text, "%.17g", number);
    return text;
}
std::string json(int number) { return std::to_string(number); }

std::string json(const std::string& text) {
    std::string out = "\"";
    for (const char c : text) {
        if (c == '"' || c == '\\') {
            (out += '\\') += c;
        } else if (static_cast<unsigned char>(c) < 0x20) {
            char escape[8];
            std::snprintf(escape, sizeof escape, "\\u%04x", static_cast<unsigned>(c));
            out += escape;
        } else {
            out += c;
        }
    }
    return out + "\"";
}

std::string json(const sheets::Value& value) {
    if (const double* number = std::get_if<double>(&value)) return json(*number);
    if (const std::string* text = std::get_if<std::string>(&value)) return json(*text);
    return "null";
}

std::string json(const std::vector<std::string>& texts) {
    std::vector<std::string> all;
    for (const std::string& text : texts) all.push_back(json(text));
    return jsonList(all);
}

std::string json(const Text& text) { return Json().field("en", text.en).field("es", text.es).text(); }

std::string json(const sheets::Steps& steps) {
    std::vector<std::string> all;
    for (const sheets::Step& step : steps.list)
        all.push_back(std::visit([](const auto& one) { return written(one); }, step));
    return jsonList(all);
}

std::string jsonList(const std::vector<std::string>& written) {
    std::string all;
    for (const std::string& one : written) (all += all.empty() ? "" : ",") += one;
    return "[" + all + "]";
}

Json& Json::add(const char* name, const std::string& written) {
    (fields_ += fields_.empty() ? "" : ",") += json(std::string(name)) + ":" + written;
    return *this;
}

}  // namespace trenchbook::addin
