// A line of a job drawn from the side.
#include "trenchbook/job/profile_drawing.h"

#include "trenchbook/job/as_built.h"

#include "catalog/drawing_pens.h"
#include "catalog/families.h"
#include "catalog/family_section.h"
#include "catalog/plan_argument.h"

namespace trenchbook::addin {
namespace {

enum Place : std::size_t { Line = planArgumentsEnd, Width, Height };
constexpr std::size_t laidTable = 3;  // of the later ones

ProfileDrawing drawn(const Arguments& a) {
    const auto [tables, grades] = planned(a);
    ProfileAsked asked{.line = a.text(Line, "")};
    asked.width = a.quantity(Width, asked.width);
    asked.height = a.quantity(Height, asked.height);
    asked.language = a.language();
    asked.planned.resize(tables->job.runs.size());
    for (const GradeTree& tree : grades->trees)
        for (std::size_t i = 0; i < tree.rows.size() && tree.plan.fits; ++i)
            asked.planned[tree.rows[i]] = {tree.plan.runs[i].invertUp, tree.plan.runs[i].invertDown};
    if (const Grid laid = a.laterTable(laidTable); laid.rows > 0)
        asked.laid = laidInverts(tables->job, readLaid(laid, a.units()));
    return profileOf(tables->job, tables->solved, asked);
}

std::vector<Argument> profileArguments() {
    std::vector<Argument> all = planArguments();
    all.push_back({.name = "line",
                   .measure = Measure::Words,
                   .says = {"name of the line, as Runs has it; left out: the runs without one",
                            "nombre de la línea, como en Runs; sin él: los tramos que no lo tienen"},
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
    all.push_back(size("height", "118 mm", {"of that paper", "de ese papel"}));
    return all;
}

std::vector<Argument> profileLater() {
    std::vector<Argument> all = jobLater();
    all.push_back({.name = "as built",
                   .measure = Measure::Table,
                   .says = {"nodes measured after the work: Node, Invert, as LAYOUT.LAID reads them",
                            "nodos medidos después de la obra: Node, Invert, como los lee LAYOUT.LAID"},
                   .optional = true});
    return all;
}

Function drawing(const char* name, Text says, std::string columns, const std::string& paper,
                 Result (*call)(const Arguments&)) {
    std::string example = name + planExample();
    example.pop_back();
    return {
        .name = name,
        .says = std::move(says),
        .arguments = profileArguments(),
        .later = profileLater(),
        .returns = Returns::NumberBlock,
        .measure = Measure::Plain,
        .columns = std::move(columns),
        .source =
            "levels of the solved job and of its plan, each in a usual drawing scale; common practice, no source",
        .example = example + paper,
        .letters = true,
        .call = call};
}

}  // namespace

std::vector<Function> profileFunctions() {
    return {
        drawing(
            "JOB.PROFILE",
            {"a line from the side on paper, for a chart of points joined by lines: ground, pipe as a band, least cover, "
             "water, plan, other lines, names; millimeters from the left and from below, each pen in cells of its own",
             "una línea vista de lado en el papel, para una gráfica de puntos unidos por líneas: terreno, tubo como "
             "banda, tapado mínimo, agua, plan, otras líneas, nombres; milímetros desde la izquierda y desde abajo, cada "
             "pluma en celdas propias"},
            penColumns(profilePens()), ";;;;;8;4)",
            [](const Arguments& a) -> Result { return penned(drawn(a).strokes, profilePens()); }),
        sectionFunction(),
    };
}

}  // namespace trenchbook::addin
