#include "windwall/fields/canonical.hpp"

#include "windwall/fields/read.hpp"
#include "windwall/fields/sha256.hpp"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <bit>
#include <cmath>
#include <cstdint>
#include <stdexcept>
#include <string>

#include "fields/sample.hpp"

namespace {

using namespace windwall::fields;

// FIPS 180-4 points to these example values (NIST, "Examples with intermediate values").
TEST(Sha256, AgreesWithItsStandard) {
    EXPECT_EQ(sha256("abc"), "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
    EXPECT_EQ(sha256(""), "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855");
    EXPECT_EQ(sha256("abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq"),
              "248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1");
    EXPECT_EQ(sha256("abcdefghbcdefghicdefghijdefghijkefghijklfghijklmghijklmnhijklmnoijklmnopjklmn"
                     "opqklmnopqrlmnopqrsmnopqrstnopqrstu"),
              "cf5b16a778af8380036ce59e7b0492370b249b11e8f07a51afac45037afee9d1");
    EXPECT_EQ(sha256(std::string(1000000, 'a')),
              "cdc76e5c9914fb9281a1c7e284d73e67f1809a48a497200e046d39ccc7112cd0");
}

// RFC 8785, appendix B: IEEE-754 bit patterns and their ECMAScript texts.
TEST(Canonical, WritesNumbersAsTheRfcDoes) {
    const std::pair<std::uint64_t, std::string> samples[] = {
        {0x0000000000000000, "0"},
        {0x8000000000000000, "0"},
        {0x0000000000000001, "5e-324"},
        {0x8000000000000001, "-5e-324"},
        {0x7fefffffffffffff, "1.7976931348623157e+308"},
        {0xffefffffffffffff, "-1.7976931348623157e+308"},
        {0x4340000000000000, "9007199254740992"},
        {0xc340000000000000, "-9007199254740992"},
        {0x4430000000000000, "295147905179352830000"},
        {0x44b52d02c7e14af5, "9.999999999999997e+22"},
        {0x44b52d02c7e14af6, "1e+23"},
        {0x44b52d02c7e14af7, "1.0000000000000001e+23"},
        {0x444b1ae4d6e2ef4e, "999999999999999700000"},
        {0x444b1ae4d6e2ef4f, "999999999999999900000"},
        {0x444b1ae4d6e2ef50, "1e+21"},
        {0x3eb0c6f7a0b5ed8c, "9.999999999999997e-7"},
        {0x3eb0c6f7a0b5ed8d, "0.000001"},
        {0x41b3de4355555553, "333333333.3333332"},
        {0x41b3de4355555554, "333333333.33333325"},
        {0x41b3de4355555555, "333333333.3333333"},
        {0x41b3de4355555556, "333333333.3333334"},
        {0x41b3de4355555557, "333333333.33333343"},
        {0xbecbf647612f3696, "-0.0000033333333333333333"},
        {0x43143ff3c1cb0959, "1424953923781206.2"},
    };
    for (const auto& [bits, text] : samples)
        EXPECT_EQ(canonical(Json(std::bit_cast<double>(bits))), text);
    EXPECT_THROW(canonical(Json(std::nan(""))), std::domain_error);
    EXPECT_THROW(canonical(Json(INFINITY)), std::domain_error);
}

// RFC 8785, section 3.2.3: sorted by UTF-16 code units, which is not the order of UTF-8 bytes.
TEST(Canonical, SortsKeysAsTheRfcDoes) {
    const auto json = Json::parse(R"({
        "\u20ac": "Euro Sign", "\r": "Carriage Return", "\ufb33": "Hebrew Letter Dalet With Dagesh",
        "1": "One", "\ud83d\ude00": "Emoji: Grinning Face", "\u0080": "Control",
        "\u00f6": "Latin Small Letter O With Diaeresis"})");
    EXPECT_EQ(canonical(json),
              "{\"\\r\":\"Carriage Return\",\"1\":\"One\",\"\u0080\":\"Control\","
              "\"ö\":\"Latin Small Letter O With Diaeresis\",\"€\":\"Euro Sign\","
              "\"😀\":\"Emoji: Grinning Face\",\"\uFB33\":\"Hebrew Letter Dalet With Dagesh\"}");
}

// RFC 8785, section 3.2.2: the example of its figure.
TEST(Canonical, WritesStringsAndLiteralsAsTheRfcDoes) {
    const auto json = Json::parse(R"({
        "numbers": [333333333.33333329, 1E30, 4.50, 2e-3, 0.000000000000000000000000001],
        "string": "\u20ac$\u000F\u000aA'\u0042\u0022\u005c\\\"\/",
        "literals": [null, true, false]})");
    EXPECT_EQ(
        canonical(json),
        R"({"literals":[null,true,false],"numbers":[333333333.3333333,1e+30,4.5,0.002,1e-27],)"
        R"("string":"€$\u000f\nA'B\"\\\\\"/"})");
}

std::string digest_of(std::string text, std::string_view from = "", std::string_view to = "") {
    if (!from.empty()) {
        EXPECT_NE(text.find(from), std::string::npos) << from;
        text.replace(text.find(from), from.size(), to);
    }
    sample::Rig rig;
    ReadContext findings(group_type<sample::Rig>);
    const auto document = Document::parse(text, findings.problems);
    read(group_type<sample::Rig>, &rig, Cursor(document, findings));
    EXPECT_EQ(findings.problems.text("f"), "");
    return sha256(canonical(physics_of(group_type<sample::Rig>, &rig, findings.notes)));
}

TEST(Physics, IsTheSameHoweverItIsWritten) {
    const std::string text(sample::rig_text);
    const auto digest = digest_of(text);
    EXPECT_EQ(digest_of(text, "36 mm", "3.6 cm"), digest);
    EXPECT_EQ(digest_of(text, "0.6 kPa", "600 Pa"), digest);
    EXPECT_EQ(digest_of(text, "38 kPa ± 5 %", "38 +/- 1.9 kPa"), digest);
    EXPECT_EQ(digest_of(text, "Two drums and a fan", "Another name"), digest);
    EXPECT_EQ(digest_of(text, "\"mood\": \"brisk\",\n  \"lit\": true",
                        "\"lit\": true, \"mood\": \"brisk\""),
              digest);
}

TEST(Physics, DiffersWithEveryFactAndWithHowWellItIsKnown) {
    const std::string text(sample::rig_text);
    const auto digest = digest_of(text);
    EXPECT_NE(digest_of(text, "36 mm", "36.0001 mm"), digest);
    EXPECT_NE(digest_of(text, "348 ± 5 kg", "348 kg"), digest);
    EXPECT_NE(digest_of(text, "\"brisk\"", "\"wild\""), digest);
    EXPECT_NE(digest_of(text, "\"cloth\"", "\"cotton\""), digest);
    EXPECT_NE(digest_of(text, "[3000, 22.5]", "[3000, 22.6]"), digest);
    // A stated default is certain, an unstated one is not.
    EXPECT_NE(
        digest_of(text, "\"drop\": \"0.6 kPa\"", "\"drop\": \"0.6 kPa\", \"at_flow\": \"25 g/s\""),
        digest);
    EXPECT_EQ(digest_of(text, "\"drop\": \"0.6 kPa\"",
                        "\"drop\": \"0.6 kPa\", \"at_flow\": \"25 ± 2 g/s\""),
              digest);
}

}  // namespace
