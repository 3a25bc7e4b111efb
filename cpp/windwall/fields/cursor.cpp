#include "windwall/fields/cursor.hpp"

#include <nlohmann/json.hpp>

namespace windwall::fields {

Cursor::Cursor(const Document& document, ReadContext& findings)
    : document_(&document), findings_(&findings), value_(document.root()) {}

Cursor::Cursor(const Cursor& parent, const Json& value, std::string address)
    : document_(parent.document_),
      findings_(parent.findings_),
      value_(&value),
      address_(std::move(address)),
      parent_address_(parent.address_) {}

bool Cursor::is_object() const { return value_->is_object(); }

bool Cursor::is_list() const { return value_->is_array(); }

std::string Cursor::is_what() const {
    if (value_->is_object()) return "an object";
    if (value_->is_array()) return "a list";
    if (value_->is_string()) return "a text";
    if (value_->is_null()) return "null";
    if (value_->is_boolean()) return value_->get<bool>() ? "true" : "false";
    return "a number";
}

std::size_t Cursor::size() const { return value_->size(); }

std::vector<std::string_view> Cursor::keys() const {
    std::vector<std::string_view> keys;
    for (const auto& [key, value] : value_->items())
        keys.push_back(key);
    return keys;
}

bool Cursor::has(std::string_view key) const { return value_->contains(key); }

Cursor Cursor::operator[](std::string_view key) const {
    return {*this, value_->at(std::string(key)), joined(address_, key)};
}

Cursor Cursor::entry(std::size_t at) const {
    return {*this, value_->at(at), joined(address_, std::to_string(at + 1))};
}

Cursor Cursor::known_as(std::string_view id) const {
    auto same = *this;
    same.address_ = joined(parent_address_, id);
    return same;
}

const std::string* Cursor::text() const { return value_->get_ptr<const std::string*>(); }

void Cursor::complain(std::string sentence) const {
    findings_->problems.add(address_, place(), std::move(sentence));
}

void Cursor::complain_about_key(std::string_view key, std::string sentence) const {
    const auto at = has(key) ? (*this)[key].key_place() : place();
    findings_->problems.add(joined(address_, key), at, std::move(sentence));
}

void Cursor::note(Note note) const {
    note.place = place();
    findings_->notes.set(address_, std::move(note));
}

}  // namespace windwall::fields
