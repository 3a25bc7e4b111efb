#pragma once
#include "windwall/driveline/train.hpp"

#include "dice.hpp"

/// Random but possible parts; the same every time a test runs.
namespace samples {

using namespace windwall;

/// Every number drawn from inside its row's range, those that may be left out half of the time;
/// lists fall from first to last.
template <class T>
T drawn(Dice& dice) {
    T made;
    for (const fields::Row& row : T::rows()) {
        const fields::Unit& unit = fields::unit_of(row.measure);
        const auto [low, high] = row.range;
        void* member = row.member.of(&made);
        if (row.member.type == fields::FieldType::number)
            *static_cast<double*>(member) = si(dice.between(low, high), unit);
        if (row.member.type == fields::FieldType::optional_number && dice.between(0, 1) < 0.5)
            *static_cast<std::optional<double>*>(member) = si(dice.between(low, high), unit);
        if (row.member.type == fields::FieldType::list) {
            auto& numbers = *static_cast<std::vector<double>*>(member);
            for (double top = high; top > 1.3 * low; top *= 0.7)
                numbers.push_back(si(top, unit));
        }
    }
    return made;
}

/// One that keeps to its own rule across fields.
template <class T>
T part(Dice& dice) {
    for (;;) {
        T made = drawn<T>(dice);
        if constexpr (requires { made.check(); }) {
            if (made.check()) continue;
        }
        return made;
    }
}

/// Anything a crank may do, in overrun too.
inline driveline::Shaft shaft(Dice& dice) { return {dice.between(1, 900), dice.between(-60, 300)}; }

/// A belt drive of a scooter's size.
inline driveline::BeltCvt cvt() {
    driveline::BeltCvt made;
    made.low_ratio = 2.7;
    made.high_ratio = 0.8;
    made.shift_speed = 600;
    made.rated_torque = 30;
    return made;
}

}  // namespace samples
