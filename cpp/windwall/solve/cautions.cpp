#include "windwall/solve/cautions.hpp"

#include "windwall/fields/readable.hpp"

namespace windwall::solve {
namespace {

// Where small spark-ignition engines at full load are found; common practice.
constexpr double coldest_exhaust = 273.15 + 550;
constexpr double hottest_exhaust = 273.15 + 1050;

void add_validity(const engine::Validity& valid, std::vector<Caution>& cautions) {
    const auto add = [&](bool inside, std::string_view address, std::string_view sentence) {
        if (!inside) cautions.push_back({std::string(address), std::string(sentence)});
    };
    add(valid.compression_ratio, "engine/compression_ratio",
        "The table of fuel-air efficiency covers compression ratios 6 to 12; beyond it is "
        "extrapolated.");
    add(valid.mixture, "engine/lambda",
        "The table of fuel-air efficiency covers lambda 0.72 to 1.67; beyond it is extrapolated.");
    add(valid.mach_index, "engine/valves",
        "The inlet Mach index is beyond 1.2, where the filling table ends; it is extrapolated.");
    add(valid.pressure_ratio, "engine/exhaust",
        "Exhaust over intake pressure is outside 0.3 to 3, where the filling rule is stated.");
    add(valid.retard, "knock/retard",
        "The spark is more than 30 degrees from the best one, beyond what its penalty is fitted "
        "to.");
    add(valid.knock_pressure, "knock/margin",
        "The manifold pressure is more than 60 kPa from the knock anchor: the octane rule is "
        "extrapolating.");
}

void add_survival(const vehicle::Balance& balance, std::vector<Caution>& cautions) {
    for (std::size_t i = 0; i < balance.stations().size(); ++i) {
        if (balance.stations()[i].compression.capped) {
            cautions.push_back({"charge_path/" + balance.vehicle().charge_path[i].id,
                                "The charge leaves the range in which its properties are known."});
        }
    }
}

}  // namespace

std::vector<Caution> point_cautions(const vehicle::Balance& balance, const Point& point) {
    std::vector<Caution> cautions;
    if (!point.verdict.answered()) return cautions;
    const vehicle::Vehicle& car = balance.vehicle();
    const engine::Intake intake = balance.intake(balance.manifold());
    add_validity(car.engine.visit([&](const auto& engine) {
        return engine.validity(intake, car.fuel, point.spark.retard);
    }),
                 cautions);
    add_survival(balance, cautions);
    if (point.spark.margin < 0) {
        cautions.push_back({"knock/margin",
                            "The knock margin is negative in the middle of its band: detonation is "
                            "likely and breaks pistons."});
    }
    return cautions;
}

std::vector<Caution> heat_cautions(const HeatAccount& heat) {
    if (heat.exhaust_temperature > coldest_exhaust && heat.exhaust_temperature < hottest_exhaust) {
        return {};
    }
    return {{"heat/exhaust",
             "What the heat account leaves to the exhaust would make it " +
                 fields::readable(heat.exhaust_temperature, fields::temperature("degC")) +
                 ", outside the usual 550 to 1050 degC: some heat is booked in the wrong place."}};
}

}  // namespace windwall::solve
