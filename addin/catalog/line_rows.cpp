#include "catalog/line_rows.h"

#include <unordered_map>

#include "catalog/recent.h"

namespace trenchbook::addin {

std::shared_ptr<const Network> readNetwork(const Arguments& arguments, std::size_t from, std::size_t to) {
    const std::vector<Argument>& all = arguments.function().arguments;
    for (std::size_t index = 0; index < all.size(); ++index)
        if (all[index].column && !all[index].optional &&
            std::holds_alternative<Nothing>(arguments.raw(index)))
            throw Error(Error::Kind::BadArgument, all[index].name, leftOut(), {"a column", "una columna"});
    arguments.requireSameRows({from, to});
    static Recent<Network> recent(4);
    std::string question;
    addToQuestion(question, arguments.raw(from));
    addToQuestion(question, arguments.raw(to));
    return recent.get(question, [&] { return Network(arguments.words(from), arguments.words(to)); });
}

Argument firstRowArgument() {
    return {
        .name = "first row",
        .measure = Measure::Plain,
        .says =
            {"sheet row of the first row given, so that texts name rows as the sheet counts them",
             "fila de la hoja de la primera fila dada, para que los textos nombren las filas como la hoja"},
        .fallback = "1",
        .optional = true,
        .limits = Limits{.least = 1, .greatest = 1048576, .whole = true}};
}

std::size_t firstRow(const Arguments& arguments) { return static_cast<std::size_t>(arguments.later(0, 1)); }

std::vector<std::optional<double>> LineRows::numbers(std::size_t index, const char* heading) {
    using State = Arguments::Entry::State;
    const std::vector<Arguments::Entry> entries = arguments_.entries(index, runs_.size());
    const Argument& argument = arguments_.function().arguments[index];
    std::vector<std::optional<double>> out(entries.size());
    for (std::size_t row = 0; row < entries.size(); ++row) {
        const Arguments::Entry& entry = entries[row];
        if (entry.state == State::Empty) continue;
        if (entry.state == State::Good) {
            out[row] = entry.si;
            continue;
        }
        const bool limited = argument.limits && argument.limits->bounded();
        const Text limit = entry.state == State::Outside ? entry.allowed
                           : limited                     ? allowedText(*argument.limits, argument.measure)
                                                         : Text{"a number", "un número"};
        const std::string& name = argument.name;
        runs_[row].unusable.push_back({heading, entry.typed.en,
                                       Text{name + " is " + entry.typed.en + ", allowed: ",
                                            name + " es " + entry.typed.es + ", se admite: "} +
                                           limit});
    }
    return out;
}

void LineRows::pipes(std::size_t index) {
    const Range* cells = arguments_.range(index);
    // A job uses few kinds of pipe: each name is looked up once.
    std::unordered_map<std::string, std::optional<Pipe>> known;
    const std::vector<std::string> words = arguments_.words(index);
    for (std::size_t row = 0; row < words.size() && row < runs_.size(); ++row) {
        if (words[row].empty()) continue;
        const Cell* cell = cells != nullptr ? &cells->at(row, 0) : nullptr;
        const double* bore =
            cell != nullptr ? std::get_if<double>(cell) : std::get_if<double>(&arguments_.raw(index));
        try {
            if (bore != nullptr) {
                runs_[row].pipe = bareBore(Length::fromSi(arguments_.from(Measure::Pipe, *bore)));
                continue;
            }
            const auto [found, isNew] = known.try_emplace(words[row]);
            if (isNew) {
                try {
                    found->second = arguments_.pipeNamed(words[row]);
                } catch (const Error&) {
                    known.erase(found);
                    throw;
                }
            }
            runs_[row].pipe = found->second;
        } catch (const Error& error) {
            runs_[row].unusable.push_back(
                {"Pipe", words[row], {error.sentence(Language::English), error.sentence(Language::Spanish)}});
        }
    }
}

std::vector<double> LineRows::numbersOr(std::size_t index, double fallback, const char* heading) {
    if (arguments_.given(index) && !isColumn(arguments_, index))
        return std::vector(runs_.size(), arguments_.number(index));
    std::vector<double> out;
    for (const std::optional<double>& cell : numbers(index, heading)) out.push_back(cell.value_or(fallback));
    return out;
}

void LineRows::roughness(std::size_t index) {
    const std::vector<double> typed = numbersOr(index, 0, "Roughness");
    for (std::size_t row = 0; row < typed.size(); ++row) runs_[row].roughness = typed[row];
}

std::vector<Text> LineRows::trouble() const {
    std::vector<Text> first(runs_.size());
    for (std::size_t row = 0; row < runs_.size(); ++row)
        if (!runs_[row].unusable.empty()) first[row] = runs_[row].unusable.front().why;
    return first;
}

}  // namespace trenchbook::addin
