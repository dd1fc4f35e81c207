// jobbook: the way into the workbooks without a mouse.
#include <cstdio>
#include <functional>
#include <map>

#include "job/job.h"
#include "jobbook/again.h"
#include "jobbook/blank.h"
#include "jobbook/files.h"
#include "jobbook/installed.h"
#include "jobbook/make.h"
#include "jobbook/paper.h"
#include "jobbook/summary.h"
#include "jobbook/values.h"
#include "trenchbook/version.h"

namespace {

using namespace trenchbook::sheets;
namespace fs = std::filesystem;

constexpr const char* usage =
    "Drainage jobs as workbooks, from the command line.\n"
    "\n"
    "  jobbook make   FOLDER JOB.ods [--paper DIR] [--values DIR] [--size Letter|A4]\n"
    "                 site notes in FOLDER to a filled, computed workbook\n"
    "  jobbook again  JOB.ods NEW.ods\n"
    "                 a new lot: prices, rules and wording go along, all that was measured is blank\n"
    "  jobbook paper  JOB.ods DIR [--size Letter|A4]\n"
    "                 the papers as PDF\n"
    "  jobbook values JOB.ods DIR\n"
    "                 every visible table as computed values, one CSV each\n"
    "  jobbook blank  DIR\n"
    "                 empty site notes, headings only\n"
    "  jobbook --version\n"
    "\n"
    "Site notes are one CSV a table, named after it; job.csv and runs.csv must be there.\n"
    "Ends with 0 when done, 2 when the notes or the command are wrong, 1 when anything else fails.\n";

struct UsageError : std::runtime_error {
    using std::runtime_error::runtime_error;
};

// Words of a command: places in order, options by name.
struct Words {
    std::vector<std::string> places;
    std::map<std::string, std::string> options;

    Words(int count, char** words, const std::vector<std::string>& known, std::size_t expected) {
        for (int n = 2; n < count; ++n) {
            const std::string word = words[n];
            if (word.rfind("--", 0) != 0) {
                places.push_back(word);
                continue;
            }
            bool taken = false;
            for (const std::string& name : known) taken = taken || name == word;
            if (!taken) throw UsageError("there is no option " + word + " here");
            if (n + 1 == count) throw UsageError(word + " needs a value");
            options[word] = words[++n];
        }
        if (places.size() != expected)
            throw UsageError(std::string(words[1]) + " needs " + std::to_string(expected) +
                             (expected == 1 ? " name" : " names") + ", not " + std::to_string(places.size()));
    }

    std::optional<fs::path> folder(const char* option) const {
        const auto found = options.find(option);
        return found == options.end() ? std::nullopt : std::optional<fs::path>(found->second);
    }
    std::optional<Paper> paper() const {
        const auto found = options.find("--size");
        if (found == options.end()) return std::nullopt;
        if (found->second == "Letter") return Paper::Letter;
        if (found->second == "A4") return Paper::A4;
        throw UsageError("--size is Letter or A4, not " + found->second);
    }
};

void requireWorkbookName(const fs::path& file) {
    if (file.extension() != ".ods") throw UsageError(file.string() + " must end in .ods");
    if (file.has_parent_path() && !fs::is_directory(file.parent_path()))
        throw UsageError("there is no folder " + file.parent_path().string());
}

void say(const std::vector<fs::path>& written) {
    for (const fs::path& file : written) std::printf("%s\n", file.c_str());
}
void sayFolder(const fs::path& folder, const std::vector<fs::path>& written) {
    std::printf("%s: %zu files\n", folder.c_str(), written.size());
}

void make(const Words& words) {
    const fs::path target = words.places[1];
    requireWorkbookName(target);
    const std::optional<Paper> size = words.paper();
    const Job job(words.places[0]);

    Office office(extensionFolder());
    requireAddin(office);
    const Document document = job.make(office);
    store(document, target, "calc8");
    std::printf("%s\n", summaryOf(document).c_str());
    say({target});
    if (const auto folder = words.folder("--values")) sayFolder(*folder, writeValues(document, *folder));
    if (const auto folder = words.folder("--paper")) say(writePapers(document, *folder, size));
    close(document);
}

// An old workbook, computed by the engine of today.
void withDocument(const fs::path& file, const std::function<void(const Document&)>& work) {
    if (!fs::exists(file)) throw UsageError("there is no file " + file.string());
    Office office(extensionFolder());
    requireAddin(office);
    const Document document = office.open(file, false);
    work(document);
    close(document);
}

void again(const Words& words) {
    const fs::path old = words.places[0], target = words.places[1];
    requireWorkbookName(target);
    if (!fs::exists(old)) throw UsageError("there is no file " + old.string());
    Office office(extensionFolder());
    requireAddin(office);
    const Document before = office.open(old, false);
    const Job job(before);
    const std::vector<OldReading> readings = oldReadings(before, job.workbook());
    close(before);
    const Document document = job.make(office);
    noteOldReadings(document, readings);
    store(document, target, "calc8");
    std::printf("%s\n", againList(document, readings).c_str());
    say({target});
    close(document);
}

int run(int count, char** words) {
    const std::string command = count > 1 ? words[1] : "";
    if (command == "make") {
        make(Words(count, words, {"--paper", "--values", "--size"}, 2));
    } else if (command == "again") {
        again(Words(count, words, {}, 2));
    } else if (command == "paper") {
        const Words given(count, words, {"--size"}, 2);
        const std::optional<Paper> size = given.paper();
        withDocument(given.places[0],
                     [&](const Document& document) { say(writePapers(document, given.places[1], size)); });
    } else if (command == "values") {
        const Words given(count, words, {}, 2);
        withDocument(given.places[0], [&](const Document& document) {
            sayFolder(given.places[1], writeValues(document, given.places[1]));
        });
    } else if (command == "blank") {
        const fs::path folder = Words(count, words, {}, 1).places[0];
        sayFolder(folder, writeBlank(jobWorkbook({}), folder));
    } else if (command == "--version") {
        std::printf("jobbook %s\n", trenchbook::version());
    } else if (command == "--help" || command == "help") {
        std::fputs(usage, stdout);
    } else {
        throw UsageError(command.empty() ? "what to do?" : "there is no command " + command);
    }
    return 0;
}

}  // namespace

int main(int count, char** words) {
    try {
        return run(count, words);
    } catch (const NotesError& wrong) {
        std::fprintf(stderr, "%s\nNothing was written.\n", wrong.what());
        return 2;
    } catch (const UsageError& wrong) {
        std::fprintf(stderr, "jobbook: %s\n\n%s", wrong.what(), usage);
        return 2;
    } catch (const css::uno::Exception& error) {
        std::fprintf(stderr, "jobbook: the office says: %s\n", narrow(error.Message).c_str());
    } catch (const std::exception& error) {
        std::fprintf(stderr, "jobbook: %s\n", error.what());
    }
    return 1;
}
