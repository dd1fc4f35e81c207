#include "jobbook/works.h"

#include <com/sun/star/beans/NamedValue.hpp>
#include <com/sun/star/lang/IllegalArgumentException.hpp>
#include <com/sun/star/task/XJob.hpp>

#include "commands/drawing_files.h"
#include "jobbook/again.h"
#include "jobbook/carry_out.h"
#include "jobbook/files.h"
#include "jobbook/logo.h"
#include "jobbook/make.h"
#include "jobbook/pages.h"
#include "jobbook/paper.h"
#include "jobbook/read_book.h"
#include "jobbook/refused.h"
#include "jobbook/resolved.h"
#include "jobbook/stored_book.h"
#include "jobbook/summary.h"
#include "jobbook/values.h"
#include "templates/job.h"

namespace trenchbook::sheets {
namespace {

namespace fs = std::filesystem;
using css::beans::NamedValue;
using css::uno::Any;

const Document& documentOf(const Work& work, std::size_t number = 0) {
    if (number >= work.documents.size()) throw std::invalid_argument(work.name + ": a document is missing");
    return work.documents[number];
}

std::string wordOf(const Work& work, const std::string& name) {
    const auto found = work.words.find(name);
    if (found == work.words.end()) throw std::invalid_argument(work.name + ": " + name + " is missing");
    return found->second;
}

Lines linesOf(const std::vector<fs::path>& files) {
    Lines lines;
    for (const fs::path& file : files) lines.push_back(file.string());
    return lines;
}

Lines resolved(const Work& work) {
    requireResolved(documentOf(work), wordOf(work, "file"));
    return {};
}

Lines fill(const Work& work) {
    const Job job(wordOf(work, "notes"));
    job.fill(documentOf(work));
    if (const auto logo = logoFile(wordOf(work, "notes"))) takeLogo(documentOf(work), *logo);
    requireResolved(documentOf(work), wordOf(work, "file"));
    return {};
}

// No lines where the old job's file is to be opened by an office first.
Lines again(const Work& work) {
    const Document& after = documentOf(work, 0);
    const std::set<std::string> sheets = typedSheets(jobWorkbook({}));
    const std::optional<Book> old = work.documents.size() > 1
                                        ? readBook(documentOf(work, 1), {sheets, true, false, false})
                                        : storedBook(wordOf(work, "old"), sheets);
    if (!old) return {};
    const Job job(*old);
    const std::vector<OldReading> readings = oldReadings(*old, job.workbook());
    job.fill(after);
    if (work.documents.size() > 1)
        takeLogo(after, documentOf(work, 1));
    else
        takeStoredLogo(after, wordOf(work, "old"));
    const Book made = readBook(after, {typedSheets(job.workbook()), true, false, false});
    carryOut(after, noteOldReadings(made, readings));
    return {notFound(*old, job.workbook()) + againList(made, readings)};
}

Lines finish(const Work& work) {
    fitProse(documentOf(work), ProseHeight::AtLeast);
    fitLists(documentOf(work));
    trimPrintAreas(documentOf(work));
    return {};
}

Lines papers(const Work& work) {
    std::optional<Paper> size;
    if (work.words.count("size")) {
        size = paperNamed(wordOf(work, "size"));
        if (!size) throw std::invalid_argument("papers: no size is named " + wordOf(work, "size"));
    }
    return linesOf(writePapers(documentOf(work), wordOf(work, "folder"), size));
}

Lines values(const Work& work) { return linesOf(writeValues(documentOf(work), wordOf(work, "folder"))); }

Lines summary(const Work& work) { return {summaryOf(documentOf(work))}; }

Lines drawing(const Work& work) {
    const DrawingFiles made = drawingFiles(readBook(documentOf(work)));
    const fs::path folder = wordOf(work, "folder");
    fs::create_directories(folder);
    Lines lines;
    for (const DrawingFile& file : made.files) {
        writeFile(folder / file.name, file.text);
        lines.push_back((folder / file.name).string());
    }
    lines.push_back(made.says.en);
    return lines;
}

const std::map<std::string, Lines (*)(const Work&)> all = {
    {"drawing", drawing}, {"resolved", resolved}, {"fill", fill},     {"again", again},
    {"finish", finish},   {"papers", papers},     {"values", values}, {"summary", summary},
};

}  // namespace

Lines doHere(const Work& work) {
    const auto found = all.find(work.name);
    if (found == all.end()) throw std::invalid_argument("there is no work named " + work.name);
    return found->second(work);
}

Lines doInside(Office& office, const Work& work) {
    const Reference<css::task::XJob> inside(office.service(worksService), UNO_QUERY);
    if (!inside.is()) return doHere(work);
    css::uno::Sequence<rtl::OUString> said;
    try {
        inside->execute(handedOver(work)) >>= said;
    } catch (const css::lang::IllegalArgumentException& error) {
        if (error.ArgumentPosition == refusedThere) throw Refused(narrow(error.Message));
        throw std::runtime_error(narrow(error.Message));
    }
    Lines lines;
    for (const rtl::OUString& line : said) lines.push_back(narrow(line));
    return lines;
}

css::uno::Sequence<NamedValue> handedOver(const Work& work) {
    std::vector<NamedValue> arguments = {{"work", Any(wide(work.name))}};
    for (const Document& document : work.documents) arguments.emplace_back("document", Any(document));
    for (const auto& [name, word] : work.words) arguments.emplace_back(wide(name), Any(wide(word)));
    return {arguments.data(), static_cast<sal_Int32>(arguments.size())};
}

Work takenOver(const css::uno::Sequence<NamedValue>& arguments) {
    Work work;
    for (const NamedValue& argument : arguments) {
        rtl::OUString text;
        Document document;
        if (argument.Value >>= document) {
            work.documents.push_back(document);
        } else if (argument.Value >>= text) {
            (argument.Name == "work" ? work.name : work.words[narrow(argument.Name)]) = narrow(text);
        }
    }
    return work;
}

}  // namespace trenchbook::sheets
