#pragma once
#include "windwall/media/stream.hpp"

namespace windwall::charge {

/// What a driven part does to the gas it is given, and takes from the crankshaft.
/// shaft_power = indicated_power + friction_power = heat_to_charge + casing_loss + bearing_loss;
/// crank_power = shaft_power + belt_loss.
struct Compression {
    double capacity{};          // kg/s of gas that it passes to this outlet pressure
    double leak_flow{};         // kg/s from outlet to inlet; negative when it runs forward
    double indicated_power{};   // W, work on the gas
    double friction_power{};    // W
    double heat_to_charge{};    // W, rise of the enthalpy flow of gas and liquid together
    double casing_loss{};       // W, from the charge into the case; negative where it is warmed
    double bearing_loss{};      // W, friction that goes into the case instead of the charge
    double shaft_power{};       // W at the rotor shaft
    double crank_power{};       // W at the crankshaft, belt included
    double belt_loss{};         // W
    double rotor_speed{};       // rad/s
    double case_temperature{};  // K
    media::Stream outlet;       // the charge behind the part
    bool surging{};             // more is asked than the machine can hold against
    bool choked{};              // less than its choke flow's pressure is asked
    bool capped{};              // nothing flows, or the outlet temperature left 150 to 1200 K

    /// Fills in what the crank gives for the work and the friction at the rotor, through a belt
    /// that loses whichever way the power goes.
    void drive_by_crank(double belt_efficiency) noexcept {
        shaft_power = indicated_power + friction_power;
        const bool drives_the_crank = shaft_power < 0;
        crank_power =
            drives_the_crank ? shaft_power * belt_efficiency : shaft_power / belt_efficiency;
        belt_loss = crank_power - shaft_power;
    }
};

}  // namespace windwall::charge
