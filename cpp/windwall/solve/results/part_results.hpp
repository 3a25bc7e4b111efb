#pragma once
#include "windwall/charge/part.hpp"
#include "windwall/fields/row.hpp"

#include <span>
#include <type_traits>
#include <vector>

/// What one operating point answers for each part of the charge path, by the part's own id.
namespace windwall::solve {

/// The gas at one end of a part.
struct GasResult {
    static constexpr std::string_view description = "The gas at one end of a part.";
    double pressure{};
    double temperature{};
    double flow{};
    double liquid{};

    static std::span<const fields::Row> rows();
};

/// A part that only resists or cools.
struct ResistedResult {
    static constexpr std::string_view kind = "resisted";
    static constexpr std::string_view description =
        "What passing a filter, duct, cooler or plenum did.";
    GasResult inlet;
    GasResult outlet;
    double pressure_drop{};
    double heat_given_off{};

    static std::span<const fields::Row> rows();
};

/// A nozzle.
struct SprayedResult {
    static constexpr std::string_view kind = "sprayed";
    static constexpr std::string_view description = "What a nozzle put into the charge.";
    GasResult inlet;
    GasResult outlet;
    double liquid_flow{};
    double siphoned{};
    double pressure_difference{};
    double drop_diameter{};
    double cycle_spread{};

    static std::span<const fields::Row> rows();
};

/// A hole to the weather.
struct LeakedResult {
    static constexpr std::string_view kind = "leaked";
    static constexpr std::string_view description = "What a hole to the weather lost or let in.";
    GasResult inlet;
    GasResult outlet;
    double lost{};

    static std::span<const fields::Row> rows();
};

/// A throttle or another valve.
struct MeteredResult {
    static constexpr std::string_view kind = "metered";
    static constexpr std::string_view description = "What passing a valve did.";
    GasResult inlet;
    GasResult outlet;
    double pressure_drop{};
    double opening{};

    static std::span<const fields::Row> rows();
};

/// A blower.
struct CompressedResult {
    static constexpr std::string_view kind = "compressed";
    static constexpr std::string_view description =
        "What a blower did, and what it took from the crank.";
    GasResult inlet;
    GasResult outlet;
    double pressure_ratio{};
    double load_ratio{};
    double rotor_speed{};
    double leak_share{};  // of what the rotors carry
    double efficiency{};  // isentropic work over shaft work
    double inlet_depression{};
    double shaft_power{};
    double crank_power{};

    static std::span<const fields::Row> rows();
};

/// A bypass.
struct BranchedResult {
    static constexpr std::string_view kind = "branched";
    static constexpr std::string_view description =
        "What a bypass took back to the blower's inlet.";
    GasResult inlet;   // of the path, before the bypass
    GasResult outlet;  // of the path, behind it
    double returned{};
    double opening{};

    static std::span<const fields::Row> rows();
};

using PartResult = fields::OneOf<ResistedResult, SprayedResult, LeakedResult, MeteredResult,
                                 CompressedResult, BranchedResult>;

/// The kind of result that a kind of part has.
template <class Part>
constexpr auto result_of() noexcept {
    if constexpr (charge::Driven<Part>)
        return CompressedResult{};
    else if constexpr (charge::Metering<Part>)
        return MeteredResult{};
    else if constexpr (charge::Branching<Part>)
        return BranchedResult{};
    else if constexpr (charge::Spraying<Part>)
        return SprayedResult{};
    else if constexpr (charge::Leaking<Part>)
        return LeakedResult{};
    else
        return ResistedResult{};
}
template <class Part>
using ResultOf = decltype(result_of<Part>());

}  // namespace windwall::solve
