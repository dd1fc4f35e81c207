#include "menu/call.h"

#include <com/sun/star/beans/PropertyValue.hpp>
#include <com/sun/star/configuration/theDefaultProvider.hpp>
#include <com/sun/star/container/XNameAccess.hpp>
#include <com/sun/star/document/XUndoManagerSupplier.hpp>
#include <com/sun/star/sheet/XCalculatable.hpp>
#include <com/sun/star/task/XStatusIndicatorFactory.hpp>

#include "jobbook/carry_out.h"
#include "jobbook/held.h"
#include "jobbook/resolved.h"
#include "menu/entries.h"

namespace trenchbook::addin {
namespace {

using sheets::narrow;
using sheets::wide;

bool officeSpeaksSpanish(const Reference<css::uno::XComponentContext>& context) {
    const css::beans::PropertyValue node =
        sheets::property("nodepath", css::uno::Any(rtl::OUString("/org.openoffice.Setup/L10N")));
    const css::uno::Any given(node);
    const Reference<css::container::XNameAccess> settings(
        css::configuration::theDefaultProvider::get(context)->createInstanceWithArguments(
            "com.sun.star.configuration.ConfigurationAccess", css::uno::Sequence<css::uno::Any>(&given, 1)),
        UNO_QUERY_THROW);
    rtl::OUString locale;
    settings->getByName("ooLocale") >>= locale;
    return locale.startsWith("es");
}

class UndoStep {
  public:
    UndoStep(const Document& document, const std::string& title)
        : undo_(Reference<css::document::XUndoManagerSupplier>(document, UNO_QUERY_THROW)->getUndoManager()) {
        undo_->enterUndoContext(wide(title));
    }
    ~UndoStep() {
        try {
            undo_->leaveUndoContext();
        } catch (const css::uno::Exception&) {
            // The document is gone.
        }
    }
    UndoStep(const UndoStep&) = delete;
    UndoStep& operator=(const UndoStep&) = delete;

  private:
    Reference<css::document::XUndoManager> undo_;
};

}  // namespace

Call::Call(Reference<css::uno::XComponentContext> context, Reference<css::frame::XFrame> frame,
           std::string command, Arguments arguments, bool byProgram)
    : context_(std::move(context)),
      frame_(std::move(frame)),
      command_(std::move(command)),
      arguments_(std::move(arguments)),
      byProgram_(byProgram),
      language_(officeSpeaksSpanish(context_) ? Language::Spanish : Language::English) {
    if (const auto asked = text("Language"))
        language_ = *asked == "es" ? Language::Spanish : Language::English;
}

Document Call::document() const {
    const Reference<css::frame::XController> view = frame_.is() ? frame_->getController() : nullptr;
    const Document document(view.is() ? view->getModel() : nullptr, UNO_QUERY);
    if (!document.is())
        throw Refused(in({"There is no workbook in this window", "No hay ningún libro en esta ventana"}));
    return document;
}

Document Call::job() const {
    const Document document = this->document();
    if (!sheets::namedArea(document, "table_Runs"))
        throw Refused(in({"This is not a job workbook: open one, or take New job from this menu",
                          "Este no es un libro de obra: abra uno, o elija Obra nueva en este menú"}));
    sheets::requireResolved(document, in({"This job", "Esta obra"}));
    return document;
}

std::optional<std::string> Call::text(const std::string& name) const {
    const auto found = arguments_.find(name);
    if (found == arguments_.end() || !found->second.hasValue()) return std::nullopt;
    rtl::OUString given;
    if (!(found->second >>= given)) throw Refused("The argument " + name + " must be text");
    return given.isEmpty() ? std::nullopt : std::optional(narrow(given));
}

bool Call::flag(const std::string& name) const {
    const auto found = arguments_.find(name);
    if (found == arguments_.end() || !found->second.hasValue()) return false;
    bool given = false;
    if (!(found->second >>= given)) throw Refused("The argument " + name + " must be true or false");
    return given;
}

Progress::Progress(const Call& call, int steps) {
    const Reference<css::task::XStatusIndicatorFactory> window(call.frame(), UNO_QUERY);
    if (!window.is()) return;
    bar_ = window->createStatusIndicator();
    if (bar_.is()) bar_->start(wide(call.in(titleOf(call.command()))), steps);
}
Progress::~Progress() {
    if (bar_.is()) bar_->end();
}
void Progress::reach(int step) {
    if (bar_.is()) bar_->setValue(step);
}

void change(const Call& call, const Document& document, const sheets::Steps& steps) {
    if (steps.empty()) return;
    const UndoStep undo(document, call.in(titleOf(call.command())));
    const sheets::Undrawn undrawn(document);
    {
        const sheets::CalculationHeld held(document);
        sheets::carryOut(document, steps, sheets::Writing::ToBeUndone);
    }
    Reference<css::sheet::XCalculatable>(document, UNO_QUERY_THROW)->calculate();
}

}  // namespace trenchbook::addin
