#include "windwall/study/packed_sets.hpp"

#include <cstring>
#include <type_traits>

namespace windwall::study {
namespace {

/// What is copied as it lies in memory.
template <class T>
concept Plain = std::is_arithmetic_v<T> || std::is_enum_v<T>;

/// Goes over the members of a set; whoever writes and whoever reads takes them in this order.
template <class Archive>
void each_member(Archive& through, SetResult& one) {
    through(one.set, one.upgrades, one.answered, one.recommended, one.refused_for, one.refusal,
            one.limited_by, one.unanswered, one.cut_short, one.speed, one.balance_speed,
            one.least_margin, one.retard, one.lambda, one.opening, one.cost, one.hours, one.passed,
            one.choices, one.chosen, one.chosen_lower, one.chosen_upper);
}

template <class Archive>
void each_member(Archive& through, solve::Tried& one) {
    through(one.ending, one.engine_speed, one.road_speed, one.opening);
}

template <class Archive>
void each_member(Archive& through, solve::Ending& one) {
    through(one.status, one.answered, one.part, one.residual, one.evaluations);
}

template <class Archive>
void each_member(Archive& through, solve::LimitViolation& one) {
    through(one.address, one.max, one.min, one.why, one.first, one.worst, one.road_speed,
            one.engine_speed, one.gear);
}

template <class Archive>
void each_member(Archive& through, Chosen& one) {
    through(one.upgrade, one.address, one.place, one.number, one.text, one.dimension, one.unit,
            one.counted);
}

class Writer {
public:
    template <class... T>
    void operator()(T&... members) {
        (put(members), ...);
    }
    template <class T>
    void put(std::vector<T>& list) {
        std::size_t size = list.size();
        put(size);
        for (T& entry : list)
            put(entry);
    }
    std::string bytes{};

private:
    template <Plain T>
    void put(T& number) {
        bytes.append(reinterpret_cast<const char*>(&number), sizeof(T));
    }
    void put(std::string& text) {
        std::size_t size = text.size();
        put(size);
        bytes += text;
    }
    template <class T>
    void put(std::optional<T>& maybe) {
        bool there = maybe.has_value();
        put(there);
        if (maybe) put(*maybe);
    }
    template <class T, std::size_t n>
    void put(std::array<T, n>& entries) {
        for (T& entry : entries)
            put(entry);
    }
    template <class T>
    void put(T& group) {
        each_member(*this, group);
    }
};

/// Reads nothing more once the bytes have ended too soon.
class Reader {
public:
    explicit Reader(std::string_view bytes) : left_(bytes) {}

    template <class... T>
    void operator()(T&... members) {
        (get(members), ...);
    }
    template <class T>
    void get(std::vector<T>& list) {
        list.resize(count());
        for (T& entry : list)
            get(entry);
    }
    bool came_out() const { return sound_ && left_.empty(); }

private:
    std::string_view take(std::size_t size) {
        sound_ = sound_ && size <= left_.size();
        if (!sound_) return {};
        const std::string_view taken = left_.substr(0, size);
        left_.remove_prefix(size);
        return taken;
    }
    /// No entry takes less than a byte, so that damaged bytes ask for no room.
    std::size_t count() {
        std::size_t size = 0;
        get(size);
        sound_ = sound_ && size <= left_.size();
        return sound_ ? size : 0;
    }
    template <Plain T>
    void get(T& number) {
        const std::string_view from = take(sizeof(T));
        if (sound_) std::memcpy(&number, from.data(), sizeof(T));
    }
    void get(std::string& text) { text = take(count()); }
    template <class T>
    void get(std::optional<T>& maybe) {
        bool there = false;
        get(there);
        if (there) get(maybe.emplace());
    }
    template <class T, std::size_t n>
    void get(std::array<T, n>& entries) {
        for (T& entry : entries)
            get(entry);
    }
    template <class T>
    void get(T& group) {
        each_member(*this, group);
    }

    std::string_view left_;
    bool sound_ = true;
};

}  // namespace

std::string packed(const std::vector<SetResult>& sets) {
    Writer writer;
    std::vector<SetResult> copy = sets;
    writer.put(copy);
    return std::move(writer.bytes);
}

std::optional<std::vector<SetResult>> unpacked_sets(std::string_view bytes) {
    Reader reader(bytes);
    std::vector<SetResult> sets;
    reader.get(sets);
    if (!reader.came_out()) return std::nullopt;
    return sets;
}

}  // namespace windwall::study
