// What the files may say about an engine.

#include <gtest/gtest.h>

#include <set>
#include <string>

#include "engines.hpp"
#include "sound_rows.hpp"

namespace windwall::engine {
namespace {

static_assert(EngineKind<Cylinder>);

struct NoKnock {  // a kind without a spark is refused when it is named, not when it is used
    static constexpr std::string_view kind = "no_knock";
    static constexpr std::string_view description = "Lacks most of it.";
    static std::span<const fields::Row> rows() { return {}; }
};
static_assert(fields::Kind<NoKnock> && !EngineKind<NoKnock>);

/// Every row of a group and of the groups inside it.
template <class Visit>
void each_row(const std::string& where, std::span<const fields::Row> rows, Visit&& visit) {
    for (const fields::Row& row : rows) {
        const std::string address = where + "/" + std::string(row.key);
        visit(address, row);
        if (row.member.group) each_row(address, row.member.group->rows(), visit);
    }
}

TEST(Rows, AreSound) { contract::expect_sound(fields::group_type<Cylinder>); }

TEST(Rows, LeadToEverythingAnEngineIsDescribedBy) {
    std::set<std::string> seen;
    each_row("engine", Cylinder::rows(),
             [&](const std::string& address, const fields::Row&) { seen.insert(address); });
    EXPECT_GE(seen.size(), 50u);
    EXPECT_TRUE(seen.contains("engine/knock_anchor/octane_number"));
    EXPECT_TRUE(seen.contains("engine/spark/margin"));
}

}  // namespace
}  // namespace windwall::engine
