// Small jobs for the tests: their runs, nodes and inlets, and what was found about them.
#pragma once

#include <algorithm>
#include <optional>
#include <string>
#include <vector>

#include "trenchbook/job/solve.h"
#include "trenchbook/lines/node.h"
#include "trenchbook/lines/run.h"

namespace trenchbook::jobs {

// Runs that know nothing but their lengths, and the pipe where one is given.
inline std::vector<Run> runsOf(const std::vector<std::optional<Length>>& lengths,
                               const char* pipe = nullptr) {
    std::vector<Run> runs;
    for (const std::optional<Length>& length : lengths) {
        Run& run = runs.emplace_back();
        run.length = length;
        if (pipe != nullptr) run.pipe = stockPipe(pipe);
    }
    return runs;
}

inline Unusable unusable(const char* heading, const char* typed) {
    const std::string said(typed);
    return {heading,
            said,
            {std::string(heading) + " is \"" + said + "\"", std::string(heading) + " es \"" + said + "\""}};
}

// A node that turns, and takes a cable or not.
inline Node turning(std::string name, std::optional<Angle> turn, bool opening) {
    Node node{.name = std::move(name), .turn = turn, .kindGiven = true, .blank = false};
    if (!turn) node.unusable.push_back(unusable("Turn", "abc"));
    node.kinds.add(opening ? NodeKind::Cleanout : NodeKind::Bend);
    return node;
}

inline Node node(const char* name, const char* kinds, double groundFeet) {
    return {.name = name,
            .kinds = nodeKinds(kinds),
            .ground = Length::feet(groundFeet),
            .kindGiven = true,
            .blank = false};
}

// Where water entered through an inlet that is gone from Water, a cleanout stands.
inline void closeUnfed(Job& job) {
    for (Node& one : job.nodes) {
        const bool fed = std::any_of(job.inlets.begin(), job.inlets.end(), [&](const JobInlet& inlet) {
            return nameKey(inlet.node) == nameKey(one.name);
        });
        if (one.kinds.takesWater() && !fed) one.kinds = node("", "cleanout", 0).kinds;
    }
}
inline Run run(const char* from, const char* to, double feet, const char* pipe, Slope slope) {
    return {.from = from,
            .to = to,
            .length = Length::feet(feet),
            .pipe = stockPipe(pipe),
            .slope = slope,
            .surfaceUp = CoverSurface::Lawn,
            .surfaceDown = CoverSurface::Lawn,
            .blank = false};
}
// Roof that drains to a node; at 0.95 and 6 in/hr 400 sq ft bring 23.7 gpm.
inline JobInlet roof(const char* node, double squareFeet) {
    JobInlet inlet{.name = std::string("roof at ") + node, .node = node, .blank = false};
    inlet.roof = {Area::squareFeet(squareFeet), 0.95};
    return inlet;
}

// Half a foot over the ground before it at level 95.5, far from everything.
inline Outlet outletAt(const char* node) {
    return {.node = node,
            .flowLine = Length::feet(95.5),
            .lotLine = Length::feet(30),
            .walk = Length::feet(30),
            .foundation = Length::feet(30),
            .blank = false};
}

// Basin A, cleanout B, bank: 80 ft of 4 in pipe at 1.5 % under lawn, 16 in of cover; nothing to find about it.
//
//     A  ground 99.0  invert 97.2
//     B         98.4         96.6
//     Out       97.0         96.0
inline Job sound() {
    Job job;
    job.facts.rain = RainRate::inchesPerHour(6);
    job.facts.duration = Duration::minutes(5);
    job.nodes = {node("A", "basin", 99), node("B", "cleanout", 98.4), node("Out", "bank", 97)};
    job.outlets = {outletAt("Out")};
    job.runs = {run("A", "B", 40, "4 SDR35", Slope::percent(1.5)),
                run("B", "Out", 40, "4 SDR35", Slope::percent(1.5))};
    job.runs[1].surfaceDown = CoverSurface::Daylight;
    job.runs[1].outletLevel = Length::feet(96);
    job.inlets = {roof("A", 400)};
    return job;
}

// What was found about one row, as its Check tells it.
inline std::string check(const SolvedJob& solved, Part part, std::size_t row) {
    const std::span<const Finding> found = solved.of(part, row);
    return checkText(found).en;
}
// The finding of this rule about a row; null when there is none.
inline const Finding* ruled(const SolvedJob& solved, Part part, std::size_t row, const std::string& rule) {
    for (const Finding& finding : solved.of(part, row))
        if (finding.rule == rule) return &finding;
    return nullptr;
}

}  // namespace trenchbook::jobs
