#include "windwall/engine/select_priors.hpp"

#include "windwall/engine/cylinder.hpp"
#include "windwall/fields/field_path.hpp"

namespace windwall::engine {
namespace {

constexpr std::string_view anchor = "knock_anchor/octane_number";

void put_usual(const ClassQuantity& quantity, Cylinder& engine) {
    static const Cylinder usual{};
    const fields::FieldPath& path = path_to(quantity);
    if (const auto value = path.get(&usual))
        path.at(&engine) = *value;
    else
        engine.breathing.best_speed.reset();  // the only one that may be empty
}

/// What a design tells of a quantity, moved by so many sigma.
void put_prior(const ClassQuantity& quantity, Cylinder& engine, const Design& design,
               double sigmas) {
    const Estimate made = estimate(quantity, engine, design);
    path_to(quantity).at(&engine) = made.value + sigmas * made.sigma;
    if (quantity.address == anchor) engine.knock_anchor.known_to = made.sigma;
}

double sigmas_off(const ClassQuantity& quantity, const Cylinder& engine, const Design& design) {
    const Estimate made = estimate(quantity, engine, design);
    const auto value = path_to(quantity).get(&engine);
    return value && made.sigma > 0 ? (*value - made.value) / made.sigma : 0;
}

/// Whether two engines are told the same of a quantity, so that nothing moves: most upgrades leave
/// the design as it is.
bool told_alike(const ClassQuantity& quantity, const Cylinder& before, const Design& was,
                const Cylinder& after, const Design& is) {
    return was == is && (!quantity.per || quantity.per(before) == quantity.per(after));
}

void cool_as_designed(Cylinder& engine, const Design& design, const Stated& stated) {
    if (stated("cooling/by")) return;
    engine.cooling.by = design.cooling == CooledBy::liquid ? CoolingBy::liquid : Cooling{}.by;
}

}  // namespace

Design known_design(const Cylinder& engine, bool carburetted, const Stated& stated) {
    Design design = engine.design;
    if (!design.known()) return design;
    if (design.mixture == MixtureBy::unknown && carburetted)
        design.mixture = MixtureBy::carburettor;
    if (design.mixture == MixtureBy::unknown && engine.injector)
        design.mixture = MixtureBy::ported_injection;
    if (design.chamber == Chamber::unknown && stated("valves/per_side") &&
        engine.valves.per_side > 1)
        design.chamber = Chamber::four_valve_pent_roof;
    if (design.cooling == CooledBy::unknown && stated("cooling/by") &&
        engine.cooling.by == CoolingBy::liquid)
        design.cooling = CooledBy::liquid;
    return design;
}

void select_priors(Cylinder& engine, bool carburetted, const Stated& stated) {
    const Design design = known_design(engine, carburetted, stated);
    cool_as_designed(engine, design, stated);
    for (const ClassQuantity& quantity : class_quantities()) {
        if (stated(quantity.address)) continue;
        put_usual(quantity, engine);
        if (design.known()) put_prior(quantity, engine, design, 0);
    }
}

void move_priors(const Cylinder& before, bool carburetted_before, Cylinder& after,
                 bool carburetted_after, const Stated& stated) {
    const Design was = known_design(before, carburetted_before, stated);
    const Design is = known_design(after, carburetted_after, stated);
    if (!was.known() && !is.known()) return;
    if (!was.known() || !is.known()) return select_priors(after, carburetted_after, stated);
    cool_as_designed(after, is, stated);
    for (const ClassQuantity& quantity : class_quantities())
        if (!told_alike(quantity, before, was, after, is) && !stated(quantity.address))
            put_prior(quantity, after, is, sigmas_off(quantity, before, was));
}

}  // namespace windwall::engine
