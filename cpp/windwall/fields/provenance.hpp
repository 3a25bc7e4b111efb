#pragma once
#include "windwall/fields/problems.hpp"
#include "windwall/fields/quantity.hpp"
#include "windwall/fields/row.hpp"
#include "windwall/fields/units.hpp"

#include <map>
#include <optional>
#include <string>
#include <string_view>

namespace windwall::fields {

/// What a file says at one address, beside the value itself: how it was typed, how well it is
/// known, and where it stands.
struct Note {
    std::string text;             // as typed
    bool bare = false;            // a JSON number, not a text with a unit
    double value{};               // SI, what the text means
    std::optional<double> sigma;  // SI, one standard deviation
    const Unit* unit{};           // as typed; null for what is no quantity
    Place place;
};

/// The note of a quantity that is put in the place of another.
Note note_of(const Quantity& quantity);

/// The notes of a document, by address. An address without a note was not given.
class Provenance {
public:
    const Note* find(std::string_view address) const {
        const auto found = by_address_.find(address);
        return found == by_address_.end() ? nullptr : &found->second;
    }
    bool given(std::string_view address) const { return find(address) != nullptr; }
    void set(std::string_view address, Note note) {
        by_address_.insert_or_assign(std::string(address), std::move(note));
    }
    /// Forgets an address and everything below it.
    void erase(std::string_view address);

    auto begin() const { return by_address_.begin(); }
    auto end() const { return by_address_.end(); }

private:
    std::map<std::string, Note, std::less<>> by_address_;
};

/// How well a number is known, SI: what the file says, exactly known where it says nothing beside
/// a given value, and the row's own sigma for a default.
double sigma_of(const Row& row, const Note* note);

}  // namespace windwall::fields
