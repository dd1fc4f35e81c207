// Every quantity that a function cannot use is refused under its argument's name, also by those whose callers look first.
#include <gtest/gtest.h>

#include <cmath>
#include <functional>

#include "trenchbook/core/error.h"
#include "trenchbook/ground/earthwork.h"
#include "trenchbook/ground/mound.h"
#include "trenchbook/ground/pit.h"
#include "trenchbook/ground/soil.h"
#include "trenchbook/lines/cover.h"
#include "trenchbook/lines/water_levels.h"
#include "trenchbook/pipe/circular.h"
#include "trenchbook/pipe/fittings.h"
#include "trenchbook/pipe/friction.h"
#include "trenchbook/pipe/manning.h"
#include "trenchbook/pipe/sizing.h"
#include "trenchbook/takeoff/packs.h"
#include "trenchbook/water/inlets.h"
#include "trenchbook/water/runoff.h"
#include "trenchbook/water/swale.h"
#include "trenchbook/water/travel.h"

namespace trenchbook {
namespace {

const Length foot = Length::feet(1), none, less = Length::feet(-1);
const Area yard = Area::squareFeet(1000), noArea, lessArea = Area::squareFeet(-1);
const Flow some = Flow::gpm(60), lessFlow = Flow::gpm(-1);
const Slope fall = Slope::percent(1), level, percent = Slope::fraction(1);
const Volume room = Volume::cubicFeet(10), lessRoom = Volume::cubicFeet(-1);
constexpr double n = 0.01;

struct Refusal {
    const char* argument;
    std::function<void()> call;
};

void expectAll(const std::vector<Refusal>& refusals) {
    for (std::size_t i = 0; i < refusals.size(); ++i) {
        const Refusal& refusal = refusals[i];
        try {
            refusal.call();
            ADD_FAILURE() << i << ": " << refusal.argument << " was not refused";
        } catch (const Error& error) {
            EXPECT_EQ(error.argument(), refusal.argument) << i << ": " << error.sentence(Language::English);
            EXPECT_EQ(error.kind(), Error::Kind::BadArgument) << i;
            EXPECT_EQ(error.sentence(Language::English).find(refusal.argument), 0u) << i;
            EXPECT_EQ(error.sentence(Language::Spanish).find(refusal.argument), 0u) << i;
        }
    }
}

TEST(Refusals, OfPipes) {
    expectAll({
        {"pipe", [] { (void)capacity(none, fall, n); }},
        {"roughness", [] { (void)capacity(foot, fall, 0); }},
        {"slope", [] { (void)capacity(foot, level, n); }},
        {"slope", [] { (void)capacity(foot, percent, n); }},
        {"fill", [] { (void)capacity(foot, fall, n, 0); }},
        {"fill", [] { (void)capacity(foot, fall, n, 1.01); }},
        {"slope", [] { (void)fullVelocity(foot, level, n); }},
        {"flow", [] { (void)slopeNeeded(foot, lessFlow, n); }},
        {"velocity", [] { (void)selfCleaningSlope(foot, Velocity(), n); }},
        {"flow", [] { (void)frictionSlope(foot, foot, lessFlow, n); }},
        {"depth", [] { (void)frictionSlope(foot, none, some, n); }},
        {"slope", [] { (void)normalFill(foot, level, some, n); }},
        {"flow", [] { (void)normalFill(foot, fall, lessFlow, n); }},
        {"flow", [] { (void)uniformVelocity(foot, fall, lessFlow, n); }},
        {"slope", [] { (void)uniformVelocity(foot, level, some, n); }},
        {"slope", [] { (void)wallShear(foot, level, some, n); }},
        {"flow", [] { (void)wallShear(foot, fall, lessFlow, n); }},
        {"bore", [] { (void)segmentAt(none, foot); }},
        {"depth", [] { (void)segmentAt(foot, less); }},
        {"bore", [] { (void)criticalDepth(none, some); }},
        {"flow", [] { (void)criticalDepth(foot, lessFlow); }},
        {"length", [] { (void)manningLoss(foot, some, less, n); }},
        {"pipe", [] { (void)darcyLoss(none, some, foot, 0.02); }},
        {"flow", [] { (void)darcyLoss(foot, lessFlow, foot, 0.02); }},
        {"length", [] { (void)darcyLoss(foot, some, less, 0.02); }},
        {"flow", [] { (void)frictionFactor(0, 0.001); }},
        {"K", [] { (void)fittingLoss(foot, some, -0.1); }},
        {"pipe", [] { (void)fittingLoss(none, some, 0.5); }},
        {"flow", [] { (void)fittingLoss(foot, lessFlow, 0.5); }},
        {"flow", [] { (void)firstThatCarries(Flow(), fall, {}, {}); }},
        {"slope", [] { (void)firstThatCarries(some, level, {}, {}); }},
        {"candidates", [] { (void)firstThatCarries(some, fall, {}, {}); }},
        {"length", [] { (void)insideVolume(stockPipe("4 SDR35"), less); }},
        {"length", [] { (void)outsideVolume(stockPipe("4 SDR35"), less); }},
    });
}

TEST(Refusals, OfLines) {
    const auto reach = [](auto change) {
        return [change] {
            PipeReach made{.length = foot,
                           .bore = foot,
                           .roughness = n,
                           .flow = some,
                           .invertUp = foot,
                           .invertDown = none};
            change(made);
            (void)reachWater(made, std::nullopt);
        };
    };
    expectAll({
        {"length", reach([](PipeReach& r) { r.length = none; })},
        {"pipe", reach([](PipeReach& r) { r.bore = none; })},
        {"roughness", reach([](PipeReach& r) { r.roughness = 0; })},
        {"flow", reach([](PipeReach& r) { r.flow = lessFlow; })},
        {"K", reach([](PipeReach& r) { r.lossK = -0.1; })},
        {"length", [] { (void)runDrop(less, fall); }},
        {"slope", [] { (void)runDrop(foot, level); }},
        {"fittings drop", [] { (void)runDrop(foot, fall, less); }},
        {"length", [] { (void)runSlope(none, foot, none); }},
        {"bedding", [] { (void)trenchCut(foot, none, stockPipe("4 SDR35"), less); }},
    });
}

TEST(Refusals, OfWater) {
    const Swale swale{.bottom = foot, .sideSlope = 3};
    expectAll({
        {"bottom", [] { (void)swaleCapacity({.bottom = less, .sideSlope = 3}, foot, fall, n); }},
        {"side slope", [] { (void)swaleCapacity({.bottom = foot, .sideSlope = -1}, foot, fall, n); }},
        {"side slope", [] { (void)swaleCapacity({.bottom = none, .sideSlope = 0}, foot, fall, n); }},
        {"depth", [=] { (void)swaleMomentum(swale, none, some); }},
        {"depth", [=] { (void)swaleCapacity(swale, none, fall, n); }},
        {"slope", [=] { (void)swaleCapacity(swale, foot, level, n); }},
        {"roughness", [=] { (void)swaleCapacity(swale, foot, fall, 0); }},
        {"slope", [=] { (void)swaleDepth(swale, some, level, n); }},
        {"roughness", [=] { (void)swaleDepth(swale, some, fall, 0); }},
        {"flow", [=] { (void)swaleDepth(swale, lessFlow, fall, n); }},
        {"flow", [=] { (void)swaleCriticalDepth(swale, lessFlow); }},
        {"length", [] { (void)sheetTime(none, fall, 0.1, foot); }},
        {"slope", [] { (void)sheetTime(foot, level, 0.1, foot); }},
        {"roughness", [] { (void)sheetTime(foot, fall, 0.0049, foot); }},
        {"roughness", [] { (void)sheetTime(foot, fall, 1.01, foot); }},
        {"two-year day rain", [] { (void)sheetTime(foot, fall, 0.1, none); }},
        {"slope", [] { (void)shallowVelocity(level, Velocity::feetPerSecond(16)); }},
        {"surface", [] { (void)shallowVelocity(fall, Velocity()); }},
        {"length", [] { (void)shallowTime(none, fall, Velocity::feetPerSecond(16)); }},
        {"length", [] { (void)kirpichTime(none, fall); }},
        {"slope", [] { (void)kirpichTime(foot, level); }},
        {"length", [] { (void)rectangularGrate(none, foot, 0.4); }},
        {"width", [] { (void)rectangularGrate(foot, none, 0.4); }},
        {"open share", [] { (void)rectangularGrate(foot, foot, 1.1); }},
        {"blocked share", [] { (void)rectangularGrate(foot, foot, 0.4, -0.1); }},
        {"along walls", [] { (void)rectangularGrate(foot, foot, 0.4, 0.5, less); }},
        {"length", [] { (void)roundGrate(none, 0.4); }},
        {"ponding", [] { (void)grateCapacity(rectangularGrate(foot, foot, 0.4), none); }},
        {"flow", [] { (void)gratePonding(rectangularGrate(foot, foot, 0.4), Flow()); }},
        {"bore", [] { (void)basinOutletFlow(none, foot); }},
        {"head", [] { (void)basinOutletFlow(foot, none); }},
        {"bore", [] { (void)basinOutletHead(none, some); }},
        {"flow", [] { (void)basinOutletHead(foot, Flow()); }},
        {"size", [] { (void)leaderCapacity(none); }},
        {"fill", [] { (void)leaderCapacity(foot, 0); }},
        {"area", [] { (void)rationalFlow(noArea, 0.9, RainRate::inchesPerHour(4)); }},
        {"coefficient", [] { (void)rationalFlow(yard, 1.1, RainRate::inchesPerHour(4)); }},
        {"intensity", [] { (void)rationalFlow(yard, 0.9, RainRate()); }},
        {"area", [] { (void)runoffVolume(noArea, 0.9, foot); }},
        {"rain", [] { (void)runoffVolume(yard, 0.9, none); }},
        {"rain", [] { (void)runoffDepth(none, 80); }},
        {"curve number", [] { (void)runoffDepth(foot, 100.1); }},
        {"initial share", [] { (void)runoffDepth(foot, 80, 1.1); }},
        {"curve number", [] { (void)compositeCurveNumber(100.1, 0.2); }},
        {"impervious share", [] { (void)compositeCurveNumber(61, 1.1); }},
        {"unconnected share", [] { (void)compositeCurveNumber(61, 0.2, 1.1); }},
        {"plan", [] { (void)roofArea(noArea); }},
        {"wall", [] { (void)roofArea(yard, lessArea); }},
        {"wall share", [] { (void)roofArea(yard, yard, 1.1); }},
        {"pitch factor", [] { (void)roofArea(yard, yard, 0.5, 0.99); }},
        {"pitch factor", [] { (void)roofArea(yard, yard, 0.5, 1.51); }},
    });
}

TEST(Refusals, OfGround) {
    const auto pit = [](auto change) {
        return [change] {
            RockPit made{.length = foot, .width = foot, .rockDepth = foot};
            change(made);
            (void)storage(made);
        };
    };
    const auto mound = [](auto change) {
        return [change] {
            Mound made{
                foot, foot, SoilRate::inchesPerHour(1), Duration::hours(1), Velocity::feetPerSecond(0.001),
                0.2,  foot};
            change(made);
            (void)moundRise(made);
        };
    };
    const auto soak = [](auto change) {
        return [change] {
            SoakTest test{Length::inches(1), Duration::minutes(30), Length::inches(8), foot};
            change(test);
            (void)soakRate(test);
        };
    };
    expectAll({
        {"length", pit([](RockPit& p) { p.length = none; })},
        {"width", pit([](RockPit& p) { p.width = none; })},
        {"rock depth", pit([](RockPit& p) { p.rockDepth = none; })},
        {"voids", pit([](RockPit& p) { p.voids = 0; })},
        {"voids", pit([](RockPit& p) { p.voids = 1.1; })},
        {"side share", pit([](RockPit& p) { p.sideShare = -0.1; })},
        {"hold", [] { (void)rockToHold(Volume()); }},
        {"pipe inside", [] { (void)rockToHold(room, 0.4, lessRoom); }},
        {"rate", [] { (void)drainTime({.length = foot, .width = foot, .rockDepth = foot}, SoilRate()); }},
        {"storage", [] { (void)rainHeld(lessRoom, yard); }},
        {"area x C", [] { (void)rainHeld(room, noArea); }},
        {"length", mound([](Mound& m) { m.length = none; })},
        {"width", mound([](Mound& m) { m.width = none; })},
        {"rate", mound([](Mound& m) { m.rate = SoilRate(); })},
        {"hours", mound([](Mound& m) { m.time = Duration(); })},
        {"conductivity", mound([](Mound& m) { m.conductivity = Velocity(); })},
        {"specific yield", mound([](Mound& m) { m.specificYield = 0; })},
        {"specific yield", mound([](Mound& m) { m.specificYield = 1.1; })},
        {"saturated thickness", mound([](Mound& m) { m.saturatedThickness = none; })},
        {"drop", soak([](SoakTest& t) { t.drop = Length::feet(std::nan("")); })},
        {"minutes", soak([](SoakTest& t) { t.time = Duration(); })},
        {"hole diameter", soak([](SoakTest& t) { t.holeDiameter = none; })},
        {"gravel", soak([](SoakTest& t) { t.gravel = less; })},
        {"length", [] { (void)trenchVolume(none, foot, foot, foot); }},
        {"width", [] { (void)trenchVolume(foot, none, foot, foot); }},
        {"cut up", [] { (void)trenchVolume(foot, foot, less, foot); }},
        {"cut down", [] { (void)trenchVolume(foot, foot, foot, less); }},
        {"bank", [] { (void)looseVolume(lessRoom, 0.2); }},
        {"swell", [] { (void)looseVolume(room, 1.1); }},
        {"rock", [] { (void)bulkWeight(lessRoom, BulkDensity::fromSi(1500)); }},
        {"density", [] { (void)bulkWeight(room, BulkDensity()); }},
        {"waste", [] { (void)bulkWeight(room, BulkDensity::fromSi(1500), 1.1); }},
        {"net", [] { (void)packsToOrder(-1); }},
        {"waste", [] { (void)packsToOrder(1, 1.1); }},
        {"pack", [] { (void)packsToOrder(1, 0, 0); }},
    });
}

}  // namespace
}  // namespace trenchbook
