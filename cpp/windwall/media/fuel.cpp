#include "windwall/media/fuel.hpp"

#include "windwall/media/liquids.hpp"

#include <algorithm>

namespace windwall::media {
namespace {

constexpr std::size_t methanol_at = index(Vapour::methanol), ethanol_at = index(Vapour::ethanol),
                      petrol_at = index(Vapour::petrol);

/// Of a property that adds up by mass.
double by_mass_of(const std::array<double, 4>& shares, double Liquid::*property) {
    double sum = 0;
    for (std::size_t i = 0; i < shares.size(); ++i)
        sum += shares[i] * (liquids[i].*property);
    return sum;
}

/// mol of one liquid per kg of fuel.
double moles(const std::array<double, 4>& shares, Vapour vapour) {
    return shares[index(vapour)] / liquid(vapour).molar_mass;
}

/// Of the blend, where `stated` is that of the petrol in it.
double blended(const std::array<double, 4>& shares, double stated, double AlcoholOctane::*number) {
    const double petrol = moles(shares, Vapour::petrol);
    const double methanol = moles(shares, Vapour::methanol),
                 ethanol = moles(shares, Vapour::ethanol);
    const double alcohol = methanol + ethanol;
    if (alcohol == 0) return stated;
    const double of_alcohol = (methanol * (alcohol_octane(Vapour::methanol).*number) +
                               ethanol * (alcohol_octane(Vapour::ethanol).*number)) /
                              alcohol;
    return molar_octane(stated, of_alcohol, alcohol / (alcohol + petrol));
}

}  // namespace

std::span<const fields::Row> Fuel::rows() {
    using namespace fields;
    static constexpr Row table[] = {
        with_default("research_octane", "RON", at<&Fuel::research_octane>, number(), {60, 130}, 1,
                     "Research octane number of the liquid that octane_of names", "EN 228"),
        with_default("motor_octane", "MON", at<&Fuel::motor_octane>, number(), {60, 120}, 1,
                     "Motor octane number of the liquid that octane_of names", "EN 228"),
        choice("octane_of", at<&Fuel::octane_of>,
               "fuel: the octane numbers are of the fuel as sold, its alcohol included; petrol: of "
               "the petrol before alcohol is added, which then is counted by its molecules",
               "common practice, a pump states the number of what it sells"),
        with_default("ethanol", "E", at<&Fuel::ethanol>, percent(), {0, 100}, 3,
                     "Ethanol by volume before mixing: 0 for petrol, 10 for E10",
                     "common practice"),
        with_default("methanol", "M", at<&Fuel::methanol>, percent(), {0, 100}, 0,
                     "Methanol by volume before mixing: 0 for petrol, 15 for M15",
                     "none unless stated"),
        optional("ethanol_by_mass", "y_E", at<&Fuel::ethanol_by_mass>, percent(), {0, 100},
                 "Ethanol by mass, in place of the share by volume"),
        optional("methanol_by_mass", "y_M", at<&Fuel::methanol_by_mass>, percent(), {0, 100},
                 "Methanol by mass, in place of the share by volume"),
        optional("stoichiometric_ratio", "AFR_s", at<&Fuel::stated_stoichiometric_ratio>, number(),
                 {5, 18}, "Mass of dry air that burns one mass of fuel, if known"),
        optional("heating_value", "LHV", at<&Fuel::stated_heating_value>, specific_energy("MJ/kg"),
                 {15, 50}, "Lower heating value of the liquid, if known"),
        optional("density", "rho_f", at<&Fuel::stated_density>, fields::density("kg/m3"),
                 {600, 900}, "Density of the liquid, if known"),
        optional("latent_heat", "h_fg", at<&Fuel::stated_latent_heat>, specific_energy("kJ/kg"),
                 {200, 1300}, "Heat of vaporisation at 25 degC, if known"),
    };
    return table;
}

std::optional<fields::Violation> Fuel::check() const {
    using fields::Violation;
    if (motor_octane > research_octane)
        return Violation{"motor_octane", "the motor octane number is above the research one"};
    if (by_mass() && (ethanol != 0 || methanol != 0))
        return Violation{ethanol_by_mass ? "ethanol_by_mass" : "methanol_by_mass",
                         "alcohol is stated by volume too; state all of it one way"};
    if (ethanol + methanol > 1 + 1e-9)
        return Violation{"methanol", "ethanol and methanol are more than all of the fuel"};
    if (ethanol_by_mass.value_or(0) + methanol_by_mass.value_or(0) > 1 + 1e-9)
        return Violation{methanol_by_mass ? "methanol_by_mass" : "ethanol_by_mass",
                         "ethanol and methanol are more than all of the fuel"};
    return std::nullopt;
}

Fuel Fuel::worked_out() const noexcept {
    Fuel stated = *this;
    stated.ethanol = stated.methanol = 0;
    stated.ethanol_by_mass = shares()[ethanol_at];
    stated.methanol_by_mass = shares()[methanol_at];
    stated.stated_stoichiometric_ratio = stoichiometric_ratio();
    stated.stated_heating_value = heating_value();
    stated.stated_density = density();
    stated.stated_latent_heat = latent_heat();
    stated.research_octane = blend_research_octane();
    stated.motor_octane = blend_motor_octane();
    stated.octane_of = OctaneOf::fuel;
    return stated;
}

std::array<double, 4> Fuel::shares() const noexcept {
    const double of_ethanol = by_mass() ? ethanol_by_mass.value_or(0) : ethanol;
    const double of_methanol = by_mass() ? methanol_by_mass.value_or(0) : methanol;
    std::array<double, 4> shares{};
    shares[ethanol_at] = of_ethanol;
    shares[methanol_at] = of_methanol;
    shares[petrol_at] = std::max(0.0, 1 - of_ethanol - of_methanol);
    return by_mass() ? shares : shares_by_mass(shares);
}

double Fuel::ethanol_mass_share() const noexcept { return shares()[ethanol_at]; }

double Fuel::alcohol_molar_share() const noexcept {
    const auto of = shares();
    const double alcohol = moles(of, Vapour::methanol) + moles(of, Vapour::ethanol);
    return alcohol / (alcohol + moles(of, Vapour::petrol));
}

double Fuel::stoichiometric_ratio() const noexcept {
    if (stated_stoichiometric_ratio) return *stated_stoichiometric_ratio;
    return by_mass_of(shares(), &Liquid::stoichiometric_ratio);
}

double Fuel::heating_value() const noexcept {
    if (stated_heating_value) return *stated_heating_value;
    return by_mass_of(shares(), &Liquid::heating_value);
}

double Fuel::density() const noexcept {
    if (stated_density) return *stated_density;
    return 1 / volume_of(shares());
}

double Fuel::latent_heat() const noexcept {
    if (stated_latent_heat) return *stated_latent_heat;
    return by_mass_of(shares(), &Liquid::latent_heat);
}

double Fuel::heat_capacity() const noexcept { return by_mass_of(shares(), &Liquid::heat_capacity); }

double Fuel::molar_mass() const noexcept {
    const auto of = shares();
    return 1 /
           (moles(of, Vapour::methanol) + moles(of, Vapour::ethanol) + moles(of, Vapour::petrol));
}

double Fuel::blend_research_octane() const noexcept {
    if (octane_of == OctaneOf::fuel) return research_octane;
    return blended(shares(), research_octane, &AlcoholOctane::research);
}

double Fuel::blend_motor_octane() const noexcept {
    if (octane_of == OctaneOf::fuel) return motor_octane;
    return blended(shares(), motor_octane, &AlcoholOctane::motor);
}

double Fuel::octane_index(double K) const noexcept {
    const double research = blend_research_octane();
    return research - K * (research - blend_motor_octane());
}

}  // namespace windwall::media
