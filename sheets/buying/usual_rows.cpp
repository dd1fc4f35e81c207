// Goods that small drains are mostly made of, under the codes that the takeoff counts them by. A stick's length and what a
// bag holds are as mostly sold (common practice, no source): the supplier's own go over them.
#include <algorithm>

#include "buying/money.h"

namespace trenchbook::sheets {
namespace {

using Rows = std::vector<std::vector<std::string>>;
const std::vector<std::string> services = {"delivery", "disposal", "equipment", "subcontract"};

// Fittings of one make and size, as codes name them.
void addFittings(Rows& rows, const std::string& word, const std::string& says) {
    for (const auto& [code, what] : std::initializer_list<std::pair<const char*, const char*>>{
             {"WYE-", "wye"},
             {"BEND45-", "bend 45"},
             {"BEND22-", "bend 22-1/2"},
             {"COUPLING-", "coupling"},
             {"CLEANOUT-", "cleanout fitting with plug"},
             {"CAP-", "cap"}})
        rows.push_back({code + word, says + " " + what, "fitting", "piece", "1"});
}

}  // namespace

std::vector<std::vector<std::string>> usualRows(const std::vector<Column>& columns) {
    Rows rows = {
        {"PIPE-4SDR35", "4 in SDR 35 sewer pipe with bell", "pipe", "ft", "10"},
        {"PIPE-6SDR35", "6 in SDR 35 sewer pipe with bell", "pipe", "ft", "14"},
        {"PIPE-4SCH40", "4 in Schedule 40 pipe with bell", "pipe", "ft", "20"},
        {"PIPE-4CORRUGATED", "4 in corrugated pipe", "pipe", "ft", "10"},
        {"PIPE-4D2729PERF", "4 in perforated drain pipe", "pipe", "ft", "10"},
        {"PIPE-110SN4", "110 mm SN 4 sewer pipe with ring (metric)", "pipe", "m", "6"},
        {"PIPE-160SN4", "160 mm SN 4 sewer pipe with ring (metric)", "pipe", "m", "6"},
    };
    addFittings(rows, "4SDR35", "4 in SDR 35");
    addFittings(rows, "6SDR35", "6 in SDR 35");
    const Rows more = {
        {"WYE-6X4SDR35", "6 x 4 in SDR 35 wye", "fitting", "piece", "1"},
        {"REDUCER-6X4SDR35", "6 x 4 in SDR 35 reducer", "fitting", "piece", "1"},
        {"TEE-4SDR35", "4 in SDR 35 tee", "fitting", "piece", "1"},
        {"HUB-4SDR35", "4 in hub for basin or channel", "fitting", "piece", "1"},
        {"HUB-6SDR35", "6 in hub for basin or channel", "fitting", "piece", "1"},
        {"ADAPTER-4SDR35-SCH40", "4 in adapter, SDR 35 to Schedule 40", "fitting", "piece", "1"},
        {"DOWNSPOUT-4SDR35", "downspout adapter to 4 in, leader not measured", "device", "piece", "1"},
        {"DOWNSPOUT-2X3-4SDR35", "downspout adapter, 2 x 3 to 4 in", "device", "piece", "1"},
        {"DOWNSPOUT-3X4-4SDR35", "downspout adapter, 3 x 4 to 4 in", "device", "piece", "1"},
        {"BASIN-12", "12 in catch basin with grate", "device", "piece", "1"},
        {"BASIN-12-RISER", "riser ring for the 12 in basin", "device", "piece", "1"},
        {"CHANNEL-4", "channel drain end outlet, 4 in", "device", "piece", "1"},
        {"CHANNEL-6", "channel drain end outlet, 6 in", "device", "piece", "1"},
        {"CHANNEL-LENGTH", "channel drain with grate", "device", "ft", "4", "0"},
        {"GUARD-4", "4 in outlet guard against animals", "device", "piece", "1"},
        {"GUARD-6", "6 in outlet guard against animals", "device", "piece", "1"},
        {"POPUP-4", "4 in pop-up outlet", "device", "piece", "1"},
        {"TEEGRATE-4", "4 in round grate on the pit's tee", "device", "piece", "1"},
        {"CEMENT", "PVC cement", "glue", "pint", "1"},
        {"PRIMER", "PVC primer", "glue", "pint", "1"},
        {"BEDDING", "bedding sand", "sand", "ton", "1"},
        {"ROCK", "washed drain rock", "rock", "ton", "1"},
        {"APRON", "rip-rap for the outlet", "rock", "ton", "1"},
        {"FABRIC", "filter fabric", "fabric", "sq ft", "625"},
        {"SOD", "sod in rolls", "sod", "sq ft", "10"},
        {"TOPSOIL", "screened topsoil", "soil", "cu yd"},
        {"CONCRETE", "bag of concrete mix", "concrete", "bag", "1"},
        {"TAPE-WARN", "marking tape, roll", "other", "ft", "1000", "0"},
        {"WIRE-LOCATE", "locating wire, roll", "other", "ft", "500", "0"},
        {"RESTORE-WALK", "walk made good", "subcontract", "sq ft", "1", "0"},
        {"RESTORE-DRIVE", "drive made good", "subcontract", "sq ft", "1", "0"},
        {"HAUL", "truckload of spoil to the dump", "disposal", "load", "1", "0"},
        {"DELIVERY", "delivery of pipe and fittings", "delivery", "trip", "1", "0"},
        {"DELIVERY-BULK", "delivery of sand and rock", "delivery", "trip", "1", "0"},
        {"TRENCHER", "walk-behind trencher, day", "equipment", "day", "1", "0"},
        {"EXCAVATOR", "mini excavator, day, with haul", "equipment", "day", "1", "0"},
        {"PLATE", "plate compactor, day", "equipment", "day", "1", "0"},
    };
    rows.insert(rows.end(), more.begin(), more.end());
    std::size_t taxable = 0;
    for (const Column& column : columns) {
        if (column.heading == "Taxable") break;
        taxable += column.kind == Kind::Verdict ? 0 : 1;
    }
    for (std::vector<std::string>& row : rows) {
        // Goods mostly are; whether hire, delivery and dump fees are is for the supplier to say.
        if (std::find(services.begin(), services.end(), row[2]) != services.end()) continue;
        row.resize(taxable + 1);
        row[taxable] = "yes";
    }
    return rows;
}

}  // namespace trenchbook::sheets
