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

#include "office/stopping.h"

namespace trenchbook::sheets {
namespace {

namespace fs = std::filesystem;

constexpr char killOnly = 'k';  // sent to the keeper: end the program, leave the files
constexpr int signals[] = {SIGINT, SIGTERM, SIGHUP};

constexpr int officeGone = 3;  // how the keeper ends where nothing was its to take away

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
                for (const fs::path& left : leftovers) fs::remove_all(left, ignored);
            }
            _exit(told ? officeGone : keeperCleared);
        }
        pid_t ended = 0;
        while ((ended = waitpid(-1, nullptr, WNOHANG)) > 0)
            ;
        if (ended < 0) _exit(officeGone);  // nobody of them is left
    }
}

}  // namespace

Keeper::Keeper(const std::vector<std::string>& words, const fs::path& log, const fs::path& folder) {
    int ends[2];
    if (socketpair(AF_UNIX, SOCK_STREAM | SOCK_CLOEXEC, 0, ends) != 0)
        throw std::runtime_error("cannot start an office: no connection");
    process_ = fork();
    if (process_ == 0) {
        close(ends[1]);
        keep(words, log, folder, leftovers(), ends[0]);
    }
    close(ends[0]);
    if (process_ < 0) {
        close(ends[1]);
        throw std::runtime_error("cannot start an office: no process");
    }
    alive_ = ends[1];
    keptBy(process_, alive_);
}

bool Keeper::running() {
    // Not our child any more: a signal's answer has waited for it.
    if (process_ > 0 && waitpid(process_, nullptr, WNOHANG) != 0) process_ = -1;
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
    if (keptNoLonger() && alive_ >= 0) close(alive_);
    alive_ = -1;
}

}  // namespace trenchbook::sheets
