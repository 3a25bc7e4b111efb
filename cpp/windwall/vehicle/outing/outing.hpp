#pragma once
#include "windwall/vehicle/outing/legs.hpp"

#include <array>
#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace windwall::vehicle {

/// How warm the vehicle is when it sets out.
enum class Starts { cold, idling, soaked };

/// A leg that cannot begin where the one before it ends.
struct MisplacedLeg {
    std::size_t leg{};  // from 0
    std::string sentence;
};

/// What is done with the vehicle in one outing, and on which road.
struct Outing {
    static constexpr std::string_view description =
        "What is done with the vehicle, leg by leg, and on which road.";
    static constexpr std::size_t most_legs = 64;

    std::string id;
    std::string title;
    Starts starts = Starts::idling;
    std::optional<double> shift_speed;      // rad/s; else where the next gear pushes harder
    std::optional<double> shift_time;       // s; else the gearbox's
    bool lift = true;                       // the pedal is released while a gear is changed
    std::optional<double> launch_speed;     // rad/s; else the clutch's
    std::optional<double> launch_gear;      // from 1
    std::optional<double> road_length;      // m, from where each run starts
    std::optional<double> fuel_on_board;    // m3
    std::optional<double> liquid_on_board;  // m3, of every nozzle together
    fields::Columns road;                   // distance in m, rise over run, headwind in m/s
    std::vector<Leg> legs;

    /// Legs that need a standing vehicle and are put behind one that leaves it moving.
    std::vector<MisplacedLeg> misplaced_legs() const;
    std::optional<fields::Violation> check() const;
    /// Of everything but its id and its legs.
    static std::span<const fields::Row> rows();
};

}  // namespace windwall::vehicle

template <>
struct windwall::fields::Names<windwall::vehicle::Starts> {
    static constexpr std::array<std::string_view, 3> names{"cold", "idling", "soaked"};
};
