#include "windwall/media/humid_air.hpp"
#include "windwall/media/standard_atmosphere.hpp"
#include "windwall/media/stream.hpp"

#include <gtest/gtest.h>

#include <cmath>

namespace {

using namespace windwall::media;

TEST(StandardAtmosphere, IsHydrostatic) {
    for (const double H : {-4000.0, 0.0, 1500.0, 6000.0, 10500.0}) {
        const double slope = (standard_pressure(H + 1) - standard_pressure(H - 1)) / 2;
        EXPECT_NEAR(-slope / (9.80665 * standard_density(H)), 1, 1e-7);
    }
}

TEST(StandardAtmosphere, ClampsOutsideItsRange) {
    EXPECT_EQ(standard_pressure(20e3), standard_pressure(11e3));
    EXPECT_EQ(standard_temperature(-9e3), standard_temperature(-5e3));
}

TEST(StandardAtmosphere, DensityAltitudeIsTheInverseOfDensity) {
    for (const double H : {-3000.0, 0.0, 1234.5, 9000.0})
        EXPECT_NEAR(density_altitude(standard_density(H)), H, 1e-7);
    EXPECT_EQ(density_altitude(0), 11e3);
    EXPECT_EQ(density_altitude(-1), 11e3);
    EXPECT_EQ(density_altitude(5), -5e3);
}

TEST(StandardAtmosphere, StationPressureFollowsTheWeatherReport) {
    EXPECT_NEAR(station_pressure(0, 99e3), 99e3, 1e-6);
    EXPECT_NEAR(station_pressure(1000, 101325), 89876.28, 0.02);  // geometric, not geopotential
    EXPECT_LT(station_pressure(800, 99e3), station_pressure(800, 101e3));
    EXPECT_LT(station_pressure(900, 99e3), station_pressure(800, 99e3));
}

TEST(HumidAir, DewPointIsTheInverseOfSaturation) {
    for (double t = -95; t <= 195; t += 2.9)
        EXPECT_NEAR(dew_point(saturation_pressure(273.15 + t)), 273.15 + t, 1e-7) << t;
    EXPECT_NEAR(dew_point(0), 173.15, 1e-9);
    EXPECT_NEAR(dew_point(1e9), 473.15, 1e-9);
}

TEST(HumidAir, SaturationPressureJoinsAtTheTriplePoint) {
    const double ice = saturation_pressure(273.16 - 1e-9), water = saturation_pressure(273.16);
    EXPECT_NEAR(ice / water, 1, 1e-4);
    double before = 0;
    for (double T = 174; T < 473; T += 0.5) {
        EXPECT_GT(saturation_pressure(T), before);
        before = saturation_pressure(T);
    }
    EXPECT_EQ(saturation_pressure(50), saturation_pressure(173.15));
    EXPECT_EQ(saturation_pressure(900), saturation_pressure(473.15));
}

TEST(HumidAir, HumidityRatioAndVapourPressureAreInverse) {
    const double w = humidity_ratio(0.6, 303, 95e3);
    EXPECT_NEAR(vapour_pressure(w, 95e3), vapour_pressure(0.6, 303, 95e3), 1e-9);
    EXPECT_EQ(humidity_ratio(0, 303, 95e3), 0);
}

TEST(HumidAir, DensityIsThatOfTheStream) {
    const double w = humidity_ratio(0.6, 303, 95e3);
    EXPECT_NEAR(humid_air_density(0.6, 303, 95e3), ambient_stream(95e3, 303, w, 1).density(),
                1e-12);
    EXPECT_NEAR(humid_air_density(0.6, 303, 95e3), (1 + w) * dry_air_density(0.6, 303, 95e3),
                1e-12);
}

TEST(HumidAir, SomeDryAirIsAlwaysLeft) {
    const double w = humidity_ratio(1, 450, 60e3);  // water boils far below
    EXPECT_TRUE(std::isfinite(w));
    EXPECT_GT(w, 1);
    EXPECT_GT(dry_air_density(1, 450, 60e3), 0);
}

}  // namespace
