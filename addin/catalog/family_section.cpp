// The pit of a job cut open.
#include "catalog/family_section.h"
#include "catalog/drawing_pens.h"
#include "catalog/job_argument.h"
#include "catalog/rain_table.h"
#include "trenchbook/job/pit_section.h"

namespace trenchbook::addin {
namespace {

constexpr std::size_t rainIndex = 9;  // of the job's arguments
enum Place : std::size_t { StormRain = 13, StormHours, StormShape, Width, Height };

Result section(const Arguments& a) {
    const std::shared_ptr<const SolvedTables> tables = solvedTables(a);
    PitStormAsked storm;
    if (a.given(StormRain)) storm.rain = a.quantity<Length>(StormRain);
    storm.lasts = a.quantity(StormHours, storm.lasts);
    storm.shape = a.text(StormShape, storm.shape);
    if (holdsAnything(a, rainIndex)) storm.table = rainTable(a, rainIndex);
    const Length width = a.quantity(Width, PitSection().width);
    const Length height = a.quantity(Height, PitSection().height);
    std::optional<PitSection> pit = pitSectionOf(tables->job, tables->solved, storm);
    if (!pit) return penned({}, pitPens());
    pit->width = width;
    pit->height = height;
    pit->language = a.language();
    return penned(pitDrawing(*pit).strokes, pitPens());
}

std::vector<Argument> sectionArguments() {
    std::vector<Argument> all = jobArguments();
    all.push_back(
        {.name = "storm rain",
         .measure = Measure::Inches,
         .says =
             {"depth of the whole storm; left out: from the rain table, for the return period of the facts",
              "altura de toda la tormenta; sin ella: de la tabla de lluvia, para el período de retorno de la obra"},
         .optional = true,
         .limits = aboveZero});
    all.push_back({.name = "storm hours",
                   .measure = Measure::Hours,
                   .says = {"how long it lasts; the types need 24", "cuánto dura; los tipos necesitan 24"},
                   .fallback = "24",
                   .optional = true,
                   .limits = aboveZero});
    all.push_back(
        {.name = "storm shape",
         .measure = Measure::Words,
         .says =
             {"\"type I\", \"type IA\", \"type II\", \"type III\", \"nested\" (alternating blocks), \"even\"",
              "\"type I\", \"type IA\", \"type II\", \"type III\", \"nested\" (bloques alternos), \"even\" (pareja)"},
         .fallback = "\"type II\"",
         .optional = true});
    const auto size = [](const char* name, const char* fallback, Text says) {
        return Argument{.name = name,
                        .measure = Measure::Inches,
                        .says = std::move(says),
                        .fallback = fallback,
                        .optional = true,
                        .limits = aboveZero};
    };
    all.push_back(size("width", "252 mm", {"of the paper that it may take", "del papel que puede ocupar"}));
    all.push_back(size("height", "130 mm", {"of that paper", "de ese papel"}));
    return all;
}

}  // namespace

Function sectionFunction() {
    std::string example = "JOB.PIT.SECTION" + jobExample();
    example.pop_back();
    return {
        .name = "JOB.PIT.SECTION",
        .says =
            {"the pit cut open on paper, for a chart of points joined by lines: ground, rock, soil, tee, water at its "
             "highest, seasonal high water, levels, and the storm's course; millimeters from the left and from below, "
             "each pen in cells of its own",
             "el pozo cortado en el papel, para una gráfica de puntos unidos por líneas: terreno, piedra, suelo, te, "
             "agua más alta, nivel freático alto, cotas, y el curso de la tormenta; milímetros desde la izquierda y "
             "desde abajo, cada pluma en celdas propias"},
        .arguments = sectionArguments(),
        .later = jobLater(),
        .returns = Returns::NumberBlock,
        .measure = Measure::Plain,
        .columns = penColumns(pitPens()),
        .source =
            "levels of the solved job, the storm as PIT.STORM and RAIN.STORM have it, each axis in a usual scale; "
            "common practice, no source",
        .example =
            example +
            "; ; {\"Tee at node\";\"Out\"|\"Length\";10|\"Width\";4|\"Rock depth\";3|\"Design soak rate\";1}; ; ; ; ; ; ; 4; 24; \"type II\")",
        .letters = true,
        .call = section};
}

}  // namespace trenchbook::addin
