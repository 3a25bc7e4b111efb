#pragma once
#include "windwall/engine/spark.hpp"
#include "windwall/vehicle/balance/balance.hpp"
#include "windwall/vehicle/balance/block.hpp"

namespace windwall::vehicle {

/// Holds the wanted margin to knock: first by the spark, and where the latest one in range is not
/// enough, by the throttle. Two unknowns with one complementarity each:
///
///   retard     within its range, where the margin is what is wanted; at an end of it otherwise
///   held back  -ln(opening / asked), where the latest spark just leaves the margin; or nothing,
///              where it leaves as much or more
///
/// A further means takes its place in the row by another unknown, which moves once those before it
/// are at their ends.
class KnockHold : public Block {
public:
    /// From an opening, and a guess of how far it is held back from it.
    void ask(double opening, double held_back) noexcept;

    void declare(Unknowns& unknowns) override;
    void guess(const Balance& balance, std::span<double> x) const noexcept override;
    void act(Balance& balance, std::span<const double> x) const noexcept override;
    void residuals(const Balance& balance, std::span<const double> x,
                   std::span<double> r) const noexcept override;

    std::size_t held_back() const noexcept { return held_back_; }  // number of its unknown

private:
    double asked_ = 1;
    double first_guess_ = 0;
    std::size_t retard_{};
    std::size_t held_back_{};
};

/// Octane numbers beyond the wanted margin that the latest spark in range would leave.
double spare_margin(const engine::SparkPlan& plan, const engine::Spark& spark) noexcept;

}  // namespace windwall::vehicle
