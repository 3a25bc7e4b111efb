#pragma once
#include <boost/math/tools/toms748_solve.hpp>

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <functional>

/// One equation in one unknown, by bracketing: nothing is found outside the bracket and nothing
/// is lost inside it.
namespace windwall::numerics {

struct Root {
    double x{};         // the end of the last bracket with the smaller residual
    double residual{};  // there; large where the sign changes through a pole
    int evaluations{};
    bool converged{};  // the bracket shrank to the tolerance, or the residual is zero
};

struct RootOptions {
    double absolute = 1e-12;  // of x
    double relative = 1e-12;  // of x
    int max_evaluations = 100;
};

struct Bracket {
    double low{};
    double high{};
    double residual_low{};
    double residual_high{};
    int evaluations{};
};

namespace detail {

inline bool straddles(double a, double b) { return (a <= 0 && b >= 0) || (a >= 0 && b <= 0); }

/// Calls the function, counts, and keeps the last point of each sign: the ends of the bracket.
template <class Function>
struct Watched {
    struct Point {
        double x{}, residual{};
    };
    Function& function;
    int evaluations = 0;
    Point below{}, above{};

    double operator()(double x) {
        ++evaluations;
        return note(x, function(x));
    }
    double note(double x, double residual) {
        if (residual <= 0) below = {x, residual};
        if (!(residual < 0)) above = {x, residual};  // a residual without value lands here
        return residual;
    }
    Root root(bool converged) const {
        const bool lower = std::abs(below.residual) <= std::abs(above.residual);
        const Point& end = lower ? below : above;
        return {end.x, end.residual, evaluations, converged && std::isfinite(above.residual)};
    }
};

}  // namespace detail

/// Root inside a bracket whose end residuals are known; TOMS algorithm 748 (Alefeld, Potra, Shi
/// 1995). Not converged when the signs do not differ, or the budget is spent.
template <class Function>
Root find_root(Function&& function, const Bracket& bracket, const RootOptions& options = {}) {
    namespace policies = boost::math::policies;
    using Quiet = policies::policy<policies::domain_error<policies::ignore_error>,
                                   policies::evaluation_error<policies::ignore_error>>;
    const auto [a, b, at_a, at_b, spent] = bracket;
    if (!detail::straddles(at_a, at_b)) {
        const bool first = !(std::abs(at_b) < std::abs(at_a));
        return {first ? a : b, first ? at_a : at_b, spent, false};
    }
    detail::Watched<std::remove_reference_t<Function>> watched{function, spent};
    watched.note(a, at_a);
    watched.note(b, at_b);
    const auto close = [&options](double low, double high) {
        return std::abs(high - low) <=
               options.absolute + options.relative * std::min(std::abs(low), std::abs(high));
    };
    if (at_a == 0 || at_b == 0 || close(a, b)) return watched.root(true);
    if (spent >= options.max_evaluations) return watched.root(false);

    auto iterations = static_cast<std::uintmax_t>(options.max_evaluations - spent);
    const auto [low, high] = boost::math::tools::toms748_solve(std::ref(watched), a, b, at_a, at_b,
                                                               close, iterations, Quiet());
    return watched.root(close(low, high));
}

template <class Function>
Root find_root(Function&& function, double low, double high, const RootOptions& options = {}) {
    const Bracket bracket{low, high, function(low), function(high), 2};
    return find_root(function, bracket, options);
}

}  // namespace windwall::numerics
