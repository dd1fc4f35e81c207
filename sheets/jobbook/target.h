// Files that a command reads and writes: decided here, before anything is computed. Every "no" is a Refused
// with a sentence of its own, and then nothing was written and nothing is left behind.
#pragma once

#include <filesystem>
#include <list>
#include <string>
#include <vector>

#include "jobbook/refused.h"
#include "office/stopping.h"

namespace trenchbook::sheets {

// A workbook that is only read: there, a file, not empty, readable.
void requireReadable(const std::filesystem::path& file);

// A folder that files go into: there, or to be made in one that is; never a file.
void requireFolder(const std::filesystem::path& folder);

// Room for an office's profile and its working copies where temporary files go (TMPDIR, else /tmp).
void requireWorkingRoom();

// One workbook to be written, ours alone as long as this object lives: the lock beside it is the one that
// offices know (`.~lock.job.ods#`), so that neither an office nor another jobbook takes the file meanwhile.
// Another jobbook at work on it is waited for; a lock that a jobbook left behind is removed.
//
//     Target target("new.ods", Target::Existing::Refused, {"old.ods"});
//     ... compute, store to `made` ...
//     target.put(made);
class Target {
  public:
    enum class Existing {
        Refused,   // a new file: where one is there already, it stays
        Replaced,  // a new file in its place: asked for by a word
        Changed,   // the file that is there is worked on
    };
    // `reads`: what the command reads besides; the target may be none of them under any name or link.
    Target(const std::filesystem::path& given, Existing existing,
           const std::vector<std::filesystem::path>& reads = {});
    ~Target();
    Target(const Target&) = delete;
    Target& operator=(const Target&) = delete;

    // The file itself, where the name given was a link to it.
    const std::filesystem::path& file() const { return file_; }
    // Puts a finished file in place, whole: copied beside the target, then renamed.
    void put(const std::filesystem::path& made) const;

  private:
    void decide(Existing existing, const std::vector<std::filesystem::path>& reads) const;
    void lock();
    bool lockTaken();
    void release();
    std::filesystem::path lockFile() const;
    std::filesystem::path part() const;

    std::filesystem::path given_, file_;
    int lock_ = -1;
    std::list<Leftover> mine_;  // the lock, and the part while it is written
};

}  // namespace trenchbook::sheets
