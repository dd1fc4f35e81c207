// A headless office of our own: started with a fresh profile, a pipe name nobody else uses and our add-in, ended when
// the object goes or this process ends in whatever way. Documents made here are gone with it unless stored.
#pragma once

#include <com/sun/star/frame/XComponentLoader.hpp>
#include <com/sun/star/frame/XDesktop2.hpp>
#include <com/sun/star/lang/XMultiComponentFactory.hpp>
#include <com/sun/star/uno/XComponentContext.hpp>
#include <filesystem>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "office/desk.h"
#include "office/keeper.h"

namespace trenchbook::sheets {

class Office {
  public:
    // `extensions` is a folder that holds unpacked extensions, each in a folder of its own; may be empty for none.
    explicit Office(const std::filesystem::path& extensions);
    ~Office();
    Office(const Office&) = delete;
    Office& operator=(const Office&) = delete;

    Reference<css::sheet::XSpreadsheetDocument> newDocument() { return desk_->newDocument(); }
    Reference<css::sheet::XSpreadsheetDocument> open(const std::filesystem::path& file, bool asTemplate) {
        return desk_->open(file, asTemplate);
    }
    const Reference<css::uno::XComponentContext>& context() const { return context_; }
    Reference<css::uno::XInterface> service(const char* name);
    // A place of this name in a folder of its own, gone with the office.
    std::filesystem::path workingFile(const std::filesystem::path& name) { return desk_->workingFile(name); }

  private:
    void connect(const std::string& pipe);
    void end();

    std::filesystem::path profile_;
    std::unique_ptr<Keeper> keeper_;
    Reference<css::uno::XComponentContext> context_;
    Reference<css::frame::XDesktop2> desktop_;
    std::optional<Desk> desk_;
};

}  // namespace trenchbook::sheets
