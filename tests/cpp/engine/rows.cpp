// What the files may say about an engine.

#include "windwall/fields/units.hpp"

#include <gtest/gtest.h>

#include <set>
#include <string>

#include "engines.hpp"

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

/// The file's number of an SI value.
double in_file(double si, const fields::Measure& measure) {
    const fields::Unit& unit = fields::unit_of(measure);
    const auto number = [](std::string_view text) { return std::stod(std::string(text)); };
    return si * number(unit.divisor) / number(unit.factor) - number(unit.shift);
}

void expect_default_in_range(const std::string& address, const fields::Row& row, void* owner) {
    if (row.member.group) {
        void* member = row.member.of(owner);
        if (const void* held = row.member.group->peek(member);
            held && !row.member.group->rows().empty())
            for (const fields::Row& inner : row.member.group->rows())
                expect_default_in_range(address + "/" + std::string(inner.key), inner,
                                        row.member.group->open(member));
        return;
    }
    if (row.need != fields::Need::with_default || row.member.type != fields::FieldType::number)
        return;
    const double value = in_file(*static_cast<double*>(row.member.of(owner)), row.measure);
    EXPECT_GE(value, row.range.low - 1e-9) << address;
    EXPECT_LE(value, row.range.high + 1e-9) << address;
    EXPECT_LT(row.sigma, row.range.high - row.range.low) << address;
}

TEST(Rows, DefaultsLieInTheirRanges) {
    Cylinder engine;
    engine.injector.emplace();
    for (const fields::Row& row : Cylinder::rows())
        expect_default_in_range("engine/" + std::string(row.key), row, &engine);
}

TEST(Rows, KeysAreUniqueAndEveryRowSaysWhatItIs) {
    std::set<std::string> seen;
    each_row("engine", Cylinder::rows(), [&](const std::string& address, const fields::Row& row) {
        EXPECT_TRUE(seen.insert(address).second) << address;
        EXPECT_FALSE(row.sentence.empty()) << address;
        if (row.need == fields::Need::with_default &&
            row.member.type == fields::FieldType::number) {
            EXPECT_FALSE(row.source.empty()) << address;
            EXPECT_GE(row.sigma, 0) << address;
        }
    });
    EXPECT_GE(seen.size(), 50u);
    EXPECT_TRUE(seen.contains("engine/knock_anchor/octane_number"));
    EXPECT_TRUE(seen.contains("engine/spark/margin"));
}

}  // namespace
}  // namespace windwall::engine
