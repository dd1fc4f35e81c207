// The handler of our protocol: the office makes one for each window that asks for a command of ours and gives it the
// window's frame, so that a command always works on the workbook that it was given from.
#include <com/sun/star/frame/DispatchResultState.hpp>
#include <com/sun/star/frame/XDispatchProvider.hpp>
#include <com/sun/star/frame/XNotifyingDispatch.hpp>
#include <com/sun/star/lang/XInitialization.hpp>
#include <com/sun/star/lang/XServiceInfo.hpp>
#include <cppuhelper/implbase4.hxx>
#include <cppuhelper/supportsservice.hxx>

#include "menu/boxes.h"
#include "menu/commands.h"
#include "menu/entries.h"

namespace trenchbook::addin {
namespace {

using css::uno::Any;
using css::uno::Sequence;
using sheets::narrow;
using sheets::wide;

constexpr const char* serviceName = "trenchbook.Menu";

using Handler = cppu::WeakImplHelper4<css::frame::XDispatchProvider, css::frame::XNotifyingDispatch,
                                      css::lang::XInitialization, css::lang::XServiceInfo>;

class Menu final : public Handler {
  public:
    explicit Menu(css::uno::XComponentContext* context) : context_(context) {}

    void SAL_CALL initialize(const Sequence<Any>& arguments) override {
        if (arguments.getLength() > 0) arguments[0] >>= frame_;
    }

    Reference<css::frame::XDispatch> SAL_CALL queryDispatch(const css::util::URL& address,
                                                            const rtl::OUString&, sal_Int32) override {
        return isOurs(address) ? this : nullptr;
    }
    Sequence<Reference<css::frame::XDispatch>> SAL_CALL
    queryDispatches(const Sequence<css::frame::DispatchDescriptor>& asked) override {
        Sequence<Reference<css::frame::XDispatch>> found(asked.getLength());
        for (sal_Int32 n = 0; n < asked.getLength(); ++n)
            found.getArray()[n] =
                queryDispatch(asked[n].FeatureURL, asked[n].FrameName, asked[n].SearchFlags);
        return found;
    }

    // From the menu: a person is at the window.
    void SAL_CALL dispatch(const css::util::URL& address,
                           const Sequence<css::beans::PropertyValue>& arguments) override {
        perform(address, arguments, {});
    }
    // From a program, which waits for the answer: nobody is asked, nothing is shown.
    void SAL_CALL dispatchWithNotification(
        const css::util::URL& address, const Sequence<css::beans::PropertyValue>& arguments,
        const Reference<css::frame::XDispatchResultListener>& listener) override {
        perform(address, arguments, listener);
    }

    void SAL_CALL addStatusListener(const Reference<css::frame::XStatusListener>& listener,
                                    const css::util::URL& address) override {
        css::frame::FeatureStateEvent state;
        state.Source = static_cast<cppu::OWeakObject*>(this);
        state.FeatureURL = address;
        state.IsEnabled = true;
        listener->statusChanged(state);
    }
    void SAL_CALL removeStatusListener(const Reference<css::frame::XStatusListener>&,
                                       const css::util::URL&) override {}

    rtl::OUString SAL_CALL getImplementationName() override { return wide(serviceName) + "Implementation"; }
    sal_Bool SAL_CALL supportsService(const rtl::OUString& name) override {
        return cppu::supportsService(this, name);
    }
    Sequence<rtl::OUString> SAL_CALL getSupportedServiceNames() override {
        const rtl::OUString name = wide(serviceName);
        return Sequence<rtl::OUString>(&name, 1);
    }

  private:
    static bool isOurs(const css::util::URL& address) {
        return address.Complete.startsWith(rtl::OUString::createFromAscii(menuProtocol));
    }
    static std::string commandOf(const css::util::URL& address) {
        return narrow(address.Complete).substr(std::char_traits<char>::length(menuProtocol));
    }
    static Call::Arguments named(const Sequence<css::beans::PropertyValue>& given) {
        Call::Arguments arguments;
        for (const css::beans::PropertyValue& one : given) arguments[narrow(one.Name)] = one.Value;
        return arguments;
    }

    void perform(const css::util::URL& address, const Sequence<css::beans::PropertyValue>& arguments,
                 const Reference<css::frame::XDispatchResultListener>& listener) {
        // The window may go while the command is at work, and this with it.
        const Reference<css::frame::XDispatch> alive(this);
        bool done = false, box = true;
        Reference<css::frame::XFrame> over;
        std::string says;
        std::optional<Call> call;
        try {
            call.emplace(context_, frame_, commandOf(address), named(arguments), listener.is());
            Answer answer = run(*call);
            says = std::move(answer.says);
            box = answer.box;
            over = answer.over;
            done = true;
        } catch (const Cancelled&) {
            box = false;
        } catch (const css::uno::Exception& error) {
            says = "The office says: " + narrow(error.Message);
        } catch (const std::exception& error) {
            says = error.what();
        }
        if (listener.is()) {
            css::frame::DispatchResultEvent event;
            event.Source = alive;
            event.State =
                done ? css::frame::DispatchResultState::SUCCESS : css::frame::DispatchResultState::FAILURE;
            event.Result <<= wide(says);
            listener->dispatchFinished(event);
        } else if (call && box && !says.empty()) {
            show(*call, done ? Box::Done : Box::Refused, says, over);
        }
    }

    Reference<css::uno::XComponentContext> context_;
    Reference<css::frame::XFrame> frame_;
};

}  // namespace
}  // namespace trenchbook::addin

extern "C" __attribute__((visibility("default"))) com::sun::star::uno::XInterface* trenchbook_menu(
    com::sun::star::uno::XComponentContext* context,
    const com::sun::star::uno::Sequence<com::sun::star::uno::Any>&) {
    auto* made = new trenchbook::addin::Menu(context);
    made->acquire();
    return static_cast<cppu::OWeakObject*>(made);
}
