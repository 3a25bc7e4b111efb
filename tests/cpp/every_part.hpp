#pragma once
#include "windwall/fields/one_of.hpp"

#include <gtest/gtest.h>

#include <string>

/// The alternatives of a OneOf as the types of a typed test suite, each named by its kind:
/// `TYPED_TEST_SUITE(EveryPart, TypesOf<charge::Part>::type, ByKind);`
template <class OneOf>
struct TypesOf;
template <class... Ts>
struct TypesOf<windwall::fields::OneOf<Ts...>> {
    using type = testing::Types<Ts...>;
};
struct ByKind {
    template <class T>
    static std::string GetName(int) {
        return std::string(T::kind);
    }
};
