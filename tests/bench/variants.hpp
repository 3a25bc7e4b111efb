#pragma once
#include "windwall/vehicle/vehicle.hpp"

#include <random>
#include <vector>

/// Vehicles to count and time: those of the example scenarios, changed at random, the same ones
/// every time.
namespace windwall::bench {

class Variants {
public:
    explicit Variants(std::vector<vehicle::Vehicle> bases) : bases_(std::move(bases)) {}

    vehicle::Vehicle next() {
        vehicle::Vehicle car = bases_[drawn_++ % bases_.size()];
        car.day.temperature = between(263, 318);
        car.body.mass *= between(0.8, 1.3);
        car.body.drag_area *= between(0.6, 1.3);
        std::visit([&](auto& engine) { change(engine); }, car.engine.value);
        for (auto& entry : car.charge_path)
            std::visit([&](auto& part) { change(part); }, entry.part.value);
        if (between(0, 1) < 0.5) car.charge_path.push_back({"bench_cooler", cooler()});
        return car;
    }

private:
    double between(double low, double high) {
        return std::uniform_real_distribution<double>(low, high)(random_);
    }
    template <class Part>
    void change(Part& part) {
        if constexpr (requires { part.bore = 0.0; }) part.bore *= between(0.85, 1.3);
        if constexpr (requires { part.drive_ratio = 0.0; }) part.drive_ratio *= between(0.8, 1.3);
        if constexpr (requires { part.knock_anchor; }) {
            part.knock_anchor.octane_number += between(-6, 6);
            part.rev_limit *= between(0.9, 1.3);
        }
    }
    charge::ChargeCooler cooler() {
        charge::ChargeCooler made;
        made.conductance = between(20, 90);
        made.at_charge_flow = 30e-3;
        made.at_cooling_flow = 250e-3;
        made.face_area = 0.042;
        made.drop = 2e3;
        return made;
    }

    std::vector<vehicle::Vehicle> bases_;
    std::size_t drawn_ = 0;
    std::mt19937 random_{20257};
};

}  // namespace windwall::bench
