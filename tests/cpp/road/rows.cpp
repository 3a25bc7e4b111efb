#include "windwall/road/body.hpp"
#include "windwall/road/tyres.hpp"

#include "sound_rows.hpp"

TEST(Rows, OfTheBodyAndTheTyresAreSound) {
    contract::expect_sound(windwall::fields::group_type<windwall::road::Body>);
    contract::expect_sound(windwall::fields::group_type<windwall::road::Tyres>);
}
