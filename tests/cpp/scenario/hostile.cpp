#include "windwall/scenario/edit.hpp"
#include "windwall/scenario/save.hpp"

#include <algorithm>
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
    for (const auto* text : {"", "{", "nul", "\xff\xfe", "{\"format\": \"windwall-scenario/2\"",
                             "{\"format\": NaN}", "\"\\ud800\""})
        EXPECT_FALSE(load(text)) << text;
    EXPECT_NE(problems_of("{}"), "");
    EXPECT_NE(problems_of(R"({"format": {"windwall": 1}})"), "");
}

TEST(Hostile, DepthAndLength) {
    EXPECT_NE(quickly(std::string(100000, '[')), "");
    EXPECT_NE(quickly(std::string((std::size_t{4} << 20) + 1, ' ')), "");
}

// A file of 4 MiB made of `more` behind `start`, over and over, and closed by `end`.
std::string of_four_mib(std::string start, std::string_view more, std::string_view end) {
    while (start.size() + more.size() + end.size() <= std::size_t{4} << 20)
        start += more;
    return start.append(end);
}

std::string format_and(std::string_view rest) {
    return R"({"format": "windwall-scenario/2", )" + std::string(rest);
}

TEST(Hostile, AGiantTextIsNoQuantityAndNoUnit) {
    for (const auto* digits : {"1", "0.1", "1e1", " ", "±", "²", "kg"}) {
        const auto mass = of_four_mib(format_and(R"("body": {"mass": ")"), digits, "\"}}");
        EXPECT_NE(quickly(mass).find("it is longer than 64 characters; write for example"),
                  std::string::npos);
        const auto cost =
            of_four_mib(format_and(R"("upgrades": [{"id": "a", "cost": ")"), digits, "\"}]}");
        EXPECT_NE(quickly(cost).find("longer than 64"), std::string::npos);
        const auto word = of_four_mib(format_and(R"("units": ")"), digits, "\"}");
        EXPECT_NE(quickly(word).find("is not known here"), std::string::npos);
        EXPECT_NE(quickly(of_four_mib(format_and(R"("engine": {"kind": "torque_curve", "torque":
            {"rows": [], "columns": {"speed": ")"),
                                      digits, "\"}}}}")),
                  "");
    }
}

TEST(Hostile, AGiantNumber) {
    for (const auto* digits : {"1", "0"}) {
        EXPECT_NE(quickly(of_four_mib(format_and(R"("body": {"mass": 0.)"), digits, "}}")), "");
        EXPECT_NE(quickly(of_four_mib(format_and(R"("body": {"mass": 1)"), digits, "}}")), "");
        EXPECT_NE(quickly(of_four_mib(format_and(R"("body": {"mass": 1e1)"), digits, "}}")), "");
    }
}

TEST(Hostile, MoreValuesAndKeysThanAnyVehicleHas) {
    EXPECT_EQ(quickly(of_four_mib("[", "0,", "0]")), ": more than 50000 values\n");
    EXPECT_EQ(quickly(of_four_mib("[", "[],", "0]")), ": more than 50000 values\n");
    EXPECT_EQ(quickly(of_four_mib("{\"a\":0", ",\"a\":0", "}")).find(": more than 500 keys"),
              std::string::npos);
    std::string keys = "{\"a\":0";
    for (int at = 0; at < 300000; ++at)
        keys += ",\"" + std::to_string(at) + "\":0";
    EXPECT_EQ(quickly(keys + "}"), ": more than 500 keys in one object\n");
}

TEST(Hostile, GiantKeys) {
    EXPECT_EQ(quickly(of_four_mib("{\"mass", "s", "\": 1}")), ": a key longer than 256 bytes\n");
    const auto long_key = "{\"" + std::string(1 << 20, 'a') + "\": [[]";
    EXPECT_EQ(quickly(of_four_mib(long_key, ",[]", "]}")), ": a key longer than 256 bytes\n");
}

// Keys that are nearly right, in as many places as there may be.
TEST(Hostile, ManyKeysThatAreNearlyRight) {
    std::string menu;
    for (int upgrade = 0; upgrade < 64; ++upgrade) {
        std::string keys = "{\"id\": \"u" + std::to_string(upgrade) + "\"";
        for (int at = 0; at < 480; ++at)
            keys += ", \"titlerequiresexcludesreplaceremoveinsert" + std::to_string(at) + "\": 1";
        menu += (menu.empty() ? "[" : ", ") + keys + "}";
    }
    const auto read = load(format_and("\"upgrades\": " + menu + "]}"));
    EXPECT_GT(read.problems.size(), fields::Problems::most);
    EXPECT_NE(read.violation().find(" more problems\n"), std::string::npos);
    EXPECT_NE(quickly(format_and("\"upgrades\": " + menu + "]}")), "");
}

TEST(Hostile, WhatStandsBehindANul) {
    auto text = read_file("airfield_cyclecar.json");
    EXPECT_EQ(problems_of(text + '\0' + "{"),
              ": a NUL character stands here; this is not a text\n");
    EXPECT_EQ(load(text + '\0').problems.sorted()[0].line,
              1 + std::count(text.begin(), text.end(), '\n'));
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
