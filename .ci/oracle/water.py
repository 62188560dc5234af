#!/usr/bin/python3
"""Water and steam by IAPWS-95 (Debian: python3-iapws), 1 to 120 C.

Liquid at 101325 Pa, or at saturation above its boiling point; saturation at T.
Printed to the figures to which the formulation is worth having.
"""
import importlib.metadata, sys
from iapws import IAPWS95

print(f"# IAPWS-95 by python3-iapws {importlib.metadata.version('iapws')}, by .ci/oracle/water.py")
print("T_C,psat_Pa,rho_kg_m3,cp_J_kgK,h_liq_J_kg,h_vap_J_kg,latent_J_kg")
for t in [1, 4, 5, 10, 15, 15.5556, 20, 25, 30, 35, 40, 45, 50, 55, 60, 65, 70, 75, 80, 85, 90, 95, 99, 100, 105, 110, 115, 120]:
    k = t + 273.15
    liquid, vapour = IAPWS95(T=k, x=0), IAPWS95(T=k, x=1)
    at = IAPWS95(T=k, P=0.101325) if liquid.P < 0.101325 else liquid
    print(f"{t},{liquid.P * 1e6:.6g},{at.rho:.7g},{at.cp * 1e3:.6g},{liquid.h * 1e3:.6g},{vapour.h * 1e3:.7g},{(vapour.h - liquid.h) * 1e3:.7g}")
