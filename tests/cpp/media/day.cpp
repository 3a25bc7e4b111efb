#include "windwall/media/day.hpp"

#include "windwall/media/humid_air.hpp"
#include "windwall/media/standard_atmosphere.hpp"

#include <gtest/gtest.h>

namespace {

using namespace windwall;
using media::Day;

TEST(Day, WantsExactlyOneOfPressureAndAltitude) {
    Day day;
    ASSERT_TRUE(day.check());
    EXPECT_EQ(day.check()->key, "pressure");
    day.pressure = 95e3;
    EXPECT_FALSE(day.check());
    day.altitude = 100;
    ASSERT_TRUE(day.check());
    EXPECT_NE(day.check()->sentence.find("exclude"), std::string::npos);
    day.pressure.reset();
    EXPECT_FALSE(day.check());
}

TEST(Day, ABarometerIsTakenAsItReads) {
    Day day;
    day.pressure = 93e3;
    day.sea_level_pressure = 103e3;
    EXPECT_EQ(day.station_pressure(), 93e3);
}

TEST(Day, AnAltitudeTakesTheWeatherReportWithIt) {
    Day day;
    day.altitude = 1200;
    day.sea_level_pressure = 100e3;
    EXPECT_EQ(day.station_pressure(), media::station_pressure(1200, 100e3));
    EXPECT_LT(day.station_pressure(), 88e3);
}

TEST(Day, EveryDensityBelongsToTheSameAir) {
    Day day;
    day.temperature = 308;
    day.pressure = 98e3;
    day.relative_humidity = 0.4;
    const media::Stream air = day.air(0.025);
    EXPECT_EQ(air.pressure, 98e3);
    EXPECT_EQ(air.temperature, 308);
    EXPECT_EQ(air.dry_air, 0.025);
    EXPECT_EQ(air.vapour_share(), day.humidity_ratio());
    EXPECT_NEAR(air.density(), day.air_density(), 1e-12);
    EXPECT_NEAR(day.dry_air_density() * (1 + day.humidity_ratio()), day.air_density(), 1e-12);
    EXPECT_EQ(day.humidity_ratio(), media::humidity_ratio(0.4, 308, 98e3));
}

TEST(Day, MoistAirIsLighter) {
    Day dry, moist;
    dry.pressure = moist.pressure = 1e5;
    dry.temperature = moist.temperature = 305;
    dry.relative_humidity = 0;
    moist.relative_humidity = 1;
    EXPECT_LT(moist.air_density(), dry.air_density());
    EXPECT_LT(moist.dry_air_density(), moist.air_density());
    EXPECT_EQ(dry.dry_air_density(), dry.air_density());
}

TEST(Day, EveryDefaultHasASpreadAndASource) {
    for (const fields::Row& row : Day::rows()) {
        EXPECT_LT(row.range.low, row.range.high) << row.key;
        if (row.need != fields::Need::with_default) continue;
        EXPECT_GT(row.sigma, 0) << row.key;
        EXPECT_FALSE(row.source.empty()) << row.key;
    }
    EXPECT_EQ(Day::rows().size(), 6u);
}

}  // namespace
