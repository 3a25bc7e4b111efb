#include "windwall/media/equilibrium.hpp"

#include "windwall/media/contents.hpp"
#include "windwall/media/joint_equilibrium.hpp"
#include "windwall/media/nested_equilibrium.hpp"
#include "windwall/media/stream_enthalpy.hpp"

#include <algorithm>
#include <cmath>

namespace windwall::media {
namespace {

/// Drops shrink with what leaves them; their number stays.
void shrink(Stream& stream, double liquid_before) {
    const double left = stream.liquid_share();
    if (!(left > 0)) {
        stream.drop_diameter = stream.film_share = 0;
    } else if (liquid_before > 0) {
        stream.drop_diameter *= std::cbrt(left / liquid_before);
    }
}

Phases settled(const Stream& stream, const Contents& contents, double enthalpy, double all_vapour) {
    const auto found = joint_equilibrium(contents, enthalpy, all_vapour);
    return found ? *found : nested_equilibrium(stream, contents, enthalpy, all_vapour);
}

}  // namespace

bool is_dry(const Stream& stream) noexcept {
    if (stream.liquid_share() > 0) return false;
    if (!(stream.vapour_share() > 0)) return true;
    return stays_dry(Contents(stream), stream.temperature);
}

Stream equilibrium_at_temperature(Stream stream) noexcept {
    const Contents contents(stream);
    const double T = stream.temperature;
    Phases phases{T};
    if (!stays_dry(contents, T)) {
        const auto found = joint_equilibrium_at_temperature(contents, T);
        phases = found ? *found : nested_equilibrium_at_temperature(contents, T);
    }
    const double before = stream.liquid_share();
    Stream out = shared_out(stream, contents, phases);
    shrink(out, before);
    return out;
}

Stream equilibrium_at_enthalpy(const Stream& stream, double enthalpy) noexcept {
    const Contents contents(stream);
    Stream found = at_enthalpy(shared_out(stream, contents, {stream.temperature}), enthalpy);
    if (const double T = found.temperature; !stays_dry(contents, T)) {
        found = shared_out(stream, contents, settled(stream, contents, enthalpy, T));
        // What rounding leaves of the search goes into the temperature.
        found = at_enthalpy(found, enthalpy);
    }
    shrink(found, stream.liquid_share());
    return found;
}

Stream adiabatic_equilibrium(const Stream& stream) noexcept {
    if (is_dry(stream)) return stream;
    return equilibrium_at_enthalpy(stream, enthalpy_per_dry_air(stream));
}

Stream towards(const Stream& stream, const Stream& equilibrium, double share,
               double enthalpy) noexcept {
    Stream there = stream;
    const double before = stream.liquid_share();
    for (std::size_t i = 0; i < there.liquid.size(); ++i) {
        const double becomes = share * (equilibrium.vapour[i] - stream.vapour[i]);
        there.vapour[i] += becomes;
        there.liquid[i] = std::max(there.liquid[i] - becomes, 0.0);
    }
    there.gas = gas_phase(there.vapour);
    shrink(there, before);
    return at_enthalpy(there, enthalpy);
}

Stream partly_settled(const Stream& stream, double enthalpy, double share) noexcept {
    return towards(stream, equilibrium_at_enthalpy(stream, enthalpy), share, enthalpy);
}

}  // namespace windwall::media
