#pragma once

namespace windwall::charge {

/// Effectiveness of a cross-flow heat exchanger with both streams unmixed: heat exchanged over the
/// most that could be. `transfer_units` NTU = UA/C_min, `capacity_ratio` C_min/C_max in 0 to 1.
/// Exact (the series of Mason, 1955, for Nusselt's problem); transfer units above 60 count as 60.
double crossflow_effectiveness(double transfer_units, double capacity_ratio) noexcept;

/// Conductance UA of a core in W/K away from its rated flows: each side's film carries its share
/// of the resistance and follows its own flow by a power law. Zero where either side stands still.
double cooler_conductance(double charge_flow, double cooling_flow, double conductance,
                          double at_charge_flow, double at_cooling_flow, double hot_side_share,
                          double charge_exponent, double cooling_exponent) noexcept;

}  // namespace windwall::charge
