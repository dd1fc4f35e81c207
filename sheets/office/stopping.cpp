#include "office/stopping.h"

#include <sys/wait.h>
#include <unistd.h>

#include <algorithm>
#include <cerrno>
#include <csignal>
#include <cstdio>

namespace trenchbook::sheets {
namespace {

namespace fs = std::filesystem;

constexpr int signals[] = {SIGINT, SIGTERM, SIGHUP};

volatile sig_atomic_t asked = 0;  // the signal that waits
volatile sig_atomic_t keeperProcess = -1, keeperPipe = -1;

std::vector<fs::path>& paths() {
    static std::vector<fs::path> all;
    return all;
}

// Where the keeper did not clear up, because its office was gone or was ending, this process is doing it.
void answer(int signal) {
    const int before = errno;
    if (keeperProcess > 0) {
        close(keeperPipe);
        keeperPipe = -1;
        int how = 0;
        const bool cleared = waitpid(keeperProcess, &how, 0) == keeperProcess && WIFEXITED(how) &&
                             WEXITSTATUS(how) == keeperCleared;
        keeperProcess = -1;
        if (cleared) {
            std::signal(signal, SIG_DFL);
            raise(signal);
            errno = before;
            return;
        }
    }
    asked = signal;
    errno = before;
}

void handleSignals(void (*from)(int), void (*to)(int)) {
    for (const int signal : signals) {
        struct sigaction now;
        if (sigaction(signal, nullptr, &now) != 0 || now.sa_handler != from) continue;
        struct sigaction action = {};
        action.sa_handler = to;
        for (const int other : signals) sigaddset(&action.sa_mask, other);
        sigaction(signal, &action, nullptr);
    }
}

}  // namespace

Stopping::Stopping() { handleSignals(SIG_DFL, answer); }

Stopping::~Stopping() {
    handleSignals(answer, SIG_DFL);
    std::fflush(nullptr);
    if (asked != 0) raise(asked);
}

void stopWhereAsked() {
    if (asked != 0) throw Stopped("stopped by a signal");
}

Leftover::Leftover(fs::path path) : path_(std::move(path)) { paths().push_back(path_); }

Leftover::~Leftover() {
    std::error_code ignored;
    fs::remove_all(path_, ignored);
    paths().erase(std::find(paths().begin(), paths().end(), path_));
}

std::vector<fs::path> leftovers() { return paths(); }

void keptBy(pid_t keeper, int pipe) {
    keeperPipe = pipe;
    keeperProcess = keeper;
    if (asked != 0) raise(asked);
}

bool keptNoLonger() {
    const bool held = keeperPipe >= 0;
    keeperProcess = -1;
    keeperPipe = -1;
    return held;
}

}  // namespace trenchbook::sheets
