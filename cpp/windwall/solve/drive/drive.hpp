#pragma once
#include "windwall/solve/drive/layout.hpp"
#include "windwall/solve/drive/mode.hpp"
#include "windwall/solve/point/outcome.hpp"
#include "windwall/solve/results/limit.hpp"
#include "windwall/vehicle/outing/outing.hpp"
#include "windwall/vehicle/vehicle.hpp"

#include <array>
#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace windwall::solve {

/// Why a drive ended: a closed list, whose words are those of results.
enum class DriveEnd {
    legs_done,
    road_ends,
    no_more_speed,  // a leg waits for a speed that is never reached
    no_less_speed,  // or for one that it never slows down to
    no_gear_holds,  // a speed to hold at which every gear turns the engine too slowly
    stalled,        // full throttle does not move it
    too_long,       // a leg is still under way after six hours or 20,000 steps
    tank_empty,
    no_answer,  // a balance was not found
    cancelled,
    too_many_events,
};
inline constexpr std::array<std::string_view, 11> drive_end_names{
    "legs_done", "road_ends",  "no_more_speed", "no_less_speed", "no_gear_holds",   "stalled",
    "too_long",  "tank_empty", "no_answer",     "cancelled",     "too_many_events",
};

/// What happened at one moment.
enum class Happening {
    leg_begins,
    clutch_grips,
    clutch_slips,
    shift_begins,
    shift_ends,
    ratio_begins,  // a variator leaves its lowest gearing
    ratio_ends,    // and comes to its highest
    ratio_returns,
    ratio_rests,
    tyres_spin,
    tyres_grip,
    rev_limit,
    stands_still,
    speed_lost,    // the speed to hold is more than it has
    speed_gained,  // the road drives it faster than the released pedal holds it back
    speed_held,    // and it is slow enough again
    liquid_empty,
    pump_switched_on,
    pump_runs,  // its delay is over
    line_full,
    pump_switched_off,
    limit_passed,
    road_turns,  // its slope or its wind changes; not told
    pulls_away,  // the thrust is more than what the road holds it with; not told
};
inline constexpr std::array<std::string_view, 24> happening_names{
    "leg_begins",        "clutch_grips", "clutch_slips",     "shift_begins", "shift_ends",
    "ratio_begins",      "ratio_ends",   "ratio_returns",    "ratio_rests",  "tyres_spin",
    "tyres_grip",        "rev_limit",    "stands_still",     "speed_lost",   "speed_gained",
    "speed_held",        "liquid_empty", "pump_switched_on", "pump_runs",    "line_full",
    "pump_switched_off", "limit_passed", "road_turns",       "pulls_away",
};

struct DriveEvent {
    Happening what{};
    double time{}, distance{}, road_speed{}, engine_speed{};
    std::string about;  // the limit, or the kind of part that grips or slips
    double value{};     // and what passes it
    long leg{};         // from 1
    long gear{};        // from 1
};

/// A run's clock and road: since the vehicle last left standstill.
struct Mark {
    long run{};                                   // from 1
    std::optional<double> at_distance, at_speed;  // what was waited for
    double time{}, distance{}, road_speed{};      // since the run began
};

struct DriveOptions {
    double tolerance = 1e-6;  // of a step, of each number of the state
    double every = 0.5;       // s between moments that are kept while it moves
    double every_standing = 5;
    std::vector<Limit> limits{};  // as stated; the built-in ones hold beside them
    std::vector<double> mark_distances{}, mark_speeds{};  // m, m/s
    std::function<bool(double time)> go_on{};             // asked at every step; says false to stop
};

/// A drive over time, column by column.
struct DriveResult {
    static constexpr std::string_view description = "A drive over time.";
    DriveEnd end = DriveEnd::legs_done;
    Outcome outcome{};  // of the balance that was not found
    std::vector<std::string> addresses;
    std::vector<std::vector<double>> columns;  // SI, NaN where there is no answer
    std::vector<Phase> phase;
    std::vector<DriveEvent> events;
    std::vector<Mark> marks;
    std::array<double, energies> energy{};     // J, by Energy
    double kinetic_before{}, kinetic_after{};  // J
    double changed{};  // J that the crank gave or took where gears and clutch changed
    long steps{}, evaluations{}, points{};  // of the equations, and operating points solved
};

/// What holds on a drive: stated or built in, and that the road drives no engine beyond its limit.
std::vector<Limit> drive_limits(const vehicle::Vehicle& vehicle, const std::vector<Limit>& stated);

/// Drives one outing. Whatever happens is in the answer: no exception leaves it.
DriveResult drive(const vehicle::Vehicle& vehicle, const vehicle::Outing& outing,
                  const DriveOptions& options = {});

}  // namespace windwall::solve
