#include "c/trenchbook_c.h"

#include <cmath>
#include <memory>
#include <string>
#include <vector>

#include "c/commands.h"
#include "c/given.h"
#include "catalog/function.h"
#include "catalog/host.h"
#include "catalog/tidied.h"
#include "trenchbook/core/error.h"
#include "trenchbook/core/version.h"

namespace {

using namespace trenchbook::addin;
using trenchbook::Error;
using trenchbook::Language;

struct Held {
    std::vector<double> cells = {};
    std::string letters = {};
    std::string texts = {};
    std::string sentence = {};
    std::string sentence_es = {};
};

void keep(trenchbook_answer& answer, std::unique_ptr<Held> held) { answer.held = held.release(); }

void put(trenchbook_answer& answer, double number) {
    answer.kind = 'n';
    answer.number = number;
}

void putTexts(trenchbook_answer& answer, int32_t kind, std::size_t rows, std::size_t columns,
              std::string texts) {
    auto held = std::make_unique<Held>();
    held->texts = std::move(texts);
    answer.kind = kind;
    answer.rows = rows;
    answer.columns = columns;
    answer.texts = held->texts.data();
    answer.texts_size = held->texts.size();
    keep(answer, std::move(held));
}

void put(trenchbook_answer& answer, std::string text) {
    text += '\0';
    putTexts(answer, 't', 1, 1, std::move(text));
}

void put(trenchbook_answer& answer, const Texts& block) {
    std::string texts;
    for (const std::string& text : block.items) texts.append(text) += '\0';
    putTexts(answer, 'T', block.rows(), block.columns, std::move(texts));
}

void put(trenchbook_answer& answer, const Numbers& block) {
    auto held = std::make_unique<Held>();
    held->cells.reserve(block.items.size());
    bool numbersOnly = true;
    for (const double cell : block.items) {
        const char letter = isBlankCell(cell) ? '-' : std::isnan(cell) ? 'e' : 'n';
        held->letters += letter;
        held->cells.push_back(letter == 'n' ? tidied(cell) : cell);
        numbersOnly = numbersOnly && letter == 'n';
    }
    answer.kind = 'N';
    answer.rows = block.rows();
    answer.columns = block.columns;
    answer.cells = held->cells.data();
    answer.letters = numbersOnly ? nullptr : held->letters.c_str();
    keep(answer, std::move(held));
}

void refuse(trenchbook_answer& answer, int32_t code, std::string english, std::string spanish) {
    auto held = std::make_unique<Held>();
    held->sentence = std::move(english);
    held->sentence_es = std::move(spanish);
    answer = {};
    answer.code = code;
    answer.sentence = held->sentence.c_str();
    answer.sentence_es = held->sentence_es.c_str();
    keep(answer, std::move(held));
}

void ask(trenchbook_answer& answer, const char* name, std::string_view letters,
         std::span<const double> numbers, std::string_view texts) {
    const Function* function = findFunction(name);
    if (function == nullptr)
        return refuse(answer, TRENCHBOOK_NO_FUNCTION, std::string("There is no function ") + name + ".",
                      std::string("No hay ninguna función ") + name + ".");
    const std::vector<Value> values = valuesOf(letters, numbers, texts);
    std::visit([&](auto&& given) { put(answer, std::forward<decltype(given)>(given)); },
               call(*function, values));
}

void order(trenchbook_answer& answer, const char* name, std::string_view letters,
           std::span<const double> numbers, std::string_view texts) {
    if (!isCommand(name))
        return refuse(answer, TRENCHBOOK_NO_FUNCTION, std::string("There is no command ") + name + ".",
                      std::string("No hay ninguna orden ") + name + ".");
    try {
        put(answer, command(name, valuesOf(letters, numbers, texts)));
    } catch (const Malformed&) {
        throw;
    } catch (const std::runtime_error& why) {
        // Not to be done as things stand, or not with this workbook: sentences for people, all of them.
        refuse(answer, TRENCHBOOK_BAD_ARGUMENT, why.what(), why.what());
    }
}

using Asked = void (*)(trenchbook_answer&, const char*, std::string_view, std::span<const double>,
                       std::string_view);

// What is let out becomes a code and a sentence. Throws only where there is no memory for the sentence.
void answered(Asked what, trenchbook_answer& answer, const char* name, std::string_view letters,
              std::span<const double> numbers, std::string_view texts) {
    try {
        what(answer, name, letters, numbers, texts);
    } catch (const Error& error) {
        refuse(
            answer,
            error.kind() == Error::Kind::NoConvergence ? TRENCHBOOK_NO_CONVERGENCE : TRENCHBOOK_BAD_ARGUMENT,
            error.sentence(Language::English), error.sentence(Language::Spanish));
    } catch (const Malformed& fault) {
        refuse(answer, TRENCHBOOK_MALFORMED, std::string("Malformed call: ") + fault.what() + ".",
               std::string("Llamada mal formada: ") + fault.what() + ".");
    } catch (const std::bad_alloc&) {
        throw;
    } catch (const std::exception& fault) {
        refuse(answer, TRENCHBOOK_FAULT, std::string("A fault of Trenchbook: ") + fault.what(),
               std::string("Un fallo de Trenchbook: ") + fault.what());
    }
}

// A caller in another language may hand over NULL wherever nothing is.
std::string_view viewOf(const char* bytes, std::size_t size) {
    return bytes == nullptr ? std::string_view() : std::string_view(bytes, size);
}

int32_t guarded(Asked what, const char* name, const char* letters, size_t letter_count, const double* numbers,
                size_t number_count, const char* texts, size_t texts_size, trenchbook_answer* answer) {
    if (answer == nullptr) return TRENCHBOOK_MALFORMED;
    *answer = {};
    try {
        const std::span<const double> given =
            numbers == nullptr ? std::span<const double>() : std::span<const double>(numbers, number_count);
        answered(what, *answer, name == nullptr ? "" : name, viewOf(letters, letter_count), given,
                 viewOf(texts, texts_size));
    } catch (...) {
        *answer = {};
        answer->code = TRENCHBOOK_FAULT;
        answer->sentence = "There is not enough memory.";
        answer->sentence_es = "No hay memoria suficiente.";
    }
    return answer->code;
}

}  // namespace

int32_t trenchbook_interface(void) { return TRENCHBOOK_INTERFACE; }

const char* trenchbook_version(void) { return trenchbook::version(); }

size_t trenchbook_functions(void) try { return catalog().size(); } catch (...) {
    return 0;
}

void trenchbook_set_host(const char* name) try {
    if (name != nullptr) setHost(name);
} catch (...) {
    // No memory for a name: the old one stays.
}

int32_t trenchbook_call(const char* function, const char* letters, size_t letter_count, const double* numbers,
                        size_t number_count, const char* texts, size_t texts_size,
                        trenchbook_answer* answer) {
    return guarded(ask, function, letters, letter_count, numbers, number_count, texts, texts_size, answer);
}

int32_t trenchbook_command(const char* command, const char* letters, size_t letter_count,
                           const double* numbers, size_t number_count, const char* texts, size_t texts_size,
                           trenchbook_answer* answer) {
    return guarded(order, command, letters, letter_count, numbers, number_count, texts, texts_size, answer);
}

void trenchbook_free(trenchbook_answer* answer) {
    if (answer == nullptr) return;
    delete static_cast<Held*>(answer->held);
    *answer = {};
}
