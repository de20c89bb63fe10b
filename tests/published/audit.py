#!/usr/bin/env python3
"""Makes audit.tsv: sizes of stump audits and bounds on the wrong share, by SciPy.

    /usr/bin/python3 tests/published/audit.py > tests/published/audit.tsv

Run by hand (Debian: python3-scipy); the test reads what is kept. Nothing here is our own code: sizes are found by
trying one after the other, bounds for a list by trying every number of wrong ones, and without a list by the beta
distribution.
"""

import math

import scipy
from scipy.stats import beta, binom, hypergeom

SOURCE = f"SciPy {scipy.__version__}, tests/published/audit.py"


def within(chance, confidence):
    """Whether a chance is no greater than what the confidence leaves; 0.2 is within 1 - 0.8, whatever its rounding."""
    return chance <= (1 - confidence / 100) * (1 + 1e-12)


def list_size(n_all, allowed, bound, confidence):
    wrong = math.floor(round(bound * n_all / 100, 9)) + 1
    for n in range(min(allowed + 1, n_all), n_all + 1):
        if within(hypergeom.cdf(allowed, n_all, min(wrong, n_all), n), confidence):
            return n
    return n_all


def open_size(allowed, bound, confidence):
    n = allowed + 1
    while not within(binom.cdf(allowed, n, bound / 100), confidence):
        n += 1
    return n


def list_bound(n_all, n, found, confidence):
    held = [w for w in range(found, n_all - n + found + 1)
            if not within(hypergeom.cdf(found, n_all, w, n), confidence)]
    return 100 * max(held) / n_all


def open_bound(n, found, confidence):
    return 100.0 if found == n else 100 * beta.ppf(confidence / 100, found + 1, n - found)


rows = []


def row(quantity, inputs, want, tolerance, unit, source=SOURCE, status="derived"):
    text = ";".join(f"{k}={v}" for k, v in inputs.items())
    rows.append((f"SA{len(rows) + 1:03d}", quantity, text, want, tolerance, unit, source, status))


# The well-known sizes with nothing wrong: the least n with (1 - bound)^n <= 1 - confidence.
for bound, confidence, want in ((5, 95, 59), (1, 95, 299), (10, 95, 29), (10, 90, 22), (20, 95, 14)):
    row("audit_sample", dict(allowed=0, bound_pct=bound, confidence_pct=confidence), want, 0.1, "trees",
        "(1 - bound)^n <= 1 - confidence; the size that textbooks of acceptance sampling print, from memory",
        "derived")
for allowed in (0, 1, 2, 5):
    for bound in (1, 2, 5, 10):
        for confidence in (80, 90, 95, 99):
            row("audit_sample", dict(allowed=allowed, bound_pct=bound, confidence_pct=confidence),
                open_size(allowed, bound, confidence), 0.1, "trees")
            for n_all in (10, 37, 100, 412, 2000, 20000):
                if allowed < n_all:
                    row("audit_sample", dict(list=n_all, allowed=allowed, bound_pct=bound, confidence_pct=confidence),
                        list_size(n_all, allowed, bound, confidence), 0.1, "trees")
for n, found in ((1, 0), (10, 0), (30, 0), (30, 2), (59, 0), (100, 7), (100, 100), (400, 3)):
    for confidence in (80, 95, 99):
        row("audit_share", dict(sample=n, wrong=found, confidence_pct=confidence),
            f"{open_bound(n, found, confidence):.10f}", "0.0000001", "%")
        for n_all in (100, 412, 3000):
            if n <= n_all:
                row("audit_share", dict(list=n_all, sample=n, wrong=found, confidence_pct=confidence),
                    f"{list_bound(n_all, n, found, confidence):.10f}", "0.0000001", "%")

print("id\tquantity\tinputs\twant\ttolerance\tunit\tsource\tstatus")
for fields in rows:
    print("\t".join(str(f) for f in fields))
