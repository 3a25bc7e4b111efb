#pragma once
#include "windwall/vehicle/balance/unknown.hpp"

#include <span>

namespace windwall::vehicle {

class Balance;

/// What joins the balance of the air path with unknowns of its own, such as a shaft that a turbine
/// turns, or a throttle held back from knock. The core knows none by name: one is written beside
/// it and attached.
class Block {
public:
    virtual ~Block() = default;

    /// Once, when it is attached; the block keeps the numbers.
    virtual void declare(Unknowns& unknowns) = 0;
    /// A cold guess better than the declared one, once the air path has its own.
    virtual void guess(const Balance&, std::span<double>) const noexcept {}
    /// Before the air is taken through the path: what the unknowns do to the path and the engine.
    virtual void act(Balance& balance, std::span<const double> x) const noexcept = 0;
    /// After it: the residuals of the declared unknowns.
    virtual void residuals(const Balance& balance, std::span<const double> x,
                           std::span<double> r) const noexcept = 0;
};

}  // namespace windwall::vehicle
