#include "windwall/study/result_reader.hpp"

#include <gtest/gtest.h>

#include <cmath>

namespace windwall::study {
namespace {

TEST(ResultReader, ReadsWhatTheFirstPointLacked) {
    ResultReader reader({"knock/margin", "engine/torque", "no/such"});
    solve::OperatingPoint without{}, with{};
    without.engine.torque = 40;
    with.engine.torque = 50;
    with.knock.emplace().margin = 3;
    EXPECT_TRUE(std::isnan(reader.read(0, without)));
    EXPECT_EQ(reader.read(1, without), 40);
    EXPECT_EQ(reader.read(0, with), 3);
    EXPECT_EQ(reader.read(1, with), 50);
    EXPECT_TRUE(std::isnan(reader.read(0, without)));
    EXPECT_TRUE(std::isnan(reader.read(2, with)));
}

}  // namespace
}  // namespace windwall::study
