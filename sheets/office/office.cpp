#include "office/office.h"

#include <unistd.h>

#include <chrono>
#include <com/sun/star/bridge/UnoUrlResolver.hpp>
#include <com/sun/star/connection/NoConnectException.hpp>
#include <com/sun/star/frame/Desktop.hpp>
#include <com/sun/star/frame/XStorable.hpp>
#include <com/sun/star/util/XCloseable.hpp>
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

Office::Office(const fs::path& extensions, const std::vector<fs::path>& leftovers)
    : profile_(temporaryFolder()) {
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
        keeper_ = std::make_unique<Keeper>(words, profile_ / "office.log", profile_, leftovers);
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
    if (keeper_) keeper_->end(std::chrono::seconds(10));
    keeper_.reset();
    std::error_code ignored;
    fs::remove_all(profile_, ignored);
}

Reference<css::uno::XInterface> Office::service(const char* name) {
    return context_->getServiceManager()->createInstanceWithContext(rtl::OUString::createFromAscii(name),
                                                                    context_);
}

// Documents are not opened hidden: one without a view stores neither its frozen headings nor its hidden gridlines. The
// office runs without a screen, so nothing shows.
Reference<css::sheet::XSpreadsheetDocument> Office::newDocument() {
    const Reference<css::lang::XComponent> made =
        desktop_->loadComponentFromURL("private:factory/scalc", "_blank", 0, properties({}));
    return Reference<css::sheet::XSpreadsheetDocument>(made, UNO_QUERY_THROW);
}

Reference<css::sheet::XSpreadsheetDocument> Office::open(const fs::path& file, bool asTemplate) {
    // Its own copy: no lock beside the file, and none there is in the way.
    const fs::path copy = workingFile(file.filename());
    fs::copy_file(file, copy);
    Reference<css::lang::XComponent> made;
    try {
        made =
            desktop_->loadComponentFromURL(wide(fileUrl(copy)), "_blank", 0,
                                           properties({property("AsTemplate", css::uno::Any(asTemplate))}));
    } catch (const css::uno::Exception& error) {
        throw std::runtime_error("cannot open " + file.string() + ": " + narrow(error.Message));
    }
    const Reference<css::sheet::XSpreadsheetDocument> document(made, UNO_QUERY);
    if (!document.is())
        throw std::runtime_error(file.string() + " is not a spreadsheet that the office can read");
    return document;
}

fs::path Office::workingFile(const fs::path& name) {
    const fs::path folder = profile_ / "work" / std::to_string(++workingFiles_);
    fs::create_directories(folder);
    return folder / name;
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
