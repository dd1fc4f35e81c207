#include "shell/office_name.h"

#include <com/sun/star/beans/PropertyValue.hpp>
#include <com/sun/star/configuration/theDefaultProvider.hpp>
#include <com/sun/star/container/XNameAccess.hpp>

#include "shell/uno.h"

namespace trenchbook::addin {

std::string officeName(const css::uno::Reference<css::uno::XComponentContext>& context) {
    constexpr const char* shell = "; shell in C++";
    try {
        css::beans::PropertyValue node;
        node.Name = "nodepath";
        node.Value <<= rtl::OUString("/org.openoffice.Setup/Product");
        const css::uno::Reference<css::container::XNameAccess> product(
            css::configuration::theDefaultProvider::get(context)->createInstanceWithArguments(
                "com.sun.star.configuration.ConfigurationAccess", listOf(Any(node))),
            css::uno::UNO_QUERY_THROW);
        rtl::OUString name;
        rtl::OUString version;
        product->getByName("ooName") >>= name;
        product->getByName("ooSetupVersionAboutBox") >>= version;
        return narrow(name + " " + version) + shell;
    } catch (const css::uno::Exception&) {
        return std::string("an office that does not tell its version") + shell;
    }
}

}  // namespace trenchbook::addin
