#pragma once
#include "windwall/fields/measure.hpp"
#include "windwall/fields/member.hpp"

#include <cstddef>
#include <span>
#include <string_view>

/// One row describes one quantity, once, for everybody who needs to know it: the reader and the
/// writer of files, error messages, the JSON Schema, the reference pages, Python, addresses,
/// sweeps and the attributes of results. Its default lives in the struct's member initialiser.
namespace windwall::fields {

/// Allowed values, both ends included, in the row's own unit.
struct Range {
    double low{};
    double high{};
};

/// How many entries a list may have.
struct Count {
    std::size_t least = 1;
    std::size_t most = 64;
};

enum class Need { required, with_default, optional };

/// One column of a table.
struct Column {
    std::string_view key;
    Measure measure;
    Range range;
    std::string_view sentence = {};
};

/// The result that a rating bounds from above, and what is said where it is passed.
struct Watched {
    std::string_view result{};  // address from the part's own result; with a slash first, from all
    std::string_view why{};
    std::optional<double> (*rating)(const void* owner) =
        nullptr;  // where the member alone is not it
};

/// A method of the struct as its rating: `rated_by<&Tyres::load_rating>`.
template <auto method>
inline constexpr auto rated_by = [](const void* owner) -> std::optional<double> {
    return (static_cast<const detail::OwnerOf<method>*>(owner)->*method)();
};

struct Row {
    std::string_view key;
    std::string_view symbol;
    Member member;
    Measure measure{};
    Range range{};
    Need need = Need::with_default;
    double sigma = 0;  // one standard deviation of the default, in the row's unit
    std::string_view sentence;
    std::string_view source;  // of the default
    std::span<const Column> columns{};
    Count count{};
    bool whole = false;  // counted, as teeth and cylinders are
    Watched watched{};
    std::string_view into{};    // the list beside it whose entries, from 0, a whole number names
    std::string_view chosen{};  // the group that chooses what stands in where it is not stated

    /// A rating: the result that it bounds.
    constexpr Row watching(std::string_view result, std::string_view why,
                           std::optional<double> (*rating)(const void*) = nullptr) const {
        Row rated = *this;
        rated.watched = {result, why, rating};
        return rated;
    }
    /// A place in a list of the same struct, or several.
    constexpr Row pointing_into(std::string_view list) const {
        Row place = *this;
        place.into = list;
        return place;
    }
    /// What stands in for it is chosen by another group, where that is stated.
    constexpr Row chosen_by(std::string_view group) const {
        Row by = *this;
        by.chosen = group;
        return by;
    }
    constexpr bool is_rating() const { return !watched.result.empty(); }
};

/// A number the builder has to state.
constexpr Row required(std::string_view key, std::string_view symbol, Member member,
                       Measure measure, Range range, std::string_view sentence) {
    return {key, symbol, member, measure, range, Need::required, 0, sentence, {}};
}

/// A number with a usual value, known to one standard deviation `sigma`, and where it comes from.
constexpr Row with_default(std::string_view key, std::string_view symbol, Member member,
                           Measure measure, Range range, double sigma, std::string_view sentence,
                           std::string_view source) {
    return {key, symbol, member, measure, range, Need::with_default, sigma, sentence, source};
}

/// A number that may be absent, and then means nothing is known or nothing is there.
constexpr Row optional(std::string_view key, std::string_view symbol, Member member,
                       Measure measure, Range range, std::string_view sentence) {
    return {key, symbol, member, measure, range, Need::optional, 0, sentence, {}};
}

/// A number of things, of which there is no half: `whole(required("teeth", ...))`.
constexpr Row whole(Row row) {
    row.whole = true;
    return row;
}

/// Several numbers of one kind.
constexpr Row list(std::string_view key, std::string_view symbol, Member member, Measure measure,
                   Range range, Count count, std::string_view sentence) {
    Row row{key, symbol, member, measure, range, Need::required, 0, sentence, {}};
    row.count = count;
    return row;
}

constexpr Row table(std::string_view key, Member member, std::span<const Column> columns,
                    std::string_view sentence, Need need = Need::optional) {
    Row row{key, {}, member, {}, {}, need, 0, sentence, {}};
    row.columns = columns;
    return row;
}

constexpr Row text(std::string_view key, Member member, std::string_view sentence,
                   Need need = Need::with_default) {
    return {key, {}, member, {}, {}, need, 0, sentence, {}};
}

constexpr Row choice(std::string_view key, Member member, std::string_view sentence,
                     std::string_view source = {}, Need need = Need::with_default) {
    return {key, {}, member, {}, {}, need, 0, sentence, source};
}

constexpr Row flag(std::string_view key, Member member, std::string_view sentence,
                   std::string_view source = {}) {
    return {key, {}, member, {}, {}, Need::with_default, 0, sentence, source};
}

/// A nested struct whose own rows say what is required of it.
constexpr Row group(std::string_view key, Member member, std::string_view sentence,
                    Need need = Need::with_default) {
    return {key, {}, member, {}, {}, need, 0, sentence, {}};
}

constexpr Row optional_group(std::string_view key, Member member, std::string_view sentence) {
    return group(key, member, sentence, Need::optional);
}

/// One of several kinds of part.
constexpr Row tagged(std::string_view key, Member member, std::string_view sentence,
                     Need need = Need::required) {
    return group(key, member, sentence, need);
}

/// A list of parts, each with an id.
constexpr Row parts(std::string_view key, Member member, std::string_view sentence,
                    Need need = Need::required) {
    return group(key, member, sentence, need);
}

/// What the model answers with beside numbers: a word, a text, a whole number, a list.
constexpr Row fact(std::string_view key, Member member, std::string_view sentence) {
    return group(key, member, sentence, Need::optional);
}

/// A number the model answers with.
constexpr Row result(std::string_view key, std::string_view symbol, Member member, Measure measure,
                     std::string_view sentence) {
    return {key, symbol, member, measure, {}, Need::optional, 0, sentence, {}};
}

}  // namespace windwall::fields
