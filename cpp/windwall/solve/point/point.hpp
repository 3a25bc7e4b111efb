#pragma once
#include "windwall/engine/spark.hpp"
#include "windwall/engine/work.hpp"
#include "windwall/numerics/newton.hpp"
#include "windwall/solve/point/outcome.hpp"
#include "windwall/vehicle/balance/balance.hpp"
#include "windwall/vehicle/balance/knock_hold.hpp"

#include <array>
#include <optional>
#include <span>
#include <string_view>

namespace windwall::solve {

/// The engine held at one condition: the few numbers a full-throttle point is made of.
struct Point {
    vehicle::OperatingCondition condition;  // the opening is the one that holds the margin
    Outcome outcome;
    engine::Spark spark;
    engine::Work work;
    double blower_power{};  // W taken from the crank, belt included
    double torque{};        // N m at the flywheel, the blower's share taken off
};

/// Solves one vehicle's operating points one after the other, each from where the last one ended.
/// The workspace of one thread: it borrows the vehicle and allocates nothing once made.
class PointSolver {
public:
    static constexpr int newton_evaluations = 80;  // from a guess, then brackets take over

    /// `blocks` join the balance and must outlive the solver.
    explicit PointSolver(const vehicle::Vehicle& vehicle, const vehicle::WhatIf& what_if = {},
                         std::span<vehicle::Block* const> blocks = {});

    Point at(const vehicle::OperatingCondition& condition);
    /// With what an idle is set to, at the pedal of the condition.
    Point idle_at(const vehicle::OperatingCondition& condition, const vehicle::IdleSetting& idle);
    /// Closes the balance with a block that joins it for this one point, by Newton's method alone,
    /// with the Jacobian that belongs to the block. The block's unknowns start from its guess and
    /// end in `state`; `describe` tells of the point.
    Outcome join(vehicle::Block& block, const vehicle::OperatingCondition& condition,
                 numerics::JacobianMemory& jacobian, int most_evaluations);
    /// Temperature of the charge, K, in the balance with less gas going round that stands beside
    /// the last point's at the same pedal, its bypass less open: an engine that comes there from
    /// another side may find that one. Nothing where there is none. Leaves the last point as it is.
    std::optional<double> hotter_balance();
    /// The point that the balance was left at, with the spark at a retard in rad, or as its plan
    /// chooses.
    Point describe(const Outcome& outcome, std::optional<double> retard = {}) const;
    /// Forgets the last point, so that the next one is solved from the cold guess.
    void forget() noexcept { state_.warm = state_.knocked = wide_.warm = false; }

    /// From the next point on, temperatures and liquid as an integration over time has them; null:
    /// as in a long pull. It is borrowed.
    void hold_state(const vehicle::HeldState* state) noexcept { balance_.hold_state(state); }

    /// Where the next point is solved from.
    struct State {
        std::array<double, numerics::most_unknowns> unknowns{};
        numerics::JacobianMemory jacobian{};
        numerics::JacobianMemory knock_jacobian{};  // with the unknowns of the hold
        bool warm = false;
        bool knocked = false;  // the last point was held off knock, and its unknowns still stand
        long bracketed = 0;    // evaluations spent in brackets
    };
    const State& state() const noexcept { return state_; }
    void go_on_from(const State& state) noexcept { state_ = state; }
    /// The same on one way: what was spent in brackets stays spent.
    void jump_to(const State& state) noexcept {
        const long spent = state_.bracketed;
        state_ = state;
        state_.bracketed = spent;
    }

    /// Without a solve: the surroundings of a condition, for what asks only for them.
    void surround(const vehicle::OperatingCondition& condition) { balance_.hold(condition); }

    /// The stations and the manifold of the last point solved.
    const vehicle::Balance& balance() const noexcept { return balance_; }
    /// Residual evaluations since made, and points.
    long evaluations() const noexcept { return evaluations_; }
    long points() const noexcept { return points_; }

private:
    Point solve(const vehicle::OperatingCondition& condition);
    Outcome balance_air();
    Outcome newton(std::span<double> x, numerics::JacobianMemory& jacobian, int most_evaluations);
    Outcome elsewhere(Outcome failed, std::span<double> x, numerics::JacobianMemory& jacobian);
    Outcome polish(const Outcome& near, std::span<double> x);
    bool valves_move(const vehicle::OperatingCondition& condition) const noexcept;
    Outcome most_open(const Outcome& found, std::span<double> x, std::size_t air,
                      numerics::JacobianMemory& jacobian, int most_evaluations);
    Outcome set_wide(std::span<double> x, std::size_t air);
    Outcome settle_valves(double felt, std::span<double> x, numerics::JacobianMemory& jacobian,
                          int most_evaluations);
    std::optional<Point> hold_at_once(const vehicle::OperatingCondition& condition,
                                      double first_retard, double first_held_back,
                                      int most_evaluations);
    std::optional<Point> hold_warm(const vehicle::OperatingCondition& condition);
    std::optional<Point> hold_from_cold(const vehicle::OperatingCondition& condition,
                                        const engine::Spark& open);
    Point at_spark(const vehicle::OperatingCondition& condition, double retard);
    Point search_spark(const vehicle::OperatingCondition& condition, double later);
    Point at_latest_spark(const vehicle::OperatingCondition& condition, double guess, bool glance);
    Outcome close_held_back(std::span<double> x, int most_evaluations);
    Point nothing_holds(const vehicle::OperatingCondition& asked, Point point);
    Point search_opening(vehicle::OperatingCondition condition);

    vehicle::Balance balance_;
    vehicle::WhatIf what_if_;
    vehicle::KnockHold knock_;
    State state_;
    /// The balance with the bypasses set wide, of the last point that asked for it.
    struct {
        std::array<double, numerics::most_unknowns> unknowns{};
        numerics::JacobianMemory jacobian{};
        bool warm = false;
    } wide_;
    long evaluations_ = 0;
    long points_ = 0;
};

/// Id of the first blower that has run away in the last march, or nothing.
std::string_view run_away(const vehicle::Balance& balance);

}  // namespace windwall::solve
