#!/usr/bin/env python3
"""Reference implementation of the road-load fit with numpy and scipy.

The same model as package runs/roadload, written as one would for a paper: the
speed of each run is integrated with its sensitivities by Runge and Kutta's
method, the errors of a run get a dense covariance matrix, a mixed model of all
runs is solved by Cholesky's decomposition, and scipy's BFGS looks for the
restricted maximum likelihood of the noise. Matrices are numpy's throughout;
loops run over fixes and runs only.

usage: roadload.py IN.json OUT.json

IN.json: {"runs": [{"setup", "pair", "dir", "mass", "inertia", "density", "t",
"v"}, …], "slope", "wind_sd", "grade_sd" (of the pairs' deviations),
"common_wind_sd", "common_grade_sd" (of what they share), "gravity", "noise": [gust sd, gust
time, white sd, drift sd, drift time], "prior": their prior spreads, of the
logarithm, "learned": the same five as another program learned them}. OUT.json:
CdA and Crr of each setup with the noise learned here, their covariance with the
noise that the other program learned, the noise learned here, and the
processor's seconds that the fit took.
"""
import json
import sys
import time

import numpy as np
from scipy.linalg import cho_factor, cho_solve, cholesky, solve_triangular
from scipy.optimize import minimize

STEP = 0.5  # s, the longest step of the integration
OWN, CDA, CRR, WIND, GRADE, DAMPING, PUSH = range(1, 8)


class Run:
    def __init__(self, d, pairs):
        self.t, self.z = np.array(d["t"]), np.array(d["v"])
        self.dir, self.setup, self.pair = d["dir"], d["setup"], pairs.index(d["pair"])
        self.air = d["density"] / (2 * d["inertia"])
        self.per_g = d["mass"] / d["inertia"]
        self.start = self.z[0]
        n = len(self.t)
        self.extra = np.zeros(n)
        self.a, self.b = np.zeros(n - 1), np.zeros(n - 1)


def derivative(y, extra, run, cda, crr, wind, grade, slope, gravity):
    """d/dt of the speed, of its sensitivities to the unknowns, and of the
    integrals of damping and push."""
    v = y[0]
    u = v + run.dir * wind
    weight = run.per_g * gravity
    drag = run.air * (u * abs(u) + np.copysign(extra, u))
    roll = weight * (1 + slope * v)
    hill = weight * run.dir
    gust = 2 * run.air * cda * abs(u)
    damping = gust + weight * crr * slope
    out = np.empty(8)
    out[0] = -(cda * drag + crr * roll + hill * grade)
    out[OWN:DAMPING] = -damping * y[OWN:DAMPING]
    out[CDA] -= drag
    out[CRR] -= roll
    out[WIND] -= gust * run.dir
    out[GRADE] -= hill
    out[DAMPING], out[PUSH] = damping, gust
    return out


def integrate(run, args):
    """The speed at the fixes and its sensitivities."""
    n = len(run.t)
    out = np.zeros((n, 6))
    y = np.zeros(8)
    y[0], y[OWN] = run.start, 1
    out[0] = y[:6]
    for i in range(n - 1):
        span = run.t[i + 1] - run.t[i]
        steps = max(1, int(np.ceil(span / STEP - 1e-9)))
        h = span / steps
        y[DAMPING:] = 0
        for j in range(steps):
            e = [run.extra[i] + (j + q) / steps * (run.extra[i + 1] - run.extra[i]) for q in (0, 0.5, 1)]
            k1 = derivative(y, e[0], run, *args)
            k2 = derivative(y + h / 2 * k1, e[1], run, *args)
            k3 = derivative(y + h / 2 * k2, e[1], run, *args)
            k4 = derivative(y + h * k3, e[2], run, *args)
            y = y + h / 6 * (k1 + 2 * k2 + 2 * k3 + k4)
        run.a[i], run.b[i] = y[DAMPING] / span, y[PUSH] / span
        out[i + 1] = y[:6]
    return out


def transitions(run, noise):
    """For each step: what it does to (effect of gusts, gust, drift), and the
    covariance of what it adds."""
    gust, tau, _, drift, memory = noise
    h = np.diff(run.t)
    a, b = np.maximum(run.a, 1e-6), run.b
    lam = np.full_like(h, 1 / tau)
    lam[np.abs(a - lam) < 1e-6] += 2e-6
    ea, el, ed = np.exp(-a * h), np.exp(-lam * h), np.exp(-h / memory)
    r = -b / (a - lam)
    q = 2 * lam * gust**2
    ll, al, aa = (1 - el * el) / (2 * lam), (1 - ea * el) / (a + lam), (1 - ea * ea) / (2 * a)
    f, add = np.zeros((len(h), 3, 3)), np.zeros((len(h), 3, 3))
    f[:, 0, 0], f[:, 0, 1], f[:, 1, 1], f[:, 2, 2] = ea, r * (el - ea), el, ed
    add[:, 0, 0] = np.maximum(q * r * r * (ll - 2 * al + aa), 0)
    add[:, 0, 1] = add[:, 1, 0] = q * r * (ll - al)
    add[:, 1, 1], add[:, 2, 2] = q * ll, drift**2 * (1 - ed * ed)
    return f, add


def covariance(run, noise):
    """The dense covariance of a run's errors, and the variance of the air
    speed that gusts leave at each fix."""
    n = len(run.t)
    f, add = transitions(run, noise)
    state = np.zeros((n, 3, 3 * n))  # the state at each fix by what came in at each
    source = np.zeros((3 * n, 3 * n))
    source[:3, :3] = np.diag([0, noise[0] ** 2, noise[3] ** 2])
    state[0, :, :3] = np.eye(3)
    for i in range(1, n):
        state[i] = f[i - 1] @ state[i - 1]
        state[i, :, 3 * i : 3 * i + 3] = np.eye(3)
        source[3 * i : 3 * i + 3, 3 * i : 3 * i + 3] = add[i - 1]
    seen = state[:, 0, :] + state[:, 2, :]
    air = state[:, 0, :] + state[:, 1, :]
    extra = np.einsum("ij,ij->i", air @ source, air)
    return seen @ source @ seen.T + noise[2] ** 2 * np.eye(n), extra


class Fit:
    def __init__(self, d):
        self.pairs = sorted({r["pair"] for r in d["runs"]})
        self.runs = [Run(r, self.pairs) for r in d["runs"]]
        self.setups = 1 + max(r.setup for r in self.runs)
        self.slope, self.gravity = d["slope"], d["gravity"]
        self.start, self.spread = np.array(d["noise"]), np.array(d["prior"])
        s, p, n = 2 * self.setups, len(self.pairs), len(self.runs)
        self.common = s + 2 * p
        # All pairs share a wind and a slope that are nearly free; each has a
        # deviation of its own.
        self.prior = np.zeros((self.common + n, self.common + n))
        self.prior_logdet = 0.0
        for at, own, shared in ((s, d["wind_sd"], d["common_wind_sd"]), (s + p, d["grade_sd"], d["common_grade_sd"])):
            cov = own**2 * np.eye(p) + shared**2 * np.ones((p, p))
            self.prior[at : at + p, at : at + p] = np.linalg.inv(cov)
            self.prior_logdet += np.linalg.slogdet(cov)[1]
        self.beta = np.zeros(self.common)
        self.beta[0:s:2], self.beta[1:s:2] = 0.5, 0.018

    def columns(self, k):
        r, s, p = self.runs[k], 2 * self.setups, len(self.pairs)
        return [self.common + k, 2 * r.setup, 2 * r.setup + 1, s + r.pair, s + p + r.pair]

    def linearise(self, noise):
        self.rows = []
        for k, r in enumerate(self.runs):
            r.extra = covariance(r, noise)[1]
            c = self.columns(k)
            y = integrate(r, (*self.beta[c[1:]], self.slope, self.gravity))
            jac = y[:, 1:]
            left = r.z - y[:, 0] + jac[:, 3:] @ self.beta[c[3:]]
            self.rows.append((c, jac, left))

    def equations(self, noise):
        """Cholesky's factor of the mixed model's equations, the solution, and
        -2 log of the restricted likelihood."""
        a, g = self.prior.copy(), np.zeros(len(self.prior))
        minus2 = self.prior_logdet
        for r, (c, jac, left) in zip(self.runs, self.rows):
            low = cholesky(covariance(r, noise)[0], lower=True)
            w = solve_triangular(low, np.column_stack([jac, left]), lower=True)
            a[np.ix_(c, c)] += w[:, :5].T @ w[:, :5]
            g[c] += w[:, :5].T @ w[:, 5]
            minus2 += 2 * np.log(np.diag(low)).sum() + w[:, 5] @ w[:, 5]
        factor = cho_factor(a, lower=True)
        x = cho_solve(factor, g)
        return factor, x, minus2 + 2 * np.log(np.diag(factor[0])).sum() - x @ g

    def fit_at(self, noise):
        """Gauss and Newton's iteration with the noise held."""
        s = 2 * self.setups
        for _ in range(30):
            self.linearise(noise)
            x = self.equations(noise)[1]
            self.beta[:s] += x[:s]
            self.beta[s:] = x[s : self.common]
            for r, d in zip(self.runs, x[self.common :]):
                r.start += d
            if np.max(np.abs(x[:s] / self.beta[:s])) < 1e-6:
                return
        raise RuntimeError("the fit does not settle")

    def learn(self, at):
        def cost(x):
            return self.equations(self.start * np.exp(x))[2] + ((x / self.spread) ** 2).sum()

        return minimize(cost, at, method="BFGS", options={"gtol": 1e-3}).x

    def run(self):
        at = np.zeros(5)
        self.fit_at(self.start)
        for _ in range(2):
            at = self.learn(at)
            self.fit_at(self.start * np.exp(at))
        return self.start * np.exp(at)

    def load_covariance(self, noise):
        s = 2 * self.setups
        self.linearise(noise)
        factor = self.equations(noise)[0]
        return cho_solve(factor, np.eye(len(self.prior))[:, :s])[:s]


def main(source, target):
    with open(source) as f:
        d = json.load(f)
    fit = Fit(d)
    begin = time.process_time()
    noise = fit.run()
    seconds = time.process_time() - begin
    loads = fit.beta[: 2 * fit.setups].reshape(-1, 2)
    cov = fit.load_covariance(np.array(d["learned"]))
    with open(target, "w") as f:
        json.dump({"loads": loads.tolist(), "cov": cov.tolist(), "noise": noise.tolist(), "seconds": seconds}, f)


if __name__ == "__main__":
    main(*sys.argv[1:])
