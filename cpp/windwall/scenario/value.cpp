#include "windwall/scenario/value.hpp"

#include "windwall/fields/read.hpp"

#include <nlohmann/json.hpp>

namespace windwall::scenario {
namespace {

using fields::FieldType;

// The readers complain by themselves; whether they did is how a value is known to be good.
template <class Read>
std::optional<Value> unless_refused(const fields::Cursor& value, Read&& read) {
    const auto before = value.findings().problems.size();
    Value made = read();
    if (value.findings().problems.size() != before) return std::nullopt;
    return made;
}

std::optional<Value> read_shape(const fields::Row& row, const fields::Cursor& value) {
    switch (row.member.shape) {
        case FieldType::flag:
            return unless_refused(value, [&] {
                bool flag{};
                fields::read_flag(flag, value);
                return Value(flag);
            });
        case FieldType::choice:
            if (const auto at = fields::read_word(row.member.choice->names, value))
                return Word{*at};
            return std::nullopt;
        case FieldType::text:
            if (auto text = fields::read_text(value)) return *std::move(text);
            return std::nullopt;
        case FieldType::list:
            return unless_refused(value, [&] {
                std::vector<double> list;
                fields::read_list(row, list, value);
                return Value(std::move(list));
            });
        case FieldType::table:
            return unless_refused(value, [&] {
                fields::Columns columns;
                fields::read_table(row, columns, value);
                return Value(std::move(columns));
            });
        default: return std::nullopt;
    }
}

std::string put_number(const Spot& spot, double value, void* owner) {
    if (spot.may_be_empty()) {
        *static_cast<std::optional<double>*>(spot.row->member.of(owner)) = value;
        return {};
    }
    double* number = number_in(spot, owner);
    if (!number) return "there are fewer entries than " + std::to_string(*spot.entry + 1);
    *number = value;
    return {};
}

// Puts what is no number into its member.
struct Putter {
    const Spot& spot;
    void* owner;

    void* member() const { return spot.row->member.of(owner); }
    template <class T>
    std::string into(const T& value) const {
        *static_cast<T*>(member()) = value;
        return {};
    }
    std::string operator()(std::monostate) const { return into(std::optional<double>()); }
    std::string operator()(double value) const { return put_number(spot, value, owner); }
    std::string operator()(bool value) const { return into(value); }
    std::string operator()(Word word) const {
        spot.row->member.choice->set(member(), word.number);
        return {};
    }
    std::string operator()(const std::string& text) const { return into(text); }
    std::string operator()(const std::vector<double>& list) const { return into(list); }
    std::string operator()(const fields::Columns& columns) const { return into(columns); }
};

}  // namespace

std::optional<Value> read_value(const Spot& spot, const fields::Cursor& value) {
    if (spot.may_be_empty() && value.json().is_null()) {
        value.note({});
        return std::monostate{};
    }
    if (!spot.is_number()) return read_shape(*spot.row, value);
    if (const auto number = fields::read_number(*spot.row, value)) return *number;
    return std::nullopt;
}

std::string put(const Spot& spot, const Value& value, vehicle::Vehicle& vehicle) {
    const auto reached = tractive_state(spot, vehicle, true);
    if (!reached) return reached.why;
    return std::visit(Putter{spot, reached.owner}, value);
}

Value value_at(const Spot& spot, const vehicle::Vehicle& vehicle) {
    // Nothing is written without filling; the types underneath know no const.
    const auto reached = tractive_state(spot, const_cast<vehicle::Vehicle&>(vehicle), false);
    if (!reached) return std::monostate{};
    if (spot.is_number()) {
        const double* number = number_in(spot, reached.owner);
        return number ? Value(*number) : Value(std::monostate{});
    }
    const auto& type = spot.row->member;
    void* member = type.of(reached.owner);
    switch (type.shape) {
        case FieldType::flag: return *static_cast<bool*>(member);
        case FieldType::choice: return Word{type.choice->get(member)};
        case FieldType::text: return *static_cast<std::string*>(member);
        case FieldType::list: return *static_cast<std::vector<double>*>(member);
        case FieldType::table: return *static_cast<fields::Columns*>(member);
        default: return std::monostate{};
    }
}

}  // namespace windwall::scenario
