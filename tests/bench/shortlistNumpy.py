"""The search of shortlistMillion.ts in vectorised numpy: reads the request as JSON, prints seconds and counts as JSON."""
import json, sys, time
import numpy as np

request = json.load(sys.stdin)
asked, box = request["requirement"], request["box"]
RHO, WATER, ALPHA = 998.5980363, asked["water"]["temperature"], 0.00393
col = lambda parts, key: np.array([part[key] for part in parts], dtype=float)
M, C, S, P = box["motors"], box["controllers"], box["packs"], box["propellers"]
shape = lambda x, axis: x.reshape([-1 if k == axis else 1 for k in range(5)])
g = shape(np.array([1.0] + [gear["ratio"] for gear in box["gears"]]), 3)
eta = shape(np.array([1.0] + [gear["efficiency"] for gear in box["gears"]]), 3)
mass = lambda parts: col(parts, "mass")
D = shape(np.array([p["diameter"]["value"] for p in P]), 4)
KT = shape(np.array([p["ahead"]["thrustCoefficient"]["value"] for p in P]), 4)
KQ = shape(np.array([p["ahead"]["torqueCoefficient"]["value"] for p in P]), 4)
Kv, R0, I0, b, Rth, Tmax, Imax = (shape(col(M, k), 0) for k in
    ("speedConstant", "resistance", "noLoadCurrent", "noLoadCurrentSlope", "thermalResistance", "temperatureLimit", "currentLimit"))
Rc, Cmax, P0 = (shape(col(C, k), 1) for k in ("resistance", "currentLimit", "standbyPower"))
Uoc, Rs, Smax = (shape(col(S, k), 2) for k in ("openCircuitVoltage", "resistance", "currentLimit"))
N, HOTEL = asked["thrusters"], asked["hotelPower"]
LIMITS = ("voltage", "motor", "winding", "controller", "supply", "asked current", "asked temperature", "tip")


def margins(n, Kv, R0, I0, b, Rth, Tmax, Imax, Rc, Cmax, P0, Uoc, Rs, Smax, g, eta, D, KQ):
    w = 2 * np.pi * n * g
    I = Kv * KQ * RHO * n**2 * D**5 / (g * eta) + I0 + b * w
    friction = (I0 + b * w) * w / Kv
    h = ALPHA * Rth * R0
    held = 1 - h * I * I
    R = np.where(held > 0, (R0 * (1 + ALPHA * (WATER - 293.15)) + h * friction) / held, np.inf)
    T = WATER + Rth * (I * I * R + friction)
    V = w / Kv + I * (R + Rc)
    power = N * (V * I + P0) + HOTEL
    d = Uoc**2 - 4 * Rs * power
    U = (Uoc + np.sqrt(np.maximum(d, 0))) / 2
    Is = np.where(d >= 0, power / U, 0)
    W = np.maximum(V, np.sqrt(Rs * power))
    needed = W + Rs * power / W
    return (Uoc - needed, Imax - I, Tmax - T, Cmax - I, Smax - Is, asked["supplyCurrent"] - Is,
            asked["windingTemperature"] - T, asked["tipSpeed"] - np.pi * n * D), V * I + P0


def search():
    with np.errstate(all="ignore"):
        n = np.sqrt(asked["thrustAhead"] / (KT * RHO * D**4))
        left, power = margins(n, Kv, R0, I0, b, Rth, Tmax, Imax, Rc, Cmax, P0, Uoc, Rs, Smax, g, eta, D, KQ)
        full = np.broadcast_shapes(*(x.shape for x in left))
        meets = np.broadcast_to(D <= asked["diameter"], full).copy()
        counts = {}
        for name, one in zip(LIMITS, left):
            kept = np.broadcast_to(~(one < 0), full)
            counts[name] = int(kept.size - kept.sum())
            meets &= kept
        at = np.nonzero(meets)
        take = lambda x, axes: np.broadcast_to(x, full)[at]
        arrays = [take(x, None) for x in (Kv, R0, I0, b, Rth, Tmax, Imax, Rc, Cmax, P0, Uoc, Rs, Smax, g, eta, D, KQ)]
        # Greatest rate within all limits of those that meet, by bisection to rounding.
        low = take(n, None)
        high = low * 16
        for _ in range(50):
            middle = (low + high) / 2
            ok = np.ones(len(low), dtype=bool)
            for one in margins(middle, *arrays)[0]:
                ok &= one >= 0
            low, high = np.where(ok, middle, low), np.where(ok, high, middle)
        thrust = take(KT, None) * RHO * low**2 * arrays[15] ** 4
        worth = asked["thrustAhead"] / np.broadcast_to(power, full)[at]
        best = np.argsort(-worth)[:25]
    return int(meets.sum()), counts, float(thrust.max()) if len(thrust) else None, len(best)


search()
start = time.perf_counter()
meeting, counts, greatest, _ = search()
print(json.dumps(dict(seconds=time.perf_counter() - start, meeting=meeting, counts=counts, greatest=greatest)))
