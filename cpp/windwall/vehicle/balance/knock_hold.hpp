#pragma once
#include "windwall/engine/spark.hpp"
#include "windwall/vehicle/balance/balance.hpp"
#include "windwall/vehicle/balance/block.hpp"

namespace windwall::vehicle {

/// Holds the wanted margin to knock: by the spark and the mixture that goes with it, and where the
/// latest one in range is not enough, by the throttle. Two unknowns with one complementarity each:
///
///   retard     within its range, where the margin is what is wanted; at an end of it otherwise.
///              The later end is the plan's, or where the exhaust is as hot as it may be
///   held back  -ln(opening / asked), where the latest spark just leaves the margin; or nothing,
///              where it leaves as much or more
///
/// A further means takes its place in the row by another unknown, which moves once those before it
/// are at their ends.
class KnockHold : public Block {
public:
    /// From an opening, and guesses of how far it is held back from it and of the spark in rad.
    void ask(double opening, double held_back, double retard) noexcept;

    void declare(Unknowns& unknowns) override;
    void guess(const Balance& balance, std::span<double> x) const noexcept override;
    void act(Balance& balance, std::span<const double> x) const noexcept override;
    void residuals(const Balance& balance, std::span<const double> x,
                   std::span<double> r) const noexcept override;

    std::size_t held_back() const noexcept { return held_back_; }  // number of its unknown
    std::size_t retard() const noexcept { return retard_; }        // likewise

private:
    double asked_ = 1;
    double first_guess_ = 0;
    double first_retard_ = 0;
    std::size_t retard_{};
    std::size_t held_back_{};
};

/// What is left of the means that hold off knock, at a spark and an exhaust in K that were found.
struct MeansLeft {
    double at_best_spark{};    // octane numbers that best spark and the engine's own lambda leave
    double retard{};           // rad by which the spark may be later still
    double enrichment{};       // taken off lambda
    double enrichment_left{};  // that may be taken off further
};
MeansLeft means_left(const Balance& balance, const engine::Spark& spark,
                     double exhaust_temperature) noexcept;

/// Radians by which the spark may be later than at a retard; negative where the exhaust is too hot.
double spark_left(const Balance& balance, double retard) noexcept;

/// How far a retard is from the one that the engine's plan has in a balance, rad: where the margin
/// to knock is what is wanted, or at an end of its range; or what the plan states. For blocks.
double beside_plan(const Balance& balance, double retard) noexcept;

/// The balance with the mixture that the engine's plan has at a retard in rad, where it chooses.
void enrich(Balance& balance, double retard) noexcept;

}  // namespace windwall::vehicle
