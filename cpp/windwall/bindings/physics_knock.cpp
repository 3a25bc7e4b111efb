// What a state asks of the fuel by each of the two judgements, without a vehicle around it.
#include "windwall/engine/cylinder.hpp"

#include <pybind11/numpy.h>
#include <pybind11/pybind11.h>

namespace windwall::bindings {
namespace {

namespace py = pybind11;
using namespace windwall::engine;
using namespace py::literals;

/// An engine of the usual class, a four of 1.6 litres, at one state of its manifold and at the
/// speed that it fills best at.
struct Question {
    Cylinder engine;
    Intake intake;
};

/// `intake` with the flow that the engine draws from it.
void settle(Question& asked) {
    for (int round = 0; round < 30; ++round)
        asked.intake.charge.dry_air =
            asked.engine.gas_demand(asked.intake, {}) / (1 + asked.intake.charge.vapour_share());
}

Question question(double compression_ratio, double engine_speed, double manifold_pressure,
                  double charge_temperature, double exhaust_pressure, double lambda, double water,
                  double methanol) {
    Question asked;
    const KnockAnchor usual;
    Cylinder& engine = asked.engine;
    engine.cylinders = 4;
    engine.bore = engine.stroke = 0.08;
    engine.compression_ratio = compression_ratio;
    engine.rev_limit = 1.5 * engine_speed;
    engine.breathing.best_speed = engine_speed;
    engine.lambda = lambda;
    Intake& intake = asked.intake;
    intake.engine_speed = engine_speed;
    intake.charge =
        media::ambient_stream(manifold_pressure, charge_temperature, usual.humidity_ratio, 1e-3);
    intake.charge.liquid[media::index(media::Vapour::water)] = water;
    intake.charge.liquid[media::index(media::Vapour::methanol)] = methanol;
    intake.ambient_pressure = exhaust_pressure;
    intake.ambient_temperature = 298.15;
    intake.exhaust_pressure = exhaust_pressure;
    intake.head_temperature = usual.head_temperature;
    settle(asked);
    return asked;
}

/// What alcohol in the charge adds to the fuel's index is taken off, so that what is left is asked
/// of the fuel in the tank.
double of_the_tank(const Question& asked) {
    const Spark best = asked.engine.best_spark(asked.intake, {});
    const media::Fuel petrol;
    return best.fuel_index - petrol.octane_index(asked.engine.octane_sensitivity_weight);
}

double asked_by_rule(double compression_ratio, double engine_speed, double manifold_pressure,
                     double charge_temperature, double exhaust_pressure, double lambda,
                     double water, double methanol, double retard) {
    const Question asked = question(compression_ratio, engine_speed, manifold_pressure,
                                    charge_temperature, exhaust_pressure, lambda, water, methanol);
    const Spark best = asked.engine.best_spark(asked.intake, {});
    return best.later(retard).requirement - of_the_tank(asked);
}

double asked_by_end_gas(double compression_ratio, double engine_speed, double manifold_pressure,
                        double charge_temperature, double exhaust_pressure, double lambda,
                        double water, double methanol, double retard) {
    const Question asked = question(compression_ratio, engine_speed, manifold_pressure,
                                    charge_temperature, exhaust_pressure, lambda, water, methanol);
    return *asked.engine.integral_requirement(asked.intake, {}, retard) - of_the_tank(asked);
}

template <typename Asked>
void bind_asked(py::module_& physics, const char* name, Asked asked, const char* judgement) {
    const KnockAnchor usual;
    physics.def(name, py::vectorize(asked), "compression_ratio"_a = usual.compression_ratio,
                "engine_speed"_a = usual.engine_speed,
                "manifold_pressure"_a = usual.manifold_pressure,
                "charge_temperature"_a = usual.charge_temperature,
                "exhaust_pressure"_a = usual.exhaust_pressure, "lambda_"_a = usual.lambda,
                "water"_a = 0.0, "methanol"_a = 0.0, "retard"_a = usual.retard, judgement);
}

}  // namespace

void bind_knock_physics(py::module_& physics) {
    bind_asked(physics, "asked_by_rule", &asked_by_rule,
               "Octane number that an engine of the usual class asks of the fuel in its tank, by "
               "the octane rule from the usual anchor. SI units; water and methanol are drops at "
               "the valve, kg per kg of dry air; retard in rad.");
    bind_asked(physics, "asked_by_end_gas", &asked_by_end_gas,
               "The same by the ignition delay of the end gas, from the same anchor.");
}

}  // namespace windwall::bindings
