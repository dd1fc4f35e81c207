// Opening workbooks in an office that runs, our own or somebody's: what is read is a copy, what is written goes through
// a temporary name.
#pragma once

#include <com/sun/star/beans/PropertyValue.hpp>
#include <com/sun/star/frame/XDesktop2.hpp>
#include <com/sun/star/sheet/XSpreadsheetDocument.hpp>
#include <filesystem>
#include <string>
#include <vector>

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

class Desk {
  public:
    // `folder` is for working copies and goes when its owner says so. `hidden`: nobody is to see what is opened here;
    // in an office without a screen documents are not opened hidden, for then they have no view, and store neither
    // frozen headings nor hidden gridlines.
    Desk(Reference<css::frame::XDesktop2> desktop, std::filesystem::path folder, bool hidden);

    Reference<css::sheet::XSpreadsheetDocument> newDocument();
    // Works on a copy: the file itself is only read, and stays unlocked. Throws std::runtime_error when the office
    // cannot read it.
    Reference<css::sheet::XSpreadsheetDocument> open(const std::filesystem::path& file, bool asTemplate);
    // A place of this name in a folder of its own.
    std::filesystem::path workingFile(const std::filesystem::path& name);

  private:
    Reference<css::frame::XDesktop2> desktop_;
    std::filesystem::path folder_;
    bool hidden_;
    int workingFiles_ = 0;
};

// Stores under a temporary name beside the target, then renames, so that no half-written file is ever there.
void store(const Reference<css::sheet::XSpreadsheetDocument>& document, const std::filesystem::path& target,
           const char* filter);
void close(const Reference<css::sheet::XSpreadsheetDocument>& document);

// Closed when the work is done and when it fails: an office that ends with a document open leaves its lock behind.
class Opened {
  public:
    explicit Opened(const Reference<css::sheet::XSpreadsheetDocument>& document) : document_(document) {}
    Opened(const Opened&) = delete;
    Opened& operator=(const Opened&) = delete;
    ~Opened();
    operator const Reference<css::sheet::XSpreadsheetDocument>&() const { return document_; }

  private:
    Reference<css::sheet::XSpreadsheetDocument> document_;
};

}  // namespace trenchbook::sheets
