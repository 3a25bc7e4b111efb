#include "windwall/scenario/header.hpp"
#include "windwall/scenario/observation.hpp"
#include "windwall/scenario/upgrade.hpp"

#include "contract.hpp"

/// What the rows of scenario files owe their users.
namespace windwall::scenario {
namespace {

TEST(Rows, OfTheHead) { contract::hold<Header>(); }
TEST(Rows, OfTheTermsOfAnUpgrade) { contract::hold<Terms>(); }
TEST(Rows, OfAnObservation) {
    contract::hold<Observation>(R"({"what": "top speed", "speed": "100 km/h"})");
}

}  // namespace
}  // namespace windwall::scenario
