// A clutch that lets go of an engine in overrun.
#include "windwall/solve/drive/drive.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "energy_left.hpp"
#include "solve/samples.hpp"

namespace windwall::solve {
namespace {

vehicle::Vehicle with_shoes() {
    vehicle::Vehicle car = sample::cyclecar();
    std::erase_if(car.driveline,
                  [](const auto& entry) { return entry.part.template as<driveline::Clutch>(); });
    driveline::CentrifugalClutch shoes;
    shoes.engagement_speed = 200;
    shoes.shoe_mass = 0.3;
    shoes.drum_radius = 0.08;
    shoes.shoe_radius = 0.06;
    car.driveline.insert(car.driveline.begin(), {"shoes", shoes});
    return car;
}

DriveResult drive_then(const vehicle::Vehicle& car, std::vector<vehicle::Leg> legs) {
    vehicle::Outing made;
    made.id = "let_go";
    made.legs = std::move(legs);
    return drive(car, made);
}

}  // namespace

// The shoes open as the engine slows: from there on it idles, and nobody drags it along.
TEST(DriveLetGo, AnEngineIdlesOnceItsShoesOpen) {
    const vehicle::Vehicle car = with_shoes();
    vehicle::FullThrottle away;
    away.to_speed = 9;
    vehicle::Coast coast;
    coast.in_gear = true;
    coast.to_speed = 1;
    const DriveResult drive = drive_then(car, {away, coast});
    ASSERT_EQ(drive.end, DriveEnd::legs_done);
    const auto opens = std::ranges::find_if(drive.events, [](const DriveEvent& event) {
        return event.leg == 2 && event.what == Happening::clutch_slips;
    });
    ASSERT_NE(opens, drive.events.end());
    EXPECT_GT(opens->engine_speed, 200);
    EXPECT_EQ(drive.phase.back(), Phase::coasting);
    EXPECT_LE(std::abs(energy_left(drive)),
              2e-6 * drive.energy[static_cast<std::size_t>(Energy::crank)]);
}

}  // namespace windwall::solve
