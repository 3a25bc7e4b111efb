#include "windwall/study/columns.hpp"

#include "windwall/solve/describe.hpp"
#include "windwall/solve/top_speed.hpp"

#include <limits>

namespace windwall::study {
namespace {

constexpr double nan = std::numeric_limits<double>::quiet_NaN();

Answers blank(std::size_t variants, std::size_t outputs) {
    const std::vector<double> missing(variants, nan);
    return {std::vector<solve::Status>(variants, solve::Status::cancelled), missing, missing,
            missing, std::vector<std::vector<double>>(outputs, missing)};
}

void read_outputs(const vehicle::Vehicle& car, const solve::Summit& summit,
                  const std::vector<std::string>& outputs, std::size_t i, Answers& answers) {
    solve::Puller puller(car);
    const solve::Pull pull = puller.at(summit.pull->point.condition.engine_speed, summit.gear);
    solve::OperatingPoint point;
    solve::describe(puller.solver().balance(), pull, point);
    for (std::size_t k = 0; k < outputs.size(); ++k) {
        const auto path =
            fields::resolve(fields::group_type<solve::OperatingPoint>, &point, outputs[k]);
        if (path) answers.outputs[k][i] = path->get(&point).value_or(nan);
    }
}

void answer(const vehicle::Vehicle& car, const std::vector<std::string>& outputs, std::size_t i,
            Answers& answers) {
    const solve::TopSpeed found = solve::top_speed(car);
    answers.status[i] = found.verdict.status;
    if (!found.verdict.answered()) return;
    answers.speed[i] = found.speed();
    answers.balance_speed[i] = found.summit.road_speed;
    answers.gear[i] = static_cast<double>(found.summit.gear + 1);
    if (!outputs.empty()) read_outputs(car, found.summit, outputs, i, answers);
}

}  // namespace

Answers solve_columns(const vehicle::Vehicle& vehicle, const Variants& variants,
                      const std::vector<std::string>& outputs, const BatchOptions& options) {
    Answers answers = blank(variants.size(), outputs.size());
    run_batch(
        variants.size(),
        [&] {
            return [&, car = vehicle](std::size_t i) mutable {
                for (std::size_t k = 0; k < variants.inputs.size(); ++k) {
                    variants.inputs[k].at(&car) = variants.values[k][i];
                }
                answer(car, outputs, i, answers);
            };
        },
        options);
    return answers;
}

}  // namespace windwall::study
