/* What somebody who knows the equations and wants speed would write: operating points of one plain
 * series path at full throttle, the spark held off knock. `make bench` holds the core against it.
 *
 * The fuel is petrol: alcohol, which cools the charge at the valve, is left out. It answers where a
 * later spark and the mixture that goes with it hold the margin below the exhaust's limit. It does
 * not look for sparks beyond that (a lean mixture may be cooler again), nor for a smaller opening:
 * there it says that it has no answer, and where the blower runs away.
 *
 * Unknowns are the logarithms of the flow, of the plate's share of drop and of the blower's
 * pressure ratio, and the retard, which is below nothing where there is margin to spare. Newton's
 * method, by differences at first and by Broyden's update of the inverse from there. */
#include "peer_equations.h"

enum { FLOW, DROP, RETARD, RATIO, MOST };
static const double balanced = 1e-11; /* as the core: of the flow, and rad of retard */

/* Where the next point is solved from. */
struct start {
    double x[MOST], inverse[MOST][MOST];
    int known;
};

static int unknowns(const struct car* c) { return c->displacement > 0 ? 4 : 3; }

static double residuals(struct point* o, const double* x, double* r) {
    const struct car* c = o->car;
    o->m = exp(x[FLOW]);
    o->T = o->T1;
    const double before = filter(o);
    o->p = before * (1 - exp(x[DROP]));
    r[DROP] = log(plate(o, before, o->p) / o->m);
    if (c->displacement > 0) {
        const double p2 = o->p * exp(x[RATIO]);
        r[RATIO] = blower(o, o->p, p2) / o->m - 1;
        o->p = p2;
    }
    if (c->plenum_surface > 0) {
        const double films = 1.0 / 30 + 1 / o->outside, flow = o->m * heat_capacity(c, o->T);
        const double stated = c->plenum_conductance;
        const double conductance = isnan(stated) ? c->plenum_surface / films : stated;
        o->T = o->around + (o->T - o->around) * exp(-conductance / flow);
    }
    r[FLOW] = log(draw(o, x[RETARD]) / o->m);
    r[RETARD] = lacking(o, x[RETARD]) * degree;
    double norm = 0;
    for (int i = 0; i < unknowns(c); ++i)
        norm = fabs(r[i]) > norm || isnan(r[i]) ? fabs(r[i]) : norm;
    return norm;
}

/* Gauss and Jordan's elimination of [A | 1], with row pivots. */
static int invert(double A[MOST][2 * MOST], int n) {
    for (int k = 0; k < n; ++k) {
        int pivot = k;
        for (int i = k + 1; i < n; ++i)
            if (fabs(A[i][k]) > fabs(A[pivot][k])) pivot = i;
        const double by = A[pivot][k];
        if (!(fabs(by) > 0)) return 0;
        for (int j = 0; j < 2 * n; ++j) {
            const double moved = A[pivot][j];
            A[pivot][j] = A[k][j];
            A[k][j] = moved / by;
        }
        for (int i = 0; i < n; ++i) {
            const double share = A[i][k];
            if (i != k)
                for (int j = 0; j < 2 * n; ++j)
                    A[i][j] -= share * A[k][j];
        }
    }
    return 1;
}

static int differentiate(struct point* o, struct start* s, const double* r, int n) {
    double A[MOST][2 * MOST] = {{0}}, ahead[MOST];
    for (int j = 0; j < n; ++j) {
        const double x = s->x[j], step = 1.5e-8 * most(fabs(x), 1);
        s->x[j] = x + step;
        residuals(o, s->x, ahead);
        for (int i = 0; i < n; ++i)
            A[i][j] = (ahead[i] - r[i]) / (s->x[j] - x);
        A[j][n + j] = 1;
        s->x[j] = x;
    }
    if (!invert(A, n)) return 0;
    for (int i = 0; i < n; ++i)
        for (int j = 0; j < n; ++j)
            s->inverse[i][j] = A[i][n + j];
    return 1;
}

/* Carries the inverse along: it turns the change of the residuals into the step made. */
static void update(struct start* s, const double* step, const double* change, int n) {
    double missed[MOST], along[MOST] = {0}, length = 0;
    for (int i = 0; i < n; ++i) {
        missed[i] = step[i];
        for (int j = 0; j < n; ++j) {
            missed[i] -= s->inverse[i][j] * change[j];
            along[j] += step[i] * s->inverse[i][j];
        }
    }
    for (int j = 0; j < n; ++j)
        length += along[j] * change[j];
    if (length == 0) return;
    for (int i = 0; i < n; ++i)
        for (int j = 0; j < n; ++j)
            s->inverse[i][j] += missed[i] * along[j] / length;
}

/* Whether it arrived. */
static int newton(struct point* o, struct start* s, double* evaluations) {
    const int n = unknowns(o->car);
    double r[MOST], norm = residuals(o, s->x, r);
    ++*evaluations;
    for (int tries = 1; !(norm <= balanced); ++tries) {
        const int fresh = !s->known;
        if (isnan(norm) || tries > 60 || (fresh && !differentiate(o, s, r, n))) return 0;
        double step[MOST], longest = 0, after[MOST], next[MOST], change[MOST], left;
        for (int i = 0; i < n; ++i) {
            step[i] = 0;
            for (int j = 0; j < n; ++j)
                step[i] -= s->inverse[i][j] * r[j];
            longest = most(longest, fabs(step[i]));
        }
        double length = least(1, 1 / longest);
        do {
            for (int i = 0; i < n; ++i)
                next[i] = s->x[i] + (step[i] *= length);
            left = residuals(o, next, after);
            ++*evaluations;
            length = 0.4;
        } while (!(left < norm) && fresh && fabs(step[FLOW]) > 1e-9);
        *evaluations += fresh * n;
        s->known = left < 0.9 * norm;
        if (!(left < norm)) {
            if (fresh) return 0;
            continue;
        }
        for (int i = 0; i < n; ++i)
            change[i] = after[i] - r[i];
        update(s, step, change, n);
        for (int i = 0; i < n; ++i)
            s->x[i] = next[i], r[i] = after[i];
        norm = left;
    }
    return 1;
}

static void guess(const struct point* o, struct start* s, double drop) {
    const struct car* c = o->car;
    const double drawn = 0.75 * swept_flow(o);
    const double pushed = c->displacement * c->drive_ratio * o->N / (2 * pi);
    const double ratio = c->displacement > 0 ? most(pushed / drawn, 0.7) : 1;
    s->x[FLOW] = log(drawn * ratio * (1 - drop) * o->p1 / (c->R * o->T1));
    s->x[DROP] = log(drop);
    s->x[RATIO] = log(ratio);
    s->x[RETARD] = 0.1;
    s->known = 0;
}

/* From where the last point ended, else from one guess of the plate's drop after the other. */
static void solve(struct point* o, struct start* s, int warm, struct answer* out) {
    static const double drops[] = {0.05, 0.3, 0.005, 0.6};
    out->evaluations = 0;
    int found = warm && newton(o, s, &out->evaluations);
    for (int k = 0; k < 4 && !found; ++k) {
        guess(o, s, drops[k]);
        found = newton(o, s, &out->evaluations);
    }
    out->flow = o->m;
    out->pressure = o->p;
    out->temperature = o->T;
    out->retard = most(s->x[RETARD], 0);
    describe(o, out->retard, out);
    const struct car* c = o->car; /* up to the richest mixture the exhaust is asked nothing */
    const double richest_at = (11 + most(0, c->lambda - c->richest) / 0.017) * degree;
    const int bearable = out->exhaust <= c->hottest || out->retard <= richest_at;
    out->answered = found && out->retard <= c->most_retard && bearable;
}

/* `asked`: engine and road speed of each point. `cold`: each from the first guess. */
void peer_points(const struct car* c, const double (*asked)[2], int count, int cold,
                 struct answer* answers) {
    struct start start;
    struct point point;
    for (int i = 0; i < count; ++i) {
        hold(&point, c, asked[i][0], asked[i][1]);
        solve(&point, &start, i > 0 && !cold && answers[i - 1].answered, &answers[i]);
    }
}
