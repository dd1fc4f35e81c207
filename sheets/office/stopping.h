// SIGINT, SIGTERM and SIGHUP: a program of ours that is stopped takes away what it made for itself, then ends by the
// signal. While an office of ours runs, its keeper does that (keeper.h); at all other times the signal waits until the
// program has unwound.
#pragma once

#include <sys/types.h>

#include <filesystem>
#include <stdexcept>
#include <vector>

namespace trenchbook::sheets {

// In main(): for as long as it lives a signal is answered as above. Signals that are ignored (nohup) or that somebody
// else answers stay so.
class Stopping {
  public:
    Stopping();
    ~Stopping();  // ends the program by the signal that came meanwhile
    Stopping(const Stopping&) = delete;
    Stopping& operator=(const Stopping&) = delete;
};

struct Stopped : std::runtime_error {
    using std::runtime_error::runtime_error;
};
// For loops that wait for somebody: throws Stopped where a signal has come.
void stopWhereAsked();

// A file or folder of ours that goes with this object, and with this process, whatever ends it while an office of ours
// runs. It need not be there yet.
class Leftover {
  public:
    explicit Leftover(std::filesystem::path path);
    ~Leftover();
    Leftover(const Leftover&) = delete;
    Leftover& operator=(const Leftover&) = delete;

  private:
    std::filesystem::path path_;
};
std::vector<std::filesystem::path> leftovers();

// The keeper that answers signals from now on: closing `pipe` tells it, and it ends with `cleared` when it has taken all
// away. A signal that came before is answered at once.
constexpr int keeperCleared = 0;
void keptBy(pid_t keeper, int pipe);
// False where a signal has told the keeper already: its pipe is closed then.
bool keptNoLonger();

}  // namespace trenchbook::sheets
