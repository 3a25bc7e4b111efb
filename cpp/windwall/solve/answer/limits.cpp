#include "windwall/solve/answer/limits.hpp"

#include "windwall/solve/answer/path_cautions.hpp"
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

/// Every driven part, whatever its kind: they are rated by the same three numbers.
template <class Visit>
void for_each_blower(const vehicle::Vehicle& vehicle, Visit&& visit) {
    for (const auto& entry : vehicle.charge_path) {
        entry.part.visit([&]<class Part>(const Part& part) {
            if constexpr (charge::Driven<Part>) visit("charge_path/" + entry.id, part);
        });
    }
}

bool passes(const Limit& limit, double value) {
    return (limit.max && value > *limit.max) || (limit.min && value < *limit.min);
}

bool worse(const Limit& limit, double value, double than) {
    return limit.max && value > *limit.max ? value > than : value < than;
}

void note(const FullThrottlePoint& pull, std::size_t k, const Limit& limit,
          std::optional<LimitViolation>& passed) {
    const double value = pull.watched[k];
    if (std::isnan(value) || !passes(limit, value)) return;
    if (!passed) {
        passed = LimitViolation{
            limit, value, value, pull.road_speed, pull.point.condition.engine_speed, pull.gear};
    } else if (worse(limit, value, passed->worst)) {
        passed->worst = value;
    }
}

}  // namespace

std::vector<Limit> built_in_limits(const vehicle::Vehicle& vehicle) {
    std::vector<Limit> limits{{"knock/margin", std::nullopt, 0.0, "detonation"}};
    for_each_blower(vehicle, [&](const std::string& blower, const auto& part) {
        rate(limits, blower + "/rotor_speed", part.rated_speed, "rated rotor speed");
        rate(limits, blower + "/outlet/temperature", part.rated_outlet_temperature,
             "rated outlet temperature: rotors grow into the case");
        rate(limits, blower + "/pressure_ratio", part.rated_pressure_ratio, "rated pressure ratio");
        rate(limits, blower + "/inlet_depression", seal_depression,
             "oil drawn past the rotor seals");
    });
    rate(limits, "engine/head_temperature", hottest_head, "an aluminium head softens");
    vehicle.engine.visit([&](const auto& engine) {
        if (engine.injector) {
            rate(limits, "injector/duty", engine.injector->rated_duty, "injectors held open");
        }
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
    for_each_blower(vehicle, [&](const std::string& blower, const auto& part) {
        ask(blower + "/rotor_speed", part.rated_speed.has_value());
        ask(blower + "/outlet/temperature", part.rated_outlet_temperature.has_value());
        ask(blower + "/pressure_ratio", part.rated_pressure_ratio.has_value());
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

void LimitWatch::read(const vehicle::Balance& balance, const FullThrottlePoint& pull,
                      std::vector<double>& values) {
    describe(balance, pull, point_);
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
        for (const FullThrottlePoint* pull : way)
            note(*pull, k, watch.limits()[k], passed);
        if (passed) all.push_back(*passed);
    }
    return all;
}

}  // namespace windwall::solve
