#pragma once
#include "windwall/numerics/newton.hpp"

#include <array>
#include <cstddef>
#include <span>
#include <string_view>

namespace windwall::vehicle {

/// One number that a balance has to find. The block that declares it adds one residual for it,
/// which has the same number and vanishes in the balance.
struct Unknown {
    std::string_view owner;   // "engine", the id of a part, or the name of a block
    std::string_view name;    // what it is
    double guess = 0;         // where a cold start knows nothing better
    double scale = 1;         // a change that matters
    double step_limit = 0.5;  // largest change in one step; of a logarithm, a factor of 1.65
};

/// All unknowns of a balance in the order they were declared. A declaration gives the number under
/// which its block finds the unknown and its residual from then on. No memory of the heap.
class Unknowns {
public:
    static constexpr std::size_t most = numerics::most_unknowns;

    std::size_t declare(const Unknown& unknown) noexcept {
        if (count_ < most) {
            all_[count_] = unknown;
            scales_[count_] = unknown.scale;
            step_limits_[count_] = unknown.step_limit;
        }
        return count_++;
    }
    /// Forgets those declared since there were `count`.
    void shrink(std::size_t count) noexcept { count_ = count; }

    std::size_t size() const noexcept { return count_; }
    const Unknown& operator[](std::size_t number) const noexcept { return all_[number]; }
    std::span<const Unknown> all() const noexcept { return {all_.data(), count_}; }
    std::span<const double> scales() const noexcept { return {scales_.data(), count_}; }
    std::span<const double> step_limits() const noexcept { return {step_limits_.data(), count_}; }

private:
    std::array<Unknown, most> all_{};
    std::array<double, most> scales_{};
    std::array<double, most> step_limits_{};
    std::size_t count_ = 0;
};

}  // namespace windwall::vehicle
