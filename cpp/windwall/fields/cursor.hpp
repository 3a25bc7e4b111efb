#pragma once
#include "windwall/fields/document.hpp"
#include "windwall/fields/ids.hpp"
#include "windwall/fields/problems.hpp"
#include "windwall/fields/provenance.hpp"

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace windwall::fields {

/// Everything that comes of reading a document, beside the structs themselves.
struct ReadContext {
    Problems problems;
    Provenance notes;
    Ids ids;

    explicit ReadContext(const GroupType& root) : ids(root) {}
};

/// A value of a document together with its address. Descending is the only way to get another, so
/// no problem and no note is ever without address and place.
class Cursor {
public:
    /// At the root of a document that could be read.
    Cursor(const Document& document, ReadContext& findings);

    bool is_object() const;
    bool is_list() const;
    std::string is_what() const;  // "a list", for messages

    std::size_t size() const;
    std::vector<std::string_view> keys() const;
    bool has(std::string_view key) const;
    Cursor operator[](std::string_view key) const;  // of an object that has it
    Cursor entry(std::size_t at) const;             // of a list, from 0; addressed from 1
    Cursor known_as(std::string_view id) const;     // the same entry, addressed by its id

    /// The text, or null where the value is something else.
    const std::string* text() const;
    const Json& json() const { return *value_; }

    const std::string& address() const { return address_; }
    Place place() const { return document_->place(*value_); }
    Place key_place() const { return document_->key_place(*value_); }
    ReadContext& findings() const { return *findings_; }

    void complain(std::string sentence) const;
    /// About a key of this object, which may be absent; points at the key.
    void complain_about_key(std::string_view key, std::string sentence) const;
    void note(Note note) const;

private:
    Cursor(const Cursor& parent, const Json& value, std::string address);

    const Document* document_;
    ReadContext* findings_;
    const Json* value_;
    std::string address_;
    std::string parent_address_;
};

}  // namespace windwall::fields
