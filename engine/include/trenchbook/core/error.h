// The one exception of the engine: what was wrong, in which argument, what it was, and what is allowed.
//
//     Error flat(Error::Kind::BadArgument, "slope", "-0.01", {"above 0 and below 1", "mayor que 0 y menor que 1"});
//     flat.sentence(Language::English);    // "slope is -0.01; allowed: above 0 and below 1."
//
// Argument names are those of the spreadsheet functions, so that the caller can say which cell is meant.
// Limits with a unit are written in US units with the metric value in brackets.
#pragma once

#include <stdexcept>
#include <string>
#include <string_view>

#include "trenchbook/core/text.h"
#include "trenchbook/core/units.h"

namespace trenchbook {

class Error : public std::runtime_error {
  public:
    enum class Kind {
        BadArgument,      // not a value this argument can have (negative length, unknown pipe)
        OutsideValidity,  // possible, but outside what the method was published for
        NoSolution,       // the question has no answer (more flow than the pipe carries)
        NoConvergence,    // the method gave up; a fault of ours, not of the caller
    };

    // The value as typed, or in words where it is none: {"left out", "un dato omitido"}.
    Error(Kind kind, std::string argument, Text value, Text allowed);
    Error(Kind kind, std::string argument, std::string value, Text allowed);
    // A sentence of its own, where "argument is value; allowed" would not say it.
    Error(Kind kind, std::string argument, Text sentence);

    Kind kind() const { return kind_; }
    const std::string& argument() const { return argument_; }
    // With `value` and `argument` as the caller knows them, when given: what was typed, in the caller's words.
    std::string sentence(Language language, std::string_view argument = {},
                         std::string_view value = {}) const;
    // The same refusal, about the argument that the caller knows it by.
    Error about(std::string argument) const;

  private:
    Kind kind_;
    std::string argument_;
    Text value_;
    Text allowed_;
    Text sentence_;
};

// Shorthands for the common refusals. NaN and infinities are refused by all of them.
void requirePositive(double si, const char* argument);
void requireNotNegative(double si, const char* argument);
void requireBetween(double value, double least, double greatest, const char* argument);
// A share of a whole, 0 to 1. A value above 1 and up to 100 is asked back: a percent typed for a fraction?
void requireShare(double value, const char* argument);
// A slope to lay at, above 0 and below 1 (45 degrees). 1 to 100 is asked back as a percent.
void requireSlope(Slope value, const char* argument);
template <class Kind>
void requirePositive(Quantity<Kind> value, const char* argument) {
    requirePositive(value.si(), argument);
}
template <class Kind>
void requireNotNegative(Quantity<Kind> value, const char* argument) {
    requireNotNegative(value.si(), argument);
}

}  // namespace trenchbook
