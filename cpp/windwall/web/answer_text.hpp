#pragma once
#include "windwall/fields/member.hpp"

#include <string>

namespace windwall::web {

/// The numbers of a struct as JSON, by the keys of its rows, SI. Parts are objects by id with their
/// word under "kind"; what is not there and what is not finite is null.
std::string answer_text(const fields::GroupType& group, const void* from);

template <class T>
std::string answer_text(const T& made) {
    return answer_text(fields::group_type<T>, &made);
}

}  // namespace windwall::web
