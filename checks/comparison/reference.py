"""Reference of the comparison of arrays: generalised least squares with GIVEN variance components, by NumPy and SciPy.

Written from the model as packages/core/src/scatter/model.ts and ARCHITECTURE.md state it, with matrices only: no code of the
program is used or followed. Run: python3 reference.py > cases.json (needs numpy and scipy; some minutes on one core).

ln(mean power of a pull over the window) = group + set-up + day + cell + pull + slope(session) x hours.
 - Groups are fixed. So is the slope of a session in which some group was pulled before and after a pull of another, if groups
   and earlier slopes leave its times anything of their own.
 - Set-up, day, cell and pull are normal with the standard deviations given. They make the weights.
 - The slope of any other session with different times is normal about 0 and the same for all its pulls. It widens the
   variance and does not weigh, by decision (ARCHITECTURE: a drift expected but not seen never shifts a gain).
 - A pull without a set-up shares one with its group's other such pulls of that session; pulls without a day share one.
 - At one speed comes the scatter within a pull, alike between speeds by exp(-distance / length).
Scatter put into the invented data is a quarter of what is given, so that no repeats contradict it; nothing is learned from it.
"""

import json
import math

import numpy as np
from scipy import stats

RNG = np.random.default_rng(20261125)
DRAWS = 1_000_000
PIECE = 50_000


def key_setup(pull):
    return ("own", pull["group"], pull["session"]) if pull["setUp"] is None else ("named", pull["setUp"])


def indicator(values):
    levels = sorted(set(values), key=repr)
    return np.array([[1.0 if value == level else 0.0 for level in levels] for value in values])


def session_columns(pulls):
    """Columns of hours about the mean of the session, in order of the sessions: (cancels, column)."""
    columns = []
    fixed = indicator([p["group"] for p in pulls])
    sessions = []
    for pull in pulls:
        if pull["session"] not in sessions:
            sessions.append(pull["session"])
    for session in sessions:
        own = [i for i, p in enumerate(pulls) if p["session"] == session]
        hours = [pulls[i]["hours"] for i in own]
        if any(h is None for h in hours) or len(set(hours)) == 1:
            continue
        column = np.zeros(len(pulls))
        column[own] = np.array(hours) - np.mean(hours)
        between = any(
            any(
                pulls[j]["group"] != group and min(times) < pulls[j]["hours"] < max(times)
                for j in own
            )
            for group in {pulls[i]["group"] for i in own}
            for times in [[pulls[i]["hours"] for i in own if pulls[i]["group"] == group]]
        )
        wider = np.column_stack([fixed, column])
        cancels = between and np.linalg.matrix_rank(wider, tol=1e-7) > fixed.shape[1]
        if cancels:
            fixed = wider
        columns.append((cancels, column))
    return columns


def compare(pulls, history, baseline, window):
    groups = []
    for pull in pulls:
        if pull["group"] not in groups:
            groups.append(pull["group"])
    # Nodes: rows of the coarsest pull at which all have a figure, in the window.
    steps = [np.median(np.diff(p["engineSpeedRpm"])) for p in pulls]
    grid = pulls[int(np.argmax(steps))]["engineSpeedRpm"]
    by_speed = [dict(zip(p["engineSpeedRpm"], p["power"])) for p in pulls]
    low, high = window if window else (-math.inf, math.inf)
    nodes = [s for s in grid if low <= s <= high and all(rows.get(s) is not None for rows in by_speed)]
    power = np.array([[rows[s] for s in nodes] for rows in by_speed])
    log_mean = np.log(power.mean(axis=1))

    n = len(pulls)
    z_setup = indicator([key_setup(p) for p in pulls])
    z_day = indicator([p["session"] for p in pulls])
    z_cell = indicator([p["cell"] for p in pulls])
    drift = session_columns(pulls)
    kept = [c for cancels, c in drift if not cancels]
    taken = [c for cancels, c in drift if cancels]
    sd = {name: spread["sigma"] for name, spread in history.items()}
    v = {
        "pull": sd["pull"] ** 2 * np.eye(n),
        "setUp": sd["setUp"] ** 2 * z_setup @ z_setup.T,
        "day": sd["day"] ** 2 * z_day @ z_day.T,
        "cell": sd["cell"] ** 2 * z_cell @ z_cell.T,
        "drift": sd["driftPerHour"] ** 2 * sum((np.outer(c, c) for c in kept), np.zeros((n, n))),
    }
    lasting = v["pull"] + v["setUp"] + v["day"] + v["cell"]
    x = np.column_stack([np.array([[1.0 if p["group"] == g else 0.0 for g in groups] for p in pulls])] + taken)
    inverse = np.linalg.inv(lasting)
    solver = np.linalg.solve(x.T @ inverse @ x, x.T @ inverse)  # rows: weights of each fixed effect

    changed = [g for g in groups if g != baseline]
    contrasts = np.array([solver[groups.index(g)] - solver[groups.index(baseline)] for g in changed])
    covariance = contrasts @ sum(v.values()) @ contrasts.T
    gains = []
    for place, group in enumerate(changed):
        w = contrasts[place]
        parts = {name: float(w @ matrix @ w) for name, matrix in v.items()}
        total = sum(parts.values())
        within = sd["within"] ** 2 * float(w @ w)
        distance = np.abs(np.subtract.outer(nodes, nodes))
        scatter = total + within * np.exp(-distance / history["within"]["lengthRpm"])
        gains.append(
            {
                "group": group,
                "logGain": float(w @ log_mean),
                "standardError": math.sqrt(total),
                "parts": parts,
                "logGainAtNodes": [float(value) for value in w @ np.log(power)],
                "deviationAtNode": math.sqrt(total + within),
                "weights": [float(value) for value in w],
                **critical_values(covariance, scatter, history, parts, within, len(changed)),
            }
        )
    return {"engineSpeedRpm": nodes, "gains": gains}


def critical_values(covariance, at_nodes, history, parts, within, count):
    """By draws. Degrees of freedom are given per part; each part's true variance lies about the one given, by chi-square."""
    own = {name: history["driftPerHour" if name == "drift" else name]["degreesOfFreedom"] for name in parts}
    known = all(df >= 1e6 for df in list(own.values()) + [history["within"]["degreesOfFreedom"]])
    answer = {}
    if count == 1:
        if known:
            answer["critical"] = float(stats.norm.ppf(0.975))
            answer["criticalError"] = 0.0
        else:
            sums = behrens_fisher([(value, own[name]) for name, value in parts.items()])
            answer["critical"], answer["criticalError"] = quantile(sums, 0.95)
    else:
        scale = np.sqrt(np.diag(covariance))
        largest = largest_of(covariance / np.outer(scale, scale))
        answer["critical"], answer["criticalError"] = quantile(largest, 0.95)
        answer["equalCorrelations"] = bool(np.ptp((covariance / np.outer(scale, scale))[np.triu_indices(count, 1)]) < 1e-9)
    if known:
        scale = math.sqrt(at_nodes[0, 0])
        largest = largest_of(at_nodes / scale**2)
        answer["criticalSimultaneous"], answer["criticalSimultaneousError"] = quantile(largest, 1 - 0.05 / count)
    return answer


def largest_of(correlation):
    root = np.linalg.cholesky(correlation + 1e-12 * np.eye(len(correlation)))
    return np.concatenate(
        [np.abs(RNG.standard_normal((PIECE, len(root))) @ root.T).max(axis=1) for _ in range(DRAWS // PIECE)]
    )


def behrens_fisher(parts):
    total = sum(value for value, _ in parts)
    draws = np.zeros(DRAWS)
    for value, df in parts:
        if value > 0:
            draws += math.sqrt(value / total) * RNG.standard_t(df, DRAWS)
    return np.abs(draws)


def quantile(values, share):
    """Quantile and its standard error by the density about it."""
    ordered = np.sort(values)
    n = len(ordered)
    at = int(share * n)
    spread = int(0.002 * n)
    density = (2 * spread / n) / (ordered[at + spread] - ordered[at - spread])
    return float(ordered[at]), math.sqrt(share * (1 - share) / n) / density


def spread(sigma, df=1e9):
    return {"sigma": sigma, "degreesOfFreedom": df, "from": "stated"}


def history(pull=0.004, set_up=0.005, day=0.008, cell=0.02, within=0.003, length=300, drift=0.004, df=1e9):
    dfs = df if isinstance(df, dict) else dict.fromkeys(["pull", "setUp", "day", "cell", "within", "drift"], df)
    return {
        "pull": spread(pull, dfs["pull"]),
        "setUp": spread(set_up, dfs["setUp"]),
        "day": spread(day, dfs["day"]),
        "cell": spread(cell, dfs["cell"]),
        "within": {**spread(within, dfs["within"]), "lengthRpm": length},
        "driftPerHour": spread(drift, dfs["drift"]),
    }


SHAPES = {
    "A": lambda s: s * (70 - 9 * ((s - 4600) / 1000) ** 2),
    "B": lambda s: s * (70 - 9 * ((s - 4700) / 1000) ** 2),
    "C": lambda s: s * (69 - 8 * ((s - 4800) / 1000) ** 2),
    "D": lambda s: s * (71 - 9 * ((s - 4500) / 1000) ** 2),
}


def design(text, history_, grid=(3000, 6000, 250)):
    """`A1m0.25` is a pull of A in set-up 1 on day m at 0.25 h; `A-m`: its set-up is not known; `@n`: cell n; no hours: not known."""
    import re

    pulls = []
    offsets = {}

    def offset(kind, name, sigma):
        return offsets.setdefault((kind, name), 0.25 * sigma * RNG.standard_normal())

    for one in text.split():
        group, set_up, day, hours, cell = re.fullmatch(r"([A-D])(\d|-)([a-z]|_)([\d.]+)?(?:@(\w))?", one).groups()
        speeds = list(range(grid[0], grid[1] + 1, grid[2]))
        level = (
            offset("setUp", (group, day) if set_up == "-" else set_up, history_["setUp"]["sigma"])
            + offset("day", day, history_["day"]["sigma"])
            + offset("cell", cell, history_["cell"]["sigma"])
            + 0.25 * history_["pull"]["sigma"] * RNG.standard_normal()
            - 0.003 * float(hours or 0)
        )
        wander = [RNG.standard_normal()]
        for _ in speeds[1:]:
            r = math.exp(-grid[2] / history_["within"]["lengthRpm"])
            wander.append(r * wander[-1] + math.sqrt(1 - r * r) * RNG.standard_normal())
        power = [
            float(f"{SHAPES[group](s) * math.exp(level + 0.25 * history_['within']['sigma'] * u):.6g}")
            for s, u in zip(speeds, wander)
        ]
        pulls.append(
            {
                "engineSpeedRpm": speeds,
                "power": power,
                "group": group,
                "setUp": None if set_up == "-" else set_up,
                "session": None if day == "_" else day,
                "cell": cell,
                "hours": None if hours is None else float(hours),
            }
        )
    return pulls


def cases():
    h = history()
    yield "one against one, nothing between", design("A1m B1m", h), h, None
    yield "three against three of their own set-ups, no times", design("A1m A1m A1m B2m B2m B2m", h), h, None
    yield "blocks with times: drift carried", design("A1m0 A1m0.3 A1m0.5 B1m1.5 B1m1.75", h), h, None
    yield "A-B-B-A at uneven times: slope taken out", design("A1m0 B1m0.4 B1m0.7 A1m1.6", h), h, None
    yield (
        "two days, each interleaved: two slopes taken out, set-ups shared on one day only",
        design("A1m0 B1m0.5 A1m1.2 B2n0 A3n0.3 A3n0.8 B2n1.4", h),
        h,
        None,
    )
    yield "unbalanced set-ups and days", design("A1m A1m A1m A2n B3n B4o B4o", h), h, None
    yield "two cells, one day each, set-ups not known", design("A-m@p A-m@p B-n@q A-n@q B-m@p", h), h, None
    yield "days not known, cell not known, set-ups in part", design("A-_ A1_ B-_ B2_ B2_", h), h, None
    yield "three groups in one set-up, equal numbers", design("A1m A1m B1m B1m C1m C1m", h), h, None
    yield (
        "four groups, own set-ups, drift taken out one day and carried the other",
        design("A1m0 B2m0.5 A1m1 A3n0 C4n0.7 C4n0.9 D5n1.4", h),
        h,
        None,
    )
    fine = history(within=0.005, length=200)
    yield "fifty nodes and a window asked for", design("A1m B1m A1m B1m", fine, (2500, 6500, 50)), fine, [3500, 6000]
    mixed = design("A1m A1m B2m B2m B2m", h)
    mixed[1]["power"][6] = None
    for rows in ("engineSpeedRpm", "power"):
        mixed[4][rows] = mixed[4][rows][2:-2:2]
    yield "a coarser grid and a hole", mixed, h, None
    large = history(pull=0.002, set_up=0.02, day=0.001, drift=0.02)
    yield (
        "set-ups that lead: A returns in a third set-up, slope taken out",
        design("A1m0 A1m0.25 B2m1 B2m1.25 A3m2 A3m2.25", large),
        large,
        None,
    )
    few = history(df={"pull": 6, "setUp": 4, "day": 5, "cell": 3, "within": 40, "drift": 4})
    yield "one against one on other days: few degrees of freedom each", design("A1m B2n", few), few, None
    yield "one against one in one set-up an hour apart: few degrees of freedom", design("A1m0 B1m1", few), few, None


if __name__ == "__main__":
    made = []
    for name, pulls, history_, window in cases():
        made.append(
            {
                "name": name,
                "baseline": "A",
                "windowRpm": window,
                "history": history_,
                "pulls": pulls,
                "expected": compare(pulls, history_, "A", window),
            }
        )
    made_by = f"reference.py, NumPy {np.__version__}, critical values by {DRAWS} draws with their standard error"
    print(json.dumps({"madeBy": made_by, "cases": made}, indent=1))
