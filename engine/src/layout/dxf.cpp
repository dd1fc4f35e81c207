#include "trenchbook/layout/dxf.h"

#include <cstdint>
#include <cstdio>

namespace trenchbook {
namespace {

// Colors of the index that stand apart on black and on white; a plotter draws all of them black.
constexpr int colors[drawingLayerCount] = {7, 8, 8, 8, 5, 6, 4, 3,  8, 8, 6, 1, 1,
                                           1, 9, 1, 7, 2, 8, 5, 30, 3, 6, 9, 7};

// UTF-8 to what release 12 reads.
std::string escaped(const std::string& text) {
    std::string out;
    for (std::size_t i = 0; i < text.size();) {
        const auto first = static_cast<unsigned char>(text[i]);
        const int more = first < 0x80 ? 0 : first < 0xE0 ? 1 : first < 0xF0 ? 2 : 3;
        std::uint32_t code = more == 0 ? first : first & (0x3FU >> more);
        for (int k = 1; k <= more && i + k < text.size(); ++k)
            code = code << 6 | (static_cast<unsigned char>(text[i + k]) & 0x3FU);
        i += static_cast<std::size_t>(more) + 1;
        if (code >= 0x20 && code < 0x7F) {
            out += static_cast<char>(code);
        } else if (code >= 0x80) {
            char buffer[16];
            std::snprintf(buffer, sizeof buffer, "\\U+%04X", static_cast<unsigned>(code));
            out += buffer;
        }
    }
    return out;
}

class Writer {
  public:
    explicit Writer(double unit) : unit_(unit) {}

    void pair(int code, const std::string& value) { out += std::to_string(code) + "\n" + value + "\n"; }
    void whole(int code, int value) { pair(code, std::to_string(value)); }
    void length(int code, Length value) {
        char buffer[40];
        std::snprintf(buffer, sizeof buffer, "%.6f", value.si() / unit_);
        pair(code, buffer);
    }
    void at(const PlanPoint& point) {
        length(10, point.east);
        length(20, point.north);
        length(30, Length{});
    }

    std::string out;

  private:
    double unit_;
};

}  // namespace

std::string dxfText(const PlanDrawing& drawing, UnitSystem units, Length textHeight) {
    Writer dxf(info(Unit::Feet).si(units));
    dxf.pair(0, "SECTION");
    dxf.pair(2, "HEADER");
    dxf.pair(9, "$ACADVER");
    dxf.pair(1, "AC1009");
    dxf.pair(9, "$INSUNITS");
    dxf.whole(70, units == UnitSystem::Metric ? 6 : 2);
    dxf.pair(0, "ENDSEC");
    dxf.pair(0, "SECTION");
    dxf.pair(2, "TABLES");
    dxf.pair(0, "TABLE");
    dxf.pair(2, "LAYER");
    dxf.whole(70, static_cast<int>(drawingLayerCount));
    for (std::size_t i = 0; i < drawingLayerCount; ++i) {
        dxf.pair(0, "LAYER");
        dxf.pair(2, layerName(static_cast<DrawingLayer>(i)));
        dxf.whole(70, 0);
        dxf.whole(62, colors[i]);
        dxf.pair(6, "CONTINUOUS");
    }
    dxf.pair(0, "ENDTAB");
    dxf.pair(0, "ENDSEC");
    dxf.pair(0, "SECTION");
    dxf.pair(2, "ENTITIES");
    for (const PlanStroke& stroke : drawing.strokes) {
        if (stroke.points.size() < 2) continue;
        dxf.pair(0, "POLYLINE");
        dxf.pair(8, layerName(stroke.layer));
        dxf.whole(66, 1);
        dxf.at({});
        dxf.whole(70, stroke.closed ? 1 : 0);
        for (const PlanPoint& point : stroke.points) {
            dxf.pair(0, "VERTEX");
            dxf.pair(8, layerName(stroke.layer));
            dxf.at(point);
        }
        dxf.pair(0, "SEQEND");
    }
    for (const PlanLabel& label : drawing.labels) {
        dxf.pair(0, "TEXT");
        dxf.pair(8, layerName(label.layer));
        dxf.at(label.at);
        dxf.length(40, textHeight);
        dxf.pair(1, escaped(label.text));
    }
    dxf.pair(0, "ENDSEC");
    dxf.pair(0, "EOF");
    return std::move(dxf.out);
}

}  // namespace trenchbook
