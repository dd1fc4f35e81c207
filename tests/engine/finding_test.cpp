#include "trenchbook/rules/finding.h"

#include <gtest/gtest.h>

namespace trenchbook {
namespace {

Finding of(Severity severity, const char* en, const char* es) {
    return {.severity = severity, .says = {en, es}};
}

TEST(Finding, OkIsTheAbsenceOfTheFirstThree) {
    EXPECT_FALSE(verdict({}));
    const std::vector<Finding> harmless = {of(Severity::Saving, "4 in would do", "basta 4 in"),
                                           of(Severity::Caution, "roots", "raíces")};
    EXPECT_FALSE(verdict(harmless));
    for (const Severity severity : {Severity::No, Severity::NotJudged, Severity::Check}) {
        std::vector<Finding> more = harmless;
        more.push_back(of(severity, "x", "x"));
        EXPECT_EQ(verdict(more), severity);
    }
}

TEST(Finding, TheWorstComesFirstAndTiesKeepTheirOrder) {
    std::vector<Finding> findings = {of(Severity::Caution, "a", ""), of(Severity::Check, "b", ""),
                                     of(Severity::NotJudged, "c", ""), of(Severity::Check, "d", ""),
                                     of(Severity::No, "e", "")};
    sortFindings(findings);
    std::string order;
    for (const Finding& finding : findings) order += finding.says.en;
    EXPECT_EQ(order, "ecbda");
    EXPECT_EQ(verdict(findings), Severity::No);
}

TEST(Finding, CheckTellsAllOfThem) {
    EXPECT_EQ(checkText({}).en, "OK");
    EXPECT_EQ(checkText(std::vector{of(Severity::Caution, "roots", "raíces")}).en, "OK; caution: roots");
    const std::vector<Finding> two = {of(Severity::No, "too flat", "muy plano"),
                                      of(Severity::Check, "long", "largo")};
    EXPECT_EQ(checkText(two).en, "NO: too flat; CHECK: long");
    EXPECT_EQ(checkText(two).es, "NO: muy plano; REVISE: largo");
    EXPECT_EQ(checkText(std::vector{of(Severity::NotJudged, "no rain", "sin lluvia")}).es,
              "SIN JUZGAR: sin lluvia");
}

TEST(Finding, PartsAreNamedAsTheSheets) {
    EXPECT_EQ(partWord(Part::Job).en, "Job");
    EXPECT_EQ(partWord(Part::Runs).en, "Runs");
    EXPECT_EQ(partWord(Part::Pit).en, "Pit");
}

}  // namespace
}  // namespace trenchbook
