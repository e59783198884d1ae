"""The match of a match file, solved from docs/match-equations.md alone: nothing of the program is read or run.

Reads the files of this folder (every input is stated in them), gives the nine equations of each engine speed to scipy's `root` and
prints what the program's JSON should say.

    python3 outside.py > answers.json
"""
import json
import re
import sys
from math import cos, exp, log, pi, radians, sqrt, tan
from pathlib import Path

import numpy as np
import yaml
from scipy.optimize import root

TIMES = {
    "kPa": 1e3, "Pa": 1.0, "kg/s": 1.0, "kW": 1e3, "mm": 1e-3, "L": 1e-3, "rpm": 1.0, "%": 0.01, "K": 1.0, "N m": 1.0,
    "J/(kg K)": 1.0, "kg/m3": 1.0, "deg": pi / 180, "": 1.0,
}


def si(text, plus=0.0):
    """"1.2 kPa" in SI; "9.2:1" and bare numbers as they are."""
    if isinstance(text, (int, float)):
        return float(text)
    number, unit = re.fullmatch(r"\s*([-+.0-9e]+)(?::1)?\s*(.*)", text).groups()
    if unit == "°C":
        return float(number) + 273.15
    return float(number) * TIMES[unit]


# --- air ---------------------------------------------------------------------------------------------------------------------

R_DRY, R_WATER = 8.314472 / 28.966e-3, 8.314472 / 18.015268e-3


def saturation(t):
    if t < 273.16:
        return exp(-5.6745359e3 / t + 6.3925247 - 9.677843e-3 * t + 6.2215701e-7 * t**2 + 2.0747825e-9 * t**3
                   - 9.484024e-13 * t**4 + 4.1635019 * log(t))
    return exp(-5.8002206e3 / t + 1.3914993 - 4.8640239e-2 * t + 4.1764768e-5 * t**2 - 1.4452093e-8 * t**3 + 6.5459673 * log(t))


def air_of(weather):
    p, t = si(weather["pressure"]), si(weather["temperature"])
    vapour = si(weather["relativeHumidity"]) * saturation(t)
    density = (p - vapour) / (R_DRY * t) + vapour / (R_WATER * t)
    return {"p": p, "t": t, "water": R_DRY / R_WATER * vapour / (p - vapour), "R": p / (density * t)}


# --- compressor: the generic stage through a rated point ---------------------------------------------------------------------

NODES = 121
STEPS = 400


class Rated:
    def __init__(self, map_):
        rated = map_["rated"]
        self.p, self.t = si(rated["reference"]["pressure"]), si(rated["reference"]["temperature"])
        diameter = si(map_["wheelExitDiameter"])
        inlet = min(0.9, max(0.4, si(map_["wheelInletDiameter"]) / diameter)) if "wheelInletDiameter" in map_ else 0.7
        hub = 0.28 * inlet / 0.7
        sweep = radians(35) if "backsweep" not in map_ else si(map_["backsweep"])
        slip = 1 - sqrt(cos(sweep)) / map_.get("blades", 16) ** 0.7
        sound = sqrt(1.4 * 287.05 * self.t)
        self.mach = pi * diameter / 60 / sound  # for 1 r/min
        unit = self.p / (287.05 * self.t) * sound * diameter**2
        speed, flow, ratio = si(rated["speed"]), si(rated["flow"]), si(rated["pressureRatio"])
        md = speed * self.mach
        rise = (ratio ** (2 / 7) - 1) / si(rated.get("efficiency", 0.72))
        k = 1.04 * rise / (0.4 * max(0.05, 1.04 * (slip - 0.33 * tan(sweep))) * md**2)
        eta_d = 2 / 7 * log(ratio) / log(1 + rise)
        phi_d = flow / unit / md
        blend = lambda m: 1 / (1 + exp(-(m - 0.95) / 0.13))
        best = lambda m: 0.62 + 0.22 * blend(m)
        inducer = lambda m: (1 / m) * ((1 + 0.1 * (inlet**2 + hub**2) * m * m) / 1.2) ** 3
        choke = lambda m: (1.4**-4 + (inducer(m) / inducer(md)) ** -4) ** -0.25
        above = lambda m: max(0.0, m - 0.9)
        work = lambda x: max(0.05, k * (slip - 0.33 * tan(sweep) * x))
        self.step = 2.5 * md / (NODES - 1)
        columns = []
        for node in range(NODES):
            at = node * self.step
            m = max(at, 0.05)
            largest = phi_d / best(md) * choke(m) / choke(md)
            phi_b = best(m) * largest
            eta = min(eta_d + 0.02, eta_d - 0.08 * (above(m) - above(md)))
            d, h, g = 2.1 - 0.4 * blend(m), 2 + 1.5 * blend(m), 2 - 1.7 * blend(m)

            def ratio_at(phi):
                if phi <= phi_b:
                    e = eta * (1 - (1 - phi / phi_b) ** d) ** (1 / d)
                else:
                    e = eta * (1 - g + g * (1 - ((phi - phi_b) / (largest - phi_b)) ** h) ** (1 / h))
                return (1 + 0.4 * work(phi / phi_d) * m * m) ** (3.5 * e)

            top, highest = 0.0, 0.0
            for i in range(1, STEPS):
                if ratio_at(largest * i / STEPS) > highest:
                    highest, top = ratio_at(largest * i / STEPS), largest * i / STEPS
            columns.append([largest * at, phi_b * at, eta, d, h, g, top * at, 0.85 * top * at])
        self.columns = np.array(columns)
        self.columns[:, 7] = np.maximum.accumulate(self.columns[:, 7])
        self.unit, self.phi_d = unit, phi_d
        self.work0, self.slope0 = work(0), work(1) - work(0)

    def line(self, corrected_speed):
        m = max(corrected_speed, 1) * self.mach
        place = min(NODES - 1, m / self.step)
        low = min(int(place), NODES - 2)
        row = self.columns[low] + (place - low) * (self.columns[low + 1] - self.columns[low])
        unit = self.unit * m / (place * self.step)
        choke, best, top, surge = (row[i] * unit for i in (0, 1, 6, 7))
        square = 0.4 * m * m
        return {"choke": choke, "best": best, "eta": row[2], "d": row[3], "h": row[4], "g": row[5], "surge": surge, "peak": max(top, surge),
                "w0": self.work0 * square, "w1": self.slope0 * square / (self.phi_d * self.unit * m), "least": 0.05 * square}


def rated_on(line, flow):
    """Pressure ratio and rise of temperature over inlet temperature."""
    work = max(line["w0"] + min(flow, line["choke"]) * line["w1"], line["least"])
    if flow <= line["best"]:
        eta = line["eta"] * (1 - (1 - max(0.0, flow) / line["best"]) ** line["d"]) ** (1 / line["d"])
    else:
        y = min(1.0, (flow - line["best"]) / (line["choke"] - line["best"]))
        eta = line["eta"] * (1 - line["g"] + line["g"] * (1 - y ** line["h"]) ** (1 / line["h"]))
    return (1 + work) ** (3.5 * eta), work


# --- the match ----------------------------------------------------------------------------------------------------------------

def loss_of(said):
    if said == "none":
        return lambda flow, density: 0.0
    factor = si(said["pressureDifference"]) * si(said.get("atDensity", 1.225)) / si(said["atFlow"]) ** 2
    return lambda flow, density: factor * flow * flow / density


def table_of(text):
    head, *rows = [line for line in text.strip().splitlines()]
    names = [re.fullmatch(r"(.*?)(?: \[(.*)\])?", cell.strip()).groups() for cell in head.split(",")]
    columns = list(zip(*[[float(cell) for cell in row.split(",")] for row in rows]))
    return {name: [si(f"{value} {unit or ''}".strip()) for value in column] for (name, unit), column in zip(names, columns)}


def solve(said, i):
    model, rows = said["model"], table_of(said["baseline"]["table"])
    was, now = air_of(said["baseline"]["weather"]), air_of(said.get("weather", said["baseline"]["weather"]))
    n = rows["engine speed"][i]
    air0, power0 = rows["air flow"][i], rows["brake power"][i]
    pm0, tm0 = rows["manifold pressure"][i], rows["manifold temperature"][i]
    top_air = max(rows["air flow"])
    friction0 = si(model["friction"])
    cp, gas = si(model["specificHeat"]), si(model["gasConstant"])
    kappa = gas / cp
    swept = si(model["displacement"]) * n / 120
    r = si(model["compressionRatio"])
    turning = pi * n / 30

    slip = si(model["slip"])
    impeller = n * si(model["pulleyRatio"]) * si(model["stepUp"]) * (1 - slip)
    stage = Rated(said["map"])
    line = stage.line(impeller * sqrt(stage.t / now["t"]))
    scale, wider = si(model["headScale"]), si(model.get("flowScale", 1))
    bypass = model["bypass"]
    leak = si(bypass["leak"]) if isinstance(bypass, dict) and "leak" in bypass else 0.0
    is_open = bypass == "open" or (isinstance(bypass, dict) and "idleTorque" in bypass)
    cooler = model["cooler"]
    throttle = model["throttleLoss"]
    if throttle == "as the baseline":
        throttle = dict(pressureDifference=was["p"] - pm0, atFlow=air0, atDensity=was["p"] / (gas * was["t"]))
    losses = [loss_of(one) for one in (model["inletLoss"], model["pipeLoss"], throttle)]
    fuel_cools, walls = si(model["evaporationCooling"]), model["wallTemperature"]
    walls = None if walls == "none" else si(walls)
    warming = 0.0 if walls is None else (tm0 + fuel_cools - was["t"]) / (walls - was["t"])
    core = loss_of("none" if cooler == "none" else cooler.get("loss", "none"))
    effect = 0.0 if cooler == "none" else si(cooler["effectiveness"])
    coolant = now["t"] if cooler == "none" or "coolantTemperature" not in cooler else si(cooler["coolantTemperature"])

    excess = si(model["exhaustPressureRatio"]) - 1
    exhaust0 = was["p"] * (1 + excess * (air0 / top_air) ** 2)

    def exhaust_at(air):
        return now["p"] * (1 + excess * (air / top_air * was["p"] / now["p"]) ** 2)

    def term(pi_):
        if model["pressureTerm"] == "none":
            return 1.0
        return max(0.0, min(1 + (1 - pi_) / (si(model["pressureTerm"]) * (r - 1)), r / (r - 1)))

    more = model.get("breathing")
    breathing = 1 + si(more["share"]) if more and si(more["from"]) <= n <= si(more["to"]) else 1.0

    def swallowed(pm, tm, air):
        return (air0 * si(model["swallowingScale"]) * breathing * (was["R"] / now["R"]) * (pm / pm0) * (tm0 / tm)
                * term(exhaust_at(air) / pm) / term(exhaust0 / pm0) * (tm / tm0) ** si(model["heatExponent"]))

    def compressor(w, p1):
        if is_open:
            return 1.0, 0.0, 0.0
        flow = w * sqrt(now["t"] / stage.t) * stage.p / p1 / wider
        ratio, work = rated_on(line, flow)
        head = scale * (ratio**kappa - 1)
        work *= scale
        if model.get("constantEfficiency") is not None:
            rise = max(0.0, head) / si(model["constantEfficiency"])
        elif si(model["efficiencyShift"]) != 0:
            rise = head / (head / work + si(model["efficiencyShift"]))
        else:
            rise = work
        return (1 + head) ** (1 / kappa), rise, flow

    units = np.array([top_air, 1e5, 1e5, 300, 1e5, 1e5, 300, 1e5, 300])

    def equations(v):
        w, p1, p2, t2, p3, p4, t4, pm, tm = v * units
        air = w * (1 - leak)
        ratio, rise, _ = compressor(w, p1)
        before_fuel = now["t"] + si(model["heatFactor"]) * (t4 - now["t"])
        out = [
            p1 - (now["p"] - losses[0](w, now["p"] / (gas * now["t"]))),
            p2 - p1 * ratio,
            t2 - now["t"] * (1 + rise),
            p3 - (p2 - losses[1](air, p2 / (gas * t2))),
            p4 - (p3 - core(air, p3 / (gas * t2))),
            t4 - (t2 - effect * (t2 - coolant)),
            pm - (p4 - losses[2](air, p4 / (gas * before_fuel))),
            tm - (before_fuel + warming * ((walls or 0.0) - before_fuel) - fuel_cools),
            air - swallowed(pm, tm, air),
        ]
        return np.array(out) / units[[1, 1, 3, 1, 1, 3, 1, 3, 0]]

    found = None
    for start in (1.2, 1.0, 0.8, 1.5, 2.0):
        p = now["p"] / 1e5
        guess = np.array([start * air0 / top_air * now["p"] / was["p"], p, 1.3 * p, 1.1, 1.3 * p, 1.3 * p, 1.05, 1.3 * p, 1.05])
        found = root(equations, guess, method="hybr", tol=1e-14)
        if np.max(np.abs(found.fun)) < 1e-11:
            break
    assert np.max(np.abs(found.fun)) < 1e-11, (said["name"], n, found.message, found.fun)
    w, p1, p2, t2, p3, p4, t4, pm, tm = found.x * units
    air = w * (1 - leak)
    ratio, rise, flow = compressor(w, p1)
    dry = (1 + was["water"]) / (1 + now["water"])
    if is_open:
        drive = (si(bypass["idleTorque"]) if isinstance(bypass, dict) else 0.0) * turning
    else:
        drive = w * cp * (t2 - now["t"]) / si(model["mechanicalEfficiency"])
    indicated = (power0 + friction0) * air / air0 * dry * si(model["workFactor"])
    if model["gasExchange"]:
        indicated += ((pm - exhaust_at(air)) - (pm0 - exhaust0) * now["p"] / was["p"]) * swept
    friction = friction0 + si(model["frictionRise"]) * (pm - pm0) * swept
    brake = indicated - friction - drive
    tapped = {"manifold": pm, "before throttle": p4, "compressor outlet": p2}[model["tap"]]
    vapour = si(model["fuelVapour"])
    point = {
        "engineSpeedRpm": n, "boostKpa": (tapped - now["p"]) / 1e3, "manifoldPressureKpa": pm / 1e3,
        "manifoldTemperatureC": tm - 273.15, "compressorPressureRatio": ratio, "impellerSpeedRpm": impeller, "airFlowKgPerS": air,
        "drivePowerKw": drive / 1e3, "frictionPowerKw": friction / 1e3, "brakePowerKw": brake / 1e3, "brakeTorqueNm": brake / turning,
        "compressorInletPressureKpa": p1 / 1e3, "dischargePressureKpa": p2 / 1e3, "dischargeTemperatureC": t2 - 273.15,
        "correctedSpeedRpm": impeller * sqrt(stage.t / now["t"]), "compressorFlowKgPerS": 0.0 if is_open else w,
        "volumetricEfficiency": air / (swept * pm * (1 - vapour) / (gas * tm)), "driveTorqueNm": drive / turning,
        "indicatedPowerKw": indicated / 1e3, "boostIndex": brake / power0 / (pm / now["p"]),
        "tipSpeedMPerS": pi * si(said["map"]["wheelExitDiameter"]) * impeller / 60,
        "coolerHeatKw": 0.0 if cooler == "none" else air * cp * (t2 - t4) / 1e3,
    }
    if not is_open:
        a, b = flow * (1 + 1e-4), flow * (1 - 1e-4)
        point |= {
            "compressorEfficiency": (ratio**kappa - 1) / rise, "correctedFlowKgPerS": flow * wider,
            "surgeMarginPercent": 100 * (flow - line["surge"]) / flow, "chokeMarginPercent": 100 * (line["choke"] - flow) / line["choke"],
            "slopeOfLine": log(rated_on(line, a)[0] / rated_on(line, b)[0]) / log(a / b),
        }
    return point


if __name__ == "__main__":
    folder = Path(__file__).parent
    answers = {}
    for file in sorted(folder.glob("*.yaml")):
        said = yaml.safe_load(file.read_text())
        count = len(table_of(said["baseline"]["table"])["engine speed"])
        answers[file.name] = [solve(said, i) for i in range(count)]
    json.dump(answers, sys.stdout, indent=1)
    print()
