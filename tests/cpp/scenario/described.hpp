#pragma once
#include "windwall/scenario/numbers.hpp"

#include <algorithm>

#include "files.hpp"

namespace windwall::scenario {

/// The twin of the airfield, of which only its sizes and what is given here are stated.
inline Scenario twin_with(std::string_view engine_values, std::string_view upgrades = "[]") {
    auto root = car(upgrades);
    auto engine = fields::Json::object();
    for (const auto* key :
         {"kind", "cylinders", "bore", "stroke", "compression_ratio", "rev_limit"})
        engine[key] = root["engine"][key];
    const auto values = fields::Json::parse(engine_values);
    for (const auto& [key, value] : values.items())
        engine[key] = value;
    root["engine"] = engine;
    return loaded(root.dump());
}

inline const engine::Cylinder& cylinder(const vehicle::Vehicle& vehicle) {
    return *vehicle.engine.as<engine::Cylinder>();
}

inline const engine::Cylinder& cylinder(const Scenario& scenario) {
    return cylinder(scenario.vehicle);
}

/// One standard deviation of a number; 0 where it is known.
inline double sigma(const Scenario& scenario, std::string_view address) {
    const auto all = uncertain_numbers(scenario);
    const auto found = std::ranges::find(all, address, &Uncertain::address);
    return found == all.end() ? 0 : found->sigma;
}

/// Values of an engine that are one object after the other.
inline std::string joined_values(const fields::Json& some, std::string_view others) {
    auto all = some;
    const auto more = fields::Json::parse(others);
    for (const auto& [key, value] : more.items())
        all[key] = value;
    return all.dump();
}

}  // namespace windwall::scenario
