#!/usr/bin/env python3
"""Reference implementation of the forward-backward smoother with numpy.

The textbook recursions, dense 7 x 7 matrices, nothing clever: an extended
Kalman filter forward and the recursion of Rauch, Tung and Striebel (AIAA
Journal 3 (1965) 1445) backward, over nodes prepared by package fusion. The
state is described in fusion/internal/kalman.

usage: smoother.py NODES.csv OUT.csv

NODES.csv has a header and one row a node: the step from the node before, then
what was seen there (kind 0: nothing, 1: a fix, 2: the speed itself). The first
row's step holds nothing; the first two rows after the header are the mean and
the standard deviations of the first state. OUT.csv gets one row a node: the
seven smoothed states and their standard deviations. The processor's seconds
that the two recursions took, the least of five goes, go to standard output.
"""
import sys
import time

import numpy as np

S, V, B, C, K, D, W = range(7)


def predict(x, st):
    """The state after a step, the Jacobian of that, and the noise."""
    h = st["h"]
    blind = st["blind"] > 0
    f = np.eye(7)
    y = x.copy()
    f[S, V] = h
    y[S] += x[V] * h
    if not blind:
        g = 1 - x[K]
        y[V] += (st["dv"] - x[B] * h) * g
        y[S] += (st["ds"] - x[B] * h * h / 2) * g
        f[V, B], f[V, K] = -h * g, -st["rv"]
        f[S, B], f[S, K] = -h * h / 2 * g, -st["rv"] * h / 2
    f[C, C], f[K, K] = st["phi_c"], st["phi_k"]
    y[C] *= st["phi_c"]
    y[K] *= st["phi_k"]
    q = np.zeros((7, 7))
    qb = 0 if blind else st["qb"]
    qv = st["q"]
    q[V, V] = qv + qb * h**2 / 3
    q[S, V] = q[V, S] = qv * h / 2 + qb * h**3 / 8
    q[S, S] = qv * h**2 / 3 + qb * h**4 / 20
    q[V, B] = q[B, V] = -qb * h / 2
    q[S, B] = q[B, S] = -qb * h**2 / 6
    q[B, B], q[C, C], q[K, K], q[D, D] = st["qb"], st["qc"], st["qk"], st["qd"]
    return y, f, q


def update(x, p, st):
    """Takes in what was seen at a node."""
    h = np.zeros(7)
    h[V] = 1
    if st["kind"] == 1:
        h[C], h[D], h[W] = 1, -st["accel"], st["shape"]
    s = h @ p @ h + st["r"]
    gain = p @ h / s
    x = x + gain * (st["z"] - h @ x)
    p = p - np.outer(gain, h @ p)
    return x, (p + p.T) / 2


def smooth(steps, x, p):
    xs, ps, preds = [], [], []
    for i, st in enumerate(steps):
        if i > 0:
            x, f, q = predict(x, st)
            p = f @ p @ f.T + q
            preds.append((x, p, f))
        if st["kind"] > 0:
            x, p = update(x, p, st)
        xs.append(x)
        ps.append(p)
    for i in range(len(steps) - 2, -1, -1):
        y, pp, f = preds[i]
        gain = np.linalg.solve(pp, f @ ps[i]).T
        xs[i] = xs[i] + gain @ (xs[i + 1] - y)
        ps[i] = ps[i] + gain @ (ps[i + 1] - pp) @ gain.T
    return np.array(xs), np.array(ps)


def main(nodes, out):
    with open(nodes) as f:
        names = f.readline().strip().split(",")
        mean = np.array([float(v) for v in f.readline().split(",")])
        sd = np.array([float(v) for v in f.readline().split(",")])
        steps = [dict(zip(names, map(float, line.split(",")))) for line in f]
    took = []
    for _ in range(5):
        start = time.process_time()
        xs, ps = smooth(steps, mean, np.diag(sd**2))
        took.append(time.process_time() - start)
    print(min(took))
    sds = np.sqrt(np.maximum(np.diagonal(ps, axis1=1, axis2=2), 0))
    np.savetxt(out, np.hstack([xs, sds]), delimiter=",", fmt="%.12g")


if __name__ == "__main__":
    main(*sys.argv[1:])
