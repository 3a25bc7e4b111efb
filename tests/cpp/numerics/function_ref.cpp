#include "windwall/numerics/function_ref.hpp"

#include <gtest/gtest.h>

namespace {

using windwall::numerics::function_ref;

double thrice(double x) { return 3 * x; }

TEST(FunctionRef, CallsWhatItBorrowsAndKeepsItsState) {
    int calls = 0;
    auto counting = [&calls](double x) {
        ++calls;
        return x + 1;
    };
    const function_ref<double(double)> borrowed = counting;
    const function_ref<double(double)> again = borrowed;
    EXPECT_EQ(borrowed(2), 3);
    EXPECT_EQ(again(5), 6);
    EXPECT_EQ(calls, 2);
}

TEST(FunctionRef, TakesConstantCallablesAndPassesReferences) {
    const auto store = [](double& into, double value) { into = value; };
    const function_ref<void(double&, double)> borrowed = store;
    double x = 0;
    borrowed(x, 7);
    EXPECT_EQ(x, 7);
}

TEST(FunctionRef, TakesPlainFunctions) {
    const function_ref<double(double)> borrowed = thrice;
    EXPECT_EQ(borrowed(2), 6);
}

}  // namespace
