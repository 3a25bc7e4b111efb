#include "windwall/numerics/newton.hpp"

#include <Eigen/LU>
#include <Eigen/QR>

#include <algorithm>
#include <cmath>
#include <limits>
#include <stdexcept>

namespace windwall::numerics {
namespace {

constexpr double sufficient_decrease = 1e-4;
constexpr double good_progress = 0.2;  // of what a full step promises; else renew the Jacobian
constexpr double singular = 1e-13;     // smallest over largest pivot
constexpr double smallest_step = 1e-6;
constexpr double much_left = 0.1;    // of the residuals, behind a step
constexpr double little_new = 0.03;  // of a step, at right angles to earlier ones

/// Where there is no inverse; not often.
Vector least_squares(const Matrix& jacobian, const Vector& residuals) {
    return -Eigen::ColPivHouseholderQR<Matrix>(jacobian).solve(residuals);
}

/// For N unknowns, known when it is compiled: the algebra of a few costs more in loops than in
/// sums.
template <int N>
class Newton {
    static constexpr int most = N == Eigen::Dynamic ? most_unknowns : N;
    using Vector = Eigen::Matrix<double, N, 1, 0, most, 1>;
    using Matrix = Eigen::Matrix<double, N, N, 0, most, most>;

public:
    Newton(Residual residual, std::span<double> x, const NewtonOptions& options,
           JacobianMemory& memory)
        : residual_(residual),
          out_(x),
          options_(options),
          J_(memory.value.data(), memory.value.rows(), memory.value.cols()),
          known_(memory.known) {
        const auto n = static_cast<Eigen::Index>(x.size());
        x_ = Eigen::Map<const Eigen::VectorXd>(x.data(), n);
        r_.resize(n);
        told_.resize(n, n);
        trial_x_.resize(n);
        trial_r_.resize(n);
        scale_ = Vector::Ones(n);
        if (!options.scale.empty())
            scale_ = Eigen::Map<const Eigen::VectorXd>(options.scale.data(), n);
    }

    NewtonResult solve() {
        evaluate(x_, r_);
        bool fresh = false;
        while (!converged()) {
            if (!std::isfinite(merit(r_))) return finish(NewtonStatus::stalled);
            if (!known_) {
                if (!differentiate()) return finish(stopped());
                known_ = fresh = true;
            }
            const bool stepped = find_direction(fresh) && search(fresh);
            if (out_of_budget() && !converged()) return finish(NewtonStatus::too_many);
            if (!stepped && fresh) return finish(NewtonStatus::stalled);
            known_ = stepped && good_step_;
            fresh = false;
        }
        return finish(NewtonStatus::converged);
    }

    bool jacobian_known() const { return known_; }

private:
    void evaluate(const Vector& x, Vector& r) {
        residual_({x.data(), static_cast<std::size_t>(x.size())},
                  {r.data(), static_cast<std::size_t>(r.size())});
        ++evaluations_;
    }

    static double merit(const Vector& r) { return r.norm(); }
    bool converged() const { return r_.template lpNorm<Eigen::Infinity>() <= options_.tolerance; }
    bool out_of_budget() const { return evaluations_ >= options_.max_evaluations; }
    NewtonStatus stopped() const {
        return out_of_budget() ? NewtonStatus::too_many : NewtonStatus::stalled;
    }

    /// Forward differences; backward where the model has no value ahead.
    bool differentiate() {
        const double root_epsilon = std::sqrt(std::numeric_limits<double>::epsilon());
        for (Eigen::Index i = 0; i < x_.size(); ++i) {
            double step = root_epsilon * std::max(std::abs(x_[i]), scale_[i]);
            for (int side = 0; side < 2; ++side, step = -step) {
                if (out_of_budget()) return false;
                trial_x_ = x_;
                trial_x_[i] += step;
                evaluate(trial_x_, trial_r_);
                if (trial_r_.allFinite()) break;
            }
            if (!trial_r_.allFinite()) return false;
            J_.col(i) = (trial_r_ - r_) / (trial_x_[i] - x_[i]);
        }
        return true;
    }

    /// Newton direction within the step limits. A singular Jacobian that is not fresh is renewed;
    /// a fresh one gives the least-squares direction.
    bool find_direction(bool fresh) {
        const Eigen::PartialPivLU<Matrix> lu(J_);
        const auto pivots = lu.matrixLU().diagonal().cwiseAbs();
        if (pivots.minCoeff() > singular * pivots.maxCoeff())
            direction_ = -lu.solve(r_);
        else if (fresh)
            direction_ = least_squares(J_, r_);
        else
            return false;
        limit_direction();
        return direction_.allFinite();
    }

    void limit_direction() {
        fraction_ = 1;
        for (std::size_t i = 0; i < options_.step_limit.size(); ++i) {
            const double change = std::abs(direction_[static_cast<Eigen::Index>(i)]);
            if (change * fraction_ > options_.step_limit[i])
                fraction_ = options_.step_limit[i] / change;
        }
        direction_ *= fraction_;
    }

    /// Backtracks until the residuals fall, by the quadratic through both ends and the slope.
    bool search(bool fresh) {
        const double start = merit(r_);
        const double least = fresh ? smallest_step : 0.2;  // an old direction is not worth more
        for (double length = 1; length >= least;) {
            if (out_of_budget()) return false;
            trial_x_ = x_ + length * direction_;
            evaluate(trial_x_, trial_r_);
            const double end = merit(trial_r_);
            const double promised = length * fraction_;
            if (end <= (1 - sufficient_decrease * promised) * start) {
                good_step_ = end <= (1 - good_progress * promised) * start;
                accept();
                return true;
            }
            length *= shorten(start, end, promised);
        }
        return false;
    }

    /// Minimiser of the parabola of the squared norm, kept within a tenth and a half.
    static double shorten(double start, double end, double promised) {
        if (!std::isfinite(end)) return 0.25;
        const double growth = (end / start) * (end / start) - 1 + 2 * promised;
        return std::clamp(promised / growth, 0.1, 0.5);
    }

    /// Broyden's good update in scaled unknowns, then moves on. Of the step only what is new in it
    /// counts, so that what earlier steps have told is kept (projected updates, Gay and Schnabel),
    /// unless it leaves much: a kink lies between, and beyond it nothing of that holds.
    void accept() {
        const Vector step = trial_x_ - x_;
        if (merit(trial_r_) > much_left * merit(r_)) told_count_ = 0;
        const Vector fresh = unlike_earlier(step.cwiseQuotient(scale_));
        const double length = fresh.squaredNorm();
        if (length > 0) {
            const Vector error = (trial_r_ - r_ - J_ * step) / length;
            J_.noalias() += error * fresh.cwiseQuotient(scale_).transpose();
        }
        x_ = trial_x_;
        r_ = trial_r_;
    }

    /// What is left of a scaled step at right angles to those before it; all of it where that is
    /// little, from where the memory of steps begins anew.
    Vector unlike_earlier(const Vector& step) {
        Vector left = step;
        for (Eigen::Index i = 0; i < told_count_; ++i)
            left -= told_.col(i).dot(left) * told_.col(i);
        if (told_count_ == x_.size() || left.norm() < little_new * step.norm()) {
            told_count_ = 0;
            left = step;
        }
        if (left.norm() > 0) told_.col(told_count_++) = left.normalized();
        return left;
    }

    NewtonResult finish(NewtonStatus status) {
        std::copy(x_.data(), x_.data() + x_.size(), out_.begin());
        Eigen::Index worst = 0;
        const double norm = r_.cwiseAbs().template maxCoeff<Eigen::PropagateNaN>(&worst);
        return {status, evaluations_, static_cast<int>(worst), norm};
    }

    Residual residual_;
    std::span<double> out_;
    const NewtonOptions& options_;
    Eigen::Map<Matrix> J_;
    bool known_;
    Vector x_, r_, trial_x_, trial_r_, direction_, scale_;
    Matrix told_;                  // directions, of length one, that steps have told J_ of
    Eigen::Index told_count_ = 0;  // of them
    double fraction_ = 1;          // of the full Newton step that the limits leave
    bool good_step_ = true;
    int evaluations_ = 0;
};

/// By the number of unknowns: of the sizes named, the first that fits.
template <int Size, int... Others>
NewtonResult solve_of_size(Residual residual, std::span<double> x, const NewtonOptions& options,
                           JacobianMemory& memory) {
    if constexpr (sizeof...(Others) > 0)
        if (x.size() != Size) return solve_of_size<Others...>(residual, x, options, memory);
    Newton<Size> newton(residual, x, options, memory);
    const NewtonResult result = newton.solve();
    memory.known = newton.jacobian_known();
    return result;
}

}  // namespace

NewtonResult solve_newton(Residual residual, std::span<double> x, const NewtonOptions& options,
                          JacobianMemory* memory) {
    if (x.empty() || x.size() > most_unknowns)
        throw std::invalid_argument("solve_newton takes 1 to 28 unknowns");
    JacobianMemory own;
    JacobianMemory& kept = memory ? *memory : own;
    const auto n = static_cast<Eigen::Index>(x.size());
    if (kept.value.rows() != n) {
        kept.value.resize(n, n);
        kept.known = false;
    }
    // A throttle and a blower, with a switch, held off knock, with a bypass; and all others.
    return solve_of_size<3, 4, 5, 7, Eigen::Dynamic>(residual, x, options, kept);
}

}  // namespace windwall::numerics
