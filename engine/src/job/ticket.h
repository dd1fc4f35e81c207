// The locate ticket on a day: is it good, was it waited for, is it written for longer than it lasts? One judgement for
// the ticket on Job and those of the crossings.
//
//     judgeTicket(ticket, job, told);
#pragma once

#include <optional>
#include <string>

#include "job/say.h"
#include "trenchbook/core/date.h"
#include "trenchbook/job/job.h"

#pragma GCC visibility push(hidden)
namespace trenchbook {

// Days from Monday to Friday after `from`, up to `to`; 0 when it does not lie later. Holidays are not known here: a
// ticket counted over one is a working day shorter than told.
int workingDays(Date from, Date to);
// The first day that is so many working days after `from`.
Date afterWorkingDays(Date from, int days);

// `ticket` as it is read; `name` stands in the sentences: "ticket 0001".
void judgeTicket(const Ticket& ticket, const Text& name, const Job& job, RowFindings& told);

}  // namespace trenchbook
#pragma GCC visibility pop
