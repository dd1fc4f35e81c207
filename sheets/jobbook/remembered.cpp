#include "jobbook/remembered.h"

#include <com/sun/star/beans/PropertyAttribute.hpp>
#include <com/sun/star/beans/XPropertyContainer.hpp>
#include <com/sun/star/beans/XPropertySet.hpp>
#include <com/sun/star/document/XDocumentPropertiesSupplier.hpp>

namespace trenchbook::sheets {
namespace {

Reference<css::beans::XPropertyContainer> containerOf(const Document& document) {
    return Reference<css::document::XDocumentPropertiesSupplier>(document, UNO_QUERY_THROW)
        ->getDocumentProperties()
        ->getUserDefinedProperties();
}

}  // namespace

std::map<std::string, std::string> remembered(const Document& document) {
    const Reference<css::beans::XPropertySet> set(containerOf(document), UNO_QUERY_THROW);
    std::map<std::string, std::string> all;
    for (const css::beans::Property& property : set->getPropertySetInfo()->getProperties()) {
        rtl::OUString text;
        if (set->getPropertyValue(property.Name) >>= text) all[narrow(property.Name)] = narrow(text);
    }
    return all;
}

void remember(const Document& document, const std::string& name, const std::string& text) {
    const auto container = containerOf(document);
    const Reference<css::beans::XPropertySet> set(container, UNO_QUERY_THROW);
    if (set->getPropertySetInfo()->hasPropertyByName(wide(name)))
        set->setPropertyValue(wide(name), css::uno::Any(wide(text)));
    else
        container->addProperty(wide(name), css::beans::PropertyAttribute::REMOVABLE,
                               css::uno::Any(wide(text)));
}

}  // namespace trenchbook::sheets
