#include "trenchbook/pipe/fittings.h"

#include <gtest/gtest.h>

#include <map>
#include <set>

#include "books.h"
#include "trenchbook/core/error.h"

using namespace trenchbook;
using namespace trenchbook::reference;

namespace {

// The table's wording of each printed row.
const std::map<std::string, const char*> printedNames = {
    {"Entrance, corrugated steel: Projecting from fill, no headwall", "entrance projecting from fill"},
    {"Entrance, corrugated steel: Headwall, square edge", "entrance headwall"},
    {"Entrance, corrugated steel: Mitered to fill slope", "entrance mitered to slope"},
    {"Entrance, corrugated steel: End section conforming to slope", "entrance end section"},
    {"Entrance, corrugated steel: Headwall, rounded edge", "entrance headwall rounded"},
    {"Entrance, corrugated steel: Beveled ring", "entrance beveled ring"},
    {"90 elbow, flanged, regular", "90 elbow, flanged, regular"},
    {"90 elbow, flanged, long radius", "90 elbow, flanged, long radius"},
    {"90 bend, screwed, short radius", "90 bend short radius"},
    {"90 bend, screwed, medium radius", "90 bend medium radius"},
    {"90 bend, screwed, long radius", "90 bend long radius"},
    {"45 elbow, screwed, regular", "45 elbow, screwed, regular"},
    {"45 elbow, flanged, long radius", "45 elbow, flanged, long radius"},
    {"45 elbow, flanged, regular", "45 elbow, flanged, regular"},
    {"Standard 45 bend, 4 to 18 in", "standard 45 bend"},
    {"Tee, standard, bifurcating", "tee bifurcating"},
    {"Tee, standard, 90 turn", "tee turn"},
    {"Tee, run of standard tee", "tee run"},
    {"Inlet, projecting pipe", "inlet projecting"},
    {"Inlet, sharp corner flush", "inlet sharp corner flush"},
    {"Inlet, slightly rounded", "inlet slightly rounded"},
    {"Inlet, bell mouth", "inlet bell mouth"},
    {"Bend r/D=1, 90", "90 bend r/D 1"},
    {"Bend r/D=1, 45", "45 bend r/D 1"},
    {"Bend r/D=1, 30", "30 bend r/D 1"},
    {"Bend r/D=1.5, 90", "90 bend r/D 1.5"},
    {"Bend r/D=1.5, 45", "45 bend r/D 1.5"},
    {"Bend r/D=1.5, 30", "30 bend r/D 1.5"},
    {"Miter, one cut, 90", "90 miter"},
    {"Miter, one cut, 60", "60 miter"},
    {"Miter, one cut, 45", "45 miter"},
    {"Miter, one cut, 30", "30 miter"},
    {"Globe valve wide open", "globe valve wide open"},
    {"Gate valve half open", "gate valve half open"},
    {"Angle valve wide open", "angle valve wide open"},
    {"Straight-through manhole, no size change", "manhole straight through"},
};

}  // namespace

TEST(Fittings, PrintedCoefficients) {
    int checked = 0;
    for (const char* file : {"06b_minor_loss_k_tables.csv", "06a_efm_mays_headloss_examples.csv"})
        for (const Row& row : rows(file)) {
            const auto name = printedNames.find(row.item);
            if (name == printedNames.end()) continue;
            const Fitting& ours = fitting(name->second);
            const std::size_t dash = row.value.find('-');
            if (dash == std::string::npos) {
                check("FITTING.K", row, ours.k);
            } else {
                // A printed range: ours is its middle, and carries both ends.
                const double least = row.number(), greatest = std::stod(row.value.substr(dash + 1));
                check("FITTING.K", (row.item + ", range " + row.value).c_str(), ours.k,
                      (least + greatest) / 2, 1e-12, row.source.c_str(), row.provenance.c_str());
                EXPECT_EQ(ours.least, least) << row.id;
                EXPECT_EQ(ours.greatest, greatest) << row.id;
            }
            ++checked;
        }
    EXPECT_EQ(checked, 36);
}

TEST(Fittings, PrintedRules) {
    for (const Row& row : rows("06b_minor_loss_k_tables.csv")) {
        if (row.kind != "rule") continue;
        if (row.item == "45 bend") check("FITTING.K", row, fitting("45 bend").k / fitting("90 bend").k);
        if (row.item == "22.5 bend") check("FITTING.K", row, fitting("22.5 bend").k / fitting("90 bend").k);
        if (row.item.starts_with("45 lateral"))
            check("FITTING.K", row, fitting("wye branch").k / fitting("tee branch").k);
    }
    for (const Row& row : rows("06a_efm_mays_headloss_examples.csv")) {
        if (row.item.starts_with("Sudden expansion"))
            checkWords(
                "FITTING.K", row,
                plain(fitting("sudden expansion").k) + ".0 / " + plain(fitting("gradual expansion").k));
        if (row.item.starts_with("Sudden contraction"))
            checkWords(
                "FITTING.K", row,
                plain(fitting("sudden contraction").k) + " / " + plain(fitting("gradual contraction").k));
    }
}

TEST(Fittings, WorkedLosses) {
    for (const Row& row : rows("06a_efm_mays_headloss_examples.csv")) {
        const double factor = row.has("g") ? gravityFeet / row.input("g") : 1;
        if (row.output == "hL/(K Q^2)")
            check("FITTING.LOSS", row, fittingLoss(Length::inches(row.input("D_in")), Flow::cfs(1), 1).feet(),
                  factor, gravityReason);
        // The manhole example's velocity head belongs to 71 cfs in a 48 in pipe.
        const auto manhole = [](double k) {
            return fittingLoss(Length::inches(48), Flow::cfs(71), k).feet();
        };
        if (row.output == "outfall velocity head") check("FITTING.LOSS", row, manhole(1));
        if (row.output == "lateral pressure change" || row.output == "in-line pressure change")
            check("FITTING.LOSS", row, manhole(row.input("K")));
    }
    for (const Row& row : rows("01e_efm_pipe_examples.csv"))
        if (row.output == "entrance plus exit loss")
            check("FITTING.LOSS", row,
                  fittingLoss(Length::inches(row.input("D_in")), Flow::cfs(row.input("Q_cfs")),
                              fitting("entrance").k + fitting("exit").k)
                      .feet(),
                  gravityFeet / row.input("g"), gravityReason);
}

TEST(Fittings, ForgivingNames) {
    for (const char* name :
         {"45 bend", "45 elbow", "45° elbow", "elbow 45", "45 deg bend", "Bend, 45 degrees", "45 ELL",
          "codo de 45", "curva 45 grados", "1/8 bend", "PVC 45 bend"})
        EXPECT_EQ(fitting(name).name, "45 bend") << name;
    EXPECT_EQ(fitting("codo 90 radio largo").name, "90 bend long radius");
    EXPECT_EQ(fitting("90 long sweep").k, 0.60);
    EXPECT_EQ(fitting("te paso recto").name, "tee run");
    EXPECT_EQ(fitting("tee straight through").name, "tee run");
    EXPECT_EQ(fitting("yee ramal").name, "wye branch");
    EXPECT_EQ(fitting("22-1/2 elbow").name, "22.5 bend");
    EXPECT_EQ(fitting("salida").name, "exit");
    EXPECT_EQ(fitting("entrada").name, "entrance");
}

TEST(Fittings, EveryRowIsWholeAndFoundByItsName) {
    std::set<std::string_view> names;
    for (const Fitting& row : fittings()) {
        EXPECT_TRUE(names.insert(row.name).second) << row.name;
        EXPECT_EQ(&fitting(row.name), &row) << row.name;
        EXPECT_LE(row.least, row.k) << row.name;
        EXPECT_LE(row.k, row.greatest) << row.name;
        EXPECT_GT(row.k, 0) << row.name;
        EXPECT_FALSE(row.source.empty()) << row.name;
    }
}

TEST(Fittings, UnknownNamesAndBadInput) {
    try {
        fitting("60 bend");
        FAIL() << "no error";
    } catch (const Error& error) {
        EXPECT_EQ(error.argument(), "fitting");
        EXPECT_NE(error.sentence(Language::English).find("90 bend long radius"), std::string::npos)
            << error.what();
    }
    for (const char* name : {"", "bend", "long", "xyz", "90 90 90 tee bend"})
        EXPECT_THROW(fitting(name), Error) << name;
    EXPECT_THROW(fitting(std::string(4000, 'x')), Error);
    EXPECT_THROW(fittingLoss(Length::inches(4), Flow::gpm(10), -0.1), Error);
    EXPECT_THROW(fittingLoss(Length(), Flow::gpm(10), 1), Error);
    EXPECT_THROW(fittingLoss(Length::inches(4), Flow::gpm(-10), 1), Error);
}
