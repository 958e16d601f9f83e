"""A second computation of what would have arrived: own random numbers, the law integrated in steps of a minute.

Reads a case from the standard input: air by the hour as straight lines, priors, readings, limits; all in degrees Celsius,
kelvins and seconds. Prints quantiles and shares of 20,000 cases.
"""
import json
import math
import sys

import numpy

CASES = 20_000
STEP = 60.0


def main():
    case = json.load(sys.stdin)
    rng = numpy.random.default_rng(20260714)

    def either(half):
        return rng.uniform(-half, half, CASES)

    low, high = case["halfCooling"]
    tau = numpy.exp(rng.uniform(math.log(low), math.log(high), CASES)) / math.log(2)
    offset = either(case["airAtPlace"]) + either(case["sensor"])
    mix = rng.uniform(0, 1, CASES)
    share = rng.uniform(0, 1, CASES)
    seconds = numpy.array(case["seconds"])
    first, second = numpy.array(case["first"]), numpy.array(case["second"])

    # Highest published rate at a temperature: straight in the logarithm between published ones, flat outside.
    at = numpy.array([point[0] for point in case["respiration"]])
    rate = numpy.array([point[1] for point in case["respiration"]])

    def heat(celsius):
        return numpy.exp(numpy.interp(celsius, at, numpy.log(rate))) * case["kelvinPerSecondAndRate"]

    def arrive(start):
        product = start.copy()
        steps = int(round(seconds[-1] / STEP))
        for step in range(steps):
            middle = (step + 0.5) * STEP
            one, other = numpy.interp(middle, seconds, first), numpy.interp(middle, seconds, second)
            air = offset + mix * one + (1 - mix) * other
            change = -(product - air) / tau + share * heat(product)
            half = product + change * STEP / 2
            product = product + STEP * (-(half - air) / tau + share * heat(half))
        return product

    error = either(1)
    readings = numpy.array(case["loading"])
    measured = readings[rng.integers(0, len(readings), CASES)]
    starts = {
        "asInstructed": rng.uniform(case["low"], case["high"], CASES),
        "asMeasured": measured - error * case["loadingError"] + either(case["cartons"]),
    }
    errors = {"asInstructed": either(1), "asMeasured": error if case["sameThermometer"] else either(1)}
    answer = {}
    for world, start in starts.items():
        goods = arrive(start)
        read = goods + errors[world] * case["arrivalError"] + either(case["cartons"])
        ours = case["ours"][world]
        answer[world] = {
            "tail": float(numpy.mean(read >= case["arrival"])),
            "beyondRange": float(numpy.mean(goods > case["high"])),
            "belowOurLow": float(numpy.mean(read < ours["low"])),
            "belowOurHigh": float(numpy.mean(read < ours["high"])),
        }
    json.dump(answer, sys.stdout)


main()
