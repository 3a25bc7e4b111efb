// Temperatures that take time: every node of a vehicle, and one the core knows nothing of, comes to
// the rest that a long full-throttle point is solved at.
#include "windwall/vehicle/thermal_state.hpp"

#include "windwall/driveline/train.hpp"
#include "windwall/solve/full_throttle/top_speed.hpp"

#include <boost/numeric/odeint.hpp>
#include <gtest/gtest.h>

#include <cmath>
#include <set>

#include "scenario/files.hpp"
#include "solve/samples.hpp"

namespace windwall::vehicle {
namespace {

using sample::rpm;

constexpr double minute = 60, hour = 3600;  // s

/// A vehicle solved at one operating point.
struct Solved {
    Vehicle car;
    solve::VehicleSolver solver{car};
    solve::FullThrottlePoint there;

    explicit Solved(Vehicle held, double engine_speed = 5200 * rpm, std::size_t gear = 0)
        : car(std::move(held)), there(solver.at({engine_speed, {gear, 1}})) {
        EXPECT_TRUE(there.point.outcome.answered());
    }
    Solved(const Solved&) = delete;  // the solver borrows the vehicle
    const Balance& balance() { return solver.point_solver().balance(); }
    ThermalState state() {
        return thermal_state(balance(), there.point.work, there.point.torque, there.gear_state());
    }
};

/// A scenario's vehicle at its top speed.
Solved at_top_speed(const std::string& file) {
    const Vehicle car = scenario::loaded(scenario::read_file(file)).vehicle;
    const auto equilibrium = solve::top_speed(car).equilibrium;
    return Solved(car, equilibrium.full_throttle.value().point.condition.engine_speed,
                  equilibrium.gear);
}

const NodeState& node(const ThermalState& state, std::string_view address) {
    const NodeState* found = state.find(address);
    if (!found) throw std::runtime_error("no node " + std::string(address));
    return *found;
}

double temperature(const ThermalState& state, std::string_view address) {
    return node(state, address).temperature;
}

/// Temperatures after some seconds, by controlled steps of Dormand and Prince.
std::vector<double> integrated(ThermalState state, double start, double seconds) {
    namespace odeint = boost::numeric::odeint;
    using Temperatures = std::vector<double>;
    state.start_from(start);
    Temperatures T;
    for (const NodeState& each : state.nodes())
        T.push_back(each.temperature);
    odeint::integrate_adaptive(
        odeint::make_controlled<odeint::runge_kutta_dopri5<Temperatures>>(1e-9, 1e-9),
        [&](const Temperatures& at, Temperatures& rate, double) { state.rates(at, rate); }, T, 0.0,
        seconds, 0.1);
    return T;
}

/// A pipe between hot gas and cold air that also radiates, which the core knows nothing of.
struct ToyNode {
    std::string_view name = "pipe";
    double heat_capacity = 900;
    std::optional<double> stated;
    double heat_flow(double temperature) const noexcept {
        return 6 * (900 - temperature) + 3e-9 * (std::pow(300, 4) - std::pow(temperature, 4));
    }
};

/// A part of a charge path that declares it.
struct ToyPart {
    std::array<ToyNode, 1> thermal_nodes(const media::Stream&, double,
                                         const charge::Surroundings&) const noexcept {
        return {};
    }
};
static_assert(charge::Thermal<ToyPart>);
static_assert(!charge::Thermal<charge::Filter>);
static_assert(!engine::Thermal<engine::TorqueCurve>);  // it says nothing of its metal

TEST(ThermalState, FindsWhatEachPartDeclares) {
    std::set<std::string> found;
    const ThermalState state = Solved(sample::with_every_node()).state();
    for (const NodeState& each : state.nodes())
        found.insert(each.address);
    EXPECT_EQ(found, (std::set<std::string>{"engine/head", "engine/oil", "engine/block",
                                            "charge_path/blower/case", "charge_path/cooler/core",
                                            "charge_path/pipe/wall", "charge_path/plenum/wall",
                                            "driveline/belt/belt", "under_hood/air"}));
}

// What the solver uses as soaked is where the heat flows of each node balance.
TEST(ThermalState, RestIsWhatALongPullIsSolvedAt) {
    Vehicle liquid = sample::with_every_node();
    liquid.engine.as<engine::Cylinder>()->cooling.by = engine::CoolingBy::liquid;
    for (const Vehicle& car : {sample::cyclecar(), sample::with_every_node(), liquid}) {
        Solved solved(car);
        const ThermalState state = solved.state();
        const Balance& balance = solved.balance();
        const auto& engine = *car.engine.as<engine::Cylinder>();
        const auto soaked = engine.temperatures(balance.intake(balance.manifold()), car.fuel);
        const auto near = [&](std::string_view address, double expected) {
            EXPECT_NEAR(temperature(state, address) / expected, 1, 1e-9) << address;
            EXPECT_EQ(node(state, address).policy, TemperaturePolicy::at_rest);
        };
        near("engine/head", soaked.head);
        near("engine/oil", soaked.oil);
        near("charge_path/blower/case", balance.stations()[2].compression.case_temperature);
        near("under_hood/air", balance.surroundings().under_hood_temperature);
        EXPECT_LT(temperature(state, "engine/block"), soaked.oil);
        EXPECT_GT(temperature(state, "engine/block"), car.day.temperature);
    }
}

// A blower that a shaft of its own turns is as warm as that speed makes it, whatever else turns.
TEST(ThermalState, ACaseGoesWithWhatTurnsItsBlower) {
    Vehicle car = sample::cyclecar();
    std::swap(car.charge_path[1], car.charge_path[2]);  // the throttle behind the blower
    Balance balance(car);
    balance.hold({4000 * rpm, 25, 1});
    balance.turn(1, 6000 * rpm);
    balance.propagate(0.02, []<class Part>(const Part&, const media::Stream& in, std::size_t) {
        return in.pressure * (charge::Driven<Part> ? 1.4 : 0.98);
    });
    EXPECT_NEAR(temperature(thermal_state(balance, {}, 0), "charge_path/blower/case"),
                balance.stations()[1].compression.case_temperature, 1e-6);
}

// The belt gives off what gets lost in it: crank less wheels, where nothing else loses.
TEST(ThermalState, ABeltIsWarmedByWhatItLoses) {
    Vehicle car = sample::with_every_node();
    driveline::FinalDrive last;
    last.fixed_ratio = 5;
    last.efficiency = 1;
    last.drag_torque = 0;
    car.driveline.back().part = last;
    Solved solved(car);
    const auto& at = solved.there;
    const double lost =
        at.point.condition.engine_speed * at.point.torque -
        driveline::drive(car.driveline, {at.point.condition.engine_speed, at.point.torque},
                         at.gear_state())
            .power();
    EXPECT_GT(lost, 500);
    const double air = solved.balance().surroundings().under_hood_temperature;
    EXPECT_NEAR(temperature(solved.state(), "driveline/belt/belt"),
                air + lost / driveline::BeltCvt{}.to_air, 1e-6);
}

// An hour brings everything to rest but a blower's case, whose 3.6 kJ/K fall by a factor e in a
// quarter of an hour; four hours bring that too.
TEST(ThermalState, ComesToRestInTime) {
    for (const std::string file :
         {"airfield_cyclecar", "lakebed_streamliner", "village_microcar"}) {
        Solved solved = at_top_speed(file + ".json");
        ThermalState state = solved.state();
        state.add("toy", std::array{ToyNode{}});
        const double day = solved.car.day.temperature;
        const auto first = integrated(state, day, hour), fourth = integrated(state, day, 4 * hour);
        for (std::size_t i = 0; i < state.nodes().size(); ++i) {
            const auto& [address, capacity, flow, rest, policy] = state.nodes()[i];
            const bool slow = address == "charge_path/blower/case";
            EXPECT_NEAR(first[i] / rest, 1, slow ? 1e-2 : 1e-4) << address;
            EXPECT_NEAR(fourth[i] / rest, 1, 1e-4) << address;
        }
        EXPECT_NEAR(ToyNode{}.heat_flow(temperature(state, "toy/pipe")), 0, 1e-8);
        EXPECT_GT(temperature(state, "toy/pipe"), 500);
    }
}

// What lies between two temperatures goes to its own by an exponential, and none of it at once.
TEST(ThermalState, GoesByAnExponential) {
    const ThermalState state = Solved(sample::with_every_node()).state();
    const auto soon = integrated(state, 300, minute);
    for (std::size_t i = 0; i < state.nodes().size(); ++i) {
        const NodeState& each = state.nodes()[i];
        const double slope = each.heat_flow(301) - each.heat_flow(300);
        const double left = std::exp(slope * minute / each.heat_capacity);
        EXPECT_NEAR(soon[i], each.temperature + left * (300 - each.temperature), 1e-4)
            << each.address;
    }
    const double head = temperature(state, "engine/head");
    EXPECT_LT(integrated(state, 300, 5)[0] - 300, 0.5 * (head - 300));
}

// Twice the mass takes twice as long, to the same rest.
TEST(ThermalState, GoesWithTheMass) {
    const auto state_of = [](double times) {
        Vehicle car = sample::with_every_node();
        auto& engine = *car.engine.as<engine::Cylinder>();
        for (double* mass :
             {&engine.cooling.head_mass, &engine.cooling.block_mass, &engine.oil.mass,
              &car.charge_path[2].part.as<charge::PositiveBlower>()->case_mass,
              &car.charge_path[3].part.as<charge::ChargeCooler>()->core_mass,
              &car.charge_path[4].part.as<charge::Duct>()->wall_thickness,
              &car.charge_path[5].part.as<charge::Plenum>()->wall_thickness,
              &car.driveline[0].part.as<driveline::BeltCvt>()->belt_mass, &car.engine_bay.volume})
            *mass *= times;
        return Solved(car).state();
    };
    const ThermalState light = state_of(1), heavy = state_of(2);
    const auto once = integrated(light, 300, 30), twice = integrated(heavy, 300, 60);
    for (std::size_t i = 0; i < light.nodes().size(); ++i) {
        const NodeState &a = light.nodes()[i], &b = heavy.nodes()[i];
        EXPECT_NEAR(b.temperature, a.temperature, 1e-9) << a.address;
        EXPECT_NEAR(b.heat_capacity, 2 * a.heat_capacity, 1e-9) << a.address;
        if (a.address == "under_hood/air") continue;  // twice the air is replaced as often
        EXPECT_NEAR(twice[i], once[i], 1e-4) << a.address;
        EXPECT_GT(std::abs(once[i] - 300), 0.1) << a.address;
    }
}

TEST(ThermalState, StatedTemperaturesAreGiven) {
    Vehicle car = sample::cyclecar();
    auto& engine = *car.engine.as<engine::Cylinder>();
    engine.oil.temperature = 360;
    car.charge_path[2].part.as<charge::PositiveBlower>()->case_temperature = 350;
    ThermalState state = Solved(car).state();
    state.start_from(300);
    for (const auto& [address, stated] :
         {std::pair{"engine/oil", 360.0}, {"charge_path/blower/case", 350.0}}) {
        EXPECT_EQ(node(state, address).policy, TemperaturePolicy::given);
        EXPECT_EQ(temperature(state, address), stated);
        EXPECT_EQ(node(state, address).rate(300), 0);
    }
    EXPECT_EQ(integrated(state, 300, 10 * minute)[1], 360);
    // The block is warmed by the oil as it is.
    state.settle();
    EXPECT_LT(temperature(state, "engine/block"), 360);
}

TEST(ThermalState, PolicySaysWhereATemperatureComesFrom) {
    ThermalState state = Solved(sample::cyclecar()).state();
    const double rest = temperature(state, "engine/head");
    EXPECT_EQ(node(state, "engine/head").rate(300), 0);
    state.start_from(300);
    EXPECT_EQ(node(state, "engine/head").policy, TemperaturePolicy::integrated);
    EXPECT_EQ(temperature(state, "engine/head"), 300);
    EXPECT_GT(node(state, "engine/head").rate(300), 0.1);
    state.settle();
    EXPECT_EQ(node(state, "engine/head").policy, TemperaturePolicy::at_rest);
    EXPECT_EQ(temperature(state, "engine/head"), rest);
}

// What no heat reaches, or none leaves, has no temperature to come to.
TEST(ThermalState, LeavesOutWhatNothingCools) {
    ThermalState state;
    media::LumpedNode lump{"lump", 100, 50};
    state.add("toy", std::array{lump});
    EXPECT_EQ(state.find("toy/lump"), nullptr);
    lump.stated = 320;
    state.add("toy", std::array{lump});
    EXPECT_EQ(temperature(state, "toy/lump"), 320);
    lump.stated.reset();
    lump.name = "cooled";
    lump.cold_conductance = 2;
    lump.cold_temperature = 300;
    state.add("toy", std::array{lump});
    EXPECT_NEAR(temperature(state, "toy/cooled"), 325, 1e-9);
}

}  // namespace
}  // namespace windwall::vehicle
