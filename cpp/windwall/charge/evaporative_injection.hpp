#pragma once
#include "windwall/charge/pulses.hpp"
#include "windwall/charge/surroundings.hpp"
#include "windwall/charge/trigger.hpp"
#include "windwall/fields/class_limit.hpp"
#include "windwall/fields/row.hpp"
#include "windwall/media/stream.hpp"

#include <array>
#include <optional>
#include <span>
#include <string>
#include <string_view>

namespace windwall::charge {

/// What the shares of a blend are counted in: half and half is not the same liquid.
enum class BlendBy { mass, volume };

/// What a nozzle does at one operating point.
struct Spray {
    double pressure_difference{};         // Pa across the nozzle while the pump runs
    double running{};                     // share 0 to 1 of the pump's start
    std::optional<double> above_start{};  // Pa, what its switch reads above where the pump starts
    double flow{};                        // kg/s of liquid
    double siphoned{};                    // kg/s of it drawn by vacuum, the pump at rest
    double filling{};                     // kg/s that fills the line, none of it leaving yet
    double drop_diameter{};               // m
    bool atomises{};                      // the difference reaches the least for a fine spray
};

struct EvaporativeInjection {
    static constexpr bool adds_liquid = true;
    static constexpr std::string_view kind = "evaporative_injection";
    static constexpr std::string_view description =
        "Nozzle that sprays water, methanol, ethanol or a blend of them into the charge.";

    BlendBy blend_by = BlendBy::volume;
    double methanol{};  // shares of the blend; the rest is water
    double ethanol = 0;
    double rated_flow{};          // m3/s of water
    double rated_pressure = 7e5;  // Pa
    double pump_pressure{};       // Pa above the ambient air
    bool boost_referenced = false;
    std::optional<double> starts_at;           // Pa above the ambient air
    std::optional<double> starts_at_absolute;  // Pa
    std::string starts_where;  // id of the part behind which the switch reads; else the manifold
    double full_after = 5e3;   // Pa
    Trigger trigger;
    double hysteresis = 3e3;      // Pa
    double delay = 0.1;           // s
    double pump_rise_time = 0.3;  // s
    double line_volume = 10e-6;   // m3
    std::optional<double> fuel_cut;
    std::optional<double> duty;
    double valve_period = 50e-3;  // s
    double dead_time = 2e-3;      // s
    bool check_valve = true;
    double least_pressure = 413685.4;     // Pa
    std::optional<double> drop_diameter;  // m
    double drop_size_factor = 1;
    double wall_share = 0.1;
    std::optional<double> liquid_temperature;  // K

    /// By mass, by media::Vapour.
    std::array<double, 4> blend() const noexcept;
    double blend_density() const noexcept;
    /// Whether a pressure switches the pump.
    bool switched() const noexcept { return starts_at || starts_at_absolute; }
    /// Pa that its switch reads above where the pump starts; nothing without one.
    std::optional<double> above_start(const Surroundings& surroundings) const noexcept;
    /// Share 0 to 1 of its pump that pressure and trigger ask for, `eased` Pa below where it
    /// starts; 1 where nothing switches it.
    double asked(const media::Stream& in, const Surroundings& surroundings,
                 double eased = 0) const noexcept;
    double open_share() const noexcept;
    /// See charge::cycle_spread; 0 without a pulsed valve.
    double cycle_spread(double engine_speed, double mixing_time) const noexcept;
    /// As it is held, or as it comes to be in a long pull.
    Spray spray(const media::Stream& in, const Surroundings& surroundings) const noexcept;
    media::Stream outlet(const media::Stream& in, const Surroundings& surroundings) const noexcept;

    static std::span<const fields::Row> rows();
    std::optional<fields::Violation> check() const;
    // Share; no source for how uneven a mixture may be before it is felt.
    static constexpr std::array class_cautions{
        fields::ClassCaution{"uneven_spray", "cycle_spread", 0.2},
    };
};

/// Flow of a nozzle, in the unit of `rated_flow`, by the square root of the pressure difference; of
/// another density at the same volume, the root of the densities' ratio. 0 without a difference.
double nozzle_flow(double rated_flow, double pressure_difference, double rated_pressure) noexcept;

}  // namespace windwall::charge

template <>
struct windwall::fields::Names<windwall::charge::BlendBy> {
    static constexpr std::array<std::string_view, 2> names{"mass", "volume"};
};
