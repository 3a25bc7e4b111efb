#pragma once
#include "windwall/vehicle/balance/balance.hpp"
#include "windwall/vehicle/balance/block.hpp"

#include <optional>

namespace windwall::vehicle {

/// Holds a torque at the flywheel by the pedal, with the spark that goes with it. Two unknowns:
///
///   retard   what its plan has there: within its range, where the margin to knock is what is
///            wanted; at an end of it otherwise; or what an idle is set to
///   pedal    share of its travel. Beyond its ends the plates stand still and the torque is taken
///            to rise with the pedal, so that there is one answer in any case, which says on which
///            side of the ends it lies
class TorqueHold : public Block {
public:
    /// What is to be held, N m, and of an engine that idles with what it is set to.
    void ask(double torque, std::optional<IdleSetting> idle) noexcept;
    /// Where it is sought from.
    void expect(double pedal, double retard) noexcept;

    void declare(Unknowns& unknowns) override;
    void guess(const Balance& balance, std::span<double> x) const noexcept override;
    void act(Balance& balance, std::span<const double> x) const noexcept override;
    void residuals(const Balance& balance, std::span<const double> x,
                   std::span<double> r) const noexcept override;

    std::size_t pedal() const noexcept { return pedal_; }    // number of its unknown
    std::size_t retard() const noexcept { return retard_; }  // likewise

private:
    double torque_ = 0;
    std::optional<IdleSetting> idle_;
    double first_pedal_ = 0.3;
    double first_retard_ = 0;
    std::size_t retard_{};
    std::size_t pedal_{};
};

}  // namespace windwall::vehicle
