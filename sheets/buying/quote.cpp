// From direct cost to the price: contingency, overhead, profit; markup and margin told apart.
#include "buying/money.h"

namespace trenchbook::sheets {
namespace {

Field percent(const char* label, const char* name, const std::string& formula, const char* note = "") {
    return {.label = label,
            .name = name,
            .kind = Kind::Computed,
            .format = show::percent(1),
            .value = "=" + formula,
            .note = note};
}
Field typed(const char* label, const char* name, const char* note) {
    return {.label = label,
            .name = name,
            .kind = Kind::Measured,
            .format = show::money,
            .measure = Measure::Dollars,
            .validity = between(0, 1000000),
            .note = note};
}
Field typedKept(const char* label, const char* name, const char* note) {
    Field field = typed(label, name, note);
    field.kind = Kind::Kept;
    field.validity = between(0, 1e9);
    return field;
}
std::string inGroup(const std::string& group) {
    return "SUMIF([Takeoff.Group];\"" + group + "\";[Takeoff.Amount])+SUMIF([Additions.Group];\"" + group +
           "\";[Additions.Amount])";
}
// What stands on Takeoff under a group, and what is typed above.
std::string ownLine(const std::string& group, const std::string& typed) {
    return withEngine("ROUND(listed_" + group + "+N(" + typed + ");2)");
}
// A share on Rules as it is read, and what is wrong with it: a rate typed as 7.25 for 7.25 % would multiply the cost, so
// nothing is computed with it.
void addRate(Form& form, const std::string& key, const std::string& name) {
    const std::string read = name + "_read", slip = ": a share is asked; 7.25 % is 0.0725";
    form.fields.push_back(hidden(key + " as read", read, "IF(ISNUMBER({" + key + "});{" + key + "};\"\")"));
    form.fields.push_back(
        hidden(key + " judged", name + "_fault",
               firstOf({{"NOT(ISNUMBER(" + read + "))", "\"NO: " + key + " on Rules is not a number\""},
                        {"OR(" + read + "<0;" + read + ">=0.5)",
                         "\"NO: " + key + " on Rules is \"&" + read + "&\"" + slip + "\""}},
                       "\"\"")));
}

// What each part of the direct cost may come to, and what may come on top. Shares and chances are starts of our own,
// common practice without a source: the estimator's own go over them.
Table risks() {
    struct Part {
        const char* what;
        const char* likely;
        const char *low, *high, *chance;
        const char* why;
    };
    const Part parts[] = {
        {"Labor", "=N(labor_line)", "0.9", "1.3", "1", "hours slower or faster than estimated"},
        {"Materials, tax, delivery", "=N(materials_cost)+N(materials_tax)+N(delivery_cost)", "0.97", "1.1",
         "1", "waste, breakage, prices that move"},
        {"Equipment and disposal", "=N(equipment_cost)+N(disposal_cost)", "0.9", "1.3", "1",
         "days and loads"},
        {"Permits and subcontract", "=N(permits_cost)+N(subcontract_cost)", "1", "1.15", "1",
         "what others charge"},
        {"Rock or roots in the trench", "=ROUND(0.5*N(risk_earth);2)", "0.3", "2",
         "=IF(labor_roots=\"yes\";0;0.1)",
         "half of the hours of digging, filling, hauling; Labor counts it where it is known"},
        {"A line that nobody marked", "=ROUND({labor.day}*N(labor_rate)*N(labor_crew)/3+300;2)", "0.5", "4",
         "=MIN(0.5;0.02+0.05*SUMPRODUCT(([Crossings.What]<>\"\")*ISNA(MATCH([Crossings.Marked];{\"yes\";\"sí\";\"si\"};0))))",
         "repair and a third of a crew's day; 2 %, and 5 % more for each crossing not marked"},
        {"Access or mud slows the machine", "=ROUND(0.15*N(risk_earth);2)", "0.5", "3",
         "=IF(N(labor_access)>1;0.05;0.15)",
         "a seventh of the same hours; rarer where the access factor counts it"},
        {"A run laid again for its grade", "=ROUND(0.5*{labor.day}*N(labor_rate)*N(labor_crew);2)", "0.5",
         "2",
         "=IF(COUNT([Levels.Closing error])=0;0.15;IF(SUMPRODUCT(IFERROR(1*(ABS([Levels.Closing error])>{levels.close});0))>0;0.15;0.03))",
         "half a crew's day; levels that do not close make it likelier"},
        {"Days lost to weather", "=ROUND(0.5*{labor.day}*N(labor_rate)*N(labor_crew);2)", "0.5", "3", "0.25",
         "half a crew's day"},
        {"A second trip, a call-back", "=ROUND(0.5*{labor.day}*N(labor_rate)*N(labor_crew);2)", "0.5", "2",
         "0.1", "half a crew's day"},
    };
    Table table;
    table.name = "Risks";
    table.rows = 14;
    table.total = true;
    const auto amount = [](const char* heading, const char* share) {
        return Column{.heading = heading,
                      .format = show::number(2),
                      .width = 32,
                      .formula = "IF(AND(ISNUMBER([Likely]);ISNUMBER([" + std::string(share) +
                                 "]));ROUND([Likely]*[" + share + "];2);\"\")",
                      .helper = true};
    };
    table.columns = {
        {.heading = "Risk",
         .kind = Kind::Kept,
         .width = 66,
         .note = "A part of the direct cost, or what may come on top.",
         .wrapped = true},
        {.heading = "Likely",
         .kind = Kind::Kept,
         .format = show::number(2),
         .width = 32,
         .validity = between(0, 10000000)},
        {.heading = "Chance",
         .kind = Kind::Kept,
         .format = show::percent(0),
         .width = 24,
         .validity = between(0, 1),
         .note = "That it comes. The parts of the direct cost are certain: 100 %."},
        {.heading = "Why", .kind = Kind::Kept, .format = show::general, .width = 74, .wrapped = true},
        {.heading = "Low share",
         .kind = Kind::Kept,
         .format = show::number(2),
         .width = 22,
         .validity = between(0, 1),
         .note = "Lowest cost over likely."},
        {.heading = "High share",
         .kind = Kind::Kept,
         .format = show::number(2),
         .width = 22,
         .validity = between(1, 20),
         .note = "Highest cost over likely."},
        amount("Low", "Low share"),
        amount("High", "High share"),
        {.heading = "Expected",
         .format = show::money,
         .width = 32,
         .formula =
             "IF(COUNT([Likely];[Low];[High];[Chance])=4;ROUND([Chance]*([Low]+[Likely]+[High])/3;2);\"\")",
         .note = "Chance x (low + likely + high) / 3."},
        {.heading = "Check", .kind = Kind::Verdict, .width = 40, .wrapped = true},
        {.heading = "Over",
         .format = show::number(2),
         .width = 32,
         .formula = "IF(ISNUMBER([Expected]);[Expected]-IF([Chance]=1;[Likely];0);\"\")",
         .note = "Expected over the estimate.",
         .helper = true},
    };
    judge(table, "Check",
          ownErrors({"Likely", "Chance", "Low share", "High share"}) +
              Cases{{"AND([Risk]=\"\";COUNTA([Likely];[Chance];[Low share];[High share])=0)", "\"\""},
                    {"COUNT([Likely];[Chance];[Low share];[High share])<4",
                     "\"NO: likely, chance, low and high share are four numbers\""},
                    {"OR([Likely]<0;[Low share]<0;[Low share]>1;[High share]<1)",
                     "\"NO: low share is 0 to 1, high share 1 or more\""},
                    {"OR([Chance]<0;[Chance]>1)", "\"NO: a chance is 0 to 1; 10 % is 0.1\""}},
          "\"OK\"");
    for (const Part& part : parts)
        table.content.push_back({part.what, part.likely, part.chance, part.why, part.low, part.high});
    return table;
}

}  // namespace

Sheet quoteSheet(const JobSize&) {
    Form choices;
    choices.name = "Quote";
    choices.heading = "To decide";
    choices.fields = {
        typed("Delivery, not on Takeoff", "delivery_typed",
              "Lines of these groups on Takeoff are added by themselves."),
        typed("Equipment hire", "equipment_typed",
              "Trencher, excavator, plate: days x rate, with fuel and haul."),
        typed("Disposal fees", "disposal_typed", "Dump fees that are not in the price of a load."),
        typed("Permits and fees", "permits_typed", "Right-of-way, curb core, inspection."),
        typed("Subcontract", "subcontract_typed", "Concrete, electrician, irrigation repair."),
        {.label = "Contract tax is on",
         .name = "tax_base",
         .kind = Kind::Kept,
         .value = "the whole price",
         .validity = choice({"the whole price", "marked-up materials"}),
         .note = "Counts only where tax.contract on Rules is above 0. Ask the state's revenue office."},
        {.label = "Deposit asked",
         .name = "deposit_asked",
         .kind = Kind::Measured,
         .format = show::money,
         .measure = Measure::Dollars,
         .validity = between(0, 1000000),
         .note = "Blank: as much as the rules allow."},
        {.label = "Contingency is",
         .name = "contingency_from",
         .kind = Kind::Kept,
         .value = "what the risks ask",
         .validity = choice({"what the risks ask", "the share on Rules"}),
         .note =
             "The risks: table at the end of this sheet. Or the share of direct cost, contingency on Rules."},
        typedKept(
            "Overhead of the year", "year_overhead",
            "Office, trucks, insurance, unpaid hours: all that no job is charged with. From the year's books."),
        typedKept("Direct cost of the year", "year_direct",
                  "Of all jobs of the same year. Blank: overhead is a published survey's, on Rules."),
        {.label = "Gross margin wanted",
         .name = "margin_wanted",
         .kind = Kind::Kept,
         .format = show::percent(1),
         .validity = between(0, 0.95),
         .note = "Only to compare: the price that would give this margin."},
    };
    Form direct;
    direct.name = "Direct cost";
    direct.heading = "Direct cost";
    const std::vector<std::string> apart = {"delivery", "equipment", "disposal", "permit", "subcontract"};
    std::string goods = "SUM([Takeoff.Amount])+SUM([Additions.Amount])";
    for (const std::string& group : apart) {
        direct.fields.push_back(hidden("On Takeoff: " + group, "listed_" + group, inGroup(group)));
        goods += "-listed_" + group;
    }
    addRate(direct, "tax.material", "tax_material");
    const std::vector<Field> lines = {
        moneyField("Materials", "materials_cost", withEngine("ROUND(" + goods + ";2)"),
                   "Takeoff and Additions, all groups of goods."),
        moneyField(
            "Taxable purchases", "materials_taxable",
            withEngine(
                "ROUND(SUMIF([Takeoff.Taxable];\"yes\";[Takeoff.Amount])+SUMIF([Additions.Taxable];\"yes\";[Additions.Amount]);2)"),
            "Not a cost by itself: the lines marked taxable, hire included."),
        moneyField(
            "Sales tax on purchases", "materials_tax",
            "IF(AND(engine_there;tax_material_fault=\"\");ROUND(materials_taxable*tax_material_read;2);\"\")",
            "Rounded once, on the taxable total; the contractor pays it, so it is a cost."),
        moneyField("Delivery", "delivery_cost", ownLine("delivery", "delivery_typed")),
        moneyField("Labor", "labor_line", withEngine("N(labor_cost)"), "From Labor."),
        moneyField("Equipment", "equipment_cost", ownLine("equipment", "equipment_typed")),
        moneyField("Disposal", "disposal_cost", ownLine("disposal", "disposal_typed")),
        moneyField("Permits", "permits_cost", ownLine("permit", "permits_typed")),
        moneyField("Subcontract", "subcontract_cost", ownLine("subcontract", "subcontract_typed")),
        moneyField(
            "Direct cost", "direct_cost",
            "IF(ISNUMBER(materials_tax);ROUND(materials_cost+materials_tax+delivery_cost+labor_line+equipment_cost+disposal_cost+permits_cost+subcontract_cost;2);\"\")",
            "Sum of the lines as shown, without the taxable purchases."),
    };
    direct.fields.insert(direct.fields.end(), lines.begin(), lines.end());
    const auto ofDirect = [](const std::string& formula) {
        return "IF(ISNUMBER(direct_cost);" + formula + ";\"\")";
    };
    Form price;
    price.name = "Price";
    price.heading = "Price";
    addRate(price, "tax.contract", "tax_contract");
    price.fields.push_back(hidden(
        "Contract tax is on", "tax_contract_on",
        "IF(ISNUMBER(price_net);IF(tax_base=\"marked-up materials\";IF(direct_cost>0;materials_cost*price_net/"
        "direct_cost;0);price_net);\"\")"));
    const std::vector<Field> steps = {
        percent(
            "Overhead's share", "overhead_share",
            "IF(LEFT(quote_amounts;2)=\"NO\";\"\";IF(N(year_direct)>0;N(year_overhead)/year_direct;{overhead}))",
            "Of direct cost: the year's own where both figures stand above, else the survey's on Rules."),
        moneyField(
            "Contingency", "contingency_cost",
            ofDirect(
                "IF(contingency_from=\"the share on Rules\";ROUND(direct_cost*{contingency};2);risk_asked)"),
            "What the risks ask, or the share of direct cost on Rules."),
        moneyField("Overhead", "overhead_cost",
                   ofDirect("IF(ISNUMBER(overhead_share);ROUND(direct_cost*overhead_share;2);\"\")"),
                   "Direct cost x overhead's share."),
        moneyField("Profit", "profit_cost",
                   ofDirect("IF(ISNUMBER(overhead_cost);ROUND((direct_cost+overhead_cost)*{profit};2);\"\")"),
                   "Share of direct cost and overhead, from Rules."),
        moneyField(
            "Price before tax", "price_net",
            ofDirect(
                "IF(COUNT(contingency_cost;overhead_cost;profit_cost)=3;ROUND(direct_cost+contingency_cost+overhead_cost+profit_cost;2);\"\")")),
        moneyField(
            "Contract tax", "contract_tax",
            ofDirect(
                "IF(AND(tax_contract_fault=\"\";ISNUMBER(tax_contract_on));ROUND(tax_contract_on*tax_contract_read;2);\"\")"),
            "Only where a rule says that the contract is taxed."),
        moneyField(
            "Price", "price_total",
            "IF(AND(ISNUMBER(price_net);ISNUMBER(contract_tax));ROUND(price_net+contract_tax;2);\"\")"),
        {.label = "Ready?", .name = "quote_check", .kind = Kind::Verdict, .format = show::general},
    };
    price.fields.insert(price.fields.end(), steps.begin(), steps.end());
    Cases amounts;
    for (const Field& field : choices.fields)
        if (field.kind == Kind::Measured) amounts.push_back(notANumber(field.label, field.name));
    for (const auto& [words, name] : {std::pair{"the year's overhead", "year_overhead"},
                                      std::pair{"the year's direct cost", "year_direct"},
                                      std::pair{"the gross margin wanted", "margin_wanted"}})
        amounts.push_back(notANumber(words, name));
    amounts.emplace_back("COUNT(year_overhead;year_direct)=1",
                         "\"NO: of the year's overhead and direct cost one is missing\"");
    amounts.emplace_back("OR(N(year_overhead)<0;AND(ISNUMBER(year_direct);N(year_direct)<=0))",
                         "\"NO: the year's overhead is 0 or more, its direct cost above 0\"");
    amounts.emplace_back("OR(N(margin_wanted)<0;N(margin_wanted)>=1)",
                         "\"NO: the gross margin wanted is a share from 0 to 0.95; 30 % is 0.3\"");
    amounts.emplace_back("N(deposit_asked)<0", "\"NO: the deposit asked is below 0\"");
    amounts.emplace_back(
        "NOT(OR(ISBLANK(tax_base);tax_base=\"the whole price\";tax_base=\"marked-up materials\"))",
        "\"NO: contract tax is on the whole price or on marked-up materials\"");
    amounts.emplace_back(
        "NOT(OR(ISBLANK(contingency_from);contingency_from=\"what the risks ask\";contingency_from=\"the share on Rules\"))",
        "\"NO: contingency is what the risks ask or the share on Rules\"");
    choices.fields.push_back(hidden("Amounts", "quote_amounts", ""));
    judge(choices, "quote_amounts", amounts, "\"OK\"");
    Cases faults = {
        {"NOT(engine_there)", "\"NO: no price without the add-in: see Job\""},
        {"takeoff_gaps<>\"\"", "takeoff_gaps"},
        {"tax_material_fault<>\"\"", "tax_material_fault"},
        {"tax_contract_fault<>\"\"", "tax_contract_fault"},
        {"risk_fault<>\"\"", "risk_fault"},
        {"LEFT(takeoff_check;2)=\"NO\"", "\"NO: the price is short: Takeoff: \"&MID(takeoff_check;5;200)"},
        {"LEFT(labor_check;2)=\"NO\"", "\"NO: the price is short: Labor: \"&MID(labor_check;5;200)"}};
    faults.emplace_back("LEFT(quote_amounts;2)=\"NO\"", "quote_amounts");
    faults =
        faults +
        Cases{{"NOT(ISNUMBER(price_total))", "\"NO: no price\""},
              {"N(profit_cost)<0", "\"NO: a negative margin: the profit on Rules is below 0\""},
              {"N(deposit_asked)>deposit_cap",
               "\"NO: the deposit asked is over the cap of \"&TEXT(deposit_cap;\"#,##0.00\")"},
              {"N(count_no)>0",
               "\"NO: \"&" + saidCount("count_no", "row of the job has a NO", "rows of the job have a NO")},
              {"LEFT(pit_verdict;2)=\"NO\"", "\"NO: the pit: \"&MID(pit_verdict;5;200)"},
              {"fields_words>0", fieldsUnread},
              {"NOT(ISNUMBER(quote_date))", "\"CHECK: the quote's date on Job is missing\""},
              {"fields_unread<>\"\"", fieldsUnusual},
              {startsWith("takeoff_check", "CHECK"), "\"CHECK: Takeoff: \"&" + behindColon("takeoff_check")},
              {startsWith("labor_check", "CHECK"), "\"CHECK: Labor: \"&" + behindColon("labor_check")}};
    judge(price, "quote_check", faults, "\"OK\"");
    const auto ofPrice = [](const std::string& formula) {
        return "IF(AND(ISNUMBER(price_net);N(direct_cost)>0);" + formula + ";\"\")";
    };
    Form range;
    range.name = "Price range";
    range.heading = "What he earns, what may go wrong, what it would cost";
    const auto known = [](const std::string& formula) {
        return "IF(AND(ISNUMBER(price_net);risk_fault=\"\");" + formula + ";\"\")";
    };
    const std::string parts = "[Risks.Likely];[Risks.Low];[Risks.High];[Risks.Chance])";
    const auto worst = [&](const char* label, const char* name, const std::string& place) {
        return Field{.label = label,
                     .name = name,
                     .kind = Kind::Computed,
                     .format = show::general,
                     .value = "=IFERROR(INDEX([Risks.Risk];MATCH(LARGE([Risks.Over];" + place +
                              ");[Risks.Over];0))&\": \"&TEXT(LARGE([Risks.Over];" + place +
                              ");\"#,##0\");\"\")",
                     .wide = true};
    };
    range.fields = {
        moneyField("Price before tax", "price_told", known("price_net"),
                   "Of it direct cost, overhead, contingency and profit, below."),
        hidden(
            "Earthwork", "risk_earth",
            "IF(ISNUMBER(labor_rate);SUMIF([Labor.Unit];IF(units=\"metric\";\"m3\";\"cu yd\");[Labor.Hours])*labor_rate;0)"),
        hidden("Risks that cannot be read", "risk_fault",
               "IF(" + countOf("Risks.Check", "NO") + ">0;\"NO: a row of the risks cannot be read\";\"\")"),
        moneyField(
            "Earned as estimated", "earn_likely", known("ROUND(price_net-direct_cost-overhead_cost;2)"),
            "Price less direct cost and overhead: profit, and the contingency where nothing goes wrong."),
        moneyField(
            "What the risks ask", "risk_asked",
            "IF(AND(ISNUMBER(direct_cost);risk_fault=\"\");MAX(0;ROUND(SUM([Risks.Expected])-direct_cost;2));\"\")",
            "What the job costs on average over its estimate: chance x (low + likely + high) / 3, summed."),
        percent("The same, of direct cost", "risk_share",
                "IF(AND(ISNUMBER(risk_asked);N(direct_cost)>0);risk_asked/direct_cost;\"\")", ""),
        percent(
            "Chance of a loss at this price", "risk_chance",
            known("PRICE.CHANCE(price_net-overhead_cost;" + parts),
            "That direct cost and overhead come to more than the price: 20,000 draws of the risks, within 1 %."),
        worst("What may go wrong most", "risk_first", "1"),
        worst("Second", "risk_second", "2"),
        worst("Third", "risk_third", "3"),
        moneyField("Cost, one job in ten is cheaper", "cost_low",
                   known("ROUND(PRICE.COST(0.1;" + parts + "+overhead_cost;2)"), "Overhead included."),
        moneyField("Cost, half of the jobs are dearer", "cost_half",
                   known("ROUND(PRICE.COST(0.5;" + parts + "+overhead_cost;2)"), ""),
        moneyField("Cost, one job in ten is dearer", "cost_high",
                   known("ROUND(PRICE.COST(0.9;" + parts + "+overhead_cost;2)"), ""),
        moneyField("Earned then", "earn_low", known("price_net-cost_high"), "Below 0: a loss, and its size."),
        moneyField("Price with a chance of a loss of 1 in 10", "price_safe", known("cost_high"),
                   "Before contract tax."),
    };
    Form told;
    told.name = "Price told";
    told.heading = "The same price, told in other ways";
    told.fields = {
        percent("Markup", "markup", ofPrice("price_net/direct_cost-1"),
                "What is added, as a share of direct cost."),
        percent(
            "Gross margin", "margin", ofPrice("1-direct_cost/price_net"),
            "What is left over direct cost, as a share of the price. 20 % markup is 16.7 % gross margin."),
        percent(
            "Net margin", "margin_net",
            ofPrice("(price_net-direct_cost-overhead_cost-contingency_cost)/price_net"),
            "What is left when overhead is paid and the contingency is used up. Remodelers, mean of 2018: gross 30.1 %, net 5.2 % (NAHB)."),
        percent(
            "Markup that the gross margin wanted needs", "markup_wanted",
            "IF(AND(ISNUMBER(direct_cost);ISNUMBER(margin_wanted);N(margin_wanted)<1);margin_wanted/(1-margin_wanted);\"\")"),
        moneyField(
            "Price at the gross margin wanted", "price_wanted",
            "IF(AND(ISNUMBER(direct_cost);ISNUMBER(margin_wanted);N(margin_wanted)<1);ROUND(direct_cost/(1-margin_wanted);2);\"\")"),
        {.label = "Price along the pipe",
         .name = "price_foot",
         .kind = Kind::Computed,
         .format = show::money,
         .measure = Measure::DollarsPerFoot,
         .value = "=IF(AND(ISNUMBER(price_net);qty_pipe_length>0);ROUND(price_net/qty_pipe_length;2);\"\")",
         .note =
             "Through lawn mostly 20 to 60 $/ft (metric: 70 to 200 $/m), through concrete 60 to 150 (200 to 500); common practice, no source, wide."},
        moneyField(
            "Deposit cap", "deposit_cap",
            "IF(ISNUMBER(price_total);MIN(ROUND(price_total*{deposit.max.share};2);{deposit.max.amount};law_deposit);\"\")",
            "The smallest of the two on Rules and of the state's on Dates."),
        moneyField("Deposit", "deposit", "IF(ISNUMBER(deposit_asked);deposit_asked;deposit_cap)"),
        {.label = "Price holds until",
         .name = "quote_until",
         .kind = Kind::Computed,
         .format = show::date,
         .value = "=IF(ISNUMBER(quote_date);quote_date+{quote.days};\"\")"},
    };
    Table options;
    options.name = "Options";
    options.rows = 6;
    options.columns = {
        {.heading = "Option",
         .kind = Kind::Measured,
         .width = 66,
         .note = "Another way to do the job, worked out in a file of its own.",
         .wrapped = true},
        {.heading = "Its price",
         .kind = Kind::Measured,
         .format = show::number(2),
         .width = 32,
         .validity = between(0, 10000000),
         .note = "Price on its Quote on that day."},
        {.heading = "On", .kind = Kind::Permit, .format = show::date, .width = 24},
        {.heading = "File", .kind = Kind::Permit, .width = 74, .wrapped = true},
        {.heading = "Against this one",
         .format = show::number(2),
         .width = 32,
         .formula = "IF(AND(ISNUMBER([Its price]);ISNUMBER(price_total));[Its price]-price_total;\"\")",
         .note = "Above 0: dearer than this job."},
        {.heading = "Check", .kind = Kind::Verdict, .width = 46, .wrapped = true},
        // Under the hidden columns of Risks: what its Check compares with.
        {.heading = "This job then",
         .kind = Kind::Measured,
         .format = show::number(2),
         .width = 32,
         .note = "This job's own price on that day: when it moves, the comparison is stale."},
    };
    judge(
        options, "Check",
        ownErrors({"Option", "Its price", "On", "This job then"}) +
            Cases{
                {"AND([Option]=\"\";ISBLANK([Its price]))", "\"\""},
                {"NOT(ISNUMBER([Its price]))", "\"NO: its price is not a number\""},
                {"NOT(ISNUMBER([On]))", "\"CHECK: of what day is this price?\""},
                {"AND(ISNUMBER([This job then]);ISNUMBER(price_total);N([This job then])<>N(price_total))",
                 "\"CHECK: stale: this job cost \"&TEXT([This job then];\"#,##0.00\")&\" then; note the option anew\""},
                {"AND(ISNUMBER(quote_date);N([On])-N(quote_date)>{price.age.max})",
                 "\"CHECK: stale: \"&([On]-quote_date)&\" days after the quote\""}},
        "\"OK\"");
    Sheet sheet;
    sheet.name = "Quote";
    sheet.title = "Quote";
    sheet.purpose =
        "From direct cost to the price. Every line is rounded to the cent; totals are sums of the cents shown.";
    sheet.parts = {range, choices, direct, price, told, risks(), options};
    sheet.widths = {66, 32, 24, 74};
    return sheet;
}

}  // namespace trenchbook::sheets
