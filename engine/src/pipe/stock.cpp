#include "trenchbook/pipe/stock.h"

#include <array>
#include <charconv>
#include <cmath>
#include <vector>

#include "core/names.h"
#include "trenchbook/core/error.h"

namespace trenchbook {
namespace {

enum class Make { Sdr35, Schedule40, D2729, Corrugated, DualWall, Sn4, Sn8 };

// One size: the standard's outside diameter and least wall, inches. Bore = outside - 2 wall.
struct Walled {
    double nominal, outside, wall;
};
// Profile wall pipe: bore and outside.
struct Profiled {
    double nominal, bore, outside;
};

constexpr std::array sdr35 = {Walled{4, 4.215, 0.120},   Walled{6, 6.275, 0.180},
                              Walled{8, 8.400, 0.240},   Walled{10, 10.500, 0.300},
                              Walled{12, 12.500, 0.360}, Walled{15, 15.300, 0.437}};
constexpr std::array schedule40 = {
    Walled{1.5, 1.900, 0.145}, Walled{2, 2.375, 0.154},  Walled{2.5, 2.875, 0.203}, Walled{3, 3.500, 0.216},
    Walled{4, 4.500, 0.237},   Walled{5, 5.563, 0.258},  Walled{6, 6.625, 0.280},   Walled{8, 8.625, 0.322},
    Walled{10, 10.750, 0.365}, Walled{12, 12.750, 0.406}};
constexpr std::array d2729 = {Walled{3, 3.250, 0.070}, Walled{4, 4.215, 0.075}, Walled{6, 6.275, 0.100}};
constexpr std::array corrugated = {Profiled{3, 3.0, 3.6}, Profiled{4, 4.0, 4.6}, Profiled{6, 6.0, 6.9}};
constexpr std::array dualWall = {Profiled{4, 4.0, 4.8}, Profiled{6, 6.0, 6.9}, Profiled{8, 8.0, 9.1},
                                 Profiled{10, 10.0, 11.4}, Profiled{12, 12.0, 14.5}};

// Pipe that goes by its outside diameter in mm: that, its least wall in mm, and the class of sizes in inches with which it
// shares least slopes, trench widths and pieces of other trades, such as grates.
struct MetricWalled {
    double outside, wall, nominal;
};
constexpr std::array sn4 = {MetricWalled{110, 3.2, 4}, MetricWalled{125, 3.2, 5},  MetricWalled{160, 4.0, 6},
                            MetricWalled{200, 4.9, 8}, MetricWalled{250, 6.2, 10}, MetricWalled{315, 7.7, 12},
                            MetricWalled{400, 9.8, 15}};
constexpr std::array sn8 = {MetricWalled{110, 3.2, 4},  MetricWalled{125, 3.7, 5},
                            MetricWalled{160, 4.7, 6},  MetricWalled{200, 5.9, 8},
                            MetricWalled{250, 7.3, 10}, MetricWalled{315, 9.2, 12},
                            MetricWalled{400, 11.7, 15}};

struct MakeInfo {
    std::string_view name;
    Joint joint;  // as a drain is usually laid of it; common practice, no source
    double roughness;
    const char* roughnessSource;
};
const MakeInfo& info(Make make) {
    static constexpr const char* smooth =
        "0.011, working value for smooth plastic in use (common practice); published 0.010 (City of "
        "Winchester, Indiana, Table 4, PVC) and 0.009-0.011 (FHWA HEC-22, from memory)";
    static constexpr std::array<MakeInfo, 7> makes = {
        MakeInfo{"SDR35", Joint::SolventWeld, 0.011, smooth},
        MakeInfo{"SCH40", Joint::SolventWeld, 0.011, smooth},
        MakeInfo{"D2729", Joint::SolventWeld, 0.011, smooth},
        MakeInfo{
            "CORRUGATED", Joint::Coupling, 0.020,
            "0.020, working value within 0.018-0.025 for corrugated polyethylene (FHWA HEC-22, from memory)"},
        MakeInfo{
            "DUALWALL", Joint::Gasket, 0.012,
            "0.012, working value within 0.009-0.015 for corrugated polyethylene with a smooth inside (FHWA "
            "HEC-22, from memory)"},
        MakeInfo{"SN4", Joint::Gasket, 0.011, smooth},
        MakeInfo{"SN8", Joint::Gasket, 0.011, smooth}};
    return makes[static_cast<std::size_t>(make)];
}

bool soldByOutside(Make make) { return make == Make::Sn4 || make == Make::Sn8; }

// `1-1/2`, `4`: how sizes are written in stock names.
std::string sizeText(double nominal) {
    const double whole = std::floor(nominal);
    const std::string text = plain(whole);
    return nominal == whole ? text : text + "-1/2";  // the only broken size in stock is the half inch
}

Pipe pipeOf(Make make, double nominal, Length bore, Length outside, bool perforated) {
    const std::string number = soldByOutside(make) ? plain(outside.millimetres(), 0) : sizeText(nominal);
    return {.name = number + " " + std::string(info(make).name) + (perforated ? " PERF" : ""),
            .system = std::string(info(make).name),
            .nominal = nominal,
            .bore = bore,
            .outside = outside,
            .roughness = info(make).roughness,
            .joint = info(make).joint,
            .perforated = perforated,
            .soldByOutside = soldByOutside(make)};
}

struct Table {
    std::vector<StockPipe> rows;
    std::vector<Make> makes;  // of each row

    Table() {
        constexpr const char* sdrOutside =
            "outside diameter: summary of ASTM D3034 SDR 35 sewer pipe; least wall: ASTM D3034 (4 and 15 in "
            "from the "
            "summary, the others from memory); bore = outside - 2 x least wall";
        constexpr const char* schedule =
            "ASTM D1785 schedule 40 PVC dimensions (reprint); bore = outside - 2 x least wall";
        constexpr const char* drain = "ASTM D2729 (from memory); bore = outside - 2 x least wall";
        constexpr const char* single =
            "sizes: ASTM F405, scope; bore = nominal; outside from memory, makers differ by some 0.1 in: "
            "measure yours";
        constexpr const char* dual =
            "bore = nominal; outside from memory, makers differ by some 0.1 in: measure yours";
        for (const Walled& row : sdr35) add(Make::Sdr35, row, sdrOutside);
        for (const Walled& row : schedule40) add(Make::Schedule40, row, schedule);
        for (const Walled& row : d2729) add(Make::D2729, row, drain);
        for (const Profiled& row : corrugated) add(Make::Corrugated, row, single);
        for (const Profiled& row : dualWall) add(Make::DualWall, row, dual);
        constexpr const char* european =
            "outside diameter and least wall: plain wall PVC-U pipe to EN 1401-1, SN 4 (SDR 41) and SN 8 (SDR 34), a "
            "maker's table (Plast Mec, drainage pipes); bore = outside - 2 x least wall";
        for (const MetricWalled& row : sn4) add(Make::Sn4, row, european);
        for (const MetricWalled& row : sn8) add(Make::Sn8, row, european);
        // Behind the solid pipe, which a make's size means by itself.
        constexpr const char* holes = "ASTM D2729 (from memory), perforated; bore = outside - 2 x least wall";
        constexpr const char* slits =
            "sizes: ASTM F405, scope, perforated; bore = nominal; outside from memory, makers differ by some 0.1 in: "
            "measure yours";
        perforated_ = true;
        for (const Walled& row : d2729) add(Make::D2729, row, holes);
        for (const Profiled& row : corrugated) add(Make::Corrugated, row, slits);
    }

  private:
    void add(Make make, const Walled& row, const char* source) {
        add(make, row.nominal, row.outside - 2 * row.wall, row.outside, row.wall, source);
    }
    void add(Make make, const Profiled& row, const char* source) {
        add(make, row.nominal, row.bore, row.outside, (row.outside - row.bore) / 2, source);
    }
    void add(Make make, const MetricWalled& row, const char* source) {
        const Length outside = Length::millimetres(row.outside), wall = Length::millimetres(row.wall);
        add(make, row.nominal, outside - wall * 2, outside, wall, source);
    }
    void add(Make make, double nominal, double bore, double outside, double wall, const char* source) {
        add(make, nominal, Length::inches(bore), Length::inches(outside), Length::inches(wall), source);
    }
    void add(Make make, double nominal, Length bore, Length outside, Length wall, const char* source) {
        rows.push_back({.pipe = pipeOf(make, nominal, bore, outside, perforated_),
                        .wall = wall,
                        .source = source,
                        .roughnessSource = info(make).roughnessSource});
        makes.push_back(make);
    }
    bool perforated_ = false;
};
const Table& table() {
    static const Table built;
    return built;
}

struct Alias {
    std::string_view spelled;  // as names::RunTogether gives it
    Make make;
};
constexpr std::array aliases = {
    Alias{"SDR35", Make::Sdr35},
    Alias{"SCH40", Make::Schedule40},
    Alias{"D2729", Make::D2729},
    Alias{"CORRUGATED", Make::Corrugated},
    Alias{"DUALWALL", Make::DualWall},
    Alias{"SCHEDULE40", Make::Schedule40},
    Alias{"CORR", Make::Corrugated},
    Alias{"S40", Make::Schedule40},
    Alias{"S35", Make::Sdr35},
    Alias{"D3034", Make::Sdr35},
    Alias{"ASTMD3034", Make::Sdr35},
    Alias{"2729", Make::D2729},
    Alias{"ASTMD2729", Make::D2729},
    Alias{"D1785", Make::Schedule40},
    Alias{"CEDULA40", Make::Schedule40},
    Alias{"CED40", Make::Schedule40},
    Alias{"SINGLEWALL", Make::Corrugated},
    Alias{"CORRUGADO", Make::Corrugated},
    Alias{"DOUBLEWALL", Make::DualWall},
    Alias{"DOBLEPARED", Make::DualWall},
    Alias{"SN4", Make::Sn4},
    Alias{"SN8", Make::Sn8},
    Alias{"MMSN4", Make::Sn4},
    Alias{"MMSN8", Make::Sn8},
    Alias{"EN1401SN4", Make::Sn4},
    Alias{"EN1401SN8", Make::Sn8},
};

bool isDigit(char c) { return c >= '0' && c <= '9'; }
bool isLetter(char c) { return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z'); }
char upper(char c) { return c >= 'a' && c <= 'z' ? static_cast<char>(c - 32) : c; }

void skipBlanks(std::string_view& text) {
    while (!text.empty() && (text.front() == ' ' || text.front() == '\t')) text.remove_prefix(1);
}

std::optional<double> takeNumber(std::string_view& text) {
    double value = 0;
    if (text.empty() || !(isDigit(text.front()) || text.front() == '.')) return std::nullopt;
    const auto read =
        std::from_chars(text.data(), text.data() + text.size(), value, std::chars_format::fixed);
    if (read.ec != std::errc()) return std::nullopt;
    text.remove_prefix(static_cast<std::size_t>(read.ptr - text.data()));
    return value;
}

// `4`, `1.5`, `1-1/2`, `1 1/2`, and the inch mark behind it.
std::optional<double> takeSize(std::string_view& text) {
    std::optional<double> size = takeNumber(text);
    if (!size) return std::nullopt;
    std::string_view more = text;
    if (!more.empty() && (more.front() == '-' || more.front() == ' ')) {
        more.remove_prefix(1);
        const std::optional<double> above = takeNumber(more);
        if (above && !more.empty() && more.front() == '/') {
            more.remove_prefix(1);
            const std::optional<double> below = takeNumber(more);
            if (below && *below > 0 && *above < *below) {
                size = *size + *above / *below;
                text = more;
            }
        }
    }
    skipBlanks(text);
    if (text.starts_with('"')) {
        text.remove_prefix(1);
    } else {
        std::size_t letters = 0;
        while (letters < text.size() && isLetter(text[letters])) ++letters;
        const std::string_view word = text.substr(0, letters);
        const bool inches = (letters == 2 && upper(word[0]) == 'I' && upper(word[1]) == 'N') ||
                            (letters == 4 && upper(word[0]) == 'I' && upper(word[1]) == 'N' &&
                             upper(word[2]) == 'C' && upper(word[3]) == 'H');
        if (inches) text.remove_prefix(letters);
    }
    skipBlanks(text);
    return size;
}

// The "DN" in front of sizes in mm.
void takeNominalDiameter(std::string_view& text) {
    if (text.size() < 2 || upper(text[0]) != 'D' || upper(text[1]) != 'N') return;
    text.remove_prefix(2);
    skipBlanks(text);
}

std::optional<Make> makeSpelled(std::string_view word) {
    for (const Alias& alias : aliases)
        if (alias.spelled == word) return alias.make;
    return std::nullopt;
}

// Takes the word for holes in the wall from the front or the back of what is spelled: "PERF", "perforated".
bool takePerforated(std::string_view& word) {
    for (std::string_view holed : {"PERFORATED", "PERFORADO", "PERF"}) {
        if (word.starts_with(holed))
            word.remove_prefix(holed.size());
        else if (word.ends_with(holed))
            word.remove_suffix(holed.size());
        else
            continue;
        return true;
    }
    return false;
}

struct Named {
    std::optional<Make> make = {};
    bool perforated = false;
};
// The make, with or without its material before or behind: "PVC SDR-35", "sch40 pipe", "D2729 perf".
Named makeNamed(std::string_view text) {
    const names::RunTogether typed(text);
    std::string_view word = typed.view();
    const bool perforated = takePerforated(word);
    if (std::optional<Make> found = makeSpelled(word)) return {found, perforated};
    for (std::string_view material : {"PVC", "HDPE", "PE"})
        if (word.starts_with(material)) {
            word.remove_prefix(material.size());
            break;
        }
    for (std::string_view ending : {"PIPE", "PVC", "HDPE"})
        if (word.ends_with(ending)) word.remove_suffix(ending.size());
    return {makeSpelled(word), perforated};
}

double numberInFront(const Pipe& pipe) {
    return pipe.soldByOutside ? std::round(pipe.outside->millimetres()) : pipe.nominal;
}

// What to offer instead: the sizes of the make that was named, else the makes in the size that was named.
Text nearest(std::optional<double> size, std::optional<Make> make) {
    std::string names;
    for (std::size_t row = 0; row < table().rows.size(); ++row) {
        const Pipe& pipe = table().rows[row].pipe;
        if (pipe.perforated) continue;
        if (make ? table().makes[row] == *make : size && numberInFront(pipe) == *size)
            names += (names.empty() ? "" : ", ") + pipe.name;
    }
    if (names.empty()) names = "4 SDR35, 6 SDR35, 4 SCH40, 4 D2729, 4 CORRUGATED";
    return Text{names + ", or a bore", names + ", o un diámetro interior"};
}

}  // namespace

std::string sizeNumber(const Pipe& pipe) {
    return pipe.soldByOutside ? plain(pipe.outside->millimetres(), 0) : plain(pipe.nominal);
}
std::string sizeWithUnit(const Pipe& pipe) { return sizeNumber(pipe) + (pipe.soldByOutside ? " mm" : " in"); }

std::span<const StockPipe> stock() { return table().rows; }

const Pipe* stockSize(std::string_view system, double nominal) {
    for (const StockPipe& row : table().rows)
        if (row.pipe.system == system && row.pipe.nominal == nominal) return &row.pipe;
    return nullptr;
}

const Pipe* nextSmaller(const Pipe& pipe) {
    const Pipe* next = nullptr;
    for (const StockPipe& row : stock())
        if (row.pipe.system == pipe.system && row.pipe.perforated == pipe.perforated &&
            row.pipe.nominal < pipe.nominal && (next == nullptr || row.pipe.nominal > next->nominal))
            next = &row.pipe;
    return next;
}

bool fitsInto(const Pipe& pipe, std::string_view system) {
    // Outside diameters of the standards are given to a thousandth of an inch.
    constexpr double printed = 0.0005;
    const Pipe* own = stockSize(system, pipe.nominal);
    return own != nullptr && pipe.outside && own->joint == pipe.joint &&
           std::fabs((*own->outside - *pipe.outside).inches()) < printed;
}

Pipe stockPipe(std::string_view name) {
    std::string_view rest = name;
    skipBlanks(rest);
    takeNominalDiameter(rest);
    const std::optional<double> size = takeSize(rest);
    if (size && rest.empty()) return bareBore(Length::inches(*size));

    const Named named = size ? makeNamed(rest) : Named{};
    const std::optional<Make> make = named.make;
    if (make) {
        const Table& known = table();
        for (std::size_t row = 0; row < known.rows.size(); ++row)
            if (known.makes[row] == *make && numberInFront(known.rows[row].pipe) == *size &&
                known.rows[row].pipe.perforated == named.perforated)
                return known.rows[row].pipe;
    }
    throw Error(Error::Kind::BadArgument, "pipe", "\"" + std::string(name.substr(0, 60)) + "\"",
                nearest(size, make));
}

Pipe bareBore(Length bore) {
    if (!(bore.si() > 0) || std::isinf(bore.si()))
        throw Error(Error::Kind::BadArgument, "pipe", plain(bore.inches()) + " in",
                    {"a stock name such as 4 SDR35, or a bore above 0",
                     "un nombre como 4 SDR35, o un diámetro interior mayor que 0"});
    return {.nominal = bore.inches(), .bore = bore, .roughness = 0.011};
}

Length outsideOf(const Pipe& pipe) {
    if (!pipe.outside)
        throw Error(Error::Kind::BadArgument, "pipe",
                    Text{"a bare bore of ", "un diámetro interior sin más, de "} +
                        Text::same(plain(pipe.bore.inches()) + " in"),
                    {"a stock name such as 4 SDR35, for the outside matters here",
                     "un nombre comercial como 4 SDR35, pues aquí cuenta el exterior"});
    return *pipe.outside;
}

Length wallOf(const Pipe& pipe) { return (outsideOf(pipe) - pipe.bore) / 2; }

Length invertToOutsideTop(const Pipe& pipe) { return outsideOf(pipe) - wallOf(pipe); }

}  // namespace trenchbook
