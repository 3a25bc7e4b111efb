// What the fuel that a maker asks for tells of where an engine knocks.
#include "windwall/engine/fit_rated.hpp"
#include "windwall/engine/stock.hpp"

namespace windwall::engine {
namespace {

constexpr double hot_day = 308.15;       // K
constexpr double humidity = 0.0071;      // kg/kg, to which surveys are corrected
constexpr double usual_sensitivity = 9;  // research less motor octane number of pump petrol
constexpr double reserve = 3;            // octane numbers; see docs/physics/engine_classes.md
// Of the reserve 4, and 3 of a spark that need not be the one of best torque.
constexpr double reserve_known_to = 5;

double index_of(const Rated& rated, double weight) {
    media::Fuel fuel;
    fuel.research_octane = *rated.research_octane;
    fuel.motor_octane = rated.motor_octane.value_or(fuel.research_octane - usual_sensitivity);
    return fuel.octane_index(weight);
}

}  // namespace

void anchor_by_rated_fuel(Cylinder& engine, const media::Fuel& fuel) {
    const Cylinder stock = stock_of(engine);
    const Rated& rated = *engine.rated;
    const double speed =
        rated.torque_speed.value_or(engine.breathing.best_speed.value_or(0.5 * engine.rev_limit));
    const Intake intake = full_throttle(stock, fuel, speed, hot_day);
    KnockAnchor& anchor = engine.knock_anchor;
    anchor.octane_number = kept(index_of(rated, engine.octane_sensitivity_weight) - reserve);
    anchor.compression_ratio = stock.compression_ratio;
    anchor.engine_speed = speed;
    anchor.manifold_pressure = kept(intake.charge.pressure);
    anchor.charge_temperature = kept(intake.charge.temperature);
    anchor.head_temperature = kept(stock.temperatures(intake, fuel).head);
    anchor.retard = 0;
    anchor.lambda = kept(stock.mixture(intake, fuel).lambda);
    anchor.humidity_ratio = humidity;
    anchor.exhaust_pressure = kept(stock.exhaust_pressure(intake, fuel));
    anchor.known_to = reserve_known_to;
}

}  // namespace windwall::engine
