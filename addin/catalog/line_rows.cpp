#include "catalog/line_rows.h"

#include <cmath>
#include <unordered_map>

#include "catalog/recent.h"
#include "trenchbook/pipe/roughness.h"

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
        .optional = true};
}

std::size_t firstRow(const Arguments& arguments) {
    const double row = arguments.later(0, 1);
    if (!(row >= 1 && row <= 1048576 && row == std::floor(row)))
        throw Error(Error::Kind::BadArgument, "first row", plain(row),
                    {"a whole number, 1 or more", "un entero, 1 o más"});
    return static_cast<std::size_t>(row);
}

std::vector<std::optional<double>> LineRows::numbers(std::size_t index, Allowed allowed,
                                                     const char* heading) {
    const std::vector<Arguments::Entry> entries = arguments_.entries(index, runs_.size());
    const std::string& name = arguments_.function().arguments[index].name;
    std::vector<std::optional<double>> out(entries.size());
    for (std::size_t row = 0; row < entries.size(); ++row) {
        const Arguments::Entry& entry = entries[row];
        if (entry.state == Arguments::Entry::State::Empty) continue;
        const bool bad = entry.state == Arguments::Entry::State::Bad;
        if (!bad &&
            (allowed == Allowed::Any || entry.si > 0 || (allowed == Allowed::NotNegative && entry.si == 0))) {
            out[row] = entry.si;
            continue;
        }
        const Measure measure = arguments_.function().arguments[index].measure;
        const Text typed = bad ? entry.typed : Text::same(plain(arguments_.in(measure, entry.si), 6));
        const Text limit = allowed == Allowed::Any        ? Text{"a number", "un número"}
                           : allowed == Allowed::Positive ? Text{"above 0", "mayor que 0"}
                                                          : Text{"0 or more", "0 o más"};
        runs_[row].unusable.push_back(
            {heading, typed.en,
             Text{name + " is " + typed.en + ", allowed: ", name + " es " + typed.es + ", se admite: "} +
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

std::vector<double> LineRows::numbersOr(std::size_t index, Allowed allowed, double fallback,
                                        const char* heading) {
    if (arguments_.given(index) && !isColumn(arguments_, index)) {
        const double everywhere = arguments_.number(index);
        if (allowed == Allowed::Positive)
            requirePositive(everywhere, arguments_.function().arguments[index].name.c_str());
        if (allowed == Allowed::NotNegative)
            requireNotNegative(everywhere, arguments_.function().arguments[index].name.c_str());
        return std::vector(runs_.size(), everywhere);
    }
    std::vector<double> out;
    for (const std::optional<double>& cell : numbers(index, allowed, heading))
        out.push_back(cell.value_or(fallback));
    return out;
}

void LineRows::roughness(std::size_t index) {
    const std::vector<double> typed = numbersOr(index, Allowed::Positive, 0, "Roughness");
    const Text limit = pipeRoughness.words();
    for (std::size_t row = 0; row < typed.size(); ++row) {
        const double n = typed[row];
        runs_[row].roughness = n;
        if (n == 0 || pipeRoughness.holds(n)) continue;
        if (!isColumn(arguments_, index)) arguments_.refuse(index, limit);
        const std::string value = plain(n);
        runs_[row].unusable.push_back(
            {"Roughness", value,
             Text{"roughness is " + value + ", allowed: ", "roughness es " + value + ", se admite: "} +
                 limit});
    }
}

std::vector<Text> LineRows::trouble() const {
    std::vector<Text> first(runs_.size());
    for (std::size_t row = 0; row < runs_.size(); ++row)
        if (!runs_[row].unusable.empty()) first[row] = runs_[row].unusable.front().why;
    return first;
}

}  // namespace trenchbook::addin
