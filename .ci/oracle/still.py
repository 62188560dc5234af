#!/usr/bin/python3
"""Simple batch distillation solved by scipy (Debian: python3-scipy), apart from
the Go code: Rayleigh's integral ln(W0/W) = int dx/(y-x) by adaptive quadrature.

  nrtl    ethanol-water at a pressure: NRTL and the vapour pressures written out
          again here from their published constants (package compile/matter/fluid names them)
  carey   the same over Carey and Lewis's measured points, 1 atm, joined by a
          monotone cubic: no model at all
  raoult  methanol-water, ideal, by Antoine
  const   constant volatility

Columns: case, pressure, its parameter, x0, x, the integral, mean of the
distillate.
"""
import csv, os, sys, importlib.metadata
from math import exp, log
from scipy.integrate import quad
from scipy.interpolate import PchipInterpolator
from scipy.optimize import brentq

here = os.path.dirname(os.path.abspath(__file__))


def p_ethanol(T):  # Wagner; Poling, Prausnitz and O'Connell, 5th ed., app. A
    t = 1 - T / 513.92
    return 6.132e6 * exp(513.92 / T * (-8.68587 * t + 1.17831 * t**1.5 - 4.8762 * t**2.5 + 1.588 * t**5))


def p_water(T):  # IAPWS SR1-86
    t = 1 - T / 647.096
    return 22.064e6 * exp(647.096 / T * (-7.85951783 * t + 1.84408259 * t**1.5 - 11.7866497 * t**3
                                         + 22.6807411 * t**3.5 - 15.9618719 * t**4 + 1.80122502 * t**7.5))


def partial(x, T):
    t12, t21, a = -0.8009 + 246.18 / T, 3.4578 - 586.0809 / T, 0.30
    g12, g21 = exp(-a * t12), exp(-a * t21)
    x1, x2 = x, 1 - x
    l1 = x2**2 * (t21 * (g21 / (x1 + x2 * g21))**2 + t12 * g12 / (x2 + x1 * g12)**2)
    l2 = x1**2 * (t12 * (g12 / (x2 + x1 * g12))**2 + t21 * g21 / (x1 + x2 * g21)**2)
    return x1 * exp(l1) * p_ethanol(T), x2 * exp(l2) * p_water(T)


def y_nrtl(x, P):
    T = brentq(lambda T: sum(partial(x, T)) - P, 300, 420, xtol=1e-11)
    a, b = partial(x, T)
    return a / (a + b)


def y_raoult(x, P):
    mmHg = P / 133.322387415
    m = lambda t: 10**(8.081 - 1582 / (t + 239.7))
    w = lambda t: 10**(8.071 - 1731 / (t + 233.4))
    t = brentq(lambda t: x * m(t) + (1 - x) * w(t) - mmHg, 40, 120, xtol=1e-12)
    return x * m(t) / mmHg


with open(os.path.join(here, "../../testdata/fluid/vle_ethanol_water_carey_lewis_1932.csv")) as f:
    rows = sorted((float(r["x_ethanol"]), float(r["y_ethanol"])) for r in csv.DictReader(l for l in f if not l.startswith("#")))
xs, ys = zip(*([(0, 0)] + rows + [(1, 1)]))
carey = PchipInterpolator(xs, ys)

print(f"# scipy {importlib.metadata.version('scipy')} quad, by .ci/oracle/still.py")
print("case,pressure_Pa,parameter,x0,x,integral,mean_x_distillate")


def show(case, P, parameter, x0, x, y):
    v, err = quad(lambda x: 1 / (y(x) - x), x, x0, epsabs=1e-12, epsrel=1e-10, limit=500)
    w = exp(-v)
    print(f"{case},{P:g},{parameter:g},{x0:g},{x:g},{v:.7g},{(x0 - w * x) / (1 - w):.7g}")


for P in (101325, 84300, 72000):
    for x0, x in ((0.18, 0.06), (0.0262, 0.003), (0.0262, 0.0003), (0.0925, 0.01), (0.0925, 0.001), (0.35, 0.05), (0.6, 0.1)):
        show("nrtl", P, 0, x0, x, lambda x: y_nrtl(x, P))
show("carey", 101325, 0, 0.18, 0.06, carey)
show("carey", 101325, 0, 0.0925, 0.02, carey)
for x0, x in ((0.82, 0.42), (0.82, 0.1), (0.3, 0.01)):
    show("raoult", 101325, 0, x0, x, lambda x: y_raoult(x, 101325))
for a in (1.5, 2.5, 9, 20):
    show("const", 101325, a, 0.4, 0.02, lambda x: a * x / (1 + (a - 1) * x))
