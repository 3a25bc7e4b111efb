#include "windwall/fields/document.hpp"

#include "windwall/fields/plain_text.hpp"
#include "windwall/fields/text_position.hpp"
#include "windwall/fields/traced_iterator.hpp"

#include <nlohmann/json.hpp>

#include <cstdint>
#include <string>
#include <unordered_set>
#include <utility>
#include <vector>

namespace windwall::fields {
namespace {

// Objects are searched key by key and addresses are made of keys, so a hostile file is kept short.
constexpr std::size_t most_keys = 500;    // of one object
constexpr std::size_t longest_key = 256;  // bytes
constexpr std::size_t most_values = 50000;

struct Mark {
    Place key;
    Place value;
};

// Builds the tree from the parser's events, and notes in order of the text where things stand.
class TreeBuilder {
public:
    using number_integer_t = Json::number_integer_t;
    using number_unsigned_t = Json::number_unsigned_t;
    using number_float_t = Json::number_float_t;
    using string_t = Json::string_t;
    using binary_t = Json::binary_t;

    TreeBuilder(std::string_view text, const char* const& read_up_to, Problems& problems)
        : text_(text), position_(text), read_up_to_(read_up_to), problems_(problems) {}

    Json tree;
    std::vector<Mark> marks;

    bool null() { return add(nullptr); }
    bool boolean(bool value) { return add(value); }
    bool number_integer(number_integer_t value) { return add(value); }
    bool number_unsigned(number_unsigned_t value) { return add(value); }
    bool number_float(number_float_t value, const string_t&) { return add(value); }
    bool string(string_t& value) { return add(std::move(value)); }
    bool binary(binary_t&) { return false; }
    bool start_object(std::size_t) { return open(Json::object()); }
    bool start_array(std::size_t) { return open(Json::array()); }
    bool end_object() { return close(); }
    bool end_array() { return close(); }

    bool key(string_t& name) {
        key_place_ = token_place();
        key_ = name;
        if (skipping()) return true;
        auto& object = open_.back();
        if (name.size() > longest_key)
            return stop("a key longer than " + std::to_string(longest_key) + " bytes", key_place_);
        if (object.keys_read++ == most_keys)
            return stop("more than 500 keys in one object", key_place_);
        skip_next_ = !object.keys.insert(name).second;
        if (skip_next_)
            problems_.add(joined(open_.back().address, name), key_place_,
                          "the key " + in_quotes(name) + " stands twice in one object");
        return true;
    }

    bool parse_error(std::size_t offset, const std::string&,
                     const nlohmann::json::exception& error) {
        position_.advance_to(offset == 0 ? 0 : offset - 1);
        return stop(reworded(error.what()), position_.place());
    }

private:
    struct Open {
        Json* json;
        std::string address;
        std::size_t keys_read = 0;  // those that stand there twice too
        std::unordered_set<std::string> keys{};
    };

    bool stop(std::string message, Place place) {
        problems_.add(open_.empty() ? "" : open_.back().address, place, std::move(message));
        return false;
    }

    bool skipping() const { return skipped_depth_ > 0; }

    // The parser reports a token when it has read it, so it begins where the one before ended.
    Place token_place() {
        position_.skip_separators();
        const auto place = position_.place();
        position_.advance_to(static_cast<std::size_t>(read_up_to_ - text_.data()));
        return place;
    }

    Json* put(Json value, Place place) {
        Json* placed = &tree;
        if (open_.empty()) {
            tree = std::move(value);
        } else if (open_.back().json->is_array()) {
            placed = &open_.back().json->emplace_back(std::move(value));
        } else {
            // The key is known to be new, and this does not search for it.
            auto& object = open_.back().json->get_ref<Json::object_t&>();
            placed = &object.Json::object_t::Container::emplace_back(key_, std::move(value)).second;
        }
        const bool in_object = !open_.empty() && open_.back().json->is_object();
        marks.push_back({in_object ? key_place_ : place, place});
        return placed;
    }

    bool too_many(Place place) {
        return ++values_ > most_values &&
               !stop("more than " + std::to_string(most_values) + " values", place);
    }

    template <class Value>
    bool add(Value&& value) {
        const auto place = token_place();
        if (too_many(place)) return false;
        if (!skipping() && !std::exchange(skip_next_, false))
            put(Json(std::forward<Value>(value)), place);
        return true;
    }

    bool open(Json container) {
        const auto place = token_place();
        if (too_many(place)) return false;
        if (open_.size() + skipped_depth_ == deepest_nesting)
            return stop("nested more than " + std::to_string(deepest_nesting) + " levels deep",
                        place);
        if (skipping() || std::exchange(skip_next_, false)) {
            ++skipped_depth_;
        } else {
            auto address = address_here();
            open_.push_back(
                {.json = put(std::move(container), place), .address = std::move(address)});
        }
        return true;
    }

    bool close() {
        token_place();
        if (skipping()) {
            --skipped_depth_;
        } else {
            open_.pop_back();
        }
        return true;
    }

    std::string address_here() const {
        if (open_.empty()) return {};
        const auto& parent = open_.back();
        const bool named = parent.json->is_object();
        return joined(parent.address, named ? key_ : std::to_string(parent.json->size() + 1));
    }

    // "[json.exception.parse_error.101] parse error at line 1, column 2: syntax error ... - x"
    static std::string reworded(std::string_view message) {
        if (message.find("out_of_range.406") != message.npos)
            return "a number beyond any number this can hold";
        const auto colon = message.find(": ");
        if (colon != message.npos) message.remove_prefix(colon + 2);
        return "this is not JSON: " + printable(message, 200);
    }

    std::string_view text_;
    TextPosition position_;
    const char* const& read_up_to_;
    Problems& problems_;
    std::vector<Open> open_;
    std::string key_;
    Place key_place_;
    std::size_t values_ = 0;
    bool skip_next_ = false;         // the value behind a duplicate key
    std::size_t skipped_depth_ = 0;  // levels inside it
};

// Visits the tree in the order of the text, which is the order the marks were made in.
template <class Visit>
void in_order(const Json& value, const Visit& visit) {
    visit(value);
    for (const auto& child : value)
        if (&child != &value) in_order(child, visit);
}

}  // namespace

Document Document::parse(std::string_view text, Problems& problems) {
    Document document;
    if (text.size() > largest_text) {
        problems.add("", {1, 1}, "longer than 4 MiB");
        return document;
    }
    if (const auto nul = text.find('\0'); nul != text.npos) {
        TextPosition position(text);
        position.advance_to(nul);
        problems.add("", position.place(), "a NUL character stands here; this is not a text");
        return document;
    }
    const char* read_up_to = text.data();
    const char* end = text.data() + text.size();
    TreeBuilder builder(text, read_up_to, problems);
    if (!Json::sax_parse(TracedIterator(text.data(), &read_up_to), TracedIterator(end, &read_up_to),
                         &builder))
        return document;
    document.root_ = std::make_shared<const Json>(std::move(builder.tree));
    auto mark = builder.marks.begin();
    in_order(*document.root_, [&](const Json& value) {
        document.places_[&value] = {mark->key, mark->value};
        ++mark;
    });
    return document;
}

Document Document::made(Json root) {
    Document document;
    document.root_ = std::make_shared<const Json>(std::move(root));
    return document;
}

Place Document::place(const Json& value) const {
    const auto found = places_.find(&value);
    return found == places_.end() ? Place{} : found->second.value;
}

Place Document::key_place(const Json& value) const {
    const auto found = places_.find(&value);
    return found == places_.end() ? Place{} : found->second.key;
}

}  // namespace windwall::fields
