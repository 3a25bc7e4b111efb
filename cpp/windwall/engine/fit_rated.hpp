#pragma once
#include "windwall/engine/class_priors.hpp"
#include "windwall/media/fuel.hpp"
#include "windwall/numerics/rounded.hpp"

#include <string_view>
#include <vector>

namespace windwall::engine {

/// An input of the stock engine that is not stated, SI, and what is known of it.
struct FreeInput {
    std::string_view address;  // from the engine
    Estimate known;
    double low{};
    double high{};
};

/// The same once the rated figures are met.
struct MovedInput {
    FreeInput input;
    Estimate met;

    double sigmas() const noexcept {
        return input.known.sigma > 0 ? (met.value - input.known.value) / input.known.sigma : 0;
    }
};

/// A rated figure, SI, and what the stock engine gives beside it.
struct RatedFigure {
    std::string_view key;  // torque or power
    double rated{};
    double sigma{};
    double before{};  // with the inputs as they were known
    double met{};

    /// Further off than twice what it is known to.
    bool unreconciled() const noexcept;
};

struct RatedFit {
    std::vector<MovedInput> inputs;
    std::vector<RatedFigure> figures;
    std::vector<double> covariance;  // in the sigmas that inputs were known to, row by row

    /// What the figures leave between two inputs: moved together they still meet them.
    double correlation(std::size_t i, std::size_t j) const noexcept;
};

/// What a maker's figures say of an engine is kept to nine digits, far finer than anything known of
/// it, so that a file means the same on every machine.
inline double kept(double found) { return numerics::to_significant(found, 9); }

/// What may move so that rated figures are met, by address from the engine.
std::span<const std::string_view> free_addresses();

/// Moves the free inputs of an engine with rated figures so that it meets them: regularised least
/// squares, each input weighed by its sigma and held in its range. `relative_sigma` of torque and
/// power where known, else 0. The engine comes back with the inputs as they met.
RatedFit fit_rated(Cylinder& engine, const media::Fuel& fuel, std::vector<FreeInput> free,
                   double torque_sigma, double power_sigma);

/// Sets the knock anchor by the fuel that the maker asks for: on it the stock engine does not knock
/// at full throttle on a hot day, with a maker's reserve.
void anchor_by_rated_fuel(Cylinder& engine, const media::Fuel& fuel);

}  // namespace windwall::engine
