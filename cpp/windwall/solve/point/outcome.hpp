#pragma once
#include <array>
#include <string_view>
#include <vector>

namespace windwall::solve {

/// Every way a question can end. The words are those of files and results.
enum class Status {
    solved,
    no_balance,
    no_survivable_state,
    knock_limited,
    out_of_range,
    not_converged,
    cancelled,
    broken_off,
};

inline constexpr std::array<std::string_view, 8> status_names{
    "solved",       "no_balance",    "no_survivable_state", "knock_limited",
    "out_of_range", "not_converged", "cancelled",           "broken_off",
};

constexpr std::string_view name(Status status) noexcept {
    return status_names[static_cast<std::size_t>(status)];
}

/// How a solve ended, in numbers alone: cheap enough for a million of them. A knock-limited point
/// is an answer, the best one that holds the margin.
struct Outcome {
    Status status = Status::not_converged;
    std::string_view worst{};  // the part whose balance is furthest off
    double residual = 0;       // of that part, as a share of its flow
    int evaluations = 0;

    bool answered() const noexcept {
        return status == Status::solved || status == Status::knock_limited;
    }
};

/// What `worst` says where no opening holds the knock margin.
inline constexpr std::string_view always_knocks = "knock";

/// Where an exception was thrown inside, which is a fault of the core and of nothing that was
/// asked.
inline constexpr Outcome broken_off{.status = Status::broken_off};

/// What `worst` says where the tyres would grow without end.
inline constexpr std::string_view outgrown_tyres = "tyres";

/// What `worst` says where no speed of the crank agrees with what slips at its torque.
inline constexpr std::string_view slip_of_belts_and_tyres = "slip";

/// What `worst` says where no flow at all balances.
inline constexpr std::string_view nothing_flows = "engine";

}  // namespace windwall::solve
