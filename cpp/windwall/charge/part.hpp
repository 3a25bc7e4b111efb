#pragma once
#include "windwall/charge/bypass.hpp"
#include "windwall/charge/carburettor.hpp"
#include "windwall/charge/charge_cooler.hpp"
#include "windwall/charge/duct.hpp"
#include "windwall/charge/evaporative_injection.hpp"
#include "windwall/charge/filter.hpp"
#include "windwall/charge/leak.hpp"
#include "windwall/charge/mapped_compressor.hpp"
#include "windwall/charge/plenum.hpp"
#include "windwall/charge/positive_blower.hpp"
#include "windwall/charge/throttle.hpp"
#include "windwall/media/thermal_node.hpp"

#include <concepts>
#include <optional>

namespace windwall::charge {

/// Gives its outlet, explicit in the flow that is given.
template <class T>
concept Passive = requires(const T& part, const media::Stream& in,
                           const Surroundings& surroundings) {
    { part.outlet(in, surroundings) }
    noexcept->std::same_as<media::Stream>;
};

/// Gives its flow between two pressures that are given, and how far it is open.
template <class T>
concept Metering = requires(const T& part, const media::Stream& in, double outlet_pressure,
                            const Surroundings& surroundings) {
    { part.flow(in, outlet_pressure, surroundings) }
    noexcept->std::same_as<double>;
    { part.opening(surroundings) }
    noexcept->std::same_as<double>;
};

/// Gives its work and the flow it could deliver, for a flow and an outlet pressure that are given.
template <class T>
concept Driven = requires(const T& part, const media::Stream& in, double outlet_pressure,
                          const Surroundings& surroundings) {
    { part.compress(in, outlet_pressure, surroundings) }
    noexcept->std::same_as<Compression>;
};

/// Has a pressure behind it that a balance has to find.
template <class T>
concept Balanced = Metering<T> || Driven<T>;

/// Has a rotor, kg m2, that turns `drive_ratio` times as fast as the crank.
template <class T>
concept Rotating = Driven<T> && requires(const T& part) {
    { part.rotor_inertia } -> std::convertible_to<double>;
    { part.drive_ratio } -> std::convertible_to<double>;
};

/// Gives what it takes out of the path where it stands, back to the blower before it, and how far
/// it is open.
template <class T>
concept Branching = requires(const T& part, const media::Stream& path, double pressure,
                             const Surroundings& surroundings) {
    { part.branch_flow(path, pressure, pressure, surroundings) }
    noexcept->std::same_as<double>;
    { part.opening(pressure, surroundings) }
    noexcept->std::same_as<double>;
};

/// Says what its nozzle does for the charge that passes it.
template <class T>
concept Spraying = requires(const T& part, const media::Stream& in,
                            const Surroundings& surroundings) {
    { part.spray(in, surroundings) }
    noexcept->std::same_as<Spray>;
    { part.least_pressure } -> std::convertible_to<double>;
};

/// Is switched by the pressure behind a part of the path, or in the manifold.
template <class T>
concept Switched = requires(const T& part) {
    { part.switched() }
    noexcept->std::same_as<bool>;
    { part.starts_where } -> std::convertible_to<std::string_view>;
};

/// Holds a volume in which the charge is stirred.
template <class T>
concept Stirring = requires(const T& part) {
    { part.volume } -> std::convertible_to<double>;
};

/// Takes of the engine's own fuel while its pump runs.
template <class T>
concept Cutting = Spraying<T> && requires(const T& part) {
    { part.fuel_cut } -> std::convertible_to<std::optional<double>>;
};

/// Loses gas to the weather, or draws it in.
template <class T>
concept Leaking = requires(const T& part, const media::Stream& in,
                           const Surroundings& surroundings) {
    { part.lost(in, surroundings) }
    noexcept->std::same_as<double>;
};

/// Puts liquid into the charge.
template <class T>
concept Wetting = requires {
    requires T::adds_liquid;
};

/// Puts the engine's own fuel into the charge.
template <class T>
concept Carburetting = requires {
    requires T::brings_fuel;
};

/// May be cold enough for water to fall out of the charge.
template <class T>
concept Condensing = requires {
    requires T::condenses;
};

/// Has metal that takes time to warm up, between the charge and what is around it.
template <class T>
concept Thermal = requires(const T& part, const media::Stream& in, double outlet_pressure,
                           const Surroundings& surroundings) {
    requires media::ThermalNodes<decltype(part.thermal_nodes(in, outlet_pressure, surroundings))>;
};

template <class T>
concept ChargePart = fields::Kind<T> &&(Passive<T> + Metering<T> + Driven<T> + Branching<T> == 1);

/// Says, one sentence each, what a type lacks to be a part of the charge path.
template <class T>
struct Complete {
    static_assert(fields::Kind<T>,
                  "a charge part needs `kind`, `description` and `rows()`, and default values");
    static_assert(Passive<T> || Metering<T> || Driven<T> || Branching<T>,
                  "a charge part needs one of: Stream outlet(in, surroundings), "
                  "double flow(in, outlet_pressure, surroundings) with opening(surroundings), "
                  "Compression compress(in, outlet_pressure, surroundings), "
                  "double branch_flow(path, inlet_pressure, manifold_pressure, surroundings) with "
                  "opening(manifold_pressure, surroundings); const noexcept");
    static_assert(Passive<T> + Metering<T> + Driven<T> + Branching<T> <= 1,
                  "a charge part has only one of outlet, flow, compress and branch_flow");
    static constexpr bool value = ChargePart<T>;
};

/// One part of the charge path. A new one is a header and a word here.
using Part = fields::OneOf<Filter, Duct, Throttle, PositiveBlower, MappedCompressor, ChargeCooler,
                           Bypass, Plenum, EvaporativeInjection, Carburettor, Leak>;

static_assert(fields::of_all<Complete, Part>);

/// Whether a share to take off the engine's own fuel is stated.
inline bool cuts_fuel(const Part& part) {
    return part.visit([]<class Each>([[maybe_unused]] const Each& each) {
        if constexpr (Cutting<Each>) return each.fuel_cut.has_value();
        return false;
    });
}

}  // namespace windwall::charge
