#!/usr/bin/python3
"""Every unit of lang/quantity's table in SI, by GNU Units (Debian: units).

The expression is written here in GNU Units' own names, so that nothing is taken
from the table that it checks. Columns: newmake's unit and kind, a value, the
same in SI, the expression. A unit that GNU Units cannot say has no value and a
reason instead.
"""
import csv, subprocess, sys

KG, M3, S, M, W, J, PA = "kg", "m^3", "s", "m", "W", "J", "Pa"

# unit, kind, expression, SI unit
UNITS = [
    ("lb", "Mass", "lb", KG), ("oz", "Mass", "oz", KG), ("ton", "Mass", "shortton", KG),
    ("distillers-bushel", "Mass", "56 lb", KG), ("kg", "Mass", "kg", KG), ("g", "Mass", "g", KG),
    ("mg", "Mass", "mg", KG), ("tonne", "Mass", "tonne", KG),
    ("gal", "Volume", "usgallon", M3), ("qt", "Volume", "usquart", M3), ("pt", "Volume", "uspint", M3),
    ("fl oz", "Volume", "usfluidounce", M3), ("L", "Volume", "liter", M3),
    ("mL", "Volume", "milliliter", M3), ("cL", "Volume", "centiliter", M3), ("hL", "Volume", "hectoliter", M3), ("m3", "Volume", "m^3", M3),
    ("imp-gal", "Volume", "brgallon", M3),
    ("F", "TempDifference", "degF", "degC"), ("C", "TempDifference", "degC", "degC"), ("K", "TempDifference", "K", "degC"),
    ("F/min", "HeatingRate", "degF/min", "K/s"), ("C/min", "HeatingRate", "degC/min", "K/s"),
    ("F/h", "HeatingRate", "degF/hour", "K/s"), ("C/h", "HeatingRate", "degC/hour", "K/s"),
    ("min", "Duration", "minute", S), ("h", "Duration", "hour", S), ("day", "Duration", "day", S),
    ("week", "Duration", "week", S), ("month", "Duration", "julianyear/12", S), ("year", "Duration", "julianyear", S),
    ("s", "Duration", "s", S),
    ("ft", "Length", "ft", M), ("m", "Length", "m", M),
    ("sqft", "Area", "ft^2", "m^2"), ("m2", "Area", "m^2", "m^2"),
    ("gal/min", "Flow", "usgallon/minute", "m^3/s"), ("gal/h", "Flow", "usgallon/hour", "m^3/s"), ("L/min", "Flow", "liter/minute", "m^3/s"),
    ("LPA", "PureAlcohol", "liter", "m^3"), ("LPA/t", "SpiritYield", "liter/tonne", "m^3/kg"),
    ("L/h", "Flow", "liter/hour", "m^3/s"), ("m3/h", "Flow", "m^3/hour", "m^3/s"),
    ("lb/min", "MassFlow", "lb/min", "kg/s"), ("lb/h", "MassFlow", "lb/hour", "kg/s"), ("kg/min", "MassFlow", "kg/min", "kg/s"),
    ("kg/h", "MassFlow", "kg/hour", "kg/s"), ("t/h", "MassFlow", "tonne/hour", "kg/s"),
    ("W/m2/K", "HeatTransfer", "W/(m^2 K)", "W/(m^2 K)"), ("BTU/h/ft2/F", "HeatTransfer", "btu/(hour ft^2 degF)", "W/(m^2 K)"),
    ("kW", "Power", "kW", W), ("MW", "Power", "MW", W), ("W", "Power", "W", W), ("BTU/h", "Power", "btu/hour", W), ("boiler-hp", "Power", "boilerhorsepower", W),
    ("kWh", "Energy", "kW hour", J), ("MJ", "Energy", "MJ", J), ("kJ", "Energy", "kJ", J), ("J", "Energy", "J", J),
    ("BTU", "Energy", "btu", J),
    ("% abv", "Strength", "percent", "1"), ("proof", "Strength", "proof", "1"), ("% abw", "Strength", "percent", "1"),
    ("%", "Share", "percent", "1"), ("% of grain", "Share", "percent", "1"), ("% of grain", "Dose", "percent", "1"),
    ("g/L", "Concentration", "g/liter", "kg/m^3"), ("mg/L", "Concentration", "mg/liter", "kg/m^3"),
    ("mg/L", "PartsPerMillion", "(mg/liter)/(kg/liter)/ppm", "1"), ("ppm", "PartsPerMillion", "ppm/ppm", "1"),
    ("g/hL", "Concentration", "g/hectoliter", "kg/m^3"),
    ("g/gal", "Concentration", "g/usgallon", "kg/m^3"), ("oz/gal", "Concentration", "oz/usgallon", "kg/m^3"),
    ("lb/gal", "Concentration", "lb/usgallon", "kg/m^3"),
    ("g/kg", "Dose", "g/kg", "1"), ("g/t", "Dose", "g/tonne", "1"), ("lb/ton", "Dose", "lb/shortton", "1"),
    ("psi", "Pressure", "psi", PA), ("inHg", "Pressure", "inch Hg", PA), ("kPa", "Pressure", "kPa", PA),
    ("Pa", "Pressure", "Pa", PA), ("bar", "Pressure", "bar", PA),
    ("/s", "Rate", "1/s", "1/s"), ("/min", "Rate", "1/minute", "1/s"), ("/h", "Rate", "1/hour", "1/s"), ("/day", "Rate", "1/day", "1/s"),
    ("kJ/mol", "MolarEnergy", "kJ/mol", "J/mol"), ("J/mol", "MolarEnergy", "J/mol", "J/mol"),
    ("lb/bushel", "TestWeight", "lb", KG), ("kg/bushel", "TestWeight", "kg", KG),
    ("kg/hL", "TestWeight", "usbushel kg/hectoliter", KG), ("kg/hL", "Concentration", "kg/hectoliter", "kg/m^3"),
    ("gal/lb", "SpecificVolume", "usgallon/lb", "m^3/kg"), ("qt/lb", "SpecificVolume", "usquart/lb", "m^3/kg"),
    ("gal/distillers-bushel", "SpecificVolume", "usgallon/(56 lb)", "m^3/kg"),
    ("L/kg", "SpecificVolume", "liter/kg", "m^3/kg"), ("mL/g", "SpecificVolume", "milliliter/g", "m^3/kg"),
    ("kJ/kg", "SpecificEnergy", "kJ/kg", "J/kg"), ("J/kg", "SpecificEnergy", "J/kg", "J/kg"), ("BTU/lb", "SpecificEnergy", "btu/lb", "J/kg"),
    ("kJ/kg/K", "HeatCapacity", "kJ/(kg K)", "J/(kg K)"), ("J/kg/K", "HeatCapacity", "J/(kg K)", "J/(kg K)"),
    ("BTU/lb/F", "HeatCapacity", "btu/(lb degF)", "J/(kg K)"),
    ("%/year", "PerYear", "percent", "1"),
]
# Points and curves: unit, kind, values, expression of {}, SI unit.
POINTS = [
    ("F", "Temperature", [-40, 0, 32, 60, 190, 212], "tempF({})", "tempC"),
    ("C", "Temperature", [-20, 0, 20, 100], "tempC({})", "tempC"),
    ("K", "Temperature", [273.15, 300, 373.15], "{} K", "tempC"),
    # The interpolated table of GNU Units, NBS Circular 440, as a relative density.
    ("plato", "Gravity", [0, 2, 5, 8, 10, 12, 15, 18, 20, 25, 30], "brix({})", "0.99717 g/cm^3"),
]
# What GNU Units has no word for.
NONE = [
    ("sg", "Gravity", "a ratio to itself"), ("lintner", "DiastaticPower", "its own scale"),
    ("wk", "DiastaticPower", "its own scale"), ("DU", "DextrinizingUnit", "its own scale"),
    ("bushel", "Bushel", "a count: the weight is the grain's"), ("pH", "PH", "its own scale"),
    ("proof-gal", "ProofGallons", "a count of itself"), ("proof/year", "StrengthPerYear", "a count of itself"),
]


def gnu(expression, unit):
    out = subprocess.run(["units", "-t", "-o", "%.13g", expression, unit], capture_output=True, text=True)
    if out.returncode:
        sys.exit(f"units: {expression} to {unit}: {out.stdout}{out.stderr}")
    return out.stdout.split()[0]


version = subprocess.run(["units", "--version"], capture_output=True, text=True).stdout.splitlines()[0]
print(f"# {version}, by .ci/oracle/units.py: lang/quantity's units in SI")
w = csv.writer(sys.stdout, lineterminator="\n")
w.writerow(["unit", "kind", "value", "si", "how"])
for unit, kind, expression, si in UNITS:
    w.writerow([unit, kind, 1, gnu(expression, si), expression])
for unit, kind, values, expression, si in POINTS:
    for v in values:
        w.writerow([unit, kind, v, gnu(expression.format(v), si), expression.format(v)])
for unit, kind, reason in NONE:
    w.writerow([unit, kind, "", "", reason])
