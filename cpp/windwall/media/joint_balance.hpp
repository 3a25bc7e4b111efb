#pragma once
#include "windwall/media/contents.hpp"

#include <Eigen/Core>

namespace windwall::media::joint {

/// The unknowns of an equilibrium, and the places of their equations: enthalpy, room in the gas,
/// composition of the liquid, petrol.
enum Unknown : Eigen::Index {
    temperature,  // K
    ratio,        // moles of liquid of water and alcohol for each mole of gas
    alcohol,      // mole share of alcohol in that liquid
    petrol        // evaporated share of the petrol
};
using Vector = Eigen::Vector4d;
using Matrix = Eigen::Matrix4d;

/// Which unknowns are sought. The others stay: what does not exist, or is held.
using Sought = std::array<bool, 4>;

/// A number and its slope over every unknown.
struct Sloped {
    double value{};
    Vector slope = Vector::Zero();
};

/// Residuals of an equilibrium with its Jacobian, at one set of unknowns.
class Balance {
public:
    Balance(const Contents& contents, const Gas& all_liquid, double enthalpy) noexcept;
    void at(const Vector& unknowns) noexcept;

    Vector residual;
    Matrix jacobian;
    std::array<Sloped, 4> evaporated;  // share of each substance
    double gas{};                      // moles for each mole of dry air
    double least_volatile{};           // the smallest K of the mixture

private:
    void count_mixture(const Vector& unknowns) noexcept;
    void count_petrol(const Vector& unknowns) noexcept;
    void weigh(double temperature) noexcept;

    const Contents& contents_;
    const Gas& all_liquid_;
    double enthalpy_;  // J per kg of dry air
    Volatility pure_;
    Sloped gas_, liquid_moles_, composition_, petrol_;
};

}  // namespace windwall::media::joint
