#include "windwall/engine/exhaust.hpp"

#include "windwall/media/constants.hpp"

namespace windwall::engine {
namespace {

using media::constants::reference_temperature;
// K from charge to exhaust at full load; common practice, 550 to 1050 degC in the pipe.
constexpr double heating = 800;

}  // namespace

double Exhaust::rise(double flow, double ambient_pressure, double usual_flow,
                     double charge_temperature) const noexcept {
    const double share = flow / at_flow.value_or(usual_flow);
    const double hotter = (charge_temperature + heating) / (reference_temperature + heating);
    return back_pressure * share * share * hotter * media::constants::isa_pressure /
           ambient_pressure;
}

std::span<const fields::Row> Exhaust::rows() {
    using namespace fields;
    static constexpr Row table[] = {
        with_default("back_pressure", "dp_e", at<&Exhaust::back_pressure>,
                     pressure_difference("kPa"), {0, 100}, 5,
                     "Mean pressure behind the exhaust valves above the weather, at sea level",
                     "estimate for a silencer of the trade; an open pipe has 0 to 3 kPa")
            .chosen_by("design"),
        optional("at_flow", "m_e", at<&Exhaust::at_flow>, mass_flow("g/s"), {0.5, 2000},
                 "Exhaust flow at which it was measured; where not stated, the flow of a cylinder "
                 "full of air of 1.184 kg/m3 at the rev limit"),
    };
    return table;
}

}  // namespace windwall::engine
