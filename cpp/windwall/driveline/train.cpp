#include "windwall/driveline/train.hpp"

#include <algorithm>

namespace windwall::driveline {

namespace {

std::size_t own_gears(const Part& part) noexcept {
    return part.visit([](const auto& each) { return each.gears(); });
}

double own_ratio(const Part& part, std::size_t gear) noexcept {
    return part.visit([gear](const auto& each) { return each.ratio(gear); });
}

double own_inertia(const Part& part) noexcept {
    return part.visit([](const auto& each) { return each.inertia; });
}

Shaft own_drive(const Part& part, const Shaft& in, std::size_t gear) noexcept {
    return part.visit([&in, gear](const auto& each) { return each.drive(in, gear); });
}

/// Deals one running gear number out to the parts, one after another.
class GearDealer {
public:
    GearDealer(const Train& train, std::size_t gear) noexcept
        : left_(std::min(gear, gears(train) - 1)) {}

    std::size_t next(const Part& part) noexcept {
        const std::size_t count = own_gears(part);
        const std::size_t own = left_ % count;
        left_ /= count;
        return own;
    }

private:
    std::size_t left_;
};

}  // namespace

std::size_t gears(const Train& train) noexcept {
    std::size_t count = 1;
    for (const auto& entry : train)
        count *= own_gears(entry.part);
    return count;
}

double total_ratio(const Train& train, std::size_t gear) noexcept {
    GearDealer dealer(train, gear);
    double ratio = 1;
    for (const auto& entry : train)
        ratio *= own_ratio(entry.part, dealer.next(entry.part));
    return ratio;
}

Shaft drive(const Train& train, const Shaft& crank, std::size_t gear,
            std::span<double> losses) noexcept {
    GearDealer dealer(train, gear);
    Shaft shaft = crank;
    for (std::size_t at = 0; at < train.size(); ++at) {
        const Part& part = train[at].part;
        const Shaft out = own_drive(part, shaft, dealer.next(part));
        if (at < losses.size()) losses[at] = shaft.power() - out.power();
        shaft = out;
    }
    return shaft;
}

double inertia_at_wheels(const Train& train, std::size_t gear) noexcept {
    // What turns at a part's input counts with the square of every ratio from there on.
    GearDealer dealer(train, gear);
    double inertia = 0;
    for (const auto& entry : train) {
        const double ratio = own_ratio(entry.part, dealer.next(entry.part));
        inertia = (inertia + own_inertia(entry.part)) * ratio * ratio;
    }
    return inertia;
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
