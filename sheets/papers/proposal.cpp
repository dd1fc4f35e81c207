// The offer to the owner in plain words, built from the job's numbers; it says why when it is not ready.
#include "buying/money.h"
#include "papers/owner_words.h"

namespace trenchbook::sheets {
namespace {

Paragraphs paragraphs(const char* heading, std::vector<std::string> lines) {
    Paragraphs text;
    text.heading = heading;
    text.span = 2;
    text.lines = std::move(lines);
    return text;
}

}  // namespace

Sheet proposalSheet(const JobSize&) {
    using namespace words;
    Paragraphs head = paragraphs(
        "",
        {
            "=\"Proposal\"",
            "=IF(proposal_missing=\"\";\"\";\"NOT READY TO HAND OUT: \"&proposal_missing)",
            "=IF(job_name=\"\";\"\";job_name&\". \")&\"For \"&owner&IF(job_site=\"\";\"\";\", \"&job_site)&IF(ISNUMBER(quote_date);\". \"&TEXT(quote_date;\"YYYY-MM-DD\");\"\")",
        });
    head.large = true;

    Paragraphs scope = paragraphs(
        "What we build",
        {
            "=\"Buried drain lines, \"&said_pipe_total&" + length +
                "&\" of pipe in all: \"&said_pipes&\" (risers included).\"",
            "=\"They take in \"&said_inlets&\". \"&IF(qty_cleanouts=0;\"\";\"They can be flushed from \"&" +
                counted("qty_cleanouts", "cleanout", "cleanouts") + "&\" at the surface.\")",
            "=\"They end at: \"&outlet&IF(has_pit;\"; and in \"&said_pit&\", wrapped in fabric, with an upturned tee that overflows on the ground when the pit is full\";\"\")&\".\"&said_pit_holds",
            "=IF(COUNT([Runs.Slope %])=0;\"\";\"Every pipe falls toward its end, at least \"&TEXT(MIN([Runs.Slope %]);\"0.0%\")&said_empties&\".\")",
            "=said_storm",
            "=\"Sod is cut, kept and laid back; about \"&TEXT(sod_share;\"0%\")&\" of it is replaced by new. Soil that is left over is hauled away. Pavement is cut straight and restored where the plan crosses it.\"",
            "=IF(lot_there;\"Where the lines lie is drawn on the page behind this offer.\";\"\")",
        });

    Paragraphs price = paragraphs(
        "Price",
        {
            "=IF(OR(LEFT(quote_check;2)=\"NO\";NOT(ISNUMBER(price_total)));\"The price is not ready.\";\"$ \"&TEXT(price_total;\"#,##0.00\"))",
            "=IF(OR(LEFT(quote_check;2)=\"NO\";NOT(ISNUMBER(price_total)));\"\";\"For all that is described here\"&said_price_tax&said_price_until&\".\")",
        });
    price.large = true;

    Paragraphs options = paragraphs("=IF(said_options=\"\";\"\";\"Other ways to do it\")", {"=said_options"});

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
        {"Payment",
         "=IF(AND(said_steps<>\"\";LEFT(quote_check;2)<>\"NO\");said_steps&\".\";\"Deposit \"&IF(AND(ISNUMBER(price_total);LEFT(quote_check;2)<>\"NO\");TEXT(deposit;\"#,##0.00\");\"to be set\")&\" on acceptance, half of the rest when the material is on the lot, the remainder after the flush test in your presence.\")"},
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
        {"Warranty",
         "=\"We stand behind our work for \"&{retain.callback}&\" days and fill settled trench once in that time. Not covered: roots, animals, debris, later digging, storms beyond the design.\""},
        {"What this is not",
         "Not an engineer's design and not legal advice. Local codes and licensed practice decide."},
    };
    clauses.rows = static_cast<int>(clauses.content.size());

    Paragraphs cautions = paragraphs("Please note", {"=said_cautions"});
    cautions.linesHigh = 9;

    // In immediate proximity to the buyer's signature, bold and of 10 points at least: 16 CFR 429.1(a).
    Paragraphs cancel = paragraphs("", {
                                           "=IF(home_sale=\"yes\";said_may_cancel;\"\")",
                                       });
    cancel.notice = true;
    Paragraphs sign = paragraphs(
        "",
        {
            "Accepted, owner: ________________________________________     Date: __________________",
            "=\"For \"&sender_name&\": ________________________________________     Date: __________________\"",
        });
    sign.linesHigh = 2;

    Sheet sheet;
    sheet.name = "Proposal";
    sheet.title = "=letter_name";
    sheet.purpose = "=letter_line";
    sheet.parts = {head, scope, price, options, clauses, Break{}, cautions, cancel, sign};
    sheet.widths = {34, 152};
    sheet.landscape = false;
    sheet.trueSize = sheet.paper = sheet.letterhead = true;
    return sheet;
}

// The notice that goes with a contract signed at the buyer's home, two copies, one a page: 16 CFR 429.1(b), whose words these
// are, as published in the e-CFR.
Sheet cancellationSheet(const JobSize&) {
    const auto notice = [](const char* copy) {
        Paragraphs text = paragraphs(
            "",
            {
                "NOTICE OF CANCELLATION",
                "=\"Date of transaction: \"&IF(ISNUMBER(agreed_date);TEXT(agreed_date;\"YYYY-MM-DD\");\"____________________\")",
                "=\"You may CANCEL this transaction, without any penalty or obligation, within \"&said_cancel_days&\" BUSINESS DAYS from the above date.\"",
                "If you cancel, any property traded in, any payments made by you under the contract or sale, and any negotiable instrument executed by you will be returned within TEN BUSINESS DAYS following receipt by the seller of your cancellation notice, and any security interest arising out of the transaction will be cancelled.",
                "If you cancel, you must make available to the seller at your residence, in substantially as good condition as when received, any goods delivered to you under this contract or sale; or you may, if you wish, comply with the instructions of the seller regarding the return shipment of the goods at the seller's expense and risk.",
                "If you do make the goods available to the seller and the seller does not pick them up within 20 days of the date of your notice of cancellation, you may retain or dispose of the goods without any further obligation.",
                "If you fail to make the goods available to the seller, or if you agree to return the goods to the seller and fail to do so, then you remain liable for performance of all obligations under the contract.",
                "=\"To cancel this transaction, mail or deliver a signed and dated copy of this cancellation notice or any other written notice, or send a telegram, to \"&sender_name&\", \"&sender_address&\", NOT LATER THAN MIDNIGHT OF \"&said_cancel_until&\".\"",
                "I HEREBY CANCEL THIS TRANSACTION.",
                "Date: ____________________     Buyer's signature: ________________________________________",
                copy,
            });
        text.notice = true;
        text.linesHigh = 2;
        return text;
    };
    Sheet sheet;
    sheet.name = "Cancellation";
    sheet.title = "=letter_name";
    sheet.purpose = "=letter_line";
    sheet.parts = {notice("First copy: for the buyer to keep."), Break{},
                   notice("Second copy: to send or hand to the seller.")};
    sheet.widths = {34, 152};
    sheet.landscape = false;
    sheet.trueSize = sheet.paper = sheet.letterhead = true;
    return sheet;
}

}  // namespace trenchbook::sheets
