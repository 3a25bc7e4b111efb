#include "windwall/engine/design.hpp"

namespace windwall::engine {

Design Design::with(std::size_t which, std::size_t word) const noexcept {
    Design made = *this;
    switch (which) {
        case 0: made.chamber = static_cast<Chamber>(word); break;
        case 1: made.cooling = static_cast<CooledBy>(word); break;
        case 2: made.duty = static_cast<Duty>(word); break;
        case 3: made.mixture = static_cast<MixtureBy>(word); break;
        default: made.exhaust = static_cast<Silencing>(word); break;
    }
    return made;
}

bool Design::has(const Design& other) const noexcept {
    const auto mine = numbers(), theirs = other.numbers();
    for (std::size_t which = 0; which < words; ++which)
        if (theirs[which] != 0 && theirs[which] != mine[which]) return false;
    return true;
}

std::array<std::size_t, Design::words> word_counts() noexcept {
    return {fields::Names<Chamber>::names.size(), fields::Names<CooledBy>::names.size(),
            fields::Names<Duty>::names.size(), fields::Names<MixtureBy>::names.size(),
            fields::Names<Silencing>::names.size()};
}

std::span<const fields::Row> Design::rows() {
    using namespace fields;
    constexpr std::string_view untold = "unless stated";
    static constexpr Row table[] = {
        choice("chamber", at<&Design::chamber>,
               "Shape of the combustion chamber: side_valve, with the valves beside the bore; "
               "two_valve_wedge, also a bathtub; two_valve_hemispherical, with inclined valves; "
               "four_valve_pent_roof",
               untold),
        choice("cooling", at<&Design::cooling>,
               "What cools the cylinder head: air, liquid, or oil_and_air where much oil is sent "
               "through a finned head",
               untold),
        choice("duty", at<&Design::duty>,
               "What the engine was made for: work, as pumps, mowers and generators do; road; "
               "sport; racing",
               untold),
        choice("mixture", at<&Design::mixture>,
               "How the stock engine gets its fuel: carburettor, or ported_injection before each "
               "intake valve; read from the file where a carburettor or injectors stand in it",
               untold),
        choice("exhaust", at<&Design::exhaust>, "Whether the exhaust is muffled, as sold, or open",
               untold),
    };
    return table;
}

}  // namespace windwall::engine
