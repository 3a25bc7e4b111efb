#include "windwall/media/equilibrium.hpp"
#include "windwall/media/stream_enthalpy.hpp"
#include "windwall/vehicle/balance/balance.hpp"

#include <algorithm>

namespace windwall::vehicle {
namespace {

constexpr double coldest = 150, hottest = 1600;  // K, of gas that returns, on a solver's way

}  // namespace

void Balance::assume(std::span<const double> x) noexcept {
    for (std::size_t i = 0; i < air_.loops.size(); ++i) {
        const Loop& loop = air_.loops[i];
        Branch& branch = branches_[i];
        branch.ratio = recirculation(x[loop.flow]);
        branch.enthalpy = weather_heat_ + heat_scale * x[loop.heat];
        if (!loop.wet) continue;
        for (std::size_t k = 0; k < Loop::liquids; ++k)
            branch.shares[k] = std::max(0.0, x[loop.share[k]]);
        branch.fed = heat_scale * x[loop.fed];
    }
    for (const PressureSwitch& each : air_.switches)
        if (each.pressure != AirPath::none)
            stations_[each.part].sensed_pressure =
                x[each.pressure] * surroundings_.ambient_pressure;
    for (const Attached& each : blocks_)
        each.block->act(*this, x);
}

void Balance::loop_residuals(std::span<const double> x, std::span<double> r) const noexcept {
    for (std::size_t i = 0; i < air_.loops.size(); ++i) {
        const Loop& loop = air_.loops[i];
        r[loop.flow] = recirculation_unknown(branch_flow(i)) - x[loop.flow];
        r[loop.heat] = branch_heat(i) - x[loop.heat];
        if (!loop.wet) continue;
        carry_shares(i, r);
        for (const std::size_t k : loop.share)
            r[k] -= x[k];
        r[loop.fed] -= x[loop.fed];
    }
}

void Balance::carry_shares(std::size_t number, std::span<double> into) const noexcept {
    const Loop& loop = air_.loops[number];
    const media::Stream& taken = stations_[loop.takeoff].inlet;
    for (std::size_t k = 0; k < Loop::liquids; ++k)
        into[loop.share[k]] = taken.vapour[k] + taken.liquid[k];
    into[loop.fed] = taken.fed / heat_scale;
}

/// What a bypass brings back has had time to come to rest: vapour and liquid are in equilibrium.
media::Stream Balance::returned(const Loop& loop, const Branch& branch,
                                const media::Stream& gas) const noexcept {
    media::Stream back = gas;
    if (loop.wet) {
        back.liquid = branch.shares;
        back.vapour = {};
        back.gas = media::gas_phase(back.vapour);
        back.fed = branch.fed;
    }
    back = media::equilibrium_at_enthalpy(back, branch.enthalpy);
    back.temperature = std::clamp(back.temperature, coldest, hottest);
    return back;
}

/// Before a blower: what its bypasses bring back is mixed in, or part of the gas leaves forward.
void Balance::mix_in(std::size_t part, media::Stream& gas) noexcept {
    for (std::size_t i = 0; i < air_.loops.size(); ++i) {
        if (air_.loops[i].back != part) continue;
        Branch& branch = branches_[i];
        branch.forward = gas;
        const bool backward = branch.ratio > 0;
        const media::Stream other = backward ? returned(air_.loops[i], branch, gas) : gas;
        gas = mixed(gas, other, branch.ratio * net_flow_ / gas.dry_air);
    }
}

/// At a bypass: what it takes back leaves, or what it brought forward is mixed in.
void Balance::split_off(std::size_t part, media::Stream& gas) noexcept {
    for (std::size_t i = 0; i < air_.loops.size(); ++i) {
        if (air_.loops[i].takeoff != part) continue;
        const Branch& branch = branches_[i];
        const media::Stream& other = branch.ratio < 0 ? branch.forward : gas;
        gas = mixed(gas, other, -branch.ratio * net_flow_ / gas.dry_air);
    }
}

double Balance::branch_flow(std::size_t loop) const noexcept {
    const media::Stream& path = stations_[air_.loops[loop].takeoff].inlet;
    const media::Stream& inlet = stations_[air_.loops[loop].back].inlet;
    media::Stream upstream = path;
    if (inlet.pressure > path.pressure) upstream.temperature = inlet.temperature;
    const double flow = vehicle_->charge_path[air_.loops[loop].takeoff].part.visit(
        [&]<class Part>(const Part& part) {
            if constexpr (charge::Branching<Part>)
                return part.branch_flow(upstream, inlet.pressure,
                                        felt_.value_or(manifold_.pressure), surroundings_);
            else
                return 0.0;
        });
    return flow / (net_flow_ * (1 + path.vapour_share()));
}

double Balance::diaphragm_opening(double manifold_pressure) const noexcept {
    double least = 1;
    for (const Loop& loop : air_.loops) {
        vehicle_->charge_path[loop.takeoff].part.visit([&]<class Part>(const Part& part) {
            if constexpr (charge::Branching<Part>)
                if (part.by_diaphragm())
                    least = std::min(least, part.opening(manifold_pressure, surroundings_));
        });
    }
    return least;
}

double Balance::branch_heat(std::size_t loop) const noexcept {
    return (media::enthalpy_per_dry_air(stations_[air_.loops[loop].takeoff].inlet) -
            weather_heat_) /
           heat_scale;
}

void Balance::guess(std::span<double> x) noexcept {
    for (std::size_t k = 0; k < unknowns().size(); ++k)
        x[k] = unknowns()[k].guess;
    for (const Loop& loop : air_.loops)
        if (loop.wet) x[loop.share[media::index(media::Vapour::water)]] = humidity_ratio_;
    assume(x);
    guess_path(x);
    guess_loops(x);
    follow_switches(x);
    for (const Attached& each : blocks_)
        each.block->guess(*this, x);
}

void Balance::guess_path(std::span<double> x) noexcept {
    // Behind a wide throttle little is lost and behind a small one most; behind a blower the
    // pressure is what its displacement makes of the engine's.
    const double shut = 1 - condition_.opening;
    const double lost = 0.005 + 2 * shut * shut * shut;
    const media::Stream manifold = propagate(
        1e-3, [&]<class Part>(const Part& part, const media::Stream& inlet, std::size_t k) {
            double behind = inlet.pressure / (1 + lost);
            if constexpr (charge::Driven<Part>) {
                media::Stream sought = inlet;
                sought.dry_air *= engine_flow_ratio(inlet);
                const double swept = capacity(part, sought, inlet.pressure) / sought.gas_flow();
                behind = inlet.pressure * std::clamp(0.92 * swept, 0.6, 2.2);
            }
            x[k] = unknown(part, inlet, behind);
            return behind;
        });
    x[air_.flow] = std::log(manifold.dry_air * engine_flow_ratio(manifold));
}

/// What an open bypass leaves of the pressure behind a blower, and what goes round through it.
void Balance::guess_loops(std::span<double> x) noexcept {
    for (std::size_t i = 0; i < air_.loops.size(); ++i) {
        const double could = branch_flow(i);
        if (could > 0.05) {
            x[air_.loops[i].flow] = recirculation_unknown(0.5);
            x[air_.loops[i].heat] = 0.1;
        }
    }
}

}  // namespace windwall::vehicle
