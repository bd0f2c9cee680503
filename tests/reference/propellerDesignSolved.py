"""Best diameter and pitch ratio of a B screw for a motor at speed, by scipy alone; numbers stand in propellerDesign.test.ts.

Run with Python 3.11, numpy 2.4.6, scipy 1.17.1: python3 tests/reference/propellerDesignSolved.py
Coefficients of the series: Oosterveld & van Oossanen (1975), tables 5 and 6, read from wageningenB.data.ts.
Optimum: scipy.optimize.minimize, Nelder-Mead, xatol 1e-10, fatol 1e-14, from three starts; rate by brentq.
"""
import math, pathlib, re
import numpy as np
from scipy.optimize import brentq, minimize

text = pathlib.Path("shared/propeller/series/wageningenB.data.ts").read_text()
def table(name):
    body = text[text.index(name):]
    body = body[body.index("= [") + 2:]
    body = body[: body.index("];")]
    return [tuple(map(float, row.split(","))) for row in re.findall(r"\[([-\d.e, ]+)\]", body)]
KT, KQ = table("WAGENINGEN_B_THRUST"), table("WAGENINGEN_B_TORQUE")
value = lambda t, J, P, A, Z: sum(c * J**s * P**a * A**u * Z**v for c, s, a, u, v in t)

RHO, Z, A = 998.5980363, 3, 0.5
Kv, Rm, I0, b, Rc, N = 50.0, 0.12, 0.4, 0.001, 0.01, 2

def power(D, P, T, V):
    f = lambda n: value(KT, V / (n * D), P, A, Z) * RHO * n**2 * D**4 - T
    n = brentq(f, V / (1.0 * D) , 400, xtol=1e-13, rtol=1e-14) if V > 0 else math.sqrt(T / (value(KT, 0, P, A, Z) * RHO * D**4))
    Q = value(KQ, V / (n * D), P, A, Z) * RHO * n**2 * D**5
    w = 2 * math.pi * n
    I = Kv * Q + I0 + b * w
    return (w / Kv + I * (Rm + Rc)) * I

for T, V in [(10.0, 1.5), (20.0, 0.0)]:
    best = None
    for start in [(0.07, 0.7), (0.09, 0.8), (0.06, 1.0)]:
        def f(x):
            if not (0.03 <= x[0] <= 0.12 and 0.5 <= x[1] <= 1.4): return 1e9
            try: return power(x[0], x[1], T, V)
            except ValueError: return 1e9
        r = minimize(f, start, method="Nelder-Mead", options=dict(xatol=1e-10, fatol=1e-14, maxiter=4000, maxfev=8000))
        if best is None or r.fun < best.fun: best = r
    print(T, V, best.x.tolist(), T / best.fun)
