#pragma once
#include "windwall/fields/problems.hpp"

#include <nlohmann/json_fwd.hpp>

#include <memory>
#include <string_view>
#include <unordered_map>

namespace windwall::fields {

using Json = nlohmann::ordered_json;

inline constexpr std::size_t largest_text = std::size_t{4} << 20;  // bytes
inline constexpr std::size_t deepest_nesting = 32;

/// A parsed JSON text that still knows where each of its values and keys stood.
class Document {
public:
    /// Reads a text. Duplicate keys are problems and their first value stays; a syntax error, too
    /// deep a nesting or too long a text is one problem and leaves nothing to read.
    static Document parse(std::string_view text, Problems& problems);

    /// A document that was built, not read: it has no places.
    static Document made(Json root);

    /// Null where the text could not be read at all.
    const Json* root() const noexcept { return root_.get(); }

    /// Where a value of this very tree stood, and the key in front of it.
    Place place(const Json& value) const;
    Place key_place(const Json& value) const;

private:
    struct Places {
        Place key;
        Place value;
    };
    std::shared_ptr<const Json> root_;
    std::unordered_map<const Json*, Places> places_;
};

}  // namespace windwall::fields
