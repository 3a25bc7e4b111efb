#pragma once
#include "windwall/media/stream.hpp"
#include "windwall/media/vapour_pressure.hpp"

namespace windwall::media {

/// All of each substance in a stream, whatever its phase: what an equilibrium shares out.
struct Contents {
    double pressure{};              // Pa
    std::array<double, 4> all{};    // kg per kg of dry air, by Vapour
    std::array<double, 4> moles{};  // for each mole of dry air
    double mixture{};               // moles of water and alcohols, which share one liquid
    double petrol{};                // moles of petrol, a liquid of its own
    double alcohol_share{};         // moles of alcohol, of the mixture
    VanLaar pair{};
    bool mixed{};  // both water and alcohol

    explicit Contents(const Stream& stream) noexcept;
    /// Moles of gas with everything evaporated.
    double all_gas() const noexcept { return 1 + mixture + petrol; }
    /// kg of a substance per kg of dry air that one mole of it for each mole of dry air is.
    static double mass(std::size_t substance) noexcept;
};

/// Where an equilibrium is.
struct Phases {
    double temperature{};                          // K
    std::array<double, 4> evaporated{1, 1, 1, 1};  // share of each substance that is vapour
};

/// Dry air with all the rest as liquid, per kg of dry air.
Gas all_liquid(const Contents& contents) noexcept;
/// The stream with its contents shared out like this; its drops and film are left alone.
Stream shared_out(Stream stream, const Contents& contents, const Phases& phases) noexcept;

/// Vapour pressures of the pure liquids over the whole pressure; 1 for what there is none of.
struct Volatility {
    std::array<double, 4> K{1, 1, 1, 1};  // petrol: of its first drop
    std::array<double, 4> growth{};       // d ln(K)/dT, 1/K
};
Volatility volatility(const Contents& contents, double temperature) noexcept;

/// The first drop of water and alcohols to form out of gas that holds all of them.
struct FirstDrop {
    double room{};           // moles of gas that hold the mixture without a drop
    double alcohol_share{};  // by moles, of that drop
};
FirstDrop first_drop(const Contents& contents, const Volatility& pure) noexcept;
/// Moles of gas that hold all of the petrol.
double room_for_petrol(const Contents& contents, const Volatility& pure) noexcept;
/// No liquid forms at this temperature.
bool stays_dry(const Contents& contents, double temperature) noexcept;

}  // namespace windwall::media
