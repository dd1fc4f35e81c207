// What leaves the office: papers as PDF, and a workbook for somebody without the add-in.
#include "commands/drawing_files.h"
#include "commands/values_copy.h"
#include "jobbook/carry_out.h"
#include "jobbook/files.h"
#include "jobbook/pages.h"
#include "jobbook/paper.h"
#include "jobbook/read_book.h"
#include "jobbook/value_text.h"
#include "menu/boxes.h"
#include "menu/commands.h"
#include "menu/stored.h"

namespace trenchbook::addin {
namespace {

namespace fs = std::filesystem;

std::string listed(const std::vector<fs::path>& files) {
    std::string all;
    for (const fs::path& file : files) all += (all.empty() ? "" : "\n") + file.string();
    return all;
}

std::optional<sheets::Paper> paperSize(const Call& call) {
    const auto name = call.text("Size");
    if (!name) return std::nullopt;
    const auto size = sheets::paperNamed(*name);
    if (!size) throw Refused("Size is Letter or A4, not " + *name);
    return size;
}

// The name of the workbook's file, or of the job.
std::string nameFor(const Document& job) {
    if (const auto file = fileOf(job)) return file->stem().string();
    std::string name = sheets::namedText(job, "job_name");
    for (char& c : name)
        if (c == '/') c = '-';
    return name.empty() ? "job" : name;
}

}  // namespace

Answer writePapers(Call& call) {
    const Document job = call.job();
    const std::optional<sheets::Paper> size = paperSize(call);
    const fs::path folder =
        folderToWrite(call, "Folder", {"Folder for the papers", "Carpeta para los documentos"});
    sheets::requireFolder(folder);
    constexpr int steps = 10;
    Progress progress(call, steps);
    HiddenDesk desk(call);
    // Printing changes a workbook: a copy, so that the one in the window stays as it is.
    const sheets::Opened copy(desk.copyOf(job));
    progress.reach(2);
    const std::vector<fs::path> written = sheets::writePapers(
        copy, folder, size, [&](int done, int all) { progress.reach(2 + (steps - 2) * done / all); });
    return {listed(written)};
}

Answer drawingFiles(Call& call) {
    const sheets::DrawingFiles made = sheets::drawingFiles(sheets::readBook(call.job()));
    const fs::path folder =
        folderToWrite(call, "Folder", {"Folder for the drawing", "Carpeta para el plano"});
    sheets::requireFolder(folder);
    std::vector<fs::path> written;
    for (const sheets::DrawingFile& file : made.files) {
        written.push_back(folder / file.name);
        sheets::writeFile(written.back(), file.text);
    }
    return {listed(written) + "\n" + made.says.in(call.language())};
}

Answer copyValues(Call& call) {
    const Document job = call.job();
    std::vector<fs::path> reads;
    if (const auto own = fileOf(job)) reads.push_back(*own);
    fs::path file =
        fileToWrite(call, "To", {"Where the copy goes", "Dónde guardar la copia"},
                    nameFor(job) + (call.language() == Language::Spanish ? " valores" : " values"));
    if (file.extension() == ".ods" || file.extension() == ".xlsx") file.replace_extension();
    std::vector<NewFile> targets;
    for (const char* ending : {".ods", ".xlsx"}) targets.emplace_back(call, file.string() + ending, reads);
    Progress progress(call, 4);
    HiddenDesk desk(call);
    const sheets::Opened copy(desk.copyOf(job));
    progress.reach(1);
    // What the window shows, not what a computation of the copy could make of it.
    sheets::carryOut(copy, sheets::valuesCopy(sheets::readBook(job), sheets::today(), call.language()));
    progress.reach(2);
    std::vector<fs::path> written;
    for (const NewFile& target : targets) {
        target.write(copy);
        written.push_back(target.file());
        progress.reach(2 + static_cast<int>(written.size()));
    }
    return {listed(written)};
}

}  // namespace trenchbook::addin
