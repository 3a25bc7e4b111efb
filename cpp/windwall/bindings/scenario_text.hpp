#pragma once
#include <pybind11/pybind11.h>

#include <string>

namespace windwall::bindings {

/// Any text of Python as UTF-8, or bytes as they are. Half of a surrogate pair, which no file can
/// hold, comes as the broken bytes it is, so that the reader refuses it with a sentence where it
/// stands.
struct Text {
    std::string utf8;
};

}  // namespace windwall::bindings

template <>
struct pybind11::detail::type_caster<windwall::bindings::Text> {
    PYBIND11_TYPE_CASTER(windwall::bindings::Text, const_name("str | bytes"));

    bool load(handle source, bool) {
        if (isinstance<bytes>(source)) {
            value.utf8 = std::string(reinterpret_borrow<bytes>(source));
            return true;
        }
        if (!isinstance<str>(source)) return false;
        const auto encoded = reinterpret_steal<bytes>(
            PyUnicode_AsEncodedString(source.ptr(), "utf-8", "surrogatepass"));
        if (!encoded) throw error_already_set();
        value.utf8 = std::string(encoded);
        return true;
    }
};
