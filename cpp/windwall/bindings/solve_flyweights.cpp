#include "windwall/bindings/rows_values.hpp"
#include "windwall/bindings/stated.hpp"
#include "windwall/scenario/scenario.hpp"
#include "windwall/solve/answer/flyweights.hpp"

#include <pybind11/stl.h>

#include <map>
#include <string>

namespace windwall::bindings {

namespace py = pybind11;
using py::literals::operator""_a;
using scenario::Scenario;

namespace {

/// What may be wanted of a belt drive, by rows like everything else.
struct WantedShift {
    static constexpr std::string_view description = "Where a belt drive is to hold the engine.";
    double shift_speed{};
    std::optional<double> shift_end_speed;
    std::optional<double> engagement_speed;

    static std::span<const fields::Row> rows() {
        using namespace fields;
        static constexpr Row table[] = {
            required("shift_speed", "N_s", at<&WantedShift::shift_speed>, angular_speed("rpm"),
                     {500, 20000}, "Engine speed where it begins to shift"),
            optional("shift_end_speed", "N_s1", at<&WantedShift::shift_end_speed>,
                     angular_speed("rpm"), {500, 20000}, "Engine speed where it has shifted"),
            optional("engagement_speed", "N_e", at<&WantedShift::engagement_speed>,
                     angular_speed("rpm"), {0, 12000}, "Engine speed at which it grips the belt"),
        };
        return table;
    }
};

WantedShift checked(const Scenario& scenario, const std::map<std::string, Stated>& stated) {
    const auto wanted = question<WantedShift>(stated);
    if (!solve::has_flyweights(scenario.vehicle))
        throw WrongInput("driveline",
                         "no belt drive here states its flyweights and torque_cam, so none can be "
                         "fitted");
    if (wanted.engagement_speed >= wanted.shift_speed)
        throw WrongInput("engagement_speed",
                         "a belt is gripped before it shifts: a speed below "
                         "shift_speed is expected");
    return wanted;
}

py::dict fit_flyweights(const Scenario& scenario, const std::map<std::string, Stated>& stated) {
    const WantedShift wanted = checked(scenario, stated);
    solve::FlyweightFit answer;
    {
        const py::gil_scoped_release others_run;
        answer = solve::answer_flyweights(
            scenario.vehicle,
            {wanted.shift_speed, wanted.shift_end_speed, wanted.engagement_speed});
    }
    return values_of(answer);
}

}  // namespace

void bind_flyweights(py::module_& module) {
    module.def("fit_flyweights", &fit_flyweights, "scenario"_a, "stated"_a,
               "Weights and spring of the belt drive for wanted engine speeds.");
    module.def(
        "flyweights_question_rows", [] { return rows_of(fields::group_type<WantedShift>); },
        "What may be wanted of them.");
}

}  // namespace windwall::bindings
