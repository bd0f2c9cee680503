"""The same full operating points by numpy (bisection over all cases at once) and scipy (brentq, one after another).

Reads the cases as JSON from standard input; writes points a second of both, and their thrusts, as JSON.
"""
import json
import sys
import time

import numpy as np
from scipy.optimize import brentq

TURN = 2 * np.pi
# Below this share of the greatest speed no case is at full throttle, and the constant power draws the bus down.
LOW = 0.06
REST = 1e-6
# For arrays; the run case by case puts plain Python in their place, so that it is not slowed by array functions.
choose, lesser = np.where, np.minimum
cases = json.load(sys.stdin)
P = {name: np.array([one[name] for one in cases]) for name in cases[0]}


def shaft(p, w):
    n = w / (TURN * p["gearRatio"])
    Q = p["torqueCoefficient"] * p["density"] * n**2 * p["diameter"] ** 5
    torque = Q / (p["gearRatio"] * p["gearEfficiency"]) + p["wetTorque"] * w ** p["wetExponent"]
    current = p["speedConstant"] * torque + p["noLoadCurrent"] + p["noLoadCurrentSlope"] * w
    friction = (p["noLoadCurrent"] + p["noLoadCurrentSlope"] * w) * w / p["speedConstant"]
    alpha = 0.00393 / (1 + 0.00393 * (p["resistanceTemperature"] - 293.15))
    h = alpha * p["thermalResistance"] * p["motorResistance"]
    cold = p["motorResistance"] * (1 + alpha * (p["surroundings"] - p["resistanceTemperature"]))
    held = 1 - h * current**2
    R = choose(held > 0, (cold + h * friction) / choose(held > 0, held, 1), 1e9)
    T = p["surroundings"] + p["thermalResistance"] * (current**2 * R + friction)
    V = w / p["speedConstant"] + current * (R + p["controllerResistance"])
    return current, R, T, V


def constant(p):
    return p["hotelPower"] + p["thrusters"] * p["standbyPower"]


def excess_throttle(p, w):
    current, _, _, V = shaft(p, w)
    return V - p["supplyVoltage"] + p["supplyResistance"] * (p["thrusters"] * current + constant(p) / V)


def share(p, V, U):
    kappa = p["switchingLoss"]
    return kappa + (1 - kappa) * (V + p["freewheelVoltage"]) / (U + p["freewheelVoltage"])


def excess_supply(p, w, limit):
    current, _, _, V = shaft(p, w)
    U = p["supplyVoltage"] - p["supplyResistance"] * limit
    return p["thrusters"] * current * share(p, V, U) + constant(p) / U - limit


def excess_current(p, w):
    return shaft(p, w)[0] - lesser(p["motorCurrent"], p["controllerCurrent"])


def excess_power(p, w):
    current, _, _, V = shaft(p, w)
    return (V - current * p["controllerResistance"]) * current - p["motorPower"]


def excess_heat(p, w):
    return shaft(p, w)[2] - p["windingTemperature"]


def supply_limit(p):
    least = lesser(lesser(p["supplyCurrent"], p["fuseCurrent"]), p["tetherCurrent"])
    room = (p["supplyVoltage"] - p["leastVoltage"]) / p["supplyResistance"]
    return lesser(lesser(least, room), p["supplyVoltage"] / (2 * p["supplyResistance"]))


def searches(p):
    limit = supply_limit(p)
    return [
        lambda q, w: excess_supply(q, w, limit),
        lambda q, w: excess_current(q, w),
        lambda q, w: excess_power(q, w),
        lambda q, w: excess_heat(q, w),
    ]


def bus_and_read(p, w, voltage):
    """Bus by the same bisection, then all that is read off the point."""
    current, R, T, V = shaft(p, w)
    low, high = 0.5 * p["supplyVoltage"], p["supplyVoltage"] + 0 * w

    def over(U):
        drawn = p["thrusters"] * current * share(p, V, U) + constant(p) / U
        return U - p["supplyVoltage"] + p["supplyResistance"] * drawn

    U = voltage(over, low, high)
    thrust = p["thrustCoefficient"] * p["density"] * (w / (TURN * p["gearRatio"])) ** 2 * p["diameter"] ** 4
    return thrust, U, T


def bisect(f, low, high):
    for _ in range(52):
        middle = 0.5 * (low + high)
        above = f(middle) > 0
        high = np.where(above, middle, high)
        low = np.where(above, low, middle)
    return 0.5 * (low + high)


def full_throttle(p, w):
    """Past the greatest power of the supply less throttle gives more, so that full throttle bounds nothing there."""
    return choose(shaft(p, w)[3] < 0.5 * p["supplyVoltage"], np.inf, w)


def by_numpy():
    top = P["speedConstant"] * P["supplyVoltage"]
    w = TURN * P["gearRatio"] * lesser(P["cavitation"], P["ventilation"])
    w = lesser(w, full_throttle(P, bisect(lambda x: excess_throttle(P, x), LOW * top, top)))
    for f in searches(P):
        w = lesser(w, bisect(lambda x: f(P, x), np.full_like(top, REST), top))
    return bus_and_read(P, w, bisect)[0]


def by_scipy(count):
    thrusts = []
    for one in cases[:count]:
        top = one["speedConstant"] * one["supplyVoltage"]
        w = TURN * one["gearRatio"] * min(one["cavitation"], one["ventilation"])
        w = min(w, full_throttle(one, brentq(lambda x: excess_throttle(one, x), LOW * top, top, xtol=1e-12, rtol=1e-14)))
        for f in searches(one):
            if f(one, w) > 0:
                w = brentq(lambda x: f(one, x), REST, min(top, w), xtol=1e-12, rtol=1e-14)
        root = lambda over, low, high: brentq(over, low, high, xtol=1e-12, rtol=1e-14) if over(low) < 0 else low
        thrusts.append(float(bus_and_read(one, w, root)[0]))
    return thrusts


by_numpy()
begin = time.perf_counter()
for _ in range(3):
    vectorised = by_numpy()
numpy_rate = 3 * len(cases) / (time.perf_counter() - begin)
choose, lesser = (lambda test, a, b: a if test else b), min
few = min(200, len(cases))
begin = time.perf_counter()
single = by_scipy(few)
scipy_rate = few / (time.perf_counter() - begin)
json.dump({"numpy": numpy_rate, "scipy": scipy_rate, "thrusts": vectorised.tolist(), "single": single}, sys.stdout)
