#include "windwall/media/joint_equilibrium.hpp"

#include "windwall/media/joint_balance.hpp"
#include "windwall/media/joint_guess.hpp"

#include <Eigen/LU>

#include <algorithm>
#include <cmath>

namespace windwall::media {
namespace {

using namespace joint;

constexpr int most_steps = 12;
constexpr double coldest = 150, hottest = 1000;  // K
constexpr double longest = 40;                   // K in one step
constexpr double near = 1e-8;                    // of a step: what it leaves is lost in rounding

/// Newton with bounds, and with liquids that come and go.
class Search {
public:
    Search(const Contents& contents, const Gas& all_liquid, double enthalpy,
           const Guess& guess) noexcept
        : contents_(contents),
          balance_(contents, all_liquid, enthalpy),
          u_(guess.unknowns),
          sought_(guess.sought) {}

    std::optional<Phases> run() noexcept {
        while (steps_ < most_steps) {
            ++steps_;
            const Vector step = newton();
            const double size = length(step);
            if (!(size < 1e100)) break;
            if (size < near) {
                if (is_complete()) return end(step);
                continue;
            }
            go(step);
        }
        return std::nullopt;
    }

private:
    /// Four by four, the inverse is quicker than factors; what it rounds the next step mends.
    Vector newton() noexcept {
        balance_.at(u_);
        Matrix& jacobian = balance_.jacobian;
        Vector& residual = balance_.residual;
        for (Eigen::Index i = 0; i < 4; ++i) {
            if (sought_[static_cast<std::size_t>(i)]) continue;
            jacobian.row(i) = Vector::Unit(i);
            residual[i] = 0;
        }
        return -(jacobian.inverse() * residual);
    }
    double length(const Vector& step) const noexcept {
        return std::abs(step[temperature]) / u_[temperature] +
               std::abs(step[ratio]) / (u_[ratio] + balance_.least_volatile) +
               std::abs(step[alcohol]) + std::abs(step[petrol]);
    }
    /// As far as the bounds. An unknown that leans on its bound belongs to a liquid that is gone.
    void go(const Vector& step) noexcept {
        const Vector before = u_;
        u_ += step;
        u_[temperature] =
            std::clamp(u_[temperature], std::max(before[temperature] - longest, coldest),
                       std::min(before[temperature] + longest, hottest));
        u_[ratio] = std::clamp(u_[ratio], 0.0, contents_.mixture);
        u_[alcohol] = std::clamp(u_[alcohol], before[alcohol] / 10, (9 + before[alcohol]) / 10);
        u_[petrol] = std::clamp(u_[petrol], before[petrol] / 10, 1.0);
        if (u_[ratio] == 0 && before[ratio] == 0) sought_[ratio] = sought_[alcohol] = false;
        if (u_[petrol] == 1 && before[petrol] == 1) sought_[petrol] = false;
    }
    /// No liquid would form that is not among those sought; else it is from now on.
    bool is_complete() noexcept {
        const bool no_mixture = contents_.mixture > 0 && !sought_[ratio];
        const bool no_petrol = contents_.petrol > 0 && !sought_[petrol];
        if (!no_mixture && !no_petrol) return true;
        const Volatility pure = volatility(contents_, u_[temperature]);
        if (no_petrol && room_for_petrol(contents_, pure) > balance_.gas) {
            sought_[petrol] = true;
            u_[petrol] = 0.9;
            return false;
        }
        if (!no_mixture) return true;
        const FirstDrop drop = first_drop(contents_, pure);
        if (drop.room <= balance_.gas) return true;
        sought_[ratio] = true;
        sought_[alcohol] = contents_.mixed;
        u_[ratio] = 0.05 * contents_.mixture;
        u_[alcohol] = drop.alcohol_share;
        return false;
    }
    /// The last step goes along the slopes, which spares another look at the vapour pressures.
    Phases end(const Vector& step) const noexcept {
        Phases found{u_[temperature] + step[temperature], {}};
        for (std::size_t i = 0; i < 4; ++i) {
            const Sloped& share = balance_.evaporated[i];
            found.evaporated[i] = contents_.moles[i] > 0
                                      ? std::clamp(share.value + share.slope.dot(step), 0.0, 1.0)
                                      : 1;
        }
        return found;
    }

    const Contents& contents_;
    Balance balance_;
    Vector u_;
    Sought sought_;
    int steps_ = 0;
};

}  // namespace

std::optional<Phases> joint_equilibrium_at_temperature(const Contents& contents,
                                                       double temperature) noexcept {
    const Guess guess = guess_at_temperature(contents, temperature);
    return Search(contents, all_liquid(contents), 0, guess).run();
}

std::optional<Phases> joint_equilibrium(const Contents& contents, double enthalpy,
                                        double all_vapour) noexcept {
    const Gas liquid = all_liquid(contents);
    const Guess guess = guess_at_enthalpy(contents, liquid, enthalpy, all_vapour);
    return Search(contents, liquid, enthalpy, guess).run();
}

}  // namespace windwall::media
