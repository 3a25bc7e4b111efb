#include "files.hpp"

/// The pages about scenario files show what can be read.
namespace windwall::scenario {
namespace {

// The texts between ```language and ```.
std::vector<std::string> blocks_of(const std::string& page, const std::string& language) {
    std::vector<std::string> blocks;
    const auto opening = "```" + language + "\n";
    for (std::size_t at = 0; (at = page.find(opening, at)) != std::string::npos;) {
        at += opening.size();
        const auto end = page.find("```", at);
        blocks.push_back(page.substr(at, end - at));
        at = end + 3;
    }
    return blocks;
}

// An upgrade joins the menu of the car of the airfield; other keys stand at its root.
std::string surroundings(const fields::Json& example) {
    auto root = fields::Json::parse(read_file("airfield_cyclecar.json"));
    if (example.contains("id"))
        root["upgrades"].push_back(example);
    else
        root.update(example);
    return root.dump();
}

TEST(Docs, EveryExampleCanBeRead) {
    const auto blocks = blocks_of(read_file("../docs/scenario_files.md"), "json");
    EXPECT_GE(blocks.size(), 6u);
    for (const auto& block : blocks) {
        auto root = fields::Json::parse(block);
        // What the menu sets too would be in conflict with an example of the same.
        if (root.contains("id")) root["excludes"] = {"gearing", "shroud", "cooler_duct"};
        const auto read = load(surroundings(root));
        EXPECT_TRUE(read) << block << read.violation();
    }
}

TEST(Docs, TheErrorsShownAreThoseOfTheFile) {
    const auto blocks = blocks_of(read_file("../docs/errors.md"), "text");
    ASSERT_EQ(blocks.size(), 1u);
    EXPECT_EQ(blocks[0], read_file("invalid/ten_mistakes.txt"));
}

}  // namespace
}  // namespace windwall::scenario
