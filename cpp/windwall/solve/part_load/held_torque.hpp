#pragma once
#include "windwall/numerics/newton.hpp"
#include "windwall/solve/point/point.hpp"
#include "windwall/vehicle/balance/torque_hold.hpp"

#include <optional>

namespace windwall::solve {

/// What `worst` says where no pedal holds what is asked: the point is then that of the shut or the
/// open throttle, whichever is nearer.
inline constexpr std::string_view beyond_throttle = "throttle";

/// Finds the pedal at which the flywheel gives a torque: by Newton's method with the air in one
/// solve, from where the last one ended; where that does not arrive, by brackets over the pedal.
/// The workspace of one thread: it borrows a solver, whose other points may come in between, and
/// assumes nothing of how warm the vehicle is.
class HeldTorque {
public:
    explicit HeldTorque(PointSolver& solver) : solver_(&solver) {}

    /// At the engine and road speed of a condition, N m at the flywheel. The pedal is in the
    /// point's condition. Out of range, `beyond_throttle`, where even the shut throttle gives more
    /// or even the open one less; by the spark's plan, so that an open throttle is held off knock.
    Point at(const vehicle::OperatingCondition& condition, double torque);
    /// The same with what an idle is set to.
    Point at(const vehicle::OperatingCondition& condition, double torque,
             const vehicle::IdleSetting& idle);
    /// Forgets the last one.
    void forget() noexcept { warm_ = false; }

private:
    Point sought(const vehicle::OperatingCondition& condition, double torque);
    std::optional<Point> close(const vehicle::OperatingCondition& condition);
    Point at_pedal(vehicle::OperatingCondition condition, double pedal);
    Point at_end(const vehicle::OperatingCondition& condition, double pedal);
    Point search(const vehicle::OperatingCondition& condition, double torque);
    bool holds_margin(const Point& point) const;

    PointSolver* solver_;
    vehicle::TorqueHold hold_;
    numerics::JacobianMemory jacobian_;
    std::optional<vehicle::IdleSetting> idle_;
    bool warm_ = false;
};

}  // namespace windwall::solve
