#pragma once
#include "windwall/charge/part.hpp"
#include "windwall/driveline/part.hpp"
#include "windwall/engine/engine.hpp"
#include "windwall/media/day.hpp"
#include "windwall/media/fuel.hpp"
#include "windwall/road/body.hpp"
#include "windwall/road/tyres.hpp"
#include "windwall/vehicle/engine_bay.hpp"
#include "windwall/vehicle/goal.hpp"

#include <optional>
#include <span>
#include <vector>

namespace windwall::vehicle {

using ChargePath = std::vector<fields::Entry<charge::Part>>;
using Driveline = std::vector<fields::Entry<driveline::Part>>;

/// One vehicle on one day with one goal: everything a solve needs, by value, never changed by it.
struct Vehicle {
    static constexpr std::string_view description = "One vehicle, one day, one goal.";
    Goal goal;
    media::Day day;
    road::Body body;
    EngineBay engine_bay;
    ChargePath charge_path;  // in the order the air meets them
    engine::Engine engine;
    media::Fuel fuel;
    Driveline driveline;  // from the crank to the wheels
    road::Tyres tyres;

    /// So many valves, blowers and bypasses can be balanced at once, and one part of the driveline
    /// can vary its ratio.
    std::optional<fields::Violation> check() const;

    static std::span<const fields::Row> rows() {
        using namespace fields;
        static constexpr Row table[] = {
            group("goal", at<&Vehicle::goal>, "What is to be reached, and on which road"),
            group("day", at<&Vehicle::day>, "The air on the day", Need::required),
            group("body", at<&Vehicle::body>, "Mass, drag and rolling resistance", Need::required),
            group("under_hood", at<&Vehicle::engine_bay>,
                  "The air under the bodywork and at the intake"),
            parts("charge_path", at<&Vehicle::charge_path>,
                  "What the air passes on its way to the engine, in that order"),
            tagged("engine", at<&Vehicle::engine>, "The engine"),
            group("fuel", at<&Vehicle::fuel>, "The fuel"),
            parts("driveline", at<&Vehicle::driveline>,
                  "What turns the wheels, from the crank outwards"),
            group("tyres", at<&Vehicle::tyres>, "The driven tyres", Need::required),
        };
        return table;
    }
};

}  // namespace windwall::vehicle
