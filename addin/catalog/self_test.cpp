#include "catalog/self_test.h"

#include <cmath>

#include "catalog/function.h"
#include "trenchbook/core/error.h"

namespace trenchbook::addin {
namespace {

struct Printed {
    const char* function;
    std::vector<Value> values;
    double value;
    double tolerance;  // half a unit of the last printed digit, unless a reason stands beside it
    const char* source;
};

// One foot of bore, n 0.013, fall 0.005: the table computes with 1.49 for 1.48592 and prints cubic feet a
// second.
Printed circular(double fill, double cubicFeet) {
    const double gpm = 448.8312 * 1.48592 / 1.49;
    return {"PIPE.CAPACITY",
            {12.0, 0.005, 0.013, fill},
            cubicFeet * gpm,
            0.0005 * gpm,
            "Texas Tech CE 4353, table of hydraulic elements"};
}

std::vector<Printed> printedValues() {
    return {
        {"PIPE.OUTSIDE", {"4 SCH40"}, 4.5, 0.0005, "ASTM D1785"},
        {"PIPE.BORE", {"4 SCH40"}, 4.026, 0.0005, "ASTM D1785"},
        {"RUNOFF.DEPTH", {5.0, 80.0}, 2.89, 0.005, "TR-55, table 2-1"},
        {"RUNOFF.DEPTH", {6.0, 70.0}, 2.81, 0.005, "TR-55, table 2-1"},
        circular(0.5, 1.263),
        circular(0.8, 2.469),
        circular(1, 2.526),
        {"PIT.ROCK",
         {140.0, 0.4},
         350.0 / 27,
         0.5 / 27,
         "municipal ordinance, example of an infiltration trench"},
    };
}

}  // namespace

SelfTest selfTest() {
    SelfTest result;
    for (const Printed& printed : printedValues()) {
        const std::string name = printed.function;
        try {
            const double ours = std::get<double>(call(*findFunction(name), printed.values));
            if (std::abs(ours - printed.value) <= printed.tolerance) {
                ++result.right;
            } else {
                result.wrong.push_back(name + " gives " + plain(ours, 6) + ", printed " +
                                       plain(printed.value, 6) + " in " + printed.source);
            }
        } catch (const Error& error) {
            result.wrong.push_back(name + ": " + error.sentence(Language::English));
        }
    }
    return result;
}

}  // namespace trenchbook::addin
