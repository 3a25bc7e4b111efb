#pragma once
#include "windwall/charge/surroundings.hpp"
#include "windwall/fields/row.hpp"
#include "windwall/media/stream.hpp"

#include <array>
#include <span>
#include <string_view>

namespace windwall::charge {

/// What opens a bypass.
enum class OpenedBy { manifold_depression, pedal, hand };

/// A valve that takes gas from where it stands in the path back to the inlet of the blower before
/// it. Standing behind the charge cooler it returns cooled gas.
struct Bypass {
    static constexpr std::string_view kind = "bypass";
    static constexpr std::string_view description =
        "Valve that lets gas from its place in the path back to the inlet of the blower before it.";

    double area{};  // m2, effective, fully open
    OpenedBy opened_by = OpenedBy::manifold_depression;
    double opens_at = 12e3;   // Pa below the local air, behind the last part of the path
    double open_at = 30e3;    // Pa below the local air
    double shut_from = 0.6;   // share of the pedal's travel, where the pedal works it
    double hand_opening = 0;  // share, where it is set by hand

    bool by_diaphragm() const noexcept { return opened_by == OpenedBy::manifold_depression; }
    /// 0 shut, 1 fully open; rises smoothly in between.
    double opening(double manifold_pressure, const Surroundings& surroundings) const noexcept;
    /// Gas in kg/s from the path back to the blower's inlet, negative the other way.
    double branch_flow(const media::Stream& path, double inlet_pressure, double manifold_pressure,
                       const Surroundings& surroundings) const noexcept;

    static std::span<const fields::Row> rows();
    std::optional<fields::Violation> check() const;
};

}  // namespace windwall::charge

template <>
struct windwall::fields::Names<windwall::charge::OpenedBy> {
    static constexpr std::array<std::string_view, 3> names{"manifold_depression", "pedal", "hand"};
};
