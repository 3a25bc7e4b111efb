#pragma once
#include "windwall/solve/drive/drive.hpp"
#include "windwall/solve/drive/motion.hpp"

#include <functional>
#include <span>
#include <vector>

namespace windwall::solve {

/// A number that is below zero until something happens.
struct Guard {
    enum class Then { leg_done, happens, drive_ends, speed_reached };
    Then then = Then::happens;
    Happening what{};
    DriveEnd end{};
    std::size_t number = 0;  // of the pump
    /// Of time in s and state alone; or also of the moment, which costs a solve.
    std::function<double(double, std::span<const double>)> of_state;
    std::function<double(const Moment&)> of_moment;
};

/// What the guards look at, of the vehicle and of the leg.
struct GuardContext {
    Motion* motion{};
    const std::vector<double>* shift_speeds{};  // m/s where each gear gives way to the next
    std::optional<double> shift_engine_speed;   // rad/s, where the driver goes by that
    double rev_limit{};
    std::size_t gears{};
    bool may_shift = true;
};

/// What switches, delays and lines of the pumps do.
void add_pump_guards(std::vector<Guard>& guards, const Mode& mode, const Layout& layout);

/// What may end a mode by itself, beside its leg.
std::vector<Guard> guards_of(const Mode& mode, const GuardContext& context);

}  // namespace windwall::solve
