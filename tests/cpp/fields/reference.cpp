#include "windwall/fields/reference.hpp"

#include <gtest/gtest.h>

#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <sstream>
#include <string>

#include "fields/sample.hpp"

namespace {

using namespace windwall::fields;

TEST(Reference, HasALineForEveryRow) {
    const auto section = reference_section(group_type<sample::Weather>, "`weather`");
    EXPECT_EQ(section, R"(## `weather`

The air of the day.

| key | symbol | value | default ± sigma | meaning | source of the default |
| --- | --- | --- | --- | --- | --- |
| `temperature` | T | -40 to 60 degC | 20 degC ± 3 degC | Temperature in the shade | common practice |
| `pressure` | p | 60 to 110 kPa above vacuum | 101.325 kPa ± 1 kPa | Pressure where the rig stands | common practice |
| `humidity` | phi | 0 to 100 % | 50 % ± 15 % | Relative humidity | common practice |
| `headwind` | w | -20 to 20 m/s | 0 m/s ± 1 m/s | Wind from the front | common practice |
| `altitude` | z | -400 to 5000 m |  | Height above the sea |  |
)");
}

TEST(Reference, HasASectionForEveryStructAndKind) {
    const auto page = reference_page(group_type<sample::Rig>, "Rigs");
    for (const auto* heading :
         {"# Rigs\n", "## The document\n", "## `weather`\n", "## `body`\n", "## `rating`\n",
          "## `sieve`\n", "## `fan`\n", "## `belt`\n", "## `chain`\n"})
        EXPECT_NE(page.find(heading), std::string::npos) << heading;
}

// docs/units.md is this page; WINDWALL_WRITE_DOCS=1 in the environment writes it anew.
TEST(Reference, UnitsPageInTheDocumentationIsFresh) {
    const auto root = std::filesystem::path(__FILE__).parent_path() / ".." / ".." / "..";
    const auto file = root / "docs" / "units.md";
    if (std::getenv("WINDWALL_WRITE_DOCS")) std::ofstream(file) << units_page();
    std::ostringstream written;
    written << std::ifstream(file).rdbuf();
    EXPECT_EQ(written.str(), units_page());
}

}  // namespace
