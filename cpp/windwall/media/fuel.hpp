#pragma once
#include "windwall/fields/row.hpp"

#include <optional>
#include <span>
#include <string_view>

namespace windwall::media {

/// What is in the tank. Unless the builder states a property, it is that of a mixture of petrol and
/// ethanol with the project's constants.
struct Fuel {
    static constexpr std::string_view kind = "fuel";
    static constexpr std::string_view says = "Petrol, ethanol or a blend of both, as sold.";

    double research_octane = 95;
    double motor_octane = 85;
    double ethanol = 0;  // share by volume before mixing
    std::optional<double> stated_stoichiometric_ratio;
    std::optional<double> stated_heating_value;
    std::optional<double> stated_density;
    std::optional<double> stated_latent_heat;

    static std::span<const fields::Row> rows();
    std::optional<fields::Complaint> check() const;

    /// kg of ethanol per kg of fuel.
    double ethanol_mass_share() const noexcept;
    /// kg of dry air per kg of fuel.
    double stoichiometric_ratio() const noexcept;
    /// Lower, of the liquid, J/kg.
    double heating_value() const noexcept;
    /// kg/m3.
    double density() const noexcept;
    /// J/kg at 25 degC.
    double latent_heat() const noexcept;
    /// Of the liquid, J/(kg K).
    double heat_capacity() const noexcept;
    /// RON - K (RON - MON): K is 0 as in the research test, 1 as in the motor test.
    double octane_index(double K) const noexcept;
};

}  // namespace windwall::media
