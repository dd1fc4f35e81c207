// The offer to the owner in plain words, built from the job's numbers; it says why when it is not ready.
#include "buying/money.h"
#include "papers/owner_words.h"

namespace trenchbook::sheets {

Sheet proposalSheet(const JobSize&) {
    using namespace words;
    const std::string notReady =
        joined("\"; \"", {"IF(LEFT(quote_check;2)=\"NO\";MID(quote_check;5;300);\"\")",
                          "IF(owner=\"\";\"the owner is missing on Job\";\"\")",
                          "IF(job_site=\"\";\"the site is missing on Job\";\"\")",
                          "IF(ISNUMBER(quote_date);\"\";\"the quote's date is missing on Job\")",
                          "IF(ISNUMBER(rain_rate);\"\";\"the rain is missing on Job\")",
                          "IF(outlet=\"\";\"the outlet is missing on Job\";\"\")",
                          "IF(outlet_permission=\"\";\"is the outlet allowed? Job: Outlet permission\";\"\")",
                          "IF(" + countOf("Runs.Check", "NO") + ">0;" + countOf("Runs.Check", "NO") +
                              "&\" runs have a NO\";\"\")",
                          "IF(LEFT(pit_verdict;2)=\"NO\";\"the pit: \"&MID(pit_verdict;5;200);\"\")"});
    Paragraphs head;
    head.span = 2;
    head.lines = {
        "=sender_name&IF(sender_address=\"\";\"\";\", \"&sender_address)",
        "=IF(" + notReady + "=\"\";\"\";\"NOT READY TO HAND OUT: \"&" + notReady + ")",
        "=\"For \"&owner&IF(job_site=\"\";\"\";\", \"&job_site)&IF(ISNUMBER(quote_date);\". \"&TEXT(quote_date;\"YYYY-MM-DD\");\"\")",
    };

    Paragraphs scope;
    scope.heading = "What we build";
    scope.span = 2;
    scope.linesHigh = 2;
    scope.lines = {
        "=\"Buried drain lines, \"&TEXT(SUM([Trench.Length]);\"0\")&" + length + "&\" in all: \"&" + pipes() +
            "&\" (risers included).\"",
        "=\"They take in \"&" + inlets() +
            "&\". \"&IF(COUNTIF([Nodes.Kind];\"cleanout\")=0;\"\";\"They can be flushed from \"&" +
            counted("cleanout", "cleanout", "cleanouts") + "&\" at the surface.\")",
        "=\"They end at: \"&outlet&IF(" + hasPit + ";\"; and in \"&" + pit() +
            "&\", wrapped in fabric, with an upturned tee that overflows on the ground when the pit is full\";\"\")&\".\"",
        "=IF(COUNT([Runs.Slope %])=0;\"\";\"Every pipe falls toward its end, at least \"&TEXT(MIN([Runs.Slope %]);\"0.0%\")&\", so that it empties after each rain.\")",
        "=" + storm(),
        "=\"Sod is cut, kept and laid back; about \"&TEXT(sod_share;\"0%\")&\" of it is replaced by new. Soil that is left over is hauled away. Pavement is cut straight and restored where the plan crosses it.\"",
    };

    Table clauses;
    clauses.name = "Clauses";
    clauses.columns = {
        {.heading = "About", .kind = Kind::Kept, .width = 34, .wrapped = true},
        {.heading = "What we agree",
         .kind = Kind::Kept,
         .format = show::general,
         .width = 152,
         .wrapped = true},
    };
    clauses.content = {
        {"Rock",
         "Rock, buried concrete or old foundations that a small excavator cannot lift are priced before they are dug."},
        {"Unknown lines",
         "Public lines are marked before we dig. Private lines that nobody showed us, such as sprinkler, pool, dog fence or lighting, are repaired at cost."},
        {"Roots", "Roots over 4 in are cut only after you agree; a tree that needs them may suffer."},
        {"Plants", "Plants in the trench line are moved once with care; we cannot promise that they live."},
        {"Permits",
         "Permits for work outside the lot and for the outlet are yours to hold unless the price lists them."},
        {"Changes",
         "Work that is not described here is a change: it is written down, priced and signed before it is done."},
        {"Payment",
         "=\"Deposit \"&IF(ISNUMBER(price_total);TEXT(deposit;\"#,##0.00\");\"to be set\")&\" on acceptance, half of the rest when the material is on the lot, the remainder after the flush test in your presence.\""},
        {"Warranty",
         "=\"We stand behind our work for \"&{retain.callback}&\" days and fill settled trench once in that time. Not covered: roots, animals, debris, later digging, storms beyond the design.\""},
        {"Right to cancel",
         "=\"Signed at your home, you may cancel within \"&{cancel.days}&\" business days where the state grants it.\""},
        {"What this is not",
         "Not an engineer's design and not legal advice. Local codes and licensed practice decide."},
    };
    clauses.rows = static_cast<int>(clauses.content.size());

    Paragraphs price;
    price.heading = "Price";
    price.span = 2;
    price.linesHigh = 2;
    price.lines = {
        "=IF(OR(LEFT(quote_check;2)=\"NO\";NOT(ISNUMBER(price_total)));\"The price is not ready.\";\"$ \"&TEXT(price_total;\"#,##0.00\")&IF(N(contract_tax)>0;\", sales tax of \"&TEXT(contract_tax;\"#,##0.00\")&\" included\";\"\")&"
        "IF(ISNUMBER(quote_until);\". It holds until \"&TEXT(quote_until;\"YYYY-MM-DD\");\"\")&\".\")",
    };

    Paragraphs cautions;
    cautions.heading = "Please note";
    cautions.span = 2;
    cautions.linesHigh = 9;
    const auto when = [](const std::string& condition, const std::string& text) {
        return "IF(" + condition + ";\"- " + text + "\";\"\")";
    };
    const std::string shallow = "SUMPRODUCT(ISNUMBER(1*[Runs.Cover up])*([Runs.Cover up]<{cover.drive}))>0";
    cautions.lines = {
        "=" +
            joined(
                "CHAR(10)",
                {quote(
                     "- The one-call service (811) is asked before any digging; work starts when every owner of a line has answered."),
                 quote(
                     "- The drain is for rain only: nothing from sinks, sump, pool backwash or septic may be led into it."),
                 when(
                     "outlet_permission<>\"got\"",
                     "Where the water may go is decided by others: ask the road office, the easement's holder or the association before work starts."),
                 when(
                     "ISNUMBER(SEARCH(\"ditch\";outlet))+ISNUMBER(SEARCH(\"curb\";outlet))+ISNUMBER(SEARCH(\"easement\";outlet))>0",
                     "Ditch, curb and easement belong to someone else; their permit comes first."),
                 when(
                     hasPit,
                     "A soak test is no promise: ground water rises and falls with the season, and soil clogs in time."),
                 when(
                     hasPit,
                     "A pit may count as a drainage well; the state's injection-well office says whether it must be registered."),
                 when("AND(" + hasPit + ";OR(has_septic<>\"no\";has_well<>\"no\"))",
                      "The health department sets the distance of a pit from septic systems and wells."),
                 when("has_hoa<>\"no\"", "The owners' association may have to agree; that is yours to ask."),
                 when("has_irrigation<>\"no\"",
                      "Sprinkler and pool lines are private and nobody marks them; show us where they run."),
                 when(
                     "N(deepest_cut)>=IF(units=\"metric\";1.22;4)",
                     "Parts of the trench are 4 ft deep or more: keep children and pets away while it is open."),
                 when("COUNT([Runs.Cover up])>0",
                      "Keep cars and trucks off the lines except where they pass under the drive.")}),
    };

    Paragraphs sign;
    sign.span = 2;
    sign.lines = {"Accepted: ______________________________________     Date: __________________"};
    sign.linesHigh = 2;

    Sheet sheet;
    sheet.name = "Proposal";
    sheet.title = "Proposal";
    sheet.purpose = "Drainage work, as described here.";
    sheet.parts = {head, scope, price, clauses, cautions, sign};
    sheet.widths = {34, 152};
    sheet.landscape = false;
    return sheet;
}

}  // namespace trenchbook::sheets
