#include "office/keeper.h"

#include <fcntl.h>
#include <poll.h>
#include <sys/prctl.h>
#include <sys/socket.h>
#include <sys/wait.h>
#include <unistd.h>

#include <chrono>
#include <csignal>
#include <cstdlib>
#include <stdexcept>
#include <thread>

namespace trenchbook::sheets {
namespace {

namespace fs = std::filesystem;

constexpr char killOnly = 'k';  // sent to the keeper: end the program, leave the files
constexpr int signals[] = {SIGINT, SIGTERM, SIGHUP};

// What the signals' handler needs; one office at a time is started here.
volatile sig_atomic_t keeperProcess = -1, keeperPipe = -1;

void waitForKeeper(int signal) {
    if (keeperPipe >= 0) close(keeperPipe);
    if (keeperProcess > 0) waitpid(keeperProcess, nullptr, 0);
    std::signal(signal, SIG_DFL);
    raise(signal);
}

void handleSignals(void (*handler)(int)) {
    for (const int signal : signals) {
        struct sigaction now;
        // What is ignored (nohup) stays so.
        if (sigaction(signal, nullptr, &now) == 0 && now.sa_handler == SIG_IGN) continue;
        struct sigaction action = {};
        action.sa_handler = handler;
        for (const int other : signals) sigaddset(&action.sa_mask, other);
        sigaction(signal, &action, nullptr);
    }
}

// The office's start program goes on in a child of its own: whoever of the group is left is ours to bury.
void killGroup(pid_t group) {
    kill(-group, SIGKILL);
    while (waitpid(-1, nullptr, 0) > 0) kill(-group, SIGKILL);
}

[[noreturn]] void keep(std::vector<std::string> words, const fs::path& log, const fs::path& folder,
                       const std::vector<fs::path>& leftovers, int pipe) {
    setpgid(0, 0);  // signals from the terminal are for the process that started us
    for (const int signal : signals) std::signal(signal, SIG_IGN);
    prctl(PR_SET_CHILD_SUBREAPER, 1);
    const pid_t office = fork();
    if (office == 0) {
        setpgid(0, 0);
        prctl(PR_SET_PDEATHSIG, SIGKILL);
        for (const int signal : signals) std::signal(signal, SIG_DFL);
        setenv("TMPDIR", folder.c_str(), 1);
        const int output = open(log.c_str(), O_WRONLY | O_CREAT | O_TRUNC, 0600);
        dup2(output, STDOUT_FILENO);
        dup2(output, STDERR_FILENO);
        std::vector<char*> arguments;
        for (std::string& word : words) arguments.push_back(word.data());
        arguments.push_back(nullptr);
        execv(arguments[0], arguments.data());
        _exit(127);
    }
    if (office < 0) _exit(127);
    setpgid(office, office);
    for (;;) {
        pollfd watched = {pipe, POLLIN, 0};
        constexpr int pause = 20;  // ms
        if (poll(&watched, 1, pause) > 0) {
            char word = 0;
            const bool told = read(pipe, &word, 1) == 1 && word == killOnly;
            killGroup(office);
            if (!told) {
                std::error_code ignored;
                fs::remove_all(folder, ignored);
                for (const fs::path& file : leftovers) fs::remove(file, ignored);
            }
            _exit(0);
        }
        pid_t ended = 0;
        while ((ended = waitpid(-1, nullptr, WNOHANG)) > 0)
            ;
        if (ended < 0) _exit(0);  // nobody of them is left
    }
}

}  // namespace

Keeper::Keeper(const std::vector<std::string>& words, const fs::path& log, const fs::path& folder,
               const std::vector<fs::path>& leftovers) {
    int ends[2];
    if (socketpair(AF_UNIX, SOCK_STREAM | SOCK_CLOEXEC, 0, ends) != 0)
        throw std::runtime_error("cannot start an office: no connection");
    process_ = fork();
    if (process_ == 0) {
        close(ends[1]);
        keep(words, log, folder, leftovers, ends[0]);
    }
    close(ends[0]);
    if (process_ < 0) {
        close(ends[1]);
        throw std::runtime_error("cannot start an office: no process");
    }
    alive_ = ends[1];
    keeperProcess = process_;
    keeperPipe = alive_;
    handleSignals(waitForKeeper);
}

bool Keeper::running() {
    if (process_ > 0 && waitpid(process_, nullptr, WNOHANG) == process_) {
        process_ = -1;
        keeperProcess = -1;
    }
    return process_ > 0;
}

void Keeper::end(std::chrono::milliseconds patience) {
    const auto until = std::chrono::steady_clock::now() + patience;
    while (running() && std::chrono::steady_clock::now() < until)
        std::this_thread::sleep_for(std::chrono::milliseconds(10));
    // The keeper may end at this moment: that is no reason for a signal.
    if (running()) {
        send(alive_, &killOnly, 1, MSG_NOSIGNAL);
        waitpid(process_, nullptr, 0);
    }
    process_ = -1;
    keeperProcess = -1;
    keeperPipe = -1;
    if (alive_ >= 0) close(alive_);
    alive_ = -1;
    handleSignals(SIG_DFL);
}

}  // namespace trenchbook::sheets
