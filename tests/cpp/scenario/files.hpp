#pragma once
#include "windwall/fields/physics_of.hpp"
#include "windwall/scenario/install.hpp"
#include "windwall/scenario/load.hpp"
#include "windwall/scenario/physics.hpp"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <filesystem>
#include <fstream>
#include <sstream>
#include <string>
#include <string_view>
#include <variant>

namespace windwall::scenario {

inline std::filesystem::path scenarios_folder() {
    return std::filesystem::path(__FILE__).parent_path() / "../../../scenarios";
}

inline std::string read_file(const std::string& name) {
    std::ifstream file(scenarios_folder() / name);
    std::stringstream text;
    text << file.rdbuf();
    return text.str();
}

/// The car of the airfield with other upgrades, and other entries at the root.
inline fields::Json car(std::string_view upgrades, std::string_view others = "{}") {
    auto root = fields::Json::parse(read_file("airfield_cyclecar.json"));
    root["upgrades"] = fields::Json::parse(upgrades);
    const auto more = fields::Json::parse(others);
    for (const auto& [key, value] : more.items())
        root[key] = value;
    return root;
}

inline Scenario loaded(const std::string& text) {
    auto read = load(text);
    EXPECT_TRUE(read) << read.violation();
    return read ? *std::move(read.scenario) : Scenario{};
}

inline Scenario loaded_car(std::string_view upgrades, std::string_view others = "{}") {
    return loaded(car(upgrades, others).dump());
}

/// "address: message" of every problem, one a line.
inline std::string problems_of(std::string_view text) {
    std::string lines;
    for (const auto& problem : load(text).problems.sorted())
        lines += problem.address + ": " + problem.message + "\n";
    return lines;
}

inline std::string problems_of_car(std::string_view upgrades, std::string_view others = "{}") {
    return problems_of(car(upgrades, others).dump());
}

/// Every number of a vehicle to the last bit, and its words.
inline std::string bits(const vehicle::Vehicle& vehicle) {
    return fields::physics_of(fields::group_type<vehicle::Vehicle>, &vehicle, {}).dump() +
           vehicle.tyres.size;
}

/// The same once an upgrade is fitted, which lets go of the figures that the stock engine met.
inline std::string bits_once_fitted(vehicle::Vehicle vehicle) {
    if (auto* engine = vehicle.engine.as<engine::Cylinder>()) engine->rated.reset();
    return bits(vehicle);
}

/// All that a result can depend on, whatever the order it was typed in.
inline nlohmann::json physics(const Scenario& scenario) {
    return nlohmann::json::parse(physics_of(scenario).dump());
}

inline vehicle::Vehicle installed(const Scenario& scenario, UpgradeSet set,
                                  const Choices& chosen = {}) {
    auto made = install(scenario, set, chosen);
    const auto* why = std::get_if<std::string>(&made);
    EXPECT_EQ(why, nullptr) << *why;
    return why ? vehicle::Vehicle{} : std::get<vehicle::Vehicle>(std::move(made));
}

inline std::string refused(const Scenario& scenario, UpgradeSet set, const Choices& chosen = {}) {
    const auto made = install(scenario, set, chosen);
    const auto* why = std::get_if<std::string>(&made);
    return why ? *why : "installed";
}

inline std::vector<std::string> ids_of(const vehicle::ChargePath& path) {
    std::vector<std::string> ids;
    for (const auto& entry : path)
        ids.push_back(entry.id);
    return ids;
}

}  // namespace windwall::scenario
