#include "jobbook/target.h"

#include <fcntl.h>
#include <pwd.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <sys/statvfs.h>
#include <unistd.h>

#include <algorithm>
#include <cerrno>
#include <chrono>
#include <climits>
#include <cstdio>
#include <cstring>
#include <ctime>
#include <optional>
#include <thread>

namespace trenchbook::sheets {
namespace {

namespace fs = std::filesystem;

constexpr const char* lockOwner = "jobbook";
constexpr std::size_t longestName = NAME_MAX - sizeof ".~lock.#" + 1;
constexpr std::uintmax_t roomNeeded = 64u << 20;  // an office's fresh profile takes about 5 MB, a job 2 MB
constexpr std::chrono::minutes patience(2);       // a command takes seconds

std::string reason() { return std::strerror(errno); }

// Write permission as the file shows it: whoever may do everything still leaves a read-only file alone.
bool readOnly(const fs::path& path) {
    struct stat about;
    if (stat(path.c_str(), &about) != 0) return false;
    return (about.st_mode & (S_IWUSR | S_IWGRP | S_IWOTH)) == 0 || access(path.c_str(), W_OK) != 0;
}

// With a link's whole chain followed, also where its end is not there yet.
fs::path followed(const fs::path& given) {
    fs::path file = given;
    constexpr int mostLinks = 40;
    for (int links = 0; fs::is_symlink(fs::symlink_status(file)); ++links) {
        if (links == mostLinks) throw Refused(given.string() + " is a link that leads nowhere but to links");
        const fs::path next = fs::read_symlink(file);
        file = next.is_absolute() ? next : file.parent_path() / next;
    }
    return file;
}

fs::path folderOf(const fs::path& file) {
    return file.has_parent_path() ? file.parent_path() : fs::path(".");
}

void requireNameFits(const fs::path& file) {
    const std::size_t length = file.filename().string().size();
    if (length > longestName)
        throw Refused("a file name of " + std::to_string(length) + " bytes is too long; " +
                      std::to_string(longestName) + " is the most: " + file.filename().string());
    if (file.string().size() >= PATH_MAX)
        throw Refused("the path is too long for this system: " + file.string());
}

std::string hostName() {
    char name[HOST_NAME_MAX + 1] = "";
    gethostname(name, sizeof name - 1);
    return name;
}

// The fields of a lock as offices write them: name, login, host, time, profile; one line ended by a semicolon.
struct Lock {
    std::string name, login, host, since, profile;
};
std::optional<Lock> readLock(int file) {
    char text[4096];
    const ssize_t length = pread(file, text, sizeof text, 0);
    if (length <= 0) return std::nullopt;
    std::vector<std::string> fields(1);
    bool escaped = false;
    for (const char c : std::string(text, static_cast<std::size_t>(length))) {
        if (!escaped && c == '\\') {
            escaped = true;
            continue;
        }
        if (!escaped && c == ';') break;
        if (!escaped && c == ',') {
            fields.emplace_back();
        } else {
            fields.back() += c;
        }
        escaped = false;
    }
    fields.resize(5);
    return Lock{fields[0], fields[1], fields[2], fields[3], fields[4]};
}

std::string lockText() {
    const passwd* user = getpwuid(geteuid());
    char since[32];
    const std::time_t now = std::time(nullptr);
    std::strftime(since, sizeof since, "%d.%m.%Y %H:%M", std::localtime(&now));
    return std::string(lockOwner) + "," + (user == nullptr ? "" : user->pw_name) + "," + hostName() + "," +
           since + ",;";
}

// An office that a jobbook started and that is gone: its profile went with it.
bool leftByOurOffice(const Lock& lock) {
    constexpr const char* scheme = "file://";
    if (lock.host != hostName() || lock.profile.rfind(scheme, 0) != 0) return false;
    const fs::path profile = lock.profile.substr(std::strlen(scheme));
    return profile.filename().string().rfind("trenchbook-", 0) == 0 && !fs::exists(profile);
}

std::string ownerOf(const Lock& lock) {
    std::string owner = lock.name.empty() ? lock.login : lock.name;
    if (owner.empty()) owner = "somebody";
    if (!lock.host.empty()) owner += " on " + lock.host;
    if (!lock.since.empty()) owner += " since " + lock.since;
    return owner;
}

}  // namespace

void requireReadable(const fs::path& file) {
    if (file.filename().string().size() > NAME_MAX) requireNameFits(file);
    std::error_code error;
    const fs::file_status status = fs::status(file, error);
    if (!fs::exists(status)) throw Refused("there is no file " + file.string());
    if (fs::is_directory(status)) throw Refused(file.string() + " is a folder, not a workbook");
    if (!fs::is_regular_file(status)) throw Refused(file.string() + " is not a file");
    if (fs::file_size(file) == 0) throw Refused(file.string() + " is empty: it holds no workbook");
    if (access(file.c_str(), R_OK) != 0) throw Refused("cannot read " + file.string() + ": " + reason());
}

void requireFolder(const fs::path& folder) {
    fs::path there = folder.lexically_normal();
    if (!there.has_filename() && there.has_parent_path()) there = there.parent_path();
    for (const fs::path& name : there)
        if (name.string().size() > NAME_MAX) requireNameFits(name);
    while (!fs::exists(there) && there != folderOf(there)) there = folderOf(there);
    if (!fs::is_directory(there)) throw Refused(there.string() + " is a file, not a folder");
    if (readOnly(there))
        throw Refused("cannot write into the folder " + there.string() + ": it is read-only");
}

void requireWorkingRoom() {
    const char* variable = std::getenv("TMPDIR");
    const fs::path folder = variable != nullptr && *variable != '\0' ? variable : "/tmp";
    const std::string said = "temporary files go to " + folder.string() + " (TMPDIR), ";
    if (!fs::is_directory(folder)) throw Refused(said + "which is not there");
    struct statvfs about;
    if (statvfs(folder.c_str(), &about) == 0) {
        const std::uintmax_t room = static_cast<std::uintmax_t>(about.f_bavail) * about.f_frsize;
        if (room < roomNeeded)
            throw Refused(said + "where " + std::to_string(room >> 20) + " MB are free; " +
                          std::to_string(roomNeeded >> 20) + " MB are needed");
    }
    if (readOnly(folder)) throw Refused(said + "which is read-only");
}

Target::Target(const fs::path& given, Existing existing, const std::vector<fs::path>& reads)
    : given_(given), file_(given) {
    requireNameFits(given);
    file_ = followed(given);
    requireNameFits(file_);
    decide(existing, reads);
    lock();
    try {
        decide(existing, reads);  // another jobbook may have written it while this one waited
    } catch (...) {
        release();
        throw;
    }
}

Target::~Target() { release(); }

void Target::release() {
    mine_.clear();
    close(lock_);
}

fs::path Target::lockFile() const { return folderOf(file_) / (".~lock." + file_.filename().string() + "#"); }
fs::path Target::part() const { return folderOf(file_) / ("." + file_.filename().string() + ".part"); }

void Target::decide(Existing existing, const std::vector<fs::path>& reads) const {
    const std::string name = given_.string();
    const fs::path folder = folderOf(file_);
    if (!fs::is_directory(folder)) throw Refused("there is no folder " + folder.string());
    if (existing == Existing::Changed) requireReadable(file_);
    if (fs::exists(file_)) {
        if (fs::is_directory(file_)) throw Refused(name + " is a folder, not a workbook");
        if (!fs::is_regular_file(file_)) throw Refused(name + " is not a file");
        for (const fs::path& read : reads)
            if (fs::exists(read) && fs::equivalent(file_, read))
                throw Refused(name + " and " + read.string() +
                              " are the same file: a command never writes over what it reads");
        if (existing == Existing::Refused)
            throw Refused(name + " is there already; --replace puts the new one in its place");
        if (readOnly(file_)) throw Refused(name + " is read-only");
    }
    if (readOnly(folder))
        throw Refused("cannot write into the folder " + folder.string() + ": it is read-only");
}

// Whoever holds the lock of the operating system on the lock's file is at work; it ends with its process.
bool Target::lockTaken() {
    const fs::path path = lockFile();
    lock_ = open(path.c_str(), O_RDWR | O_CREAT | O_CLOEXEC, 0644);
    if (lock_ < 0) throw Refused("cannot lock " + given_.string() + ": " + path.string() + ": " + reason());
    if (const auto lock = readLock(lock_); lock && !leftByOurOffice(*lock)) {
        if (lock->name != lockOwner || lock->host != hostName()) {
            close(lock_);
            throw Refused(given_.string() + " is open in an office: " + ownerOf(*lock) +
                          ". Close it there first. Where no office has it open, delete " + path.string());
        }
    }
    struct stat held, named;
    const bool mine = flock(lock_, LOCK_EX | LOCK_NB) == 0 && fstat(lock_, &held) == 0 &&
                      stat(path.c_str(), &named) == 0 && held.st_ino == named.st_ino &&
                      held.st_dev == named.st_dev;
    if (!mine) close(lock_);
    return mine;
}

void Target::lock() {
    const auto end = std::chrono::steady_clock::now() + patience;
    bool told = false;
    while (!lockTaken()) {
        stopWhereAsked();
        if (std::chrono::steady_clock::now() > end)
            throw Refused(given_.string() + ": another jobbook is at work on it");
        if (!told) std::fprintf(stderr, "another jobbook is at work on %s: waiting\n", given_.c_str());
        told = true;
        std::this_thread::sleep_for(std::chrono::milliseconds(100));
    }
    mine_.emplace_back(lockFile());
    mine_.emplace_back(part());
    const std::string text = lockText();
    if (ftruncate(lock_, 0) != 0 ||
        pwrite(lock_, text.data(), text.size(), 0) != static_cast<ssize_t>(text.size())) {
        const std::string why = reason();
        release();
        throw Refused("cannot lock " + given_.string() + ": " + why);
    }
}

void Target::put(const fs::path& made) const {
    std::error_code error;
    fs::copy_file(made, part(), fs::copy_options::overwrite_existing, error);
    if (!error && fs::exists(file_)) fs::permissions(part(), fs::status(file_).permissions(), error);
    if (!error) fs::rename(part(), file_, error);
    if (error) {
        std::error_code ignored;
        fs::remove(part(), ignored);
        throw std::runtime_error("cannot write " + given_.string() + ": " + error.message());
    }
}

}  // namespace trenchbook::sheets
