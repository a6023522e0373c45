"""The recursion of the engine's lanes (engine/src/sizing/lanes.rs) by NumPy, all cells at once, in 32 bits.

A reference model for values and for speed: it reads one store, the sizes of the arrays and hours of weather from standard input, as the
bench and the test of the lanes write them, and prints nanoseconds per cell and step, then the state of charge and what was left over the
reserve at the worst in each cell.
"""

import re
import sys
import time

import numpy as np

F = np.float32


def fields(text):
    """Names and values of what Rust prints of a struct of numbers."""
    found = {}
    for name, value in re.findall(r"(\w+): (\[[^\]]*\]|[^,\s}]+)", text):
        if value.startswith("["):
            found[name] = [F(number) for number in value[1:-1].split(",")]
        else:
            found[name] = value == "true" if value in ("true", "false") else F(value)
    return found


def run(store, array, hours):
    """The state of charge of every cell after the hours, and its margin over the reserve at the worst."""
    s, h = store, None
    charge = np.ones_like(array)
    near = np.full_like(array, s["room"])
    margin = np.full_like(array, F(2.0))
    zero = F(0.0)
    for h in hours:
        lit = h["brings"]
        power = h["power"] + array * h["sun_power"]
        current = h["current"] + array * h["sun_current"]
        seen = near if s["plates"] else charge
        open_volts = s["curve_from"] + s["curve_rise"] * seen
        for bend, knee in zip(s["bends"], s["knees"]):
            open_volts = open_volts + bend * np.maximum(seen - knee, zero)
        reach = near * s["stays"] + charge * s["comes"] + s["spare_comes"]
        resistance, conductance = s["resistance"] * h["resists"], s["per_resistance"] / h["resists"]
        if s["plates"]:
            resistance = resistance * (F(2.0) - charge)
            conductance = conductance * (F(0.5) + charge * (F(0.2) + F(0.3) * charge))
        give = np.minimum(charge - s["bottom"], (open_volts - s["low"]) * conductance)
        if s["plates"]:
            give = np.minimum(give, reach)
        give = np.maximum(give, zero)
        floor = -np.minimum(give, s["discharge_limit"])
        net = (power * s["per_nominal"] + current) * s["per_full"]
        moved = np.maximum(net, floor) * resistance
        if lit:
            room = np.maximum(s["absorption"] + h["absorption"] * s["warmth"] - open_volts, zero)
            keep = np.maximum(s["top"] - charge, zero)
            if s["plates"]:
                left = F(1.0) - charge
                taper = left * (F(0.826017) + F(11.765892) * left)
                taper = taper / (F(1.0) + left * (F(5.892335) + F(9.107496) * left))
                keep = np.maximum(np.minimum(keep, s["room"] - reach), zero)
                accept = room * (taper * (h["conducts"] * s["plate_size"]))
                rise = room / np.maximum(np.minimum(accept, keep), F(1e-9))
            else:
                accept = room * s["per_resistance"]
                rise = s["resistance"]
            accept = np.minimum(accept, s["charge_limit"] * h["warm"])
            taken = np.minimum(np.minimum(net, accept), keep) * rise
            moved = np.where(net > zero, taken, moved)
        net = (power / (open_volts + moved) + current) * s["per_full"] - s["protection"]
        if lit:
            taken = np.maximum(np.minimum(net, accept), zero)
            efficiency = s["efficiency"]
            if s["plates"]:
                y = (F(1.0) - charge) / (taken * s["per_ten_hour"] + F(0.55 * 4 / 20.73))
                y = np.minimum(y, F(0.9))
                root = F(1.0) - y * (F(0.99617) - y * (F(0.473413) - y * F(0.110624)))
                efficiency = np.minimum(F(1.0) - (root * root) * (root * root), efficiency)
            kept = np.minimum(taken * efficiency, keep)
            flow = np.maximum(np.minimum(net, zero), floor) + kept
        else:
            flow = np.maximum(net, floor)
        after = (charge + flow) * s["stands"]
        if s["plates"]:
            near = reach + (after - charge)
        charge = after
        margin = np.minimum(margin, np.minimum(after - s["reserve"], give + net))
    return charge, margin


def main():
    lines = sys.stdin.read().splitlines()
    store = fields(lines[0])
    array = np.array([F(number) for number in lines[1].split()], dtype=F)
    hours = [fields(line) for line in lines[2:]]
    run(store, array, hours[:24])
    began = time.perf_counter()
    charge, margin = run(store, array, hours)
    took = time.perf_counter() - began
    print(took * 1e9 / (len(array) * len(hours)))
    print(*(f"{value:.9g}" for value in charge))
    print(*(f"{value:.9g}" for value in margin))


main()
