// What a refusal says, for tests.
//
//     EXPECT_EQ(sentence([] { stockPipe("9 SDR35"); }), "pipe is …");
#pragma once

#include <string>

#include "trenchbook/core/error.h"

namespace trenchbook {

// "no error" where nothing is refused.
std::string sentence(const auto& call, Language language = Language::English) {
    try {
        call();
    } catch (const Error& error) {
        return error.sentence(language);
    }
    return "no error";
}

}  // namespace trenchbook
