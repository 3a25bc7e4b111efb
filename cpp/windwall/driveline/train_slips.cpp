// What the parts of a train hold, and what they are asked for.
#include "windwall/driveline/passage.hpp"
#include "windwall/driveline/train.hpp"

#include <algorithm>

namespace windwall::driveline {
namespace {

bool own_slips(const Part& part, const Shaft& in, GearState gear_state) noexcept {
    return part.visit([&in, gear_state]<class Each>(const Each& each) {
        if constexpr (Holding<Each>) return slips(each, in, gear_state);
        return false;
    });
}

std::optional<double> own_capacity(const Part& part, double speed, GearState gear_state) noexcept {
    return part.visit([speed, gear_state]<class Each>(const Each& each) -> std::optional<double> {
        if constexpr (Holding<Each>) return each.holds(speed, gear_state);
        return std::nullopt;
    });
}

}  // namespace

std::vector<Overload> overloads(const Train& train, const Shaft& crank, GearState gear_state) {
    std::vector<Overload> found;
    pass(train, crank, gear_state, [&](std::size_t at, const Passage& through) {
        if (!own_slips(through.part, through.in, through.gear_state)) return;
        const auto holds = own_capacity(through.part, through.in.speed, through.gear_state);
        found.push_back({at, through.in.torque, holds.value_or(0)});
    });
    return found;
}

double slowing_power(const Train& train, const Shaft& crank, GearState gear_state) noexcept {
    double power = 0;
    pass(train, crank, gear_state, [&](std::size_t, const Passage& through) {
        power += through.taken().power() - through.in.power();
    });
    return power;
}

std::optional<double> dragged_beyond(const Train& train, const Shaft& crank,
                                     GearState gear_state) noexcept {
    std::optional<double> most;
    pass(train, crank, gear_state, [&](std::size_t, const Passage& through) {
        const auto holds = own_capacity(through.part, through.in.speed, through.gear_state);
        if (!holds) return;
        const double beyond = -through.in.torque - *holds;
        most = std::max(most.value_or(beyond), beyond);
    });
    return most;
}

bool slips(const Train& train, const Shaft& crank, GearState gear_state) noexcept {
    bool any = false;
    pass(train, crank, gear_state, [&](std::size_t, const Passage& through) {
        any = any || own_slips(through.part, through.in, through.gear_state);
    });
    return any;
}

}  // namespace windwall::driveline
