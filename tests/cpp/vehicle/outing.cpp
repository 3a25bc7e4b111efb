// Outings are data: what their rows owe, one end for each leg, and what has to stand first.
#include "windwall/vehicle/outing/outing.hpp"

#include "contract.hpp"

namespace windwall::vehicle {
namespace {

template <class T>
std::string refusal_of(const T& made) {
    const auto broken = made.check();
    return broken ? std::string(broken->key) + ": " + broken->sentence : "";
}

TEST(Outing, KeepsTheContractOfRows) { contract::hold<Outing>(); }

TEST(Legs, KeepTheContractOfRows) {
    contract::hold<Idle>();
    contract::hold<Launch>();
    contract::hold<FullThrottle>(R"({"for_time": "5 s"})");
    contract::hold<HoldSpeed>(R"({"for_time": "5 s"})");
    contract::hold<Coast>(R"({"for_time": "5 s"})");
    contract::hold<Stop>();
}

TEST(Legs, HaveOneEnd) {
    FullThrottle pull;
    EXPECT_EQ(refusal_of(pull),
              "to_speed: a leg has an end: state one of to_speed, for_distance, for_time or "
              "to_engine_speed");
    pull.for_distance = 400;
    EXPECT_EQ(refusal_of(pull), "");
    pull.to_engine_speed = 500;
    EXPECT_EQ(refusal_of(pull),
              "to_engine_speed: the leg ends with for_distance already: state one of the two");
    HoldSpeed hold;
    EXPECT_EQ(refusal_of(hold),
              "for_time: a leg has an end: state one of for_time or for_distance");
    hold.for_time = 10;
    EXPECT_EQ(refusal_of(hold), "");
    Coast coast;
    EXPECT_NE(refusal_of(coast), "");
    coast.to_speed = 0;
    EXPECT_EQ(refusal_of(coast), "");
    coast.for_time = 10;
    EXPECT_EQ(refusal_of(coast),
              "for_time: the leg ends with to_speed already: state one of the two");
}

TEST(Outing, LeavesWhatIsOpenOpen) {
    Stop stop;
    EXPECT_EQ(stop.hood_over(Hood::closed), Hood::closed);
    EXPECT_EQ(stop.hood_over(Hood::open), Hood::open);
    stop.hood = Hood::open;
    EXPECT_EQ(stop.hood_over(Hood::closed), Hood::open);
}

TEST(Outing, IdlesAndLaunchesFromAStandstillOnly) {
    Coast rolling, to_rest;
    rolling.for_time = 5;
    to_rest.to_speed = 0;
    Outing outing;
    outing.legs = {Idle{}, Launch{}, FullThrottle{}, Idle{}, Launch{}, HoldSpeed{}, Launch{}};
    const auto misplaced = outing.misplaced_legs();
    ASSERT_EQ(misplaced.size(), 2u);
    EXPECT_EQ(misplaced[0].leg, 3u);
    EXPECT_EQ(misplaced[1].leg, 6u);
    EXPECT_EQ(misplaced[0].sentence,
              "\"idle\" begins at a standstill, and the leg before it leaves the vehicle moving: "
              "put a \"stop\" between them");
    outing.legs = {Launch{}, Stop{}, Launch{}, to_rest, Idle{}, rolling, Idle{}};
    EXPECT_TRUE(outing.misplaced_legs().empty());
    outing.legs = {Launch{}, rolling, Idle{}};
    EXPECT_EQ(outing.misplaced_legs().size(), 1u);
}

TEST(Outing, FollowsARoadThatGoesForward) {
    Outing outing;
    EXPECT_EQ(refusal_of(outing), "");
    outing.road.column = {{0, 500}, {0, 0.01}, {0, 2}};
    EXPECT_EQ(refusal_of(outing), "");
    outing.road.column[0] = {500, 500};
    EXPECT_EQ(refusal_of(outing), "road: distances must rise from row to row");
}

}  // namespace
}  // namespace windwall::vehicle
