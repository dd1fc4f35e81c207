#include "catalog/host.h"
#include "catalog/self_test.h"
#include "catalog_harness.h"
#include "reference.h"
#include "trenchbook/core/version.h"

namespace trenchbook::addin {
namespace {

using namespace harness;

TEST(About, WhyNamesArgumentValueAndWhatIsAllowed) {
    EXPECT_EQ(words("TRENCHBOOK.WHY", {"BUY.COUNT", 3.2}), "OK");
    const std::string english = words("TRENCHBOOK.WHY", {"PIT.STORAGE", -1.0, 3.0, 2.0});
    EXPECT_EQ(english, "length is -1; allowed: above 0.");
    EXPECT_EQ(words("TRENCHBOOK.WHY", {"pit.storage", -1.0, 3.0, 2.0, "en"}), english);
    EXPECT_EQ(words("TRENCHBOOK.WHY", {"PIT.STORAGE", -1.0, 3.0, 2.0, "es"}),
              "length es -1; se admite: mayor que 0.");
}

TEST(About, WhyAnswersEvenWhenTheNameIsWrong) {
    EXPECT_EQ(words("TRENCHBOOK.WHY", {"PIPES"}),
              "function is \"PIPES\"; allowed: a Trenchbook function such as PIPE.CAPACITY.");
    EXPECT_EQ(words("TRENCHBOOK.WHY", {"PIPES", "es"}),
              "function es \"PIPES\"; se admite: una función de Trenchbook como PIPE.CAPACITY.");
}

// Behind the units, as everywhere; a function that speaks has it in its own place.
TEST(About, WhyTakesItsLanguageLast) {
    EXPECT_EQ(
        words("TRENCHBOOK.WHY", {"PIT.STORAGE", -1.0, 3.0, 2.0, Nothing{}, "metric", "es"}).substr(0, 12),
        "length es -1");
    EXPECT_EQ(words("TRENCHBOOK.WHY", {"TRENCHBOOK.SUPPORT", "es"}), "OK");
    EXPECT_EQ(words("TRENCHBOOK.WHY", {"PIT.STORAGE", -1.0, 3.0, 2.0, Nothing{}, "fr"}),
              "units is \"fr\"; allowed: \"US\", \"metric\".");
}

TEST(About, SourceIsTheCatalogs) {
    for (const Function& function : catalog()) {
        EXPECT_EQ(words("TRENCHBOOK.SOURCE", {function.name}), function.source);
        EXPECT_FALSE(function.source.empty()) << function.name;
    }
    EXPECT_THROW(run("TRENCHBOOK.SOURCE", {"PIPES"}), Error);
}

TEST(About, SupportTellsVersionHostAndSelfTest) {
    setHost("an office 7.4");
    const std::string english = words("TRENCHBOOK.SUPPORT", {});
    for (const char* part :
         {"Trenchbook ", version(), "an office 7.4", "self-test: 8 of 8 printed values right"})
        EXPECT_NE(english.find(part), std::string::npos) << part << " in " << english;
    EXPECT_NE(words("TRENCHBOOK.SUPPORT", {"es"}).find("autoprueba: 8 de 8"), std::string::npos);
    EXPECT_EQ(words("TRENCHBOOK.VERSION", {}), version());
}

// What the four functions report is a fact about this software; their check from outside is the catalog's own
// text, the build's version and the printed values of the self-test.
TEST(About, IsCheckedFromOutside) {
    using reference::check;
    using reference::checkWords;
    const SelfTest test = selfTest();
    for (const std::string& wrong : test.wrong) ADD_FAILURE() << wrong;
    check("TRENCHBOOK.SUPPORT", "printed values of the self-test that come out right",
          static_cast<double>(test.right), 8, 0,
          "ASTM D1785; TR-55, table 2-1; Texas Tech CE 4353, hydraulic elements; a municipal ordinance",
          "read");
    checkWords("TRENCHBOOK.VERSION", "the version that the build was given", words("TRENCHBOOK.VERSION", {}),
               TRENCHBOOK_VERSION, "CMakeLists.txt", "build");
    checkWords("TRENCHBOOK.SOURCE", "where the runoff depth comes from names the handbook",
               words("TRENCHBOOK.SOURCE", {"RUNOFF.DEPTH"}).find("TR-55") == std::string::npos ? "no" : "yes",
               "yes", "TR-55 is where the printed table stands", "read");
    checkWords(
        "TRENCHBOOK.WHY", "a curve number above 100 is refused by name",
        words("TRENCHBOOK.WHY", {"RUNOFF.DEPTH", 5.0, 101.0}).find("101") == std::string::npos ? "no" : "yes",
        "yes", "TR-55: curve numbers end at 100", "read");
}

}  // namespace
}  // namespace trenchbook::addin
