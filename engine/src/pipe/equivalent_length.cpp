#include "trenchbook/pipe/equivalent_length.h"

#include <array>
#include <cmath>
#include <string>

#include "trenchbook/core/error.h"

namespace trenchbook {
namespace {

constexpr double sizes[] = {1.25, 1.5, 2, 2.5, 3, 4};

constexpr Length ft(double feet) { return Length::feet(feet); }

// A pump maker's worksheet, plastic fittings.
constexpr std::array table = {
    PressureFitting{"90 elbow", "codo de 90", {ft(7), ft(8), ft(9), ft(10), ft(12), ft(14)}},
    PressureFitting{"45 elbow", "codo de 45", {ft(3), ft(3), ft(4), ft(4), ft(6), {}}},
    PressureFitting{"tee", "te", {ft(7), ft(9), ft(11), {}, ft(17), ft(22)}},
    PressureFitting{"check valve", "válvula de retención", {ft(11), ft(13), ft(17), ft(21), ft(26), ft(33)}},
    PressureFitting{"union", "unión", {ft(1), ft(1), ft(2), ft(3), ft(4), ft(5)}},
    PressureFitting{"gate valve", "válvula de compuerta", {ft(0.9), ft(1.1), ft(1.4), {}, ft(2), {}}},
};

std::string offered(bool spanish) {
    std::string names;
    for (const PressureFitting& row : table) {
        if (!names.empty()) names += ", ";
        names += spanish ? row.spanish : row.name;
    }
    return names;
}

}  // namespace

std::span<const PressureFitting> pressureFittings() { return table; }

Length equivalentLength(std::string_view fitting, double nominalInches) {
    const std::string key = nameKey(fitting);
    for (const PressureFitting& row : table) {
        if (key != nameKey(row.name) && key != nameKey(row.spanish)) continue;
        std::string printed;
        for (std::size_t i = 0; i < std::size(sizes); ++i) {
            if (!(row.lengths[i] > Length{})) continue;
            if (std::fabs(nominalInches - sizes[i]) < 1e-9) return row.lengths[i];
            printed += (printed.empty() ? "" : ", ") + plain(sizes[i]);
        }
        throw Error(Error::Kind::OutsideValidity, "size", plain(nominalInches),
                    {"a nominal size in inches: " + printed, "un tamaño nominal en pulgadas: " + printed});
    }
    throw Error(Error::Kind::BadArgument, "fitting", "\"" + std::string(fitting.substr(0, 80)) + "\"",
                {offered(false), offered(true)});
}

}  // namespace trenchbook
