#pragma once
#include <array>
#include <cstddef>
#include <string_view>
#include <vector>

namespace windwall::solve {

/// What the vehicle is doing, as far as its equations differ.
enum class Phase {
    standing,    // the engine idles
    engine_off,  // standing, too
    slipping,    // crank and wheels turn apart under load
    driving,     // in gear
    shifting,    // from gear to gear, without drive
    coasting,    // out of gear, the engine idles
    holding,     // the pedal holds the road speed
    braking,     // out of gear, slowed by the brakes
};

inline constexpr std::array<std::string_view, 8> phase_names{
    "standing", "engine_off", "slipping", "driving", "shifting", "coasting", "holding", "braking",
};

/// What one pump and its line are doing.
struct PumpMode {
    bool switched = false;  // its switch is on
    bool runs = false;      // and its delay is over
    bool full = true;       // its line, so that what it pumps leaves the nozzle
    double due = 0;         // s, when the delay is over
};

/// Everything of a drive that does not change but by an event.
struct Mode {
    Phase phase = Phase::standing;
    std::size_t gear = 0;  // from 0
    std::size_t stretch =
        0;                // of a variator: 0 at its lowest gearing, 1 shifting, 2 at its highest
    double position = 0;  // of a variator while crank and wheels turn apart
    double shift_torque = 0;   // N m, that a variator shifts by while a speed is held
    double pedal = 1;          // share of its travel, where the driver sets it
    double engine_speed = 0;   // rad/s, where neither the wheels nor the torque decide it
    bool engine_free = false;  // slipping: the torque that is not passed on speeds the crank up
    bool ahead = false;        // and the wheels turn faster than it: they pull it along
    bool spinning = false;     // the tyres are asked for more than they hold
    bool rests = false;        // slipping: not yet off, the road holds it
    bool lifted = true;        // shifting: no fuel is burnt meanwhile
    double deceleration = 0;   // m/s2, braking
    double holds = 0;          // m/s, holding
    double resumes = 0;        // m/s, rolling: slowed down to it, the pedal holds the speed again
    double looks_below = 0;    // m/s, driving: slower than that, a lower gear may do more
    bool stays = false;        // driving: the next gear would not pull, and is not taken
    std::vector<PumpMode> pumps{};  // of the path, in its order
    bool dry = false;               // the tank of the nozzles is empty
};

/// The stretch of a variator that wants to stand at a position, beyond 0 and 1 too.
constexpr std::size_t stretch_at(double position) noexcept {
    return position <= 0 ? 0 : position < 1 ? 1 : 2;
}

}  // namespace windwall::solve
