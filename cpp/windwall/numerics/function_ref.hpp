#pragma once
#include <memory>
#include <type_traits>
#include <utility>

namespace windwall::numerics {

template <class Signature>
class function_ref;

/// A borrowed callable: two pointers, never allocates. The callable must outlive it.
template <class Result, class... Arguments>
class function_ref<Result(Arguments...)> {
public:
    template <class Callable>
    requires(!std::is_same_v<std::remove_cvref_t<Callable>, function_ref> &&
             std::is_invocable_r_v<Result, Callable&, Arguments...>)
        function_ref(Callable&& callable)
    noexcept : callable_(address(callable)), call_(&call<std::remove_reference_t<Callable>>) {}

    Result operator()(Arguments... arguments) const {
        return call_(callable_, std::forward<Arguments>(arguments)...);
    }

private:
    /// Plain functions and objects keep their addresses in different kinds of pointer.
    template <class Callable>
    static void* address(Callable& callable) noexcept {
        if constexpr (std::is_function_v<Callable>)
            return reinterpret_cast<void*>(&callable);
        else
            return const_cast<void*>(static_cast<const void*>(std::addressof(callable)));
    }

    template <class Callable>
    static Result call(void* address, Arguments... arguments) {
        if constexpr (std::is_function_v<Callable>)
            return reinterpret_cast<Callable*>(address)(std::forward<Arguments>(arguments)...);
        else
            return (*static_cast<Callable*>(address))(std::forward<Arguments>(arguments)...);
    }

    void* callable_;
    Result (*call_)(void*, Arguments...);
};

}  // namespace windwall::numerics
