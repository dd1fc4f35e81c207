#include "office/office.h"

#include <fcntl.h>
#include <sys/wait.h>
#include <unistd.h>

#include <chrono>
#include <com/sun/star/bridge/UnoUrlResolver.hpp>
#include <com/sun/star/connection/NoConnectException.hpp>
#include <com/sun/star/frame/Desktop.hpp>
#include <com/sun/star/frame/XStorable.hpp>
#include <com/sun/star/util/XCloseable.hpp>
#include <cppuhelper/bootstrap.hxx>
#include <csignal>
#include <cstdlib>
#include <stdexcept>
#include <thread>

namespace trenchbook::sheets {
namespace {

namespace fs = std::filesystem;

constexpr const char* officeCommand = "/usr/bin/soffice";

fs::path temporaryFolder() {
    std::string pattern = (fs::temp_directory_path() / "trenchbook-XXXXXX").string();
    if (mkdtemp(pattern.data()) == nullptr) throw std::runtime_error("cannot make a folder in " + pattern);
    return pattern;
}

// A first start would otherwise show its tip of the day and look for Java.
void quietProfile(const fs::path& profile) {
    fs::create_directories(profile / "user");
    FILE* settings = std::fopen((profile / "user" / "registrymodifications.xcu").c_str(), "w");
    if (settings == nullptr) throw std::runtime_error("cannot write into " + profile.string());
    std::fputs(
        "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<oor:items "
        "xmlns:oor=\"http://openoffice.org/2001/registry\">\n<item "
        "oor:path=\"/org.openoffice.Office.Common/Misc\"><prop oor:name=\"ShowTipOfTheDay\" "
        "oor:op=\"fuse\"><value>false</value></prop></item>\n<item "
        "oor:path=\"/org.openoffice.Office.Common/Misc\"><prop oor:name=\"FirstRun\" "
        "oor:op=\"fuse\"><value>false</value></prop></item>\n</oor:items>\n",
        settings);
    std::fclose(settings);
}

}  // namespace

std::string fileUrl(const fs::path& path) {
    std::string url = "file://";
    for (const char c : fs::absolute(path).lexically_normal().string()) {
        const auto byte = static_cast<unsigned char>(c);
        if (std::isalnum(byte) || c == '/' || c == '-' || c == '_' || c == '.' || c == '~') {
            url += c;
        } else {
            char escaped[4];
            std::snprintf(escaped, sizeof escaped, "%%%02X", byte);
            url += escaped;
        }
    }
    return url;
}

css::beans::PropertyValue property(const char* name, const css::uno::Any& value) {
    css::beans::PropertyValue made;
    made.Name = rtl::OUString::createFromAscii(name);
    made.Value = value;
    return made;
}

css::uno::Sequence<css::beans::PropertyValue> properties(const std::vector<css::beans::PropertyValue>& list) {
    return {list.data(), static_cast<sal_Int32>(list.size())};
}

Office::Office(const fs::path& extensions) : profile_(temporaryFolder()) {
    quietProfile(profile_);
    const std::string pipe = "trenchbook-" + profile_.filename().string();
    std::vector<std::string> words = {officeCommand,
                                      "--headless",
                                      "--norestore",
                                      "--nologo",
                                      "--nodefault",
                                      "--accept=pipe,name=" + pipe + ";urp",
                                      "-env:UserInstallation=" + fileUrl(profile_)};
    if (!extensions.empty()) words.push_back("-env:BUNDLED_EXTENSIONS=" + fileUrl(extensions));

    process_ = fork();
    if (process_ < 0) throw std::runtime_error("cannot start an office");
    if (process_ == 0) {
        // A group of its own, so that the start script and the office end together.
        setpgid(0, 0);
        const int log = ::open((profile_ / "office.log").c_str(), O_WRONLY | O_CREAT | O_TRUNC, 0600);
        dup2(log, STDOUT_FILENO);
        dup2(log, STDERR_FILENO);
        std::vector<char*> arguments;
        for (std::string& word : words) arguments.push_back(word.data());
        arguments.push_back(nullptr);
        execv(officeCommand, arguments.data());
        _exit(127);
    }
    try {
        connect(pipe);
    } catch (...) {
        end();
        throw;
    }
}

void Office::connect(const std::string& pipe) {
    // A program outside the office finds the office's types through this variable.
    setenv("URE_BOOTSTRAP", "vnd.sun.star.pathname:" OFFICE_PROGRAM "/fundamentalrc", 0);
    const Reference<css::uno::XComponentContext> local = cppu::defaultBootstrap_InitialComponentContext();
    const auto resolver = css::bridge::UnoUrlResolver::create(local);
    const rtl::OUString address = wide("uno:pipe,name=" + pipe + ";urp;StarOffice.ComponentContext");
    for (int tries = 0;; ++tries) {
        try {
            context_.set(resolver->resolve(address), UNO_QUERY_THROW);
            break;
        } catch (const css::connection::NoConnectException&) {
            int state = 0;
            if (waitpid(process_, &state, WNOHANG) == process_) {
                process_ = -1;
                throw std::runtime_error("the office ended at once; is LibreOffice Calc installed?");
            }
            if (tries > 600) throw std::runtime_error("the office did not answer within a minute");
            std::this_thread::sleep_for(std::chrono::milliseconds(100));
        }
    }
    desktop_ = css::frame::Desktop::create(context_);
}

Office::~Office() { end(); }

void Office::end() {
    try {
        if (desktop_.is()) desktop_->terminate();
    } catch (const css::uno::Exception&) {
        // It breaks the connection while it answers; the wait below decides.
    }
    desktop_.clear();
    context_.clear();
    if (process_ > 0) {
        for (int tries = 0; tries < 100; ++tries) {
            int state = 0;
            if (waitpid(process_, &state, WNOHANG) == process_) {
                process_ = -1;
                break;
            }
            std::this_thread::sleep_for(std::chrono::milliseconds(100));
        }
        if (process_ > 0) {
            kill(-process_, SIGKILL);
            waitpid(process_, nullptr, 0);
            process_ = -1;
        }
    }
    std::error_code ignored;
    fs::remove_all(profile_, ignored);
}

Reference<css::uno::XInterface> Office::service(const char* name) {
    return context_->getServiceManager()->createInstanceWithContext(rtl::OUString::createFromAscii(name),
                                                                    context_);
}

Reference<css::sheet::XSpreadsheetDocument> Office::newDocument() {
    const Reference<css::lang::XComponent> made = desktop_->loadComponentFromURL(
        "private:factory/scalc", "_blank", 0, properties({property("Hidden", css::uno::Any(true))}));
    return Reference<css::sheet::XSpreadsheetDocument>(made, UNO_QUERY_THROW);
}

Reference<css::sheet::XSpreadsheetDocument> Office::open(const fs::path& file, bool asTemplate) {
    if (!fs::exists(file)) throw std::runtime_error("there is no file " + file.string());
    Reference<css::lang::XComponent> made;
    try {
        made =
            desktop_->loadComponentFromURL(wide(fileUrl(file)), "_blank", 0,
                                           properties({property("Hidden", css::uno::Any(true)),
                                                       property("AsTemplate", css::uno::Any(asTemplate))}));
    } catch (const css::uno::Exception& error) {
        throw std::runtime_error("cannot open " + file.string() + ": " + narrow(error.Message));
    }
    const Reference<css::sheet::XSpreadsheetDocument> document(made, UNO_QUERY);
    if (!document.is())
        throw std::runtime_error(file.string() + " is not a spreadsheet that the office can read");
    return document;
}

void store(const Reference<css::sheet::XSpreadsheetDocument>& document, const fs::path& target,
           const char* filter) {
    fs::path part = target;
    part.replace_filename("." + target.filename().string() + ".part");
    const Reference<css::frame::XStorable> storable(document, UNO_QUERY_THROW);
    try {
        storable->storeToURL(wide(fileUrl(part)),
                             properties({property("FilterName", css::uno::Any(wide(filter)))}));
    } catch (const css::uno::Exception& error) {
        std::error_code ignored;
        fs::remove(part, ignored);
        throw std::runtime_error("cannot write " + target.string() + ": " + narrow(error.Message));
    }
    fs::rename(part, target);
}

void close(const Reference<css::sheet::XSpreadsheetDocument>& document) {
    const Reference<css::util::XCloseable> closeable(document, UNO_QUERY);
    if (closeable.is()) closeable->close(true);
}

}  // namespace trenchbook::sheets
