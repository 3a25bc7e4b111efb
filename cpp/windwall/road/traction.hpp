#pragma once
#include "windwall/fields/member.hpp"

#include <array>
#include <string_view>

namespace windwall::road {

enum class DrivenAxle { rear, front, all };

/// Greatest thrust the road takes, N, for a weight in N, a friction coefficient, the share of the
/// standing weight on the driven axle, and the height of the centre of gravity over the wheelbase.
/// The thrust shifts weight to the rear; drag is taken to act at the height of the centre of
/// gravity, so the limit is the same at every speed. With rear drive it ends at the latest where
/// the front lifts.
double traction_limit(double weight, double grip, double driven_share, double height,
                      DrivenAxle axle) noexcept;

/// Weight on the driven axle, N, under a thrust in N: between nothing and all of it.
double driven_load(double weight, double thrust, double driven_share, double height,
                   DrivenAxle axle) noexcept;

/// Share of the wheels' speed lost at the road, F / (C_s F_z), for a slip stiffness C_s per unit
/// slip; held within +-0.5, far beyond any grip.
double tyre_slip(double thrust, double load, double stiffness) noexcept;

}  // namespace windwall::road

template <>
struct windwall::fields::Names<windwall::road::DrivenAxle> {
    static constexpr std::array<std::string_view, 3> names{"rear", "front", "all"};
};
