#pragma once
#include "windwall/numerics/function_ref.hpp"

#include <memory>
#include <span>
#include <vector>

namespace windwall::solve {

/// Writes the rates of a state at a time in s.
using Rates = numerics::function_ref<void(double, std::span<const double>, std::span<double>)>;

/// Steps through time after Dormand and Prince, fifth order with an error estimate of fourth, and
/// knows the state anywhere within the last step.
class Integrator {
public:
    /// `tolerance` of every number of the state, of its size and of one unit of it.
    explicit Integrator(double tolerance);
    ~Integrator();

    /// Goes on from a state at a time in s; the first step is tried with `step` s.
    void start(double time, std::span<const double> state, double step);
    /// One step of its own choice, no longer than `longest` s; false where none is short enough.
    bool step(Rates rates, double longest);

    double before() const noexcept;  // s, where the last step began
    double time() const noexcept;    // and where it ended
    std::span<const double> state() const noexcept;
    /// The state at a time within the last step.
    void state_at(double time, std::vector<double>& into) const;
    double next_step() const noexcept;

private:
    struct Stepper;
    std::unique_ptr<Stepper> stepper_;
};

}  // namespace windwall::solve
