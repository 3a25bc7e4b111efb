#pragma once
#include "windwall/vehicle/outing/outing.hpp"

#include <cmath>
#include <optional>
#include <utility>
#include <vector>

#include "dice.hpp"

/// Outings that a file could hold, with legs of seconds to minutes.
namespace random_outings {

namespace vehicle = windwall::vehicle;
using vehicle::Leg;
using vehicle::Outing;
using samples::Dice;

inline constexpr double rpm = 3.14159265358979 / 30;

class Outings {
public:
    explicit Outings(unsigned seed) : dice_(seed) {}

    Outing next() {
        for (;;) {
            Outing made = any();
            if (!made.check() && made.misplaced_legs().empty()) return made;
        }
    }

private:
    bool chance(double share) { return dice_.between(0, 1) < share; }
    std::optional<double> perhaps(double low, double high) {
        if (chance(0.6)) return std::nullopt;
        return dice_.decades(low, high);
    }

    Outing any() {
        Outing made;
        made.id = "any";
        made.starts = static_cast<vehicle::Starts>(static_cast<int>(dice_.between(0, 3)));
        made.shift_speed = perhaps(1500 * rpm, 15000 * rpm);
        made.shift_time = perhaps(0.01, 2);
        made.lift = chance(0.7);
        made.launch_speed = perhaps(600 * rpm, 9000 * rpm);
        if (chance(0.3)) made.launch_gear = std::floor(dice_.between(1, 6));
        made.road_length = perhaps(20, 5000);
        made.fuel_on_board = perhaps(1e-5, 1e-2);
        made.liquid_on_board = perhaps(1e-6, 1e-3);
        if (chance(0.2)) made.road.column = hills();
        for (int i = 0, count = static_cast<int>(dice_.between(1, 6)); i < count; ++i)
            made.legs.push_back(leg());
        return made;
    }

    std::vector<std::vector<double>> hills() {
        std::vector<std::vector<double>> columns(3);
        double at = 0;
        for (int i = 0; i < 5; ++i) {
            columns[0].push_back(at);
            columns[1].push_back(dice_.between(-0.08, 0.08));
            columns[2].push_back(dice_.between(-8, 8));
            at += dice_.decades(5, 500);
        }
        return columns;
    }

    Leg leg() {
        switch (static_cast<int>(dice_.between(0, 7))) {
            case 0: {
                vehicle::Idle made;
                made.time = dice_.decades(0.5, 300);
                made.engine_speed = perhaps(500 * rpm, 3000 * rpm);
                return made;
            }
            case 1: {
                vehicle::Launch made;
                made.engine_speed = perhaps(800 * rpm, 8000 * rpm);
                return made;
            }
            case 2: {
                vehicle::HoldSpeed made;
                made.speed = dice_.between(1, 40);
                one_of(made.for_time, made.for_distance);
                return made;
            }
            case 3: {
                vehicle::Coast made;
                made.in_gear = chance(0.3);
                if (chance(0.3))
                    made.to_speed = dice_.between(0.5, 20);
                else
                    one_of(made.for_time, made.for_distance);
                return made;
            }
            case 4: {
                vehicle::Stop made;
                made.deceleration = dice_.between(0.5, 8);
                made.time = dice_.decades(0.5, 300);
                if (chance(0.4)) made.engine = vehicle::StandingEngine::off;
                if (chance(0.4)) made.hood = vehicle::Hood::open;
                made.turn_round = chance(0.3);
                return made;
            }
            default: return full_throttle();
        }
    }

    Leg full_throttle() {
        vehicle::FullThrottle made;
        if (chance(0.3))
            made.to_speed = dice_.between(2, 60);
        else if (chance(0.2))
            made.to_engine_speed = dice_.decades(1500, 12000) * rpm;
        else
            one_of(made.for_time, made.for_distance);
        return made;
    }

    void one_of(std::optional<double>& time, std::optional<double>& distance) {
        if (chance(0.5))
            time = dice_.decades(0.3, 100);
        else
            distance = dice_.decades(2, 2000);
    }

    Dice dice_;
};

}  // namespace random_outings
