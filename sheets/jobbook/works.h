// What jobbook does with documents that are open in an office, by name: so it can be done inside the office, where each
// touch of a cell costs nothing to speak of, and from outside, where each is a message and an answer.
#pragma once

#include <com/sun/star/beans/NamedValue.hpp>
#include <map>
#include <string>
#include <vector>

#include "jobbook/parts.h"
#include "office/office.h"

namespace trenchbook::sheets {

struct Work {
    std::string name;  // "resolved", "fill", "again", "finish", "papers", "values", "summary"
    std::vector<Document> documents{};
    std::map<std::string, std::string> words{};
};
using Lines = std::vector<std::string>;  // to print

// Does it where it is called. Throws Refused, NotesError and std::runtime_error, std::invalid_argument for a name that is no
// work.
Lines doHere(const Work& work);
// Has the office's add-in do it; does it from here when that one has no such service. Throws the same.
Lines doInside(Office& office, const Work& work);

// The service that our menu's library gives to the office, a com.sun.star.task.XJob. What its work throws arrives as an
// IllegalArgumentException with one of these places.
inline constexpr const char* worksService = "trenchbook.Works";
inline constexpr sal_Int16 refusedThere = 0;
inline constexpr sal_Int16 failedThere = 1;
css::uno::Sequence<css::beans::NamedValue> handedOver(const Work& work);
Work takenOver(const css::uno::Sequence<css::beans::NamedValue>& arguments);

}  // namespace trenchbook::sheets
