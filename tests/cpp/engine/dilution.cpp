#include "windwall/engine/dilution.hpp"

#include "windwall/media/liquids.hpp"

#include <gtest/gtest.h>

#include "engines.hpp"

namespace windwall::engine {
namespace {

using media::index;
using media::Vapour;

/// What drops on their way through the valve leave of the work.
double kept(Vapour vapour, double share, double evaporated) {
    const Intake intake = intake_at(400, 150e3, 330);
    AtValve liquid{};
    liquid.flying[index(vapour)] = share;
    return burning(intake.charge, liquid, single_499().mixture(intake, {}), 0, evaporated).kept;
}

TEST(Burning, LosesWhatEvaporatesInTheFlameAndNoMore) {
    for (const Vapour vapour : {Vapour::water, Vapour::methanol, Vapour::ethanol}) {
        EXPECT_EQ(kept(vapour, 0, 0), 1);
        EXPECT_EQ(kept(vapour, 0.03, 1), 1);  // evaporated before it
        const double lost = 1 - kept(vapour, 0.03, 0);
        EXPECT_GT(lost, 0);
        EXPECT_NEAR(1 - kept(vapour, 0.03, 0.25), 0.75 * lost, 1e-12);
        EXPECT_NEAR(lost * media::liquid(Vapour::water).latent_heat,
                    (1 - kept(Vapour::water, 0.03, 0)) * media::liquid(vapour).latent_heat, 1e-6);
    }
}

}  // namespace
}  // namespace windwall::engine
