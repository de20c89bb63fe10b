"""Seeded chance for the demo tract.

Only random.Random(seed).random() is used: Python promises that its sequence for a given seed stays
the same in every version, which it does not promise for gauss(), choice() or shuffle(). So the demo
files come out byte for byte the same wherever they are made.
"""

import math
import random


class Dice:
    def __init__(self, seed):
        self._random = random.Random(seed).random

    def between(self, low, high):
        return low + (high - low) * self._random()

    def chance(self, share):
        return self._random() < share

    def normal(self, mean=0.0, sd=1.0):
        """Box and Muller's transform; one of its two values is thrown away to keep this simple."""
        u = 1.0 - self._random()
        v = self._random()
        return mean + sd * math.sqrt(-2.0 * math.log(u)) * math.cos(2.0 * math.pi * v)

    def bounded(self, mean, sd, low, high):
        """A normal value, drawn again until it lies within low..high."""
        while True:
            x = self.normal(mean, sd)
            if low <= x <= high:
                return x

    def poisson(self, mean):
        """Knuth's product of uniforms; fine for the small means used here."""
        limit = math.exp(-mean)
        count, product = 0, self._random()
        while product > limit:
            count += 1
            product *= self._random()
        return count

    def pick(self, weights):
        """A key of {key: weight}, in the order in which the keys were written."""
        mark = self._random() * sum(weights.values())
        for key, weight in weights.items():
            mark -= weight
            if mark < 0.0:
                return key
        return key
