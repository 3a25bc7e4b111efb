#pragma once
#include "windwall/fields/member.hpp"

#include <cstddef>
#include <span>

namespace windwall::charge {

/// One place on the speed line of a centrifugal compressor, at the reference state of its map.
struct CharacteristicPoint {
    double flow{};  // kg/s
    double head{};  // J/kg, isentropic
    double work{};  // J/kg, what the impeller gives the gas
};

/// Flow and work of a compressor that is asked for a head, at the reference state of its map.
struct CharacteristicReading {
    double flow{};  // kg/s
    double work{};  // J/kg
    double beta{};  // 0 at the surge end of the line, 1 at the choke end, held beyond
    bool surging{};
    bool choked{};
};

/// kg/s that the same compressor would pass at the reference state.
double corrected_flow(double flow, double pressure, double temperature, double reference_pressure,
                      double reference_temperature) noexcept;
/// Rotor speed that goes with the same Mach number at the reference temperature, rad/s.
double corrected_speed(double speed, double temperature, double reference_temperature) noexcept;
/// Isentropic head of a pressure ratio, J/kg, where the heat capacity, J/(kg K), stays what it is.
double isentropic_head(double pressure_ratio, double temperature, double heat_capacity,
                       double gamma) noexcept;

/// Beyond the surge end of a line: with a head that exceeds the line's highest by a share x the
/// flow goes on falling, turns back at x = 1/3 and never by more than three times the surge flow,
/// at the efficiency of the surge end. It is there for a solver to pass through, and flagged.
CharacteristicReading beyond_surge(const CharacteristicPoint& end, double head) noexcept;
/// Beyond the choke end: the flow grows by a quarter of itself at most as the head falls to
/// nothing and below; the work stays.
CharacteristicReading beyond_choke(const CharacteristicPoint& end, double surge_head,
                                   double head) noexcept;

/// Finds the head on a speed line given as `line(beta)`, whose head falls from 0 to 1.
template <class Line>
CharacteristicReading read_line(const Line& line, double head) noexcept {
    const CharacteristicPoint surge = line(0.0), choke = line(1.0);
    if (head > surge.head) return beyond_surge(surge, head);
    if (head < choke.head) return beyond_choke(choke, surge.head, head);
    double low = 0, high = 1;
    for (int i = 0; i < 50; ++i) {
        const double middle = 0.5 * (low + high);
        (line(middle).head > head ? low : high) = middle;
    }
    const double beta = 0.5 * (low + high);
    const CharacteristicPoint at = line(beta);
    return {at.flow, at.work, beta, false, false};
}

/// A measured map: speed, flow, pressure ratio and efficiency in four columns, line by line with
/// rising speed, each line from surge to choke.
class MeasuredMap {
public:
    MeasuredMap(const fields::Columns& table, double reference_temperature) noexcept
        : table_(&table), temperature_(reference_temperature) {}

    /// Between two lines at one beta the flow over the speed, and head and work over its square,
    /// are linear in speed; beyond the slowest and the fastest line they keep their values there.
    CharacteristicPoint at(double speed, double beta) const noexcept;
    double slowest() const noexcept { return table_->column[0].front(); }
    double fastest() const noexcept { return table_->column[0].back(); }

private:
    struct Line {
        std::size_t first{}, last{};  // row numbers
    };
    Line line_from(std::size_t first) const noexcept;
    CharacteristicPoint row(std::size_t number) const noexcept;
    CharacteristicPoint on(const Line& line, double beta) const noexcept;  // per speed, squared

    const fields::Columns* table_;
    double temperature_;
};

/// A centrifugal compressor of which only the impeller is known: head sigma U2 at the design flow,
/// one line for all speeds by the fan laws.
struct ImpellerEstimate {
    double diameter{};          // m
    double slip_factor{};       // work over U2 at the design flow
    double efficiency{};        // there, isentropic
    double flow_coefficient{};  // design flow over density, disc area and U
    double density{};           // kg/m3 at the reference state

    CharacteristicPoint at(double speed, double beta) const noexcept;
};

}  // namespace windwall::charge
