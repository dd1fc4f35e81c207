// What the sheets say in words has its Spanish, and the Spanish tables hold nothing that no sheet says.
#include "spanish/spanish.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <regex>
#include <set>

#include "catalog/function.h"
#include "formula/native.h"
#include "kit/formulas.h"
#include "kit/layout.h"
#include "templates/job.h"

namespace trenchbook::sheets {
namespace {

// Sheets whose whole text is read by people who may speak Spanish only.
const std::set<std::string> papers = {"Proposal", "Cancellation", "Invoice", "Care"};

// Texts that are no sentences, and why they stay as they are.
const std::set<std::string>& same() {
    static const std::set<std::string> all = {
        // Words that are typed or picked, which formulas compare with: the choices of cells stay English.
        "yes", "no", "metric", "US", "got", "ditch", "swale", "curb", "easement", "clay", "sand", "loam",
        "ton", "tons", "tonne", "cu yd", "yd", "cy", "cu ft", "fitting", "charge", "type", "even", "nested",
        "centered", "24-hr,1", "24-hr,2", "the whole price", "marked-up materials", "the share on Rules",
        "what the risks ask", "as kept", "what the jobs say", "si", "cleanout", "basin", "channel", "outlet",
        "tee", "riser", "pop-up", "bank", "existing pipe", "pump basin", "cap", "downspout", "pump",
        "Dig trench by machine", "The same, under 5 ft (1.5 m)", "Shore or slope the trench", "stable rock",
        "Backfill and tamp", "delivery", "equipment", "disposal", "permit", "subcontract", "call-back",
        "calendar", "added", "where greater", "needs none", "en", "es", "plan", "as built", "as read",
        "adjusted",
        // Signs in hidden cells that other formulas look for.
        "refused", "open", "settled", "match", "unit", "unread", "no code", "surcharge", "not ordered",
        "unclear", "billed twice", "OK", "NO", "NO: ", "OK: ", "NO*", "NO: OK", "NO: Quote: ", "PIPE-",
        "waste.", "Job", "Pit", "YYYY-MM-DD",
        // Names of functions that a sentence is asked of, and signs of units.
        "⟨error⟩", "in/ft", "1 in", "2 in", "3 in", "5 in", "6 in", "1 in = ", "ft/s", "in/hr", "mm/h",
        "short tons per cu yd", "RAIN.INTENSITY", "RAIN.DEPTH", "SOIL.RATE", " ft", " mm", " in", "ft", "mm",
        "in", "min/in", "min/mm", "sq ft", "m2", "m3", "$/m per m", "$/ft per ft", "3 m", "10 ft", "25 ft",
        "100 mm", "4 in", "L/s", "gpm", "dig.hand.length"};
    return all;
}

bool hasWord(const std::string& text) {
    static const std::regex word("[A-Za-z]{2}");
    return std::regex_search(text, word);
}

// Quoted texts of a formula that hold words.
std::set<std::string> textsOf(const std::string& formula) {
    static const std::regex text("\"([^\"]*)\"");
    std::set<std::string> found;
    for (std::sregex_iterator match(formula.begin(), formula.end(), text), end; match != end; ++match)
        if (hasWord((*match)[1])) found.insert((*match)[1]);
    return found;
}

bool isSheet(const std::string& text) {
    static const std::set<std::string> names = [] {
        std::set<std::string> all;
        for (const Shipped& shipped : shippedWorkbooks())
            for (const Sheet& sheet : shipped.make().sheets) all.insert(sheet.name);
        return all;
    }();
    return names.count(text) != 0;  // sheets keep their names in a Spanish job
}

// Words of a cell's list: the choices stay English.
bool isChoice(const std::string& text) {
    static const std::set<std::string> words = [] {
        std::set<std::string> all;
        const auto add = [&](const Validity& validity) {
            all.insert(validity.words.begin(), validity.words.end());
        };
        for (const Sheet& sheet : jobWorkbook({}).sheets)
            for (const Part& part : sheet.parts) {
                if (const Form* form = std::get_if<Form>(&part))
                    for (const Field& field : form->fields) add(field.validity);
                if (const Table* table = std::get_if<Table>(&part))
                    for (const Column& column : table->columns) add(column.validity);
            }
        return all;
    }();
    return words.count(text) != 0;
}

struct Said {
    std::set<std::string> texts, open;  // all; those without Spanish
};

const Said& said() {
    static const Said all = [] {
        Said made;
        for (const Shipped& shipped : shippedWorkbooks())
            forEachFormula(shipped.make(), [&](const FormulaPlace& at) {
                if (at.sheet != nullptr && at.sheet->name == "Functions") return;  // live examples
                if (at.formula.find("paper_language") != std::string::npos)
                    return;  // has both languages in it
                for (const std::string& text : textsOf(at.formula)) {
                    made.texts.insert(text);
                    if (!inSpanish(text) && same().count(text) == 0 && !isSheet(text) && !isChoice(text))
                        made.open.insert(text + "   (" + at.where + ")");
                }
            });
        return made;
    }();
    return all;
}

TEST(Spanish, IsThereForWhatFormulasSay) {
    ASSERT_GT(said().texts.size(), 300u);
    for (const std::string& text : said().open) ADD_FAILURE() << "no Spanish: " << text;
}

TEST(Spanish, IsThereForEveryFixedTextOfThePapers) {
    for (const Sheet& sheet : jobWorkbook({}).sheets) {
        if (papers.count(sheet.name) == 0) continue;
        const auto formulaOrBlank = [&](const std::string& text) {
            EXPECT_TRUE(!hasWord(text) || text.starts_with('=')) << sheet.name << ": " << text;
        };
        formulaOrBlank(sheet.title);
        formulaOrBlank(sheet.purpose);
        for (const Part& part : sheet.parts) {
            if (const Paragraphs* text = std::get_if<Paragraphs>(&part)) {
                formulaOrBlank(text->heading);
                for (const std::string& line : text->lines) formulaOrBlank(line);
            }
            if (const Table* table = std::get_if<Table>(&part)) {
                for (const Column& column : table->columns)
                    EXPECT_TRUE(column.helper || !column.shown.empty())
                        << sheet.name << ": " << column.heading;
                for (const auto& row : table->content)
                    for (const std::string& cell : row) formulaOrBlank(cell);
            }
        }
    }
}

TEST(Spanish, HoldsNothingThatNoSheetSays) {
    for (const Phrases* table : {&sitePhrases(), &purposePhrases(), &buyingPhrases(), &paperPhrases()})
        for (const auto& [english, spanish] : *table) {
            EXPECT_NE(english, spanish) << "the same in both languages needs no row";
            EXPECT_FALSE(spanish.empty()) << english;
            if (english.find("{}") != std::string::npos) continue;
            EXPECT_TRUE(said().texts.count(english)) << "no sheet says: " << english;
        }
}

TEST(Spanish, NamesAreToldApart) {
    std::map<std::string, std::string> names;
    for (const std::string& text : said().texts)
        if (inSpanish(text)) {
            const auto [at, added] = names.emplace(sayName(text), text);
            EXPECT_TRUE(added) << at->second << " and " << text << " are both " << at->first;
        }
    EXPECT_EQ(sayName("NO: the code is missing"), "say_no_the_code_is_missing");
    EXPECT_EQ(*inSpanish("NO: Code holds an error"), "NO: Code tiene un error");
    EXPECT_FALSE(inSpanish("4 SDR35"));
}

TEST(Spanish, OfAFormulaStandsUnderItsName) {
    Workbook workbook;
    Form form{.name = "F",
              .fields = {{.label = "Language", .name = "language", .kind = Kind::Kept, .value = "en"},
                         {.label = "Check", .name = "c", .value = "=IF(units=1;\"NO: no price\";\"OK\")"},
                         {.label = "Units", .name = "units", .value = "1"}}};
    workbook.sheets = {Sheet{.name = "S", .title = "S", .parts = {form}}};
    const Layout layout(workbook);
    EXPECT_EQ(layout.expand("IF(units=1;\"NO: no price\";\"OK\")", nullptr, 0),
              "IF(units=1;say_no_no_price;\"OK\")");
    EXPECT_EQ(layout.names().at("say_no_no_price"),
              "IF(language=\"es\";\"NO: sin precio\";\"NO: no price\")");
    // An array takes no names; behind it they are taken again.
    EXPECT_EQ(layout.expand("SUM({\"NO: no price\"};\"NO: no price\")", nullptr, 0),
              "SUM({\"NO: no price\"};say_no_no_price)");
}

}  // namespace
}  // namespace trenchbook::sheets
