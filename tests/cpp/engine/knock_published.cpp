// The rule and the integral beside what was measured on engines. Slopes: Russ, SAE 960497
// (abstract). Water and cooling: NACA WR E-244 (1944), a V-12 at 3000 rpm on its knock limit.

#include <gtest/gtest.h>

#include <cmath>
#include <functional>
#include <string>

#include "engines.hpp"

namespace windwall::engine {
namespace {

using Asks = std::function<double(const Cylinder&, const Intake&, double retard)>;

double by_integral(const Cylinder& engine, const Intake& intake, double retard) {
    return *engine.integral_requirement(settled(engine, intake, {}), {}, retard);
}

double by_rule(const Cylinder& engine, const Intake& intake, double retard) {
    Cylinder given = engine;
    given.spark.policy = SparkPolicy::as_given;
    given.spark.table.column = {{0, 2000}, {retard, retard}};
    return given.choose_spark(settled(engine, intake, {}), {}).requirement;
}

/// Russ's engine: a single with a production head, ratio 10, 2000 rpm, 1 bar.
Cylinder russ() {
    Cylinder engine = single_499();
    engine.compression_ratio = 10;
    engine.lambda = 14.0 / 14.604;
    engine.exhaust.back_pressure = 0;
    engine.combustion.burn_duration = 50 * degree;
    return engine;
}

Intake at_russ(double pressure = 100e3, double temperature = 310) {
    return with_head(intake_at(2000 * rpm, pressure, temperature, 100e3), 450);
}

struct Slope {
    const char* what;
    double measured;   // octane numbers
    double low, high;  // of ours over it
    double change;     // ours
};

/// The rises that each change makes.
std::vector<Slope> slopes(const Asks& asks) {
    const Cylinder engine = russ();
    const double usual = asks(engine, at_russ(), 0);
    std::vector<Slope> made;
    const auto add = [&](const char* what, double measured, double low, double high,
                         const Cylinder& of, const Intake& at, double retard = 0) {
        made.push_back({what, measured, low, high, asks(of, at, retard) - usual});
    };
    add("spark, 1 degree earlier", 1, 0.8, 1.25, engine, at_russ(), -degree);
    add("charge, 7 K hotter", 1, 0.3, 1.0, engine, at_russ(100e3, 317));
    add("manifold, 10 kPa more", 3.5, 0.8, 1.25, engine, at_russ(110e3));
    Cylinder tighter = engine, richer = engine, leaner = engine;
    tighter.compression_ratio += 1;
    add("ratio, 1 more", 5, 0.8, 1.25, tighter, at_russ());
    add("head, 10 K hotter", 1, 0.04, 0.6, engine, with_head(at_russ(), 460));
    richer.lambda = 12.0 / 14.604;
    add("mixture, 2 units richer", -4, 0.8, 1.25, richer, at_russ());
    leaner.lambda = 16.0 / 14.604;
    add("mixture, 2 units leaner", -4, 0.2, 0.6, leaner, at_russ());
    Intake silenced = at_russ();
    silenced.ambient_pressure += 30e3;
    add("exhaust, 30 kPa more", 1, 0.8, 1.25, engine, silenced);
    return made;
}

// Counted at 1/1.4, five lie within 0.8 to 1.25 of what was measured. Three do not: the head,
// because here it only warms the charge on its way in and not the end gas; lean mixtures, whose
// slower burning moves the middle of the burn at an unchanged spark, where here it stays; and
// charge temperature, of which this delay makes too little, as everybody finds of it.
TEST(KnockPublished, SlopesOfTheIntegralBesideRuss) {
    for (const Slope& slope : slopes(by_integral)) {
        const double share = slope.change / slope.measured;
        std::printf("%-26s measured %+5.1f, integral %+6.2f: %.2f of it\n", slope.what,
                    slope.measured, slope.change, share);
        EXPECT_GE(share, slope.low) << slope.what;
        EXPECT_LE(share, slope.high) << slope.what;
    }
}

// The twelve: knock-limited pressures are found where the requirement is that of the dry engine.
Cylinder twelve() {
    Cylinder engine;
    engine.cylinders = 12;
    engine.bore = 0.137;
    engine.stroke = 0.152;
    engine.compression_ratio = 6.65;
    engine.rev_limit = 3200 * rpm;
    engine.exhaust.back_pressure = 0;
    engine.breathing.peak_efficiency = 0.9;
    engine.breathing.best_speed = 2600 * rpm;
    engine.valves.per_side = 2;
    return engine;
}

constexpr double inch_of_mercury = 3386.39;  // Pa

Intake wet_intake(double pressure, double temperature, double water) {
    Intake intake = with_head(intake_at(3000 * rpm, pressure, temperature, 100e3), 450);
    intake.charge.liquid[0] = water;
    return intake;
}

/// Pressure at which this engine asks for as much as another did dry.
double limited(const Asks& asks, const Cylinder& engine, double requirement, double temperature,
               double water) {
    double low = 40e3, high = 500e3;
    while (high - low > 1) {
        const double middle = (low + high) / 2;
        const double asked = asks(engine, wet_intake(middle, temperature, water), 0);
        (asked > requirement ? high : low) = middle;
    }
    return low;
}

struct KnockLimit {
    double temperature;  // K in the manifold: carburettor air, 40 K of the engine-stage blower
    double fuel_air, dry, wet;  // inHg at water/fuel of 0 and of 0.6
};
constexpr KnockLimit runs[] = {{383, .080, 36.5, 65.8},
                               {383, .095, 46.0, 71.4},
                               {351, .080, 42.5, 68.5},
                               {351, .095, 53.6, 73.8}};

TEST(KnockPublished, WaterRaisesTheAllowedPressure) {
    for (const auto& [name, asks] :
         {std::pair<const char*, Asks>{"rule", by_rule}, {"integral", by_integral}}) {
        for (const KnockLimit& run : runs) {
            Cylinder engine = twelve();
            engine.lambda = 1 / (run.fuel_air * 14.604);
            const double dry = run.dry * inch_of_mercury;
            const double needed = asks(engine, wet_intake(dry, run.temperature, 0), 0);
            const double share =
                limited(asks, engine, needed, run.temperature, 0.6 * run.fuel_air) / dry;
            std::printf("%-8s %.0f K, F/A %.3f: pressure x %.2f, measured %.2f\n", name,
                        run.temperature, run.fuel_air, share, run.wet / run.dry);
            EXPECT_GT(share, 1.2);
            EXPECT_LT(share, 1.8);
        }
    }
}

// 0.080 to 0.095 of fuel: measured 1.26 of the pressure. Both go the right way and fall short.
TEST(KnockPublished, EnrichmentAndCoolingRaiseIt) {
    for (const auto& [name, asks] :
         {std::pair<const char*, Asks>{"rule", by_rule}, {"integral", by_integral}}) {
        Cylinder lean = twelve(), rich = twelve();
        lean.lambda = 1 / (.080 * 14.604);
        rich.lambda = 1 / (.095 * 14.604);
        const double dry = 36.5 * inch_of_mercury;
        const double needed = asks(lean, wet_intake(dry, 383, 0), 0);
        const double richer = limited(asks, rich, needed, 383, 0) / dry;
        const double cooler = limited(asks, lean, needed, 351, 0) / dry;
        std::printf("%-8s enrichment x %.2f, measured 1.26; 32 K cooler x %.2f, measured 1.16\n",
                    name, richer, cooler);
        EXPECT_GT(richer, 1.0);
        EXPECT_LT(richer, 1.3);
        EXPECT_GT(cooler, 1.0);
        EXPECT_LT(cooler, 1.2);
    }
}

}  // namespace
}  // namespace windwall::engine
