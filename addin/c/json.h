// Just enough JSON to write: what a command answers.
//
//     Json says;
//     says.field("rows", 3).field("list", std::string("a\"b"));
//     says.text();    // {"rows":3,"list":"a\"b"}
#pragma once

#include <string>
#include <vector>

#include "commands/steps.h"

namespace trenchbook::addin {

std::string json(double number);  // with all its digits
std::string json(int number);
std::string json(const std::string& text);
std::string json(const sheets::Value& value);  // null where blank
std::string json(const std::vector<std::string>& texts);
std::string json(const Text& text);            // {"en":…,"es":…}
std::string json(const sheets::Steps& steps);  // as trenchbook_c.h describes them
std::string jsonList(const std::vector<std::string>& written);

// An object, field by field.
class Json {
  public:
    template <class Item>
    Json& field(const char* name, const Item& item) {
        return add(name, json(item));
    }
    // What is written already.
    Json& add(const char* name, const std::string& written);
    std::string text() const { return "{" + fields_ + "}"; }

  private:
    std::string fields_;
};

}  // namespace trenchbook::addin
