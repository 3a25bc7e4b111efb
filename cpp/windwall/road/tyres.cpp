#include "windwall/road/tyres.hpp"

#include "windwall/media/constants.hpp"
#include "windwall/road/body.hpp"
#include "windwall/road/tyre_tables.hpp"

namespace windwall::road {

using media::constants::gravity;

double rolling_radius(double diameter, double factor) noexcept { return factor * diameter / 2; }

double Tyres::rolling_radius(double speed) const noexcept {
    const double standing =
        measured_radius ? *measured_radius
                        : road::rolling_radius(read_tyre_size(size).diameter, rolling_factor);
    const double relative = speed / rise_speed;
    return standing * (1 + growth * relative * relative);
}

double Tyres::slip(double thrust, double load) const noexcept {
    return tyre_slip(thrust, load, slip_stiffness);
}

double Tyres::driven_load(double mass, double thrust) const noexcept {
    return road::driven_load(mass * gravity, thrust, weight_on_driven_axle, height_over_wheelbase,
                             driven_axle);
}

double Tyres::grip_limit(double mass) const noexcept {
    return traction_limit(mass * gravity, grip, weight_on_driven_axle, height_over_wheelbase,
                          driven_axle);
}

double Tyres::load_per_tyre(double mass, double thrust) const noexcept {
    return driven_load(mass, thrust) / (gravity * driven_tyres);
}

std::optional<double> Tyres::speed_rating() const noexcept {
    return speed_limit ? speed_limit : read_tyre_size(size).speed_limit;
}

std::optional<double> Tyres::load_rating() const noexcept {
    if (load_limit) return load_limit;
    const auto index = read_tyre_size(size).load_index;
    return index ? load_index_mass(*index) : std::nullopt;
}

std::optional<fields::Violation> Tyres::check() const {
    if (size.empty()) {
        if (measured_radius) return std::nullopt;
        return fields::Violation{"size", "State the size on the sidewall, or the rolling_radius."};
    }
    const std::string_view problem = read_tyre_size(size).problem;
    if (problem.empty()) return std::nullopt;
    return fields::Violation{
        "size", "The tyre size \"" + size + "\" is not understood: " + std::string(problem) +
                    ". Sizes look like \"155/80 R13 79T\", \"120/70-17\", \"3.50-10\" or "
                    "\"11x7.10-5\"."};
}

std::span<const fields::Row> Tyres::rows() {
    using namespace fields;
    static constexpr Row table[] = {
        text("size", at<&Tyres::size>, "Size and service description on the sidewall"),
        optional("rolling_radius", "r", at<&Tyres::measured_radius>, length("mm"), {50, 600},
                 "Measured roll-out over 2 pi, loaded; stands in for the size"),
        with_default(
            "rolling_factor", "", at<&Tyres::rolling_factor>, number(), {0.85, 1.05}, 0.015,
            "Rolling radius over half the overall diameter of the new tyre",
            "median of 70 cars of 1990, from engine revolutions per mile and overall top gear, "
            "Consumer Reports 1990"),
        with_default("growth", "", at<&Tyres::growth>, percent(), {0, 10}, 0.5,
                     "Share by which the radius has grown at 100 km/h, with the square of speed",
                     "no source; a radial tyre, whose belt hardly stretches"),
        with_default(
            "slip_stiffness", "C_s", at<&Tyres::slip_stiffness>, number(), {2, 60}, 6,
            "Thrust over weight on the driven axle for each unit of slip",
            "no source; a textbook's curve begins with 11 (Hybrid Electric Vehicles, 2nd ed., "
            "p. 70)"),
        with_default(
            "grip", "mu", at<&Tyres::grip>, number(), {0.05, 2}, 0.15,
            "Greatest thrust over weight on the driven axle",
            "0.6 to 0.8 on clean dry roads (Kentucky Transportation Center, report 178), 0.97 "
            "at the peak of a textbook's curve"),
        choice("driven_axle", at<&Tyres::driven_axle>, "Which wheels drive",
               "rear, chosen by the project"),
        with_default("weight_on_driven_axle", "", at<&Tyres::weight_on_driven_axle>, percent(),
                     {5, 100}, 5, "Share of the standing weight on the driven axle",
                     "even weight, chosen by the project"),
        whole(with_default("driven_tyres", "", at<&Tyres::driven_tyres>, number(), {1, 8}, 0,
                           "How many tyres share that weight",
                           "two on the axle, chosen by the project")),
        with_default("height_over_wheelbase", "h/L", at<&Tyres::height_over_wheelbase>, number(),
                     {0, 1}, 0.08, "Height of the centre of gravity over the wheelbase",
                     "common practice"),
        optional("speed_limit", "", at<&Tyres::speed_limit>, speed("km/h"), {5, 600},
                 "Speed the tyre is made for; stands in for the symbol in the size")
            .watching("/road/speed", "speed symbol of the tyres", rated_by<&Tyres::speed_rating>),
        optional("load_limit", "", at<&Tyres::load_limit>, mass("kg"), {10, 3000},
                 "Load one tyre is made for; stands in for the index in the size")
            .watching("/tyres/load", "load index of the tyres", rated_by<&Tyres::load_rating>),
    };
    return table;
}

}  // namespace windwall::road
