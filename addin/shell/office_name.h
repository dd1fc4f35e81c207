// Which office the library runs in, and by which shell.
#pragma once

#include <com/sun/star/uno/XComponentContext.hpp>
#include <string>

namespace trenchbook::addin {

// "LibreOffice 7.4.7.2; shell in C++", for the text that goes with a question.
std::string officeName(const com::sun::star::uno::Reference<com::sun::star::uno::XComponentContext>& context);

}  // namespace trenchbook::addin
