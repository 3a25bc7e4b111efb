#include "windwall/charge/part.hpp"

#include <gtest/gtest.h>

using namespace windwall;
using namespace windwall::charge;

namespace {

struct Silencer : Plenum {
    static constexpr std::string_view kind = "silencer";
};
struct Nothing {
    static constexpr std::string_view kind = "nothing", description = "Does nothing.";
    static std::span<const fields::Row> rows() { return {}; }
};
struct Both : Plenum {
    double flow(const media::Stream&, double, const Surroundings&) const noexcept { return 0; }
    double opening(const Surroundings&) const noexcept { return 1; }
};
struct Thrower : Nothing {
    media::Stream outlet(const media::Stream& in, const Surroundings&) const { return in; }
};
struct Nameless {
    media::Stream outlet(const media::Stream& in, const Surroundings&) const noexcept { return in; }
};

}  // namespace

TEST(Part, IsKnownByItsOneAbility) {
    static_assert(Passive<Filter> && Passive<Duct> && Passive<ChargeCooler> && Passive<Plenum>);
    static_assert(Metering<Throttle> && !Passive<Throttle>);
    static_assert(Driven<PositiveBlower> && !Passive<PositiveBlower>);
    static_assert(ChargePart<Silencer>);
}

TEST(Part, IsRefusedWhenAPieceIsMissing) {
    static_assert(!ChargePart<Nothing>, "no ability");
    static_assert(!ChargePart<Both>, "two abilities");
    static_assert(!ChargePart<Thrower>, "not noexcept");
    static_assert(!ChargePart<Nameless>, "no kind, no rows");
}

TEST(Part, HoldsEachKindByItsWord) {
    EXPECT_EQ(Part(Throttle{}).kind(), "throttle");
    EXPECT_EQ(Part(PositiveBlower{}).kind(), "positive_blower");
    EXPECT_EQ(Part{}.kind(), "filter");
}
