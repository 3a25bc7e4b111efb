#pragma once
#include "windwall/media/stream.hpp"

/// Enthalpy of gas and liquid together. A liquid's enthalpy hangs on its vapour's, so that every
/// balance closes whatever evaporates. Gas and liquid of a stream have one temperature.
namespace windwall::media {

/// A liquid alone as a gas without volume, whose heat capacity is constant.
const Gas& liquid_phase(Vapour vapour) noexcept;
/// Of a liquid alone, J/kg.
double liquid_enthalpy(Vapour vapour, double temperature) noexcept;
/// Gas and liquid together, J per kg of dry air, heats of formation included. What evaporates or
/// condenses at a constant one takes its latent heat from the rest.
double enthalpy_per_dry_air(const Stream& stream) noexcept;
/// The same times the flow of dry air, W.
double enthalpy_flow(const Stream& stream) noexcept;
/// Heat capacity of gas and liquid with nothing evaporating, J/K per kg of dry air.
double capacity_per_dry_air(const Stream& stream) noexcept;

/// The same gas and liquid at the temperature that has this enthalpy, J per kg of dry air.
Stream at_enthalpy(Stream stream, double enthalpy_per_dry_air) noexcept;

/// With this much liquid, kg per kg of dry air, put in at a temperature in K; it takes the stream's
/// temperature and nothing evaporates yet. `drop_diameter` in m is that of the new drops.
Stream with_liquid(Stream stream, const std::array<double, 4>& added, double temperature,
                   double drop_diameter) noexcept;

/// Gives a mixture, its liquid already summed, the drops, the film and what was put into its two
/// streams; `share` of its dry air is the second's.
void mix_drops(Stream& both, const Stream& first, const Stream& second, double share) noexcept;

/// Two streams of one pressure mixed: air, vapours and drops by mass, temperature by enthalpy.
/// `ratio` is the second's dry air over the first's and may be negative where both are the same
/// stream and part of it leaves.
Stream mixed(const Stream& first, const Stream& second, double ratio) noexcept;

/// W that the stream leaves on its way: what came in, with what was put in, less what goes out.
double heat_given_off(const Stream& inlet, const Stream& outlet) noexcept;
/// kg per kg of dry air that became liquid between two stations where nothing is put in, or 0.
double condensed(const Stream& inlet, const Stream& outlet) noexcept;

}  // namespace windwall::media
