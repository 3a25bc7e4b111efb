#include "windwall/fields/provenance.hpp"

#include "windwall/fields/exact.hpp"

namespace windwall::fields {

Note note_of(const Quantity& quantity) {
    return {.text = quantity.text,
            .bare = quantity.unit->text.empty() && !quantity.sigma,
            .value = quantity.value,
            .sigma = quantity.sigma,
            .unit = quantity.unit,
            .place = {}};
}

void Provenance::erase(std::string_view address) {
    std::erase_if(by_address_, [&](const auto& entry) { return is_within(entry.first, address); });
}

double sigma_of(const Row& row, const Note* note) {
    if (note) return note->sigma.value_or(0);
    if (row.sigma == 0) return 0;
    return to_si(row.sigma, unit_of(row.measure), Counted::difference);
}

}  // namespace windwall::fields
