// Where words stand on a drawing so that they hide least: around the point they name, in the outline, along the line.
//
//     LabelPlaces places(strokes, width, height, Length::millimetres(2));
//     places.letters(label);      // strokes of its letters; what follows keeps away from them
//
// Each word tries a handful of places and takes the one that is crossed least by lines and by the words before it,
// the nearer one of equals. Lines lie in a grid of cells, so that a word looks at its neighborhood alone.
#pragma once

#include <vector>

#include "trenchbook/layout/drawing.h"

#pragma GCC visibility push(hidden)
namespace trenchbook {

class LabelPlaces {
  public:
    // All on paper.
    LabelPlaces(const std::vector<PlanStroke>& strokes, Length width, Length height, Length letterHeight);

    std::vector<PlanStroke> letters(const PlanLabel& label);

  private:
    struct Segment {
        PlanPoint a, b;
        bool word = false;
    };
    struct Pose {
        PlanPoint corner;   // lower left of the first letter
        Angle turned = {};  // counterclockwise
        double dislike = 0;
    };
    std::vector<Pose> poses(const PlanLabel& label, Length wide) const;
    double crossed(const Pose& pose, Length wide) const;
    void add(const Segment& segment);
    std::size_t cell(Length east, Length north) const;

    Length width_, height_, letter_;
    std::size_t across_ = 1, up_ = 1;
    std::vector<Segment> segments_;
    std::vector<std::vector<std::size_t>> cells_;  // segments by the cells that their boxes touch
    mutable std::vector<std::size_t> seen_;        // the question that a segment was last looked at for
    mutable std::size_t question_ = 0;
};

}  // namespace trenchbook
#pragma GCC visibility pop
