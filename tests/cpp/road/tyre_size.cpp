#include "windwall/road/tyre_size.hpp"

#include "windwall/road/tyre_tables.hpp"

#include <gtest/gtest.h>

using namespace windwall::road;

namespace {

double millimetres(std::string_view text) { return 1e3 * read_tyre_size(text).diameter; }
bool refused(std::string_view text) { return !read_tyre_size(text).problem.empty(); }

double kilometres_an_hour(std::string_view text) {
    return 3.6 * read_tyre_size(text).speed_limit.value_or(-1);
}

}  // namespace

TEST(TyreSize, ReadsOneTyreHoweverItIsWritten) {
    for (const auto text : {"155/80R13", "155/80 R13", "155/80 r 13", " 155/80R13 ", "155/80-13",
                            "P155/80R13 79S", "155/80 SR13", "155/80 R 13 79T TL", "155/80B13",
                            "155/80 R13C 90/88R", "155/80 R13 (79T)", "155 R13"})
        EXPECT_NEAR(millimetres(text), 578.2, 1e-9) << text;
}

TEST(TyreSize, ReadsInchesAndDiameters) {
    EXPECT_NEAR(millimetres("3.50-10 51J"), 17 * 25.4, 1e-9);
    EXPECT_NEAR(millimetres("3.00x19"), 25 * 25.4, 1e-9);
    EXPECT_NEAR(millimetres("3.00 \xc3\x97 19"), 25 * 25.4, 1e-9);
    EXPECT_NEAR(millimetres("11x7.10-5"), 11 * 25.4, 1e-9);
    EXPECT_NEAR(millimetres("AT25x8-12 6PR NHS"), 25 * 25.4, 1e-9);
    EXPECT_NEAR(millimetres("25x8x12"), 25 * 25.4, 1e-9);
    EXPECT_NEAR(millimetres("20x10R9"), 20 * 25.4, 1e-9);
    EXPECT_NEAR(millimetres("26x3"), 26 * 25.4, 1e-9);
    EXPECT_NEAR(1e3 * read_tyre_size("26x3").rim, 20 * 25.4, 1e-9);
    EXPECT_NEAR(1e3 * read_tyre_size("11x7.10-5").rim, 5 * 25.4, 1e-9);
    EXPECT_NEAR(millimetres("190/65 R390"), 390 + 2 * 190 * 0.65, 1e-9);
}

TEST(TyreSize, ReadsTheServiceDescription) {
    const TyreSize size = read_tyre_size("120/70 ZR17 M/C (58W) TL");
    EXPECT_EQ(size.load_index, 58);
    EXPECT_DOUBLE_EQ(*size.speed_limit, 270 / 3.6);
    EXPECT_EQ(read_tyre_size("195/50R13C 104/101N").load_index, 104);
    EXPECT_NEAR(kilometres_an_hour("4.00-8 55A8"), 40, 1e-12);
    EXPECT_FALSE(read_tyre_size("155/80 R13").load_index);
    EXPECT_FALSE(read_tyre_size("155/80 R13").speed_limit);
}

TEST(TyreSize, ReadsOldSpeedSymbolsAndHoldsOpenOnesToTheLeastTheyMean) {
    EXPECT_NEAR(kilometres_an_hour("155 SR13"), 180, 1e-12);
    EXPECT_NEAR(kilometres_an_hour("100/90-H19"), 210, 1e-12);
    EXPECT_NEAR(kilometres_an_hour("100/90H19"), 210, 1e-12);
    EXPECT_NEAR(kilometres_an_hour("205/50 VR15"), 210, 1e-12);
    EXPECT_NEAR(kilometres_an_hour("205/50 ZR15"), 240, 1e-12);
    EXPECT_NEAR(kilometres_an_hour("205/50 ZR15 86W"), 270, 1e-12);
}

TEST(TyreSize, RefusesWhatItDoesNotUnderstand) {
    for (const auto text : {"",
                            "wide",
                            "155/",
                            "155/80",
                            "155/80R",
                            "155/80 XR13",
                            "155/80R13 fast",
                            "155/80R13 131T",
                            "155/80R13 79O",
                            "155/80R13 12.5T",
                            "155/80R13 79",
                            "400-8",
                            "4.80/4.00-8",
                            "1/1-1",
                            "-5",
                            "11x",
                            "MT90-16",
                            "nan-13",
                            "inf-13",
                            "1e5-13",
                            "155/80R13 99999999999T",
                            "0/80R13",
                            "155/80R1300",
                            "999999999999999999999999999999999999999999999999999999"})
        EXPECT_TRUE(refused(text)) << text;
}

TEST(TyreSize, WhatReadsTwoWaysIsRefusedWithBothReadings) {
    for (const auto text : {"350-10", "250-8", "200-10 51J", "400-8"}) {
        const TyreSize size = read_tyre_size(text);
        EXPECT_NE(size.problem.find("3.50-10"), std::string_view::npos) << text;
        EXPECT_NE(size.problem.find("200/80-10"), std::string_view::npos) << text;
    }
    const TyreSize racing = read_tyre_size("7.0/20.5-13");
    EXPECT_NE(racing.problem.find("20.5x7.0-13"), std::string_view::npos);
    EXPECT_NE(racing.problem.find("180/50-13"), std::string_view::npos);
    for (const auto text : {"185-15", "205 R16", "3.50-10", "200/80-10", "20.5x7.0-13"})
        EXPECT_FALSE(refused(text)) << text;
}

TEST(TyreSize, TakesAnyBytesWithoutHarm) {
    std::string text;
    unsigned state = 1;
    constexpr std::string_view alphabet = "0123456789/.-xXRBDZSHVP ()MC\xc3\x97\n";
    for (int i = 0; i < 200000; ++i) {
        state = state * 1664525u + 1013904223u;
        if ((state >> 28) == 0) text.clear();
        text.push_back(alphabet[(state >> 16) % alphabet.size()]);
        const TyreSize size = read_tyre_size(text);
        if (!size.problem.empty()) continue;
        EXPECT_GT(size.diameter, 0.08) << text;
        EXPECT_LT(size.diameter, 2) << text;
    }
}

TEST(TyreTables, EndWhereTheyEnd) {
    EXPECT_EQ(load_index_mass(0), 45);
    EXPECT_EQ(load_index_mass(130), 1900);
    EXPECT_FALSE(load_index_mass(-1));
    EXPECT_FALSE(load_index_mass(131));
    EXPECT_FALSE(speed_symbol_limit(""));
    EXPECT_FALSE(speed_symbol_limit("I"));
    EXPECT_FALSE(speed_symbol_limit("h"));
    EXPECT_FALSE(speed_symbol_limit("A9"));
}

TEST(TyreTables, RiseWithTheIndex) {
    for (int index = 1; index <= 130; ++index)
        EXPECT_GT(*load_index_mass(index), *load_index_mass(index - 1)) << index;
}
