#pragma once
#include "windwall/driveline/train.hpp"

#include <algorithm>
#include <cstddef>

namespace windwall::driveline {

inline std::size_t own_gears(const Part& part) noexcept {
    return part.visit([](const auto& each) { return each.gears(); });
}

inline Shaft own_drive(const Part& part, const Shaft& in, GearState gear_state) noexcept {
    return part.visit([&in, gear_state](const auto& each) { return each.drive(in, gear_state); });
}

inline Shaft own_taken(const Part& part, const Shaft& in, GearState gear_state) noexcept {
    return part.visit([&in, gear_state]<class Each>(const Each& each) {
        if constexpr (Holding<Each>) return taken(in, each.holds(in.speed, gear_state));
        return in;
    });
}

/// Deals one running gear number out to the parts, one after another; the position goes to all. Of
/// number 0 all parts get their first gear, whatever they have.
class GearDealer {
public:
    GearDealer(const Train& train, GearState gear_state) noexcept
        : left_(gear_state.gear == 0 ? 0 : std::min(gear_state.gear, gears(train) - 1)),
          position_(gear_state.position) {}

    GearState next(const Part& part) noexcept {
        if (left_ == 0) return {0, position_};
        const std::size_t count = own_gears(part);
        const std::size_t own = left_ % count;
        left_ /= count;
        return {own, position_};
    }

private:
    std::size_t left_;
    double position_;
};

/// What comes to a part and what comes out.
struct Passage {
    const Part& part;
    GearState gear_state;
    Shaft in;
    Shaft out;

    /// What the part takes of what comes to it.
    Shaft taken() const noexcept { return own_taken(part, in, gear_state); }
};

/// From the crank to the wheels, part by part.
template <class Look>
Shaft pass(const Train& train, const Shaft& crank, GearState gear_state, Look&& look) noexcept {
    GearDealer dealer(train, gear_state);
    Shaft shaft = crank;
    for (std::size_t at = 0; at < train.size(); ++at) {
        const Part& part = train[at].part;
        const GearState own = dealer.next(part);
        const Shaft out = own_drive(part, shaft, own);
        look(at, Passage{part, own, shaft, out});
        shaft = out;
    }
    return shaft;
}

}  // namespace windwall::driveline
