// Quantities with their unit in the name: made by naming a unit, read by naming a unit.
//
//     Length bore = Length::inches(3.975);
//     bore.feet();                            // 0.33125
//     Flow total = Flow::gpm(40) + Flow::gpm(25);
//
// Inside is one double in SI (m, m2, m3, m3/s, m/s, s, Pa, t). Adding, subtracting, comparing and scaling work
// within one kind; a quantity divided by one of its own kind is a plain number. There is no constructor from a
// bare double, so a percent cannot pass for a fraction nor inches for feet.
//
// Conversions are the exact legal definitions (foot 0.3048 m, US gallon 231 cubic inches, short ton 2000 lb of
// 0.45359237 kg); a round trip through a unit is right to 2 units in the last place of a double.
#pragma once

#include <compare>

namespace trenchbook {

inline constexpr double metresPerFoot = 0.3048;
inline constexpr double metresPerInch = 0.0254;
inline constexpr double cubicMetresPerGallon = 231 * metresPerInch * metresPerInch * metresPerInch;
inline constexpr double newtonsPerPound = 0.45359237 * 9.80665;
inline constexpr double gravity = 9.80665;          // m/s2, standard
inline constexpr double waterUnitWeight = 9806.65;  // N/m3, water of 1000 kg/m3

template <class Kind>
class Quantity {
  public:
    constexpr double si() const { return si_; }
    static constexpr Kind fromSi(double si) {
        Kind made;
        made.si_ = si;
        return made;
    }

    constexpr auto operator<=>(const Quantity&) const = default;
    friend constexpr Kind operator+(Kind a, Kind b) { return fromSi(a.si_ + b.si_); }
    friend constexpr Kind operator-(Kind a, Kind b) { return fromSi(a.si_ - b.si_); }
    friend constexpr Kind operator-(Kind a) { return fromSi(-a.si_); }
    friend constexpr Kind operator*(Kind a, double factor) { return fromSi(a.si_ * factor); }
    friend constexpr Kind operator*(double factor, Kind a) { return fromSi(a.si_ * factor); }
    friend constexpr Kind operator/(Kind a, double divisor) { return fromSi(a.si_ / divisor); }
    friend constexpr double operator/(Kind a, Kind b) { return a.si_ / b.si_; }
    Kind& operator+=(Kind more) {
        si_ += more.si_;
        return static_cast<Kind&>(*this);
    }

  protected:
    double si_ = 0;
};

// Defines a maker and a reader for one unit: static Kind name(double) and double name() const.
#define TRENCHBOOK_UNIT(Kind, name, siPerUnit)                                       \
    static constexpr Kind name(double value) { return fromSi(value * (siPerUnit)); } \
    constexpr double name() const { return si_ / (siPerUnit); }

// Lengths, levels, drops, depths, bores, rain depths.
struct Length : Quantity<Length> {
    TRENCHBOOK_UNIT(Length, metres, 1.0)
    TRENCHBOOK_UNIT(Length, millimetres, 1e-3)
    TRENCHBOOK_UNIT(Length, feet, metresPerFoot)
    TRENCHBOOK_UNIT(Length, inches, metresPerInch)
};

struct Area : Quantity<Area> {
    TRENCHBOOK_UNIT(Area, squareMetres, 1.0)
    TRENCHBOOK_UNIT(Area, squareFeet, metresPerFoot* metresPerFoot)
    TRENCHBOOK_UNIT(Area, squareInches, metresPerInch* metresPerInch)
};

struct Volume : Quantity<Volume> {
    TRENCHBOOK_UNIT(Volume, cubicMetres, 1.0)
    TRENCHBOOK_UNIT(Volume, litres, 1e-3)
    TRENCHBOOK_UNIT(Volume, cubicFeet, metresPerFoot* metresPerFoot* metresPerFoot)
    TRENCHBOOK_UNIT(Volume, cubicYards, 27 * metresPerFoot * metresPerFoot * metresPerFoot)
    TRENCHBOOK_UNIT(Volume, gallons, cubicMetresPerGallon)
};

struct Duration : Quantity<Duration> {
    TRENCHBOOK_UNIT(Duration, seconds, 1.0)
    TRENCHBOOK_UNIT(Duration, minutes, 60.0)
    TRENCHBOOK_UNIT(Duration, hours, 3600.0)
    TRENCHBOOK_UNIT(Duration, days, 86400.0)
};

struct Flow : Quantity<Flow> {
    TRENCHBOOK_UNIT(Flow, cubicMetresPerSecond, 1.0)
    TRENCHBOOK_UNIT(Flow, litresPerSecond, 1e-3)
    TRENCHBOOK_UNIT(Flow, gpm, cubicMetresPerGallon / 60)
    TRENCHBOOK_UNIT(Flow, cfs, metresPerFoot* metresPerFoot* metresPerFoot)
};

// Speed of water, and also of rain and of water into soil (a depth a time).
struct Velocity : Quantity<Velocity> {
    TRENCHBOOK_UNIT(Velocity, metresPerSecond, 1.0)
    TRENCHBOOK_UNIT(Velocity, feetPerSecond, metresPerFoot)
    TRENCHBOOK_UNIT(Velocity, inchesPerHour, metresPerInch / 3600)
    TRENCHBOOK_UNIT(Velocity, millimetresPerHour, 1e-3 / 3600)
    TRENCHBOOK_UNIT(Velocity, feetPerDay, metresPerFoot / 86400)
    TRENCHBOOK_UNIT(Velocity, metresPerDay, 1.0 / 86400)
};
using RainRate = Velocity;
using SoilRate = Velocity;

// Fall over length along the pipe, as a fraction.
struct Slope : Quantity<Slope> {
    TRENCHBOOK_UNIT(Slope, fraction, 1.0)
    TRENCHBOOK_UNIT(Slope, percent, 0.01)
    TRENCHBOOK_UNIT(Slope, inchesPerFoot, 1.0 / 12)
};

// Force of the water on the pipe's wall.
struct Shear : Quantity<Shear> {
    TRENCHBOOK_UNIT(Shear, pascals, 1.0)
    TRENCHBOOK_UNIT(Shear, poundsPerSquareFoot, newtonsPerPound / (metresPerFoot * metresPerFoot))
};

struct Weight : Quantity<Weight> {
    TRENCHBOOK_UNIT(Weight, tonnes, 1.0)
    TRENCHBOOK_UNIT(Weight, shortTons, 0.90718474)
    TRENCHBOOK_UNIT(Weight, kilograms, 1e-3)
    TRENCHBOOK_UNIT(Weight, pounds, 0.45359237e-3)
};

// Of pipe, per length.
struct WeightPerLength : Quantity<WeightPerLength> {
    TRENCHBOOK_UNIT(WeightPerLength, kilogramsPerMetre, 1e-3)
    TRENCHBOOK_UNIT(WeightPerLength, poundsPerFoot, 0.45359237e-3 / metresPerFoot)
};

// Turns of a line. Kept in degrees, as they are sold; nothing here takes their sine.
struct Angle : Quantity<Angle> {
    TRENCHBOOK_UNIT(Angle, degrees, 1.0)
};

// Water temperature. Kept in degrees Celsius; Fahrenheit has an offset, so it has a maker of its own.
struct Temperature : Quantity<Temperature> {
    TRENCHBOOK_UNIT(Temperature, celsius, 1.0)
    static constexpr Temperature fahrenheit(double value) { return celsius((value - 32) / 1.8); }
    constexpr double fahrenheit() const { return si_ * 1.8 + 32; }
};

// Viscosity over density.
struct KinematicViscosity : Quantity<KinematicViscosity> {
    TRENCHBOOK_UNIT(KinematicViscosity, squareMetresPerSecond, 1.0)
    TRENCHBOOK_UNIT(KinematicViscosity, squareFeetPerSecond, metresPerFoot* metresPerFoot)
};

// Weight of a bulk material per volume it takes up.
struct BulkDensity : Quantity<BulkDensity> {
    TRENCHBOOK_UNIT(BulkDensity, tonnesPerCubicMetre, 1.0)
    TRENCHBOOK_UNIT(BulkDensity, shortTonsPerCubicYard,
                    0.90718474 / (27 * metresPerFoot * metresPerFoot * metresPerFoot))
    TRENCHBOOK_UNIT(BulkDensity, kilogramsPerCubicMetre, 1e-3)
    TRENCHBOOK_UNIT(BulkDensity, poundsPerCubicFoot,
                    0.45359237e-3 / (metresPerFoot * metresPerFoot * metresPerFoot))
};

// One currency; its name does not matter to the computation.
struct Money : Quantity<Money> {
    TRENCHBOOK_UNIT(Money, dollars, 1.0)
};

struct PricePerLength : Quantity<PricePerLength> {
    TRENCHBOOK_UNIT(PricePerLength, dollarsPerMetre, 1.0)
    TRENCHBOOK_UNIT(PricePerLength, dollarsPerFoot, 1 / metresPerFoot)
};

#undef TRENCHBOOK_UNIT

constexpr Area operator*(Length a, Length b) { return Area::fromSi(a.si() * b.si()); }
constexpr Volume operator*(Area a, Length b) { return Volume::fromSi(a.si() * b.si()); }
constexpr Volume operator*(Length a, Area b) { return b * a; }
constexpr Length operator/(Area a, Length b) { return Length::fromSi(a.si() / b.si()); }
constexpr Length operator/(Volume a, Area b) { return Length::fromSi(a.si() / b.si()); }
constexpr Area operator/(Volume a, Length b) { return Area::fromSi(a.si() / b.si()); }
constexpr Velocity operator/(Flow a, Area b) { return Velocity::fromSi(a.si() / b.si()); }
constexpr Flow operator*(Velocity a, Area b) { return Flow::fromSi(a.si() * b.si()); }
constexpr Flow operator*(Area a, Velocity b) { return b * a; }
constexpr Length operator*(Velocity a, Duration b) { return Length::fromSi(a.si() * b.si()); }
constexpr Duration operator/(Length a, Velocity b) { return Duration::fromSi(a.si() / b.si()); }
constexpr Volume operator*(Flow a, Duration b) { return Volume::fromSi(a.si() * b.si()); }
constexpr Flow operator/(Volume a, Duration b) { return Flow::fromSi(a.si() / b.si()); }
constexpr Duration operator/(Volume a, Flow b) { return Duration::fromSi(a.si() / b.si()); }
constexpr Length operator*(Slope a, Length b) { return Length::fromSi(a.si() * b.si()); }
constexpr Length operator*(Length a, Slope b) { return b * a; }
constexpr Slope operator/(Length drop,
                          Slope) = delete;  // a drop over a slope is rarely what is meant: say .si()
constexpr Money operator*(Length a, PricePerLength b) { return Money::fromSi(a.si() * b.si()); }
constexpr Weight operator*(Volume a, BulkDensity b) { return Weight::fromSi(a.si() * b.si()); }
constexpr Volume operator/(Weight a, BulkDensity b) { return Volume::fromSi(a.si() / b.si()); }
constexpr Weight operator*(WeightPerLength a, Length b) { return Weight::fromSi(a.si() * b.si()); }

}  // namespace trenchbook
