"""Recomputes the excursions of a log by class with pandas, from docs/method.md alone.

Written apart from the project's code: own crossings, own integrals, own rules of cause.

    excursion_classes.py LOG.csv LOW_C HIGH_C

The log has columns ms, return, supply, defrost, door, power; the first and last row bound the window, the doors were
closed at its first. Prints one JSON object.
"""

import json
import sys

import pandas as pd

MINUTE = 60_000
CLASS = {"defrost": "normal-operation", "pull-down": "normal-operation", "door-open": "handling",
         "unit-off": "equipment", "capacity-loss": "equipment", "unexplained": "not-explained"}


def spans(log, column, word):
    """Runs of rows that say the word: start, end (the row after), number of rows."""
    on = log[column].eq(word)
    run = (on != on.shift()).cumsum()
    after = log["ms"].shift(-1).fillna(log["ms"])
    return [(int(rows["ms"].iloc[0]), int(after[rows.index[-1]]), len(rows)) for _, rows in log[on].groupby(run[on])]


def excursions(log, low, high):
    """Every time out of range as corners (time, distance beyond the limit), in order."""
    found = []
    for side, sign, limit in (("above", 1, high), ("below", -1, low)):
        corners = []
        for t, v in zip(log["ms"], log["return"]):
            d = sign * (v - limit)
            if corners and (corners[-1][1] > 0) != (d > 0):
                t0, d0 = corners[-1]
                cross = (t0 + (t - t0) * -d0 / (d - d0), 0.0)
                if d0 > 0:
                    found[-1][1].append(cross)
                else:
                    found.append((side, [cross]))
            elif not corners and d > 0:
                found.append((side, []))
            if d > 0:
                found[-1][1].append((t, d))
            corners.append((t, d))
    return sorted(found, key=lambda one: one[1][0][0])


def mean_over(log, column, start, end):
    """Mean of a straight-line curve between two times."""
    edge = pd.Series(index=sorted({*log["ms"], start, end}), dtype=float)
    edge.loc[log["ms"]] = log[column].to_numpy()
    edge = edge.interpolate("index").loc[start:end]
    area = sum((b - a) * (edge[a] + edge[b]) / 2 for a, b in zip(edge.index, edge.index[1:]))
    return area / (end - start)


def main():
    path, low, high = sys.argv[1], float(sys.argv[2]), float(sys.argv[3])
    log = pd.read_csv(path)
    start, end = int(log["ms"].iloc[0]), int(log["ms"].iloc[-1])
    step = int(log["ms"].diff().median())
    doors, offs, defrosts = (spans(log, c, w) for c, w in (("door", "open"), ("power", "off"), ("defrost", "on")))
    logged = doors + offs + defrosts
    offs = [s for s in offs if s[2] > 1 and (s[0] > start or s[1] - s[0] > 30 * MINUTE)]
    defrosts = [s for s in defrosts if s[1] - s[0] <= 60 * MINUTE + step]

    log["apart"] = log["return"] - log["supply"]
    calm = log["return"].between(low, high)
    for a, b, _ in logged:
        calm &= ~log["ms"].between(a, b + 30 * MINUTE)
    usual = log.loc[calm, "apart"]
    median = usual.median()
    spread = 1.4826 * (usual - median).abs().median()

    def explains(events, a, b, only_later):
        ones = [s for s in events if s[0] <= a + step and (not only_later or s[0] > start + step)]
        if not ones:
            return False
        begin, over, _ = max(ones, key=lambda s: s[0])
        return a <= over + 15 * MINUTE and b <= over + max(60 * MINUTE, over - begin)

    rows = []
    for side, corners in excursions(log, low, high):
        a, b = corners[0][0], corners[-1][0]
        pull = side == "above" and a <= start + 30 * MINUTE and b <= start + 240 * MINUTE
        heat = mean_over(log, "apart", a, b) if b > a else None
        if explains(doors, a, b, pull):
            cause = "door-open"
        elif explains(offs, a, b, pull):
            cause = "unit-off"
        elif explains(defrosts, a, b, False):
            cause = "defrost"
        elif pull:
            cause = "pull-down"
        elif side == "above" and len(usual) >= 12 and heat is not None and heat < median - max(1, 3 * spread):
            cause = "capacity-loss"
        else:
            cause = "unexplained"
        area = sum((t1 - t0) * (d0 + d1) / 2 for (t0, d0), (t1, d1) in zip(corners, corners[1:]))
        rows.append({"class": CLASS[cause], "seconds": (b - a) / 1000, "degreeHours": area / 3_600_000, "heat": heat})
    table = pd.DataFrame(rows, columns=["class", "seconds", "degreeHours", "heat"])
    known = (end - start) / 1000
    sums = table.groupby("class").agg(count=("seconds", "size"), seconds=("seconds", "sum"), degreeHours=("degreeHours", "sum"))
    normal = sums["seconds"].get("normal-operation", 0.0)
    json.dump({
        "classes": sums.reset_index().to_dict("records"),
        "inRangeOutsideNormal": (known - table["seconds"].sum()) / (known - normal),
        "median": median,
        "spread": spread,
        "heat": table["heat"].tolist(),
    }, sys.stdout)


main()
