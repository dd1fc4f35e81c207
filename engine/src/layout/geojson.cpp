#include "trenchbook/layout/geojson.h"

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <numbers>

#include "layout/plan_geometry.h"
#include "trenchbook/core/error.h"

namespace trenchbook {
namespace {

using layout::perDegree;
using layout::Vec;

// WGS 84.
constexpr double semiMajor = 6378137, flattening = 1 / 298.257223563;

// Metres a degree, east and north.
Vec perDegreeAt(double latitude) {
    constexpr double square = flattening * (2 - flattening);
    const double sine = std::sin(latitude * perDegree), root = std::sqrt(1 - square * sine * sine);
    return {perDegree * semiMajor / root * std::cos(latitude * perDegree),
            perDegree * semiMajor * (1 - square) / (root * root * root)};
}

Vec onGlobe(const GeoFit& fit, const PlanPoint& at) {
    const Vec from = layout::vec(at) - layout::vec(fit.middle);
    const double cosine = std::cos(fit.turned.degrees() * perDegree),
                 sine = std::sin(fit.turned.degrees() * perDegree);
    return {cosine * from.x + sine * from.y, -sine * from.x + cosine * from.y};
}

std::string number(double value) {
    char buffer[40];
    std::snprintf(buffer, sizeof buffer, "%.8f", value);
    return buffer;
}
std::string quoted(const std::string& text) {
    std::string out = "\"";
    for (const char letter : text) {
        if (letter == '"' || letter == '\\') out += '\\';
        if (static_cast<unsigned char>(letter) >= 0x20) out += letter;
    }
    return out + "\"";
}

class Writer {
  public:
    explicit Writer(const GeoFit& fit) : fit_(fit) {}

    std::string place(const PlanPoint& at) const {
        return "[" + number(fit_.longitude(at).degrees()) + "," + number(fit_.latitude(at).degrees()) + "]";
    }
    std::string places(const std::vector<PlanPoint>& points) const {
        std::string all;
        for (const PlanPoint& point : points) all += (all.empty() ? "" : ",") + place(point);
        return "[" + all + "]";
    }
    void feature(const char* geometry, const std::string& coordinates, DrawingLayer layer,
                 const std::string& name) {
        all_ += std::string(all_.empty() ? "" : ",\n") +
                "{\"type\":\"Feature\",\"properties\":{\"layer\":" + quoted(layerName(layer)) +
                ",\"name\":" + quoted(name) + "},\"geometry\":{\"type\":\"" + geometry +
                "\",\"coordinates\":" + coordinates + "}}";
    }
    std::string whole() const { return "{\"type\":\"FeatureCollection\",\"features\":[\n" + all_ + "\n]}\n"; }

  private:
    const GeoFit& fit_;
    std::string all_;
};

}  // namespace

Angle GeoFit::longitude(const PlanPoint& at) const {
    return Angle::degrees(longitudeThere.degrees() +
                          onGlobe(*this, at).x / perDegreeAt(latitudeThere.degrees()).x);
}
Angle GeoFit::latitude(const PlanPoint& at) const {
    return Angle::degrees(latitudeThere.degrees() +
                          onGlobe(*this, at).y / perDegreeAt(latitudeThere.degrees()).y);
}

GeoFit geoFit(std::span<const GeoPoint> points) {
    GeoFit fit;
    const double count = static_cast<double>(points.size());
    Vec middle;
    double longitude = 0, latitude = 0;
    for (const GeoPoint& one : points) {
        middle = middle + 1 / count * layout::vec(one.at);
        longitude += one.longitude.degrees() / count;
        latitude += one.latitude.degrees() / count;
    }
    fit.middle = layout::point(middle);
    fit.longitudeThere = Angle::degrees(longitude);
    fit.latitudeThere = Angle::degrees(latitude);
    const Vec unit = perDegreeAt(latitude);
    double along = 0, across = 0, spread = 0;
    const auto globe = [&](const GeoPoint& one) {
        return Vec{(one.longitude.degrees() - longitude) * unit.x,
                   (one.latitude.degrees() - latitude) * unit.y};
    };
    for (const GeoPoint& one : points) {
        const Vec here = layout::vec(one.at) - middle, there = globe(one);
        along += layout::dot(here, there);
        across += layout::cross(there, here);
        spread = std::max({spread, layout::size(here)});
    }
    if (points.size() < 2 || !(spread > 0.1) || !(std::hypot(along, across) > 0))
        throw Error(Error::Kind::BadArgument, "points", std::to_string(points.size()),
                    {"two or more, apart from each other, with longitude and latitude",
                     "dos o más, separados entre sí, con longitud y latitud"});
    fit.turned = Angle::degrees(std::atan2(across, along) / perDegree);
    for (const GeoPoint& one : points)
        fit.worst = std::max(fit.worst, Length::fromSi(layout::size(globe(one) - onGlobe(fit, one.at))));
    return fit;
}

std::string geoJson(const PlanDrawing& drawing, const GeoFit& fit) {
    Writer writer(fit);
    for (const PlanStroke& stroke : drawing.strokes) {
        if (stroke.points.size() < 2) continue;
        if (!stroke.closed || stroke.points.size() < 3) {
            writer.feature("LineString", writer.places(stroke.points), stroke.layer, stroke.name);
            continue;
        }
        std::vector<PlanPoint> ring = stroke.points;
        double turn = 0;
        for (std::size_t i = 0; i < ring.size(); ++i)
            turn += layout::cross(layout::vec(ring[i]) - layout::vec(ring[0]),
                                  layout::vec(ring[(i + 1) % ring.size()]) - layout::vec(ring[0]));
        if (turn < 0) std::reverse(ring.begin(), ring.end());
        ring.push_back(ring.front());
        writer.feature("Polygon", "[" + writer.places(ring) + "]", stroke.layer, stroke.name);
    }
    for (const PlanLabel& label : drawing.labels)
        writer.feature("Point", writer.place(label.at), label.layer, label.text);
    return writer.whole();
}

}  // namespace trenchbook
