#include "windwall/charge/blower_case.hpp"
#include "windwall/charge/carburettor.hpp"
#include "windwall/charge/evaporative_injection.hpp"
#include "windwall/charge/spray_start.hpp"
#include "windwall/charge/wall_heat.hpp"
#include "windwall/media/constants.hpp"
#include "windwall/media/drops.hpp"
#include "windwall/media/equilibrium.hpp"
#include "windwall/media/liquids.hpp"
#include "windwall/media/stream_enthalpy.hpp"
#include "windwall/media/vapour_pressure.hpp"

#include <pybind11/numpy.h>
#include <pybind11/pybind11.h>

#include <stdexcept>
#include <string>

namespace windwall::bindings {
namespace {

namespace py = pybind11;
using namespace media;
using py::literals::operator""_a;

Vapour vapour_named(const std::string& name) {
    constexpr const char* names[] = {"water", "methanol", "ethanol", "petrol"};
    for (const Vapour kind : all_vapours)
        if (name == names[index(kind)]) return kind;
    throw std::invalid_argument("no liquid is called '" + name +
                                "'; there are water, methanol, ethanol, petrol");
}

/// kg per kg of dry air from a dictionary by the liquids' names.
std::array<double, 4> shares(const py::dict& by_name) {
    std::array<double, 4> made{};
    for (const auto& [name, share] : by_name)
        made[index(vapour_named(name.cast<std::string>()))] = share.cast<double>();
    return made;
}

py::dict by_name(const std::array<double, 4>& all) {
    return py::dict("water"_a = all[0], "methanol"_a = all[1], "ethanol"_a = all[2],
                    "petrol"_a = all[3]);
}

Stream sprayed(double pressure, double temperature, double humidity_ratio, const py::dict& liquid,
               double liquid_temperature, double diameter) {
    return with_liquid(ambient_stream(pressure, temperature, humidity_ratio, 1), shares(liquid),
                       liquid_temperature, diameter);
}

py::dict described(const Stream& stream) {
    return py::dict("temperature"_a = stream.temperature, "vapour"_a = by_name(stream.vapour),
                    "liquid"_a = by_name(stream.liquid),
                    "enthalpy"_a = enthalpy_per_dry_air(stream), "density"_a = stream.density(),
                    "drop_diameter"_a = stream.drop_diameter);
}

void bind_vapours(py::module_& physics) {
    physics.def("vapour_pressure", py::vectorize([](std::string liquid, double temperature) {
                    return vapour_pressure(vapour_named(liquid), temperature);
                }),
                "liquid"_a, "temperature"_a,
                "Saturation pressure, Pa, of water, methanol, ethanol or petrol's first drop.\n\n"
                "K, 200 to 473.15. Hyland and Wexler over liquid; Wagner; Clausius and Clapeyron "
                "through Reid's 60 kPa at 37.8 degC.");
    physics.def("petrol_pressure", py::vectorize(&petrol_pressure), "temperature"_a, "evaporated"_a,
                "Vapour pressure of petrol, Pa, of which a share 0 to 1 has evaporated; K. No "
                "source for its slope.");
    physics.def(
        "water_alcohol_activity",
        [](double alcohol_share, double ethanol) {
            const Activity held = activity(alcohol_in_water(1 - ethanol, ethanol), alcohol_share);
            return py::make_tuple(held.alcohol, held.water);
        },
        "alcohol_share"_a, "ethanol"_a = 0.0,
        "Activity coefficients (alcohol, water) after van Laar, by the mole share of alcohol in "
        "the "
        "liquid; `ethanol` is the mole share of ethanol among the alcohols.\n\n"
        "Methanol 0.86 and 0.56, ethanol 1.6798 and 0.9227.");
    physics.def("liquid_enthalpy", py::vectorize([](std::string liquid, double temperature) {
                    return liquid_enthalpy(vapour_named(liquid), temperature);
                }),
                "liquid"_a, "temperature"_a,
                "Enthalpy of a liquid, J/kg, on the scale of gas_enthalpy.");
}

void bind_equilibrium(py::module_& physics) {
    physics.def(
        "adiabatic_equilibrium",
        [](double pressure, double temperature, double humidity_ratio, const py::dict& liquid,
           double liquid_temperature) {
            return described(adiabatic_equilibrium(
                sprayed(pressure, temperature, humidity_ratio, liquid, liquid_temperature, 0)));
        },
        "pressure"_a, "temperature"_a, "humidity_ratio"_a = 0.0, "liquid"_a = py::dict(),
        "liquid_temperature"_a = constants::reference_temperature,
        R"(Air with liquid sprayed in, once nothing evaporates or condenses any more.

Pa absolute, K; `liquid` gives kg per kg of dry air by name (water, methanol, ethanol, petrol).
Constant pressure, no heat from outside, no ice. Returns temperature in K, vapour and liquid by name,
enthalpy in J per kg of dry air, density of the gas in kg/m3.)");
    physics.def(
        "evaporated",
        [](double pressure, double temperature, double humidity_ratio, const py::dict& liquid,
           double liquid_temperature, double drop_diameter, double time) {
            return described(evaporate(sprayed(pressure, temperature, humidity_ratio, liquid,
                                               liquid_temperature, drop_diameter),
                                       time));
        },
        "pressure"_a, "temperature"_a, "humidity_ratio"_a, "liquid"_a, "liquid_temperature"_a,
        "drop_diameter"_a, "time"_a,
        "As adiabatic_equilibrium, but only as far as drops of this Sauter diameter, m, come in "
        "`time` s.");
}

void bind_drops(py::module_& physics) {
    physics.def(
        "drop_rate",
        [](double pressure, double temperature, double humidity_ratio, const py::dict& liquid) {
            Stream gas = ambient_stream(pressure, temperature, humidity_ratio, 1);
            gas.liquid = shares(liquid);
            const DropRate rate = drop_rate(gas);
            return py::make_tuple(rate.temperature, rate.evaporation_constant);
        },
        "pressure"_a, "temperature"_a, "humidity_ratio"_a, "liquid"_a,
        "Temperature, K, and evaporation constant of d2 = d0^2 - K t, m2/s, of drops of a liquid "
        "(by mass shares) in still gas.\n\nSpalding's film, rule of one third.");
    physics.def("evaporated_share", py::vectorize(&evaporated_share), "evaporation_constant"_a,
                "time"_a, "diameter"_a,
                "Share of the mass of equal drops gone after a time, s: 1 - (1 - K t/d^2)^1.5.");
    physics.def(
        "drop_properties",
        [](const std::string& name) {
            const Vapour liquid = vapour_named(name);
            return py::dict("surface_tension"_a = surface_tension(liquid),
                            "viscosity"_a = liquid_viscosity(liquid),
                            "diffusivity"_a = vapour_diffusivity(liquid));
        },
        "liquid"_a,
        "Surface tension, N/m, and viscosity, Pa s, of a liquid near 25 degC, and diffusivity of "
        "its vapour in air at 25 degC and 1 atm, m2/s.");
    physics.def("sauter_diameter", py::vectorize(&sauter_diameter), "surface_tension"_a,
                "viscosity"_a, "flow"_a, "pressure_difference"_a, "gas_density"_a,
                "Sauter mean diameter of a pressure-swirl nozzle after Lefebvre, m; +-40 %.\n\n"
                "N/m, Pa s, kg/s, Pa, kg/m3. Form as commonly quoted.");
    physics.def("stokes_number", py::vectorize(&stokes_number), "liquid_density"_a,
                "drop_diameter"_a, "velocity"_a, "gas_viscosity"_a, "bore"_a,
                "Stopping distance of a drop over the bore, rho d^2 V/(18 mu D). SI.");
    physics.def("caught_in_bend", py::vectorize(&caught_in_bend), "stokes_number"_a, "angle"_a,
                "Share of drops that a bend of `angle` rad puts on its wall, by the Stokes number "
                "on the bore.\n\nPui, Romay-Novas and Liu 1987.");
}

void bind_parts(py::module_& physics) {
    physics.def("nozzle_flow", py::vectorize(&charge::nozzle_flow), "rated_flow"_a,
                "pressure_difference"_a, "rated_pressure"_a,
                "Flow of a nozzle by the root of the pressure across it; any unit of flow, Pa.");
    physics.def("valve_open_share", py::vectorize(&charge::valve_open_share), "duty"_a, "period"_a,
                "dead_time"_a,
                "Share of the time a pulsed valve is open: duty less dead time over period.");
    physics.def("cycle_spread", py::vectorize(&charge::cycle_spread), "period"_a, "open_share"_a,
                "engine_speed"_a, "mixing_time"_a = 0.0,
                "How far what one intake stroke catches of pulses is from what the next does, one "
                "standard deviation over the mean; s, rad/s. A stroke lasts 240 of 720 degrees; "
                "a stirred vessel before it takes `mixing_time` s to pass.");
    physics.def(
        "spray_start",
        [](double delay, double rise_time, double fill_time, double film_share, double film_time,
           py::array_t<double> time) {
            const charge::SprayStart start{delay, rise_time, fill_time, film_share, film_time};
            return py::dict(
                "first_liquid"_a = start.first_liquid(),
                "running"_a = py::vectorize([start](double t) { return start.running(t); })(time),
                "sprayed"_a = py::vectorize([start](double t) { return start.sprayed(t); })(time),
                "arrived"_a = py::vectorize([start](double t) { return start.arrived(t); })(time));
        },
        "delay"_a, "rise_time"_a, "fill_time"_a, "film_share"_a, "film_time"_a, "time"_a,
        "The first seconds after a switch closes at 0: when the first liquid leaves the nozzle, "
        "and over `time` the share of the pump, of the flow at the nozzle and at the valves. s.\n\n"
        "A pump and a film of first order, a line that is filled first.");
    physics.def("jet_metering", py::vectorize(&charge::jet_metering), "depression"_a,
                "bowl_above_inlet"_a,
                "Fuel a carburettor draws over what its depression alone would draw; Pa.");
    physics.def("pipe_conductance", py::vectorize(&charge::pipe_conductance), "flow"_a,
                "viscosity"_a, "bore"_a, "length"_a, "outside"_a = 15.0,
                "Conductance of a pipe between the gas inside and the air around, W/K.\n\n"
                "kg/s, Pa s, m, m, W/(m2 K). Dittus and Boelter inside.");
    physics.def("outside_film", py::vectorize(&charge::outside_film), "air_speed"_a,
                "From warm walls under the bodywork to air that passes them, W/(m2 K); m/s.\n\n"
                "A laminar flat plate of 0.1 m, and what radiates and rises by itself.");
    physics.def("case_surface", py::vectorize(&charge::case_surface), "displacement"_a,
                "Outer surface of a blower's case, m2, by what it moves a revolution, m3.");
}

}  // namespace

void bind_wet_physics(py::module_& physics) {
    bind_vapours(physics);
    bind_equilibrium(physics);
    bind_drops(physics);
    bind_parts(physics);
}

}  // namespace windwall::bindings
