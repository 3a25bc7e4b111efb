#include "windwall/solve/results/part_load_result.hpp"

#include <algorithm>

namespace windwall::solve {

using namespace fields;

std::span<const Row> PartLoadResult::rows() {
    using R = PartLoadResult;
    static constexpr Row table[] = {
        group("ending", at<&R::ending>, "How the question ended"),
        result("engine_speed", "N", at<&R::engine_speed>, angular_speed("rpm"), "Engine speed"),
        result("road_speed", "v", at<&R::road_speed>, speed("km/h"),
               "Speed over the ground that is held"),
        fact("gear", at<&R::gear>, "Gear it is held in, counted from 1"),
        result("opening", "o", at<&R::opening>, percent(),
               "Share of the pedal's travel that holds it, or the end of it that comes nearest"),
        result("torque", "T", at<&R::torque>, fields::torque("N m"),
               "Torque at the flywheel with that pedal"),
        result("petrol", "m_f", at<&R::petrol>, mass_flow("kg/h"), "Fuel burnt in an hour"),
        result("blower_power", "P_c", at<&R::blower_power>, power("W"),
               "Power that the blowers take from the crank"),
        result("inlet_depression", "p_a - p_1", at<&R::inlet_depression>,
               pressure_difference("kPa"), "Vacuum at a blower's inlet seals, the deepest"),
        result("returned", "m_b", at<&R::returned>, mass_flow("g/s"),
               "Gas that bypasses let go round once more"),
        result("charge_temperature", "T_m", at<&R::charge_temperature>, fields::temperature("degC"),
               "Temperature of the charge in the manifold"),
        result("hotter_charge", "T_m2", at<&R::hotter_charge>, fields::temperature("degC"),
               "The same in a second balance that stands at this pedal, its bypass less open"),
        optional_group("point", at<&R::point>, "The operating point"),
        fact("cautions", at<&R::cautions>, "What to know about the answer"),
    };
    return table;
}

namespace {

void add(std::optional<double>& sum, double more) { sum = sum.value_or(0) + more; }

}  // namespace

void sum_up(const OperatingPoint& point, PartLoadResult& into) {
    into.petrol = point.engine.fuel_flow;
    into.charge_temperature = point.manifold.temperature;
    for (const auto& entry : point.charge_path) {
        if (const auto* blower = entry.part.as<CompressedResult>()) {
            add(into.blower_power, blower->crank_power);
            into.inlet_depression = std::max(
                into.inlet_depression.value_or(blower->inlet_depression), blower->inlet_depression);
        }
        if (const auto* bypass = entry.part.as<BranchedResult>())
            add(into.returned, bypass->returned);
    }
}

}  // namespace windwall::solve
