#include "generate/xcu.h"

namespace trenchbook::addin {
namespace {

std::string escaped(const std::string& text) {
    std::string out;
    for (char c : text) {
        switch (c) {
            case '&':
                out += "&amp;";
                break;
            case '<':
                out += "&lt;";
                break;
            case '>':
                out += "&gt;";
                break;
            default:
                out += c;
        }
    }
    return out;
}

}  // namespace

std::string xcuHead(const std::string& component) {
    return "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n"
           "<oor:component-data xmlns:oor=\"http://openoffice.org/2001/registry\""
           " xmlns:xs=\"http://www.w3.org/2001/XMLSchema\""
           " oor:name=\"" +
           component + "\" oor:package=\"org.openoffice.Office\">\n";
}

std::string setting(const char* name, const std::string& value) {
    return std::string("<prop oor:name=\"") + name + "\"><value>" + escaped(value) + "</value></prop>\n";
}

std::string property(const char* name, const std::string& english, const std::string& spanish) {
    std::string text = std::string("<prop oor:name=\"") + name + "\"><value xml:lang=\"en\">" +
                       escaped(english) + "</value>";
    if (!spanish.empty()) text += "<value xml:lang=\"es\">" + escaped(spanish) + "</value>";
    return text + "</prop>\n";
}

}  // namespace trenchbook::addin
