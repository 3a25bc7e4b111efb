// Plates so wide for what flows that doubles hardly know what they pass.
#include "windwall/solve/point/point.hpp"

#include <gtest/gtest.h>

#include "solve/samples.hpp"

namespace windwall::solve {
namespace {

using sample::rpm;

/// A moped of 45 cm3 behind a plate for a lorry, and a pump that its boost would start.
vehicle::Vehicle moped() {
    vehicle::Vehicle car = sample::cyclecar();
    engine::Cylinder engine = sample::twin();
    engine.cylinders = 1;
    engine.bore = engine.stroke = 0.0385;
    car.engine = engine::Engine(engine);
    charge::EvaporativeInjection spray;
    spray.rated_flow = 2e-6;
    spray.pump_pressure = 8e5;
    spray.starts_at = 100e3;
    car.charge_path = {{"throttle", sample::throttle(0.146)}, {"jet", spray}};
    return car;
}

TEST(WidePlates, AreBalancedAsFarAsDoublesKnow) {
    const vehicle::Vehicle car = moped();
    for (double speed = 600; speed <= 6000; speed *= 1.05) {
        PointSolver solver(car);
        const Point point = solver.at({speed * rpm, 5, 1});
        ASSERT_TRUE(point.outcome.answered()) << speed << " " << point.outcome.residual;
        EXPECT_LT(point.outcome.residual, 1e-8);
    }
}

}  // namespace
}  // namespace windwall::solve
