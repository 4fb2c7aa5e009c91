# SPDX-FileCopyrightText: The Tinwright authors
# SPDX-License-Identifier: MIT
#
# Exact cooling of a plane wall with convection on both faces (Carslaw & Jaeger 1959, chapter III), for heat.py.
# Place 0..1 across the wall, Biot numbers h L / k of both faces and Fourier number on its full thickness L.

import math


class Wall:
    def __init__(self, biot0, biot1, terms=60):
        self.modes = []
        for n in range(terms):
            low, high = n * math.pi, (n + 1) * math.pi
            for _ in range(100):
                mu = 0.5 * (low + high)
                if mu - n * math.pi - math.atan2(biot0, mu) - math.atan2(biot1, mu) < 0:
                    low = mu
                else:
                    high = mu
            phase = math.atan2(biot0, mu)
            area = (math.sin(mu - phase) + math.sin(phase)) / mu
            norm = 0.5 + (math.sin(2 * (mu - phase)) + math.sin(2 * phase)) / (4 * mu)
            self.modes.append((mu, phase, area, norm))

    def theta(self, place, fourier):
        return sum(a / n * math.cos(mu * place - p) * math.exp(-mu * mu * fourier) for mu, p, a, n in self.modes)

    def mean(self, fourier):
        return sum(a * a / n * math.exp(-mu * mu * fourier) for mu, p, a, n in self.modes)
