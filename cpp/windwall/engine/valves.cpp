#include "windwall/engine/valves.hpp"

#include "windwall/engine/usual.hpp"
#include "windwall/numerics/table.hpp"

#include <algorithm>
#include <array>

namespace windwall::engine {
namespace {

using numerics::Table;

constexpr double first_closing = 20 * degree, step_of_closing = 20 * degree;
constexpr double last_index = 1.2;

/// Volumetric efficiency relative to the best of its row.
Table relative(std::vector<double> filling) {
    const double best = *std::max_element(filling.begin(), filling.end());
    for (double& value : filling)
        value /= best;
    return {{0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 1.0, last_index},
            std::move(filling),
            numerics::Interpolation::monotone};
}

// Quasi-steady filling through an isentropic orifice whose area follows a squared sine from 15
// degrees before top dead centre; ratio 9, exhaust at intake pressure, no ram, no heat.
const std::array<Table, 3>& curves() {
    static const std::array<Table, 3> table{
        relative({.989, .971, .945, .911, .870, .823, .771, .664, .567}),
        relative({.978, .973, .962, .944, .917, .879, .831, .722, .619}),
        relative({.944, .944, .937, .926, .911, .891, .860, .768, .667}),
    };
    return table;
}

/// Past the table the valve is choked through the stroke: a fixed flow shared by more strokes.
double filling_on(const Table& curve, double index) {
    if (index <= last_index) return curve.at(index).value;
    return curve.at(last_index).value * last_index / index;
}

}  // namespace

double mach_filling(double mach_index, double intake_closing) noexcept {
    const double place = std::clamp((intake_closing - first_closing) / step_of_closing, 0.0, 2.0);
    const std::size_t row = place < 1 ? 0 : 1;
    const double part = place - static_cast<double>(row);
    return (1 - part) * filling_on(curves()[row], mach_index) +
           part * filling_on(curves()[row + 1], mach_index);
}

std::span<const fields::Row> Valves::rows() {
    using namespace fields;
    static constexpr Row table[] = {
        whole(with_default("per_side", "n_v", at<&Valves::per_side>, number(), {1, 3}, 0,
                           "Intake valves of one cylinder, and as many exhaust valves",
                           "the plainest head, chosen by the project; count yours")
                  .chosen_by("design")),
        with_default("intake_ratio", "r_i", at<&Valves::intake_ratio>, number(), {0.2, 0.7}, 0.04,
                     "Head diameter of one intake valve as a share of the bore",
                     "between industrial engines, 0.42, and two-valve motorcycles, 0.52; estimate")
            .chosen_by("design"),
        with_default("exhaust_ratio", "r_e", at<&Valves::exhaust_ratio>, number(), {0.2, 0.7}, 0.04,
                     "Head diameter of one exhaust valve as a share of the bore",
                     "between industrial engines, 0.36, and two-valve motorcycles, 0.44; estimate")
            .chosen_by("design"),
        with_default(
            "flow_coefficient", "C_i", at<&Valves::flow_coefficient>, number(), {0.1, 0.6}, 0.06,
            "Mean flow area of an open intake valve as a share of its head's area",
            "no source; filling then falls quickly beyond an index of 0.5, as it should (JSME "
            "dictionary 11:1002813)"),
        with_default(
            "intake_closing", "a_i", at<&Valves::intake_closing>, angle("deg"), {0, 90}, 10,
            "Crank angle after bottom dead centre at which the intake valve closes; the model "
            "knows 20 to 60 degrees and holds its ends",
            "common practice")
            .chosen_by("design"),
        with_default("flow_loss", "s_v", at<&Valves::flow_loss>, number(), {0, 3}, 0.3,
                     "Factor on the pumping work of the valves",
                     "no source; 1 is the form of SAE 890836, of which the constant was not read"),
    };
    return table;
}

}  // namespace windwall::engine
