#include "trenchbook/core/error.h"

#include <cmath>

namespace trenchbook {

namespace {

Text written(double value) {
    if (std::isfinite(value)) return Text::same(plain(value));
    return std::isnan(value) ? Text{"not a number", "un número indefinido"} : Text{"infinite", "infinito"};
}

}  // namespace

Error::Error(Kind kind, std::string argument, std::string value, Text allowed)
    : Error(kind, std::move(argument), Text{value, std::move(value)}, std::move(allowed)) {}

Error::Error(Kind kind, std::string argument, Text value, Text allowed)
    : std::runtime_error(argument + " is " + value.en + "; allowed: " + allowed.en + "."),
      kind_(kind),
      argument_(std::move(argument)),
      value_(std::move(value)),
      allowed_(std::move(allowed)) {}

Error::Error(Kind kind, std::string argument, Text sentence)
    : std::runtime_error(sentence.en),
      kind_(kind),
      argument_(std::move(argument)),
      sentence_(std::move(sentence)) {}

std::string Error::sentence(Language language, std::string_view argument, std::string_view value) const {
    if (!sentence_.empty()) return sentence_.in(language);
    const std::string_view name = argument.empty() ? std::string_view(argument_) : argument;
    const std::string_view given = value.empty() ? std::string_view(value_.in(language)) : value;
    const bool spanish = language == Language::Spanish;
    std::string said(name);
    said.append(spanish ? " es " : " is ").append(given);
    said.append(spanish ? "; se admite: " : "; allowed: ").append(allowed_.in(language)).append(".");
    return said;
}

Error Error::about(std::string argument) const {
    return sentence_.empty() ? Error(kind_, std::move(argument), value_, allowed_)
                             : Error(kind_, std::move(argument), sentence_);
}

void requirePositive(double si, const char* argument) {
    if (!(si > 0) || std::isinf(si))
        throw Error(Error::Kind::BadArgument, argument, written(si), {"above 0", "mayor que 0"});
}

void requireNotNegative(double si, const char* argument) {
    if (!(si >= 0) || std::isinf(si))
        throw Error(Error::Kind::BadArgument, argument, written(si), {"0 or more", "0 o más"});
}

void requireBetween(double value, double least, double greatest, const char* argument) {
    if (!(value >= least && value <= greatest))
        throw Error(Error::Kind::BadArgument, argument, written(value),
                    {"from " + plain(least) + " to " + plain(greatest),
                     "de " + plain(least) + " a " + plain(greatest)});
}

void requireShare(double value, const char* argument) {
    if (value > 1 && value <= 100)
        throw Error(
            Error::Kind::BadArgument, argument,
            {std::string(argument) + " is " + plain(value) + "; allowed: from 0 to 1. If " + plain(value) +
                 " percent is meant, write " + plain(value / 100, 6) + ".",
             std::string(argument) + " es " + plain(value) + "; se admite: de 0 a 1. Si se trata de " +
                 plain(value) + " por ciento, escriba " + plain(value / 100, 6) + "."});
    requireBetween(value, 0, 1, argument);
}

void requireSlope(Slope value, const char* argument) {
    const double slope = value.fraction();
    if (slope > 0 && slope < 1) return;
    const std::string typed = plain(slope, 6);
    if (slope >= 1 && slope <= 100)
        throw Error(Error::Kind::BadArgument, argument,
                    {std::string(argument) + " is " + typed + "; allowed: above 0 and below 1. If " + typed +
                         " percent is meant, write " + typed + "% or " + plain(slope / 100, 6) + ".",
                     std::string(argument) + " es " + typed +
                         "; se admite: mayor que 0 y menor que 1. Si se trata de " + typed +
                         " por ciento, escriba " + typed + "% o " + plain(slope / 100, 6) + "."});
    throw Error(Error::Kind::BadArgument, argument, typed,
                {"above 0 and below 1 (a fraction)", "mayor que 0 y menor que 1 (una fracción)"});
}

}  // namespace trenchbook
