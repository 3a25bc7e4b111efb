#pragma once
#include "windwall/fields/exact.hpp"
#include "windwall/fields/example.hpp"
#include "windwall/fields/quantity.hpp"
#include "windwall/fields/read.hpp"
#include "windwall/fields/write.hpp"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <string>
#include <vector>

#include "sound_rows.hpp"

/// What every struct with rows owes its users, checked row by row without knowing the struct:
///
///     TEST(Throttle, KeepsTheContractOfRows) { contract::hold<Throttle>(); }
///
/// Breaks each row in every way there is and looks for exactly one problem, at the right address.
/// Where a rule across fields refuses the made-up example, state what it needs:
/// `contract::hold<Day>(R"({"pressure": "98 kPa"})")`.
namespace contract {

using namespace windwall::fields;
using Pointer = Json::json_pointer;

/// A document of T with all the problems in it.
template <class T>
struct Read {
    T made{};
    ReadContext findings{group_type<T>};
    std::vector<Problem> problems;

    explicit Read(const std::string& text) {
        const auto document = Document::parse(text, findings.problems);
        if (document.root()) read(group_type<T>, &made, Cursor(document, findings));
        problems = findings.problems.sorted();
    }
    explicit Read(const Json& json) : Read(json.dump()) {}
    std::string text() const { return findings.problems.text("made up"); }
};

/// Where a struct stands in the document: its address, and the way to it.
struct Site {
    const GroupType& group;
    std::string address;
    Pointer pointer;
};

inline std::string in_unit(double number, const Row& row) {
    const auto unit = std::string(row.measure.unit);
    return shortest(number) + (unit.empty() ? "" : " " + unit);
}

template <class T>
class Contract {
public:
    explicit Contract(Json good) : good_(std::move(good)) {}

    void hold() {
        const Read<T> read(good_);
        ASSERT_EQ(read.text(), "") << good_;
        expect_round_trip();
        hold_group({group_type<T>, "", Pointer()});
    }

private:
    void hold_group(const Site& site) {
        expect_sound(site.group);
        for (const auto& row : site.group.rows()) {
            SCOPED_TRACE(joined(site.address, row.key));
            hold_row(row, site);
        }
    }

    void hold_row(const Row& row, const Site& site) {
        expect_wrong_type(row, site);
        if (must_be_stated(row)) expect_missing(row, site);
        expect_misspelt(row, site);
        if (is_number(row)) {
            expect_range(row, site);
            expect_dimension(row, site);
        }
        descend(row, site);
    }

    // Puts a value in the place of the row's and wants one problem, right there.
    void expect_refused(const Row& row, const Site& site, const Json& value, const char* words) {
        auto broken = good_;
        broken[site.pointer / std::string(row.key)] = value;
        expect_one(broken, joined(site.address, row.key), words);
    }

    static void expect_one(const Json& broken, const std::string& address, const char* words) {
        const Read<T> read(broken);
        ASSERT_EQ(read.problems.size(), 1u) << read.text() << broken;
        EXPECT_EQ(read.problems[0].address, address) << read.text();
        EXPECT_NE(read.problems[0].message.find(words), std::string::npos) << read.text();
        EXPECT_GT(read.problems[0].line, 0);
    }

    void expect_wrong_type(const Row& row, const Site& site) {
        const bool takes_lists =
            row.member.type == FieldType::list || row.member.type == FieldType::parts;
        expect_refused(row, site, takes_lists ? Json::object() : Json::array(), "expected");
        expect_refused(row, site, nullptr, "expected");
    }

    void expect_missing(const Row& row, const Site& site) {
        auto broken = good_;
        broken[site.pointer].erase(std::string(row.key));
        expect_one(broken, joined(site.address, row.key), "is missing");
    }

    void expect_misspelt(const Row& row, const Site& site) {
        auto broken = good_;
        const auto misspelt = std::string(row.key) + "x";
        auto& object = broken[site.pointer];
        object.erase(std::string(row.key));
        object[misspelt] = example_of(row);
        const auto meant = "did you mean \"" + std::string(row.key) + "\"?";
        expect_one(broken, joined(site.address, misspelt), meant.c_str());
    }

    void expect_range(const Row& row, const Site& site) {
        const auto [low, high] = row.range;
        const double step = (high - low) * 1e-6;
        expect_refused(row, site, in_unit(low - step, row), "is outside");
        expect_refused(row, site, in_unit(high + step, row), "is outside");
        for (const double end : {low, high}) {
            auto fine = good_;
            fine[site.pointer / std::string(row.key)] = in_unit(end, row);
            EXPECT_EQ(Read<T>(fine).text().find("is outside"), std::string::npos);
        }
    }

    void expect_dimension(const Row& row, const Site& site) {
        const bool is_mass = row.measure.dimension == Dimension::mass;
        expect_refused(row, site, is_mass ? "1 mm" : "1 kg", "is expected");
        if (!bare_number_is_enough(row.measure)) expect_refused(row, site, 1, "what?");
        expect_refused(row, site, "1e400 " + std::string(row.measure.unit), "beyond");
        expect_refused(row, site, "many", "does not start with a number");
    }

    // Into structs below, and into each kind a part can be of.
    void descend(const Row& row, const Site& site) {
        const auto pointer = site.pointer / std::string(row.key);
        const auto address = joined(site.address, row.key);
        const auto& member = row.member;
        if (member.group) {
            with(pointer, example_of(*member.group), [&] {
                hold_group({*member.group, address, pointer});
            });
        } else if (member.tagged) {
            for (std::size_t kind = 0; kind < member.tagged->kinds.size(); ++kind)
                with(pointer, example_of(*member.tagged, kind), [&] {
                    hold_group({*member.tagged->types[kind], address, pointer});
                });
        } else if (member.parts) {
            const auto& tagged = *member.parts->tagged;
            for (std::size_t kind = 0; kind < tagged.kinds.size(); ++kind)
                with(pointer, Json::array({example_of(tagged, kind, "example_1")}), [&] {
                    hold_group({*tagged.types[kind], joined(address, "example_1"), pointer / 0});
                });
        }
    }

    // With another good value for a while, unless what is there will do.
    template <class Check>
    void with(const Pointer& pointer, const Json& value, const Check& check) {
        const auto before = good_;
        const bool there = good_.contains(pointer) && value.is_object() && !value.contains("kind");
        if (!there) good_[pointer] = value;
        const Read<T> read(good_);
        EXPECT_EQ(read.text(), "") << "state what the rule needs";
        if (read.problems.empty()) check();
        good_ = before;
    }

    void expect_round_trip() {
        const Read<T> first(good_);
        const auto saved = pretty(write(group_type<T>, &first.made, first.findings.notes));
        const Read<T> second(saved);
        EXPECT_EQ(second.text(), "");
        EXPECT_EQ(pretty(write(group_type<T>, &second.made, second.findings.notes)), saved);
    }

    Json good_;
};

/// Holds T to the contract, starting from a made-up example changed by `needed` (JSON, merged).
template <class T>
void hold(std::string_view needed = "{}") {
    auto good = example_of(group_type<T>);
    good.merge_patch(Json::parse(needed));
    Contract<T>(std::move(good)).hold();
}

}  // namespace contract
