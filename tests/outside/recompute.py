"""Recomputes what a unit log shows, from its CSV alone, with Python's standard library.

Written apart from the project's code, to see whether another hand gets the same numbers: own reading of the file,
own integration, the adaptive Simpson rule for the mean kinetic temperature.

    recompute.py LOG.csv UTC_OFFSET_HOURS FROM_MS TO_MS LOW_C HIGH_C CELLS

The log's first column is local time, `set`, `return` and `supply` columns are °F. Prints one JSON object.
"""

import bisect
import csv
import json
import math
import statistics
import sys
from datetime import datetime, timedelta, timezone

RATIO = 83144.0 / 8.314462618


def number(text):
    try:
        return float(text)
    except ValueError:
        return None


def read(path, offset):
    zone = timezone(timedelta(hours=offset))
    with open(path, newline="", encoding="utf-8-sig") as handle:
        rows = list(csv.reader(handle))
    head = next(i for i, row in enumerate(rows) if any("eturn" in cell for cell in row))
    names = [cell.lower() for cell in rows[head]]
    column = {key: next(i for i, n in enumerate(names) if key in n) for key in ("return", "supply", "set")}
    clock = next(i for i, n in enumerate(names) if "time" in n)
    times, series = [], {key: [] for key in column}
    for row in rows[head + 1:]:
        if len(row) <= max(column.values()):
            continue
        text = row[clock].strip()
        for pattern in ("%Y-%m-%d %H:%M:%S", "%Y-%m-%d %H:%M", "%Y-%m-%dT%H:%M:%S", "%m/%d/%Y %H:%M:%S", "%m/%d/%Y %H:%M"):
            try:
                when = datetime.strptime(text, pattern).replace(tzinfo=zone)
                break
            except ValueError:
                continue
        else:
            continue
        times.append(int(when.timestamp() * 1000))
        for key, i in column.items():
            value = number(row[i])
            series[key].append(None if value is None or value > 185 or value < -112 else (value - 32) * 5 / 9)
    return times, series


def pieces(times, values, begin, end, limit):
    known = [(t, v) for t, v in zip(times, values) if v is not None]
    for (t0, v0), (t1, v1) in zip(known, known[1:]):
        if t1 - t0 > limit or t1 <= begin or t0 >= end:
            continue
        a, b = max(t0, begin), min(t1, end)
        line = lambda t: v0 + (v1 - v0) * (t - t0) / (t1 - t0)
        yield a, line(a), b, line(b)


def simpson(f, a, b, depth=0):
    def rule(x, y):
        return (y - x) * (f(x) + 4 * f((x + y) / 2) + f(y)) / 6

    middle = (a + b) / 2
    whole, halves = rule(a, b), rule(a, middle) + rule(middle, b)
    if depth > 12 or abs(whole - halves) <= 1e-13 * abs(halves):
        return halves
    return simpson(f, a, middle, depth + 1) + simpson(f, middle, b, depth + 1)


def summary(times, values, begin, end, limit, low, high):
    known = area = out_high = out_low = area_high = area_low = rate = 0.0
    least, most = math.inf, -math.inf
    for t0, v0, t1, v1 in pieces(times, values, begin, end, limit):
        length = t1 - t0
        known += length
        area += length * (v0 + v1) / 2
        least, most = min(least, v0, v1), max(most, v0, v1)
        if v0 == v1:
            rate += length * math.exp(-RATIO / (v0 + 273.15))
        else:
            rate += length * simpson(lambda x: math.exp(-RATIO / (v0 + (v1 - v0) * x + 273.15)), 0.0, 1.0)
        for side, bound in ((1, high), (-1, low)):
            d0, d1 = side * (v0 - bound), side * (v1 - bound)
            if max(d0, d1) <= 0:
                share, mean = 0.0, 0.0
            elif min(d0, d1) >= 0:
                share, mean = 1.0, (d0 + d1) / 2
            else:
                share = max(d0, d1) / (max(d0, d1) - min(d0, d1))
                mean = share * max(d0, d1) / 2
            if side == 1:
                out_high += share * length
                area_high += mean * length
            else:
                out_low += share * length
                area_low += mean * length
    return {
        "mean": area / known,
        "min": least,
        "max": most,
        "knownSeconds": known / 1000,
        "aboveSeconds": out_high / 1000,
        "belowSeconds": out_low / 1000,
        "degreeHoursAbove": area_high / 3600000,
        "degreeHoursBelow": area_low / 3600000,
        "meanKinetic": RATIO / -math.log(rate / known) - 273.15,
    }


def drawn(times, values, begin, end, limit):
    """The air as straight lines, also across gaps; before the first and after the last it stays."""
    line = []
    for t0, v0, t1, v1 in pieces(times, values, begin, end, limit):
        line += [(t0, v0), (t1, v1)]
    return [(begin, line[0][1]), *line, (end, line[-1][1])]


def product(line, start, tau):
    """Follows the product by Newton's law, with the known closed form for a ramp of the air."""
    temperature = start
    for (t0, v0), (t1, v1) in zip(line, line[1:]):
        seconds = (t1 - t0) / 1000
        if seconds == 0:
            continue
        slope = (v1 - v0) / seconds
        temperature = v1 - slope * tau + (temperature - v0 + slope * tau) * math.exp(-seconds / tau)
    return temperature


def product_in_cells(line, start, tau, cells):
    """Follows the product in the mean air of equal cells, by the area under the lines up to each end of a cell."""
    areas = [0.0]
    for (t0, v0), (t1, v1) in zip(line, line[1:]):
        areas.append(areas[-1] + (v0 + v1) / 2 * (t1 - t0))
    times = [t for t, _ in line]

    def area(at):
        i = min(bisect.bisect_right(times, at), len(line) - 1)
        (t0, v0), (t1, v1) = line[i - 1], line[i]
        share = 0 if t1 == t0 else (at - t0) / (t1 - t0)
        return areas[i - 1] + (at - t0) * (v0 + (v0 + (v1 - v0) * share)) / 2

    begin, end = times[0], times[-1]
    ends = [begin + (end - begin) * i / cells for i in range(cells + 1)]
    temperature = start
    for t0, t1 in zip(ends, ends[1:]):
        air = (area(t1) - area(t0)) / (t1 - t0)
        temperature = air + (temperature - air) * math.exp(-(t1 - t0) / 1000 / tau)
    return temperature


def main():
    path, offset, begin, end, low, high = sys.argv[1], float(sys.argv[2]), int(sys.argv[3]), int(sys.argv[4]), float(sys.argv[5]), float(sys.argv[6])
    times, series = read(path, offset)
    median = statistics.median(b - a for a, b in zip(times, times[1:]))
    limit = max(3 * median, 30 * 60 * 1000)
    result = {
        name: summary(times, series[key], begin, end, limit, low, high)
        for name, key in (("return-air", "return"), ("supply-air", "supply"))
    }
    line, tau = drawn(times, series["return"], begin, end, limit), 20 * 3600 / math.log(2)
    result["product"] = product(line, 10.0, tau)
    result["productInCells"] = product_in_cells(line, 10.0, tau, int(sys.argv[7]))
    result["rows"] = len(times)
    json.dump(result, sys.stdout)


main()
