#include "windwall/charge/characteristic.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

namespace windwall::charge {
namespace {

// Air on a compressor map: an ideal gas of heat capacity ratio 1.4.
constexpr double map_gamma = 1.4;
constexpr double map_heat_capacity = 287.048 * map_gamma / (map_gamma - 1);

double between(double a, double b, double part) noexcept { return a + part * (b - a); }

CharacteristicPoint between(const CharacteristicPoint& a, const CharacteristicPoint& b,
                            double part) noexcept {
    return {between(a.flow, b.flow, part), between(a.head, b.head, part),
            between(a.work, b.work, part)};
}

CharacteristicPoint at_speed(const CharacteristicPoint& unit, double speed) noexcept {
    return {unit.flow * speed, unit.head * speed * speed, unit.work * speed * speed};
}

}  // namespace

double corrected_flow(double flow, double pressure, double temperature, double reference_pressure,
                      double reference_temperature) noexcept {
    return flow * std::sqrt(temperature / reference_temperature) / (pressure / reference_pressure);
}

double corrected_speed(double speed, double temperature, double reference_temperature) noexcept {
    return speed / std::sqrt(temperature / reference_temperature);
}

double isentropic_head(double pressure_ratio, double temperature, double heat_capacity,
                       double gamma) noexcept {
    return heat_capacity * temperature * (std::pow(pressure_ratio, (gamma - 1) / gamma) - 1);
}

CharacteristicReading beyond_surge(const CharacteristicPoint& end, double head) noexcept {
    const double x = head / end.head - 1;
    return {end.flow * (1 - 4 * x / (1 + x)), end.work * (1 + x), 0, true, false};
}

CharacteristicReading beyond_choke(const CharacteristicPoint& end, double surge_head,
                                   double head) noexcept {
    const double y = (end.head - head) / surge_head;
    return {end.flow * (1 + 0.25 * y / (1 + y)), end.work, 1, false, true};
}

MeasuredMap::Line MeasuredMap::line_from(std::size_t first) const noexcept {
    const auto& speeds = table_->column[0];
    Line line{first, first};
    while (line.last + 1 < speeds.size() && speeds[line.last + 1] == speeds[first])
        ++line.last;
    return line;
}

CharacteristicPoint MeasuredMap::row(std::size_t number) const noexcept {
    const auto& column = table_->column;
    const double speed = column[0][number];
    const double head =
        isentropic_head(column[2][number], temperature_, map_heat_capacity, map_gamma);
    return {column[1][number] / speed, head / (speed * speed),
            head / column[3][number] / (speed * speed)};
}

CharacteristicPoint MeasuredMap::on(const Line& line, double beta) const noexcept {
    const double place = beta * static_cast<double>(line.last - line.first);
    const std::size_t step = std::min(static_cast<std::size_t>(place),
                                      line.last - line.first - (line.last > line.first));
    const std::size_t next = std::min(line.first + step + 1, line.last);
    return between(row(line.first + step), row(next), place - static_cast<double>(step));
}

CharacteristicPoint MeasuredMap::at(double speed, double beta) const noexcept {
    const auto& speeds = table_->column[0];
    Line slower = line_from(0), faster = slower;
    while (speeds[faster.first] < speed && faster.last + 1 < speeds.size()) {
        slower = faster;
        faster = line_from(faster.last + 1);
    }
    const double from = speeds[slower.first], to = speeds[faster.first];
    const double part = to > from ? std::clamp((speed - from) / (to - from), 0.0, 1.0) : 1;
    return at_speed(between(on(slower, beta), on(faster, beta), part), speed);
}

CharacteristicPoint ImpellerEstimate::at(double speed, double beta) const noexcept {
    // Shares of design flow, of the work there and of the efficiency there from surge to choke.
    // No source: the shape that maps of compressors have.
    constexpr std::array<double, 5> flows{0.55, 0.80, 1.00, 1.25, 1.50};
    constexpr std::array<double, 5> efficiencies{0.94, 0.985, 1.00, 0.95, 0.78};
    constexpr double fall_of_work = 0.25;  // of the work, for a design flow more
    const double place = beta * (flows.size() - 1);
    const std::size_t step = std::min(static_cast<std::size_t>(place), flows.size() - 2);
    const double part = place - static_cast<double>(step);
    const double flow = between(flows[step], flows[step + 1], part);
    const double share = between(efficiencies[step], efficiencies[step + 1], part);

    const double tip_speed = 0.5 * diameter * speed;
    const double disc = std::numbers::pi / 4 * diameter * diameter;
    const double work = slip_factor * tip_speed * tip_speed * (1 + fall_of_work * (1 - flow));
    return {flow * flow_coefficient * density * disc * tip_speed, work * efficiency * share, work};
}

}  // namespace windwall::charge
