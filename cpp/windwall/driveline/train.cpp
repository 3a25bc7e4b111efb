#include "windwall/driveline/train.hpp"

#include "windwall/driveline/losses.hpp"
#include "windwall/driveline/passage.hpp"

#include <algorithm>
#include <type_traits>

namespace windwall::driveline {

namespace {

double own_ratio(const Part& part, GearState gear_state) noexcept {
    return part.visit([gear_state](const auto& each) { return each.ratio(gear_state); });
}

double own_inertia(const Part& part) noexcept {
    return part.visit([](const auto& each) { return each.inertia; });
}

double own_inertia_behind(const Part& part) noexcept {
    return part.visit([]<class Each>(const Each& each) {
        if constexpr (TurningBehind<Each>) return each.driven_inertia;
        return 0.0;
    });
}

std::optional<Variator> own_variator(const Part& part) noexcept {
    return part.visit([]<class Each>(const Each& each) -> std::optional<Variator> {
        if constexpr (Varying<Each>) return each.variator();
        return std::nullopt;
    });
}

/// Whether the input of this part may turn as it likes while its output speeds up.
bool parts_company(const Part& part, Behind behind) noexcept {
    switch (behind) {
        case Behind::crank: return false;
        case Behind::clutch: return part.as<Clutch>() || part.as<CentrifugalClutch>();
        case Behind::variator: return own_variator(part).has_value();
    }
    return false;
}

/// Whether the crank may turn at the start while the wheels stand.
bool own_parts(const Part& part) noexcept {
    return part.visit([]<class Each>(const Each& each) {
        if constexpr (Varying<Each>) return each.engagement_speed.has_value();
        return std::is_same_v<Each, Clutch> || std::is_same_v<Each, CentrifugalClutch>;
    });
}

/// Whether weights grip a belt that nothing else would let go.
bool own_grips(const Part& part) noexcept {
    const auto* belt = part.as<BeltCvt>();
    return belt != nullptr && belt->flyweights;
}

}  // namespace

std::size_t gears(const Train& train) noexcept {
    std::size_t count = 1;
    for (const auto& entry : train)
        count *= own_gears(entry.part);
    return count;
}

double total_ratio(const Train& train, GearState gear_state) noexcept {
    GearDealer dealer(train, gear_state);
    double ratio = 1;
    for (const auto& entry : train)
        ratio *= own_ratio(entry.part, dealer.next(entry.part));
    return ratio;
}

Shaft drive(const Train& train, const Shaft& crank, GearState gear_state,
            std::span<double> losses) noexcept {
    return pass(train, crank, gear_state, [&](std::size_t at, const Passage& through) {
        if (at < losses.size()) losses[at] = through.taken().power() - through.out.power();
    });
}

std::optional<std::size_t> parting(const Train& train) noexcept {
    for (const auto parts : {own_parts, own_grips})
        for (std::size_t at = 0; at < train.size(); ++at)
            if (parts(train[at].part)) return at;
    return std::nullopt;
}

bool grips_by_speed(const Train& train) noexcept {
    const auto at = parting(train);
    if (!at) return false;
    const Part& part = train[*at].part;
    return part.as<CentrifugalClutch>() != nullptr || (own_grips(part) && !own_parts(part));
}

std::optional<double> parting_capacity(const Train& train, double crank_speed) noexcept {
    const auto parts_at = parting(train);
    if (!parts_at) return std::nullopt;
    GearDealer dealer(train, GearState{0, 0});
    double before = 1;
    for (std::size_t at = 0; at < *parts_at; ++at)
        before *= own_ratio(train[at].part, dealer.next(train[at].part));
    const Part& part = train[*parts_at].part;
    const GearState own = dealer.next(part);
    const auto held = part.visit([&]<class Each>(const Each& each) {
        if constexpr (Holding<Each>) return each.holds(crank_speed / before, own);
        return std::optional<double>();
    });
    return held ? std::optional(*held / before) : std::nullopt;
}

Shaft drive_parted(const Train& train, const Shaft& crank, GearState gear_state, double wheel_speed,
                   std::span<double> losses, double& slip_heat) noexcept {
    const std::optional<std::size_t> parts_at = parting(train);
    GearDealer dealer(train, gear_state);
    double speed = wheel_speed * total_ratio(train, gear_state);  // where nothing slips
    Shaft shaft = crank;
    slip_heat = 0;
    if (!parts_at) {
        slip_heat = crank.torque * (crank.speed - speed);
        shaft.speed = speed;
    }
    for (std::size_t at = 0; at < train.size(); ++at) {
        const GearState own = dealer.next(train[at].part);
        Shaft out = own_drive(train[at].part, shaft, own);
        speed /= own_ratio(train[at].part, own);
        if (parts_at && at >= *parts_at) out.speed = speed;
        const double loss = shaft.power() - out.power();
        if (at < losses.size()) losses[at] = loss;
        if (parts_at && at == *parts_at) slip_heat = loss;
        shaft = out;
    }
    return shaft;
}

Shaft dragged(const Train& train, GearState gear_state, double wheel_speed,
              std::span<double> losses) noexcept {
    GearDealer dealer(train, gear_state);
    const std::size_t first = parting(train).value_or(0);
    Shaft shaft{wheel_speed * total_ratio(train, gear_state), 0};
    std::ranges::fill(losses, 0);
    for (std::size_t at = 0; at < train.size(); ++at) {
        const GearState own = dealer.next(train[at].part);
        const double ratio = own_ratio(train[at].part, own);
        if (at <= first) {
            shaft.speed /= ratio;
            continue;
        }
        Shaft out = own_drive(train[at].part, shaft, own);
        out.speed = shaft.speed / ratio;
        if (at < losses.size()) losses[at] = shaft.power() - out.power();
        shaft = out;
    }
    return shaft;
}

double inertia_at_wheels(const Train& train, GearState gear_state, Behind behind) noexcept {
    // What turns at a part's input counts with the square of every ratio from there on.
    GearDealer dealer(train, gear_state);
    const auto first = behind == Behind::clutch ? parting(train) : std::nullopt;
    double inertia = 0;
    for (std::size_t at = 0; at < train.size(); ++at) {
        const Part& part = train[at].part;
        const double ratio = own_ratio(part, dealer.next(part));
        inertia = (inertia + own_inertia(part)) * ratio * ratio;
        if (parts_company(part, behind) || first == at) inertia = 0;
        inertia += own_inertia_behind(part);
    }
    return inertia;
}

std::optional<Variator> variator(const Train& train, std::size_t gear) noexcept {
    GearDealer dealer(train, gear);
    double before = 1;
    for (const auto& entry : train) {
        const GearState own = dealer.next(entry.part);
        if (std::optional<Variator> found = own_variator(entry.part)) {
            found->before = before;
            return found;
        }
        before *= own_ratio(entry.part, own);
    }
    return std::nullopt;
}

std::optional<VariatorPassage> through_variator(const Train& train, const Shaft& crank,
                                                GearState gear_state) noexcept {
    std::optional<VariatorPassage> found;
    pass(train, crank, gear_state, [&](std::size_t, const Passage& through) {
        if (const auto* belt = through.part.as<BeltCvt>())
            found = {belt, through.gear_state, through.in, through.out};
    });
    return found;
}

double shift_time(const Train& train) noexcept {
    double longest = 0;
    for (const auto& entry : train) {
        if (const auto* box = entry.part.as<Gearbox>())
            longest = std::max(longest, box->shift_time);
    }
    return longest;
}

}  // namespace windwall::driveline
