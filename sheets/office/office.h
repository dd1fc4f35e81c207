// A headless office of our own: started with a fresh profile, a pipe name nobody else uses and our add-in, ended when
// the object goes or this process ends in whatever way. Documents made here are gone with it unless stored.
#pragma once

#include <com/sun/star/frame/XComponentLoader.hpp>
#include <com/sun/star/frame/XDesktop2.hpp>
#include <com/sun/star/lang/XMultiComponentFactory.hpp>
#include <com/sun/star/sheet/XSpreadsheetDocument.hpp>
#include <com/sun/star/uno/XComponentContext.hpp>
#include <filesystem>
#include <memory>
#include <string>
#include <vector>

#include "office/keeper.h"

namespace trenchbook::sheets {

namespace css = ::com::sun::star;
using css::uno::Reference;
using css::uno::UNO_QUERY;
using css::uno::UNO_QUERY_THROW;

inline rtl::OUString wide(const std::string& text) {
    return rtl::OUString(text.data(), static_cast<sal_Int32>(text.size()), RTL_TEXTENCODING_UTF8);
}
inline std::string narrow(const rtl::OUString& text) {
    const rtl::OString bytes = rtl::OUStringToOString(text, RTL_TEXTENCODING_UTF8);
    return {bytes.getStr(), static_cast<std::size_t>(bytes.getLength())};
}
std::string fileUrl(const std::filesystem::path& path);

css::beans::PropertyValue property(const char* name, const css::uno::Any& value);
css::uno::Sequence<css::beans::PropertyValue> properties(const std::vector<css::beans::PropertyValue>& list);

class Office {
  public:
    // `extensions` is a folder that holds unpacked extensions, each in a folder of its own; may be empty for none.
    // `leftovers` are files to remove when this process ends before the object goes.
    explicit Office(const std::filesystem::path& extensions,
                    const std::vector<std::filesystem::path>& leftovers = {});
    ~Office();
    Office(const Office&) = delete;
    Office& operator=(const Office&) = delete;

    Reference<css::sheet::XSpreadsheetDocument> newDocument();
    // Works on a copy: the file itself is only read, and stays unlocked. Throws std::runtime_error when the office
    // cannot read it.
    Reference<css::sheet::XSpreadsheetDocument> open(const std::filesystem::path& file, bool asTemplate);
    const Reference<css::uno::XComponentContext>& context() const { return context_; }
    Reference<css::uno::XInterface> service(const char* name);
    // A place of this name in a folder of its own, gone with the office.
    std::filesystem::path workingFile(const std::filesystem::path& name);

  private:
    void connect(const std::string& pipe);
    void end();

    std::filesystem::path profile_;
    std::unique_ptr<Keeper> keeper_;
    int workingFiles_ = 0;
    Reference<css::uno::XComponentContext> context_;
    Reference<css::frame::XDesktop2> desktop_;
};

// Stores under a temporary name beside the target, then renames, so that no half-written file is ever there.
void store(const Reference<css::sheet::XSpreadsheetDocument>& document, const std::filesystem::path& target,
           const char* filter);
void close(const Reference<css::sheet::XSpreadsheetDocument>& document);

}  // namespace trenchbook::sheets
