#pragma once
#include "windwall/numerics/function_ref.hpp"

#include <Eigen/Core>

#include <span>

/// A few equations in as many unknowns, solved in few evaluations and without allocation.
namespace windwall::numerics {

inline constexpr int most_unknowns = 28;

/// Bounded, so that they live on the stack.
using Vector = Eigen::Matrix<double, Eigen::Dynamic, 1, 0, most_unknowns, 1>;
using Matrix =
    Eigen::Matrix<double, Eigen::Dynamic, Eigen::Dynamic, 0, most_unknowns, most_unknowns>;

/// Fills r(x). May return NaN where the model has no meaning: the step is then shortened.
using Residual = function_ref<void(std::span<const double> x, std::span<double> r)>;

struct NewtonOptions {
    double tolerance = 1e-10;  // of the largest residual
    int max_evaluations = 200;
    std::span<const double> scale{};       // size of a change that matters, per unknown; empty: 1
    std::span<const double> step_limit{};  // largest change in one step, per unknown; empty: none
};

/// `stalled`: no step along the Newton direction lowers the residuals, or there is none.
enum class NewtonStatus { converged, stalled, too_many };

struct NewtonResult {
    NewtonStatus status{};
    int evaluations{};
    int worst{};    // index of the largest residual
    double norm{};  // its absolute value
};

/// The Jacobian kept between two solves of neighbouring problems. A warm start that brings one
/// saves the n evaluations of the differences.
struct JacobianMemory {
    Matrix value{};
    bool known = false;
};

/// Damped Newton from `x`, which ends at the best point found. The Jacobian comes from forward
/// differences, is carried along by Broyden's good update, and is renewed when progress is poor.
NewtonResult solve_newton(Residual residual, std::span<double> x, const NewtonOptions& options = {},
                          JacobianMemory* memory = nullptr);

}  // namespace windwall::numerics
