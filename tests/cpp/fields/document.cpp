#include "windwall/fields/document.hpp"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <string>

namespace {

using namespace windwall::fields;

std::string problems_of(std::string_view text) {
    Problems problems;
    Document::parse(text, problems);
    return problems.text("f");
}

std::string repeated(std::string_view text, int times) {
    std::string all;
    for (int i = 0; i < times; ++i)
        all += text;
    return all;
}

TEST(Document, KnowsWhereEveryValueAndKeyStands) {
    Problems problems;
    const auto document =
        Document::parse("{\n \"ä\": [1, \"x\",\n  {\"b\" : null}],\t\"c\":-2.5e1}", problems);
    ASSERT_TRUE(problems.empty());
    const auto& root = *document.root();
    EXPECT_EQ(document.place(root), (Place{1, 1}));
    EXPECT_EQ(document.key_place(root["ä"]), (Place{2, 2}));
    EXPECT_EQ(document.place(root["ä"]), (Place{2, 7}));
    EXPECT_EQ(document.place(root["ä"][0]), (Place{2, 8}));
    EXPECT_EQ(document.place(root["ä"][1]), (Place{2, 11}));
    EXPECT_EQ(document.place(root["ä"][2]), (Place{3, 3}));
    EXPECT_EQ(document.key_place(root["ä"][2]["b"]), (Place{3, 4}));
    EXPECT_EQ(document.place(root["ä"][2]["b"]), (Place{3, 10}));
    EXPECT_EQ(document.key_place(root["c"]), (Place{3, 18}));
    EXPECT_EQ(document.place(root["c"]), (Place{3, 22}));
    EXPECT_EQ(document.place(Json(1)), Place{});
}

TEST(Document, ADuplicateKeyIsAProblemAndItsFirstValueStays) {
    Problems problems;
    const auto document = Document::parse(
        R"({"a": {"b": 1, "c": 2, "b": {"b": 3, "b": [4]}}, "d": [{"e": 1, "e": 2}], "a": 5})",
        problems);
    EXPECT_EQ(problems.text("f"),
              "f:1:24 a/b: the key \"b\" stands twice in one object\n"
              "f:1:65 d/1/e: the key \"e\" stands twice in one object\n"
              "f:1:75 a: the key \"a\" stands twice in one object\n");
    ASSERT_TRUE(document.root());
    EXPECT_EQ(document.root()->dump(), R"({"a":{"b":1,"c":2},"d":[{"e":1}]})");
    EXPECT_EQ(document.place((*document.root())["d"][0]["e"]), (Place{1, 62}));
}

TEST(Document, SyntaxErrorsHaveAPlace) {
    EXPECT_EQ(problems_of("{\"a\": 1,\n \"b\": ]}").substr(0, 7), "f:2:7: ");
    EXPECT_EQ(problems_of("{\"a\": 1,}").substr(0, 7), "f:1:9: ");
    for (const auto* text :
         {"", " ", "{", "[1,", "{\"a\" 1}", "NaN", "{\"a\": Infinity}", "// x\n1", "{'a': 1}",
          "[01]", "[1.]", "[.5]", "\"\x01\"", "\"\xff\"", "1 2"}) {
        Problems problems;
        const auto document = Document::parse(text, problems);
        EXPECT_EQ(problems.size(), 1u) << text;
        EXPECT_FALSE(document.root()) << text;
    }
}

TEST(Document, NumbersBeyondNumbersAreRefused) {
    EXPECT_EQ(problems_of("{\"a\": 1e400}"), "f:1:11: a number beyond any number this can hold\n");
}

TEST(Document, NestingIsBounded) {
    EXPECT_EQ(problems_of(repeated("[", 32) + repeated("]", 32)), "");
    const auto deep = problems_of(repeated("[", 33) + repeated("]", 33));
    EXPECT_TRUE(deep.starts_with("f:1:33 ")) << deep;
    EXPECT_TRUE(deep.ends_with(": nested more than 32 levels deep\n")) << deep;
    EXPECT_NE(problems_of(repeated("[", 100000)), "");
    EXPECT_NE(problems_of(repeated("{\"a\":", 100000)), "");
    EXPECT_NE(problems_of("{\"a\":1,\"a\":" + repeated("[", 100000)), "");
}

TEST(Document, SizeIsBounded) {
    EXPECT_EQ(problems_of("[\"" + std::string(5 << 20, 'x') + "\"]"), "f:1:1: longer than 4 MiB\n");
    std::string keys = "{";
    for (int i = 0; i < 501; ++i)
        keys += "\"k" + std::to_string(i) + "\": 0,";
    EXPECT_NE(problems_of(keys).find("more than 500 keys"), std::string::npos);
}

TEST(Document, MessagesDoNotSteerTheScreen) {
    const auto text =
        problems_of("{\"\\u001b[31m\\u202e\\u0007\": 1, \"\\u001b[31m\\u202e\\u0007\": 2}");
    EXPECT_EQ(text, "f:1:31 ?[31m??: the key \"?[31m??\" stands twice in one object\n");
}

TEST(Problems, AreCountedBeyondTheFirstHundreds) {
    Problems problems;
    for (int i = 0; i < 1000; ++i)
        problems.add("a", {1, i}, "wrong");
    EXPECT_EQ(problems.size(), 1000u);
    EXPECT_EQ(problems.sorted().size(), Problems::most);
    EXPECT_TRUE(problems.text("f").ends_with("and 800 more problems\n"));
}

}  // namespace
