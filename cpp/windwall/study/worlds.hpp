#pragma once
#include "windwall/scenario/scenario.hpp"
#include "windwall/solve/point/outcome.hpp"
#include "windwall/study/batch.hpp"

#include <array>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

/// Many vehicles that one description allows, each with a value for every uncertain number of it,
/// in the order of `scenario::uncertain_numbers`.
namespace windwall::study {

/// A value for every uncertain number of every world, SI: world by world.
struct Worlds {
    std::span<const double> values;
    std::size_t numbers{};

    std::size_t size() const noexcept { return numbers == 0 ? 0 : values.size() / numbers; }
    std::span<const double> at(std::size_t world) const noexcept {
        return values.subspan(world * numbers, numbers);
    }
};

/// What became of a set of upgrades in a world.
enum class WorldEnd {
    answered,
    ends_without_answer,  // with thrust to spare: the speed is that where answers end
    no_answer,
    not_installable,
    broken_rule,  // the vehicle itself breaks one
    not_reached,  // the caller stopped before
};

/// The speed of every set in every world, m/s, NaN where there is none: world by world.
struct WorldSpeeds {
    std::vector<double> speed;
    std::vector<WorldEnd> end;
};

/// The speed that a ranking gives each of these sets, in every world. What a set leaves open takes
/// its fastest value there. Neither the number of threads nor the order changes a bit of it.
WorldSpeeds world_speeds(const scenario::Scenario& scenario, const Worlds& worlds,
                         const std::vector<scenario::UpgradeSet>& sets,
                         const BatchOptions& options = {});

/// Where a vehicle is looked at, SI. Held where it names an engine speed or a gear, else at the end
/// of its own pull. In a gear it is at full throttle on the road.
struct Situation {
    std::optional<double> engine_speed;
    std::optional<std::size_t> gear;   // from 0
    std::optional<double> road_speed;  // in a gear it makes the engine speed that is not named
    std::optional<double> retard;      // of the spark that was driven; else the vehicle's own plan
    double opening = 1;                // where no gear is named
    std::vector<std::string> results;  // addresses to be read there; `speed` is that of a goal
};

/// What each world has, NaN where there is no such number: world by world, situation by situation,
/// result by result.
struct WorldAnswers {
    std::vector<double> answers;
    std::vector<solve::Status> status;  // world by world, situation by situation
};

/// What each world has in each situation, likewise.
WorldAnswers world_answers(const scenario::Scenario& scenario, const Worlds& worlds,
                           const std::vector<Situation>& situations,
                           const BatchOptions& options = {});

}  // namespace windwall::study

template <>
struct windwall::fields::Names<windwall::study::WorldEnd> {
    static constexpr std::array<std::string_view, 6> names{"answered",    "ends_without_answer",
                                                           "no_answer",   "not_installable",
                                                           "broken_rule", "not_reached"};
};
