# SPDX-FileCopyrightText: The Tinwright authors
# SPDX-License-Identifier: MIT
#
# Writes mixture_density.csv: density without air of doughs, batters and fillings, from their composition, by the
# component densities of Choi & Okos (1986) at 20 C, 1 / rho = sum x_i / rho_i. These are upper bounds: creamed
# doughs, whisked fillings and crumbs hold air. The ingredients' composition is USDA SR (per 100 g: water, protein, fat,
# carbohydrate without fibre, fibre, ash). Rows marked `USDA` take a whole food of that table, the rest a plain
# ratio of ours, in parts by mass, of the kind every kitchen uses.
# Rerun from this folder:  /usr/bin/python3 mixture_density.py

T = 20.0
COMPONENT = [  # kg/m3: water, protein, fat, carbohydrate, fibre, ash
    997.18 + 3.1439e-3 * T - 3.7574e-3 * T * T,
    1329.9 - 0.5184 * T,
    925.59 - 0.41757 * T,
    1599.1 - 0.31046 * T,
    1311.5 - 0.36589 * T,
    2423.8 - 0.28063 * T,
]

# water, protein, fat, carbohydrate by difference (fibre included), fibre, ash; the USDA number beside each.
FOOD = {
    "flour": (11.92, 10.33, 0.98, 76.31, 2.7, 0.47),              # 20081
    "cornflour": (8.32, 0.26, 0.05, 91.27, 0.9, 0.09),            # 20027
    "sugar": (0.02, 0.00, 0.00, 99.98, 0.0, 0.01),                # 19335
    "brown sugar": (1.34, 0.12, 0.00, 98.09, 0.0, 0.45),          # 19334
    "syrup": (22.81, 0.00, 0.20, 76.79, 0.0, 0.20),               # 19350
    "molasses": (21.87, 0.00, 0.10, 74.73, 0.0, 3.30),            # 19304
    "butter": (17.94, 0.85, 81.11, 0.06, 0.0, 0.04),              # 01145
    "oil": (0.0, 0.0, 100.0, 0.0, 0.0, 0.0),                      # 04518
    "milk": (88.13, 3.15, 3.25, 4.80, 0.0, 0.67),                 # 01077
    "evaporated milk": (74.04, 6.81, 7.56, 10.04, 0.0, 1.55),     # 01096
    "condensed milk": (27.16, 7.91, 8.70, 54.40, 0.0, 1.83),      # 01095
    "cream": (57.71, 2.05, 37.00, 2.79, 0.0, 0.45),               # 01053
    "soured cream": (74.46, 2.07, 19.73, 2.88, 0.0, 0.85),        # 01056
    "cream cheese": (54.44, 5.93, 34.24, 4.07, 0.0, 1.32),        # 01017
    "ricotta": (71.70, 11.26, 12.98, 3.04, 0.0, 1.02),            # 01036
    "egg": (76.15, 12.56, 9.51, 0.72, 0.0, 1.06),                 # 01123
    "yolk": (52.31, 15.86, 26.54, 3.59, 0.0, 1.71),               # 01125
    "egg white": (87.57, 10.90, 0.17, 0.73, 0.0, 0.63),           # 01124
    "dark chocolate": (0.97, 4.88, 31.28, 61.17, 7.0, 1.70),      # 19902
    "cocoa": (3.00, 19.60, 13.70, 57.90, 33.2, 5.80),             # 19165
    "almonds": (4.51, 21.40, 52.52, 18.67, 9.9, 2.91),            # 12062
    "pecans": (3.52, 9.17, 71.97, 13.86, 9.6, 1.49),              # 12142
    "pumpkin": (89.97, 1.10, 0.28, 8.09, 2.9, 0.56),              # 11424
    "lemon juice": (92.31, 0.35, 0.24, 6.90, 0.3, 0.21),          # 09152
    "apple": (85.56, 0.26, 0.17, 13.81, 2.4, 0.19),               # 09003
    "banana": (74.91, 1.09, 0.33, 22.84, 2.6, 0.82),              # 09040
    "oats": (10.84, 13.15, 6.52, 67.70, 10.1, 1.77),              # 08120
    "jam": (30.47, 0.37, 0.07, 68.86, 1.1, 0.23),                 # 19297
    "plain biscuit crumbs": (4.40, 6.90, 10.10, 76.80, 2.8, 1.80),    # 18173
    "chocolate wafer crumbs": (4.50, 6.60, 14.20, 72.70, 3.4, 2.00),  # 18157
    "water": (100.0, 0.0, 0.0, 0.0, 0.0, 0.0),
    "shortcrust, USDA": (19.70, 5.70, 30.80, 42.30, 3.4, 1.50),       # 18402
    "sugar cookie dough, USDA": (14.08, 4.00, 19.48, 61.22, 0.9, 1.20),   # 18205
    "oatmeal cookie dough, USDA": (15.30, 5.40, 18.90, 59.10, 2.5, 1.30),  # 18182
    "choc chip cookie dough, USDA": (12.08, 3.98, 21.33, 61.02, 1.5, 1.54),  # 18163
}

MIXTURE = {
    "pressed-biscuit-crumb": {"plain biscuit crumbs": 2, "butter": 1},
    "pressed-chocolate-crumb": {"chocolate wafer crumbs": 2.5, "butter": 1},
    "shortcrust": {"shortcrust, USDA": 1},
    "rich-shortcrust": {"flour": 10, "butter": 6, "water": 1.5, "yolk": 0.8},
    "sweet-pastry": {"flour": 10, "butter": 5, "sugar": 4, "egg": 2},
    "almond-sweet-pastry": {"flour": 8, "almonds": 2, "butter": 5, "sugar": 4, "egg": 2},
    "shortbread": {"flour": 3, "butter": 2, "sugar": 1},
    "cookie-slab": {"sugar cookie dough, USDA": 1},
    "oat-cookie": {"oatmeal cookie dough, USDA": 1},
    "chocolate-chip-cookie": {"choc chip cookie dough, USDA": 1},
    "gingerbread-dough": {"flour": 10, "butter": 4, "brown sugar": 4, "molasses": 3, "egg": 1},
    "hot-water-crust": {"flour": 10, "butter": 4, "water": 4},
    "bread-dough": {"flour": 10, "water": 6.2},
    "brioche-dough": {"flour": 10, "butter": 4, "egg": 5, "sugar": 1, "milk": 1},
    "nut-crust": {"almonds": 6, "sugar": 1.5, "butter": 2},
    "egg-custard": {"milk": 6, "cream": 2, "egg": 3, "sugar": 1.2},
    "cream-custard": {"cream": 6, "yolk": 1.5, "sugar": 1},
    "savoury-egg-cream": {"egg": 2, "cream": 2, "milk": 2},
    "baked-cheesecake": {"cream cheese": 9, "sugar": 2.5, "egg": 2.5, "soured cream": 2},
    "ricotta-filling": {"ricotta": 8, "sugar": 2, "egg": 2},
    "pumpkin-custard": {"pumpkin": 4.25, "evaporated milk": 3.5, "sugar": 1.5, "egg": 1},
    "frangipane": {"butter": 1, "sugar": 1, "egg": 1, "almonds": 1},
    "lemon-curd": {"lemon juice": 1.2, "sugar": 2, "egg": 2, "butter": 1.2},
    "condensed-milk-citrus": {"condensed milk": 4, "yolk": 0.7, "lemon juice": 1.2},
    "pastry-cream": {"milk": 10, "yolk": 1.6, "sugar": 2, "cornflour": 0.8, "butter": 0.5},
    "ganache": {"dark chocolate": 1, "cream": 1},
    "chocolate-tart": {"dark chocolate": 3, "cream": 3, "egg": 1},
    "nut-syrup": {"syrup": 3, "egg": 1.5, "sugar": 1.5, "butter": 0.6, "pecans": 2},
    "syrup-crumb": {"syrup": 4, "flour": 0.8, "butter": 0.5, "egg": 0.6},
    "jam": {"jam": 1},
    "apple-filling": {"apple": 8, "sugar": 1, "cornflour": 0.2, "butter": 0.2},
    "cooked-fruit": {"apple": 6, "sugar": 1.5, "cornflour": 0.4, "water": 2},
    "brownie-batter": {"dark chocolate": 2, "butter": 1.75, "sugar": 3, "egg": 2, "flour": 1},
    "muffin-batter": {"flour": 3, "sugar": 1.5, "milk": 2.4, "egg": 1, "oil": 1},
    "gingerbread-batter": {"flour": 3, "molasses": 2, "brown sugar": 1, "butter": 1, "egg": 1, "milk": 2},
    "banana-batter": {"flour": 2.5, "banana": 3, "sugar": 1.5, "butter": 1.1, "egg": 1},
    "thin-batter": {"flour": 1.25, "milk": 3, "egg": 1},
}


def density(shares):
    """kg/m3 of component masses given per 100."""
    water, protein, fat, carbohydrate, fibre, ash = shares
    masses = (water, protein, fat, carbohydrate - fibre, fibre, ash)
    return sum(masses) / sum(m / rho for m, rho in zip(masses, COMPONENT))


def main():
    with open("mixture_density.csv", "w", encoding="utf-8", newline="\n") as out:
        out.write("# Density without air at 20 C from composition, Choi & Okos (1986); see mixture_density.py. Upper bounds.\n")
        out.write("# Made by: python3 mixture_density.py\n")
        out.write("id,density_g_per_ml,parts\n")
        for name, parts in MIXTURE.items():
            total = sum(parts.values())
            shares = [sum(FOOD[f][k] * p for f, p in parts.items()) / total for k in range(6)]
            text = " + ".join(f"{p:g} {f.replace(', USDA', ' (USDA)')}" for f, p in parts.items())
            out.write(f"{name},{density(shares) / 1000:.3f},{text}\n")


if __name__ == "__main__":
    main()
