// What one operating point asks of the fuel.
#include "windwall/engine/cylinder.hpp"
#include "windwall/engine/fuel_air_cycle.hpp"
#include "windwall/engine/usual.hpp"

#include <algorithm>
#include <cmath>

namespace windwall::engine {
namespace {

constexpr double best_centre = 8 * degree;  // half burnt, after top dead centre; common practice
// Of the heat released, what acts on the pressure of a charge that keeps the exponent of the
// unburnt: the rest goes to the walls and into the higher heat capacity of burnt gas. Set so that
// the peak pressure is that of two-zone cycles with equilibrium products.
constexpr double heat_on_pressure = 0.88;
constexpr double residual_temperature = 1000;  // K
constexpr double most_residual = 0.25;
// Compression to 50 bar raises the temperature by 2.5; its root is where the heat capacity of a
// charge is the mean one.
constexpr double mean_heating = 1.59;
constexpr double hottest_of_range = 1000;  // K, of the heat capacities
// Drops that evaporate while the charge is being compressed cool it less, by about the root of what
// compression makes of a kelvin.
constexpr double late_cooling = 0.7;
// kg per kg of fuel: the octane number of a mixture was measured to rise as far with water (Brusca
// and others, Heliyon 2019); what goes beyond does nothing for knock.
constexpr double most_water_per_fuel = 1.5;

// Of what the delay asks for between two states, what is counted: its slopes over spark, pressure,
// ratio, enrichment and back-pressure are all 1.4 to 1.5 times those measured (Russ, SAE 960497).
constexpr double counted_of_delay = 1 / 1.4;

/// Mass of residual over all of the charge: the part of Fox, Cheng and Heywood, SAE 931025, that
/// stands without valve overlap; its two constants as they are commonly quoted, not read there.
double residual_share(double compression_ratio, double equivalence_ratio,
                      double pressure_ratio) noexcept {
    const double share =
        0.632 * equivalence_ratio * std::pow(pressure_ratio, -0.74) / compression_ratio;
    return std::min(share, most_residual);
}

/// kg of all fuel per kg of dry air.
double fuel_share(const Mixture& burnt) noexcept { return burnt.own_fuel + burnt.injected_fuel; }

/// Of the drops of water, the share that knock is credited with.
double credited(const media::Stream& charge, const Mixture& burnt) noexcept {
    const double water = charge.liquid[media::index(media::Vapour::water)];
    return std::min(1.0, most_water_per_fuel * fuel_share(burnt) / std::max(water, 1e-9));
}

/// K by which liquids lower what the end gas starts from, at one pressure; `share` of the drops is
/// credited.
double cooling_before_knock(const Evaporation& evaporation, const media::Stream& charge,
                            const AtValve& liquid, double share) noexcept {
    const double early = evaporate(charge, liquid, share * evaporation.before_closing).cooling;
    const double all = evaporate(charge, liquid, share * evaporation.before_knock).cooling;
    return early + late_cooling * std::max(0.0, all - early);
}

/// Of the alcohols, the share that evaporates from the gas before knock; 0 where there are none.
double share_from_gas(const media::Stream& charge, const AtValve& liquid,
                      double before_knock) noexcept {
    double gas = 0, all = 0;
    for (const media::Vapour kind : {media::Vapour::methanol, media::Vapour::ethanol}) {
        const std::size_t i = media::index(kind);
        gas += charge.vapour[i] + liquid.early[i] + before_knock * liquid.flying[i];
        all += charge.vapour[i] + liquid.early[i] + liquid.flying[i] + liquid.metal[i];
    }
    return all > 0 ? gas / all : 0;
}

/// All that is in the gas when it burns, per kg of dry air.
std::array<double, 4> vapours(const media::Stream& charge, const Evaporated& drops,
                              const Mixture& burnt, bool carburetted) noexcept {
    std::array<double, 4> all = charge.vapour;
    for (std::size_t i = 0; i < all.size(); ++i)
        all[i] += burnt.port[i] + (carburetted && i > 0 ? charge.liquid[i] : drops.vapour[i]);
    return all;
}

}  // namespace

double Cylinder::residual(const Intake& intake, const Mixture& burnt, double ratio) const noexcept {
    return residual_share(ratio, burnt.equivalence_ratio(),
                          intake.charge.pressure / pressure_behind(intake, burnt));
}

AtValve Cylinder::at_valve(const Intake& intake, const Mixture& burnt) const noexcept {
    return engine::at_valve(evaporation, intake.charge, burnt.port);
}

/// K by which the end gas starts colder than with petrol injected at the port, with which the
/// anchor is known.
double Cylinder::drops_cooling(const Intake& intake, const Mixture& burnt) const noexcept {
    const media::Stream& charge = intake.charge;
    return cooling_before_knock(evaporation, charge, at_valve(intake, burnt),
                                credited(charge, burnt)) -
           cooling_before_knock({}, charge, petrol_at_port(burnt.equivalence_ratio()), 1);
}

Burning Cylinder::burning(const Intake& intake, const Mixture& burnt, double ratio) const noexcept {
    return engine::burning(intake.charge, at_valve(intake, burnt), burnt,
                           residual(intake, burnt, ratio), evaporation.before_knock);
}

/// At the spark of best torque.
double Cylinder::octane_requirement(const Intake& intake, const Mixture& burnt) const noexcept {
    const media::Stream& charge = intake.charge;
    const Evaporated drops = evaporate(charge, at_valve(intake, burnt), evaporation.before_knock);
    const std::size_t water = media::index(media::Vapour::water);
    const KnockState best_torque{compression_ratio,
                                 intake.engine_speed,
                                 charge.pressure,
                                 charge.temperature - drops_cooling(intake, burnt),
                                 head(intake, burnt),
                                 0,
                                 burnt.lambda,
                                 std::min(charge.vapour[water] + drops.vapour[water],
                                          most_water_per_fuel * fuel_share(burnt)),
                                 pressure_behind(intake, burnt)};
    return knock_anchor.requirement(best_torque);
}

Spark Cylinder::best_spark(const Intake& intake, const media::Fuel& fuel) const noexcept {
    const Mixture burnt = mixture(intake, fuel);
    const double asked = octane_requirement(intake, burnt);
    const double from_gas =
        share_from_gas(intake.charge, at_valve(intake, burnt), evaporation.before_knock);
    const double index = octane_index(burnt, fuel, octane_sensitivity_weight, from_gas);
    return {0, index - asked, asked, index, knock_anchor.spread()};
}

Spark Cylinder::choose_spark(const Intake& intake, const media::Fuel& fuel) const noexcept {
    return spark.choose(intake.engine_speed, best_spark(intake, fuel));
}

EndGas Cylinder::end_gas(const Intake& intake, const media::Fuel& fuel,
                         double retard) const noexcept {
    return end_gas(intake, mixture(intake, fuel), retard, compression_ratio);
}

EndGas Cylinder::end_gas(const Intake& intake, const Mixture& burnt, double retard,
                         double ratio) const noexcept {
    const media::Stream& charge = intake.charge;
    const double phi = burnt.equivalence_ratio();
    const double residual = this->residual(intake, burnt, ratio);
    const double T_i = charge.temperature;
    const double fresh =
        T_i + breathing.wall_heating * (head(intake, burnt) - T_i) - drops_cooling(intake, burnt);

    EndGas made;
    made.compression_ratio = ratio;
    made.engine_speed = intake.engine_speed;
    made.temperature = std::max(200.0, (1 - residual) * fresh + residual * residual_temperature);
    made.pressure = charge.pressure * filling(intake, burnt, ratio) / (1 - residual) *
                    made.temperature / T_i * (ratio - 1) / ratio;
    // Of what is sprayed, what has evaporated; of the tank's fuel, all.
    const Evaporated drops =
        evaporate(charge, engine::at_valve(evaporation, charge, {}), evaporation.before_knock);
    const auto all = vapours(charge, drops, burnt, intake.carburetted);
    const media::Gas gas = media::gas_phase(all);
    made.exponent = gas.gamma(std::min(mean_heating * made.temperature, hottest_of_range));
    made.gas_constant = gas.R;
    made.heat = heat_on_pressure * (1 - residual) * (1 - unburnt_share(phi)) * burnt.heating /
                (1 + all[0] + all[1] + all[2] + all[3]);
    made.burn_duration =
        combustion.burn_duration * slowed_burn(burning(intake, burnt, ratio).dilution);
    made.burn_start = best_centre - part_at_burnt(0.5) * made.burn_duration + retard;
    return made;
}

/// What the delay asks for where the engine is known to knock, on petrol.
double Cylinder::anchored_delay_requirement() const noexcept {
    const KnockAnchor& anchor = knock_anchor;
    Intake intake;
    intake.engine_speed = anchor.engine_speed;
    intake.charge = media::ambient_stream(anchor.manifold_pressure, anchor.charge_temperature,
                                          anchor.humidity_ratio, 1);
    intake.ambient_pressure = media::constants::isa_pressure;
    intake.ambient_temperature = cooling.known_air_temperature;
    intake.exhaust_pressure = anchor.exhaust_pressure;
    intake.head_temperature = anchor.head_temperature;
    const Mixture burnt = mix(intake.charge, media::Fuel{}, anchor.lambda, true);
    return octane_of_integral(
        knock_integral(end_gas(intake, burnt, anchor.retard, anchor.compression_ratio)));
}

/// Octane numbers by which the rule asks for less at one engine speed than at another.
static double relief_by_engine_speed(double engine_speed, double than_at) noexcept {
    KnockState here, there;
    here.engine_speed = engine_speed;
    there.engine_speed = than_at;
    return octane_requirement_rise(there, here);
}

/// Both states are judged at the speed the engine turns, to which the integral is inverse, and what
/// engine speed itself does is the rule's: of time alone the delay makes some 5 octane numbers for
/// each 1000 rpm, where engines are said to ask for 1 to 2 less.
std::optional<double> Cylinder::integral_requirement(const Intake& intake, const media::Fuel& fuel,
                                                     double retard) const noexcept {
    const double here = octane_of_integral(knock_integral(end_gas(intake, fuel, retard)));
    const double in_as_much_time =
        octane_of_integral(knock_anchor.engine_speed / std::max(intake.engine_speed, 1.0)) /
        octane_of_integral(1);
    return knock_anchor.octane_number +
           counted_of_delay * (here - in_as_much_time * anchored_delay_requirement()) -
           relief_by_engine_speed(intake.engine_speed, knock_anchor.engine_speed);
}

}  // namespace windwall::engine
