#pragma once
#include "windwall/driveline/part.hpp"

#include <cstddef>
#include <optional>
#include <span>
#include <vector>

namespace windwall::driveline {

/// All parts in the order the power meets them, from the crank to the wheels.
using Train = std::vector<fields::Entry<Part>>;

/// How many gears the train has: with two boxes in it, every pair of their gears; the box nearer to
/// the crank changes first as the gear counts up from 0.
std::size_t gears(const Train& train) noexcept;

/// Turns of the crank for one turn of the wheels, where nothing slips.
double total_ratio(const Train& train, GearState gear_state) noexcept;

/// What reaches the wheels of what the crank gives. The watts that each part turns into heat go
/// into `losses` in the train's order, as far as it is long; none is ever negative.
Shaft drive(const Train& train, const Shaft& crank, GearState gear_state,
            std::span<double> losses = {}) noexcept;

/// Where crank and wheels may turn apart at the start: the number of the first clutch, or of a
/// variator whose belt takes hold by itself; where there is none, of one whose weights grip it.
/// Nothing where no part can.
std::optional<std::size_t> parting(const Train& train) noexcept;

/// Whether that part grips the more the faster the crank turns, by itself.
bool grips_by_speed(const Train& train) noexcept;

/// Torque at the crank, N m, that the part where they part passes at a speed of the crank in rad/s;
/// nothing where that is not known, or where no part can.
std::optional<double> parting_capacity(const Train& train, double crank_speed) noexcept;

/// What reaches the wheels while they and all parts behind the parting turn with them at
/// `wheel_speed` in rad/s, and the crank with all before it as it likes. The watts of slip are that
/// part's loss, or `slip_heat` where nothing is known to part; all else as `drive`.
Shaft drive_parted(const Train& train, const Shaft& crank, GearState gear_state, double wheel_speed,
                   std::span<double> losses, double& slip_heat) noexcept;

/// What the parts behind the parting do to wheels that turn at a speed in rad/s while nothing comes
/// from the crank: their drag, a torque against the rotation.
Shaft dragged(const Train& train, GearState gear_state, double wheel_speed,
              std::span<double> losses) noexcept;

/// Watts that the crank, and what turns with it, pay out of their own momentum: what an overrun
/// asks of parts that slip beyond what they hold. The crank's power and this are what reaches the
/// wheels and all losses; 0 where nothing slips in overrun.
double slowing_power(const Train& train, const Shaft& crank, GearState gear_state) noexcept;

/// N m, at its own input, by which the part that the wheels drag along hardest is asked for more
/// than it holds; below 0 where each holds. Nothing where no part is known to slip.
std::optional<double> dragged_beyond(const Train& train, const Shaft& crank,
                                     GearState gear_state) noexcept;

/// Whether any part is asked for more than it holds, whichever way the power goes.
bool slips(const Train& train, const Shaft& crank, GearState gear_state) noexcept;

/// A part that is asked for more than it holds, and so slips: both in N m at its own input.
struct Overload {
    std::size_t part{};
    double torque{}, holds{};
};

/// Every part that slips, from the crank outwards: behind one that does, less torque arrives.
std::vector<Overload> overloads(const Train& train, const Shaft& crank, GearState gear_state);

/// From where on the parts speed up with the vehicle: all of them, those behind a slipping clutch,
/// or those behind a variator that holds the speed of the crank.
enum class Behind { crank, clutch, variator };

/// Moment of inertia, as felt at the wheels, kg m2, of the parts that speed up with the vehicle.
double inertia_at_wheels(const Train& train, GearState gear_state,
                         Behind behind = Behind::crank) noexcept;

/// The variator of the train as the crank sees it in a gear: its speeds and torques are those of
/// the crank, through what stands before it, which is taken to lose nothing. Nothing where all
/// ratios are fixed. A vehicle has no more than one.
std::optional<Variator> variator(const Train& train, std::size_t gear = 0) noexcept;

/// A belt drive of variable ratio at work: how it is set, what comes to it and what leaves it.
struct VariatorPassage {
    const BeltCvt* belt;
    GearState gear_state;
    Shaft in;
    Shaft out;
};

/// What the variator of the train does of what the crank gives; nothing where all ratios are fixed.
std::optional<VariatorPassage> through_variator(const Train& train, const Shaft& crank,
                                                GearState gear_state) noexcept;

/// Time without drive at a change of gear, s: that of the slowest box.
double shift_time(const Train& train) noexcept;

}  // namespace windwall::driveline
