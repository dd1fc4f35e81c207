#include "menu/surroundings.h"

#include <stdlib.h>
#include <osl/file.hxx>

#include <com/sun/star/deployment/PackageInformationProvider.hpp>
#include <com/sun/star/frame/Desktop.hpp>
#include <com/sun/star/frame/XModel.hpp>
#include <com/sun/star/sheet/XCalculatable.hpp>

#include "jobbook/make.h"
#include "jobbook/target.h"

namespace trenchbook::addin {

namespace fs = std::filesystem;
using sheets::narrow;
using sheets::property;
using sheets::wide;

namespace {

fs::path temporaryFolder() {
    std::string pattern = (fs::temp_directory_path() / "trenchbook-menu-XXXXXX").string();
    if (mkdtemp(pattern.data()) == nullptr) throw std::runtime_error("cannot make a folder in " + pattern);
    return pattern;
}

fs::path pathOfUrl(const rtl::OUString& url) {
    rtl::OUString path;
    if (osl::FileBase::getSystemPathFromFileURL(url, path) != osl::FileBase::E_None)
        throw Refused(narrow(url) + " is not a file on this machine");
    return narrow(path);
}

}  // namespace

fs::path pathOf(const std::string& given) {
    return given.rfind("file:", 0) == 0 ? pathOfUrl(wide(given)) : fs::path(given);
}

std::optional<fs::path> fileOf(const Document& document) {
    const rtl::OUString url = Reference<css::frame::XModel>(document, UNO_QUERY_THROW)->getURL();
    return url.startsWith("file:") ? std::optional(pathOfUrl(url)) : std::nullopt;
}

fs::path packageTemplate(const Call& call, const std::string& name) {
    const rtl::OUString package =
        css::deployment::PackageInformationProvider::get(call.context())->getPackageLocation("trenchbook");
    if (!package.isEmpty()) {
        const fs::path file = pathOfUrl(package) / "templates" / "Trenchbook" / (name + ".ots");
        if (fs::exists(file)) return file;
    }
    throw Refused(call.in({"The installed package has no template " + name,
                           "El paquete instalado no tiene la plantilla " + name}));
}

Document newFromTemplate(const Call& call, const std::string& name) {
    const Reference<css::lang::XComponent> made =
        css::frame::Desktop::create(call.context())
            ->loadComponentFromURL(wide(sheets::fileUrl(packageTemplate(call, name))), "_blank", 0,
                                   sheets::properties({property("AsTemplate", css::uno::Any(true))}));
    const Document document(made, UNO_QUERY_THROW);
    sheets::forgetTemplate(document);
    return document;
}

HiddenDesk::HiddenDesk(const Call& call)
    : folder_(temporaryFolder()), desk_(css::frame::Desktop::create(call.context()), folder_, true) {}

HiddenDesk::~HiddenDesk() {
    std::error_code ignored;
    fs::remove_all(folder_, ignored);
}

Document HiddenDesk::open(const fs::path& file) {
    sheets::requireReadable(file);
    const Document document = desk_.open(file, false);
    Reference<css::sheet::XCalculatable>(document, UNO_QUERY_THROW)->calculateAll();
    return document;
}

Document HiddenDesk::copyOf(const Document& document) {
    const fs::path copy = workingFile("copy.ods");
    sheets::store(document, copy, "calc8");
    return desk_.open(copy, false);
}

}  // namespace trenchbook::addin
