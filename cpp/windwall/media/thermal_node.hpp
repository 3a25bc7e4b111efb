#pragma once
#include <algorithm>
#include <concepts>
#include <optional>
#include <ranges>
#include <string_view>

/// What takes time to warm up. A part declares its own; a state of temperatures finds them.
namespace windwall::media {

/// Something of one temperature: what it is called within its part, how much heat a kelvin of it
/// takes, J/K, what flows into it at a temperature in K, W, with everything around it as it is at
/// one operating point, and the temperature it is stated to have, K.
template <class T>
concept ThermalNode = requires(const T& node, double temperature) {
    { node.name } -> std::convertible_to<std::string_view>;
    { node.heat_capacity } -> std::convertible_to<double>;
    { node.stated } -> std::convertible_to<std::optional<double>>;
    { node.heat_flow(temperature) }
    noexcept->std::same_as<double>;
};

/// All nodes of a part.
template <class T>
concept ThermalNodes = std::ranges::range<T> && ThermalNode<std::ranges::range_value_t<T>>;

/// What leads heat to a temperature.
struct Exchange {
    double conductance{};  // W/K
    double temperature{};  // K

    double heat_flow(double from) const noexcept { return conductance * (temperature - from); }
};

/// Two of them at once.
constexpr Exchange both(const Exchange& a, const Exchange& b) noexcept {
    const double sum = a.conductance + b.conductance;
    if (!(sum > 0)) return {0, a.temperature};
    return {sum, (a.conductance * a.temperature + b.conductance * b.temperature) / sum};
}

/// A lump between what warms it and what cools it, with heat that reaches it however warm it is.
struct LumpedNode {
    std::string_view name;
    double heat_capacity{};     // J/K
    double heat{};              // W
    double warm_conductance{};  // W/K
    double warm_temperature{};  // K
    double cold_conductance{};
    double cold_temperature{};
    std::optional<double> stated{};   // K
    bool only_cools = false;          // the cold side takes heat and gives none back
    std::optional<Exchange> still{};  // what is left while nothing turns; else the cold side

    double heat_flow(double temperature) const noexcept {
        return heat + warm_conductance * (warm_temperature - temperature) + cooling(temperature);
    }
    /// W into it while nothing burns or turns.
    double still_flow(double temperature) const noexcept {
        return still ? still->heat_flow(temperature) : cooling(temperature);
    }

private:
    double cooling(double temperature) const noexcept {
        const double flow = cold_conductance * (cold_temperature - temperature);
        return only_cools ? std::min(flow, 0.0) : flow;
    }
};

}  // namespace windwall::media
