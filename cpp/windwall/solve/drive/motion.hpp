#pragma once
#include "windwall/road/road_load.hpp"
#include "windwall/solve/drive/layout.hpp"
#include "windwall/solve/drive/mode.hpp"
#include "windwall/solve/part_load/idle.hpp"
#include "windwall/solve/point/point.hpp"
#include "windwall/vehicle/outing/outing.hpp"

#include <algorithm>
#include <array>
#include <span>
#include <vector>

namespace windwall::solve {

/// Slope and wind at one place of the road.
struct Place {
    double grade{};
    double headwind{};  // m/s
};

/// By how much crank and wheels come apart though the part between them passed all that it holds,
/// rad/s2, or N m while a variator shifts: the crank running ahead, or falling behind; below 0
/// where it would not.
struct Parting {
    double runs_ahead = -1, falls_behind = -1;

    double beyond() const noexcept { return std::max(runs_ahead, falls_behind); }
};

/// Everything about one moment of a drive that its state and its mode decide.
struct Moment {
    Point point;  // of the engine; blank where it does not run
    bool answered = true;
    double road_speed{}, acceleration{};
    double engine_speed{}, engine_acceleration{};  // rad/s, rad/s2
    driveline::GearState gear_state;
    double wanted_position{};  // of a variator that shifts, beyond 0 and 1 too
    double gripping_speed{};   // rad/s, of the crank, at which nothing slips
    double torque{};           // N m that the engine gives for the driveline
    double passed{};           // in gear: what is left of it as the crank speeds up with the road
    double wanted_thrust{}, thrust{};  // N, of what turns too, before and after the tyres' grip
    double most_thrust{};              // that the tyres' grip allows
    double tyre_slip{};
    double unsettled{};    // share by which the crank's speed still went to and fro
    double wheel_power{};  // W
    road::RoadLoad load;
    std::array<double, energies> power{};  // W, by Energy
    double fuel_flow{}, liquid_flow{};     // kg/s
    std::vector<double> heating;           // K/s of every node
    struct Pump {
        double margin{};                        // of its switch, above 0 where it is on
        double running_rate{}, filling_rate{};  // 1/s
    };
    std::vector<Pump> pumps;
};

/// The equations of motion, of heat and of liquid of one vehicle. The workspace of one thread; the
/// vehicle is its own, since wind, slope and bonnet change along the road.
class Motion {
public:
    explicit Motion(const vehicle::Vehicle& vehicle);
    Motion(const Motion&) = delete;
    Motion& operator=(const Motion&) = delete;

    /// The state that an outing begins with; false where the engine has no answer there.
    bool set_out(vehicle::Starts starts, std::vector<double>& state);
    const Layout& layout() const noexcept { return layout_; }
    const Moment& moment() const noexcept { return moment_; }
    const vehicle::Vehicle& vehicle() const noexcept { return car_; }
    void open_hood(bool open) noexcept;
    void set_idle(double engine_speed) noexcept { idle_speed_ = engine_speed; }
    double idle_speed() const noexcept { return idle_speed_; }
    double film_time() const noexcept { return film_time_; }

    /// Of the moment that was looked at last, in gear.
    Parting parting(const Mode& mode) const;
    const Moment& at(const Mode& mode, const Place& place, std::span<const double> state);
    void rates(const Moment& moment, std::span<const double> state, std::span<double> rate) const;
    /// J in what moves and turns: the road speed's share, and that of a crank that turns by itself.
    double kinetic_energy(const Mode& mode, std::span<const double> state) const noexcept;

    /// Crank speed at which a gear neither slips nor stalls, rad/s, at a road speed without slip.
    double geared_speed(const Mode& mode, double road_speed) const noexcept;
    double mass(const Mode& mode) const noexcept;
    PointSolver& solver() noexcept { return solver_; }
    long points() const noexcept { return solver_.points(); }

private:
    static constexpr double settled = 1e-7;  // of the lag; what is left is a hundredth of it

    bool rest(vehicle::Starts starts);
    void find_nodes();
    void hold(const Mode& mode, std::span<const double> state);
    void pump(const Mode& mode, std::span<const double> state);
    void stand(const Mode& mode);
    void slip(const Mode& mode);
    void drive(const Mode& mode);
    template <class Turn>
    void settle(Turn&& turn);
    void keep_speed(const Mode& mode);
    void speed_up(const Mode& mode);
    double gains_on_wheels(const Mode& mode, double passed) const;
    double slipping_torque(const Mode& mode) const;
    double lag_of(const driveline::Shaft& wheels) const noexcept;
    void roll(const Mode& mode);
    void idle();
    const vehicle::HeldState& dry();
    bool ask(double engine_speed, double pedal);
    bool ask_torque(double engine_speed, double torque);
    bool take_point();
    double sprayed() const;
    void set_driveline(const Mode& mode, double without_slip) noexcept;
    bool follow(double inertia);
    void reach_road(const driveline::Shaft& wheels, double inertia);
    double tyre_slip(double thrust, double inertia) const noexcept;
    double most_thrust(double inertia) const noexcept;
    void account(double crank_power, double slip_heat);
    void heat(const Mode& mode, std::span<const double> state);
    double injected_need() const noexcept;
    /// kg, of the vehicle and what speeds up with it from there on.
    double mass(const Mode& mode, driveline::Behind behind) const noexcept;
    double crank_inertia(const Mode& mode) const noexcept;
    double taken_by_crank(double inertia) const noexcept;
    double radius(double road_speed) const noexcept;
    double wheel_speed(double slip) const noexcept;
    driveline::GearState gear_state(const Mode& mode) const noexcept;

    vehicle::Vehicle car_;
    vehicle::HeldState held_, dry_;
    PointSolver solver_;
    HeldTorque torque_;
    Layout layout_;
    Moment moment_;
    std::vector<double> losses_;
    double standing_radius_{}, grip_limit_{}, film_time_{};
    double road_mass_{};  // kg, without what the driveline turns
    double trim_time_{};  // s; none where the engine's own fuel follows at once
    double idle_speed_{};
    double crank_share_ = 0;  // d ln of the crank's speed over d ln of the road's, along a shift
    double lag_ = 1;          // crank speed over that without slip, of the last moment in gear
    double idle_stop_ = 0;    // of the pedal, where it idled last
};

}  // namespace windwall::solve
