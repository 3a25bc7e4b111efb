#include "windwall/fields/exact.hpp"
#include "windwall/fields/nearest.hpp"
#include "windwall/fields/plain_text.hpp"
#include "windwall/fields/read.hpp"

#include <nlohmann/json.hpp>

#include <algorithm>

namespace windwall::fields {
namespace {

constexpr std::size_t longest_prose = 4096;  // bytes

std::string expected(const Measure& measure, std::string_view example) {
    auto text = named(measure);
    if (!example.empty()) text += " such as " + in_quotes(example);
    return text + " is expected";
}

std::optional<Quantity> accept(const Expected<Quantity>& reading, const Cursor& value) {
    if (!reading) {
        value.complain(reading.violation);
        return std::nullopt;
    }
    auto note = note_of(*reading);
    note.bare = value.json().is_number();
    if (note.bare) note.text = value.json().dump();
    value.note(std::move(note));
    return *reading;
}

// Of what is only counted by now nobody needs to know what it was meant as.
Expected<Quantity> read_worded(std::string_view text, const Row& row, const Cursor& value) {
    if (value.findings().problems.full())
        if (auto made = read_by_grammar(text, row.measure); !made) return made;
    return read_quantity(text, row);
}

}  // namespace

std::optional<double> read_number(const Row& row, const Cursor& value) {
    const auto& json = value.json();
    std::optional<Quantity> read;
    if (json.is_number()) {
        read = accept(read_bare_number(json.get<double>(), row), value);
    } else if (const auto* text = value.text()) {
        read = accept(read_worded(*text, row, value), value);
    } else {
        value.complain(expected(row.measure, example_text(row)) + ", found " + value.is_what());
    }
    return read ? std::optional(read->value) : std::nullopt;
}

std::optional<Quantity> read_quantity(const Measure& measure, const Cursor& value) {
    const auto& json = value.json();
    if (json.is_number() && bare_number_is_enough(measure)) {
        const auto text = json.dump();
        return accept(
            Quantity{to_si(json.get<double>(), unit_of(measure)), {}, &unit_of(measure), text},
            value);
    }
    if (json.is_number()) return accept(read_quantity(json.dump(), measure), value);
    if (const auto* text = value.text()) return accept(read_quantity(*text, measure), value);
    value.complain(expected(measure, {}) + ", found " + value.is_what());
    return std::nullopt;
}

void read_list(const Row& row, std::vector<double>& into, const Cursor& list) {
    if (!list.is_list()) {
        list.complain("a list is expected here, found " + list.is_what());
        return;
    }
    const auto [least, most] = row.count;
    if (list.size() < least || list.size() > most) {
        list.complain("a list of " + std::to_string(least) + " to " + std::to_string(most) +
                      " entries is expected, found " + std::to_string(list.size()));
        return;
    }
    list.note({});
    into.clear();
    for (std::size_t at = 0; at < list.size(); ++at)
        if (const auto number = read_number(row, list.entry(at))) into.push_back(*number);
}

void read_flag(bool& into, const Cursor& value) {
    if (!value.json().is_boolean()) {
        value.complain("true or false is expected, found " + value.is_what());
        return;
    }
    into = value.json().get<bool>();
    value.note({});
}

std::optional<std::size_t> read_word(std::span<const std::string_view> words, const Cursor& value) {
    const auto* text = value.text();
    if (!text) {
        value.complain("one of " + choices(words) + " is expected, found " + value.is_what());
        return std::nullopt;
    }
    const auto found = std::ranges::find(words, std::string_view(*text));
    if (found == words.end()) {
        const auto near = nearest(*text, words);
        value.complain(in_quotes(*text) + " is not known here; it is one of " + choices(words) +
                       (near.empty() ? "" : "; did you mean \"" + std::string(near) + "\"?"));
        return std::nullopt;
    }
    value.note({});
    return static_cast<std::size_t>(found - words.begin());
}

namespace {

bool is_at_most(std::size_t most, std::string_view things, const Cursor& value) {
    if (value.size() <= most) return true;
    value.complain("at most " + std::to_string(most) + " " + std::string(things) +
                   " are allowed, found " + std::to_string(value.size()));
    return false;
}

void complain_of_shape(std::string_view shape, std::string_view things, const Cursor& value) {
    value.complain(std::string(shape) + " of " + std::string(things) + " is expected here, found " +
                   value.is_what());
}

}  // namespace

bool is_list_of(std::string_view things, std::size_t most, const Cursor& value) {
    if (value.is_list()) return is_at_most(most, things, value);
    complain_of_shape("a list", things, value);
    return false;
}

bool is_object_of(std::string_view things, std::size_t most, const Cursor& value) {
    if (value.is_object()) return is_at_most(most, things, value);
    complain_of_shape("an object", things, value);
    return false;
}

std::optional<std::string> read_id(const Cursor& owner, std::string_view what,
                                   const std::function<std::string(std::string_view)>& violation) {
    if (!owner.has("id")) {
        owner.complain_about_key(
            "id", "is missing; every " + std::string(what) + " has an id of its own");
        return std::nullopt;
    }
    const auto value = owner["id"];
    const auto* id = value.text();
    const auto wrong = id ? violation(*id) : "an id is a text, found " + value.is_what();
    if (wrong.empty()) return *id;
    value.complain(wrong);
    return std::nullopt;
}

std::optional<std::string> read_text(const Cursor& value) {
    const auto* text = value.text();
    if (!text) {
        value.complain("a text is expected, found " + value.is_what());
    } else if (text->size() > longest_prose) {
        value.complain("a text has at most " + std::to_string(longest_prose) + " bytes");
    } else if (!fit_to_show(*text)) {
        value.complain("a text must not hold characters that steer a screen");
    } else {
        value.note({});
        return *text;
    }
    return std::nullopt;
}

}  // namespace windwall::fields
