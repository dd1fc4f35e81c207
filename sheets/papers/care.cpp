// One page that stays with the owner: what lies in the ground, what to do each season, what to look for after a storm.
#include "buying/money.h"
#include "papers/owner_words.h"

namespace trenchbook::sheets {

Sheet careSheet(const JobSize&) {
    using namespace words;
    Paragraphs built;
    built.heading = "What lies in your ground";
    built.span = 4;
    built.linesHigh = 2;
    built.lines = {
        "=IF(engine_there;\"\";\"NOT READY: worked out only where the add-in is installed. \")&said_pipe_total&" +
            length +
            "&\" of drain pipe (\"&said_pipes&\") take in \"&said_inlets&\" and end at: \"&outlet&\".\"",
        "=IF(has_pit;\"The garden end is \"&said_pit&\". Between storms it empties in about \"&said_pit_hours&IF(said_pit_hours=\"1\";\" hour\";\" hours\")&\"; in a big storm water stands in the tee and runs over the ground: that is how it is meant.\";\"\")",
        "=said_storm",
    };
    Paragraphs seasons;
    seasons.heading = "Through the year";
    seasons.span = 4;
    seasons.lines = {
        "=IF(said_grates=\"\";\"Spring: look whether the trench has settled; top it up with soil.\";\"Spring: lift the grates of \"&said_grates&\" and take out the mud. Look whether the trench has settled; top it up with soil.\")",
        "Summer: keep the outlet mown and open. Run a hose into the highest inlet for ten minutes and see that the water comes out at the end.",
        "=\"Fall: \"&IF(qty_downspouts=0;\"\";\"clean gutters and strainers before and after the leaves come down. \")&IF(said_grates=\"\";\"\";\"Lift the grates once more.\")",
        "=IF(COUNTA([Pump.Basin])>0;\"Every season: pour water into the pump basin until the pump starts, and see that it stops again and that the water comes out at the end of its pipe. Try the alarm or battery too. When the power is out nothing is pumped.\";\"\")",
        "=\"Winter: keep the outlet free of ice and snow.\"&IF(qty_cleanouts>0;\" Once a year flush the line from the cleanouts, from the top down.\";\"\")",
    };
    Paragraphs storms;
    storms.heading = "After a big storm";
    storms.span = 4;
    storms.lines = {
        "Water that still stands in an inlet the next day: the line is blocked below it. Flush from the next cleanout.",
        "=IF(has_pit;\"Lift the tee's grate and note how long the pit takes to empty. Longer than \"&said_pit_longest&IF(said_pit_longest=\"1\";\" hour\";\" hours\")&\", twice: call us.\";\"A wet streak over the line: call us.\")",
        "Soil washed out at the outlet: lay stones there before the hole grows.",
    };
    Paragraphs never;
    never.heading = "Please never";
    never.span = 4;
    never.lines = {
        "Lead anything but rain into the drain: no sump, pool backwash, sink or septic.",
        "=\"Drive over the lines where they were not built for it, plant trees within \"&IF(units=\"metric\";\"3 m\";\"10 ft\")&\" of them, or dig without calling 811 first.\"",
        "=IF(OR(ISNUMBER(SEARCH(\"ditch\";outlet));ISNUMBER(SEARCH(\"swale\";outlet)));\"Fill, pave or block the ditch or swale that the water runs to; it may belong to others.\";\"Send the water onto a neighbor or a sidewalk.\")",
    };

    const std::string kinds =
        "{\"cleanout\";\"basin\";\"channel\";\"outlet\";\"tee\";\"riser\";\"pop-up\";\"bank\";\"ditch\";\"curb\";\"existing pipe\";\"pump basin\";\"cap\"}";
    const std::string row = "SUMPRODUCT(SMALL(IF(ISNUMBER(MATCH([Nodes.Kind];" + kinds +
                            ";0));ROW([Nodes.Kind])-MIN(ROW([Nodes.Kind]))+1;\"\");[#]-1))";
    const auto ofNode = [](const std::string& column) {
        return "IFERROR(INDEX([Nodes." + column + "];[Row])&\"\";\"\")";
    };
    Table points;
    points.name = "Points to find";
    points.rows = 14;
    points.columns = {
        {.heading = "What",
         .format = show::general,
         .width = 40,
         .formula = "IF([Point]=\"\";\"\";IFERROR(INDEX(<nodes_words.Kind:*>;[Row])&\"\";\"\"))"},
        {.heading = "Point", .format = show::general, .width = 40, .formula = ofNode("Node")},
        {.heading = "From house corner 1", .format = show::general, .width = 50, .formula = ofNode("Tie 1")},
        {.heading = "From house corner 2", .format = show::general, .width = 56, .formula = ofNode("Tie 2")},
        {.heading = "Row",
         .format = show::general,
         .width = 20,
         .formula = "IFERROR(" + row + ";\"\")",
         .helper = true},
    };
    Sheet sheet;
    sheet.name = "Care";
    sheet.title = "=letter_name";
    sheet.purpose = "=letter_line";
    Paragraphs head;
    head.span = 4;
    head.large = true;
    head.lines = {
        "=\"Caring for your drain\"",
        "=\"Keep this page with the papers of the house. \"&IF(lot_there;\"The lot and its lines are on the drawing with it.\";\"\")"};
    sheet.parts = {head, built, seasons, storms, never, points};
    sheet.widths = {40, 40, 50, 56};
    sheet.landscape = false;
    sheet.trueSize = sheet.paper = sheet.letterhead = true;
    return sheet;
}

}  // namespace trenchbook::sheets
