#include "windwall/vehicle/balance/torque_hold.hpp"

#include "windwall/vehicle/balance/flywheel.hpp"
#include "windwall/vehicle/balance/knock_hold.hpp"
#include "windwall/vehicle/rotating.hpp"

#include <algorithm>

namespace windwall::vehicle {
namespace {

constexpr double most_step = 0.15;  // of the pedal's travel

}  // namespace

void TorqueHold::ask(double torque, std::optional<IdleSetting> idle) noexcept {
    torque_ = torque;
    idle_ = idle;
}

void TorqueHold::expect(double pedal, double retard) noexcept {
    first_pedal_ = pedal;
    first_retard_ = retard;
}

void TorqueHold::declare(Unknowns& unknowns) {
    retard_ = unknowns.declare({"engine", "retard", first_retard_});
    pedal_ = unknowns.declare({"throttle", "pedal", first_pedal_, 1, most_step});
}

void TorqueHold::guess(const Balance&, std::span<double> x) const noexcept {
    x[retard_] = idle_ ? idle_->retard : first_retard_;
    x[pedal_] = first_pedal_;
}

void TorqueHold::act(Balance& balance, std::span<const double> x) const noexcept {
    balance.set_opening(std::clamp(x[pedal_], 0.0, 1.0));
    if (idle_)
        balance.meter(idle_->fuel_share);
    else
        enrich(balance, x[retard_]);
}

void TorqueHold::residuals(const Balance& balance, std::span<const double> x,
                           std::span<double> r) const noexcept {
    const engine::Intake& intake = balance.intake();
    const double retard = x[retard_];
    r[retard_] = idle_ ? retard - idle_->retard : beside_plan(balance, retard);
    const engine::Work work = balance.vehicle().engine.visit(
        [&](const auto& engine) { return engine.work(intake, balance.fuel(), retard); });
    const double missing = flywheel_torque(balance, work) - torque_;
    const double beyond = x[pedal_] - std::clamp(x[pedal_], 0.0, 1.0);
    r[pedal_] = missing / usual_torque(balance.vehicle()) + beyond;
}

}  // namespace windwall::vehicle
