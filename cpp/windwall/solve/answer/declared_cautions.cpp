#include "windwall/solve/answer/declared_cautions.hpp"

#include "windwall/engine/engine.hpp"
#include "windwall/fields/field_path.hpp"

#include <algorithm>

namespace windwall::solve {
namespace {

constexpr std::span<const std::string_view> words = fields::Names<CautionKind>::names;

constexpr bool are_known(std::span<const fields::ClassCaution> cautions) {
    return std::ranges::all_of(cautions, [](const fields::ClassCaution& caution) {
        return std::ranges::find(words, caution.about) != words.end();
    });
}

template <class Kinds>
constexpr bool all_are_known = false;
template <class... Ts>
constexpr bool all_are_known<fields::OneOf<Ts...>> = (are_known(fields::group_type<Ts>.cautions) &&
                                                      ...);
// What a class caution is about is a word of CautionKind.
static_assert(all_are_known<charge::Part> && all_are_known<engine::Engine>);

CautionKind kind_of(std::string_view word) {
    return static_cast<CautionKind>(std::ranges::find(words, word) - words.begin());
}

std::optional<double> value_at(const std::string& address, const OperatingPoint& now) {
    const auto path = fields::find_number(fields::group_type<OperatingPoint>, &now, address);
    return path ? path->get(&now) : std::nullopt;
}

}  // namespace

std::vector<Caution> declared_cautions(const fields::GroupType& kind, const std::string& address,
                                       const OperatingPoint& now) {
    std::vector<Caution> cautions;
    for (const fields::ClassCaution& declared : kind.cautions) {
        const std::string result = address + "/" + std::string(declared.result);
        const std::optional<double> found = value_at(result, now);
        if (found && *found > declared.high)
            cautions.push_back({kind_of(declared.about), result, found, {}, declared.high});
    }
    return cautions;
}

}  // namespace windwall::solve
