#include "windwall/media/fuel.hpp"

#include "windwall/media/liquids.hpp"

namespace windwall::media {
namespace {

constexpr Liquid petrol = liquid(Vapour::petrol);
constexpr Liquid alcohol = liquid(Vapour::ethanol);

/// Of a property that adds up by mass.
double by_mass(double ethanol_share, double of_petrol, double of_ethanol) {
    return of_petrol + ethanol_share * (of_ethanol - of_petrol);
}

/// Volumes are taken as additive; they swell by less than 0.3 %.
double blend_density(double volume_share) {
    return petrol.density + volume_share * (alcohol.density - petrol.density);
}

}  // namespace

std::span<const fields::Row> Fuel::rows() {
    using namespace fields;
    static constexpr Row table[] = {
        usual("research_octane", "RON", at<&Fuel::research_octane>, number(), {60, 130}, 1,
              "Research octane number of the fuel as sold, its ethanol included", "EN 228"),
        usual("motor_octane", "MON", at<&Fuel::motor_octane>, number(), {60, 120}, 1,
              "Motor octane number of the fuel as sold, its ethanol included", "EN 228"),
        usual("ethanol", "E", at<&Fuel::ethanol>, percent(), {0, 100}, 3,
              "Ethanol by volume: 0 for petrol, 10 for E10", "common practice"),
        maybe("stoichiometric_ratio", "AFR_s", at<&Fuel::stated_stoichiometric_ratio>, number(),
              {5, 18}, "Mass of dry air that burns one mass of fuel, if known"),
        maybe("heating_value", "LHV", at<&Fuel::stated_heating_value>, specific_energy("MJ/kg"),
              {15, 50}, "Lower heating value of the liquid, if known"),
        maybe("density", "rho_f", at<&Fuel::stated_density>, fields::density("kg/m3"), {600, 900},
              "Density of the liquid, if known"),
        maybe("latent_heat", "h_fg", at<&Fuel::stated_latent_heat>, specific_energy("kJ/kg"),
              {200, 1300}, "Heat of vaporisation at 25 degC, if known"),
    };
    return table;
}

std::optional<fields::Complaint> Fuel::check() const {
    if (motor_octane <= research_octane) return std::nullopt;
    return fields::Complaint{"motor_octane", "the motor octane number is above the research one"};
}

double Fuel::ethanol_mass_share() const noexcept {
    return ethanol * alcohol.density / blend_density(ethanol);
}

double Fuel::stoichiometric_ratio() const noexcept {
    return stated_stoichiometric_ratio.value_or(
        by_mass(ethanol_mass_share(), petrol.stoichiometric_ratio, alcohol.stoichiometric_ratio));
}

double Fuel::heating_value() const noexcept {
    return stated_heating_value.value_or(
        by_mass(ethanol_mass_share(), petrol.heating_value, alcohol.heating_value));
}

double Fuel::density() const noexcept { return stated_density.value_or(blend_density(ethanol)); }

double Fuel::latent_heat() const noexcept {
    return stated_latent_heat.value_or(
        by_mass(ethanol_mass_share(), petrol.latent_heat, alcohol.latent_heat));
}

double Fuel::heat_capacity() const noexcept {
    return by_mass(ethanol_mass_share(), petrol.heat_capacity, alcohol.heat_capacity);
}

double Fuel::octane_index(double K) const noexcept {
    return research_octane - K * (research_octane - motor_octane);
}

}  // namespace windwall::media
