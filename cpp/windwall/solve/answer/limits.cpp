#include "windwall/solve/answer/limits.hpp"

#include "windwall/solve/full_throttle/acceleration_path.hpp"
#include "windwall/solve/results/describe.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace windwall::solve {
namespace {

constexpr double hottest_head = 273.15 + 250;  // K, common practice for air-cooled aluminium

void rate(std::vector<Limit>& limits, const std::string& address, std::optional<double> max,
          std::string why) {
    if (max) limits.push_back({address, max, std::nullopt, std::move(why)});
}

/// Whatever the rows of a struct rate, as (row, number there may be).
template <class Rated, class Visit>
void for_each_rating(Rated rated, Visit&& visit) {
    for (const fields::Row& row : Rated::rows()) {
        if (row.watched.result.empty()) continue;
        const bool always = row.member.type == fields::FieldType::number;
        const void* number = row.member.of(&rated);
        visit(row, always ? *static_cast<const double*>(number)
                          : *static_cast<const std::optional<double>*>(number));
    }
}

/// Every part of the charge path by its address.
template <class Visit>
void for_each_part(const vehicle::Vehicle& vehicle, Visit&& visit) {
    for (const auto& entry : vehicle.charge_path) {
        entry.part.visit([&](const auto& part) { visit("charge_path/" + entry.id + "/", part); });
    }
}

template <class Rated>
void rate_by_rows(std::vector<Limit>& limits, const std::string& results, const Rated& rated) {
    for_each_rating(rated, [&](const fields::Row& row, std::optional<double> max) {
        rate(limits, results + std::string(row.watched.result), max, std::string(row.watched.why));
    });
}

bool passes(const Limit& limit, double value) {
    return (limit.max && value > *limit.max) || (limit.min && value < *limit.min);
}

bool worse(const Limit& limit, double value, double than) {
    return limit.max && value > *limit.max ? value > than : value < than;
}

void note(const FullThrottlePoint& full_throttle, std::size_t k, const Limit& limit,
          std::optional<LimitViolation>& passed) {
    const double value = full_throttle.watched[k];
    if (std::isnan(value) || !passes(limit, value)) return;
    if (!passed) {
        passed = LimitViolation{limit.address,
                                limit.max,
                                limit.min,
                                limit.why,
                                value,
                                value,
                                full_throttle.road_speed,
                                full_throttle.point.condition.engine_speed,
                                static_cast<long>(full_throttle.gear) + 1};
    } else if (worse(limit, value, passed->worst)) {
        passed->worst = value;
    }
}

}  // namespace

std::vector<Limit> built_in_limits(const vehicle::Vehicle& vehicle) {
    std::vector<Limit> limits{{"knock/margin", std::nullopt, 0.0, "detonation"}};
    for_each_part(vehicle, [&]<class Part>(const std::string& results, const Part& part) {
        rate_by_rows(limits, results, part);
        if constexpr (charge::Limited<Part>) {
            for (const charge::ClassLimit& limit : Part::class_limits)
                rate(limits, results + std::string(limit.result), limit.max,
                     std::string(limit.why));
        }
    });
    rate(limits, "engine/head_temperature", hottest_head, "an aluminium head softens");
    vehicle.engine.visit([&](const auto& engine) {
        if (engine.injector) rate_by_rows(limits, "injector/", *engine.injector);
    });
    rate(limits, "road/speed", vehicle.tyres.speed_rating(), "speed symbol of the tyres");
    rate(limits, "tyres/load", vehicle.tyres.load_rating(), "load index of the tyres");
    return limits;
}

std::vector<std::string> unrated(const vehicle::Vehicle& vehicle) {
    std::vector<std::string> silent;
    const auto ask = [&](const std::string& address, bool rated) {
        if (!rated) silent.push_back(address);
    };
    for_each_part(vehicle, [&](const std::string& results, const auto& part) {
        for_each_rating(part, [&](const fields::Row& row, std::optional<double> max) {
            ask(results + std::string(row.watched.result), max.has_value());
        });
    });
    ask("road/speed", vehicle.tyres.speed_rating().has_value());
    ask("tyres/load", vehicle.tyres.load_rating().has_value());
    return silent;
}

LimitWatch::LimitWatch(const vehicle::Vehicle& vehicle, const std::vector<Limit>& stated)
    : limits_(stated) {
    for (Limit& limit : built_in_limits(vehicle)) {
        const bool replaced = std::any_of(stated.begin(), stated.end(), [&](const Limit& other) {
            return other.address == limit.address;
        });
        if (!replaced) limits_.push_back(std::move(limit));
    }
}

void LimitWatch::resolve() {
    for (const Limit& limit : limits_) {
        auto path = fields::find_number(fields::group_type<OperatingPoint>, &point_, limit.address);
        paths_.push_back(path ? path.value : std::nullopt);
    }
    resolved_ = true;
}

void LimitWatch::read(const vehicle::Balance& balance, const FullThrottlePoint& full_throttle,
                      std::vector<double>& values) {
    describe(balance, full_throttle, point_);
    if (!resolved_) resolve();
    values.clear();
    for (const auto& path : paths_) {
        const std::optional<double> value = path ? path->get(&point_) : std::nullopt;
        values.push_back(value.value_or(std::numeric_limits<double>::quiet_NaN()));
    }
}

std::vector<LimitViolation> passed_limits(const TopSpeed& found, const LimitWatch& watch) {
    const std::vector<const FullThrottlePoint*> way = acceleration_path(found);
    std::vector<LimitViolation> all;
    for (std::size_t k = 0; k < watch.limits().size(); ++k) {
        std::optional<LimitViolation> passed;
        for (const FullThrottlePoint* full_throttle : way)
            note(*full_throttle, k, watch.limits()[k], passed);
        if (passed) all.push_back(*passed);
    }
    return all;
}

}  // namespace windwall::solve
