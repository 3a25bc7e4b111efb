#include "windwall/solve/full_throttle/top_speed.hpp"

#include "files.hpp"

/// The scenarios that come with windwall, and what a loaded file knows.
namespace windwall::scenario {
namespace {

TEST(Loading, BothScenariosAreFree) {
    for (const auto* name : {"airfield_cyclecar.json", "village_microcar.json"}) {
        const auto read = load(read_file(name), name);
        EXPECT_TRUE(read) << read.violation();
    }
}

TEST(Loading, TheAirfieldCarFallsShortOfItsGoal) {
    const auto car = loaded(read_file("airfield_cyclecar.json"));
    const auto found = solve::top_speed(car.vehicle);
    ASSERT_TRUE(found.outcome.answered());
    const double reached = found.speed() * 3.6;
    EXPECT_GT(reached, 120);
    EXPECT_LT(reached, 128);
    EXPECT_LT(found.speed(), car.vehicle.goal.speed);
}

TEST(Loading, EverythingTogetherGetsTheAirfieldCarClose) {
    const auto car = loaded(read_file("airfield_cyclecar.json"));
    UpgradeSet set = 0;
    for (std::size_t at = 0; at < car.menu.size(); ++at)
        if (car.menu[at].id != "large_blower" && car.menu[at].id != "spray" &&
            car.menu[at].id != "rear_throttle")
            set |= only(at);
    const auto speed = [](const vehicle::Vehicle& vehicle, const Choices& = {}) {
        return solve::top_speed(vehicle).speed();
    };
    const double reached = speed(installed(car, set, resolve_choice(car, set, speed))) * 3.6;
    EXPECT_GT(reached, 136);
    EXPECT_LT(reached, 143);
}

TEST(Loading, TheAirfieldCarHasAMenu) {
    const auto car = loaded(read_file("airfield_cyclecar.json"));
    EXPECT_GE(car.menu.size(), 10u);
    EXPECT_EQ(car.currency, "EUR");
    EXPECT_EQ(car.header.title, "Airfield cyclecar, blown twin, no charge cooler");
    const auto has = [&](auto&& what) { return std::ranges::any_of(car.menu, what); };
    EXPECT_TRUE(has([](const Upgrade& upgrade) { return !upgrade.required_ids.empty(); }));
    EXPECT_TRUE(has([](const Upgrade& upgrade) { return !upgrade.excluded_ids.empty(); }));
    const auto does = [&]<class Verb>(std::type_identity<Verb>) {
        return has([](const Upgrade& upgrade) {
            return std::ranges::any_of(upgrade.actions, &Action::as<Verb>);
        });
    };
    EXPECT_TRUE(does(std::type_identity<Choose>{}));
    EXPECT_TRUE(does(std::type_identity<Replace>{}));
    EXPECT_TRUE(does(std::type_identity<Insert>{}));
}

// But for what is known of its engine, which only tells more.
TEST(Loading, NothingCanBeLeftOutOfTheSmallestFile) {
    auto whole = fields::Json::parse(read_file("village_microcar.json"));
    for (const auto* known_of_the_engine : {"design", "rated"})
        EXPECT_EQ(whole["engine"].erase(known_of_the_engine), 1u);
    EXPECT_TRUE(load(whole.dump()));
    const auto expect_needed = [](fields::Json root, const std::string& what) {
        EXPECT_FALSE(load(root.dump())) << "could be left out: " << what;
    };
    const auto flat = whole.flatten();
    for (const auto& [key, value] : flat.items()) {
        auto root = whole;
        const auto at = fields::Json::json_pointer(key);
        auto& parent = root[at.parent_pointer()];
        if (!parent.is_object()) continue;
        parent.erase(at.back());
        expect_needed(root, key);
    }
    for (const auto& [key, value] : whole.items()) {
        auto root = whole;
        root.erase(key);
        expect_needed(root, key);
    }
}

TEST(Loading, NotesSayWhatWasTypedAndWhere) {
    const auto car = loaded(read_file("airfield_cyclecar.json"));
    const auto* mass = car.notes.find("body/mass");
    ASSERT_NE(mass, nullptr);
    EXPECT_EQ(mass->text, "348 ± 5 kg");
    EXPECT_EQ(mass->sigma, 5);
    EXPECT_GT(mass->place.line, 1);
    const auto* core = car.notes.find("upgrades/cooler/insert/1/part/conductance");
    ASSERT_NE(core, nullptr);
    EXPECT_EQ(core->value, 60);
    EXPECT_EQ(core->sigma, 10);
    EXPECT_EQ(car.notes.find("engine/friction/base"), nullptr);
}

TEST(Loading, LimitsAreInSiAndObservationsAreKept) {
    const auto car = loaded(read_file("airfield_cyclecar.json"));
    ASSERT_EQ(car.limits.size(), 2u);
    EXPECT_EQ(car.limits[0].address, "charge_path/blower/outlet/temperature");
    EXPECT_DOUBLE_EQ(*car.limits[0].max, 423.15);
    EXPECT_FALSE(car.limits[0].min);
    EXPECT_EQ(car.limits[0].why, "the coating of the rotors peels");
    ASSERT_EQ(car.observed.size(), 1u);
    EXPECT_EQ(car.observed[0].what, Doing::top_speed);
    EXPECT_EQ(car.observed[0].knock, Heard::not_heard);
    EXPECT_DOUBLE_EQ(*car.observed[0].speed, 122 / 3.6);
    EXPECT_EQ(car.notes.find("observed/1/boost")->sigma, 4000);
}

TEST(Loading, UnknownFormatsAreRefusedByName) {
    EXPECT_EQ(problems_of_car("[]", R"({"format": "windwall-scenario/9"})"),
              "format: \"windwall-scenario/9\" is no format known here; this version reads "
              "\"windwall-scenario/2\"\n");
    auto root = car("[]");
    root.erase("format");
    EXPECT_EQ(problems_of(root.dump()),
              "format: is missing; write \"format\": \"windwall-scenario/2\"\n");
}

}  // namespace
}  // namespace windwall::scenario
