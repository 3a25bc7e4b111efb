#include "windwall/study/columns.hpp"

#include "windwall/solve/full_throttle/top_speed.hpp"
#include "windwall/solve/point/guarded.hpp"
#include "windwall/solve/results/describe.hpp"
#include "windwall/study/result_reader.hpp"

#include <limits>

namespace windwall::study {
namespace {

constexpr double nan = std::numeric_limits<double>::quiet_NaN();

AnswerColumns blank(std::size_t variants, std::size_t outputs, solve::Status status) {
    const std::vector<double> missing(variants, nan);
    return {std::vector<solve::Status>(variants, status), missing, missing, missing,
            std::vector<std::vector<double>>(outputs, missing)};
}

/// The results one worker is asked for.
class Outputs {
public:
    explicit Outputs(const std::vector<std::string>& addresses) : results_(addresses) {}

    void read(const vehicle::Vehicle& car, const solve::EquilibriumSpeed& equilibrium,
              std::size_t i, AnswerColumns& answers) {
        if (results_.size() == 0) return;
        solve::VehicleSolver solver(car);
        const solve::FullThrottlePoint full_throttle =
            solver.at({equilibrium.full_throttle->point.condition.engine_speed,
                       equilibrium.full_throttle->gear_state()});
        solve::describe(solver.point_solver().balance(), full_throttle, point_);
        for (std::size_t k = 0; k < results_.size(); ++k)
            answers.outputs[k][i] = results_.read(k, point_);
    }

private:
    ResultReader results_;
    solve::OperatingPoint point_;
};

solve::Status answer(const vehicle::Vehicle& car, Outputs& outputs, std::size_t i,
                     AnswerColumns& answers) {
    const solve::TopSpeed found = solve::top_speed(car);
    if (!found.outcome.answered()) return found.outcome.status;
    outputs.read(car, found.equilibrium, i, answers);
    answers.speed[i] = found.speed();
    answers.balance_speed[i] = found.equilibrium.road_speed;
    answers.gear[i] = static_cast<double>(found.equilibrium.gear + 1);
    return found.outcome.status;
}

AnswerColumns solved(const vehicle::Vehicle& vehicle, const Variants& variants,
                     const std::vector<std::string>& outputs, const BatchOptions& options) {
    AnswerColumns answers = blank(variants.size(), outputs.size(), solve::Status::cancelled);
    run_batch(
        variants.size(),
        [&] {
            return [&, car = vehicle, asked = Outputs(outputs)](std::size_t i) mutable {
                for (std::size_t k = 0; k < variants.inputs.size(); ++k) {
                    variants.inputs[k].at(&car) = variants.values[k][i];
                }
                answers.status[i] = solve::guarded([&] { return answer(car, asked, i, answers); },
                                                   [] { return solve::Status::broken_off; });
            };
        },
        options);
    return answers;
}

}  // namespace

std::span<const fields::Row> AnswerColumns::rows() {
    using namespace fields;
    using A = AnswerColumns;
    static constexpr Row table[] = {
        result("speed", "v", at<&A::speed>, fields::speed("km/h"),
               "Speed at the end of the goal's road where one is named, else the balance speed"),
        result("balance_speed", "v", at<&A::balance_speed>, fields::speed("km/h"),
               "Speed where full throttle stops accelerating"),
        result("gear", "g", at<&A::gear>, number(), "Gear in use there, counted from 1"),
    };
    return table;
}

AnswerColumns solve_columns(const vehicle::Vehicle& vehicle, const Variants& variants,
                            const std::vector<std::string>& outputs, const BatchOptions& options) {
    return solve::guarded(
        [&] { return solved(vehicle, variants, outputs, options); },
        [&] { return blank(variants.size(), outputs.size(), solve::Status::broken_off); });
}

}  // namespace windwall::study
