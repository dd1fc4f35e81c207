#include "papers/owner_words.h"

#include "buying/money.h"

namespace trenchbook::sheets {
namespace {

std::string quote(const std::string& text) { return "\"" + text + "\""; }
std::string when(const std::string& condition, const std::string& text) {
    return "IF(" + condition + ";\"" + text + "\";\"\")";
}
// A line of the cautions.
std::string caution(const std::string& condition, const std::string& text) {
    return when(condition, "- " + text);
}

// "155 ft of 6 in SDR35 pipe"; nothing where that line of the takeoff is no pipe.
std::string pipe(int row) {
    const std::string at = ":" + std::to_string(row) + ">";
    return "IFERROR(IF(LEFT(<pieces_words.Code" + at + ";5)=\"PIPE-\";TEXT(<pieces_numbers.Net" + at +
           ";\"0\")&" + words::length + "&\" of \"&<pieces_words.Pipe" + at + ";\"\");\"\")";
}

std::vector<std::string> cautions() {
    return {
        quote(
            "- The one-call service (811) is asked before any digging; work starts when every owner of a line has answered."),
        quote(
            "- The drain is for rain only: nothing from sinks, sump, pool backwash or septic may be led into it."),
        caution(
            "outlet_permission<>\"got\"",
            "Where the water may go is decided by others: ask the road office, the easement's holder or the association before work starts."),
        caution(
            "ISNUMBER(SEARCH(\"ditch\";outlet))+ISNUMBER(SEARCH(\"curb\";outlet))+ISNUMBER(SEARCH(\"easement\";outlet))>0",
            "Ditch, curb and easement belong to someone else; their permit comes first."),
        caution(
            "has_pit",
            "A soak test is no promise: ground water rises and falls with the season, and soil clogs in time."),
        caution(
            "has_pit",
            "A pit may count as a drainage well; the state's injection-well office says whether it must be registered."),
        caution(
            "COUNTA([Pump.Basin])>0",
            "A pump needs power and a look every season: without them the water stands where it did before. An electrician connects it."),
        caution("AND(has_pit;OR(has_septic<>\"no\";has_well<>\"no\"))",
                "The health department sets the distance of a pit from septic systems and wells."),
        caution("has_hoa<>\"no\"", "The owners' association may have to agree; that is yours to ask."),
        caution("has_irrigation<>\"no\"",
                "Sprinkler and pool lines are private and nobody marks them; show us where they run."),
        caution(
            "N(deepest_cut)>={cut.exit}",
            "Parts of the trench are \"&{cut.exit}&IF(units=\"metric\";\" m\";\" ft\")&\" deep or more: keep children and pets away while it is open."),
        caution("COUNT([Runs.Cover up])>0",
                "Keep cars and trucks off the lines except where they pass under the drive.")};
}

// "[  ] all in Schedule 40: $17,200.00 (1,268.40 more)" of a row of Quote's options; nothing where it is blank.
std::string option(int row) {
    const std::string at = ";" + std::to_string(row + 1) + ")";
    const std::string name = "INDEX([Options.Option]" + at, price = "INDEX([Options.Its price]" + at,
                      more = "INDEX([Options.Against this one]" + at;
    return "IF(N(" + price + ");\"[  ] \"&" + name + "&\": $\"&TEXT(" + price + ";\"#,##0.00\")&IF(N(" +
           more + ");TEXT(ABS(" + more + ");\" (#,##0.00\")&IF(" + more +
           "<0;\" less)\";\" more)\");\"\");\"\")";
}

// Why the proposal cannot be handed out.
std::vector<std::string> missingOnProposal() {
    return {"IF(LEFT(quote_check;2)=\"NO\";MID(quote_check;5;300);\"\")",
            "IF(LEFT(dates_check;2)=\"NO\";MID(dates_check;5;200);\"\")",
            "IF(sender_name=\"\";\"our own name is missing on Account\";\"\")",
            "IF(owner=\"\";\"the owner is missing on Job\";\"\")",
            "IF(job_site=\"\";\"the site is missing on Job\";\"\")",
            "IF(ISNUMBER(quote_date);\"\";\"the quote's date is missing on Job\")",
            "IF(ISNUMBER(rain_rate);\"\";\"the rain is missing on Job\")",
            "IF(outlet=\"\";\"the outlet is missing on Job\";\"\")",
            "IF(outlet_permission=\"\";\"is the outlet allowed? Job: Outlet permission\";\"\")",
            "IF(N(count_no)>0;" + saidCount("count_no", "row has a NO", "rows have a NO") +
                "&\": see Job\";\"\")"};
}

// Why the invoice cannot be sent.
std::vector<std::string> missingOnInvoice() {
    return {when("sender_name=\"\"", "our own name is missing on Account"),
            when("invoice_number=\"\"", "the invoice's number is missing on Account"),
            when("NOT(ISNUMBER(invoice_date))", "the invoice's date is missing on Account"),
            when("owner=\"\"", "the owner is missing on Job"),
            when("job_site=\"\"", "the site is missing on Job"),
            "IF(LEFT(account_check;2)=\"NO\";MID(account_check;5;200);\"\")",
            when("ABS(SUM([Invoice lines.Amount])-SUM([Invoice payments.Paid])-due_now)>0.004",
                 "the lines here do not add up to what Account says is due")};
}

}  // namespace

Form ownersWords() {
    using words::counted, words::length;
    Form form;
    form.name = "Words";
    const auto say = [&](const char* label, const char* name, const std::string& formula) {
        form.fields.push_back(hidden(label, name, formula));
    };
    const auto list = [&](const char* label, const char* name, const std::string& between,
                          const std::vector<std::string>& texts) {
        form.fields.push_back(hidden(label, name, ""));
        join(form, name, between, texts);
    };
    std::vector<std::string> pipes;
    for (int row = 1; row <= 8; ++row) pipes.push_back(pipe(row));
    list("The pipes", "said_pipes", "\", \"", pipes);
    // What the list says, added up as it is said.
    std::string lengths;
    for (int row = 1; row <= 8; ++row)
        lengths += (row > 1 ? "+" : "") + std::string("N(said_length_") + std::to_string(row) + ")";
    for (int row = 1; row <= 8; ++row) {
        const std::string at = ":" + std::to_string(row) + ">";
        say(("Length " + std::to_string(row)).c_str(), ("said_length_" + std::to_string(row)).c_str(),
            "IFERROR(IF(LEFT(<pieces_words.Code" + at + ";5)=\"PIPE-\";ROUND(<pieces_numbers.Net" + at +
                ";0);0);0)");
    }
    say("Pipe in all", "said_pipe_total", lengths);
    std::vector<std::string> options;
    for (int row = 1; row <= 4; ++row) options.push_back(option(row));
    list("Options", "said_options", "CHAR(10)", options);
    say("Letterhead", "letter_name", "sender_name&\"\"");
    list("Under it", "letter_line", "\"  ·  \"",
         {"sender_address&\"\"", "IF(sender_license=\"\";\"\";\"License \"&sender_license)",
          "sender_insurance&\"\""});
    say("Days to cancel", "said_cancel_days", "IF({cancel.days}=3;\"THREE\";{cancel.days})");
    say("Last day to cancel", "said_cancel_until",
        "IF(ISNUMBER(law_cancel);TEXT(law_cancel;\"YYYY-MM-DD\");\"____________________\")");
    say("May cancel", "said_may_cancel",
        "\"You, the buyer, may cancel this transaction at any time prior to midnight of the \"&IF({cancel.days}=3;\"third\";{cancel.days}&\"th\")&\" business day after the date of this transaction. See the attached notice of cancellation form for an explanation of this right.\"");
    list("The inlets", "said_inlets", "\", \"",
         {counted("qty_downspouts", "downspout", "downspouts"),
          counted("qty_channels", "channel drain", "channel drains"),
          counted("qty_basins", "catch basin", "catch basins")});
    say("What has grates", "said_grates",
        "TEXTJOIN(\", \";1;" + counted("qty_channels", "channel drain", "channel drains") + ";" +
            counted("qty_basins", "catch basin", "catch basins") + ")");
    say("Is there a pit?", "has_pit", "AND(N(pit_length)>0;N(pit_width)>0;N(pit_depth)>0)");
    say("The pit", "said_pit",
        "\"a pit \"&TEXT(pit_length;\"0.#\")&\" by \"&TEXT(pit_width;\"0.#\")&" + length +
            "&\" with \"&TEXT(pit_depth;\"0.#\")&" + length + "&\" of washed rock\"");
    say("What the pit holds", "said_pit_holds",
        "IF(ISNUMBER(pit_held);\" The pit holds what \"&TEXT(pit_held;\"0.0#\")&IF(units=\"metric\";\" mm\";\" in\")&\" of rain bring; what comes beyond that runs over the ground at the tee.\";\"\")");
    // Promised only where every outlet was looked at and nothing stays in the lines longer than the rule allows.
    say("Hours until the last rim's line is empty", "said_empty_hours",
        "IF(COUNT([Outlets.Hours to empty])=0;0;ROUNDUP(MAX([Outlets.Hours to empty]);0))");
    say("Does it empty?", "said_empties",
        "IF(OR(COUNTA([Outlets.Outlet])=0;COUNTIF([Outlets.Verdict];\"OK\")<COUNTA([Outlets.Outlet]));\"\";"
        "\", so that it empties after each rain\"&IF(said_empty_hours=0;\"\";\": what stands behind a rim within \"&" +
            saidCount("said_empty_hours", "hour", "hours") + "))");
    say("Hours that the pit takes", "said_pit_hours", "IF(ISNUMBER(pit_hours);TEXT(pit_hours;\"0\");\"?\")");
    say("Hours that it should not pass", "said_pit_longest",
        "TEXT(IF(ISNUMBER(pit_hours);MAX(pit_hours;{pit.drain.max});{pit.drain.max});\"0\")");
    // The storm that the lines are laid out for, said so that nobody takes it for a promise.
    list(
        "The storm", "said_storm", "\"\"",
        {"\"The lines are laid out for rain of \"&TEXT(rain_rate;\"0.0#\")&IF(units=\"metric\";\" mm\";\" in\")&\" an hour over \"&rain_minutes&\" minutes, \"",
         "\"as it comes about once in \"&" + saidCount("rain_years", "year", "years") +
             "&\". Bigger storms will overflow at inlets and at the outlet.\""});
    say("Tax in the price", "said_price_tax",
        "IF(N(contract_tax)>0;\", sales tax of \"&TEXT(contract_tax;\"#,##0.00\")&\" included\";\"\")");
    // Only where they are the offered price in full.
    say("Steps of payment", "said_steps",
        "IFERROR(IF(AND(COUNTIF([Steps.Step];\"?*\")>0;ISNUMBER(price_total);" +
            countOf("Steps.Check", "NO") +
            "=0;ABS(SUM([Steps.Amount])-N(price_total))<0.005);TEXTJOIN(\"; \";1;[Steps.Said]);\"\");\"\")");
    say("How long it holds", "said_price_until",
        "IF(ISNUMBER(quote_until);\". It holds until \"&TEXT(quote_until;\"YYYY-MM-DD\");\"\")");
    list("Cautions", "said_cautions", "CHAR(10)", cautions());
    list("Missing on the proposal", "proposal_missing", "\"; \"", missingOnProposal());
    list("Missing on the invoice", "invoice_missing", "\"; \"", missingOnInvoice());
    say("What to pay", "said_due",
        "\"Please pay $ \"&TEXT(due_now;\"#,##0.00\")&IF(AND(ISNUMBER(invoice_date);ISNUMBER(days_to_pay));\", until \"&TEXT(invoice_date+days_to_pay;\"YYYY-MM-DD\");\"\")&\".\"");
    return form;
}

}  // namespace trenchbook::sheets
