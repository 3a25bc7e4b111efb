#pragma once
#include "windwall/charge/positive_blower.hpp"

namespace windwall::charge {

/// How the balance of a blower between two given pressures came out.
enum class BlowerBalance {
    solved,
    runaway,     // the hot leak heats the inlet faster than the flow carries the heat away
    overwhelmed  // the leak takes the whole inlet volume, even cold; nothing is delivered
};

/// A blower between two given pressures, as on a test stand in the air it breathes. Without an
/// answer the numbers are NaN.
struct BlowerPoint {
    BlowerBalance balance{};
    double gas_flow{};  // kg/s delivered
    Compression compression;
    double volumetric_efficiency{};   // delivered volume, at the inlet's state, over swept volume
    double shaft_efficiency{};        // isentropic power over shaft power, belt excluded
    double temperature_efficiency{};  // isentropic temperature rise over the rise found
};

/// The delivered flow at which what the rotors take in equals what they deliver plus the hot leak.
/// That balance has two solutions or none; the larger flow, which is the stable one, is taken.
BlowerPoint blower_point(const PositiveBlower& blower, const media::Stream& inlet,
                         double outlet_pressure, double rotor_speed) noexcept;

}  // namespace windwall::charge
