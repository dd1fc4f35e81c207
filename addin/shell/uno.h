// The office's C++ types under short names, and its kit's quirks in one place: no variadic implementation
// helper, sequences without brace lists, text in UTF-16.
#pragma once

#include <com/sun/star/lang/XServiceInfo.hpp>
#include <com/sun/star/uno/Any.hxx>
#include <com/sun/star/uno/Sequence.hxx>
#include <cppuhelper/implbase2.hxx>
#include <rtl/ustring.hxx>
#include <string>
#include <string_view>

namespace trenchbook::addin {

namespace css = ::com::sun::star;
using css::uno::Any;
using css::uno::Sequence;

using Anys = Sequence<Any>;
using NumberCells = Sequence<Sequence<Any>>;
using TextCells = Sequence<Sequence<rtl::OUString>>;

template <class First, class Second>
using Implements = cppu::WeakImplHelper2<First, Second>;

template <class Item>
Sequence<Item> listOf(const Item& only) {
    return Sequence<Item>(&only, 1);
}

inline rtl::OUString wide(std::string_view text) {
    return rtl::OUString(text.data(), static_cast<sal_Int32>(text.size()), RTL_TEXTENCODING_UTF8);
}

// Nearly all text in formulas is plain ASCII, and short: copied letter by letter it needs no converter and,
// up to fifteen letters, no memory.
inline std::string narrow(const rtl::OUString& text) {
    const sal_Unicode* letters = text.getStr();
    const auto length = static_cast<std::size_t>(text.getLength());
    std::string ascii(length, '\0');
    sal_Unicode all = 0;
    for (std::size_t i = 0; i < length; ++i) {
        all |= letters[i];
        ascii[i] = static_cast<char>(letters[i]);
    }
    if (all < 0x80) return ascii;
    const rtl::OString bytes = rtl::OUStringToOString(text, RTL_TEXTENCODING_UTF8);
    return {bytes.getStr(), static_cast<std::size_t>(bytes.getLength())};
}

}  // namespace trenchbook::addin
