#include "office/desk.h"

#include <cctype>
#include <com/sun/star/frame/XStorable.hpp>
#include <com/sun/star/util/XCloseable.hpp>
#include <cstdio>
#include <stdexcept>

namespace trenchbook::sheets {

namespace fs = std::filesystem;

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

Desk::Desk(Reference<css::frame::XDesktop2> desktop, fs::path folder, bool hidden)
    : desktop_(std::move(desktop)), folder_(std::move(folder)), hidden_(hidden) {}

Reference<css::sheet::XSpreadsheetDocument> Desk::newDocument() {
    const Reference<css::lang::XComponent> made = desktop_->loadComponentFromURL(
        "private:factory/scalc", "_blank", 0, properties({property("Hidden", css::uno::Any(hidden_))}));
    return Reference<css::sheet::XSpreadsheetDocument>(made, UNO_QUERY_THROW);
}

Reference<css::sheet::XSpreadsheetDocument> Desk::open(const fs::path& file, bool asTemplate) {
    // Its own copy: no lock beside the file, and none there is in the way.
    const fs::path copy = workingFile(file.filename());
    fs::copy_file(file, copy);
    Reference<css::lang::XComponent> made;
    try {
        made = desktop_->loadComponentFromURL(wide(fileUrl(copy)), "_blank", 0,
                                              properties({property("AsTemplate", css::uno::Any(asTemplate)),
                                                          property("Hidden", css::uno::Any(hidden_))}));
    } catch (const css::uno::Exception& error) {
        throw std::runtime_error("cannot open " + file.string() + ": " + narrow(error.Message));
    }
    const Reference<css::sheet::XSpreadsheetDocument> document(made, UNO_QUERY);
    if (!document.is())
        throw std::runtime_error(file.string() + " is not a spreadsheet that the office can read");
    return document;
}

fs::path Desk::workingFile(const fs::path& name) {
    const fs::path folder = folder_ / std::to_string(++workingFiles_);
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

Opened::~Opened() {
    try {
        close(document_);
    } catch (const css::uno::Exception&) {
        // The office is gone already.
    }
}

}  // namespace trenchbook::sheets
