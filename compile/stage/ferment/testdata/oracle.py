#!/usr/bin/env python3
"""Solves two ferments with scipy, apart from the Go code, and writes them to
warren.csv and vat.csv beside this file.

warren: the equations of Warren, Hill and MacDonald, Biotechnol. Prog. 6 (1990)
319, as published, in a batch: glucose S, ethanol P, yeast X in g/L, hours.

vat: the model as package ferment documents it, of glucose alone at one
temperature, no lag, no bacteria, no vapour: kg in a vessel. The constants are
the file's own, so that tuning the library does not touch it.
"""
import json, os
from math import exp, log
from scipy.integrate import solve_ivp

here = os.path.dirname(os.path.abspath(__file__))


def solve(f, y0, hours):
    r = solve_ivp(f, (0, hours[-1]), y0, method="LSODA", t_eval=hours, rtol=1e-11, atol=1e-12)
    assert r.success, r.message
    return r.y.T


def write(name, head, columns, rows):
    with open(os.path.join(here, name), "w") as f:
        f.write("# scipy solve_ivp (LSODA, rtol 1e-11), see oracle.py\n")
        f.write("# " + json.dumps(head) + "\n")
        f.write(",".join(columns) + "\n")
        for r in rows:
            f.write(",".join("%.9g" % v for v in r) + "\n")


MU, KS, PM, N, YXS, PX, YXP = 0.427, 0.245, 101.6, 1.95, 0.152, 302.3, 0.291


def warren(t, y):
    x, s, p = y
    mu = MU * s / (KS + s) * (1 - (p / PM) ** N)
    return [mu * x, -mu * x / (YXS * (1 - p / PX)), mu * x / YXP]


hours = [0, 1, 2, 4, 6, 7, 8, 9, 10, 12]
rows = solve(warren, [0.5, 120, 0], hours)
write("warren.csv", {"X0": 0.5, "S0": 120}, ["h", "X", "S", "P"], [[h, *r] for h, r in zip(hours, rows)])

# The vat.
C, H, O, NI = 12.011, 1.008, 15.999, 14.007
GLU, ETH, CO2, WAT, GLY = 6*C+12*H+6*O, 2*C+6*H+O, C+2*O, 2*H+O, 3*C+8*H+3*O
BIO, NH3 = C+1.8*H+0.5*O+0.2*NI, NI+3*H
k = {"tempC": 27.0, "refC": 30.0, "eGrowth": 34600.0, "eEthanol": 35000.0, "eDeath": 177700.0,
     "death": 0.001, "deathByEthanol": 6.0, "yield": 0.97, "glycerol": 0.8, "resting": 0.25,
     "biomassMost": 0.04, "highC": 34.0, "mostC": 43.0,
     "water": 1000.0, "glucose": 150.0, "solubles": 12.0, "yeast": 0.6}
R = 8.314462618


def arr(e):
    return exp(e / R * (1 / (k["refC"] + 273.15) - 1 / (k["tempC"] + 273.15)))


gly = k["glycerol"] * BIO / GLY
glu = (4.2 + 14 * gly) / 24                       # electrons
co2g = 6 * glu - 1 - 3 * gly                      # carbon
watg = 6 * glu - 0.5 - 3 * gly - 2 * co2g         # oxygen
assert abs(12 * glu + 3 * 0.2 - 1.8 - 8 * gly - 2 * watg) < 1e-12  # hydrogen closes by itself
gGlu, gCO2, gWat, gNH3 = glu * GLU / BIO, co2g * CO2 / BIO, watg * WAT / BIO, 0.2 * NH3 / BIO
ETHG = 2 * ETH / GLU
most = min(k["biomassMost"] * (k["glucose"] + k["solubles"]), k["solubles"] / gNH3)


def vat(t, y):
    x, g, e, w, grown, glyc, other, sol = y
    v = w / 998.2 + 1.18e-3 * e + 0.615e-3 * (g + sol + glyc + other)
    s, p = max(g, 0) / v, e / v
    mu = MU * s / (KS + s) * (1 - (p / PM) ** N)
    n = max(0.0, 1 - grown / most)
    growth = mu * arr(k["eGrowth"]) * n * x
    per = min(1 / (YXS * (1 - p / PX)) - gGlu * n, 1 / (YXP * ETHG * k["yield"]))
    ferm = mu * arr(k["eEthanol"]) * (k["resting"] + (1 - k["resting"]) * n) * per * x
    slow = k["death"] * arr(k["eDeath"]) * (1 + k["deathByEthanol"] * (p / PM) ** 2)
    heat = 0.2 * exp(log(10) * (k["tempC"] - k["mostC"]) / 4)
    return [growth - (slow + heat) * x, -(ferm + growth * gGlu), ferm * k["yield"] * ETHG, growth * gWat,
            growth, growth * k["glycerol"], ferm * (1 - k["yield"]), -growth * gNH3]


hours = [0, 4, 8, 12, 16, 20, 24, 30, 36, 42, 48, 60, 72, 96]
rows = solve(vat, [k["yeast"], k["glucose"], 0, k["water"], 0, 0, 0, k["solubles"]], hours)
write("vat.csv", k, ["h", "alive", "glucose", "ethanol", "water", "grown", "glycerol", "other", "solubles"],
      [[h, *r] for h, r in zip(hours, rows)])
