"""Checks a test protocol by computing its results again from its own inputs.

    python3 protocol.py PROTOCOL.json [RECORDING]

Nothing of Stillair is used. The air is computed with the constants of the
CIPM-2007 paper, force coefficients by Gauss-Legendre quadrature, the speed
curves by a Runge-Kutta integration of the equation of motion, and the drag area
once more by ordinary least squares. Whatever does not agree to the digits that a
reader sees makes the program fail, with the name of the figure.
"""

import hashlib
import json
import math
import sys

import numpy as np
from scipy import stats

failed = 0
counted = 0


def same(what, printed, again, within):
    """Two numbers that must agree to half of the last digit that is printed."""
    global failed, counted
    counted += 1
    if not abs(printed - again) <= within:
        failed += 1
        print(f"WRONG {what}: printed {printed!r}, computed {again!r}")


def share(what, printed, again, relative):
    same(what, printed, again, relative * max(abs(printed), 1e-12))


def density(t, p, h):
    """Density of moist air, kg/m3; Picard and others, Metrologia 45 (2008) 149."""
    kelvin = t + 273.15
    saturation = math.exp(1.2378847e-5 * kelvin**2 - 1.9121316e-2 * kelvin + 33.93711047 - 6.3431645e3 / kelvin)
    enhancement = 1.00062 + 3.14e-8 * p + 5.6e-7 * t**2
    xv = h * enhancement * saturation / p
    z = (
        1
        - p / kelvin * (1.58123e-6 - 2.9331e-8 * t + 1.1043e-10 * t**2 + (5.707e-6 - 2.051e-8 * t) * xv + (1.9898e-4 - 2.376e-6 * t) * xv**2)
        + (p / kelvin) ** 2 * (1.83e-11 - 0.765e-8 * xv**2)
    )
    dry, vapour, gas = 28.96546e-3, 18.01528e-3, 8.314472
    return p * dry / (z * gas * kelvin) * (1 - xv * (1 - vapour / dry))


def density_se(t, p, h):
    """By first-order propagation, with what the formula itself leaves."""
    at = [t["value"], p["value"], h["value"]]
    total = (22e-6 * density(*at)) ** 2
    for i, x in enumerate((t, p, h)):
        step = 1e-4 * max(abs(at[i]), 1e-3)
        up, down = list(at), list(at)
        up[i] += step
        down[i] -= step
        total += (x["se"] * (density(*up) - density(*down)) / (2 * step)) ** 2
    return math.sqrt(total)


def coefficients(setup, ride, reference):
    """A and C of F = A + C v^2 nearest to the road load in the least squares."""
    i = ride["inputs"]
    x, w = np.polynomial.legendre.leggauss(24)
    lo, hi = reference["from_mps"], reference["to_mps"]
    v = lo + (hi - lo) * (x + 1) / 2
    root = np.sqrt(w)
    shape = np.stack([np.ones_like(v), v**2], axis=1) * root[:, None]
    weight = setup["mass_kg"] * i["gravity_mps2"]
    by_cda = reference["density_kgpm3"] / 2 * v**2
    by_crr = weight * (1 + i["growth_spm"]["value"] * v)
    solve = lambda f: np.linalg.lstsq(shape, f * root, rcond=None)[0]
    per_cda, per_crr = solve(by_cda), solve(by_crr)
    cda, crr = setup["cda_m2"], setup["crr"]
    both = per_cda * cda["value"] + per_crr * crr["value"]
    a = both[0]
    a_se = math.hypot(per_crr[0] * crr["se"], a * i["mass_kg"]["se"] / i["mass_kg"]["value"])
    c_se = math.sqrt((per_cda[1] * cda["se"]) ** 2 + (per_crr[1] * crr["se"]) ** 2 + 2 * per_cda[1] * per_crr[1] * setup["cda_crr_cov_m2"])
    return a, a_se, both[1], c_se


def curve(run, ride, cda, crr, start):
    """The speed at every fix, m/s, from the equation of motion alone."""
    i = ride["inputs"]
    k, g = i["growth_fitted_spm"]["value"], i["gravity_mps2"]
    rho, mass, inertia = run["air_density_kgpm3"], run["mass_kg"], run["equivalent_inertia_kg"]
    cda = cda * run["drag_area_factor"]

    def slows(v, slope, spread):
        u = v + run["wind_against_mps"]
        drag = rho / 2 * cda * (u * abs(u) + math.copysign(spread, u))
        return (drag + mass * g * (crr * (1 + k * v) + slope)) / inertia

    t, slope, spread = run["t_s"], run["slope"], run["air_speed_variance_m2ps2"]
    out, v = [start], start
    for j in range(len(t) - 1):
        steps = max(1, math.ceil((t[j + 1] - t[j]) / 0.2))
        h = (t[j + 1] - t[j]) / steps
        for q in range(steps):
            at = lambda x, f: x[j] + (x[j + 1] - x[j]) * (q + f) / steps
            k1 = slows(v, at(slope, 0), at(spread, 0))
            k2 = slows(v - h / 2 * k1, at(slope, 0.5), at(spread, 0.5))
            k3 = slows(v - h / 2 * k2, at(slope, 0.5), at(spread, 0.5))
            k4 = slows(v - h * k3, at(slope, 1), at(spread, 1))
            v -= h / 6 * (k1 + 2 * k2 + 2 * k3 + k4)
        out.append(v)
    return np.array(out)


def plain_fit(runs, ride, cda, crr):
    """CdA and Crr of a setup by ordinary least squares, each run with its own
    starting speed; wind and slope as the protocol gives them."""
    theta = np.array([cda, crr] + [r["fitted_mps"][0] for r in runs])
    model = lambda th: np.concatenate([curve(r, ride, th[0], th[1], th[2 + n]) for n, r in enumerate(runs)])
    seen = np.concatenate([np.array(r["speed_mps"]) for r in runs])
    for _ in range(3):
        now = model(theta)
        jac = np.empty((len(seen), len(theta)))
        for n in range(len(theta)):
            moved = theta.copy()
            step = 1e-4 * max(abs(theta[n]), 1e-2)
            moved[n] += step
            jac[:, n] = (model(moved) - now) / step
        theta = theta + np.linalg.lstsq(jac, seen - now, rcond=None)[0]
    return theta[0], theta[1]


def root_sum(parts):
    return math.sqrt(sum(p["se"] ** 2 for p in parts))


def check_change(c, of):
    """of gives a setup's figures by the name that the difference uses."""
    a, b = of.get(c["a"]), of.get(c["b"])
    name = f"{c['b']} against {c['a']}"
    share(f"{name}, budget", c["delta_cda_m2"]["se"], root_sum(c["budget_m2"]), 5e-4)
    share(f"{name}, per cent", c["delta_cda_pct"], 100 * c["delta_cda_m2"]["value"] / c["base_cda_m2"], 1e-6)
    if not c["in_one_ride"]:
        return  # fitted together: not the difference of what each ride gave
    roll = b["crr"]["value"] - a["crr"]["value"] - c["warmed_crr"]
    same(f"{name}, rolling", c["delta_crr"]["value"], roll, 1e-9)
    again = b["cda_m2"]["value"] - a["cda_m2"]["value"] - c["warmed_cda_m2"] - c["taken_back_m2"] * roll
    same(f"{name}, drag area", c["delta_cda_m2"]["value"], again, 5e-8)


def check_ride(ride, reference):
    i = ride["inputs"]
    air = [i["temperature_c"], i["pressure_pa"], i["humidity"]]
    rho = density(*(x["value"] for x in air))
    share("density of the air", i["density_kgpm3"]["value"], rho, 1e-6)
    share("its standard uncertainty", i["density_kgpm3"]["se"], density_se(*air), 1e-3)
    setups = {s["setup"]: s for s in ride["setups"]}
    for name, s in setups.items():
        share(f"{name}, equivalent inertia", s["equivalent_inertia_kg"], s["mass_kg"] + i["rotating_mass_kg"], 1e-9)
        for what, again in zip(("a", "a_se", "c", "c_se"), coefficients(s, ride, reference)):
            unit = s["a_n"] if what[0] == "a" else s["c_n_per_mps2"]
            share(f"{name}, {what.upper()}", unit["se" if what.endswith("se") else "value"], again, 1e-6)
        share(f"{name}, budget", s["cda_m2"]["se"], root_sum(s["budget_m2"]), 5e-4)
        reach = stats.t.ppf(0.975, s["dof"]) if s.get("dof") else stats.norm.ppf(0.975)
        for end, sign in zip(s["cda_ci95_m2"], (-1, 1)):
            same(f"{name}, 95 % interval", end, s["cda_m2"]["value"] + sign * reach * s["cda_m2"]["se"], 1e-6)
        runs = [r for r in ride["runs"] if r["setup"] == name and r["cuts"] == 0]
        for r in runs:
            there = density(r["air_temperature_c"], r["air_pressure_pa"], i["humidity"]["value"])
            share(f"run {r['run']}, density", r["air_density_kgpm3"], there, 1e-6)
            again = curve(r, ride, s["curves_cda_m2"], s["curves_crr"], r["fitted_mps"][0])
            same(f"run {r['run']}, fitted speeds, m/s", 0, np.max(np.abs(again - r["fitted_mps"])), 0.01)
            rms = math.sqrt(np.mean((np.array(r["speed_mps"]) - np.array(r["fitted_mps"])) ** 2))
            share(f"run {r['run']}, residuals", r["residual_rms_mps"], rms, 1e-6)
        if runs:
            noise = next(p["se"] for p in s["budget_m2"] if p["code"] == "budget.noise")
            cda, crr = plain_fit(runs, ride, s["curves_cda_m2"], s["curves_crr"])
            print(f"{name}: CdA {s['cda_m2']['value']:.4f} m2, by ordinary least squares {cda:.4f}; Crr {s['crr']['value']:.5f}, {crr:.5f}; noise of CdA {noise:.4f}")
            same(f"{name}, drag area by ordinary least squares", s["cda_m2"]["value"], cda, 2 * noise)
    for c in ride["differences"]:
        check_change(c, setups)
    return setups


def main(path, recording=None):
    with open(path, encoding="utf-8") as f:
        p = json.load(f)
    reference = p["method"]["reference"]
    share("reference density", reference["density_kgpm3"], density(reference["temperature_c"], reference["pressure_pa"], reference["humidity"]), 1e-6)
    for ride in p["rides"]:
        check_ride(ride, reference)
        if recording and recording.endswith(ride["recording"]):
            with open(recording, "rb") as f:
                if hashlib.sha256(f.read()).hexdigest() != ride["sha256"]:
                    same("SHA-256 of the recording", 0, 1, 0)
    for c in p["across"]:
        check_change(c, {})
    print(f"{counted} figures computed again, {failed} differ")
    return 1 if failed or not counted else 0


if __name__ == "__main__":
    sys.exit(main(*sys.argv[1:]))
