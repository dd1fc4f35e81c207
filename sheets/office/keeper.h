// A process of ours between us and an office: it starts the office, waits for it, and ends it when we are gone,
// whatever ended us. It sees that by a connection that only we hold open.
#pragma once

#include <sys/types.h>

#include <chrono>

#include <filesystem>
#include <string>
#include <vector>

namespace trenchbook::sheets {

class Keeper {
  public:
    // Runs `words` with its output in `log` and its temporary files in `folder`. When we end without end(), the program
    // and all that it started are killed, then `folder` with all in it and every Leftover of now are removed; a signal
    // waits for that (stopping.h). Call while this process has one thread. Throws std::runtime_error.
    Keeper(const std::vector<std::string>& words, const std::filesystem::path& log,
           const std::filesystem::path& folder);
    ~Keeper() { end(std::chrono::seconds(0)); }
    Keeper(const Keeper&) = delete;
    Keeper& operator=(const Keeper&) = delete;

    bool running();
    // Gives the program time to end by itself, then kills it. The files stay.
    void end(std::chrono::milliseconds patience);

  private:
    pid_t process_ = -1;
    int alive_ = -1;  // our end of the connection, whose closing tells
};

}  // namespace trenchbook::sheets
