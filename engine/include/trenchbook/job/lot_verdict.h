// Verdict and Check of a row of Layout or Tapes, as the sheets show them beside its names.
//
//     Job job;                          // as readJob() fills it
//     lotPointVerdict(job, 0).verdict;  // "OK", "CHECK", "NOT JUDGED", "NO"; empty for a blank row
//     lotPointVerdict(job, 0).check;    // "OK: 3 tapes, ± 0.1 ft"
//
// NO: a cell cannot be used. CHECK: a tape does not fit, tapes meet at too flat an angle, a place that nobody
// measured. NOT JUDGED: no place yet, with what to tape next; a tape to such a point. OK: placed and fitting.
#pragma once

#include <cstddef>

#include "trenchbook/core/text.h"
#include "trenchbook/job/job.h"

namespace trenchbook {

struct LotVerdict {
    Text verdict = {}, check = {};
};

LotVerdict lotPointVerdict(const Job& job, std::size_t row);
LotVerdict lotTapeVerdict(const Job& job, std::size_t row);

}  // namespace trenchbook
