#include "trenchbook/job/read.h"

#include <set>

#include "job/cell_words.h"
#include "job/row_cells.h"
#include "trenchbook/core/error.h"
#include "trenchbook/job/as_built.h"
#include "trenchbook/job/draw_lot.h"
#include "trenchbook/lines/network.h"

namespace trenchbook {
namespace {

// One entry a row of the table, each filled by fill(entry, cells).
template <class Entry, class Fill>
std::vector<Entry> readRows(InputTable table, const Grid& grid, UnitSystem units, const Fill& fill) {
    HeadedTable headed(table, grid);
    std::vector<Entry> entries(headed.rows());
    RowCells in(table, units);
    for (std::size_t row = 0; row < entries.size(); ++row) {
        in.read(headed.cells(row));
        entries[row].blank = in.blank();
        entries[row].unusable = in.unusable();
        if (!entries[row].blank) fill(entries[row], in);
    }
    return entries;
}

// What is typed goes before what Levels found; typed and not usable, nothing is known.
std::optional<Length> groundIn(const RowCells& in) {
    return in.quantity<Length>(in["Ground"].blank ? "Ground level" : "Ground");
}

void fillNode(Node& node, const RowCells& in) {
    node.name = in.text("Node");
    node.kinds = in["Kind"].kinds;
    node.kindGiven = !in["Kind"].blank;
    node.shot = in.text("Shot");
    node.ground = groundIn(in);
    node.opening = in.quantity<Length>("Rim or grate");
    node.fromHouse = in.quantity<Length>("From house");
    node.toFooting = in.quantity<Length>("To footing");
    node.footingDepth = in.quantity<Length>("Footing depth");
    node.engineer = in.text("Engineer");
    node.toTree = in.quantity<Length>("To tree");
    node.toSeptic = in.quantity<Length>("To septic");
    node.toWell = in.quantity<Length>("To well");
    node.turn = in.quantity<Angle>("Turn");
    node.device = in.text("Device");
    node.tie1 = in.text("Tie 1");
    node.tie2 = in.text("Tie 2");
}

void fillInlet(JobInlet& inlet, const RowCells& in) {
    const auto drained = [&in](const char* area, const char* coefficient) {
        return Drained{in.quantity<Area>(area), in.number(coefficient)};
    };
    inlet.name = in.text("Inlet");
    inlet.node = in.text("Node");
    inlet.roof = drained("Roof area", "Roof C");
    inlet.paved = drained("Paved area", "Paved C");
    inlet.yard = drained("Yard area", "Yard C");
    inlet.time = in.quantity<Duration>("Minutes");
    inlet.entersBy = in.choice("Enters by", EntersBy::NotSaid, EntersBy::Downspout);
    inlet.size = in.text("Size");
    inlet.openShare = in.number("Open share");
    inlet.ponding = in.quantity<Length>("Ponding");
    inlet.length = in.quantity<Length>("Length");
    inlet.floorSlope = in.quantity<Slope>("Floor slope");
    inlet.outletPipe = in.pipe("Outlet pipe");
    inlet.outletHead = in.quantity<Length>("Outlet head");
}

void fillRun(Run& run, const RowCells& in) {
    run.line = in.text("Line");
    run.from = in.text("From");
    run.to = in.text("To");
    run.length = in.quantity<Length>("Length");
    run.pipe = in.pipe("Pipe");
    run.slope = in.quantity<Slope>("Slope");
    run.fixedDown = in.quantity<Length>("Fixed level");
    run.outletLevel = in.quantity<Length>("Outlet level");
    run.outletHighest = in.quantity<Length>("Outlet highest");
    run.outletWater = in.quantity<Length>("Outlet water");
    run.choices = in["Pipe choice"].pipes;
    run.surfaceUp = in["Surface up"].surface;
    run.surfaceDown = in["Surface down"].surface;
    run.trenchWidth = in.quantity<Length>("Trench width");
    run.existing = in.text("Existing") == "yes";
    run.knownUp = in.quantity<Length>("Known invert up");
    run.knownDown = in.quantity<Length>("Known invert down");
    run.approval = in.text("Approval");
}

void fillShot(GroundShot& shot, const RowCells& in) {
    shot.from = in.text("From");
    shot.to = in.text("To");
    shot.at = in.quantity<Length>("At");
    shot.shot = in.text("Shot");
    shot.ground = groundIn(in);
    shot.surface = in["Over it"].surface;
}

void fillCrossing(Crossing& crossing, const RowCells& in) {
    crossing.what = in.text("What");
    crossing.from = in.text("From");
    crossing.to = in.text("To");
    crossing.at = in.quantity<Length>("At");
    crossing.depth = in.quantity<Length>("Its depth");
    crossing.diameter = in.quantity<Length>("Its diameter");
    if (const std::optional<double>& place = in.number("Passes")) crossing.passesAbove = *place == 0;
    crossing.marked = in.choice("Marked", Marked::NotSaid, Marked::Yes);
    crossing.ticket = in.text("Ticket");
    crossing.goodFrom = in.date("Good from");
    crossing.goodUntil = in.date("Good until");
}

void fillOutlet(Outlet& outlet, const RowCells& in) {
    outlet.node = in.text("Outlet");
    outlet.across = in.quantity<Length>("Rim across");
    outlet.openShare = in.number("Open share");
    outlet.weepHole = in.quantity<Length>("Weep hole");
    outlet.groundFalls = in.quantity<Slope>("Ground falls");
    if (const std::optional<double>& answer = in.number("Check valve")) outlet.checkValve = *answer == 0;
    outlet.apronStone = in.quantity<Length>("Apron stone");
    outlet.otherFlow = in.quantity<Flow>("Other flow");
    outlet.bottom = in.quantity<Length>("Bottom");
    outlet.sideSlope = in.number("Side slope");
    outlet.deep = in.quantity<Length>("Deep");
    outlet.slope = in.quantity<Slope>("Slope");
    outlet.roughness = in.number("Roughness");
    outlet.flowLine = in.quantity<Length>("Flow line");
    outlet.lotLine = in.quantity<Length>("To lot line");
    outlet.walk = in.quantity<Length>("To walk");
    outlet.foundation = in.quantity<Length>("To foundation");
}

void fillPump(Pump& pump, const RowCells& in) {
    pump.node = in.text("Basin");
    pump.inside = in.quantity<Length>("Inside diameter");
    pump.floor = in.quantity<Length>("Floor");
    pump.on = in.quantity<Length>("Pump on");
    pump.off = in.quantity<Length>("Pump off");
    pump.curve = in["Pump curve"].curve;
    pump.pipe = in.pipe("Discharge pipe");
    pump.length = in.quantity<Length>("Discharge length");
    pump.elbows = in.number("Elbows");
    pump.end = in.quantity<Length>("Discharge level");
    if (const std::optional<double>& answer = in.number("Check valve")) pump.checkValve = *answer == 0;
    pump.powerOut = in.choice("Power out", PowerOut::NotSaid, PowerOut::Nothing);
    pump.groundwater = in.quantity<Length>("Groundwater");
    pump.outside = in.quantity<Length>("Outside diameter");
    pump.weight = in.quantity<Weight>("Empty weight");
    pump.concrete = in.quantity<Volume>("Anchor concrete");
}

void fillLotPoint(LotPoint& point, const RowCells& in) {
    point.name = in.text("Point");
    point.what = in.choice("What", LotThing::NotSaid, LotThing::Building);
    point.object = in.text("Object");
    point.east = in.quantity<Length>("X");
    point.north = in.quantity<Length>("Y");
    point.ties = {in.text("Tie 1"), in.text("Tie 2"), in.text("Tie 3")};
    point.side = in.choice("Side", Hand::NotSaid, Hand::Left);
    point.turns = in.choice("Line turns", Hand::NotSaid, Hand::Left);
    point.longitude = in.quantity<Angle>("Longitude");
    point.latitude = in.quantity<Angle>("Latitude");
}

void fillLotTape(LotTape& tape, const RowCells& in) {
    tape.from = in.text("From");
    tape.to = in.text("To");
    tape.wallEnd = in.text("Wall to");
    tape.length = in.quantity<Length>("Length");
}

void append(std::vector<Unusable>& all, std::vector<Unusable> more) {
    all.insert(all.end(), std::make_move_iterator(more.begin()), std::make_move_iterator(more.end()));
}

Unusable refusal(std::string heading, std::string typed, const Error& error) {
    return {std::move(heading),
            std::move(typed),
            {error.sentence(Language::English), error.sentence(Language::Spanish)}};
}

PitFacts readPitFacts(const Grid& grid, UnitSystem units, std::vector<Unusable>& unusable) {
    RowCells in(InputTable::PitFacts, units);
    in.read(formCells(InputTable::PitFacts, grid));
    append(unusable, in.unusable());
    PitFacts facts;
    for (const InputColumn& column : inputColumns(InputTable::PitFacts)) {
        const std::optional<double>& number = in.number(column.heading);
        if (!number) continue;
        try {
            if (column.kind == CellKind::Choice)
                facts.set(column.heading, in.text(column.heading), units);
            else
                facts.set(column.heading, *number / info(unitOf(column.kind)).si(units), units);
        } catch (const Error& error) {
            unusable.push_back(refusal(column.heading, plain(*number, 6), error));
        }
    }
    return facts;
}

Pit readPit(const JobTables& tables, UnitSystem units) {
    RowCells in(InputTable::Pit, units);
    in.read(formCells(InputTable::Pit, tables.pit));
    Pit pit;
    pit.node = in.text("Tee at node");
    pit.length = in.quantity<Length>("Length");
    pit.width = in.quantity<Length>("Width");
    pit.rockDepth = in.quantity<Length>("Rock depth");
    pit.soilOver = in.quantity<Length>("Soil over it");
    pit.voids = in.number("Voids");
    pit.sideShare = in.number("Side share");
    pit.rate = in.quantity<SoilRate>("Design soak rate");
    pit.soakOpen = in.text("Soak test") == "open";
    pit.soakRefused = in.text("Soak test") == "refused";
    pit.unusable = in.unusable();
    pit.facts = readPitFacts(tables.pitFacts, units, pit.unusable);
    return pit;
}

JobFacts readFacts(const Grid& grid, UnitSystem units) {
    RowCells in(InputTable::Facts, units);
    in.read(formCells(InputTable::Facts, grid));
    const auto answer = [&in](const char* label) { return in.choice(label, Answer::NotSaid, Answer::Yes); };
    JobFacts facts;
    facts.name = in.text("Job");
    facts.owner = in.text("Owner");
    facts.site = in.text("Site");
    facts.quoteDate = in.date("Quote date");
    facts.today = in.date("Today");
    facts.agreed = in.date("Agreed");
    facts.returnYears = in.number("Return period").value_or(facts.returnYears);
    facts.duration = in.quantity<Duration>("Duration");
    facts.rain = in.quantity<RainRate>("Rain");
    facts.soil = in.text("Soil");
    facts.outlet = in.text("Outlet");
    facts.permission = in.text("Outlet permission");
    facts.ticket = {.number = in.text("Locate ticket"),
                    .called = in.date("Ticket called"),
                    .from = in.date("Ticket good from"),
                    .until = in.date("Ticket good until")};
    facts.septic = answer("Septic");
    facts.well = answer("Well");
    facts.association = answer("Owners' association");
    facts.irrigation = answer("Irrigation or pool lines");
    facts.protection = in.choice("Trench protection", Protection::NotSaid, Protection::Sloping);
    facts.rulesAsked = answer("Rules fit this county");
    facts.levels = static_cast<std::size_t>(in.number("Shots with a level").value_or(0));
    facts.unusable = in.unusable();
    return facts;
}

// One rule's value as it stands in its cell.
void setRule(Ruleset& rules, const std::string& key, const Cell& cell, UnitSystem units) {
    if (const double* number = std::get_if<double>(&cell)) return rules.set(key, *number, units);
    const std::string words = wordsOf(cell);
    const std::optional<cells::TypedNumber> number = cells::typedNumber(words);
    if (number && number->unit.empty()) return rules.set(key, number->value, units);
    rules.set(key, words, units);
}

Ruleset readRules(const Grid& grid, UnitSystem units, std::vector<Unusable>& unusable) {
    Ruleset rules;
    if (grid.rows == 0) return rules;
    const auto stands = [&grid](const char* heading) {
        for (std::size_t column = 0; column < grid.columns; ++column)
            if (nameKey(wordsOf(grid.at(0, column))) == nameKey(heading)) return true;
        return false;
    };
    std::set<std::string> seen;
    const auto take = [&](const Cell& keyCell, const Cell& value) {
        const std::string key = wordsOf(keyCell);
        if (key.empty()) return;
        if (key == errorMark || wordsOf(value) == errorMark) {
            const std::string name = key == errorMark ? "Key" : key;
            unusable.push_back(
                {name,
                 "error",
                 {"Rules: " + name + " holds an error", "Rules: " + name + " contiene un error"}});
        } else if (!seen.insert(nameKey(key)).second) {
            unusable.push_back({key,
                                wordsOf(value),
                                {"Rules: " + key + " stands twice", "Rules: " + key + " está dos veces"}});
        } else {
            try {
                setRule(rules, key, value, units);
            } catch (const Error& error) {
                unusable.push_back(refusal(key, wordsOf(value), error));
            }
        }
    };
    if (stands("Key") && stands("Value")) {
        HeadedTable headed(InputTable::Rules, grid);
        for (std::size_t row = 0; row < headed.rows(); ++row) {
            const std::vector<const Cell*>& cells = headed.cells(row);
            take(*cells[0], *cells[1]);
        }
    } else {
        if (grid.columns != 2)
            throw Error(Error::Kind::BadArgument, "rules",
                        Text{"Rules: two columns, key and value", "Rules: dos columnas, clave y valor"});
        for (std::size_t row = 0; row < grid.rows; ++row) take(grid.at(row, 0), grid.at(row, 1));
    }
    return rules;
}

bool holdsAnything(const Grid& grid) {
    for (const Cell& cell : grid.cells)
        if (!wordsOf(cell).empty()) return true;
    return false;
}

// The pasted table; none where it is blank or cannot be read, which is told.
std::optional<RainTable> readRain(const Grid& grid, UnitSystem units, std::vector<Unusable>& unusable) {
    if (!holdsAnything(grid)) return std::nullopt;
    std::vector<TableCell> cells;
    cells.reserve(grid.cells.size());
    for (const Cell& cell : grid.cells) {
        if (wordsOf(cell) == errorMark) {
            unusable.push_back({"Rain",
                                "error",
                                {"a cell of the table on Rain holds an error",
                                 "una celda de la tabla de Rain contiene un error"}});
            return std::nullopt;
        }
        if (const double* number = std::get_if<double>(&cell))
            cells.emplace_back(*number);
        else if (const std::string* text = std::get_if<std::string>(&cell))
            cells.emplace_back(*text);
        else
            cells.emplace_back();
    }
    try {
        const Length unit = units == UnitSystem::Metric ? Length::millimetres(1) : Length::inches(1);
        return RainTable::parse(cells, grid.columns, unit, "Rain");
    } catch (const Error& error) {
        unusable.push_back(refusal("Rain", "", error));
        return std::nullopt;
    }
}

bool cannotBeUsed(const std::vector<Unusable>& unusable, std::string_view heading) {
    for (const Unusable& cell : unusable)
        if (cell.heading == heading) return true;
    return false;
}

// The rain of the return period and the duration, where none is typed.
void takeRain(JobFacts& facts, const RainTable& table) {
    if (facts.rain || !facts.duration || cannotBeUsed(facts.unusable, "Rain") ||
        cannotBeUsed(facts.unusable, "Return period"))
        return;
    try {
        facts.rain = table.intensity(*facts.duration, facts.returnYears);
        facts.rainFromTable = true;
    } catch (const Error& error) {
        facts.unusable.push_back(refusal("Rain", "", error));
    }
}

std::optional<PeakAsked> readPeak(const Grid& grid, UnitSystem units, const std::optional<RainTable>& rain,
                                  std::vector<Unusable>& unusable) {
    RowCells in(InputTable::Peak, units);
    in.read(formCells(InputTable::Peak, grid));
    append(unusable, in.unusable());
    if (in.text("Count travel time") != "yes") return std::nullopt;
    if (!rain) {
        if (!cannotBeUsed(unusable, "Rain"))
            unusable.push_back({"Count travel time",
                                "yes",
                                {"travel time needs the table on Rain",
                                 "el tiempo de viaje necesita la "
                                 "tabla de Rain"}});
        return std::nullopt;
    }
    return PeakAsked{in.choice("Travel at", Travel::Flow, Travel::Flow), in.number("Roughness"), *rain};
}

}  // namespace

std::vector<LaidNode> readLaid(const Grid& table, UnitSystem units) {
    return readRows<LaidNode>(InputTable::AsBuilt, table, units, [](LaidNode& laid, const RowCells& in) {
        laid.node = in.text("Node");
        laid.invert = in.quantity<Length>("Invert");
        laid.ties = {in.text("Tie 1"), in.text("Tie 2")};
    });
}

Job readJob(const JobTables& tables, UnitSystem units) {
    Job job;
    job.units = units;
    job.facts = readFacts(tables.facts, units);
    job.nodes = readRows<Node>(InputTable::Nodes, tables.nodes, units, fillNode);
    job.inlets = readRows<JobInlet>(InputTable::Water, tables.water, units, fillInlet);
    job.runs = readRows<Run>(InputTable::Runs, tables.runs, units, fillRun);
    job.firstRunRow = tables.runsHeadingRow + HeadedTable(InputTable::Runs, tables.runs).headingRows();
    job.shots = readRows<GroundShot>(InputTable::Ground, tables.ground, units, fillShot);
    job.crossings = readRows<Crossing>(InputTable::Crossings, tables.crossings, units, fillCrossing);
    job.outlets = readRows<Outlet>(InputTable::Outlets, tables.outlets, units, fillOutlet);
    job.pumps = readRows<Pump>(InputTable::Pump, tables.pump, units, fillPump);
    job.pit = readPit(tables, units);
    job.rules = readRules(tables.rules, units, job.facts.unusable);
    // A bad table of rain is told where something asks for it.
    std::vector<Unusable> ofTable;
    const std::optional<RainTable> rain = readRain(tables.rain, units, ofTable);
    const bool rainNeeded = !job.facts.rain && !cannotBeUsed(job.facts.unusable, "Rain");
    const bool peakAsked = holdsAnything(tables.peak);
    if (rainNeeded || peakAsked) append(job.facts.unusable, ofTable);
    if (rain) takeRain(job.facts, *rain);
    job.peak = readPeak(tables.peak, units, rain, job.facts.unusable);
    job.lotPoints = readRows<LotPoint>(InputTable::Layout, tables.layout, units, fillLotPoint);
    job.lotTapes = readRows<LotTape>(InputTable::Tapes, tables.tapes, units, fillLotTape);
    drawLot(job);
    return job;
}

}  // namespace trenchbook
