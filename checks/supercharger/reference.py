"""An outside solver of the supercharger match, written from the equations and not from our code.

All nine unknowns of a node (flow, pressures, temperatures) are left standing as equations and given to scipy's
`root` at once; our own solver eliminates all but one. The compressor is an analytic one, typed here and in
`whole-match.test.ts`. Prints cases.json: the inputs and the answers.

    python3 reference.py > cases.json
"""
import json
from math import sqrt

import numpy as np
from scipy.optimize import root

R, CP = 287.05, 1005.0
REF_P, REF_T = 100000.0, 298.0
KAPPA = R / CP
DISPLACEMENT, COMPRESSION = 5.7e-3, 9.5


def pressure_ratio(corrected_speed, corrected_flow, steepness):
    u = corrected_speed / 44000.0
    x = corrected_flow / u
    return 1 + 0.9 * u * u * (1 - steepness * ((x - 0.35) / 0.35) ** 2)


def efficiency(corrected_speed, corrected_flow):
    u = corrected_speed / 44000.0
    x = corrected_flow / u
    return 0.77 - 1.2 * (x - 0.45) ** 2


def lost(loss, flow, density):
    dp, at_flow, at_density = loss
    return dp * (flow / at_flow) ** 2 * at_density / density


def scavenged(exhaust_over_manifold, k):
    return 1.0 if k is None else 1 + (1 - exhaust_over_manifold) / (k * (COMPRESSION - 1))


def solve(case, i):
    n = case["engineSpeedRpm"][i]
    p_amb, t_amb = case["pressure"], case["temperature"]
    base_p, base_t = case["baselineManifoldPressure"][i], case["baselineManifoldTemperature"]
    base_flow, top_flow = case["baselineAirFlow"][i], max(case["baselineAirFlow"])
    base_amb = case["baselinePressure"]
    excess = case["exhaustPressureRatio"] - 1
    swept = DISPLACEMENT * n / 120
    impeller = n * case["ratio"] * (1 - case["slip"])
    corrected_speed = impeller * sqrt(REF_T / t_amb)
    k = case["pressureTermRatio"]
    leak = case["leak"]
    ve0 = base_flow / (swept * base_p / (R * base_t))
    base_exhaust = base_amb * (1 + excess * (base_flow / top_flow) ** 2)

    # Scaled unknowns: flow, inlet p, outlet p, outlet T, p behind pipe, p behind cooler, T behind cooler, manifold p, T.
    def equations(v):
        w, p1, p2, t2, p3, p4, t4, pm, tm = v * scale
        air = w * (1 - leak)
        flow = w * sqrt(t_amb / REF_T) * REF_P / p1
        pr = pressure_ratio(corrected_speed, flow, case["steepness"])
        eta = case["constantEfficiency"] or efficiency(corrected_speed, flow)
        exhaust = p_amb * (1 + excess * (air / top_flow * base_amb / p_amb) ** 2)
        ve = (ve0 * case["breathing"] * scavenged(exhaust / pm, k) / scavenged(base_exhaust / base_p, k)
              * (tm / base_t) ** case["heatExponent"])
        before_fuel = t_amb + case["heatFactor"] * (t4 - t_amb)
        out = [
            p1 - (p_amb - lost(case["inletLoss"], w, p_amb / (R * t_amb))),
            p2 - p1 * pr,
            t2 - t_amb * (1 + (pr ** KAPPA - 1) / eta),
            p3 - (p2 - lost(case["pipeLoss"], air, p2 / (R * t2))),
            p4 - (p3 - lost(case["coolerLoss"], air, p3 / (R * t2))),
            t4 - (t2 - case["effectiveness"] * (t2 - case["coolantTemperature"])),
            pm - (p4 - lost(case["throttleLoss"], air, p4 / (R * before_fuel))),
            tm - (before_fuel - case["evaporationCooling"]),
            air - ve * swept * pm / (R * tm),
        ]
        return np.array(out) / scale[[1, 1, 3, 1, 1, 3, 1, 3, 0]]

    scale = np.array([0.4, 1e5, 1e5, 300, 1e5, 1e5, 300, 1e5, 300])
    start = np.array([1.2 * base_flow / 0.4, p_amb / 1e5, 1.6, 1.2, 1.6, 1.55, 1.1, 1.5, 1.1])
    found = root(equations, start, method="hybr", tol=1e-14)
    assert np.max(np.abs(found.fun)) < 1e-12, (case["name"], n, found.message)
    w, p1, p2, t2, p3, p4, t4, pm, tm = found.x * scale
    air = w * (1 - leak)
    drive = w * CP * (t2 - t_amb) / case["mechanicalEfficiency"]
    exhaust = p_amb * (1 + excess * (air / top_flow * base_amb / p_amb) ** 2)
    friction = case["frictionPower"][i]
    indicated = (case["brakePower"][i] + friction) / base_flow * air * case["workFactor"]
    if case["gasExchange"]:
        indicated += ((pm - exhaust) - (base_p - base_exhaust) * p_amb / base_amb) * swept
    rubbing = friction + case["frictionRise"] * (pm - base_p) * swept
    return {
        "compressorFlow": w, "airFlow": air, "compressorInletPressure": p1, "dischargePressure": p2,
        "dischargeTemperature": t2, "manifoldPressure": pm, "manifoldTemperature": tm, "boost": pm - p_amb,
        "impellerSpeedRpm": impeller, "drivePower": drive, "indicatedPower": indicated, "frictionPower": rubbing,
        "brakePower": indicated - rubbing - drive,
    }


def case(name, **changes):
    speeds = [3000.0, 4000.0, 5000.0, 6000.0, 6500.0]
    p0, t0 = 99000.0, 298.15
    manifold = [p0 - 3000 * (n / 6500) ** 2 for n in speeds]
    flow = [(0.95 - 0.1 * ((n - 4800) / 1800) ** 2) * p / (R * t0) * DISPLACEMENT * n / 120 for n, p in zip(speeds, manifold)]
    friction = [30000 * (n / 5000) ** 2 for n in speeds]
    made = dict(
        name=name, engineSpeedRpm=speeds, baselinePressure=p0, baselineManifoldPressure=manifold,
        baselineManifoldTemperature=t0, baselineAirFlow=flow, frictionPower=friction,
        brakePower=[1.15e6 * w - 0.2 * f for w, f in zip(flow, friction)], pressure=p0, temperature=t0, ratio=7.0, slip=0.01,
        mechanicalEfficiency=0.95, inletLoss=[0, 1, 1], pipeLoss=[0, 1, 1], coolerLoss=[0, 1, 1], throttleLoss=[0, 1, 1],
        effectiveness=0.0, coolantTemperature=t0, leak=0.0, heatFactor=1.0, evaporationCooling=0.0, exhaustPressureRatio=1.0,
        pressureTermRatio=None, heatExponent=0.0, breathing=1.0, workFactor=1.0, gasExchange=False, frictionRise=0.0,
        constantEfficiency=None, steepness=0.3,
    )
    made.update(changes)
    made["answers"] = [solve(made, i) for i in range(len(speeds))]
    return made


LOSSES = dict(inletLoss=[1500, 0.4, 1.15], pipeLoss=[1200, 0.4, 1.6], coolerLoss=[4000, 0.4, 1.6], throttleLoss=[2500, 0.4, 1.7])
COOLED = dict(effectiveness=0.8, coolantTemperature=290.0)
TERMS = dict(exhaustPressureRatio=1.08, pressureTermRatio=1.4, heatExponent=0.5)
cases = [
    case("nothing lost, constant efficiency, no terms", constantEfficiency=0.7),
    case("both terms", **TERMS),
    case("losses, cooler and both terms", **LOSSES, **COOLED, **TERMS),
    case("everything, leaking, hot day at altitude", **LOSSES, **COOLED, **TERMS, leak=0.05, heatFactor=1.15, evaporationCooling=18.0,
         workFactor=0.97, gasExchange=True, frictionRise=0.03, pressure=84000.0, temperature=310.0),
]
for name, steepness in [("falling", 0.3), ("flat", 0.0), ("steep", 1.1)]:
    for breathing in [1.0, 1.08]:
        cases.append(case(f"{name} line, breathing {breathing}", steepness=steepness, breathing=breathing, **LOSSES, **TERMS))
print(json.dumps(cases, indent=1))
