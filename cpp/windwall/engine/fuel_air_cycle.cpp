#include "windwall/engine/fuel_air_cycle.hpp"

#include "windwall/numerics/table.hpp"

#include <algorithm>
#include <cmath>
#include <vector>

namespace windwall::engine {
namespace {

constexpr double richest = 1.4;  // the last column
constexpr double ratios[] = {6, 7, 8, 9, 10, 11, 12};
constexpr double mixtures[] = {0.6, 0.8, 0.9, 1.0, 1.1, 1.15, 1.2, 1.3, richest};

// Iso-octane, 101.3 kPa and 388 K before compression, NASA heat capacities, eleven species,
// lower heating value of the vapour 44.65 MJ/kg.
constexpr double efficiencies[7][9] = {
    {.4192, .4004, .3906, .3774, .3480, .3320, .3167, .2889, .2646},
    {.4460, .4267, .4168, .4034, .3712, .3540, .3376, .3079, .2820},
    {.4682, .4486, .4386, .4251, .3906, .3724, .3551, .3238, .2964},
    {.4870, .4673, .4571, .4436, .4071, .3880, .3700, .3373, .3088},
    {.5033, .4834, .4732, .4597, .4215, .4016, .3829, .3490, .3194},
    {.5176, .4976, .4874, .4739, .4341, .4136, .3943, .3593, .3289},
    {.5303, .5103, .5000, .4866, .4453, .4243, .4044, .3685, .3372},
};

/// x of 1 - ratio^-x, which hardly changes with the compression ratio.
const numerics::Grid& exponents() {
    static const numerics::Grid grid = [] {
        std::vector<double> values;
        for (std::size_t i = 0; i < std::size(ratios); ++i)
            for (const double efficiency : efficiencies[i])
                values.push_back(-std::log(1 - efficiency) / std::log(ratios[i]));
        return numerics::Grid({std::begin(ratios), std::end(ratios)},
                              {std::begin(mixtures), std::end(mixtures)}, std::move(values));
    }();
    return grid;
}

}  // namespace

double fuel_air_efficiency(double compression_ratio, double equivalence_ratio) noexcept {
    const double x = exponents().at(compression_ratio, equivalence_ratio).value;
    const double efficiency = 1 - std::pow(compression_ratio, -x);
    // Beyond the richest column work per air keeps falling slowly, as between the last columns.
    return efficiency * std::pow(std::min(1.0, richest / equivalence_ratio), 1.2);
}

double unburnt_share(double equivalence_ratio) noexcept {
    if (equivalence_ratio <= 1) return 0;
    constexpr double K = 3.577;         // [CO][H2O]/([CO2][H2]) at 1740 K
    constexpr double hydrogen = 1.125;  // H2 per C of C8H18
    constexpr double carbon_monoxide_heat = 283.0, hydrogen_heat = 241.8;  // kJ/mol
    constexpr double fuel_heat = 637.5;  // kJ per mol C: 44.65 MJ/kg of vapour
    // Atoms O per atom C, at least what makes carbon monoxide alone. With a of CO2 and b of H2O
    // per C, a + b = O - 1; the equilibrium then is one quadratic in a.
    const double O = std::max(1.0, 2 * (1 + hydrogen / 2) / equivalence_ratio);
    const double half = (O + K * (hydrogen + 1 - O)) / 2;
    const double a = (O - 1) / (half + std::sqrt(half * half + (K - 1) * (O - 1)));
    const double b = O - 1 - a;
    return ((1 - a) * carbon_monoxide_heat + (hydrogen - b) * hydrogen_heat) / fuel_heat;
}

}  // namespace windwall::engine
