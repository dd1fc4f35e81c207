// While a word is typed Calc offers one from the same column that begins with it, and Return takes the offer: in a column
// of lengths a typed 4 becomes the 42 above it, in one of names N1 the N10. No attribute of a cell prevents it. So this is
// off while a workbook of ours is in front, and on again when another one is. The office calls this job (Jobs.xcu).
// What the user has chosen is never lost: Held stands in his profile before the switch is turned, so that an office that was
// killed turns it on again at the first workbook of another kind; whoever turns it himself is left alone.
#include <com/sun/star/configuration/theDefaultProvider.hpp>
#include <com/sun/star/container/XNameReplace.hpp>
#include <com/sun/star/frame/Desktop.hpp>
#include <com/sun/star/lang/XServiceInfo.hpp>
#include <com/sun/star/task/XJob.hpp>
#include <com/sun/star/util/XChangesBatch.hpp>
#include <cppuhelper/implbase2.hxx>
#include <cppuhelper/supportsservice.hxx>

#include "jobbook/parts.h"

namespace trenchbook::addin {
namespace {

namespace css = ::com::sun::star;
using css::uno::Any;
using css::uno::Reference;
using css::uno::Sequence;
using css::uno::UNO_QUERY;
using css::uno::UNO_QUERY_THROW;
using sheets::wide;

// One switch of the office's settings.
class Switch {
  public:
    Switch(const Reference<css::uno::XComponentContext>& context, const char* node, const char* name)
        : name_(wide(name)) {
        const Any given(sheets::property("nodepath", Any(wide(node))));
        settings_.set(css::configuration::theDefaultProvider::get(context)->createInstanceWithArguments(
                          "com.sun.star.configuration.ConfigurationUpdateAccess", Sequence<Any>(&given, 1)),
                      UNO_QUERY_THROW);
    }
    bool on() const {
        bool is = false;
        settings_->getByName(name_) >>= is;
        return is;
    }
    void turn(bool on) const {
        settings_->replaceByName(name_, Any(on));
        Reference<css::util::XChangesBatch>(settings_, UNO_QUERY_THROW)->commitChanges();
    }

  private:
    rtl::OUString name_;
    Reference<css::container::XNameReplace> settings_;
};

struct Switches {
    explicit Switches(const Reference<css::uno::XComponentContext>& context)
        : completes(context, "/org.openoffice.Office.Calc/Input", "AutoInput"),
          held(context, "/trenchbook.Typing", "Held"),
          wanted(context, "/trenchbook.Typing", "Wanted") {}
    const Switch completes, held, wanted;
};

// A workbook whose cells take measured text and names.
bool isOurs(const sheets::Document& document) {
    for (const char* table : {"table_Runs", "table_Prices", "table_Hours"})
        if (sheets::namedArea(document, table)) return true;
    return false;
}

class Typing final : public cppu::WeakImplHelper2<css::task::XJob, css::lang::XServiceInfo> {
  public:
    explicit Typing(css::uno::XComponentContext* context) : context_(context) {}

    Any SAL_CALL execute(const Sequence<css::beans::NamedValue>& arguments) override {
        rtl::OUString event;
        sheets::Document document;
        for (const css::beans::NamedValue& argument : arguments) {
            Sequence<css::beans::NamedValue> told;
            if (argument.Name != "Environment" || !(argument.Value >>= told)) continue;
            for (const css::beans::NamedValue& one : told) {
                if (one.Name == "EventName") one.Value >>= event;
                if (one.Name == "Model") document.set(one.Value, UNO_QUERY);
            }
        }
        if (!document.is()) return {};
        const bool ours = isOurs(document);
        if (event == "OnFocus")
            (ours ? &Typing::comesInFront : &Typing::goesBack)(Switches(context_));
        else if (ours && !anotherInFront(document))
            goesBack(Switches(context_));
        return {};
    }

    rtl::OUString SAL_CALL getImplementationName() override { return "trenchbook.TypingImplementation"; }
    sal_Bool SAL_CALL supportsService(const rtl::OUString& name) override {
        return cppu::supportsService(this, name);
    }
    Sequence<rtl::OUString> SAL_CALL getSupportedServiceNames() override {
        const rtl::OUString name = "trenchbook.Typing";
        return Sequence<rtl::OUString>(&name, 1);
    }

  private:
    // Somebody turned it on in one of our workbooks, and keeps it there.
    static void keep(const Switches& is) {
        is.wanted.turn(true);
        is.held.turn(false);
    }
    static void comesInFront(const Switches& is) {
        if (is.held.on()) {
            if (is.completes.on()) keep(is);
        } else if (!is.completes.on()) {
            if (is.wanted.on()) is.wanted.turn(false);  // turned off since by the user himself
        } else if (!is.wanted.on()) {
            is.held.turn(true);
            is.completes.turn(false);
        }
    }
    static void goesBack(const Switches& is) {
        if (!is.held.on()) return;
        if (is.completes.on()) return keep(is);
        is.completes.turn(true);
        is.held.turn(false);
    }

    // The events of two windows may come in either order.
    bool anotherInFront(const sheets::Document& document) const {
        const sheets::Document front(css::frame::Desktop::create(context_)->getCurrentComponent(), UNO_QUERY);
        return front.is() && front != document && isOurs(front);
    }

    Reference<css::uno::XComponentContext> context_;
};

}  // namespace
}  // namespace trenchbook::addin

extern "C" __attribute__((visibility("default"))) com::sun::star::uno::XInterface* trenchbook_typing(
    com::sun::star::uno::XComponentContext* context,
    const com::sun::star::uno::Sequence<com::sun::star::uno::Any>&) {
    auto* made = new trenchbook::addin::Typing(context);
    made->acquire();
    return static_cast<cppu::OWeakObject*>(made);
}
