#include "trenchbook/layout/lettering.h"

#include <algorithm>
#include <map>
#include <string>

namespace trenchbook {
namespace {

// Points on a grid 4 wide and 6 high, two figures each; | lifts the pen.
const char* glyph(char32_t letter) {
    static const std::map<char32_t, const char*> glyphs = {
        {U'A', "00 26 40|12 32"},
        {U'B', "00 06 36 45 44 33 03|33 42 41 30 00"},
        {U'C', "45 36 16 05 01 10 30 41"},
        {U'D', "00 06 26 44 42 20 00"},
        {U'E', "46 06 00 40|03 33"},
        {U'F', "46 06 00|03 33"},
        {U'G', "45 36 16 05 01 10 30 41 43 23"},
        {U'H', "00 06|40 46|03 43"},
        {U'I', "10 30|20 26|16 36"},
        {U'J', "46 41 30 10 01"},
        {U'K', "00 06|46 03 40"},
        {U'L', "06 00 40"},
        {U'M', "00 06 23 46 40"},
        {U'N', "00 06 40 46"},
        {U'Ñ', "00 05 40 45|16 37"},
        {U'O', "10 01 05 16 36 45 41 30 10"},
        {U'P', "00 06 36 45 44 33 03"},
        {U'Q', "10 01 05 16 36 45 41 30 10|22 40"},
        {U'R', "00 06 36 45 44 33 03|23 40"},
        {U'S', "45 36 16 05 04 13 33 42 41 30 10 01"},
        {U'T', "06 46|26 20"},
        {U'U', "06 01 10 30 41 46"},
        {U'V', "06 20 46"},
        {U'W', "06 10 23 30 46"},
        {U'X', "00 46|06 40"},
        {U'Y', "06 23 46|23 20"},
        {U'Z', "06 46 00 40"},
        {U'0', "10 01 05 16 36 45 41 30 10|11 35"},
        {U'1', "15 26 20|10 30"},
        {U'2', "05 16 36 45 44 00 40"},
        {U'3', "06 46 24 34 43 41 30 10 01"},
        {U'4', "36 02 42|30 36"},
        {U'5', "46 06 03 33 42 41 30 10 01"},
        {U'6', "45 36 16 05 01 10 30 41 42 33 03"},
        {U'7', "06 46 10"},
        {U'8', "13 04 05 16 36 45 44 33 13 02 01 10 30 41 42 33"},
        {U'9', "01 10 30 41 45 36 16 05 04 13 43"},
        {U'-', "13 33"},
        {U'.', "20 21"},
        {U',', "21 10"},
        {U':', "21 22|24 25"},
        {U'/', "00 46"},
        {U'\'', "25 26"},
        {U'"', "14 16|34 36"},
        {U'+', "03 43|21 25"},
        {U'=', "12 32|14 34"},
        {U'%', "05 06 16 15 05|00 46|30 31 41 40 30"},
        {U'(', "36 24 22 30"},
        {U')', "16 24 22 10"},
        {U' ', ""},
        {U'²', "15 26 35 13 33"},
        {U'³', "16 36 25 34 33 13"},
    };
    const auto found = glyphs.find(letter);
    return found == glyphs.end() ? "10 14 34 30 10" : found->second;
}

// Capitals of UTF-8, accents taken off.
std::u32string capitals(std::string_view text) {
    static const std::map<char32_t, char32_t> plain = {{U'Á', U'A'}, {U'É', U'E'}, {U'Í', U'I'},
                                                       {U'Ó', U'O'}, {U'Ú', U'U'}, {U'Ü', U'U'}};
    std::u32string letters;
    for (std::size_t i = 0; i < text.size(); ++i) {
        const auto first = static_cast<unsigned char>(text[i]);
        char32_t letter = first;
        if (first >= 0xC0) {
            const int more = first < 0xE0 ? 1 : first < 0xF0 ? 2 : 3;
            letter = first & (0x3FU >> more);
            for (int k = 0; k < more && i + 1 < text.size(); ++k)
                letter = letter << 6 | (static_cast<unsigned char>(text[++i]) & 0x3FU);
        }
        if ((letter >= U'a' && letter <= U'z') || (letter >= U'à' && letter <= U'þ')) letter -= 0x20;
        const auto found = plain.find(letter);
        letters += found == plain.end() ? letter : found->second;
    }
    return letters;
}

}  // namespace

std::vector<PlanStroke> lettered(std::string_view text, const PlanPoint& at, Length height,
                                 DrawingLayer layer) {
    std::vector<PlanStroke> strokes;
    const Length step = height / 6;
    Length left = at.east;
    for (const char32_t letter : capitals(text)) {
        const std::string points = glyph(letter);
        PlanStroke stroke{.layer = layer};
        for (std::size_t i = 0; i + 1 < points.size(); i += 3) {
            stroke.points.push_back(
                {left + step * (points[i] - '0'), at.north + step * (points[i + 1] - '0')});
            const bool ends = i + 2 >= points.size() || points[i + 2] == '|';
            if (ends) {
                strokes.push_back(stroke);
                stroke.points.clear();
            }
        }
        left += height;
    }
    return strokes;
}

Length letteredWidth(std::string_view text, Length height) {
    const std::size_t letters = capitals(text).size();
    return letters == 0 ? Length{} : height * (static_cast<double>(letters) - 1.0 / 3);
}

}  // namespace trenchbook
