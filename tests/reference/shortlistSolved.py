"""Solves every combination of the small parts box of shortlistBox.ts by itself; writes shortlistSolved.data.ts.

Run with Python 3.11, numpy 2.4.6, scipy 1.17.1: python3 tests/reference/shortlistSolved.py
Roots by scipy.optimize.brentq (xtol 1e-13, rtol 1e-14); winding temperature by scipy.optimize.brentq too.
Density of fresh water at 18 degC: 998.5980363 kg/m3 (IAPWS SR6-08 by the iapws library 1.5.2).
"""
import itertools, json, math, pathlib
from scipy.optimize import brentq

RHO, WATER = 998.5980363, 291.15
MOTORS = [
    dict(name="Slow", Kv=30.0, R=0.18, I0=0.35, b=0.0008, Rth=1.2, Tmax=373.15, Imax=14.0, mass=0.19, price=32.0),
    dict(name="Quick", Kv=75.0, R=0.09, I0=0.6, b=0.0005, Rth=1.6, Tmax=373.15, Imax=25.0, mass=0.12, price=24.0),
]
CONTROLLERS = [
    dict(name="Small", R=0.012, Imax=12.0, P0=0.4, mass=0.02, price=11.0),
    dict(name="Large", R=0.006, Imax=30.0, P0=0.6, mass=0.05, price=26.0),
]
PACKS = [
    dict(name="Four", U=14.8, R=0.05, Imax=40.0, Q=36000.0),
    dict(name="Three", U=11.1, R=0.12, Imax=20.0, Q=54000.0),
]
GEARS = [dict(name=None, g=1.0, eta=1.0, mass=0.0, price=0.0), dict(name="Half", g=2.5, eta=0.92, mass=0.04, price=18.0)]
PROPELLERS = [
    dict(name="Fine", D=0.076, KT=0.21, KQ=0.0195, mass=0.02, price=4.0),
    dict(name="Coarse", D=0.09, KT=0.33, KQ=0.047, mass=0.03, price=5.0),
    dict(name="Wide", D=0.105, KT=0.25, KQ=0.03, mass=0.04, price=6.0),
]
N, HOTEL, T_ASKED = 2, 12.0, 22.0
ASKED = dict(current=32.0, temperature=353.15, tip=15.0, diameter=0.1, mass=0.3, price=75.0)
MEAN, DURATION, RESERVE = 7.0, 3600.0, 0.2


def shaft(m, c, g, p, n):
    """Motor current, winding temperature, motor power and voltage before the controller at n (rev/s) of the propeller."""
    w = 2 * math.pi * n * g["g"]
    torque = p["KQ"] * RHO * n**2 * p["D"] ** 5 / (g["g"] * g["eta"])
    I = m["Kv"] * torque + m["I0"] + m["b"] * w
    friction = (m["I0"] + m["b"] * w) * w / m["Kv"]
    R = lambda T: m["R"] * (1 + 0.00393 * (T - 293.15))
    excess = lambda T: WATER + m["Rth"] * (I * I * R(T) + friction) - T
    if excess(5000.0) > 0:
        return I, math.inf, math.inf, math.inf
    T = brentq(excess, WATER, 5000.0, xtol=1e-11, rtol=1e-14)
    Vm = w / m["Kv"] + I * R(T)
    return I, T, Vm * I, Vm + I * c["R"]


def bus(c, s, I, V):
    """Bus voltage and current with all thrusters; None where the supply collapses."""
    P = N * (V * I + c["P0"]) + HOTEL
    d = s["U"] ** 2 - 4 * s["R"] * P
    if not d >= 0:
        return None
    U = (s["U"] + math.sqrt(d)) / 2
    return U, P / U


def misses(m, c, s, g, p, n):
    """Names of the demands that running at n misses."""
    I, T, _, V = shaft(m, c, g, p, n)
    held = bus(c, s, I, V) if math.isfinite(V) else None
    out = []
    if held is None or V > held[0]: out.append("voltage")
    if I > m["Imax"]: out.append("motor current")
    if T > m["Tmax"]: out.append("winding temperature")
    if I > c["Imax"]: out.append("controller current")
    if held is not None:
        if held[1] > s["Imax"]: out.append("supply current")
        if held[1] > ASKED["current"]: out.append("greatest current")
    if T > ASKED["temperature"]: out.append("greatest temperature")
    if math.pi * n * p["D"] > ASKED["tip"]: out.append("tip speed")
    return out


def rate(p, T):
    return math.sqrt(T / (p["KT"] * RHO * p["D"] ** 4))


rows = []
for number, (m, c, s, g, p) in enumerate(itertools.product(MOTORS, CONTROLLERS, PACKS, GEARS, PROPELLERS)):
    n = rate(p, T_ASKED)
    failing = misses(m, c, s, g, p, n)
    if p["D"] > ASKED["diameter"]: failing.append("diameter")
    mass = sum(x["mass"] for x in (m, c, g, p))
    price = sum(x["price"] for x in (m, c, g, p))
    if mass > ASKED["mass"]: failing.append("mass")
    if price > ASKED["price"]: failing.append("price")
    I, _, _, V = shaft(m, c, g, p, rate(p, MEAN))
    held = bus(c, s, I, V)
    time = s["Q"] * (1 - RESERVE) / held[1] if held is not None and V <= held[0] else 0.0
    if time < DURATION: failing.append("endurance")
    # The greatest rate at which nothing is missed: bisection on "something is missed", to rounding.
    low, high = 0.0, 400.0
    for _ in range(200):
        middle = (low + high) / 2
        if misses(m, c, s, g, p, middle): high = middle
        else: low = middle
    greatest = p["KT"] * RHO * low**2 * p["D"] ** 4
    I, T, _, V = shaft(m, c, g, p, n)
    held = bus(c, s, I, V) if math.isfinite(V) else None
    power = V * I + c["P0"] if math.isfinite(V) else None
    rows.append(dict(number=number, failing=sorted(failing), greatest=greatest, mass=mass, price=price, endurance=time,
                     current=held[1] if held else None, temperature=T if math.isfinite(T) else None,
                     perPower=T_ASKED / power if power else None))

text = "/** Made by shortlistSolved.py, where the model and the library versions stand; never edit. */\nexport const SOLVED = " + json.dumps(rows) + ";\n"
pathlib.Path(__file__).with_name("shortlistSolved.data.ts").write_text(text)
print(sum(not r["failing"] for r in rows), "meet of", len(rows))
for r in rows: print(r["number"], r["failing"], round(r["greatest"], 2))
