#pragma once
#include "windwall/charge/part.hpp"

#include "dice.hpp"

/// Random but possible things to try parts on; the same every time a test runs.
namespace samples {

using namespace windwall;

/// A part of which nothing is stated that may be left out.
template <class T>
T part(Dice& dice) {
    return drawn<T>(dice, 0);
}

/// 15 to 400 kPa, 240 to 700 K, 0.01 to 200 g/s, with some vapours.
inline media::Stream stream(Dice& dice) {
    media::Stream in;
    in.pressure = dice.decades(15e3, 400e3);
    in.temperature = dice.between(240, 700);
    in.dry_air = dice.decades(1e-5, 0.2);
    for (double& share : in.vapour)
        share = dice.between(0, 0.03);
    for (double& share : in.liquid)
        share = dice.between(0, 0.05);
    in.drop_diameter = dice.decades(5e-6, 500e-6);
    in.film_share = dice.between(0, 1);
    in.gas = media::gas_phase(in.vapour);
    return in;
}

/// The same gas without liquid, and with little enough vapour that none forms.
inline media::Stream dry_stream(Dice& dice) {
    media::Stream in = stream(dice);
    in.vapour = {1e-6, 0, 0, 0};
    in.liquid = {};
    in.drop_diameter = in.film_share = 0;
    in.gas = media::gas_phase(in.vapour);
    return in;
}

inline charge::Surroundings surroundings(Dice& dice) {
    return {dice.between(70e3, 105e3),
            dice.between(250, 320),
            dice.between(0.8, 1.4),
            dice.between(0, 80),
            dice.between(50, 1500),
            dice.between(0, 1),
            dice.between(250, 370),
            dice.between(5, 40),
            {0, 0, dice.between(0, 0.02), dice.between(0, 0.1)},
            0.01,
            120e3};
}

/// Dry air between simple numbers, as handbooks use them.
inline media::Stream air(double pressure, double temperature, double flow) {
    media::Stream in;
    in.pressure = pressure;
    in.temperature = temperature;
    in.dry_air = flow;
    in.gas = media::perfect_gas(287.05, 1004.675);
    return in;
}

}  // namespace samples
