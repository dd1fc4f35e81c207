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

// Working days are those from Monday to Friday. Holidays are not known here: a ticket counted over one is a working day
// shorter than told.
//
// `ticket` as it is read; `name` stands in the sentences: "ticket 0001".
void judgeTicket(const Ticket& ticket, const Text& name, const Job& job, RowFindings& told);

}  // namespace trenchbook
#pragma GCC visibility pop
