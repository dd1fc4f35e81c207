#include "shell/answer.h"

#include <com/sun/star/lang/IllegalArgumentException.hpp>
#include <com/sun/star/sheet/NoConvergenceException.hpp>

#include "catalog/function.h"
#include "trenchbook/core/error.h"

namespace trenchbook::addin {

Result answer(std::size_t place, std::span<const Value> values) {
    try {
        return call(catalog()[place], values);
    } catch (const Error& error) {
        const rtl::OUString sentence = wide(error.sentence(Language::English));
        if (error.kind() == Error::Kind::NoConvergence)
            throw css::sheet::NoConvergenceException(sentence, nullptr);
        throw css::lang::IllegalArgumentException(sentence, nullptr, 0);
    } catch (const std::exception& fault) {
        throw css::uno::RuntimeException(wide(fault.what()), nullptr);
    }
}

}  // namespace trenchbook::addin
