#include "windwall/charge/duct.hpp"

#include "windwall/charge/pipe_friction.hpp"
#include "windwall/charge/pressure_loss.hpp"

namespace windwall::charge {

media::Stream Duct::outlet(const media::Stream& in, const Around&) const noexcept {
    media::Stream out = in;
    const double loss =
        duct_pressure_drop(in.gas_flow(), in.density(), air_viscosity(in.temperature), length, bore,
                           loss_coefficient, roughness);
    out.pressure = pressure_after(in.pressure, loss);
    return out;
}

std::span<const fields::Row> Duct::rows() {
    using namespace fields;
    static constexpr Row table[] = {
        required("length", "L", at<&Duct::length>, fields::length("mm"), {0, 10000},
                 "Length along the middle of the pipe"),
        required("bore", "D", at<&Duct::bore>, fields::length("mm"), {8, 200},
                 "Inside diameter of the pipe"),
        usual("loss_coefficient", "K", at<&Duct::loss_coefficient>, number(), {0, 20}, 0.2,
              "Loss coefficients of all bends and steps together, on the pipe's velocity",
              "one bend of 90 degrees with a radius of 1.0 to 1.5 bores: 0.25 to 0.36 after "
              "Rennels and Miller"),
        usual("roughness", "eps", at<&Duct::roughness>, fields::length("mm"), {0, 3}, 0.015,
              "Height of the wall's roughness", "hose, from memory, to be confirmed"),
    };
    return table;
}

}  // namespace windwall::charge
