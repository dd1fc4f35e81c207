// The offer to the owner in plain words, built from the job's numbers; it says why when it is not ready.
#include "buying/money.h"
#include "papers/owner_words.h"

namespace trenchbook::sheets {

Sheet proposalSheet(const JobSize&) {
    using namespace words;
    Paragraphs head;
    head.span = 2;
    head.lines = {
        "=sender_name&IF(sender_address=\"\";\"\";\", \"&sender_address)",
        "=IF(proposal_missing=\"\";\"\";\"NOT READY TO HAND OUT: \"&proposal_missing)",
        "=\"For \"&owner&IF(job_site=\"\";\"\";\", \"&job_site)&IF(ISNUMBER(quote_date);\". \"&TEXT(quote_date;\"YYYY-MM-DD\");\"\")",
    };

    Paragraphs scope;
    scope.heading = "What we build";
    scope.span = 2;
    scope.linesHigh = 2;
    scope.lines = {
        "=\"Buried drain lines, \"&TEXT(qty_pipe_length;\"0\")&" + length +
            "&\" in all: \"&said_pipes&\" (risers included).\"",
        "=\"They take in \"&said_inlets&\". \"&IF(qty_cleanouts=0;\"\";\"They can be flushed from \"&" +
            counted("qty_cleanouts", "cleanout", "cleanouts") + "&\" at the surface.\")",
        "=\"They end at: \"&outlet&IF(has_pit;\"; and in \"&said_pit&\", wrapped in fabric, with an upturned tee that overflows on the ground when the pit is full\";\"\")&\".\"&said_pit_holds",
        "=IF(COUNT([Runs.Slope %])=0;\"\";\"Every pipe falls toward its end, at least \"&TEXT(MIN([Runs.Slope %]);\"0.0%\")&said_empties&\".\")",
        "=said_storm",
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
        {"Roots",
         "=\"Roots over \"&IF(units=\"metric\";\"100 mm\";\"4 in\")&\" are cut only after you agree; a tree that needs them may suffer.\""},
        {"Plants", "Plants in the trench line are moved once with care; we cannot promise that they live."},
        {"Permits",
         "Permits for work outside the lot and for the outlet are yours to hold unless the price lists them."},
        {"Changes",
         "Work that is not described here is a change: it is written down, priced and signed before it is done."},
        {"Payment",
         "=\"Deposit \"&IF(AND(ISNUMBER(price_total);LEFT(quote_check;2)<>\"NO\");TEXT(deposit;\"#,##0.00\");\"to be set\")&\" on acceptance, half of the rest when the material is on the lot, the remainder after the flush test in your presence.\""},
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
    price.large = true;
    price.linesHigh = 2;
    price.lines = {
        "=IF(OR(LEFT(quote_check;2)=\"NO\";NOT(ISNUMBER(price_total)));\"The price is not ready.\";\"$ \"&TEXT(price_total;\"#,##0.00\")&said_price_tax&said_price_until&\".\")",
    };

    Paragraphs cautions;
    cautions.heading = "Please note";
    cautions.span = 2;
    cautions.linesHigh = 9;
    cautions.lines = {"=said_cautions"};

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
