#include "windwall/scenario/numbers.hpp"
#include "windwall/solve/answer/held_spark.hpp"
#include "windwall/solve/full_throttle/top_speed.hpp"
#include "windwall/solve/point/guarded.hpp"
#include "windwall/solve/results/describe.hpp"
#include "windwall/study/result_reader.hpp"
#include "windwall/study/worlds.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <memory>
#include <string_view>

namespace windwall::study {
namespace {

using scenario::Scenario;
using vehicle::Vehicle;

constexpr double nothing = std::numeric_limits<double>::quiet_NaN();
constexpr std::string_view speed_of_goal = "speed";
constexpr double same_road_speed = 1e-9;  // relative
constexpr int most_tries = 40;

/// What is read where a vehicle was looked at.
struct Seen {
    solve::Status status = solve::Status::broken_off;
    double speed = nothing;
    solve::OperatingPoint point{};
    bool has_point = false;
};

/// The vehicle with the spark as it was driven; a table of the file is what was driven.
Vehicle as_driven(const Vehicle& vehicle, const Situation& situation) {
    const bool chooses = vehicle.engine.visit([]<class Engine>(const Engine& engine) {
        if constexpr (engine::Anchored<Engine>) return engine.spark.table.empty();
        return false;
    });
    return situation.retard && chooses ? solve::with_spark(vehicle, *situation.retard, 0) : vehicle;
}

void see_on_the_road(solve::VehicleSolver& solver, const solve::FullThrottlePoint& there,
                     Seen& seen) {
    seen.status = there.point.outcome.status;
    if (!there.point.outcome.answered()) return;
    describe(solver.point_solver().balance(), there, seen.point, solve::SecondOpinion::left_out);
    seen.has_point = true;
}

void see_top_speed(const Vehicle& car, bool with_point, Seen& seen) {
    const solve::TopSpeed found = solve::top_speed(car);
    seen.status = found.outcome.status;
    if (!found.outcome.answered()) return;
    seen.speed = found.speed();
    if (!with_point) return;
    solve::VehicleSolver solver(car);
    const auto& there = *found.equilibrium.full_throttle;
    see_on_the_road(solver, solver.at({there.point.condition.engine_speed, there.gear_state()}),
                    seen);
}

/// Full throttle in a gear at a road speed: the engine speed follows, tyres and all.
solve::FullThrottlePoint at_road_speed(solve::VehicleSolver& solver, std::size_t gear,
                                       double road_speed) {
    const driveline::GearState state{gear};
    double engine_speed = solver.ceiling();
    solve::FullThrottlePoint there{};
    for (int tried = 0; tried < most_tries; ++tried) {
        there = solver.at({engine_speed, state});
        if (!there.point.outcome.answered()) return there;
        const double short_by = road_speed / there.road_speed;
        if (std::abs(short_by - 1) < same_road_speed) return there;
        engine_speed *= short_by;
    }
    there.point.outcome.status = solve::Status::not_converged;
    return there;
}

void see_in_gear(const Vehicle& car, const Situation& asked, Seen& seen) {
    solve::VehicleSolver solver(car);
    if (*asked.gear >= solver.gears()) {
        seen.status = solve::Status::out_of_range;
        return;
    }
    const auto there = asked.engine_speed ? solver.at({*asked.engine_speed, {*asked.gear}})
                                          : at_road_speed(solver, *asked.gear, *asked.road_speed);
    see_on_the_road(solver, there, seen);
}

void see_held(const Vehicle& car, const Situation& asked, Seen& seen) {
    solve::PointSolver solver(car);
    const auto there =
        solver.at({*asked.engine_speed, asked.road_speed.value_or(0), asked.opening});
    seen.status = there.outcome.status;
    if (!there.outcome.answered()) return;
    describe(solver.balance(), there, seen.point, solve::SecondOpinion::left_out);
    seen.has_point = true;
}

bool reads_a_point(const Situation& situation) {
    return std::ranges::any_of(situation.results,
                               [](const auto& one) { return one != speed_of_goal; });
}

Seen seen(const Vehicle& vehicle, const Situation& situation) {
    return solve::guarded(
        [&] {
            Seen made;
            const Vehicle car = as_driven(vehicle, situation);
            if (situation.gear && (situation.engine_speed || situation.road_speed))
                see_in_gear(car, situation, made);
            else if (situation.engine_speed)
                see_held(car, situation, made);
            else
                see_top_speed(car, reads_a_point(situation), made);
            return made;
        },
        [] { return Seen{}; });
}

std::size_t results_of(const std::vector<Situation>& situations) {
    std::size_t count = 0;
    for (const auto& one : situations)
        count += one.results.size();
    return count;
}

/// One world after the other, every situation of it. The workspace of one thread.
class Looks {
public:
    Looks(const Scenario& scenario, const Worlds& worlds, const std::vector<Situation>& situations,
          WorldAnswers& into)
        : drawn_(scenario),
          worlds_(worlds),
          situations_(situations),
          width_(results_of(situations)),
          into_(into) {
        for (const auto& one : situations)
            readers_.emplace_back(one.results);
    }

    void at(std::size_t world) {
        const Vehicle& vehicle = drawn_.at(worlds_.at(world)).vehicle;
        std::size_t place = world * width_;
        for (std::size_t i = 0; i < situations_.size(); ++i) {
            const Seen there = seen(vehicle, situations_[i]);
            into_.status[world * situations_.size() + i] = there.status;
            for (std::size_t k = 0; k < readers_[i].size(); ++k)
                into_.answers[place++] = read(i, k, there);
        }
    }

private:
    double read(std::size_t situation, std::size_t which, const Seen& seen) {
        if (situations_[situation].results[which] == speed_of_goal) return seen.speed;
        return seen.has_point ? readers_[situation].read(which, seen.point) : nothing;
    }

    scenario::Drawn drawn_;
    Worlds worlds_;
    const std::vector<Situation>& situations_;
    std::size_t width_;  // results of a world
    std::vector<ResultReader> readers_;
    WorldAnswers& into_;
};

}  // namespace

WorldAnswers world_answers(const Scenario& scenario, const Worlds& worlds,
                           const std::vector<Situation>& situations, const BatchOptions& options) {
    WorldAnswers made{
        std::vector<double>(worlds.size() * results_of(situations), nothing),
        std::vector<solve::Status>(worlds.size() * situations.size(), solve::Status::cancelled)};
    run_batch(
        worlds.size(),
        [&] {
            auto looks = std::make_shared<Looks>(scenario, worlds, situations, made);
            return [looks](std::size_t world) { looks->at(world); };
        },
        options);
    return made;
}

}  // namespace windwall::study
