// jobbook: the way into the workbooks without a mouse.
#include <unistd.h>
#include <algorithm>
#include <cstdio>
#include <functional>
#include <map>
#include <memory>

#include "commands/buy.h"
#include "commands/change.h"
#include "commands/close_out.h"
#include "commands/learn.h"
#include "commands/option.h"
#include "commands/order.h"
#include "commands/prices.h"
#include "jobbook/again.h"
#include "jobbook/blank.h"
#include "jobbook/carry_out.h"
#include "jobbook/files.h"
#include "jobbook/fill.h"
#include "jobbook/installed.h"
#include "jobbook/make.h"
#include "jobbook/read_book.h"
#include "jobbook/resolved.h"
#include "jobbook/target.h"
#include "jobbook/value_text.h"
#include "jobbook/works.h"
#include "kit/look.h"
#include "templates/books.h"
#include "templates/job.h"
#include "trenchbook/core/version.h"
#include "trenchbook/money/purchase.h"

namespace {

using namespace trenchbook::sheets;
namespace fs = std::filesystem;

constexpr const char* usage =
    "Drainage jobs as workbooks, from the command line.\n\n  jobbook make   FOLDER JOB.ods [--paper DIR] "
    "[--values DIR] [--size Letter|A4] [--replace]\n                 site notes in FOLDER to a filled, computed "
    "workbook\n  jobbook again  JOB.ods NEW.ods [--replace]\n                 a new lot: prices, rules and wording go "
    "along, all that was measured is blank\n  jobbook fill   FOLDER JOB.ods\n                 site notes "
    "into a job that is there: what is measured goes into blank cells only\n  jobbook prices JOB.ods "
    "BOOK.ods [--take]\n                 the price book's news, old and new; --take brings them in, old "
    "prices stay visible\n  jobbook buy    JOB.ods BOOK.ods [--most N] [--take]\n                 the price book's suppliers side by side, deliveries counted; --take brings the cheapest in\n  jobbook option JOB.ods OTHER.ods [--name TEXT]\n                 another way to "
    "do the job: its price goes beside this one on Quote\n  jobbook options NOTES JOB.ods WAYS [--replace]\n                 each folder of WAYS holds the notes in which that way differs: a job file of each, its price on Quote\n  jobbook change JOB.ods CHANGED.ods [--what TEXT]\n                 a change of the work, worked out in a file of its own: cost, pipe and cut of it go onto Account\n  jobbook order  JOB.ods --number TEXT [--date "
    "2026-05-31] [--supplier TEXT] [--deliver 2026-06-05]\n                 [--place TEXT] [--only SUPPLIER] "
    "[--replace]\n                 issues the order: today's takeoff and prices, copied to Order as values "
    "that stay\n  jobbook ledger FOLDER LEDGER.ods [--replace]\n                 jobs.csv, hours.csv, items.csv to a ledger of closed jobs\n  jobbook estimate JOB.ods [--replace]\n                 the job is sold: its estimate to Close-out as values that stay\n  jobbook actual JOB.ods\n                 what bills and hours cost beside it, into blank cells only\n  jobbook close  JOB.ods LEDGER.ods [--finished 2026-05-31]\n                 a job that is closed out into the ledger\n  jobbook learn  LEDGER.ods JOB.ods\n                 hours each that the closed jobs teach, beside the kept ones on Labor\n  jobbook paper  JOB.ods DIR [--size Letter|A4]\n                 the papers as PDF\n  "
    "jobbook values JOB.ods DIR\n                 every visible table as computed values, one CSV each\n  jobbook drawing JOB.ods DIR\n                 the lot as DXF and, where two points have longitude and latitude, as GeoJSON\n  "
    "jobbook blank  DIR\n                 empty site notes, headings only\n  jobbook --version\n\nSite notes "
    "are one CSV a table, named after it; job.csv and runs.csv must be there.\nA new workbook takes "
    "the place of one that is there only with --replace; fill, prices --take, buy --take, option, change, order, estimate, actual,\nlearn and close change a workbook "
    "in its place. No command writes over what it reads or what is open elsewhere.\nEnds with 0 when done, 2 when "
    "the notes or the command are wrong, 1 when anything else fails.\n";

struct UsageError : std::runtime_error {
    using std::runtime_error::runtime_error;
};

// Words of a command: places in order, options by name.
struct Words {
    std::vector<std::string> places;
    std::map<std::string, std::string> options;

    // `known` options take a value, `flags` stand alone.
    Words(int count, char** words, const std::vector<std::string>& known, std::size_t expected,
          const std::vector<std::string>& flags = {}) {
        const auto among = [](const std::vector<std::string>& names, const std::string& word) {
            return std::find(names.begin(), names.end(), word) != names.end();
        };
        for (int n = 2; n < count; ++n) {
            const std::string word = words[n];
            if (word.rfind("--", 0) != 0) {
                places.push_back(word);
                continue;
            }
            if (among(flags, word)) {
                options[word];
                continue;
            }
            if (!among(known, word)) throw UsageError("there is no option " + word + " here");
            if (n + 1 == count) throw UsageError(word + " needs a value");
            options[word] = words[++n];
        }
        if (places.size() != expected)
            throw UsageError(std::string(words[1]) + " needs " + std::to_string(expected) +
                             (expected == 1 ? " name" : " names") + ", not " + std::to_string(places.size()));
    }

    bool has(const char* option) const { return options.count(option) != 0; }
    std::optional<std::string> text(const char* option) const {
        const auto found = options.find(option);
        return found == options.end() ? std::nullopt : std::optional(found->second);
    }
    std::optional<fs::path> folder(const char* option) const {
        const auto given = text(option);
        return given ? std::optional<fs::path>(*given) : std::nullopt;
    }
    std::optional<double> date(const char* option) const {
        const auto given = text(option);
        if (!given) return std::nullopt;
        try {
            return std::get<double>(readValue(*given, {show::date, Validity(), Measure::Plain}, false));
        } catch (const std::invalid_argument& wrong) {
            throw UsageError(std::string(option) + ": \"" + *given + "\" " + wrong.what());
        }
    }
    // A name that paperNamed() knows.
    std::optional<std::string> paper() const {
        const auto size = text("--size");
        if (size && !paperNamed(*size)) throw UsageError("--size is Letter or A4, not " + *size);
        return size;
    }
};

void requireWorkbookName(const fs::path& file) {
    if (file.extension() != ".ods") throw UsageError(file.string() + " must end in .ods");
}
// What is made anew may be a template, too: the shipped example is.
void requireNewName(const fs::path& file) {
    if (file.extension() != ".ots") requireWorkbookName(file);
}

// Folders that are written into, none of them one that is read.
void requireFolders(const Words& words, const std::optional<fs::path>& read = std::nullopt) {
    for (const char* option : {"--paper", "--values"}) {
        const auto folder = words.folder(option);
        if (!folder) continue;
        requireFolder(*folder);
        if (read && fs::exists(*folder) && fs::exists(*read) && fs::equivalent(*folder, *read))
            throw Refused(folder->string() +
                          " holds the site notes: a command never writes over what it reads");
    }
}

void say(const Lines& lines) {
    for (const std::string& line : lines) std::printf("%s\n", line.c_str());
}

// The office works in a folder of its own.
std::string fromAnywhere(const fs::path& path) { return fs::absolute(path).string(); }

void papersInto(Office& office, const Document& document, const fs::path& folder,
                const std::optional<std::string>& size) {
    Work work{"papers", {document}, {{"folder", fromAnywhere(folder)}}};
    if (size) work.words["size"] = *size;
    for (const std::string& file : doInside(office, work))
        std::printf("%s\n", (folder / fs::path(file).filename()).c_str());
}

void valuesInto(Office& office, const Document& document, const fs::path& folder) {
    const Lines files = doInside(office, {"values", {document}, {{"folder", fromAnywhere(folder)}}});
    std::printf("%s: %zu files\n", folder.c_str(), files.size());
}

void storeInto(Office& office, const Document& document, const Target& target) {
    const fs::path made = office.workingFile(target.file().filename());
    store(document, made, target.file().extension() == ".ots" ? "calc8_template" : "calc8");
    target.put(made);
}

Target::Existing newFile(const Words& words) {
    return words.has("--replace") ? Target::Existing::Replaced : Target::Existing::Refused;
}

void make(const Words& words) {
    const fs::path notes = words.places[0];
    requireNewName(words.places[1]);
    const std::optional<std::string> size = words.paper();
    requireFolders(words, notes);
    const Job faultless(notes);  // before an office is started
    requireWorkingRoom();
    const Target target(words.places[1], newFile(words));

    Office office(extensionFolder());
    requireAddin(office);
    const Opened document(office.open(templateFile(faultless.startsFrom()), true));
    doInside(office, {"fill", {document}, {{"notes", fromAnywhere(notes)}, {"file", words.places[1]}}});
    storeInto(office, document, target);
    say(doInside(office, {"summary", {document}}));
    say({words.places[1]});
    if (const auto folder = words.folder("--values")) valuesInto(office, document, *folder);
    if (const auto folder = words.folder("--paper")) papersInto(office, document, *folder, size);
}

// An old workbook, computed by the engine of today.
void withDocument(const fs::path& file, const std::function<void(Office&, const Document&)>& work) {
    requireReadable(file);
    requireWorkingRoom();
    Office office(extensionFolder());
    requireAddin(office);
    const Opened document(office.open(file, false));
    doInside(office, {"resolved", {document}, {{"file", file.string()}}});
    work(office, document);
}

// The same, with what the work changed stored in its place. `reads`: other workbooks of the command.
void changeDocument(const fs::path& file, const std::vector<fs::path>& reads,
                    const std::function<std::string(Office&, const Document&)>& work) {
    requireWorkbookName(file);
    for (const fs::path& read : reads) requireReadable(read);
    requireWorkingRoom();
    const Target target(file, Target::Existing::Changed, reads);
    withDocument(target.file(), [&](Office& office, const Document& document) {
        calculate(document);
        const std::string said = work(office, document);
        doInside(office, {"finish", {document}});
        storeInto(office, document, target);
        std::printf("%s", said.c_str());
        say({file.string()});
    });
}

void fillJob(const Words& words) {
    changeDocument(words.places[1], {}, [&](Office& office, const Document& document) {
        const Workbook workbook = jobWorkbook({});
        fillIn(document,
               readNotes(words.places[0], workbook, {false, namedText(document, "units") == "metric"}));
        calculate(document);
        arrangeSheets(document, SheetsShown::BackAgain);
        nameDocument(document);
        return doInside(office, {"summary", {document}}).front();
    });
}

// How many suppliers at most; all where nothing is said.
std::size_t mostOf(const Words& words) {
    const auto given = words.text("--most");
    if (!given) return trenchbook::mostSuppliersTried;
    if (given->size() != 1 || given->front() < '1' || given->front() > '9')
        throw UsageError("--most is a number of suppliers from 1 to 9, not " + *given);
    return static_cast<std::size_t>(given->front() - '0');
}

void prices(const Words& words) {
    const bool take = words.has("--take");
    const auto bring = [&](Office& office, const Document& job) {
        const Opened book(office.open(words.places[1], false));
        calculate(book);
        const PriceNews news = priceNews(readBook(job), readBook(book));
        if (news.rows == 0) return news.list;
        if (take) carryOut(job, news.steps);
        calculate(job);
        return news.list + (take ? news.taken : notTaken(news, "--take")) + "\n";
    };
    if (take) {
        changeDocument(words.places[0], {words.places[1]}, bring);
    } else {
        requireReadable(words.places[1]);
        withDocument(words.places[0], [&](Office& office, const Document& job) {
            calculate(job);
            std::printf("%s", bring(office, job).c_str());
        });
    }
}

void buy(const Words& words) {
    const bool take = words.has("--take");
    const std::size_t most = mostOf(words);
    const auto bring = [&](Office& office, const Document& job) {
        const Opened book(office.open(words.places[1], false));
        calculate(book);
        const Buying buying = buyFrom(readBook(job), readBook(book), most);
        if (take) carryOut(job, buying.steps);
        calculate(job);
        return buying.list + (take ? buying.taken : notTaken(buying, "--take")) + "\n";
    };
    if (take) {
        changeDocument(words.places[0], {words.places[1]}, bring);
    } else {
        requireReadable(words.places[1]);
        withDocument(words.places[0], [&](Office& office, const Document& job) {
            calculate(job);
            std::printf("%s", bring(office, job).c_str());
        });
    }
}

void option(const Words& words) {
    changeDocument(words.places[0], {words.places[1]}, [&](Office& office, const Document& job) {
        const fs::path file = words.places[1];
        const Opened other(office.open(file, false));
        requireResolved(other, file);
        calculate(other);
        const std::string name = words.text("--name").value_or(namedText(other, "job_name"));
        carryOut(job, noteOption(readBook(job), readBook(other), file.filename().string(),
                                 name.empty() ? file.stem().string() : name, today()));
        calculate(job);
        return optionNoted(readBook(job), file.filename().string());
    });
}

void change(const Words& words) {
    changeDocument(words.places[0], {words.places[1]}, [&](Office& office, const Document& job) {
        const fs::path file = words.places[1];
        const Opened other(office.open(file, false));
        requireResolved(other, file);
        calculate(other);
        const std::string what = words.text("--what").value_or(file.stem().string());
        carryOut(job, noteChange(readBook(job), readBook(other), file.filename().string(), what, today()));
        calculate(job);
        return changeNoted(readBook(job), what);
    });
}

// Site notes with those of an option in place of theirs, in a folder of its own.
class NotesOnTop {
  public:
    NotesOnTop(const fs::path& notes, const fs::path& option)
        : folder_(fs::temp_directory_path() / ("jobbook-option-" + std::to_string(getpid()))),
          mine_(folder_) {
        fs::remove_all(folder_);
        fs::create_directory(folder_);
        for (const fs::path& from : {notes, option})
            for (const fs::directory_entry& file : fs::directory_iterator(from))
                if (file.path().extension() == ".csv")
                    fs::copy_file(file.path(), folder_ / file.path().filename(),
                                  fs::copy_options::overwrite_existing);
    }
    NotesOnTop(const NotesOnTop&) = delete;
    NotesOnTop& operator=(const NotesOnTop&) = delete;
    const fs::path& folder() const { return folder_; }

  private:
    fs::path folder_;
    Leftover mine_;
};

// Other ways to do a job, each a folder of the notes in which it differs: a whole job file of each beside JOB.ods, its
// price on Quote there.
void options(const Words& words) {
    const fs::path notes = words.places[0], job = words.places[1], ways = words.places[2];
    if (!fs::is_directory(ways)) throw Refused(ways.string() + " is no folder");
    std::vector<fs::path> folders;
    for (const fs::directory_entry& way : fs::directory_iterator(ways))
        if (way.is_directory()) folders.push_back(way.path());
    std::sort(folders.begin(), folders.end());
    if (folders.empty()) throw Refused(ways.string() + " has no folder for each way to do the job");
    for (const fs::path& folder : folders) {
        const fs::path made = job.parent_path() / (folder.filename().string() + ".ods");
        const NotesOnTop together(notes, folder);
        Words each = words;
        each.places = {together.folder().string(), made.string()};
        make(each);
        each.places = {job.string(), made.string()};
        each.options["--name"] = folder.filename().string();
        option(each);
    }
}

void order(const Words& words) {
    OrderHead head;
    head.number = words.text("--number");
    head.supplier = words.text("--supplier");
    head.place = words.text("--place");
    head.only = words.text("--only");
    head.issued = words.date("--date");
    head.deliver = words.date("--deliver");
    head.replace = words.has("--replace");
    head.today = today();
    changeDocument(words.places[0], {}, [&](Office&, const Document& document) {
        carryOut(document, issueOrder(readBook(document), head));
        calculate(document);
        return orderIssued(readBook(document));
    });
}

void estimate(const Words& words) {
    changeDocument(words.places[0], {}, [&](Office&, const Document& document) {
        carryOut(document, takeEstimate(readBook(document), words.has("--replace")));
        calculate(document);
        return estimateTaken(readBook(document));
    });
}

void actual(const Words& words) {
    changeDocument(words.places[0], {}, [&](Office&, const Document& document) {
        const Actual taken = takeActual(readBook(document));
        carryOut(document, taken.steps);
        calculate(document);
        return actualTaken(readBook(document), taken);
    });
}

void ledger(const Words& words) {
    requireNewName(words.places[1]);
    const Workbook workbook = ledgerBook();
    const SiteNotes notes = readNotes(words.places[0], workbook, {.wholeJob = false});
    requireWorkingRoom();
    const Target target(words.places[1], newFile(words));
    Office office(extensionFolder());
    requireAddin(office);
    const Opened document(office.open(templateFile("ledger"), true));
    fill(document, notes);
    calculate(document);
    forgetTemplate(document);
    requireResolved(document, words.places[1]);
    storeInto(office, document, target);
    say({words.places[1]});
}

void learn(const Words& words) {
    changeDocument(words.places[1], {words.places[0]}, [&](Office& office, const Document& job) {
        const Opened book(office.open(words.places[0], false));
        calculate(book);
        const Learned learned = learnFrom(readBook(book), readBook(job), today());
        carryOut(job, learned.steps);
        calculate(job);
        return learned.list;
    });
}

void closeJob(const Words& words) {
    const double finished = words.date("--finished").value_or(today());
    changeDocument(words.places[1], {words.places[0]}, [&](Office& office, const Document& book) {
        const Opened job(office.open(words.places[0], false));
        requireResolved(job, words.places[0]);
        calculate(job);
        const Learned closed = closeInto(readBook(book), readBook(job), finished);
        carryOut(book, closed.steps);
        calculate(book);
        return closed.list;
    });
}

void again(const Words& words) {
    const fs::path old = words.places[0];
    requireWorkbookName(words.places[1]);
    requireReadable(old);
    requireWorkingRoom();
    const Target target(words.places[1], newFile(words), {old});
    Office office(extensionFolder());
    requireAddin(office);
    const Opened after(office.open(templateFile("job"), true));
    Lines list = doInside(office, {"again", {after}, {{"old", fromAnywhere(old)}}});
    if (list.empty()) {
        const Opened before(office.open(old, false));
        doInside(office, {"resolved", {before}, {{"file", old.string()}}});
        list = doInside(office, {"again", {after, before}});
    }
    storeInto(office, after, target);
    say(list);
    say({words.places[1]});
}

int run(int count, char** words) {
    const std::string command = count > 1 ? words[1] : "";
    if (command == "make") {
        make(Words(count, words, {"--paper", "--values", "--size"}, 2, {"--replace"}));
    } else if (command == "again") {
        again(Words(count, words, {}, 2, {"--replace"}));
    } else if (command == "fill") {
        fillJob(Words(count, words, {}, 2));
    } else if (command == "prices") {
        prices(Words(count, words, {}, 2, {"--take"}));
    } else if (command == "buy") {
        buy(Words(count, words, {"--most"}, 2, {"--take"}));
    } else if (command == "option") {
        option(Words(count, words, {"--name"}, 2));
    } else if (command == "change") {
        change(Words(count, words, {"--what"}, 2));
    } else if (command == "options") {
        options(Words(count, words, {}, 3, {"--replace"}));
    } else if (command == "order") {
        order(Words(count, words, {"--number", "--supplier", "--only", "--place", "--date", "--deliver"}, 1,
                    {"--replace"}));
    } else if (command == "estimate") {
        estimate(Words(count, words, {}, 1, {"--replace"}));
    } else if (command == "actual") {
        actual(Words(count, words, {}, 1));
    } else if (command == "ledger") {
        ledger(Words(count, words, {}, 2, {"--replace"}));
    } else if (command == "learn") {
        learn(Words(count, words, {}, 2));
    } else if (command == "close") {
        closeJob(Words(count, words, {"--finished"}, 2));
    } else if (command == "paper") {
        const Words given(count, words, {"--size"}, 2);
        const std::optional<std::string> size = given.paper();
        requireFolder(given.places[1]);
        withDocument(given.places[0], [&](Office& office, const Document& document) {
            papersInto(office, document, given.places[1], size);
        });
    } else if (command == "drawing") {
        const Words given(count, words, {}, 2);
        requireFolder(given.places[1]);
        withDocument(given.places[0], [&](Office& office, const Document& document) {
            say(doInside(office, {"drawing", {document}, {{"folder", fromAnywhere(given.places[1])}}}));
        });
    } else if (command == "values") {
        const Words given(count, words, {}, 2);
        requireFolder(given.places[1]);
        withDocument(given.places[0], [&](Office& office, const Document& document) {
            valuesInto(office, document, given.places[1]);
        });
    } else if (command == "blank") {
        const fs::path folder = Words(count, words, {}, 1).places[0];
        std::printf("%s: %zu files\n", folder.c_str(), writeBlank(jobWorkbook({}), folder).size());
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
    const trenchbook::sheets::Stopping stopping;
    try {
        return run(count, words);
    } catch (const Stopped&) {
        return 1;
    } catch (const Refused& wrong) {
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
