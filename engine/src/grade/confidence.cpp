#include <cmath>
#include <numbers>

#include "trenchbook/core/error.h"
#include "trenchbook/grade/grade.h"

namespace trenchbook {

double gradeConfidence(Length length, Length levelUp, Length levelDown, Slope leastSlope, Length rodError) {
    requirePositive(length, "length");
    requirePositive(rodError, "rod error");
    const Length spare = levelUp - levelDown - leastSlope * length;
    // Phi(z) = erfc(-z / sqrt(2)) / 2 with z = spare / (rodError sqrt(2)).
    return 0.5 * std::erfc(-(spare / rodError) / 2);
}

}  // namespace trenchbook
