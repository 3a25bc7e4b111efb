// The only file that knows Boost.Odeint.
#include "windwall/solve/drive/integrator.hpp"

#include <boost/numeric/odeint/stepper/controlled_runge_kutta.hpp>
#include <boost/numeric/odeint/stepper/dense_output_runge_kutta.hpp>
#include <boost/numeric/odeint/stepper/generation.hpp>
#include <boost/numeric/odeint/stepper/runge_kutta_dopri5.hpp>

#include <algorithm>

namespace windwall::solve {
namespace {

namespace odeint = boost::numeric::odeint;
using State = std::vector<double>;
using Method = odeint::runge_kutta_dopri5<State>;
using Dense = odeint::result_of::make_dense_output<Method>::type;

}  // namespace

struct Integrator::Stepper {
    Dense dense;
    double step = 0.1;
};

Integrator::Integrator(double tolerance)
    : stepper_(std::make_unique<Stepper>(
          Stepper{odeint::make_dense_output(tolerance, tolerance, Method())})) {}

Integrator::~Integrator() = default;

void Integrator::start(double time, std::span<const double> state, double step) {
    stepper_->step = step;
    stepper_->dense.initialize(State(state.begin(), state.end()), time, step);
}

bool Integrator::step(Rates rates, double longest) {
    Dense& dense = stepper_->dense;
    if (dense.current_time_step() > longest)
        dense.initialize(dense.current_state(), dense.current_time(), longest);
    try {
        dense.do_step(
            [&](const State& state, State& rate, double time) { rates(time, state, rate); });
    } catch (const odeint::odeint_error&) {
        return false;
    }
    return true;
}

double Integrator::before() const noexcept { return stepper_->dense.previous_time(); }
double Integrator::time() const noexcept { return stepper_->dense.current_time(); }
double Integrator::next_step() const noexcept { return stepper_->dense.current_time_step(); }

std::span<const double> Integrator::state() const noexcept {
    return stepper_->dense.current_state();
}

void Integrator::state_at(double time, std::vector<double>& into) const {
    into.resize(stepper_->dense.current_state().size());
    stepper_->dense.calc_state(time, into);
}

}  // namespace windwall::solve
