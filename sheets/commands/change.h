// A change of the work, worked out in a file of its own: what it adds to cost, pipe and cut, as a row of Changes on Account that
// the owner has still to sign.
#pragma once

#include "commands/steps.h"

namespace trenchbook::sheets {

// The changed job's direct cost less this job's, by the kinds that Account marks up: hire and disposal are Equipment; goods, their
// tax and delivery Materials; permits and what others do Subcontract; the four come to the difference of both direct costs to
// the cent. Pipe is the difference of the lengths in the ground, Deepest cut the changed job's. `what` names the change; a row of
// that name that is not signed is renewed. `day` as the office counts days. Throws Refused where a job has no price, the change
// is signed already, nothing differs, or Changes has no row left.
Steps noteChange(const Book& job, const Book& changed, const std::string& file, const std::string& what,
                 double day);
// What to print once the job is computed again.
std::string changeNoted(const Book& job, const std::string& what);

}  // namespace trenchbook::sheets
