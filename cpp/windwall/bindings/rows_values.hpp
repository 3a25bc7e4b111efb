#pragma once
#include "windwall/fields/member.hpp"

#include <pybind11/pybind11.h>

#include <vector>

namespace windwall::bindings {

/// The numbers of a struct as nested dicts of plain Python objects, by the keys of its rows. Parts
/// are dicts by id with their word under "kind"; what is not there is None.
pybind11::dict values_of(const fields::GroupType& group, const void* from);

template <class T>
pybind11::dict values_of(const T& made) {
    return values_of(fields::group_type<T>, &made);
}

/// The same of each of many.
template <class T>
pybind11::list values_of(const std::vector<T>& made) {
    pybind11::list all;
    for (const T& one : made)
        all.append(values_of(one));
    return all;
}

/// What a row says: symbol, dimension, unit, sentence; the words of a choice, and below a group the
/// rows of that.
pybind11::dict row_of(const fields::Row& row);

/// What the rows of a struct say about each key.
pybind11::dict rows_of(const fields::GroupType& group);

}  // namespace windwall::bindings
