// Values worked by hand or printed beside their functions, of functions that give several things of one reckoning.
#include <cmath>
#include <numbers>

#include "job_tables.h"
#include "reference.h"
#include "trenchbook/core/units.h"

namespace trenchbook::addin {
namespace {

using namespace harness;
using reference::check;

// V = Q t / 4 (HEC-22 Eq. 9-2) turned round: the volume for a cycle gives that many starts an hour.
TEST(WorkedChecks, PumpCycles) {
    for (const reference::Row& row : reference::rows("30d_small_pump_basins.csv"))
        if (row.item == "Volume between starts, V = Q t/4")
            check("PUMP.CYCLES", "starts an hour with the volume of a cycle between the floats",
                  number("PUMP.CYCLES", {row.input("Q_gpm"), row.number()}), 60 / row.input("cycle_min"),
                  0.05, "FHWA HEC-22, 3rd edition (2009), Eq. 9-2, V = Q t / 4", "computed");
}

// A pump curve drawn straight through a point of the system's own curve: there it works. 20 ft of lift, 100 ft of pipe of
// 2.067 in, 40 gpm = 0.089121 cfs: Hazen-Williams, 4.73 L (Q / C)^1.852 / D^4.87 with C 140, and one velocity head.
TEST(WorkedChecks, PumpDuty) {
    const double cfs = 0.089121, d = 2.067 / 12;
    const double velocity = cfs / (std::numbers::pi / 4 * d * d);
    const double head =
        20 + 4.73 * 100 * std::pow(cfs / 140, 1.852) / std::pow(d, 4.87) + velocity * velocity / 64.348;
    const Numbers duty =
        numbers("PUMP.DUTY", {20.0, 2.067, 100.0, column({0.0, 80.0}), column({2 * head, 0.0})});
    check("PUMP.DUTY", "flow where a straight pump curve crosses the system's, gpm", duty.items[0], 40, 0.1,
          "Hazen-Williams in feet and cfs, 4.73 L (Q/C)^1.852 / D^4.87, worked by hand", "computed");
}

TEST(WorkedChecks, FlotationOfPipe) {
    // Outside 4.215 in: pushed up by 62.4 x 0.0969 = 6.05 lb/ft; 12 in of soil that weighs 112.4 - 62.4 = 50 lb/cu ft under
    // water over 0.35125 ft, and the corners beside the crown, (1 - pi/4) / 2 of the square.
    const double d = 4.215 / 12, uplift = 62.428 * std::numbers::pi / 4 * d * d;
    const double soil = 50 * (d + d * d * (1 - std::numbers::pi / 4) / 2);
    check("FLOAT.PIPE", "empty 4 in SDR 35 under 12 in of flooded soil of 112.4 lb/cu ft, held over pushed",
          number("FLOAT.PIPE", {"4 SDR35", 12.0, 0.0, 112.428}), soil / uplift, 0.005,
          "weights under water, worked by hand; outside by ASTM D3034", "computed");
}

TEST(WorkedChecks, StoneOfAnApron) {
    const Numbers size = numbers("APRON.SIZE", {"6 SDR35", 300.0});
    const double length = size.items[2], atPipe = size.items[3], atEnd = size.items[4],
                 thick = size.items[5] / 12;
    check("APRON.VOLUME", "length x mean width x thickness, cu yd",
          number("APRON.VOLUME", {"6 SDR35", 300.0}), length * (atPipe + atEnd) / 2 * thick / 27, 1e-9,
          "a trapezoid of even thickness, worked by hand", "computed");
}

// A shot 20 ft down a run that falls 0.60 ft in 60.
TEST(WorkedChecks, CoverBetweenNodes) {
    std::vector<Value> values = Tables().values();
    values.resize(11);
    values.emplace_back(table(4, {"From", "To", "At", "Ground level", "B", "Out", 20.0, 98.9}));
    const Numbers answers = numbers("JOB.GROUND", values);
    // Out lies at 96.9, B 0.60 ft over it; 20 ft on from B 0.20 ft lower: 97.3. The top is 4.215 - 0.120 in over it.
    const double cover = (98.9 - 97.3) * 12 - (4.215 - 0.120);
    check("JOB.GROUND", "cover at a shot between two nodes, in",
          answers.items[*numberView(Viewed::Ground).place("Cover")], cover, 1e-6,
          "straight lines, worked by hand; outside and wall of 4 in SDR 35: ASTM D3034", "computed");
}

// The pump of PumpDuty in a basin of 3 ft across with its floats 2 ft apart.
TEST(WorkedChecks, PumpOfAJob) {
    const double cfs = 0.089121, d = 2.067 / 12, velocity = cfs / (std::numbers::pi / 4 * d * d);
    const double head =
        20 + 4.73 * 100 * std::pow(cfs / 140, 1.852) / std::pow(d, 4.87) + velocity * velocity / 64.348;
    Tables tables;
    tables.nodes.cells[6 * 5 + 1] = "pump basin";
    std::vector<Value> values = tables.values();
    values.resize(13);
    const auto answers = [&](const char* checkValve) {
        values[12] = table(11, {"Basin",
                                "Inside diameter",
                                "Floor",
                                "Pump on",
                                "Pump off",
                                "Pump curve",
                                "Discharge pipe",
                                "Discharge length",
                                "Elbows",
                                "Discharge level",
                                "Check valve",  //
                                "Out",
                                36.0,
                                90.0,
                                94.0,
                                92.0,
                                "0:" + std::to_string(2 * head) + "; 80:0",
                                "2 SCH40",
                                100.0,
                                0.0,
                                112.0,
                                checkValve});
        return numbers("JOB.PUMP", values).items;
    };
    const auto at = [](const char* heading) { return *numberView(Viewed::Pump).place(heading); };
    EXPECT_TRUE(isBlankCell(answers("")[at("Pump gives")]))
        << "whether there is a check valve is asked first";
    const std::vector<double> pump = answers("no");
    check("JOB.PUMP", "flow where a straight pump curve crosses the system's, gpm", pump[at("Pump gives")],
          40, 0.1, "Hazen-Williams in feet and cfs, 4.73 L (Q/C)^1.852 / D^4.87, worked by hand", "computed");
    check("JOB.PUMP", "speed in the discharge pipe, ft/s", pump[at("Speed")], velocity, 0.01, "flow / area",
          "computed");
    check("JOB.PUMP", "water between the floats, gal", pump[at("Between floats")],
          std::numbers::pi / 4 * 9 * 2 * 7.48052, 0.01, "pi/4 D^2 h, 7.48052 gal a cubic foot", "computed");
    check("JOB.PUMP", "head at the lift alone, ft", pump[at("Lift")], 20, 1e-9, "112 - 92", "computed");
}

}  // namespace
}  // namespace trenchbook::addin
