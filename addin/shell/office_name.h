// Which office the library runs in.
#pragma once

#include <com/sun/star/uno/XComponentContext.hpp>
#include <string>

namespace trenchbook::addin {

// "LibreOffice 7.4.7.2", for the text that goes with a question.
std::string officeName(const com::sun::star::uno::Reference<com::sun::star::uno::XComponentContext>& context);

}  // namespace trenchbook::addin
