#include "windwall/fields/field_path.hpp"

#include "windwall/fields/problems.hpp"
#include "windwall/fields/quantity.hpp"
#include "windwall/fields/visit.hpp"

#include <stdexcept>

namespace windwall::fields {
namespace {

using Step = FieldPath::Step;

const GroupType& group_of(const Step& step) {
    const auto& member = step.row->member;
    if (member.group) return *member.group;
    return *(member.parts ? member.parts->tagged : member.tagged)->types[step.kind];
}

// Where a step leads from the struct that owns its row.
template <class Void>
struct StepDown {
    const Step& step;

    Owner<Void> operator()(const GroupRef<Void>& group) const {
        if (auto* inside = group.get()) return {inside};
        return {nullptr, "nothing is stated under \"" + std::string(step.row->key) + "\""};
    }
    Owner<Void> operator()(const TaggedRef<Void>& tagged) const {
        if (tagged.index() == step.kind) return {tagged.get()};
        return {nullptr, "a " + std::string(tagged.kind()) + " stands where a " +
                             std::string(tagged.type.kinds[step.kind]) + " was expected"};
    }
    Owner<Void> operator()(const PartsRef<Void>& parts) const {
        if (const auto at = parts.find(step.id)) return (*this)(parts.part(*at));
        return {nullptr, "there is no part \"" + step.id + "\" in " + std::string(step.row->key)};
    }
    Owner<Void> operator()(const auto&) const { return {}; }
};

template <class Void>
Owner<Void> step_down(const Step& step, Void* owner) {
    return visit(*step.row, owner, StepDown<Void>{step});
}

// The number itself; null where an optional is empty or a list is shorter.
template <class Number>
struct NumberIn {
    std::optional<std::size_t> entry;

    template <class Member>
    Number* operator()(Member&& member) const {
        using T = std::remove_cvref_t<Member>;
        if constexpr (std::is_same_v<T, double>) {
            return &member;
        } else if constexpr (std::is_same_v<T, std::optional<double>>) {
            return member ? &*member : nullptr;
        } else if constexpr (std::is_same_v<T, std::vector<double>>) {
            return entry && *entry < member.size() ? &member[*entry] : nullptr;
        }
        return nullptr;
    }
};

// What a group that came to be on the way still lacks.
std::optional<std::string> lacking(const Step& step, const void* object) {
    if (step.row->member.type != FieldType::optional_group) return std::nullopt;
    for (const auto& row : group_of(step).rows()) {
        if (row.need != Need::required || row.member.type != FieldType::number) continue;
        const double value = *static_cast<const double*>(row.member.of(object));
        if (!range_complaint(value, row, {}).empty())
            return "\"" + std::string(row.key) + "\" of " + std::string(step.row->key) +
                   " has to be stated with it";
    }
    return std::nullopt;
}

}  // namespace

bool FieldPath::is_number() const noexcept {
    return entry_ || row_->member.type == FieldType::number || may_be_empty();
}

bool FieldPath::may_be_empty() const noexcept {
    return row_->member.type == FieldType::optional_number;
}

std::string_view FieldPath::part() const noexcept {
    return way_.empty() ? std::string_view{} : std::string_view(way_.front().id);
}

Owner<void> FieldPath::owner(void* root, bool fill) const {
    Owner<void> here{root};
    for (const auto& step : way_) {
        const auto& member = step.row->member;
        if (fill && member.group) member.group->open(member.of(here.object));
        here = step_down(step, here.object);
        if (!here) break;
    }
    return here;
}

Owner<const void> FieldPath::owner(const void* root) const {
    Owner<const void> here{root};
    for (const auto& step : way_) {
        here = step_down(step, here.object);
        if (!here) break;
    }
    return here;
}

double* FieldPath::find(void* root) const {
    const auto owner = this->owner(root, false);
    return owner ? visit(*row_, owner.object, NumberIn<double>{entry_}) : nullptr;
}

std::optional<double> FieldPath::get(const void* root) const {
    const auto owner = this->owner(root);
    const auto* number =
        owner ? visit(*row_, owner.object, NumberIn<const double>{entry_}) : nullptr;
    return number ? std::optional(*number) : std::nullopt;
}

double& FieldPath::at(void* root) const {
    const auto owner = this->owner(root, true);
    if (!owner) throw std::logic_error(owner.why);
    if (may_be_empty()) {
        auto& held = *static_cast<std::optional<double>*>(row_->member.of(owner.object));
        if (!held) held = 0;
    }
    if (auto* number = visit(*row_, owner.object, NumberIn<double>{entry_})) return *number;
    throw std::logic_error("fewer entries stand here than when the address was resolved");
}

std::optional<std::string> FieldPath::broken_rule(const void* root) const {
    Owner<const void> here{root};
    for (const auto& step : way_) {
        here = step_down(step, here.object);
        if (!here) return std::nullopt;
        if (auto missing = lacking(step, here.object)) return missing;
        if (auto broken = group_of(step).check(here.object)) return std::move(broken->sentence);
    }
    return std::nullopt;
}

FieldPath FieldPath::into(Step step) const {
    auto longer = *this;
    longer.text_ = joined(joined(text_, step.row->key), step.id);
    longer.way_.push_back(std::move(step));
    return longer;
}

FieldPath FieldPath::to(const Row& row, std::optional<std::size_t> entry) const {
    auto whole = *this;
    whole.text_ = joined(text_, row.key);
    if (entry) whole.text_ += "/" + std::to_string(*entry + 1);
    whole.row_ = &row;
    whole.entry_ = entry;
    return whole;
}

}  // namespace windwall::fields
