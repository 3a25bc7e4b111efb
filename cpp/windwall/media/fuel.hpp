#pragma once
#include "windwall/fields/row.hpp"
#include "windwall/media/vapour.hpp"

#include <array>
#include <optional>
#include <span>
#include <string_view>

namespace windwall::media {

/// Which liquid stated octane numbers are of: the fuel as sold, or the petrol before alcohol was
/// added to it.
enum class OctaneOf { fuel, petrol };

/// What is in the tank. Unless the builder states a property, it is that of a mixture of petrol,
/// ethanol and methanol with the project's constants.
struct Fuel {
    static constexpr std::string_view kind = "fuel";
    static constexpr std::string_view description = "Petrol, ethanol, methanol or a blend of them.";

    double research_octane = 95;
    double motor_octane = 85;
    OctaneOf octane_of = OctaneOf::fuel;
    double ethanol = 0;   // share by volume before mixing
    double methanol = 0;  // share by volume before mixing
    std::optional<double> ethanol_by_mass;
    std::optional<double> methanol_by_mass;
    std::optional<double> stated_stoichiometric_ratio;
    std::optional<double> stated_heating_value;
    std::optional<double> stated_density;
    std::optional<double> stated_latent_heat;

    static std::span<const fields::Row> rows();
    std::optional<fields::Violation> check() const;

    /// The same fuel with all that is asked of it stated, so that asking costs nothing.
    Fuel worked_out() const noexcept;

    /// kg of each liquid per kg of fuel, by Vapour; they add up to one.
    std::array<double, 4> shares() const noexcept;
    /// kg of ethanol per kg of fuel.
    double ethanol_mass_share() const noexcept;
    /// Molecules of alcohol, of all molecules.
    double alcohol_molar_share() const noexcept;
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
    /// kg/mol, the mean of its molecules.
    double molar_mass() const noexcept;
    /// Of the blend, whichever liquid the stated number is of.
    double blend_research_octane() const noexcept;
    double blend_motor_octane() const noexcept;
    /// RON - K (RON - MON): K is 0 as in the research test, 1 as in the motor test.
    double octane_index(double K) const noexcept;

private:
    bool by_mass() const noexcept { return ethanol_by_mass || methanol_by_mass; }
};

/// Octane numbers of a neat alcohol. No source for these; an older table of the US Department of
/// Energy, Properties of Fuels, has 107 and 92 for methanol, 108 and 92 for ethanol. The tests say
/// of themselves that they may not suit alcohols (ASTM D2699, D2700).
struct AlcoholOctane {
    double research;
    double motor;
};
constexpr AlcoholOctane alcohol_octane(Vapour alcohol) noexcept {
    return alcohol == Vapour::methanol ? AlcoholOctane{109, 89} : AlcoholOctane{109, 90};
}

/// Octane number of a blend: linear in molecules, Anderson et al., Energy & Fuels 24 (2010) 6576.
constexpr double molar_octane(double petrol_number, double alcohol_number,
                              double alcohol_molar_share) noexcept {
    return petrol_number + alcohol_molar_share * (alcohol_number - petrol_number);
}

}  // namespace windwall::media

template <>
struct windwall::fields::Names<windwall::media::OctaneOf> {
    static constexpr std::array<std::string_view, 2> names{"fuel", "petrol"};
};
