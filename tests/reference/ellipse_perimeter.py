# SPDX-FileCopyrightText: The Tinwright authors
# SPDX-License-Identifier: MIT
#
# Writes ellipse_perimeter.csv: perimeter of an ellipse, NIST DLMF 19.30.1, P = 4 a E(k), k^2 = 1 - b^2/a^2,
# with E by the arithmetic-geometric mean, DLMF 19.8.6, in 40-digit decimal arithmetic (formulas from memory).
# Rerun from this folder:  /usr/bin/python3 ellipse_perimeter.py
# If mpmath is present the values are compared with mpmath.ellipe.

from decimal import Decimal, getcontext

getcontext().prec = 40
PI = Decimal("3.141592653589793238462643383279502884197")
LENGTH = Decimal("0.30")
RATIOS = ["1", "0.99", "0.95", "0.9", "0.8", "0.66667", "0.5", "0.3", "0.1", "0.01"]


def complete_elliptic_e(k_squared):
    """E(k) = K(k) (1 - sum 2^(n-1) c_n^2), a_0 = 1, g_0 = k', c_0 = k."""
    a, g = Decimal(1), (1 - k_squared).sqrt()
    total, weight, c_squared = Decimal(0), Decimal("0.5"), k_squared
    for _ in range(60):
        total += weight * c_squared
        c_squared = ((a - g) / 2) ** 2
        weight *= 2
        a, g = (a + g) / 2, (a * g).sqrt()
        if c_squared < Decimal("1e-70"):
            break
    return PI / (2 * a) * (1 - total)


def main():
    rows = []
    for text in RATIOS:
        ratio = Decimal(text)
        perimeter = 4 * (LENGTH / 2) * complete_elliptic_e(1 - ratio * ratio)
        rows.append((text, LENGTH * ratio, perimeter))
    with open("ellipse_perimeter.csv", "w", encoding="utf-8", newline="\n") as out:
        out.write("# Ellipse perimeters, P = 4 a E(k), NIST DLMF 19.30.1; E by the AGM in 40-digit decimals. Metres.\n")
        out.write("# Made by: python3 ellipse_perimeter.py\n")
        out.write("ratio,length_m,width_m,perimeter_m,tolerance\n")
        for text, width, perimeter in rows:
            out.write(f"{text},{LENGTH},{width.normalize():f},{perimeter:.15f},1e-14\n")
    try:
        import mpmath
    except ImportError:
        return
    mpmath.mp.dps = 30
    for text, width, perimeter in rows:
        other = 4 * mpmath.mpf("0.15") * mpmath.ellipe(1 - mpmath.mpf(text) ** 2)
        assert abs(other - mpmath.mpf(str(perimeter))) < mpmath.mpf("1e-25"), text
    print("agrees with mpmath.ellipe to 1e-25")


if __name__ == "__main__":
    main()
