#include "windwall/scenario/edit.hpp"
#include "windwall/scenario/save.hpp"

#include <ctime>
#include <random>

#include "files.hpp"

/// Files from strangers: whatever stands in them, the answer is a list of problems, and soon.
namespace windwall::scenario {
namespace {

// Seconds of this process's own time: generous, the slowest takes a tenth of it.
constexpr double soon = 5;

std::string quickly(const std::string& text) {
    const auto start = std::clock();
    const auto lines = problems_of(text);
    EXPECT_LT(static_cast<double>(std::clock() - start) / CLOCKS_PER_SEC, soon);
    return lines;
}

TEST(Hostile, WhatIsNoScenario) {
    EXPECT_EQ(problems_of("[]"), ": a scenario is expected here, an object; found a list\n");
    EXPECT_EQ(problems_of("3"), ": a scenario is expected here, an object; found a number\n");
    for (const auto* text : {"", "{", "nul", "\xff\xfe", "{\"format\": \"windwall-scenario/1\"",
                             "{\"format\": NaN}", "\"\\ud800\""})
        EXPECT_FALSE(load(text)) << text;
    EXPECT_NE(problems_of("{}"), "");
    EXPECT_NE(problems_of(R"({"format": {"windwall": 1}})"), "");
}

TEST(Hostile, DepthAndLength) {
    EXPECT_NE(quickly(std::string(100000, '[')), "");
    EXPECT_NE(quickly(std::string((std::size_t{4} << 20) + 1, ' ')), "");
}

// Many upgrades, each with as many wrong addresses as there may be.
TEST(Hostile, ManyWrongAddresses) {
    auto menu = fields::Json::array();
    for (int at = 0; at < 64; ++at) {
        fields::Json upgrade{{"id", "u" + std::to_string(at)}};
        for (const auto* verb : {"set", "choose", "scale", "add"})
            for (int entry = 0; entry < 64; ++entry)
                upgrade[verb]["charge_path/blowr/drive_rato_" + std::to_string(entry)] = 1;
        menu.push_back(std::move(upgrade));
    }
    EXPECT_NE(quickly(car(menu.dump()).dump()), "");
}

// Every pair in conflict at every address.
TEST(Hostile, ManyConflicts) {
    auto menu = fields::Json::array();
    for (int at = 0; at < 64; ++at) {
        fields::Json upgrade{{"id", "u" + std::to_string(at)}};
        for (int entry = 1; entry <= 4; ++entry)
            upgrade["set"]["driveline/gearbox/ratios/" + std::to_string(entry)] = 1;
        upgrade["set"]["body/mass"] = "300 kg";
        upgrade["remove"] = {"filter"};
        upgrade["scale"]["charge_path/throttle/bore"] = 1;
        menu.push_back(std::move(upgrade));
    }
    EXPECT_NE(quickly(car(menu.dump()).dump()), "");
}

TEST(Hostile, ManyLimitsOnManyLayouts) {
    auto menu = fields::Json::array();
    auto limits = fields::Json::object();
    for (int at = 0; at < 64; ++at) {
        auto inserts = fields::Json::array();
        for (int part = 0; part < 16; ++part)
            inserts.push_back({{"after", {"filter"}},
                               {"part",
                                {{"id", "p" + std::to_string(at) + "_" + std::to_string(part)},
                                 {"kind", "plenum"},
                                 {"volume", "1 L"}}}});
        menu.push_back({{"id", "u" + std::to_string(at)}, {"insert", inserts}});
        limits["charge_path/q" + std::to_string(at) + "/outlet/temperature"] = {{"max", "1 degC"},
                                                                                {"why", "so"}};
    }
    EXPECT_NE(quickly(car(menu.dump(), fields::Json{{"limits", limits}}.dump()).dump()), "");
    const auto scenario = loaded(car(menu.dump(), R"({"limits": {}})").dump());
    EXPECT_EQ(refused(scenario, ~UpgradeSet{0}), "\"u3\": there are 64 parts already");
}

TEST(Hostile, NothingThatSteersAScreenGetsIntoAMessage) {
    const std::string escape = "\\u001b[2J\\u202e";
    const auto lines = problems_of_car(R"([{"id": ")" + escape + R"("}, {"id": "a", "set": {")" +
                                       escape + R"(": 1}, "requires": [")" + escape +
                                       R"("], "replace": {")" + escape + R"(": 3}}])");
    EXPECT_NE(lines, "");
    EXPECT_EQ(lines.find('\x1b'), std::string::npos);
    EXPECT_EQ(lines.find("\xE2\x80\xAE"), std::string::npos);
}

// Each value of a good file in turn becomes something else; nothing throws, and what loads can be
// installed, saved and read again.
TEST(Hostile, EveryValueOfAGoodFileReplaced) {
    const auto whole = fields::Json::parse(read_file("airfield_cyclecar.json"));
    const auto flat = whole.flatten();
    const std::vector<fields::Json> others{nullptr,
                                           true,
                                           -1,
                                           0,
                                           1e308,
                                           "",
                                           "± kg",
                                           "x",
                                           "1e999 kg",
                                           "0 kg",
                                           "-5 mm",
                                           fields::Json::array(),
                                           fields::Json::object(),
                                           "blower",
                                           "cooler",
                                           "1 %"};
    std::mt19937 random(5);
    for (const auto& [pointer, value] : flat.items()) {
        for (const auto& other : others) {
            if (random() % 8 != 0) continue;
            auto root = whole;
            root[fields::Json::json_pointer(pointer)] = other;
            const auto read = load(root.dump());
            if (!read) continue;
            for (UpgradeSet set = 1; set < 4096; set *= 3)
                EXPECT_NO_THROW(install(*read.scenario, set & 4095)) << pointer;
            EXPECT_TRUE(load(save(*read.scenario))) << pointer << " " << other;
        }
    }
}

// Every set of a menu that is full of what goes wrong only together.
TEST(Hostile, InstallNeverThrows) {
    const auto scenario = loaded_car(R"([
        {"id": "a", "replace": {"gearbox": {"kind": "final_drive", "ratio": 3}}},
        {"id": "b", "set": {"driveline/gearbox/ratios/4": 0.9}},
        {"id": "c", "set": {"driveline/gearbox/ratios/2": 1.9}},
        {"id": "d", "scale": {"body/mass": 0.06}},
        {"id": "e", "add": {"body/mass": "-300 kg"}},
        {"id": "f", "remove": ["plenum", "clutch"]},
        {"id": "g", "insert": [{"before": ["plenum"], "part": {"id": "pot", "kind": "plenum",
                                "volume": "1 L"}}]},
        {"id": "h", "requires": ["g"], "set": {"charge_path/pot/volume": "2 L"}},
        {"id": "i", "set": {"day/altitude": "300 m", "day/pressure": null}},
        {"id": "j", "add": {"day/pressure": "-1 kPa"}},
        {"id": "k", "excludes": ["a"], "set": {"driveline/gearbox/shift_time": "1 s"}}])");
    int refused = 0, made = 0;
    for (UpgradeSet set = 0; set < only(scenario.menu.size()); ++set) {
        const auto result = install(scenario, set);
        ++(result.index() == 0 ? made : refused);
        EXPECT_TRUE(result.index() == 0 || !std::get<1>(result).empty());
    }
    EXPECT_GT(made, 100);
    EXPECT_GT(refused, 100);
}

}  // namespace
}  // namespace windwall::scenario
