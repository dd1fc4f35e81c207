// What was agreed, changed and paid, and what the owner still owes. Native formulas only.
#include "buying/money.h"

namespace trenchbook::sheets {
namespace {

Cases dated(const std::vector<std::string>& inputs) {
    return ownErrors(inputs) + Cases{{"NOT(OR(ISBLANK([Date]);ISNUMBER([Date])))",
                                      "\"NO: not a date: \"&[Date]&\"; write it as 2026-05-31\""}};
}

}  // namespace

Sheet accountSheet(const JobSize&) {
    Form head;
    head.name = "Account";
    head.heading = "Invoice";
    const auto permit = [](const char* label, const char* name, Format format, const char* note) {
        return Field{.label = label, .name = name, .kind = Kind::Permit, .format = format, .note = note};
    };
    const auto shown = [](const char* label, const char* formula) {
        return Field{
            .label = label, .kind = Kind::Computed, .format = show::general, .value = formula, .wide = true};
    };
    const auto markup = [](const char* label, const char* name, const char* value) {
        return Field{.label = label,
                     .name = name,
                     .kind = Kind::Kept,
                     .format = show::percent(1),
                     .value = value,
                     .validity = between(0, 3)};
    };
    head.fields = {
        permit("Invoice", "invoice_number", show::text, ""),
        permit("Date of invoice", "invoice_date", show::date, ""),
        shown("For", "=owner&\"\""),
        shown("Site of the work", "=job_site&\"\""),
        {.label = "Agreed price",
         .name = "agreed_price",
         .kind = Kind::Measured,
         .format = show::money,
         .measure = Measure::Dollars,
         .validity = between(0, 10000000),
         .note = "The price that was signed, contract tax included; it does not move when Quote does."},
        permit("Agreed on", "agreed_date", show::date, ""),
        {.label = "Kept back until later",
         .name = "retain_share",
         .kind = Kind::Measured,
         .format = show::percent(1),
         .validity = between(0, 0.5),
         .note = "Retainage, where the contract has it: share of the contract that is not due yet."},
        {.label = "Kept back is due now",
         .name = "retain_due",
         .kind = Kind::Measured,
         .validity = choice({"yes", "no"}),
         .note = "yes, when what the contract waits for is over."},
    };
    Table changes;
    changes.name = "Changes";
    changes.rows = 8;
    changes.total = true;
    changes.columns = {
        {.heading = "What",
         .kind = Kind::Measured,
         .width = 66,
         .note = "Change of the work, as the owner signed it.",
         .wrapped = true},
        {.heading = "Check", .kind = Kind::Verdict, .width = 52, .wrapped = true},
        {.heading = "Date", .kind = Kind::Permit, .format = show::date, .width = 30},
        {.heading = "Signed",
         .kind = Kind::Permit,
         .width = 20,
         .validity = choice({"yes", "no"}),
         .centred = true},
        {.heading = "Labor",
         .kind = Kind::Measured,
         .format = show::number(2),
         .width = 24,
         .note = "Cost, not price; a saving is negative."},
        {.heading = "Equipment", .kind = Kind::Measured, .format = show::number(2), .width = 24},
        {.heading = "Materials", .kind = Kind::Measured, .format = show::number(2), .width = 24},
        {.heading = "Subcontract", .kind = Kind::Measured, .format = show::number(2), .width = 24},
        {.heading = "Pipe",
         .kind = Kind::Measured,
         .format = show::number(1),
         .measure = Measure::Feet,
         .width = 20,
         .note = "More pipe by this change; less is negative."},
        {.heading = "Deepest cut",
         .kind = Kind::Measured,
         .format = show::number(2),
         .measure = Measure::Feet,
         .width = 24,
         .note = "Of the changed work, from Runs of the file that it was worked out in."},
        {.heading = "Amount",
         .format = show::money,
         .width = 26,
         .formula =
             "IF(COUNT([Labor];[Equipment];[Materials];[Subcontract])=0;\"\";ROUND(N([Labor])*(1+change_labor)+N([Equipment])*(1+change_equipment)+N([Materials])*(1+change_materials)+"
             "N([Subcontract])*(1+change_subcontract);2))",
         .note = "Cost and the markups below."},
    };
    judge(
        changes, "Check",
        dated({"What", "Date", "Signed", "Labor", "Equipment", "Materials", "Subcontract", "Pipe",
               "Deepest cut"}) +
            Cases{
                {"AND([What]=\"\";COUNTA([Labor];[Equipment];[Materials];[Subcontract])=0)", "\"\""},
                {"COUNTA([Labor];[Equipment];[Materials];[Subcontract])>COUNT([Labor];[Equipment];[Materials];[Subcontract])",
                 "\"NO: a cost is not a number\""},
                {"COUNTA([Pipe];[Deepest cut])>COUNT([Pipe];[Deepest cut])",
                 "\"NO: pipe or cut is not a number\""},
                {"NOT(ISNUMBER([Amount]))", "\"NO: no amount\""},
                {"[Signed]<>\"yes\"", "\"CHECK: not signed; not counted as owed\""}},
        "\"OK\"");
    Table payments;
    payments.name = "Payments";
    payments.rows = 10;
    payments.total = true;
    payments.columns = {
        {.heading = "What",
         .kind = Kind::Measured,
         .width = 66,
         .note = "Deposit, at delivery, at the flush test, on completion.",
         .wrapped = true},
        {.heading = "Check", .kind = Kind::Verdict, .width = 24, .wrapped = true},
        {.heading = "Date", .kind = Kind::Permit, .format = show::date, .width = 30},
        {.heading = "How", .kind = Kind::Permit, .width = 20, .note = "Check, transfer."},
        {.heading = "Paid",
         .kind = Kind::Measured,
         .format = show::money,
         .width = 24,
         .note = "Received. Money given back is negative."},
    };
    judge(payments, "Check",
          dated({"What", "Date", "How", "Paid"}) +
              Cases{{"AND([What]=\"\";ISBLANK([Paid]))", "\"\""},
                    {"NOT(ISNUMBER([Paid]))", "\"NO: not a number\"&" + numberToType("[Paid]")},
                    {"ISBLANK([Date])", "\"CHECK: no date\""}},
          "\"OK\"");
    Form due;
    due.name = "Account sums";
    due.heading = "What is due";
    due.fields = {
        moneyField("Agreed", "due_agreed", "N(agreed_price)"),
        moneyField("Changes signed", "due_changes",
                   "ROUND(SUMIF([Changes.Signed];\"yes\";[Changes.Amount]);2)"),
        moneyField("Changes not signed yet", "due_unsigned", "ROUND(SUM([Changes.Amount])-due_changes;2)",
                   "Stand apart: not in the contract, not on the invoice."),
        {.label = "Pipe by changes signed",
         .name = "due_pipe",
         .kind = Kind::Computed,
         .format = show::number(1),
         .measure = Measure::Feet,
         .value = "=SUMIF([Changes.Signed];\"yes\";[Changes.Pipe])"},
        moneyField("Contract in all", "due_contract", "ROUND(due_agreed+due_changes;2)"),
        moneyField("If all changes are signed", "due_all", "ROUND(due_contract+due_unsigned;2)"),
        moneyField("Paid so far", "due_paid", "ROUND(SUM([Payments.Paid]);2)"),
        moneyField("Kept back", "due_retained",
                   "IF(retain_due=\"yes\";0;ROUND(N(retain_share)*due_contract;2))", "Not due yet."),
        moneyField("Due now", "due_now", "ROUND(due_contract-due_paid-due_retained;2)"),
        {.label = "Ready?", .name = "account_check", .kind = Kind::Verdict, .format = show::general},
    };
    judge(
        due, "account_check",
        {{"ISBLANK(agreed_price)", "\"NO: the agreed price is missing\""},
         notANumber("the agreed price", "agreed_price"),
         notANumber("what is kept back", "retain_share"),
         {"OR(N(retain_share)<0;N(retain_share)>0.5)", "\"NO: what is kept back is a share: 10 % is 0.1\""},
         yesOrNo("kept back is due now", "retain_due"),
         {countOf("Changes.Check", "NO") + "+" + countOf("Payments.Check", "NO") + ">0",
          "\"NO: a change or payment cannot be read\""},
         {"AND(ISNUMBER(agreed_date);ISNUMBER(quote_date);N(agreed_date)<N(quote_date))",
          "\"CHECK: agreed before the quote's date on Job\""},
         {"AND(ISNUMBER(agreed_date);ISNUMBER(quote_until);N(agreed_date)>N(quote_until))",
          "\"CHECK: agreed when the price no longer held: it held until \"&TEXT(quote_until;\"YYYY-MM-DD\")"},
         {"due_now<0", "\"CHECK: \"&TEXT(-due_now;\"#,##0.00\")&\" more was paid than is due\""},
         {"AND(ISNUMBER(price_total);N(price_total)<>agreed_price)",
          "\"CHECK: Quote now says \"&TEXT(price_total;\"#,##0.00\")&\"; the agreed price stands\""}},
        "\"OK\"");
    Form terms;
    terms.name = "Change terms";
    terms.heading = "Markup on changes";
    terms.fields = {markup("Labor", "change_labor", "0.15"), markup("Equipment", "change_equipment", "0.10"),
                    markup("Materials", "change_materials", "0.10"),
                    markup("Subcontract", "change_subcontract", "0.05")};
    terms.fields.front().note =
        "These four: ceilings of a county's change order letter (Marion County, Oregon, record 3663993); the contract decides.";
    Form sender;
    sender.name = "Sender";
    sender.heading = "How our invoices look";
    const auto wording = [](const char* label, const char* name, const char* note) {
        return Field{.label = label, .name = name, .kind = Kind::Kept, .note = note, .wide = true};
    };
    sender.fields = {
        wording("Our name", "sender_name", "As it stands on proposal and invoice."),
        wording("Our address", "sender_address", "With telephone."),
        wording(
            "License", "sender_license",
            "Contractor's license, as it must stand on offers and invoices where the state asks it. Ask: the state's contractors' board."),
        wording(
            "Insurance", "sender_insurance",
            "A line about liability insurance or bond, where the state asks it. Ask: the state's contractors' board."),
        {.label = "Sold at the home",
         .name = "home_sale",
         .kind = Kind::Kept,
         .value = "yes",
         .validity = choice({"yes", "no"}),
         .note =
             "yes: the offer carries the right to cancel of 16 CFR 429, in the language of the sale. Ask: the state's consumer office for its own rule."},
        wording("How to pay", "how_to_pay", "A sentence for the owner: check to whom, which account."),
        {.label = "Days to pay",
         .name = "days_to_pay",
         .kind = Kind::Kept,
         .format = show::number(0),
         .measure = Measure::Plain,
         .value = "14",
         .validity = between(0, 365),
         .note = "Common practice, no source; the contract decides.",
         .unit = "days"},
    };
    head.noteSpan = due.noteSpan = terms.noteSpan = sender.noteSpan = 6;
    Sheet sheet;
    sheet.name = "Account";
    sheet.title = "Account";
    sheet.purpose =
        "What was agreed, changes, payments and what is due. The invoice to the owner follows on its own sheet.";
    sheet.parts = {head, changes, payments, due, terms, Break{}, sender};
    sheet.widths = {66, 46, 22, 24};
    return sheet;
}

}  // namespace trenchbook::sheets
