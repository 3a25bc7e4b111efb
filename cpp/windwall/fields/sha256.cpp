#include "windwall/fields/sha256.hpp"

#include <array>
#include <bit>
#include <cstddef>
#include <cstdint>

namespace windwall::fields {
namespace {

using Word = std::uint32_t;
using State = std::array<Word, 8>;

// The first 32 bits of the fractional parts of the cube roots of the first 64 primes.
constexpr std::array<Word, 64> constants{
    0x428a2f98, 0x71374491, 0xb5c0fbcf, 0xe9b5dba5, 0x3956c25b, 0x59f111f1, 0x923f82a4, 0xab1c5ed5,
    0xd807aa98, 0x12835b01, 0x243185be, 0x550c7dc3, 0x72be5d74, 0x80deb1fe, 0x9bdc06a7, 0xc19bf174,
    0xe49b69c1, 0xefbe4786, 0x0fc19dc6, 0x240ca1cc, 0x2de92c6f, 0x4a7484aa, 0x5cb0a9dc, 0x76f988da,
    0x983e5152, 0xa831c66d, 0xb00327c8, 0xbf597fc7, 0xc6e00bf3, 0xd5a79147, 0x06ca6351, 0x14292967,
    0x27b70a85, 0x2e1b2138, 0x4d2c6dfc, 0x53380d13, 0x650a7354, 0x766a0abb, 0x81c2c92e, 0x92722c85,
    0xa2bfe8a1, 0xa81a664b, 0xc24b8b70, 0xc76c51a3, 0xd192e819, 0xd6990624, 0xf40e3585, 0x106aa070,
    0x19a4c116, 0x1e376c08, 0x2748774c, 0x34b0bcb5, 0x391c0cb3, 0x4ed8aa4a, 0x5b9cca4f, 0x682e6ff3,
    0x748f82ee, 0x78a5636f, 0x84c87814, 0x8cc70208, 0x90befffa, 0xa4506ceb, 0xbef9a3f7, 0xc67178f2};

std::array<Word, 64> schedule(std::string_view block) {
    std::array<Word, 64> words{};
    for (std::size_t at = 0; at < 64; ++at)
        words[at / 4] = words[at / 4] << 8 | static_cast<unsigned char>(block[at]);
    for (std::size_t t = 16; t < 64; ++t) {
        const Word near = words[t - 2], far = words[t - 15];
        const Word low = std::rotr(far, 7) ^ std::rotr(far, 18) ^ far >> 3;
        const Word high = std::rotr(near, 17) ^ std::rotr(near, 19) ^ near >> 10;
        words[t] = high + words[t - 7] + low + words[t - 16];
    }
    return words;
}

void digest_block(State& state, std::string_view block) {
    const auto words = schedule(block);
    auto [a, b, c, d, e, f, g, h] = state;
    for (std::size_t t = 0; t < 64; ++t) {
        const Word choose = (e & f) ^ (~e & g);
        const Word majority = (a & b) ^ (a & c) ^ (b & c);
        const Word first = h + (std::rotr(e, 6) ^ std::rotr(e, 11) ^ std::rotr(e, 25)) + choose +
                           constants[t] + words[t];
        const Word second = (std::rotr(a, 2) ^ std::rotr(a, 13) ^ std::rotr(a, 22)) + majority;
        h = g;
        g = f;
        f = e;
        e = d + first;
        d = c;
        c = b;
        b = a;
        a = first + second;
    }
    const State change{a, b, c, d, e, f, g, h};
    for (std::size_t at = 0; at < 8; ++at)
        state[at] += change[at];
}

// A one bit, zeros, and the length in bits fill the last block.
std::string padded(std::string_view bytes) {
    std::string text(bytes);
    text += '\x80';
    while (text.size() % 64 != 56)
        text += '\0';
    const std::uint64_t bits = std::uint64_t{bytes.size()} * 8;
    for (int shift = 56; shift >= 0; shift -= 8)
        text += static_cast<char>(static_cast<unsigned char>(bits >> shift & 0xFF));
    return text;
}

}  // namespace

std::string sha256(std::string_view bytes) {
    State state{0x6a09e667, 0xbb67ae85, 0x3c6ef372, 0xa54ff53a,
                0x510e527f, 0x9b05688c, 0x1f83d9ab, 0x5be0cd19};
    const auto text = padded(bytes);
    for (std::size_t at = 0; at < text.size(); at += 64)
        digest_block(state, std::string_view(text).substr(at, 64));
    std::string digits;
    for (const Word word : state)
        for (int shift = 28; shift >= 0; shift -= 4)
            digits += "0123456789abcdef"[word >> shift & 0xF];
    return digits;
}

}  // namespace windwall::fields
