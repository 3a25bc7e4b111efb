#pragma once
#include "windwall/media/stream.hpp"
#include "windwall/media/vapour_pressure.hpp"
#include "windwall/numerics/falling_root.hpp"

namespace windwall::media {

/// The gas about a drop of a stream's own liquid, which brings it heat and takes its vapour away.
class DropFilm {
public:
    explicit DropFilm(const Stream& stream) noexcept;

    /// The logarithm of the heat that comes to a drop of this temperature over the heat that its
    /// evaporation takes, Le ln(1 + B_T)/ln(1 + B_M), with its slope. It falls with the
    /// temperature; where there is only one of the two it is 1 or -1.
    numerics::Point excess_force(double drop_temperature) const noexcept;
    /// K, where the two are the same; no warmer than the gas.
    double balanced() const noexcept;
    /// Density times diffusivity times ln(1 + B_M), kg/(m s); nothing where vapour condenses.
    double evaporation(double drop_temperature) const noexcept;

private:
    /// Mass shares in the gas at the surface and means over what evaporates there.
    struct Surface {
        numerics::Point latent_heat;  // J/kg
        numerics::Point diffusivity;  // m2/s at 298.15 K and 101 325 Pa
        numerics::Point share;        // of vapour, by mass
        double B{};                   // Spalding's mass transfer number
    };
    struct Transfer {
        numerics::Point lewis;  // the slope is that of the logarithm
        double density_diffusivity;
    };
    numerics::Point mole_share(std::size_t substance, double T) const noexcept;
    Surface surface(double T) const noexcept;
    Transfer transfer(const Surface& surface, double T) const noexcept;

    double pressure_, gas_temperature_;
    std::array<double, 4> held_back_{};  // mole share and activity of each substance in the liquid
    double far_{};                       // mass share of the same substances in the gas
};

}  // namespace windwall::media
