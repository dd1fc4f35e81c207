// The job workbook: one function a sheet, in the order of the work.
#pragma once

#include "kit/model.h"

namespace trenchbook::sheets {

// Ready rows of the tables that grow with the job: more than a lot of two houses needs. Every ready row costs each opening
// and each recalculation.
struct JobSize {
    int levels = 45;
    int nodes = 45;
    int rain = 90;  // a national server's whole export
    int water = 30;
    int runs = 40;
    int ground = 24;
    int crossings = 20;
    int soak = 20;
    int outlets = 10;
    int points = 60;  // of the lot in plan
    int tapes = 40;
    int pumps = 3;
    int prices = 100;
    int orders = 70;
    int additions = 20;
    int bills = 45;
};
// Those of the large job, as many as stay under the limits of a template (docs/limits.md).
JobSize largeJob();

Sheet jobSheet(const JobSize&);
Sheet levelsSheet(const JobSize&);
Sheet nodesSheet(const JobSize&);
Sheet rainSheet(const JobSize&);
Sheet waterSheet(const JobSize&);
Sheet runsSheet(const JobSize&);
Sheet groundSheet(const JobSize&);
Sheet peakSheet(const JobSize&);
Sheet stormsSheet(const JobSize&);
Sheet planSheet(const JobSize&);
Sheet layoutSheet(const JobSize&);
Sheet tapesSheet(const JobSize&);
Sheet asBuiltSheet(const JobSize&);
Sheet drawingSheet(const JobSize&);
Sheet profileSheet(const JobSize&);
Sheet crossingsSheet(const JobSize&);
Sheet pitSheet(const JobSize&);
Sheet outletsSheet(const JobSize&);
Sheet pumpSheet(const JobSize&);
Sheet takeoffSheet(const JobSize&);
Sheet laborSheet(const JobSize&);
Sheet quoteSheet(const JobSize&);
Sheet crewSheet(const JobSize&);
Sheet cutListSheet(const JobSize&);
Sheet recordSheet(const JobSize&);
Sheet pricesSheet(const JobSize&);
Sheet rulesSheet(const JobSize&);
Sheet tablesSheet(const JobSize&);
Sheet functionsSheet(const JobSize&);
Sheet workingsSheet(const JobSize&);

std::string peakRoughness();  // Manning n for peak flows, blank for each pipe's own
std::string jobTables();      // the tables of the job as all JOB functions take them, before the units
std::string jobTail();        // and behind units and language: where the runs begin, the lot in plan
std::string
lotTables();  // the tables of the lot as the LAYOUT functions take them, before the paper and the units
std::string drawingPaper(
    bool north);  // these, the paper of the drawing and what else goes on it, units included
std::string
takeoffTables();  // the same with prices, codes and terms, as the functions over the takeoff take them
std::string jobMissing();   // what is still to measure or to ask, a line each; an array formula
std::string jobCautions();  // cautions of the whole job, likewise
// Lines that Profile shows, and their drawings as blocks: "profile_1_strokes" and so on.
constexpr int linesShown = 3;
std::string profileStrokes(int nth);
std::string profileCall(int nth);
// Rows of the list of findings on Workings, of the crew's stations and of its cuts.
inline int findingRows(const JobSize& size) { return 2 * size.runs; }
inline int stationRows(const JobSize& size) { return 2 * size.runs + 1; }  // both ends; a blank row says: all
inline int cutRows(const JobSize& size) { return 5 * size.runs / 2 + 1; }  // a run is of two pieces or three
constexpr int stormRows = 9;      // eight blocks and a centered storm
constexpr int takeoffRows = 120;  // of the list of goods there

Workbook jobWorkbook(const JobSize& size);

// The formula's value where the engine answers, else blank: what is left of a sum without it would look like a price.
inline std::string withEngine(const std::string& formula) { return "IF(engine_there;" + formula + ";\"\")"; }

// Every workbook that is shipped as a template: file name without ending, and how it is made.
struct Shipped {
    const char* file;
    Workbook (*make)();
};
const std::vector<Shipped>& shippedWorkbooks();

// Column of a choice between words.
inline Validity choice(std::vector<std::string> words, bool strict = true) {
    Validity made;
    made.words = std::move(words);
    made.strict = strict;
    return made;
}
// In which language a workbook's checks and papers speak.
inline Field languageField(const char* note = "Of the checks. en: English. es: español.") {
    return {.label = "Language",
            .name = "language",
            .kind = Kind::Kept,
            .value = "en",
            .validity = choice({"en", "es"}),
            .note = note};
}
inline Validity chosenFrom(std::string column) {
    Validity made;
    made.listFormula = std::move(column);
    made.strict = false;
    return made;
}
inline Validity between(double least, double greatest) {
    Validity made;
    made.least = least;
    made.greatest = greatest;
    return made;
}

}  // namespace trenchbook::sheets
