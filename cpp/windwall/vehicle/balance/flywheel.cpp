#include "windwall/vehicle/balance/flywheel.hpp"

namespace windwall::vehicle {

double blower_power(const Balance& balance) noexcept {
    double power = 0;
    for (const Station& station : balance.stations())
        if (station.by_crank) power += station.compression.crank_power;
    return power;
}

double flywheel_torque(const Balance& balance, const engine::Work& work) noexcept {
    const double taken = blower_power(balance) / balance.condition().engine_speed;
    return balance.what_if().torque_factor * (work.torque() - taken);
}

}  // namespace windwall::vehicle
