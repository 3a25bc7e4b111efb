#pragma once
#include "windwall/charge/surroundings.hpp"
#include "windwall/fields/row.hpp"
#include "windwall/media/stream.hpp"

#include <numbers>
#include <optional>
#include <span>
#include <string_view>

namespace windwall::charge {

struct Throttle {
    static constexpr std::string_view kind = "throttle";
    static constexpr std::string_view description = "Butterfly plate with a shaft across the bore.";

    double bore{};                                     // m
    double shaft = 8e-3;                               // m
    double closed_angle = 6 * std::numbers::pi / 180;  // rad from the plane across the bore
    double discharge_coefficient = 0.80;
    double leak_area = 3e-6;  // m2, effective
    fields::Columns linkage;  // pedal and plate, shares of their travel; empty: they go together

    /// Share of the plate's travel at a share of the pedal's.
    double plate(double pedal) const noexcept;
    double opening(const Surroundings& surroundings) const noexcept {
        return plate(surroundings.throttle_opening);
    }

    /// Contracted area of the jet past the plate, m2, at an opening of 0 to 1.
    double jet_area(double opening) const noexcept;
    /// What of the jet's speed is regained behind the plate: 0 up to half open, then rising to
    /// jet area over bore area.
    double recovering_share(double opening, double jet_area) const noexcept;
    /// Gas flow in kg/s, negative when the outlet pressure is the higher one; the temperature
    /// behind is the temperature before.
    double flow(const media::Stream& in, double outlet_pressure,
                const Surroundings& surroundings) const noexcept;

    static std::span<const fields::Row> rows();
    std::optional<fields::Violation> check() const;
};

/// Flow in kg/s through a jet of `jet_area` that regains part of its speed behind. `recovered` is
/// s A_jet/A_pipe: 0 for none, A_jet/A_pipe for the sudden expansion of Borda and Carnot. The jet
/// meets the drop between the two sides divided by (1 - recovered)^2; it chokes in its throat.
double recovering_flow(double jet_area, double recovered, double upstream_pressure,
                       double upstream_temperature, double downstream_pressure, double R,
                       double gamma) noexcept;

}  // namespace windwall::charge
