#pragma once
#include "windwall/media/stream.hpp"

/// How far a stream evaporates or condenses when it is given time: constant pressure, dry air that
/// does not dissolve. Water and alcohols share one liquid, in which van Laar's activities hold;
/// petrol is a liquid of its own beside it. No ice. Total and without allocation.
namespace windwall::media {

/// True if the stream has no liquid and none would form: evaporation and condensation are at rest.
bool is_dry(const Stream& stream) noexcept;

/// The stream in equilibrium at its own temperature and pressure, drops and film kept in their
/// shares.
Stream equilibrium_at_temperature(Stream stream) noexcept;
/// The stream in equilibrium with its own enthalpy: what evaporates cools the whole.
Stream adiabatic_equilibrium(const Stream& stream) noexcept;
/// In equilibrium with an enthalpy in J per kg of dry air.
Stream equilibrium_at_enthalpy(const Stream& stream, double enthalpy_per_dry_air) noexcept;

/// A share 0 to 1 of the way from the stream to `equilibrium` in what is liquid and what is vapour;
/// the temperature follows from the enthalpy given, J per kg of dry air.
Stream towards(const Stream& stream, const Stream& equilibrium, double share,
               double enthalpy_per_dry_air) noexcept;

/// A share of the way to equilibrium at an enthalpy in J per kg of dry air.
Stream partly_settled(const Stream& stream, double enthalpy_per_dry_air, double share) noexcept;

}  // namespace windwall::media
