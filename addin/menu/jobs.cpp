// New workbooks: an empty job, and the next lot from the job in the window.
#include <com/sun/star/frame/XModel.hpp>

#include "jobbook/again.h"
#include "jobbook/carry_out.h"
#include "jobbook/logo.h"
#include "jobbook/make.h"
#include "jobbook/read_book.h"
#include "jobbook/target.h"
#include "menu/commands.h"
#include "menu/stored.h"
#include "menu/surroundings.h"
#include "templates/job.h"

namespace trenchbook::addin {

Answer newJob(Call& call) {
    const std::optional<NewFile> file = NewFile::asked(call, {});
    const Document job = newFromTemplate(call, "job");
    if (file) file->put(job);
    return {call.in({"A new job.", "Una obra nueva."}), false};
}

Answer newLot(Call& call) {
    const Document before = call.job();
    std::vector<std::filesystem::path> reads;
    if (const auto own = fileOf(before)) reads.push_back(*own);
    const std::optional<NewFile> file = NewFile::asked(call, reads);
    Progress progress(call, 4);
    const sheets::Book old = sheets::readBook(before);
    const sheets::Job job(old);
    const std::vector<sheets::OldReading> readings = sheets::oldReadings(old, job.workbook());
    progress.reach(1);
    const Document after = newFromTemplate(call, "job");
    progress.reach(2);
    job.fill(after);
    sheets::takeLogo(after, before);
    progress.reach(3);
    const sheets::Book made = sheets::readBook(after);
    sheets::carryOut(after, sheets::noteOldReadings(made, readings));
    std::string says = sheets::notFound(old, job.workbook()) + sheets::againList(made, readings);
    Answer answer{std::move(says)};
    if (file) {
        file->put(after);
    } else {
        answer.over =
            Reference<css::frame::XModel>(after, UNO_QUERY_THROW)->getCurrentController()->getFrame();
    }
    return answer;
}

}  // namespace trenchbook::addin
