#pragma once
#include "windwall/vehicle/balance/unknown.hpp"

#include <array>
#include <cstddef>
#include <string_view>

/// Gas that a bypass takes round a blower once more.
namespace windwall::vehicle {

/// Where a bypass leaves the path and where its gas returns, and which unknowns belong to it.
struct Loop {
    static constexpr std::size_t liquids = 4;  // by media::Vapour

    std::size_t takeoff{};  // number of the bypass in the path
    std::size_t back{};     // of the blower whose inlet its gas returns to
    bool wet = false;  // liquid is put in, or other air let in, between the blower and the bypass

    std::size_t flow{};                        // recirculated over net flow, see recirculation
    std::size_t heat{};                        // enthalpy of that gas
    std::array<std::size_t, liquids> share{};  // vapour and liquid together; where wet
    std::size_t fed{};                         // what its liquids brought in; where wet

    void declare(Unknowns& unknowns, std::string_view owner) noexcept;
};

/// Recirculated over net flow, from its unknown: in proportion to it near zero, so that a closed
/// valve has a simple solution, and beyond with the root of its exponential, since flow goes with
/// the root of a pressure. A branch that runs forward takes less than the whole flow.
double recirculation(double unknown) noexcept;
/// The unknown that belongs to a ratio. Beyond what can run forward it continues steeply.
double recirculation_unknown(double ratio) noexcept;

}  // namespace windwall::vehicle
