#pragma once
#include "windwall/charge/pressure_loss.hpp"
#include "windwall/charge/surroundings.hpp"
#include "windwall/fields/row.hpp"
#include "windwall/media/stream.hpp"

#include <cmath>
#include <optional>
#include <span>
#include <string_view>

namespace windwall::charge {

/// Toy part: whole in one header, as any part may be.
struct CatchCan {
    static constexpr std::string_view kind = "catch_can";
    static constexpr std::string_view description =
        "Can in which the charge leaves the oil it carries.";

    double drop{};                     // Pa at at_flow
    double at_flow{};                  // kg/s
    std::optional<double> rated_drop;  // Pa

    media::Stream outlet(const media::Stream& in, const Surroundings&) const noexcept {
        media::Stream out = in;
        const double relative = in.gas_flow() / at_flow;
        out.pressure = pressure_after(in.pressure, drop * relative * std::abs(relative));
        return out;
    }

    static std::span<const fields::Row> rows() {
        using namespace fields;
        static constexpr Row table[] = {
            required("drop", "dp_0", at<&CatchCan::drop>, pressure_difference("kPa"), {0, 20},
                     "Pressure loss at the flow given by at_flow"),
            required("at_flow", "m_0", at<&CatchCan::at_flow>, mass_flow("g/s"), {1, 500},
                     "Air flow at which the pressure loss was measured"),
            optional("rated_drop", "", at<&CatchCan::rated_drop>, pressure_difference("kPa"),
                     {0.1, 50}, "Pressure loss that the can is made for")
                .watching("pressure_drop", "the can folds"),
        };
        return table;
    }
};

}  // namespace windwall::charge
