// What jobbook has done inside the office: its works (jobbook/works.h), as a service of ours.
#include "jobbook/works.h"

#include <com/sun/star/lang/IllegalArgumentException.hpp>
#include <com/sun/star/lang/XServiceInfo.hpp>
#include <com/sun/star/task/XJob.hpp>
#include <cppuhelper/implbase2.hxx>
#include <cppuhelper/supportsservice.hxx>

#include "jobbook/refused.h"

namespace trenchbook::addin {
namespace {

namespace css = ::com::sun::star;
using css::uno::Sequence;
using sheets::wide;

class Works final : public cppu::WeakImplHelper2<css::task::XJob, css::lang::XServiceInfo> {
  public:
    css::uno::Any SAL_CALL execute(const Sequence<css::beans::NamedValue>& arguments) override {
        try {
            std::vector<rtl::OUString> said;
            for (const std::string& line : sheets::doHere(sheets::takenOver(arguments)))
                said.push_back(wide(line));
            return css::uno::Any(Sequence<rtl::OUString>(said.data(), static_cast<sal_Int32>(said.size())));
        } catch (const sheets::Refused& refused) {
            throw css::lang::IllegalArgumentException(wide(refused.what()), *this, sheets::refusedThere);
        } catch (const std::exception& error) {
            throw css::lang::IllegalArgumentException(wide(error.what()), *this, sheets::failedThere);
        }
    }

    rtl::OUString SAL_CALL getImplementationName() override {
        return wide(sheets::worksService) + "Implementation";
    }
    sal_Bool SAL_CALL supportsService(const rtl::OUString& name) override {
        return cppu::supportsService(this, name);
    }
    Sequence<rtl::OUString> SAL_CALL getSupportedServiceNames() override {
        const rtl::OUString name = wide(sheets::worksService);
        return Sequence<rtl::OUString>(&name, 1);
    }
};

}  // namespace
}  // namespace trenchbook::addin

extern "C" __attribute__((visibility("default"))) com::sun::star::uno::XInterface* trenchbook_works(
    com::sun::star::uno::XComponentContext*, const com::sun::star::uno::Sequence<com::sun::star::uno::Any>&) {
    auto* made = new trenchbook::addin::Works;
    made->acquire();
    return static_cast<cppu::OWeakObject*>(made);
}
