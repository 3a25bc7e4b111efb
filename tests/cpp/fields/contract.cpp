#include "contract.hpp"

#include <gtest/gtest.h>

#include <random>
#include <string>

#include "fields/sample.hpp"

namespace {

TEST(Rows, KeepTheContract) { contract::hold<sample::Rig>(); }

TEST(Rows, KeepTheContractAlone) {
    contract::hold<sample::Weather>();
    contract::hold<sample::Fan>();
}

constexpr std::string_view spice[] = {
    "\"",    "{",        "}",          "[",       "]",      ",",  ":",  "null", "1e308",
    "-",     "±",        "\\u0000",    "\xff",    "kg",     "id", "\n", " ",    "NaN",
    "36 mm", "\"kind\"", "\"blower\"", "\x1b[2J", "[[[[[[", "0",  "%",  "/"};

std::string mutated(std::string text, std::mt19937& random) {
    const auto below = [&](std::size_t most) { return random() % most; };
    for (auto times = 1 + below(4); times > 0 && !text.empty(); --times) {
        const auto at = below(text.size());
        const auto length = std::min<std::size_t>(below(12), text.size() - at);
        switch (below(4)) {
            case 0: text.erase(at, length); break;
            case 1: text.insert(at, spice[below(std::size(spice))]); break;
            case 2: text[at] = static_cast<char>(below(256)); break;
            default: text.insert(below(text.size()), text.substr(at, length * 8)); break;
        }
    }
    return text;
}

// Whatever is done to a text, reading ends, and either there is a problem to show, on one line and
// fit for a screen, or what was read can be written and read again.
TEST(Rows, SurviveAnyText) {
    std::mt19937 random(20240229);
    int fine = 0;
    for (int i = 0; i < 6000; ++i) {
        const auto text = mutated(std::string(sample::rig_text), random);
        const contract::Read<sample::Rig> read(text);
        for (const auto& problem : read.problems) {
            EXPECT_FALSE(problem.message.empty());
            for (const char letter : problem.address + problem.message)
                EXPECT_GE(static_cast<unsigned char>(letter), 0x20) << problem.message;
        }
        if (!read.problems.empty()) continue;
        ++fine;
        using namespace windwall::fields;
        const auto saved = pretty(write(group_type<sample::Rig>, &read.made, read.findings.notes));
        const contract::Read<sample::Rig> again(saved);
        EXPECT_EQ(again.text(), "") << text;
        EXPECT_EQ(pretty(write(group_type<sample::Rig>, &again.made, again.findings.notes)), saved);
    }
    EXPECT_GT(fine, 60);
}

}  // namespace
