#include "windwall/fields/units.hpp"

#include <iterator>

namespace windwall::fields {
namespace {

using enum Dimension;
constexpr System us = System::us;
constexpr System si = System::metric;

// To more digits than two doubles hold, so that one rounding is all there is.
constexpr std::string_view pi = "3.14159265358979323846264338327950288419716939937510";

// Built on the inch (0.0254 m), the pound (0.45359237 kg), standard gravity (9.80665 m/s2), the
// US gallon (231 in3), the imperial gallon (4.54609 L) and the table calorie (4.1868 J), which are
// exact by definition; columns of liquid by the conventional 13.5951 and 1 kg/L.
constexpr Unit table[] = {
    {number, "", "1", "1", "1"},
    {number, "%", "1", "100", "percent"},

    {length, "mm", "1", "1000", "mm", "in"},
    {length, "cm", "1", "100", "cm", "in"},
    {length, "m", "1", "1", "m", "ft"},
    {length, "km", "1000", "1", "km", "mi"},
    {length, "in", "0.0254", "1", "inch", "mm", us, "inch"},
    {length, "ft", "0.3048", "1", "foot", "m", us},
    {length, "mi", "1609.344", "1", "mile", "km", us, "mile"},

    {area, "mm2", "1", "1000000", "mm2", "in2"},
    {area, "cm2", "1", "10000", "cm2", "in2"},
    {area, "m2", "1", "1", "m2", "ft2"},
    {area, "in2", "0.00064516", "1", "inch2", "cm2", us},
    {area, "ft2", "0.09290304", "1", "foot2", "m2", us},

    {volume, "mm3", "1", "1000000000", "mm3", "in3"},
    {volume, "cm3", "1", "1000000", "cm3", "in3", si, "cc|mL"},
    {volume, "L", "1", "1000", "L", "gal_us", si, "l"},
    {volume, "m3", "1", "1", "m3", "ft3"},
    {volume, "in3", "0.000016387064", "1", "inch3", "cm3", us, "cuin|cu in"},
    {volume, "ft3", "0.028316846592", "1", "foot3", "m3", us},
    {volume, "gal_us", "0.003785411784", "1", "US_liquid_gallon", "L", us},
    {volume, "gal_imp", "0.00454609", "1", "4.54609 L", "L", us},

    {mass, "g", "1", "1000", "g"},
    {mass, "kg", "1", "1", "kg", "lb"},
    {mass, "lb", "0.45359237", "1", "pound", "kg", us},

    {time, "ms", "1", "1000", "ms"},
    {time, "s", "1", "1", "s"},
    {time, "min", "60", "1", "min"},
    {time, "h", "3600", "1", "h"},

    {speed, "m/s", "1", "1", "m/s", "ft/s"},
    {speed, "km/h", "1", "3.6", "km/h", "mph", si, "kph"},
    {speed, "ft/s", "0.3048", "1", "foot/s", "m/s", us},
    {speed, "mph", "0.44704", "1", "mile/h", "km/h", us, "mi/h"},
    {speed, "kn", "1852", "3600", "knot", "", si, "knot"},

    {acceleration, "m/s2", "1", "1", "m/s2", "ft/s2"},
    {acceleration, "g", "9.80665", "1", "standard_free_fall"},
    {acceleration, "ft/s2", "0.3048", "1", "foot/s2", "m/s2", us},

    {angular_speed, "rpm", pi, "30", "rpm", "", si, "1/min|r/min|rev/min"},
    {angular_speed, "rad/s", "1", "1", "rad/s"},

    {angle, "deg", pi, "180", "degree"},
    {angle, "rad", "1", "1", "rad"},

    {force, "N", "1", "1", "N", "lbf"},
    {force, "kN", "1000", "1", "kN", "lbf"},
    {force, "kgf", "9.80665", "1", "kgf", "lbf"},
    {force, "lbf", "4.4482216152605", "1", "4.4482216152605 N", "N", us},

    {torque, "N m", "1", "1", "N m", "lbf ft", si, "Nm"},
    {torque, "kgf m", "9.80665", "1", "kgf m", "lbf ft"},
    {torque, "lbf ft", "1.3558179483314004", "1", "1.3558179483314004 N m", "N m", us, "ft lbf"},
    {torque, "lbf in", "1.3558179483314004", "12", "0.1129848290276167 N m", "N m", us, "in lbf"},

    {absolute_pressure, "Pa", "1", "1", "Pa", "psia", si, "Pa abs|Pa absolute"},
    {absolute_pressure, "hPa", "100", "1", "hPa", "inHg abs", si, "hPa abs|hPa absolute"},
    {absolute_pressure, "mbar", "100", "1", "mbar", "inHg abs", si, "mbar abs|mbar absolute"},
    {absolute_pressure, "kPa", "1000", "1", "kPa", "psia", si, "kPa abs|kPaa|kPa absolute"},
    {absolute_pressure, "bara", "100000", "1", "bar", "psia", si, "bar abs|bar absolute"},
    {absolute_pressure, "mmHg abs", "133.322387415", "1", "133.322387415 Pa", "inHg abs", si,
     "mmHg absolute"},
    {absolute_pressure, "inHg abs", "3386.388640341", "1", "3386.388640341 Pa", "hPa", us,
     "inHg absolute"},
    {absolute_pressure, "psia", "4.4482216152605", "0.00064516", "psi", "kPa", us,
     "psi abs|psi absolute"},

    {gauge_pressure, "Pa", "1", "1", "Pa", "psig", si, "Pa gauge"},
    {gauge_pressure, "hPa", "100", "1", "hPa", "psig", si, "hPa gauge"},
    {gauge_pressure, "mbar", "100", "1", "mbar", "psig", si, "mbar gauge"},
    {gauge_pressure, "kPa", "1000", "1", "kPa", "psig", si, "kPa gauge|kPag"},
    {gauge_pressure, "barg", "100000", "1", "bar", "psig", si, "bar|bar gauge"},
    {gauge_pressure, "mmHg gauge", "133.322387415", "1", "133.322387415 Pa", "inHg gauge", si,
     "mmHg"},
    {gauge_pressure, "mmH2O gauge", "9.80665", "1", "9.80665 Pa", "inH2O gauge", si, "mmH2O"},
    {gauge_pressure, "inHg gauge", "3386.388640341", "1", "3386.388640341 Pa", "kPa", us, "inHg"},
    {gauge_pressure, "inH2O gauge", "249.08891", "1", "249.08891 Pa", "kPa", us, "inH2O"},
    {gauge_pressure, "psig", "4.4482216152605", "0.00064516", "psi", "kPa", us, "psi|psi gauge"},

    {pressure_difference, "Pa", "1", "1", "Pa", "inH2O"},
    {pressure_difference, "hPa", "100", "1", "hPa", "inH2O"},
    {pressure_difference, "mbar", "100", "1", "mbar", "inH2O"},
    {pressure_difference, "kPa", "1000", "1", "kPa", "psi"},
    {pressure_difference, "bar", "100000", "1", "bar", "psi"},
    {pressure_difference, "mmHg", "133.322387415", "1", "133.322387415 Pa", "inHg"},
    {pressure_difference, "mmH2O", "9.80665", "1", "9.80665 Pa", "inH2O"},
    {pressure_difference, "inHg", "3386.388640341", "1", "3386.388640341 Pa", "kPa", us},
    {pressure_difference, "inH2O", "249.08891", "1", "249.08891 Pa", "Pa", us},
    {pressure_difference, "psi", "4.4482216152605", "0.00064516", "psi", "kPa", us},

    {temperature, "degC", "1", "1", "degC", "degF", si, {}, "273.15"},
    {temperature, "K", "1", "1", "K", "degR"},
    {temperature, "degF", "5", "9", "degF", "degC", us, {}, "459.67"},
    {temperature, "degR", "5", "9", "degR", "K", us},

    {temperature_difference, "K", "1", "1", "K", "delta_degF", si, "delta_degC"},
    {temperature_difference, "delta_degF", "5", "9", "degR", "K", us, "delta_degR"},

    {power, "W", "1", "1", "W", "hp"},
    {power, "kW", "1000", "1", "kW", "hp"},
    {power, "PS", "735.49875", "1", "735.49875 W", "hp"},
    {power, "hp", "745.69987158227022", "1", "745.69987158227022 W", "kW", us},

    {energy, "J", "1", "1", "J", "BTU"},
    {energy, "kJ", "1000", "1", "kJ", "BTU"},
    {energy, "MJ", "1000000", "1", "MJ", "BTU"},
    {energy, "kWh", "3600000", "1", "kW h", "BTU"},
    {energy, "BTU", "1055.05585262", "1", "1055.05585262 J", "kJ", us},

    {mass_flow, "g/s", "1", "1000", "g/s", "lb/min"},
    {mass_flow, "kg/s", "1", "1", "kg/s", "lb/min"},
    {mass_flow, "kg/min", "1", "60", "kg/min", "lb/min"},
    {mass_flow, "kg/h", "1", "3600", "kg/h", "lb/h"},
    {mass_flow, "lb/min", "0.45359237", "60", "pound/min", "g/s", us},
    {mass_flow, "lb/h", "0.45359237", "3600", "pound/h", "kg/h", us},

    {volume_flow, "cm3/min", "1", "60000000", "cm3/min", "gal_us/h", si, "mL/min|cc/min"},
    {volume_flow, "L/min", "1", "60000", "L/min", "gal_us/h", si, "l/min"},
    {volume_flow, "L/h", "1", "3600000", "L/h", "gal_us/h", si, "l/h"},
    {volume_flow, "L/s", "1", "1000", "L/s", "ft3/min", si, "l/s"},
    {volume_flow, "m3/h", "1", "3600", "m3/h", "ft3/min"},
    {volume_flow, "m3/s", "1", "1", "m3/s", "ft3/min"},
    {volume_flow, "ft3/min", "0.028316846592", "60", "foot3/min", "m3/h", us, "cfm"},
    {volume_flow, "gal_us/h", "0.003785411784", "3600", "US_liquid_gallon/h", "L/h", us},
    {volume_flow, "gal_imp/h", "0.00454609", "3600", "4.54609 L/h", "L/h", us},

    {density, "kg/m3", "1", "1", "kg/m3", "lb/ft3"},
    {density, "kg/L", "1000", "1", "kg/L", "lb/ft3"},
    {density, "g/cm3", "1000", "1", "g/cm3", "lb/ft3", si, "g/mL|g/cc"},
    {density, "lb/ft3", "0.45359237", "0.028316846592", "pound/foot3", "kg/m3", us},

    {inertia, "kg m2", "1", "1", "kg m2", "lb ft2"},
    {inertia, "kg cm2", "1", "10000", "kg cm2", "lb ft2"},
    {inertia, "lb ft2", "0.0421401100938048", "1", "pound foot2", "kg m2", us},

    {conductance, "W/K", "1", "1", "W/K", "BTU/h/degR"},
    {conductance, "kW/K", "1000", "1", "kW/K", "BTU/h/degR"},
    {conductance, "BTU/h/degR", "1055.05585262", "2000", "0.52752792631 W/K", "W/K", us},

    {specific_energy, "J/kg", "1", "1", "J/kg", "BTU/lb"},
    {specific_energy, "kJ/kg", "1000", "1", "kJ/kg", "BTU/lb"},
    {specific_energy, "MJ/kg", "1000000", "1", "MJ/kg", "BTU/lb"},
    {specific_energy, "BTU/lb", "2326", "1", "2326 J/kg", "kJ/kg", us},

    {linear_density, "kg/m", "1", "1", "kg/m", "lb/ft"},
    {linear_density, "g/m", "1", "1000", "g/m", "lb/ft"},
    {linear_density, "lb/ft", "0.45359237", "0.3048", "pound/foot", "kg/m", us},

    {per_length, "1/m", "1", "1", "m-1", "1/ft"},
    {per_length, "1/mm", "1000", "1", "mm-1", "1/in"},
    {per_length, "1/ft", "1", "0.3048", "foot-1", "1/m", us},
    {per_length, "1/in", "1", "0.0254", "inch-1", "1/mm", us},

    {viscosity, "Pa s", "1", "1", "Pa s"},
    {viscosity, "mPa s", "1", "1000", "mPa s", "", si, "cP"},

    {stiffness, "N/m", "1", "1", "N/m", "lbf/in"},
    {stiffness, "kN/m", "1000", "1", "kN/m", "lbf/in"},
    {stiffness, "N/mm", "1000", "1", "N/mm", "lbf/in"},
    {stiffness, "lbf/in", "4.4482216152605", "0.0254", "175.126835246477 N/m", "N/mm", us},

    // A currency is never turned into another.
    {money, "EUR", "1"},
    {money, "USD", "1"},
    {money, "GBP", "1"},
    {money, "CHF", "1"},
    {money, "SEK", "1"},
    {money, "NOK", "1"},
    {money, "DKK", "1"},
    {money, "PLN", "1"},
    {money, "CZK", "1"},
    {money, "HUF", "1"},
    {money, "CAD", "1"},
    {money, "AUD", "1"},
    {money, "NZD", "1"},
    {money, "JPY", "1"},
    {money, "ZAR", "1"},
    {money, "BRL", "1"},

    {labour, "h", "1", "1", "h"},
    {labour, "min", "1", "60", "min"},
};

constexpr Ambiguous ambiguous[] = {
    {"C", "degC"},
    {"F", "degF"},
    {"R", "degR"},
    {"deg C", "degC"},
    {"deg F", "degF"},
    {"gal", "gal_us or gal_imp"},
    {"gallon", "gal_us or gal_imp"},
    {"gal/h", "gal_us/h or gal_imp/h"},
    {"gph", "gal_us/h or gal_imp/h"},
    {"ton", "kg or lb", false},
    {"t", "kg or lb", false},
    {"tonne", "kg", false},
    {"oz", "g or lb", false},
    {"lbs", "lb (mass) or lbf (force)"},
    {"#", "lb (mass), lbf (force) or psi (pressure)"},
    {"cal", "J or kJ", false},
    {"kcal", "J or kJ", false},
    {"lb-ft", "lbf ft (torque)"},
    {"lb ft", "lbf ft (torque)"},
    {"ft-lb", "lbf ft (torque)"},
    {"ft lb", "lbf ft (torque)"},
    {"lb-in", "lbf in (torque)"},
    {"in-lb", "lbf in (torque)"},
    {"kgm", "kgf m (torque) or kg m2 (inertia)"},
    {"kg m", "kgf m (torque) or kg m2 (inertia)"},
    {"horsepower", "hp (745.7 W) or PS (735.5 W)"},
    {"HP", "hp (745.7 W) or PS (735.5 W)"},
    {"bhp", "hp (745.7 W) or PS (735.5 W)"},
    {"cv", "hp (745.7 W) or PS (735.5 W)"},
    {"CV", "hp (745.7 W) or PS (735.5 W)"},
    {"ch", "hp (745.7 W) or PS (735.5 W)"},
    {"Hz", "rpm or rad/s", false},
    {"mil", "mi, mm or in", false},
    {"'", "ft or min"},
    {"\"", "in or s"},
    {"$", "USD, CAD, AUD or NZD"},
    {"€", "EUR"},
    {"£", "GBP"},
    {"kr", "SEK, NOK or DKK"},
};

}  // namespace

std::span<const Unit> all_units() { return table; }

std::span<const Ambiguous> ambiguous_units() { return ambiguous; }

}  // namespace windwall::fields
