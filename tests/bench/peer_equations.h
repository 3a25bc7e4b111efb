/* One plain series path (filter, throttle, positive blower, plenum) at full throttle into one
 * cylinder engine: the equations of docs/physics as peer.c solves them. Everything in SI; what does
 * not change in a vehicle is worked out once by peer.py, which fills `struct car` by name. */
#include <math.h>

struct car {
    double air_p, air_T, w, density, R, cp[5], h0, headwind;
    double hood_rise, hood_halving, hood_stir, hood_share, ram;
    double filter_linear, filter_square;       /* drop times density over m, over m^2 */
    double plate_area, plate_lost, plate_leak; /* at full throttle */
    double displacement, drive_ratio, built_in, rotor_leak, fill_loss, belt;
    double friction_torque, friction_slope, to_charge, to_case, to_air, case_T;
    double case_surface, case_exchange, pocket, mount, mount_T; /* nan where not stated: to_ */
    double plenum_surface, plenum_conductance;
    double swept, stroke, compression, known_speed, known_flow;
    double filling, fall_off, best_speed, valve_area, mach[32], wall_share, wall_T;
    double lambda, richest, stoichiometric, heating, exponent[9], cycle_factor;
    double back_pressure, exhaust_flow;
    double head_ratio, gas_T, fan, wind, steady, cool_T, walls, stroke_loss, port_loss;
    double oil_T, oil_rise, oil_share, hot_oil, oil_exponent;
    double rub_base, rub_slope, rub_scale, gas_load, inlet_loss, outlet_loss, torque, fan_torque;
    double lacking, most_retard, hottest;
};

struct answer {
    double flow, pressure, temperature, torque, retard, exhaust, evaluations, answered;
};

/* One point: what is held, and what the last march left. */
struct point {
    const struct car* car;
    double N, wind, around, outside, T1, p1, gamma1, compressed, cooling; /* held */
    double m, p, T, crank, dry, phi, p_e, T_h;
};

static const double degree = 0.017453292519943295, pi = 3.141592653589793;
static const double freezing = 273.15, full_rotor = 2 * 3.141592653589793 * 1e4 / 60;

static double least(double a, double b) { return a < b ? a : b; }
static double most(double a, double b) { return a > b ? a : b; }
static double within(double x, double low, double high) { return least(most(x, low), high); }

/* --- the gas --- */

static double heat_capacity(const struct car* c, double T) {
    T = within(T, 200, 1000);
    return c->cp[0] + T * (c->cp[1] + T * (c->cp[2] + T * (c->cp[3] + T * c->cp[4])));
}

static double enthalpy(const struct car* c, double T) {
    const double t = within(T, 200, 1000), *a = c->cp;
    const double rise = a[0] + t * (a[1] / 2 + t * (a[2] / 3 + t * (a[3] / 4 + t * a[4] / 5)));
    return c->h0 + t * rise + heat_capacity(c, t) * (T - t);
}

static double gamma_at(const struct car* c, double T) {
    const double cp = heat_capacity(c, T);
    return cp / (cp - c->R);
}

/* Where the enthalpy, and a loss of `lost` J/(kg K) against `base` beside it, come to h. */
static double temperature(const struct car* c, double h, double lost, double base, double T) {
    for (int i = 0; i < 30; ++i) {
        const double over = enthalpy(c, T) + lost * (T - base) - h;
        const double step = over / (heat_capacity(c, T) + lost);
        T -= step;
        if (fabs(step) < 1e-7) break; /* squared by the next, far below rounding */
    }
    return T;
}

static double jet(double area, double p, double T, double behind, double g, double R) {
    const double joint = 0.9995;
    double r = most(behind / p, 0), x = 0, psi;
    if (r >= 1) return 0;
    if (r > joint) x = (1 - r) / (1 - joint), r = joint;
    if (r < 0.61) r = most(r, pow(2 / (g + 1), g / (g - 1)));
    const double q = pow(r, 1 / g);
    psi = sqrt(2 * g / (g - 1) * q * (q - r));
    if (x > 0) {
        const double k = (g - 1) / g, rk = r / q;
        const double s = -(1 - joint) * psi * (1 / g - k * rk / (2 * (1 - rk))) / joint;
        psi = x * (1.5 * psi - 0.5 * s + 0.5 * (s - psi) * x * x);
    }
    return area * p / sqrt(R * T) * psi;
}

/* --- the path --- */

static double filter(const struct point* o) {
    const struct car* c = o->car;
    const double rho = o->p1 / (c->R * o->T1);
    const double x = (c->filter_linear + c->filter_square * o->m) * o->m / rho / o->p1;
    return o->p1 * (x <= 0.5 ? 1 - x : 1 / (4 * x));
}

static double plate(const struct point* o, double p, double behind) {
    const struct car* c = o->car;
    const double throat = p - (p - behind) * c->plate_lost;
    return jet(c->plate_area, p, o->T1, throat, o->gamma1, c->R) +
           (c->plate_leak > 0 ? jet(c->plate_leak, p, o->T1, behind, o->gamma1, c->R) : 0);
}

/* From the charge to the case, W/K: pockets of half the rotors' size go round as a pipe flows. */
static double to_case(const struct point* o, double p1, double omega) {
    const struct car* c = o->car;
    if (!isnan(c->to_case)) return c->to_case;
    const double mu = 1.458e-6 * pow(o->T1, 1.5) / (o->T1 + 110.4);
    const double Re = p1 / (c->R * o->T1) * omega * c->pocket * c->pocket / mu;
    const double film = mu * 1006 / 0.71 / c->pocket * (3.66 + 0.023 * pow(Re, 0.8) * pow(0.71, 0.4));
    return c->case_exchange * c->case_surface * film;
}

/* The flow there is room for; leaves the outlet's temperature and the power taken. */
static double blower(struct point* o, double p1, double p2) {
    const struct car* c = o->car;
    const double omega = c->drive_ratio * o->N, turns = omega / (2 * pi), T1 = o->T1;
    const double work = p1 * c->displacement * (o->compressed + p2 / p1 / c->built_in - 1);
    const double friction = omega * (c->friction_torque + c->friction_slope * omega / full_rotor);
    const double shaft = turns * work + friction;
    o->crank = shaft > 0 ? shaft / c->belt : shaft * c->belt;

    double G = to_case(o, p1, omega), base = c->case_T;
    if (isnan(base)) {
        const double to_air = isnan(c->to_air) ? c->case_surface * o->outside : c->to_air;
        const double outward = to_air + c->mount;
        base = o->around;
        if (G > 0 && outward > 0) {
            G = G * outward / (G + outward);
            base = to_air * o->around + c->mount * c->mount_T + (1 - c->to_charge) * friction;
            base /= outward;
        } else
            G = 0;
    }
    const double made = turns * work + c->to_charge * friction - G * (T1 - base) / 2;
    const double guess = T1 + made / o->m / 1010;
    o->T = temperature(c, enthalpy(c, T1) + made / o->m, G / 2 / o->m, base, guess);
    if (!(o->T > 150 && o->T < 1200)) return NAN;

    const double lost = c->fill_loss * (omega / full_rotor) * (omega / full_rotor);
    const double fill = lost <= 0.5 ? 1 - lost : 1 / (4 * lost);
    const double back = p2 > p1 ? jet(c->rotor_leak, p2, o->T, p1, gamma_at(c, o->T), c->R) * o->T
                                : -jet(c->rotor_leak, p1, T1, p2, o->gamma1, c->R) * T1;
    return (p1 * c->displacement * turns * fill / c->R - back) / T1;
}

/* --- the engine --- */

static double swept_flow(const struct point* o) { return o->car->swept * o->N / (4 * pi); }
static double piston_speed(const struct point* o) { return o->car->stroke * o->N / pi; }

static double through_valves(const struct car* c, double Z) {
    static const double node[] = {0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 1.0, 1.2};
    const double held = within(Z, node[0], node[8]);
    int k = 0;
    while (k < 7 && held > node[k + 1])
        ++k;
    const double *a = c->mach + 4 * k, x = held - node[k];
    const double share = a[3] + x * (a[2] + x * (a[1] + x * a[0]));
    return Z > node[8] ? share * node[8] / Z : share;
}

static double enrichment(const struct car* c, double retard) {
    return within(0.017 * (retard / degree - 11), 0, most(0, c->lambda - c->richest));
}

/* Gas that the engine draws, from what stands in the manifold. */
static double draw(struct point* o, double retard) {
    const struct car* c = o->car;
    o->phi = 1 / (c->lambda - enrichment(c, retard));
    o->dry = o->m / (1 + c->w);
    const double carried = o->dry * (1 + c->w + o->phi / c->stoichiometric) / c->exhaust_flow;
    o->p_e = c->air_p + c->back_pressure * carried * carried * (o->T + 800) / (298.15 + 800);

    const double rich = (o->phi - 1.1) * (o->phi - 1.1) - 0.07 * 0.07;
    const double gas = within(c->gas_T + 0.45 * (o->T - 298.15) - 700 * rich, 400, 1300);
    const double Y = c->head_ratio * o->cooling * pow(most(o->m / c->known_flow, 1e-3), 0.57);
    o->T_h = (Y * gas + c->cool_T) / (1 + Y);

    const double off = o->N / c->best_speed - 1;
    const double sound = sqrt(gamma_at(c, o->T) * c->R * o->T);
    const double room = c->compression, g = 1.3;
    const double E = room / (room - 1) - (o->p_e / o->p + g - 1) / (g * (room - 1));
    const double cold = (1 - c->wall_share) * o->T;
    const double filling = c->filling * sqrt(o->T) / (1 + c->fall_off * off * off) *
                           through_valves(c, piston_speed(o) / (c->valve_area * sound)) *
                           (E >= 0.3 ? E : 0.3 * exp(E / 0.3 - 1)) *
                           (cold + c->wall_share * c->wall_T) / (cold + c->wall_share * o->T_h);
    return filling * o->p / (c->R * o->T) * swept_flow(o);
}

/* Octane numbers that are lacking from the wanted margin. */
static double lacking(const struct point* o, double retard) {
    return o->car->lacking + 30 * log(o->p) + o->T / 7 + o->T_h / 10 + o->p_e / 30e3 -
           2 * fabs(14.604 / o->phi - 14) - o->N * 30 / pi / 1000 - retard / degree;
}

static double unburnt(double phi) {
    if (phi <= 1) return 0;
    const double K = 3.577, O = most(1, 3.125 / phi), linear = O + K * (2.125 - O);
    const double a = (sqrt(linear * linear + 4 * (K - 1) * (O - 1)) - linear) / (2 * (K - 1));
    return ((1 - a) * 283.0 + (1.125 - (O - 1 - a)) * 241.8) / 637.5;
}

static double burnt(const struct point* o) {
    const struct car* c = o->car;
    const double kept = 0.632 * o->phi * pow(o->p / o->p_e, -0.74) / c->compression;
    const double x = least(kept, 0.25);
    const double Y = x + (1 - x) * 1.9 * c->w / (1 + c->w + o->phi / c->stoichiometric);
    const double way = within((Y - 0.25) / 0.15, 0, 1);
    return 1 - way * way * (3 - 2 * way);
}

static double best_efficiency(const struct car* c, double phi) {
    static const double node[] = {0.6, 0.8, 0.9, 1.0, 1.1, 1.15, 1.2, 1.3, 1.4};
    const double held = within(phi, node[0], node[8]);
    int k = 0;
    while (k < 7 && held > node[k + 1])
        ++k;
    const double along = (held - node[k]) / (node[k + 1] - node[k]);
    const double n = c->exponent[k] + along * (c->exponent[k + 1] - c->exponent[k]);
    const double eta = 1 - pow(c->compression, -n);
    return phi > node[8] ? eta * pow(node[8] / phi, 1.2) : eta;
}

static double viscosity(double T) { return exp(1360 / ((T - freezing) * 1.8 + 127)); }

static double rubbing(const struct point* o, double heat) {
    const struct car* c = o->car;
    const double mean = c->rub_base + c->rub_slope * piston_speed(o);
    double T = c->oil_T;
    if (isnan(T)) {
        const double walls = c->walls * (1 - unburnt(o->phi)) * heat;
        const double given = mean * c->rub_scale * swept_flow(o) + c->oil_share * walls;
        T = within(c->cool_T + c->oil_rise * given * o->cooling, freezing - 20, freezing + 250);
    }
    const double thick = pow(viscosity(T) / viscosity(c->hot_oil), c->oil_exponent);
    return c->rub_scale * (thick * mean + c->gas_load * (o->p - c->air_p)) * swept_flow(o);
}

/* Torque, and how hot the exhaust is behind the port. */
static void describe(const struct point* o, double retard, struct answer* out) {
    const struct car* c = o->car;
    const double heat = o->phi / c->stoichiometric * c->heating * o->dry, share = burnt(o);
    const double d = least(fabs(retard / degree), 60), S = piston_speed(o);
    const double indicated = c->cycle_factor * best_efficiency(c, o->phi) * share *
                             (1 - 2.4e-4 * d * d + 1.3e-6 * d * d * d) * heat;
    const double loss = S * S * (c->inlet_loss * o->p / (c->R * o->T) + c->outlet_loss * o->p_e);
    const double pumping = (o->p_e - o->p + loss) * swept_flow(o);
    const double driven = (c->torque + c->fan_torque * o->N * o->N) * o->N;
    out->torque = (indicated - rubbing(o, heat) - pumping - driven - o->crank) / o->N;

    const double released = share * (1 - unburnt(o->phi)) * heat, late = within(d, 0, 45);
    const double chamber = 0.55 * c->walls * released * exp(late * (9e-5 * late - 0.0125)) *
                           pow(o->N / c->known_speed, -0.32) * pow(o->p / 101325, -0.245);
    const double brought = o->m * (enthalpy(c, o->T) - enthalpy(c, o->T1));
    const double h = (released + brought + pumping - indicated - chamber) /
                     (o->m + o->phi / c->stoichiometric * o->dry);
    const double above = h + c->air_T * (1013 + 0.2755 / 2 * c->air_T);
    const double hot = (sqrt(1013.0 * 1013 + 2 * 0.2755 * above) - 1013) / 0.2755;
    const double flow = fmax(o->m / c->known_flow, 1e-3);
    const double slow = fmax(o->N / c->known_speed, 0.1);
    const double stroke = c->stroke_loss * pow(slow, -0.32) * pow(flow / slow, -1.1);
    out->exhaust = o->T_h + exp(-stroke - c->port_loss * pow(flow, -0.25)) * (hot - o->T_h);
}

/* --- what is held --- */

static void hold(struct point* o, const struct car* c, double speed, double road_speed) {
    o->car = c;
    o->N = speed;
    o->wind = most(0, road_speed + c->headwind);
    const double draught = 1 + o->wind / c->hood_halving;
    o->around = c->air_T + c->hood_rise / draught;
    o->outside = 5 + 11.9 * sqrt(c->hood_stir * draught);
    o->T1 = c->air_T + c->hood_share * (o->around - c->air_T);
    o->p1 = c->air_p + c->ram * c->density * o->wind * o->wind / 2;
    o->gamma1 = gamma_at(c, o->T1);
    o->compressed = (pow(c->built_in, o->gamma1 - 1) - 1) / (o->gamma1 - 1);
    o->cooling = pow(most(c->fan * speed + c->wind * o->wind + c->steady, 0.1), -0.58);
    o->crank = 0;
}
