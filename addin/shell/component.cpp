// The component that Calc makes when one of our functions is first used. It holds no state: Calc may make
// several.
#include <uno/lbnames.h>
#include <com/sun/star/uno/XComponentContext.hpp>
#include <cppuhelper/supportsservice.hxx>
#include <uno/mapping.hxx>

#include "catalog/host.h"
#include "forwarding.h"
#include "shell/office_name.h"

namespace trenchbook::addin {
namespace {

constexpr const char* serviceName = "trenchbook.Functions";

class Functions final : public Forwarding {
  public:
    rtl::OUString SAL_CALL getImplementationName() override { return wide(serviceName) + "Implementation"; }
    sal_Bool SAL_CALL supportsService(const rtl::OUString& name) override {
        return cppu::supportsService(this, name);
    }
    Sequence<rtl::OUString> SAL_CALL getSupportedServiceNames() override { return listOf(wide(serviceName)); }
};

// Calc reaches an object through a proxy that speaks the binary interface, and makes one for every call
// unless one is alive. Held here for as long as the office runs, it saves two fifths of what a cell costs.
void keepProxy(::trenchbook::XFunctions* object) {
    css::uno::Mapping(CPPU_CURRENT_LANGUAGE_BINDING_NAME, UNO_LB_UNO)
        .mapInterface(object, cppu::UnoType<::trenchbook::XFunctions>::get());
}

// One for the whole office, for it holds no state.
Functions& functions(const css::uno::Reference<css::uno::XComponentContext>& context) {
    static Functions* const only = [&context] {
        setHost(officeName(context));
        auto* made = new Functions;
        made->acquire();
        keepProxy(made);
        return made;
    }();
    return *only;
}

}  // namespace
}  // namespace trenchbook::addin

extern "C" __attribute__((visibility("default"))) com::sun::star::uno::XInterface* trenchbook_functions(
    com::sun::star::uno::XComponentContext* context,
    const com::sun::star::uno::Sequence<com::sun::star::uno::Any>&) {
    using namespace trenchbook::addin;
    Functions& shared = functions(context);
    shared.acquire();
    return static_cast<cppu::OWeakObject*>(&shared);
}
