#pragma once
#include "windwall/charge/part.hpp"
#include "windwall/engine/cylinder.hpp"
#include "windwall/vehicle/balance/air_path.hpp"
#include "windwall/vehicle/balance/block.hpp"
#include "windwall/vehicle/held_state.hpp"
#include "windwall/vehicle/operating_condition.hpp"
#include "windwall/vehicle/vehicle.hpp"

#include <array>
#include <cmath>
#include <optional>
#include <span>
#include <string>
#include <vector>

namespace windwall::vehicle {

/// What the air is before and behind one part, and what the part did if it is driven.
struct Station {
    media::Stream inlet;
    media::Stream outlet;
    charge::Compression compression;  // nothing where the part is not driven
    double drive_speed{};             // rad/s, of what drives it
    bool by_crank = true;
    double sensed_pressure{};  // Pa, where its switch reads, if it has one

    /// W that the stream, drops included, leaves in the part; negative where it is heated.
    double heat_given_off() const noexcept;
    /// Of what the rotors of a driven part carry, the share that leaks back.
    double leak_share() const noexcept {
        return compression.leak_flow / (inlet.gas_flow() + compression.leak_flow);
    }
};

/// The whole balance of the air path on one page. Each unknown is declared once, by the block that
/// owns it, with the residual of the same number (AirPath for those here):
///
///   engine   logarithm of the flow of dry air through the path; of what the engine draws from the
///            manifold over the flow, the logarithm
///   valve    ln(p_before / p_behind - 1), since its flow goes with the root of that at full
///            opening, and hardly with it at a small one; of what it passes between its two
///            pressures over the flow, the logarithm
///   blower   ln(p_behind / p_before); of what it would deliver over the flow, which a leak may
///            leave with nothing to give, the excess as a share
///   bypass   the flow it takes back (see recirculation) and the enthalpy of that gas above the
///            weather's, in units of `heat_scale`; where liquid is put in on its way round, also
///            the shares of each vapour and liquid together; what it would pass, and what the gas
///            it takes carries, less what was assumed
///   pump     the pressure its switch reads further on, over that of the weather
///   block    whatever is attached from outside: a throttle held back from knock, a turbine's shaft
///
/// Parts that only resist or cool need no unknown: their outlet follows from their inlet. A balance
/// is the workspace of one thread; it reads the vehicle and never changes it.
class Balance {
public:
    static constexpr double heat_scale = 3e5;  // J per kg of dry air: air's heat at 300 K

    explicit Balance(const Vehicle& vehicle);

    /// Fixes what is held while the balance is sought.
    void hold(const OperatingCondition& condition, const WhatIf& what_if = {}) noexcept;
    /// From the next `hold` on: temperatures and liquid as an integration over time has them; null:
    /// as in a long pull. It is borrowed.
    void hold_state(const HeldState* state) noexcept { state_ = state; }
    /// kg/s of each liquid that the last march brought to the walls before the intake valves.
    const std::array<double, 4>& film_arriving() const noexcept { return film_arriving_; }

    /// A block declares its unknowns behind those that are there; the last one attached is the
    /// first to be detached. Throws std::length_error where they are too many.
    void attach(Block& block);
    void detach() noexcept;

    const Unknowns& unknowns() const noexcept { return air_.unknowns; }
    void residuals(std::span<const double> x, std::span<double> r) noexcept;
    /// A cold guess from displacements alone.
    void guess(std::span<double> x) noexcept;

    // What a block may do to the path and the engine; `hold` takes it back.
    void set_opening(double opening) noexcept;
    void set_exhaust_pressure(double pressure) noexcept { exhaust_pressure_ = pressure; }
    void enrich(double off_lambda) noexcept { enrichment_ = off_lambda; }
    void turn(std::size_t part, double drive_speed) noexcept;  // by a shaft of its own
    void meter(double fuel_share) noexcept;  // of a carburettor, over what lambda asks for

    /// What the diaphragms of bypasses feel in place of the manifold's pressure, Pa, until it is
    /// taken back: nothing opens them wide.
    void feel(std::optional<double> pressure) noexcept { felt_ = pressure; }
    /// Least opening, at a manifold pressure, of the bypasses that a diaphragm works; 1 where there
    /// are none.
    double diaphragm_opening(double manifold_pressure) const noexcept;

    /// Takes the air from the weather to the manifold at a flow of dry air in kg/s and leaves every
    /// station behind. `choose(part, inlet, k)` gives the pressure behind each valve and blower,
    /// whose unknown is number k. What comes back through a bypass is as was last assumed.
    template <class Choose>
    media::Stream propagate(double dry_air, Choose&& choose) noexcept;
    /// What the bypasses bring back and what blocks do in the marches to come, from the unknowns.
    void assume(std::span<const double> x) noexcept;
    /// What a valve or blower passes to a pressure, kg/s of gas.
    template <class Part>
    double capacity(const Part& part, const media::Stream& inlet, double pressure) const noexcept;
    /// What the engine draws at this manifold over what arrives.
    double engine_flow_ratio(const media::Stream& manifold) const noexcept;
    /// What the engine sees behind a manifold, with what its answers share.
    engine::Intake worked_out(const media::Stream& manifold) const noexcept;
    /// What a bypass would take back over the net flow, after a march.
    double branch_flow(std::size_t loop) const noexcept;
    /// Enthalpy of what a bypass takes, after a march, as its unknown states it.
    double branch_heat(std::size_t loop) const noexcept;
    /// Vapours and liquids of what a wet bypass takes, after a march, into where its unknowns
    /// stand.
    void carry_shares(std::size_t loop, std::span<double> into) const noexcept;
    /// Residuals of what the bypasses bring back, after a march.
    void loop_residuals(std::span<const double> x, std::span<double> r) const noexcept;
    /// Between the unknown of a valve or blower and the pressure behind it.
    template <class Part>
    static double pressure(const Part&, const media::Stream& inlet, double unknown) noexcept;
    template <class Part>
    static double unknown(const Part&, const media::Stream& inlet, double pressure) noexcept;

    engine::Intake intake(const media::Stream& manifold) const noexcept;
    /// Share of the engine's own fuel that the pumps take off, after a march; nothing where none
    /// does.
    std::optional<double> fuel_cut() const noexcept;
    /// For blocks: what the engine sees behind the march whose residuals are asked, worked out.
    const engine::Intake& intake() const noexcept { return intake_; }
    /// That of the vehicle, worked out.
    const media::Fuel& fuel() const noexcept { return fuel_; }
    const Vehicle& vehicle() const noexcept { return *vehicle_; }
    const OperatingCondition& condition() const noexcept { return condition_; }
    const WhatIf& what_if() const noexcept { return what_if_; }
    const charge::Surroundings& surroundings() const noexcept { return surroundings_; }
    /// With what the switch of one part reads.
    charge::Surroundings surroundings_of(const Station& station) const noexcept;
    /// W that leaves with what a part loses to the weather, above the air that came in; negative
    /// where warmer air is drawn in.
    double heat_lost(const Station& station) const noexcept;
    /// The unknowns of switches from what the last march left where they read; the largest change.
    double follow_switches(std::span<double> x) const noexcept;
    double humidity_ratio() const noexcept { return humidity_ratio_; }
    std::span<const Station> stations() const noexcept { return stations_; }
    std::span<const Loop> loops() const noexcept { return air_.loops; }
    bool has_switches() const noexcept { return !air_.switches.empty(); }
    std::size_t flow() const noexcept { return air_.flow; }
    bool has_blocks() const noexcept { return !blocks_.empty(); }
    const media::Stream& manifold() const noexcept { return manifold_; }

private:
    struct Branch {
        double ratio = 0;                            // of the net flow
        double enthalpy = 0;                         // J per kg of dry air
        std::array<double, Loop::liquids> shares{};  // liquid and vapour, where liquid is put in
        double fed = 0;
        media::Stream forward;  // what enters it at the blower's inlet, where it runs forward
    };
    struct Attached {
        Block* block;
        std::size_t first;  // of its unknowns
    };
    double engine_flow_ratio(const engine::Intake& intake) const noexcept;
    void blower_residuals(std::span<double> r) const noexcept;
    void sense(std::size_t part, const media::Stream& gas) noexcept;
    double switch_pressure(const PressureSwitch& each) const noexcept;
    media::Stream returned(const Loop& loop, const Branch& branch,
                           const media::Stream& gas) const noexcept;
    void mix_in(std::size_t part, media::Stream& gas) noexcept;
    void split_off(std::size_t part, media::Stream& gas) noexcept;
    void guess_path(std::span<double> x) noexcept;
    void guess_loops(std::span<double> x) noexcept;

    void take_held(std::size_t part) noexcept {
        surroundings_.held = part < state_->path.size() ? state_->path[part] : charge::Held{};
    }
    void give_back_film(media::Stream& manifold) noexcept;

    const Vehicle* vehicle_;
    const HeldState* state_ = nullptr;
    OperatingCondition condition_;
    WhatIf what_if_;
    charge::Surroundings surroundings_{};
    double humidity_ratio_{};
    double net_flow_{};      // kg/s of dry air, of the last march
    double weather_heat_{};  // enthalpy of the day's air, J per kg of dry air
    double inlet_heat_{};    // of that at the mouth of the intake
    media::Stream weather_;  // one kilogram a second of the air at the mouth of the intake
    media::Fuel fuel_;
    engine::Intake intake_;
    media::Stream manifold_;  // behind the last part of the last march
    std::array<double, 4> film_arriving_{};
    bool carburetted_ = false;  // the charge brings the fuel
    bool cuts_fuel_ = false;    // a pump takes of the engine's own
    AirPath air_;
    std::vector<Station> stations_;
    std::vector<Branch> branches_;  // one for each loop
    std::vector<Attached> blocks_;
    double enrichment_ = 0;                   // off the engine's lambda
    std::optional<double> exhaust_pressure_;  // where a block sets it
    std::optional<double> felt_;              // by diaphragms, in place of the manifold's
    std::array<double, 4> fuel_demand_{};     // what lambda asks for, kg per kg of dry air
};

template <class Choose>
media::Stream Balance::propagate(double dry_air, Choose&& choose) noexcept {
    media::Stream gas = weather_;
    gas.dry_air = net_flow_ = dry_air;
    for (std::size_t i = 0; i < stations_.size(); ++i) {
        Station& here = stations_[i];
        if (!air_.loops.empty()) mix_in(i, gas);
        here.inlet = gas;
        if (!air_.switches.empty()) sense(i, gas);
        if (state_) take_held(i);
        vehicle_->charge_path[i].part.visit([&]<class Part>(const Part& part) {
            if constexpr (charge::Passive<Part>) {
                gas = part.outlet(gas, surroundings_);
            } else if constexpr (charge::Branching<Part>) {
                split_off(i, gas);
            } else {
                surroundings_.drive_speed = here.drive_speed;
                const double pressure = choose(part, gas, air_.behind[i]);
                if constexpr (charge::Driven<Part>) {
                    here.compression = part.compress(gas, pressure, surroundings_);
                    gas = here.compression.outlet;
                }
                gas.pressure = pressure;
            }
        });
        here.outlet = gas;
    }
    gas.temperature += what_if_.charge_temperature;
    if (state_ && state_->film) give_back_film(gas);
    return manifold_ = gas;
}

template <class Part>
double Balance::pressure(const Part&, const media::Stream& inlet, double unknown) noexcept {
    const double ratio = std::exp(unknown);
    return charge::Driven<Part> ? inlet.pressure * ratio : inlet.pressure / (1 + ratio);
}

template <class Part>
double Balance::unknown(const Part&, const media::Stream& inlet, double pressure) noexcept {
    return std::log(charge::Driven<Part> ? pressure / inlet.pressure
                                         : inlet.pressure / pressure - 1);
}

template <class Part>
double Balance::capacity(const Part& part, const media::Stream& inlet,
                         double pressure) const noexcept {
    if constexpr (charge::Driven<Part>) {
        return part.compress(inlet, pressure, surroundings_).capacity;
    } else {
        return part.flow(inlet, pressure, surroundings_);
    }
}

}  // namespace windwall::vehicle
