// The C interface with any letters, numbers and texts: a code it promises, what the answer points to is there in the
// size that it says, and a refusal has its sentence.
#include <fuzzer/FuzzedDataProvider.h>

#include <cstdlib>
#include <cstring>
#include <string>
#include <vector>

#include "catalog/function.h"
#include "trenchbook_c.h"

namespace {

void require(bool law) {
    if (!law) std::abort();
}

std::size_t zeros(const char* texts, std::size_t size) {
    std::size_t count = 0;
    for (std::size_t i = 0; i < size; ++i) count += texts[i] == '\0';
    return count;
}

void check(const trenchbook_answer& answer) {
    const std::size_t cells = answer.rows * answer.columns;
    switch (answer.code) {
        case TRENCHBOOK_OK:
            require(std::strchr("ntNT", answer.kind) != nullptr);
            if (answer.kind == 't' || answer.kind == 'T')
                require(zeros(answer.texts, answer.texts_size) == cells);
            if (answer.kind == 'N' && answer.letters != nullptr)
                require(std::strlen(answer.letters) == cells);
            if (answer.kind == 'N' && cells > 0) {
                const double last = answer.cells[cells - 1];
                require(answer.letters != nullptr || last == last);
            }
            return;
        case TRENCHBOOK_BAD_ARGUMENT:
        case TRENCHBOOK_MALFORMED:
        case TRENCHBOOK_NO_CONVERGENCE:
        case TRENCHBOOK_NO_FUNCTION:
            require(std::strlen(answer.sentence) > 0 && std::strlen(answer.sentence_es) > 0);
            return;
        default:
            std::abort();
    }
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    FuzzedDataProvider bytes(data, size);
    const auto& functions = trenchbook::addin::catalog();
    const std::string name =
        bytes.ConsumeIntegralInRange(0, 15) == 0
            ? bytes.ConsumeRandomLengthString(20)
            : functions[bytes.ConsumeIntegralInRange<std::size_t>(0, functions.size() - 1)].name;
    // Letters that mean something are tried more often than others, and so are small whole numbers.
    std::string letters = bytes.ConsumeRandomLengthString(24);
    for (char& letter : letters)
        if ((letter & 0x40) != 0) letter = "ntr-"[letter & 3];
    std::vector<double> numbers(bytes.ConsumeIntegralInRange<std::size_t>(0, 24));
    for (double& number : numbers)
        number =
            bytes.ConsumeBool() ? bytes.ConsumeIntegralInRange(0, 6) : bytes.ConsumeFloatingPoint<double>();
    const std::string texts = bytes.ConsumeRemainingBytesAsString();
    trenchbook_answer answer;
    const std::int32_t code = trenchbook_call(name.c_str(), letters.data(), letters.size(), numbers.data(),
                                              numbers.size(), texts.data(), texts.size(), &answer);
    require(code == answer.code);
    check(answer);
    trenchbook_free(&answer);
    return 0;
}
