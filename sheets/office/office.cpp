#include "office/office.h"

#include <unistd.h>

#include <chrono>
#include <com/sun/star/bridge/UnoUrlResolver.hpp>
#include <com/sun/star/connection/NoConnectException.hpp>
#include <com/sun/star/frame/Desktop.hpp>
#include <cppuhelper/bootstrap.hxx>
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

Office::Office(const fs::path& extensions) : profile_(temporaryFolder()) {
    const std::string pipe = "trenchbook-" + profile_.filename().string();
    std::vector<std::string> words = {officeCommand,
                                      "--headless",
                                      "--norestore",
                                      "--nologo",
                                      "--nodefault",
                                      "--accept=pipe,name=" + pipe + ";urp",
                                      "-env:UserInstallation=" + fileUrl(profile_)};
    if (!extensions.empty()) words.push_back("-env:BUNDLED_EXTENSIONS=" + fileUrl(extensions));
    try {
        quietProfile(profile_);
        keeper_ = std::make_unique<Keeper>(words, profile_ / "office.log", profile_);
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
            if (!keeper_->running())
                throw std::runtime_error("the office ended at once; is LibreOffice Calc installed?");
            if (tries > 3000) throw std::runtime_error("the office did not answer within a minute");
            std::this_thread::sleep_for(std::chrono::milliseconds(20));
        }
    }
    desktop_ = css::frame::Desktop::create(context_);
    desk_.emplace(desktop_, profile_ / "work", false);
}

Office::~Office() { end(); }

void Office::end() {
    try {
        if (desktop_.is()) desktop_->terminate();
    } catch (const css::uno::Exception&) {
        // It breaks the connection while it answers; the wait below decides.
    }
    desk_.reset();
    desktop_.clear();
    context_.clear();
    if (keeper_) keeper_->end(std::chrono::seconds(10));
    keeper_.reset();
    std::error_code ignored;
    fs::remove_all(profile_, ignored);
}

Reference<css::uno::XInterface> Office::service(const char* name) {
    return context_->getServiceManager()->createInstanceWithContext(rtl::OUString::createFromAscii(name),
                                                                    context_);
}

}  // namespace trenchbook::sheets
