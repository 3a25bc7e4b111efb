#include "windwall/solve/answer/limits.hpp"

#include "windwall/fields/problems.hpp"
#include "windwall/fields/visit.hpp"
#include "windwall/solve/full_throttle/acceleration_path.hpp"
#include "windwall/solve/results/describe.hpp"

#include <algorithm>
#include <cmath>
#include <functional>
#include <limits>
#include <type_traits>
#include <utility>

namespace windwall::solve {
namespace {

/// The address of a result that a struct of the vehicle speaks of.
std::string address_of(std::string_view result, const std::string& owner) {
    return result.starts_with('/') ? std::string(result.substr(1)) : fields::joined(owner, result);
}

std::optional<double> rating_of(const fields::Row& row, const void* owner) {
    if (row.watched.rating) return row.watched.rating(owner);
    return fields::visit(row, owner, []<class T>(const T& member) -> std::optional<double> {
        if constexpr (std::is_same_v<T, double> || std::is_same_v<T, std::optional<double>>)
            return member;
        return std::nullopt;
    });
}

bool is_bound(const Limit& limit) { return limit.max || limit.min; }

bool bounds(const std::vector<Limit>& limits, std::string_view address) {
    return std::ranges::any_of(
        limits, [&](const Limit& limit) { return is_bound(limit) && limit.address == address; });
}

/// Whatever the structs of a vehicle rate by their rows, with numbers or without, and what no part
/// of their classes bears.
std::vector<Limit> declared_limits(const vehicle::Vehicle& vehicle) {
    std::vector<Limit> declared;
    fields::visit_groups(
        fields::group_type<vehicle::Vehicle>, &vehicle, {},
        [&](const fields::GroupType& group, const void* owner, const std::string& address) {
            for (const fields::Row& row : group.rows())
                if (row.is_rating())
                    declared.push_back({address_of(row.watched.result, address),
                                        rating_of(row, owner), std::nullopt,
                                        std::string(row.watched.why)});
            for (const fields::ClassLimit& limit : group.limits) {
                const std::string result = address_of(limit.result, address);
                if (limit.unless_rated && bounds(declared, result)) continue;
                declared.push_back({result, limit.max, limit.min, std::string(limit.why)});
            }
        });
    return declared;
}

bool worse(const Limit& limit, double value, double than) {
    return limit.max && value > *limit.max ? value > than : value < than;
}

/// How far on the way from one point to the next a bound is met: all of it where the gear changes
/// in between, or nothing is known of the first.
double way_to_bound(const FullThrottlePoint* before, const FullThrottlePoint& behind, std::size_t k,
                    const Limit& limit) {
    if (!before || before->gear != behind.gear || std::isnan(before->watched[k])) return 1;
    const double from = before->watched[k], to = behind.watched[k];
    const double bound = limit.max && to > *limit.max ? *limit.max : *limit.min;
    return (bound - from) / (to - from);
}

void note(const FullThrottlePoint* before, const FullThrottlePoint& full_throttle, std::size_t k,
          const Limit& limit, std::optional<LimitViolation>& passed) {
    const double value = full_throttle.watched[k];
    if (std::isnan(value) || !passes(limit, value)) return;
    if (!passed) {
        const double share = way_to_bound(before, full_throttle, k, limit);
        const FullThrottlePoint& start = before ? *before : full_throttle;
        passed = LimitViolation{limit.address,
                                limit.max,
                                limit.min,
                                limit.why,
                                std::lerp(start.watched[k], value, share),
                                value,
                                std::lerp(start.road_speed, full_throttle.road_speed, share),
                                std::lerp(start.point.condition.engine_speed,
                                          full_throttle.point.condition.engine_speed, share),
                                static_cast<long>(full_throttle.gear) + 1};
    } else if (worse(limit, value, passed->worst)) {
        passed->worst = value;
    }
}

}  // namespace

std::vector<Limit> built_in_limits(const vehicle::Vehicle& vehicle) {
    std::vector<Limit> limits = declared_limits(vehicle);
    std::erase_if(limits, std::not_fn(is_bound));
    // What must not be fallen short of is told first: knock breaks pistons within seconds.
    std::stable_partition(limits.begin(), limits.end(),
                          [](const Limit& limit) { return limit.min.has_value(); });
    return limits;
}

std::vector<std::string> unrated(const vehicle::Vehicle& vehicle,
                                 const std::vector<Limit>& stated) {
    std::vector<std::string> silent;
    const std::vector<Limit> declared = declared_limits(vehicle);
    for (const Limit& limit : declared)
        if (!bounds(declared, limit.address) &&
            !std::ranges::count(stated, limit.address, &Limit::address))
            silent.push_back(limit.address);
    return silent;
}

bool passes(const Limit& limit, double value) noexcept {
    return (limit.max && value > *limit.max) || (limit.min && value < *limit.min);
}

std::vector<Limit> limits_of(const vehicle::Vehicle& vehicle, const std::vector<Limit>& stated) {
    std::vector<Limit> limits = stated;
    for (Limit& limit : built_in_limits(vehicle))
        if (!std::ranges::count(stated, limit.address, &Limit::address))
            limits.push_back(std::move(limit));
    return limits;
}

LimitWatch::LimitWatch(const vehicle::Vehicle& vehicle, const std::vector<Limit>& stated)
    : limits_(limits_of(vehicle, stated)) {
    for (std::size_t k = 0; k < limits_.size(); ++k) {
        const std::string& address = limits_[k].address;
        for (const std::string_view group : {"road/", "tyres/", "variator/"})
            if (address.starts_with(group)) of_the_road_.push_back(k);
        if (address.starts_with("knock/integral")) second_opinion_ = SecondOpinion::asked;
    }
}

void LimitWatch::resolve() {
    for (const Limit& limit : limits_) {
        auto path = fields::find_number(fields::group_type<OperatingPoint>, &point_, limit.address);
        paths_.push_back(path ? path.value : std::nullopt);
    }
    resolved_ = true;
}

void LimitWatch::read(const vehicle::Balance& balance, FullThrottlePoint& full_throttle) {
    describe(balance, full_throttle, point_, second_opinion_);
    if (!resolved_) resolve();
    full_throttle.watched.resize(limits_.size());
    for (std::size_t k = 0; k < limits_.size(); ++k)
        full_throttle.watched[k] = value(k);
}

void LimitWatch::read_road(const vehicle::Vehicle& vehicle, FullThrottlePoint& full_throttle) {
    if (of_the_road_.empty()) return;
    describe_road(vehicle, full_throttle, point_);
    for (const std::size_t k : of_the_road_)
        full_throttle.watched[k] = value(k);
}

double LimitWatch::value(std::size_t limit) const {
    const auto& path = paths_[limit];
    const std::optional<double> value = path ? path->get(&point_) : std::nullopt;
    return value.value_or(std::numeric_limits<double>::quiet_NaN());
}

std::vector<LimitViolation> passed_limits(const TopSpeed& found, const LimitWatch& watch) {
    const std::vector<const FullThrottlePoint*> way = acceleration_path(found);
    std::vector<LimitViolation> all;
    for (std::size_t k = 0; k < watch.limits().size(); ++k) {
        std::optional<LimitViolation> passed;
        const FullThrottlePoint* before = nullptr;
        for (const FullThrottlePoint* full_throttle : way)
            note(std::exchange(before, full_throttle), *full_throttle, k, watch.limits()[k],
                 passed);
        if (passed) all.push_back(*passed);
    }
    return all;
}

}  // namespace windwall::solve
