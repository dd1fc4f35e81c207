#include "menu/boxes.h"

#include <com/sun/star/awt/MessageBoxButtons.hpp>
#include <com/sun/star/awt/MessageBoxResults.hpp>
#include <com/sun/star/awt/Toolkit.hpp>
#include <com/sun/star/awt/UnoControlDialog.hpp>
#include <com/sun/star/awt/XMessageBox.hpp>
#include <com/sun/star/beans/XPropertySet.hpp>
#include <com/sun/star/container/XNameContainer.hpp>
#include <com/sun/star/lang/XMultiComponentFactory.hpp>
#include <com/sun/star/lang/XMultiServiceFactory.hpp>
#include <com/sun/star/ui/dialogs/ExecutableDialogResults.hpp>
#include <com/sun/star/ui/dialogs/FilePicker.hpp>
#include <com/sun/star/ui/dialogs/FolderPicker.hpp>
#include <com/sun/star/ui/dialogs/TemplateDescription.hpp>

#include "menu/entries.h"
#include "menu/surroundings.h"

namespace trenchbook::addin {
namespace {

namespace dialogs = css::ui::dialogs;
using css::uno::Any;
using sheets::wide;

std::string titleFor(const Call& call) { return "Trenchbook: " + call.in(titleOf(call.command())); }

// Nothing where there is no window.
std::optional<sal_Int16> box(const Call& call, css::awt::MessageBoxType type, sal_Int32 buttons,
                             const std::string& says, const Reference<css::frame::XFrame>& over = {}) {
    const Reference<css::frame::XFrame>& frame = over.is() ? over : call.frame();
    if (!frame.is()) return std::nullopt;
    const Reference<css::awt::XWindowPeer> parent(frame->getContainerWindow(), UNO_QUERY);
    if (!parent.is()) return std::nullopt;
    const auto made = css::awt::Toolkit::create(call.context())
                          ->createMessageBox(parent, type, buttons, wide(titleFor(call)), wide(says));
    const sal_Int16 pressed = made->execute();
    Reference<css::lang::XComponent>(made, UNO_QUERY_THROW)->dispose();
    return pressed;
}

[[noreturn]] void refuseMissing(const Call& call, const std::string& argument, const Text& asks) {
    throw Refused(call.command() + ": the argument " + argument + " is missing: " + call.in(asks));
}

std::filesystem::path picked(const Call& call, const Text& asks, sal_Int16 kind,
                             const std::vector<const char*>& endings, const std::string& suggested) {
    const auto picker = dialogs::FilePicker::createWithMode(call.context(), kind);
    picker->setTitle(wide(call.in(asks)));
    std::string all;
    for (const char* ending : endings) all += (all.empty() ? "*." : ";*.") + std::string(ending);
    if (!all.empty()) picker->appendFilter(wide(all), wide(all));
    if (!suggested.empty()) picker->setDefaultName(wide(suggested));
    if (const auto file = fileOf(call.document()))
        picker->setDisplayDirectory(wide(sheets::fileUrl(file->parent_path())));
    if (picker->execute() != dialogs::ExecutableDialogResults::OK) throw Cancelled();
    const auto files = picker->getSelectedFiles();
    if (files.getLength() == 0) throw Cancelled();
    return pathOf(sheets::narrow(files[0]));
}

// A dialog made of lines: label and field each, OK and Cancel under them. Sizes are the office's dialog units.
class Lines {
  public:
    Lines(const Call& call, const std::vector<Asked>& asked)
        : model_(call.context()->getServiceManager()->createInstanceWithContext(
              "com.sun.star.awt.UnoControlDialogModel", call.context())),
          parts_(model_, UNO_QUERY_THROW),
          factory_(model_, UNO_QUERY_THROW) {
        const auto lines = static_cast<sal_Int32>(asked.size());
        set(model_, "Title", wide(titleFor(call)));
        set(model_, "PositionX", sal_Int32(130));  // over the window, below its bars
        set(model_, "PositionY", sal_Int32(90));
        set(model_, "Width", width);
        set(model_, "Height", sal_Int32(lines * lineHeight + 36));
        for (sal_Int32 n = 0; n < lines; ++n) {
            const Asked& one = asked[static_cast<std::size_t>(n)];
            const auto label = add("FixedText", "label" + std::to_string(n), 6, 8 + n * lineHeight, 78, 12);
            set(label, "Label", wide(call.in(one.label)));
            const auto field =
                add("Edit", "field" + std::to_string(n), 86, 6 + n * lineHeight, width - 92, 13);
            set(field, "Text", wide(one.value));
        }
        const sal_Int32 under = lines * lineHeight + 14;
        const auto ok = add("Button", "ok", width - 112, under, 50, 15);
        set(ok, "PushButtonType", sal_Int16(1));
        set(ok, "DefaultButton", true);
        const auto cancel = add("Button", "cancel", width - 56, under, 50, 15);
        set(cancel, "PushButtonType", sal_Int16(2));
        dialog_ = css::awt::UnoControlDialog::create(call.context());
        dialog_->setModel(Reference<css::awt::XControlModel>(model_, UNO_QUERY_THROW));
        dialog_->createPeer(
            Reference<css::awt::XToolkit>(css::awt::Toolkit::create(call.context()), UNO_QUERY_THROW),
            Reference<css::awt::XWindowPeer>(call.frame()->getContainerWindow(), UNO_QUERY));
    }
    ~Lines() { Reference<css::lang::XComponent>(dialog_, UNO_QUERY_THROW)->dispose(); }
    Lines(const Lines&) = delete;
    Lines& operator=(const Lines&) = delete;

    bool execute() { return dialog_->execute() == 1; }
    std::string text(std::size_t line) const {
        rtl::OUString given;
        Reference<css::beans::XPropertySet>(parts_->getByName(wide("field" + std::to_string(line))),
                                            UNO_QUERY_THROW)
            ->getPropertyValue("Text") >>= given;
        return sheets::narrow(given);
    }

  private:
    static constexpr sal_Int32 width = 230, lineHeight = 17;

    template <class Item>
    static void set(const Reference<css::uno::XInterface>& model, const char* name, const Item& value) {
        Reference<css::beans::XPropertySet>(model, UNO_QUERY_THROW)
            ->setPropertyValue(rtl::OUString::createFromAscii(name), Any(value));
    }
    Reference<css::uno::XInterface> add(const char* kind, const std::string& name, sal_Int32 x, sal_Int32 y,
                                        sal_Int32 wideness, sal_Int32 height) {
        const Reference<css::uno::XInterface> made =
            factory_->createInstance(wide("com.sun.star.awt.UnoControl" + std::string(kind) + "Model"));
        set(made, "PositionX", x);
        set(made, "PositionY", y);
        set(made, "Width", wideness);
        set(made, "Height", height);
        set(made, "Name", wide(name));
        parts_->insertByName(wide(name), Any(made));
        return made;
    }

    Reference<css::uno::XInterface> model_;
    Reference<css::container::XNameContainer> parts_;
    Reference<css::lang::XMultiServiceFactory> factory_;
    Reference<css::awt::XUnoControlDialog> dialog_;
};

}  // namespace

void show(const Call& call, Box kind, const std::string& says, const Reference<css::frame::XFrame>& over) {
    box(call, kind == Box::Done ? css::awt::MessageBoxType_INFOBOX : css::awt::MessageBoxType_WARNINGBOX,
        css::awt::MessageBoxButtons::BUTTONS_OK, says, over);
}

bool agreed(const Call& call, const std::string& question) {
    return box(call, css::awt::MessageBoxType_QUERYBOX, css::awt::MessageBoxButtons::BUTTONS_YES_NO,
               question) == css::awt::MessageBoxResults::YES;
}

std::filesystem::path fileToRead(const Call& call, const std::string& argument, const Text& asks,
                                 const std::vector<const char*>& endings) {
    if (const auto given = call.text(argument)) return pathOf(*given);
    if (call.byProgram()) refuseMissing(call, argument, asks);
    return picked(call, asks, dialogs::TemplateDescription::FILEOPEN_SIMPLE, endings, "");
}

std::filesystem::path fileToWrite(const Call& call, const std::string& argument, const Text& asks,
                                  const std::string& suggested) {
    if (const auto given = call.text(argument)) return pathOf(*given);
    if (call.byProgram()) refuseMissing(call, argument, asks);
    return picked(call, asks, dialogs::TemplateDescription::FILESAVE_SIMPLE, {}, suggested);
}

std::filesystem::path folderToWrite(const Call& call, const std::string& argument, const Text& asks) {
    if (const auto given = call.text(argument)) return pathOf(*given);
    if (call.byProgram()) refuseMissing(call, argument, asks);
    const auto picker = dialogs::FolderPicker::create(call.context());
    picker->setTitle(wide(call.in(asks)));
    if (const auto file = fileOf(call.document()))
        picker->setDisplayDirectory(wide(sheets::fileUrl(file->parent_path())));
    if (picker->execute() != dialogs::ExecutableDialogResults::OK) throw Cancelled();
    return pathOf(sheets::narrow(picker->getDirectory()));
}

std::map<std::string, std::string> filledIn(const Call& call, const std::vector<Asked>& asked) {
    std::map<std::string, std::string> answers;
    for (const Asked& one : asked)
        if (const auto given = call.text(one.argument)) answers[one.argument] = *given;
    if (call.byProgram() || !call.frame().is()) return answers;
    std::vector<Asked> lines = asked;
    for (Asked& one : lines)
        if (const auto given = answers.find(one.argument); given != answers.end()) one.value = given->second;
    Lines dialog(call, lines);
    if (!dialog.execute()) throw Cancelled();
    for (std::size_t n = 0; n < lines.size(); ++n)
        if (const std::string typed = trimmed(dialog.text(n)); !typed.empty())
            answers[lines[n].argument] = typed;
    return answers;
}

}  // namespace trenchbook::addin
