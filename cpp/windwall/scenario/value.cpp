#include "windwall/scenario/value.hpp"

#include "windwall/fields/read.hpp"
#include "windwall/fields/visit.hpp"

#include <nlohmann/json.hpp>

namespace windwall::scenario {
namespace {

using fields::ChoiceRef;
using fields::Columns;

// Reads a value of the kind that a default member shows.
struct Reader {
    const fields::Row& row;
    const fields::Cursor& value;

    // The readers complain by themselves; whether they did is how a value is known to be good.
    template <class T, class Read>
    std::optional<Value> unless_refused(Read&& read) const {
        const auto before = value.findings().problems.size();
        T made{};
        read(made);
        if (value.findings().problems.size() != before) return std::nullopt;
        return made;
    }
    std::optional<Value> operator()(bool) const {
        return unless_refused<bool>([&](auto& flag) { fields::read_flag(flag, value); });
    }
    std::optional<Value> operator()(const ChoiceRef<const void>& choice) const {
        if (const auto at = fields::read_word(choice.type.names, value)) return Word{*at};
        return std::nullopt;
    }
    std::optional<Value> operator()(const std::string&) const {
        if (auto text = fields::read_text(value)) return *std::move(text);
        return std::nullopt;
    }
    std::optional<Value> operator()(const std::vector<double>&) const {
        return unless_refused<std::vector<double>>(
            [&](auto& list) { fields::read_list(row, list, value); });
    }
    std::optional<Value> operator()(const Columns&) const {
        return unless_refused<Columns>([&](auto& table) { fields::read_table(row, table, value); });
    }
    std::optional<Value> operator()(const auto&) const { return std::nullopt; }
};

// Puts a value that was read for this very member.
struct Putter {
    const Value& value;

    template <class T>
    void operator()(T& member) const {
        if constexpr (std::is_constructible_v<Value, T>) member = std::get<T>(value);
    }
    void operator()(std::optional<double>& held) const {
        const auto* number = std::get_if<double>(&value);
        held = number ? std::optional(*number) : std::nullopt;
    }
    void operator()(const ChoiceRef<void>& choice) const {
        choice.set(std::get<Word>(value).number);
    }
    void operator()(const auto&) const {}
};

struct Getter {
    Value operator()(const std::optional<double>& held) const {
        return held ? Value(*held) : Value();
    }
    Value operator()(const ChoiceRef<const void>& choice) const { return Word{choice.index()}; }
    template <class T>
    Value operator()(const T& member) const {
        if constexpr (std::is_constructible_v<Value, T>)
            return member;
        else
            return {};
    }
};

}  // namespace

fields::Expected<FieldPath> find_input(const vehicle::Vehicle& vehicle, std::string_view address) {
    return fields::find_path(fields::group_type<vehicle::Vehicle>, &vehicle, address);
}

bool overlap(const FieldPath& one, const FieldPath& other) {
    return fields::is_within(one.text(), other.text()) ||
           fields::is_within(other.text(), one.text());
}

std::optional<Value> read_value(const FieldPath& path, const fields::Cursor& value) {
    if (path.may_be_empty() && value.json().is_null()) {
        value.note({});
        return std::monostate{};
    }
    if (!path.is_number()) return fields::visit_default(path.row(), Reader{path.row(), value});
    if (const auto number = fields::read_number(path.row(), value)) return *number;
    return std::nullopt;
}

std::string put(const FieldPath& path, const Value& value, vehicle::Vehicle& vehicle) {
    const auto owner = path.owner(&vehicle, true);
    if (!owner) return owner.why;
    if (!path.entry()) {
        fields::visit(path.row(), owner.object, Putter{value});
    } else if (auto* number = path.find(&vehicle)) {
        *number = std::get<double>(value);
    } else {
        return "there are fewer entries than " + std::to_string(*path.entry() + 1);
    }
    return {};
}

Value value_at(const FieldPath& path, const vehicle::Vehicle& vehicle) {
    if (path.is_number()) {
        const auto number = path.get(&vehicle);
        return number ? Value(*number) : Value();
    }
    const auto owner = path.owner(&vehicle);
    return owner ? fields::visit(path.row(), owner.object, Getter{}) : Value();
}

}  // namespace windwall::scenario
