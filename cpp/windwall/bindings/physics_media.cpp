#include "windwall/media/fuel.hpp"
#include "windwall/media/gas.hpp"
#include "windwall/media/humid_air.hpp"
#include "windwall/media/liquids.hpp"
#include "windwall/media/orifice.hpp"
#include "windwall/media/power_correction.hpp"
#include "windwall/media/standard_atmosphere.hpp"
#include "windwall/numerics/table.hpp"

#include <pybind11/numpy.h>
#include <pybind11/pybind11.h>
#include <pybind11/stl.h>

#include <array>
#include <stdexcept>
#include <string>
#include <utility>
#include <vector>

namespace windwall::bindings {
namespace {

namespace py = pybind11;
using namespace media;
using py::literals::operator""_a;

constexpr std::array<std::pair<const char*, Species>, 8> species_names{{
    {"nitrogen", Species::nitrogen},
    {"oxygen", Species::oxygen},
    {"argon", Species::argon},
    {"carbon_dioxide", Species::carbon_dioxide},
    {"water", Species::water},
    {"methanol", Species::methanol},
    {"ethanol", Species::ethanol},
    {"petrol", Species::petrol},
}};

Gas gas_named(const std::string& name) {
    if (name == "dry_air") return dry_air();
    std::string known = "dry_air";
    for (const auto& [word, species] : species_names) {
        if (name == word) return species_gas(species);
        known += std::string(", ") + word;
    }
    throw std::invalid_argument("no gas is called '" + name + "'; there are " + known);
}

void bind_standard_atmosphere(py::module_& physics) {
    physics.def("geopotential_altitude", py::vectorize(&geopotential_altitude), "geometric"_a,
                "Geopotential altitude, m, of a height above sea level in m. ISO 2533.");
    physics.def("standard_atmosphere_temperature", py::vectorize(&standard_temperature),
                "altitude"_a,
                "Temperature of the standard atmosphere, K, at a geopotential altitude in m.\n\n"
                "-5000 to 11 000 m; beyond, the nearer end. ISO 2533.");
    physics.def("standard_atmosphere_pressure", py::vectorize(&standard_pressure), "altitude"_a,
                "Pressure of the standard atmosphere, Pa, at a geopotential altitude in m.\n\n"
                "-5000 to 11 000 m; beyond, the nearer end. ISO 2533.");
    physics.def("standard_atmosphere_density", py::vectorize(&standard_density), "altitude"_a,
                "Density of the standard atmosphere, kg/m3, at a geopotential altitude in m.\n\n"
                "-5000 to 11 000 m; beyond, the nearer end. ISO 2533.");
    physics.def(
        "station_pressure", py::vectorize(&station_pressure), "altitude"_a,
        "sea_level_pressure"_a = 101325.0,
        "Barometer at a place, Pa, from its height above sea level in m and the sea-level "
        "pressure in Pa.\n\nThe altimeter equation: the standard atmosphere shifted in height.");
    physics.def("density_altitude", py::vectorize(&density_altitude), "density"_a,
                "Geopotential altitude, m, where the standard atmosphere has this density, kg/m3.");
}

void bind_humid_air(py::module_& physics) {
    physics.def("saturation_pressure", py::vectorize(&saturation_pressure), "temperature"_a,
                "Saturation pressure of water, Pa, at a temperature in K.\n\n"
                "Over ice from 173.15 K, over liquid from 273.16 to 473.15 K. Hyland and Wexler "
                "1983, as in the ASHRAE Handbook, Fundamentals.");
    physics.def("humidity_ratio", py::vectorize(&humidity_ratio), "relative_humidity"_a,
                "temperature"_a, "pressure"_a,
                "Vapour in kg per kg of dry air. Relative humidity 0 to 1, K, Pa.");
    physics.def("humid_air_density", py::vectorize(&humid_air_density), "relative_humidity"_a,
                "temperature"_a, "pressure"_a,
                "Density of moist air, kg/m3, as an ideal mixture. Relative humidity 0 to 1, K, "
                "Pa.");
    physics.def("dry_air_density", py::vectorize(&dry_air_density), "relative_humidity"_a,
                "temperature"_a, "pressure"_a,
                "Dry air in a cubic metre of moist air, kg/m3. Relative humidity 0 to 1, K, Pa.");
    physics.def("dew_point", py::vectorize(&dew_point), "vapour_pressure"_a,
                "Temperature, K, at which vapour of this partial pressure in Pa condenses, below "
                "273.16 K freezes.");
}

void bind_gases(py::module_& physics) {
    physics.def("air_heat_capacity", py::vectorize([](double temperature) {
                    return dry_air().heat_capacity(temperature);
                }),
                "temperature"_a,
                "Heat capacity cp of dry air, J/(kg K), at a temperature in K, 200 to 1000.");
    physics.def("air_gamma",
                py::vectorize([](double temperature) { return dry_air().gamma(temperature); }),
                "temperature"_a, "Ratio of heat capacities of dry air at a temperature in K.");
    physics.def(
        "gas_constant", [](const std::string& gas) { return gas_named(gas).R; }, "gas"_a,
        "Gas constant of a gas by its name, J/(kg K).");
    physics.def("gas_heat_capacity", py::vectorize([](std::string gas, double temperature) {
                    return gas_named(gas).heat_capacity(temperature);
                }),
                "gas"_a, "temperature"_a,
                "Heat capacity cp of a gas by its name, J/(kg K), at 200 to 1000 K.\n\n"
                "dry_air, nitrogen, oxygen, argon, carbon_dioxide, water, methanol, ethanol, "
                "petrol. NASA polynomials (TM-4513).");
    physics.def("gas_enthalpy", py::vectorize([](std::string gas, double temperature) {
                    return gas_named(gas).enthalpy(temperature);
                }),
                "gas"_a, "temperature"_a,
                "Enthalpy of a gas by its name, J/kg, with the enthalpy of formation at 298.15 K.");
    physics.def("gas_gamma", py::vectorize([](std::string gas, double temperature) {
                    return gas_named(gas).gamma(temperature);
                }),
                "gas"_a, "temperature"_a,
                "Ratio of heat capacities of a gas by its name at a temperature in K.");
}

void bind_orifice(py::module_& physics) {
    physics.def("critical_ratio", py::vectorize(&critical_ratio), "gamma"_a,
                "Pressure ratio at and below which an opening is choked.");
    physics.def("flow_function", py::vectorize(&flow_function), "ratio"_a, "gamma"_a,
                "Isentropic flow function Psi of the ratio of downstream to upstream pressure.\n\n"
                "Choked below the critical ratio; a cubic of finite slope above 0.9995.");
    physics.def("orifice_flow", py::vectorize(&orifice_flow), "effective_area"_a,
                "upstream_pressure"_a, "upstream_temperature"_a, "downstream_pressure"_a, "R"_a,
                "gamma"_a,
                "Mass flow through an opening, kg/s; negative when the downstream pressure is the "
                "higher.\n\nm2, Pa absolute, K, Pa absolute, J/(kg K).");
}

/// The row of the table of liquids, by the names of its columns.
py::dict liquid_properties(const std::string& name) {
    for (const Vapour vapour : all_vapours) {
        const auto& [word, species] = species_names[4 + index(vapour)];
        if (name != word) continue;
        const Liquid& row = liquid(vapour);
        return py::dict("density"_a = row.density, "heat_capacity"_a = row.heat_capacity,
                        "latent_heat"_a = row.latent_heat,
                        "stoichiometric_ratio"_a = row.stoichiometric_ratio,
                        "heating_value"_a = row.heating_value, "molar_mass"_a = row.molar_mass);
    }
    throw std::invalid_argument("no liquid is called '" + name +
                                "'; there are water, methanol, ethanol, petrol");
}

/// A property of a petrol-ethanol blend as a function of its share of ethanol.
template <double (Fuel::*property)() const noexcept>
void bind_fuel(py::module_& physics, const char* name, const char* description) {
    physics.def(name, py::vectorize([](double ethanol) {
                    Fuel fuel;
                    fuel.ethanol = ethanol;
                    return (fuel.*property)();
                }),
                "ethanol"_a = 0.0, description);
}

void bind_fuels(py::module_& physics) {
    physics.def(
        "liquid_properties", &liquid_properties, "liquid"_a,
        "Density, heat capacity, latent heat, stoichiometric ratio, lower heating value and "
        "molar mass of water, methanol, ethanol or petrol at 25 degC, SI units.");
    bind_fuel<&Fuel::stoichiometric_ratio>(
        physics, "stoichiometric_ratio",
        "kg of dry air that burn one kg of petrol with this share of ethanol by volume, 0 to 1.");
    bind_fuel<&Fuel::heating_value>(
        physics, "heating_value",
        "Lower heating value, J/kg, of petrol with this share of ethanol by volume, 0 to 1.");
    bind_fuel<&Fuel::density>(
        physics, "fuel_density",
        "Density, kg/m3, of petrol with this share of ethanol by volume, 0 to 1.");
    bind_fuel<&Fuel::latent_heat>(
        physics, "latent_heat",
        "Heat of vaporisation, J/kg, of petrol with this share of ethanol by volume, 0 to 1.");
}

void bind_power_correction(py::module_& physics) {
    physics.def("j1349_factor", py::vectorize(&j1349_factor), "dry_pressure"_a, "temperature"_a,
                "Reference power over measured power, SAE J1349 in the form of 1990. Pa, K.\n\n"
                "For reports only; the engine model computes with the air of the day itself.");
    physics.def("iso1585_factor", py::vectorize(&iso1585_factor), "dry_pressure"_a, "temperature"_a,
                "Reference power over measured power, ISO 1585, spark ignition. Pa, K.\n\n"
                "The standard holds it valid from 0.93 to 1.07. For reports only.");
    physics.def("din70020_factor", py::vectorize(&din70020_factor), "pressure"_a, "temperature"_a,
                "Reference power over measured power, DIN 70020 (withdrawn). Pa total, K. For "
                "reports only.");
}

void bind_interpolation(py::module_& physics) {
    physics.def(
        "monotone_cubic",
        [](std::vector<double> points, std::vector<double> values, py::array_t<double> at) {
            const numerics::Table table(std::move(points), std::move(values),
                                        numerics::Interpolation::monotone);
            return py::vectorize([&table](double x) { return table.at(x).value; })(at);
        },
        "points"_a, "values"_a, "at"_a,
        "Monotone piecewise cubic through measured points, held at its ends outside.\n\n"
        "Fritsch and Butland 1984, as every table read with it.");
}

}  // namespace

void bind_media_physics(py::module_& physics) {
    bind_standard_atmosphere(physics);
    bind_humid_air(physics);
    bind_gases(physics);
    bind_orifice(physics);
    bind_fuels(physics);
    bind_power_correction(physics);
    bind_interpolation(physics);
}

}  // namespace windwall::bindings
