#pragma once
#include "windwall/fields/field_path.hpp"
#include "windwall/solve/full_throttle/top_speed.hpp"
#include "windwall/solve/results/describe.hpp"
#include "windwall/solve/results/limit.hpp"
#include "windwall/solve/results/limit_violation.hpp"
#include "windwall/solve/results/operating_point.hpp"

#include <optional>
#include <string>
#include <vector>

namespace windwall::solve {

/// What parts and tyres are rated for, and a knock margin of nothing.
std::vector<Limit> built_in_limits(const vehicle::Vehicle& vehicle);

/// Those that hold for a vehicle: what is stated, and what is built in and not stated otherwise.
std::vector<Limit> limits_of(const vehicle::Vehicle& vehicle, const std::vector<Limit>& stated);

/// Whether a value is beyond a limit.
bool passes(const Limit& limit, double value) noexcept;

/// Results of which nobody has said what is too much, by a part or by a stated limit: never called
/// within limits.
std::vector<std::string> unrated(const vehicle::Vehicle& vehicle,
                                 const std::vector<Limit>& stated = {});

/// Reads the limited results of every full-throttle point of one vehicle, in the order of the
/// limits; NaN where a point has none. Limits of parts that this vehicle has not got do not apply;
/// a stated limit takes the place of the built-in one.
class LimitWatch : public Watch {
public:
    LimitWatch(const vehicle::Vehicle& vehicle, const std::vector<Limit>& stated);

    void read(const vehicle::Balance& balance, FullThrottlePoint& full_throttle) override;
    void read_road(const vehicle::Vehicle& vehicle, FullThrottlePoint& full_throttle) override;
    const std::vector<Limit>& limits() const noexcept { return limits_; }

private:
    void resolve();
    double value(std::size_t limit) const;

    std::vector<Limit> limits_;
    std::vector<std::optional<fields::FieldPath>> paths_;
    std::vector<std::size_t> of_the_road_;                    // limits on what body and gear decide
    SecondOpinion second_opinion_ = SecondOpinion::left_out;  // unless one of it is limited
    bool resolved_ = false;
    OperatingPoint point_;
};

/// The limits passed on the way up through the gears, each gear while it is the best one, and at
/// the equilibrium.
std::vector<LimitViolation> passed_limits(const TopSpeed& found, const LimitWatch& watch);

}  // namespace windwall::solve
