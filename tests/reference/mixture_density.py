# SPDX-FileCopyrightText: The Tinwright authors
# SPDX-License-Identifier: MIT
#
# What the catalogue's doughs, batters and fillings are made of and what they would weigh without air. Each is a mix of
# ingredients in grams: plain ratios of ours, of the kind every kitchen uses, without the pinches (salt only where it
# is a dough's hundredth). The ingredients are USDA SR rows (reference table of the National Nutrient Database), per
# 100 g. The density is 1 / rho = sum x_i / rho_i with the component densities of Choi & Okos (1986) at 20 C: an upper
# bound, for creamed doughs, whisked fillings and crumbs hold air. Baked goods are whole rows of USDA SR.
# Writes mixture_composition.csv and mixture_density.csv; rerun from this folder:  /usr/bin/python3 mixture_density.py
# With `--catalogue ../../assets/mixtures.json` it also sets composition, composition_source and density_without_air there.

import json
import re
import sys

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
    "bread flour": (13.36, 11.98, 1.66, 72.53, 2.4, 0.47),        # 20083
    "cake flour": (12.51, 8.20, 0.86, 78.03, 1.7, 0.39),          # 20084
    "raspberries": (85.75, 1.20, 0.65, 11.94, 6.5, 0.46),         # 09302
    "blueberries": (84.21, 0.74, 0.33, 14.49, 2.4, 0.24),         # 09050
    "sour cherries": (86.13, 1.00, 0.30, 12.18, 1.6, 0.40),       # 09063
    "raisins": (15.43, 3.07, 0.46, 79.18, 3.7, 1.85),             # 09298
    "baking powder": (5.00, 0.00, 0.00, 27.70, 0.2, 67.30),       # 18369
    "dry yeast": (5.08, 40.44, 7.61, 41.22, 26.9, 5.65),          # 18375
    "salt": (0.20, 0.00, 0.00, 0.00, 0.0, 99.80),                 # 02047
    "baked pie crust": (9.80, 6.40, 34.60, 47.50, 1.7, 1.70),     # 18336
    "baked crumb crust": (4.20, 4.20, 24.90, 65.20, 1.5, 1.50),   # 18330
    "baked shortbread": (3.70, 6.10, 24.10, 64.50, 1.8, 1.50),    # 18192
    "baked sponge": (29.40, 7.30, 4.30, 57.70, 0.5, 1.30),        # 18134, fibre of 18133
    "baked pound cake": (25.87, 5.00, 13.96, 53.64, 0.6, 1.53),   # 18120
}

# Sugars (mono- and disaccharides) in 100 g: USDA SR "sugars, total", from memory; dairy's lactose is all of its
# carbohydrate, and so is a syrup's (its longer chains dissolve too). Ingredients left out have none worth counting. Only the
# freezing point hangs on it.
SUGAR = {
    "flour": 0.3, "bread flour": 0.3, "cake flour": 0.3, "sugar": 99.98, "brown sugar": 97.0, "syrup": 76.79,
    "molasses": 74.7, "milk": 4.8, "evaporated milk": 10.04, "condensed milk": 54.4, "cream": 2.79, "soured cream": 2.88,
    "cream cheese": 3.8, "ricotta": 0.3, "egg": 0.4, "yolk": 0.6, "egg white": 0.7, "dark chocolate": 47.9, "cocoa": 1.8,
    "almonds": 4.6, "pecans": 4.0, "pumpkin": 3.3, "lemon juice": 2.5, "apple": 10.4, "banana": 12.2, "oats": 1.0,
    "jam": 48.5, "plain biscuit crumbs": 25.0, "chocolate wafer crumbs": 29.8, "raspberries": 4.4, "blueberries": 10.0,
    "sour cherries": 8.5, "raisins": 59.2, "baked crumb crust": 35.0, "baked shortbread": 15.0, "baked sponge": 37.0,
    "baked pound cake": 30.0,
}

# Grams. Ids are those of assets/mixtures.json, in its order.
MIXTURE = {
    "pressed-biscuit-crumb": {"plain biscuit crumbs": 200, "butter": 100},
    "pressed-chocolate-crumb": {"chocolate wafer crumbs": 250, "butter": 100},
    "nut-crust": {"almonds": 240, "sugar": 60, "butter": 80},
    "shortcrust": {"flour": 300, "butter": 200, "water": 60},
    "rich-shortcrust": {"flour": 300, "butter": 180, "water": 45, "yolk": 24},
    "sweet-pastry": {"flour": 300, "butter": 150, "sugar": 120, "egg": 60},
    "almond-sweet-pastry": {"flour": 240, "almonds": 60, "butter": 150, "sugar": 120, "egg": 60},
    "shortbread": {"flour": 300, "butter": 200, "sugar": 100},
    "cookie-slab": {"flour": 300, "sugar": 200, "butter": 150, "egg": 50},
    "chocolate-chip-cookie": {"flour": 300, "sugar": 150, "brown sugar": 150, "butter": 200, "egg": 100, "dark chocolate": 300},
    "oat-cookie": {"oats": 300, "flour": 150, "brown sugar": 200, "butter": 200, "egg": 50},
    "gingerbread-dough": {"flour": 300, "butter": 120, "brown sugar": 120, "molasses": 90, "egg": 30},
    "hot-water-crust": {"flour": 300, "butter": 120, "water": 120},
    "bread-dough": {"bread flour": 500, "water": 310, "salt": 10, "dry yeast": 5},
    "brioche-dough": {"bread flour": 500, "butter": 200, "egg": 250, "sugar": 50, "milk": 50, "salt": 10, "dry yeast": 10},
    "egg-custard": {"milk": 600, "cream": 200, "egg": 300, "sugar": 120},
    "cream-custard": {"cream": 600, "yolk": 150, "sugar": 100},
    "milk-flan": {"condensed milk": 400, "evaporated milk": 350, "egg": 200},
    "savoury-egg-cream": {"egg": 200, "cream": 200, "milk": 200},
    "baked-cheesecake": {"cream cheese": 900, "sugar": 250, "egg": 250, "soured cream": 200},
    "ricotta-filling": {"ricotta": 800, "sugar": 200, "egg": 200},
    "pumpkin-custard": {"pumpkin": 425, "evaporated milk": 350, "sugar": 150, "egg": 100},
    "frangipane": {"butter": 100, "sugar": 100, "egg": 100, "almonds": 100},
    "lemon-curd": {"lemon juice": 120, "sugar": 200, "egg": 200, "butter": 120},
    "condensed-milk-citrus": {"condensed milk": 400, "yolk": 70, "lemon juice": 120},
    "pastry-cream": {"milk": 500, "yolk": 80, "sugar": 100, "cornflour": 40, "butter": 25},
    "ganache": {"dark chocolate": 200, "cream": 200},
    "chocolate-tart": {"dark chocolate": 300, "cream": 300, "egg": 100},
    "nut-syrup": {"syrup": 300, "egg": 150, "sugar": 150, "butter": 60, "pecans": 200},
    "syrup-crumb": {"syrup": 400, "flour": 80, "butter": 50, "egg": 60},
    "jam": {"jam": 100},
    "cooked-fruit": {"apple": 600, "sugar": 150, "cornflour": 40, "water": 200},
    "cherry-filling": {"sour cherries": 600, "sugar": 150, "cornflour": 40, "water": 100},
    "raw-apple": {"apple": 800, "sugar": 100, "cornflour": 20, "butter": 20},
    "raw-berries": {"blueberries": 400, "raspberries": 200, "sugar": 120, "cornflour": 30},
    "chocolate-mousse": {"dark chocolate": 200, "cream": 200, "egg": 200, "sugar": 40},
    "whipped-cream": {"cream": 100},
    "meringue": {"egg white": 100, "sugar": 200},
    "angel-food": {"egg white": 300, "sugar": 300, "cake flour": 120},
    "whisked-sponge": {"egg": 200, "sugar": 120, "flour": 120},
    "chiffon": {"egg": 250, "sugar": 200, "cake flour": 200, "oil": 100, "water": 120, "baking powder": 8},
    "layer-cake": {"flour": 300, "sugar": 300, "butter": 170, "egg": 150, "milk": 240, "baking powder": 12},
    "chocolate-cake": {"flour": 250, "cocoa": 60, "sugar": 300, "butter": 150, "egg": 150, "milk": 250, "baking powder": 12},
    "pound-cake": {"butter": 250, "sugar": 250, "egg": 250, "flour": 250},
    "cream-cake": {"flour": 300, "sugar": 350, "oil": 170, "egg": 200, "water": 150, "baking powder": 10},
    "brownie": {"dark chocolate": 200, "butter": 175, "sugar": 300, "egg": 200, "flour": 100},
    "muffin": {"flour": 300, "sugar": 150, "milk": 240, "egg": 100, "oil": 100, "baking powder": 12},
    "gingerbread-cake": {"flour": 300, "molasses": 200, "brown sugar": 100, "butter": 100, "egg": 100, "milk": 200},
    "banana-loaf": {"flour": 250, "banana": 300, "sugar": 150, "butter": 110, "egg": 100, "baking powder": 8},
    "fruit-cake": {"raisins": 600, "butter": 200, "brown sugar": 200, "flour": 200, "egg": 200, "almonds": 50},
    "flourless-chocolate": {"dark chocolate": 250, "butter": 200, "egg": 300, "sugar": 200},
    "thin-batter": {"flour": 125, "milk": 300, "egg": 100},
    "baked-shortcrust": {"baked pie crust": 100},
    "baked-crumb": {"baked crumb crust": 100},
    "baked-biscuit": {"baked shortbread": 100},
    "baked-sponge": {"baked sponge": 100},
    "baked-pound-cake": {"baked pound cake": 100},
}
# Single rows are named by their number.
ROW = {"jam": "19297", "cream": "01053", "baked pie crust": "18336", "baked crumb crust": "18330",
       "baked shortbread": "18192", "baked sponge": "18134", "baked pound cake": "18120"}
NAMES = ["water", "protein", "fat", "carbohydrate", "fibre", "ash"]


def shares(parts):
    """Mass shares of NAMES, carbohydrate without fibre, summing to 1; and of sugar, which the carbohydrate includes."""
    masses = [sum(FOOD[food][k] * grams for food, grams in parts.items()) for k in range(6)]
    masses[3] -= masses[4]
    total = sum(masses)
    sugar = sum(SUGAR.get(food, 0.0) * grams for food, grams in parts.items())
    found = dict(zip(NAMES, (mass / total for mass in masses)))
    found["sugar"] = min(sugar / total, found["carbohydrate"])
    return found


def density(found):
    """kg/m3"""
    return 1.0 / sum(found[name] / rho for name, rho in zip(NAMES, COMPONENT))


def mix_text(parts):
    if len(parts) == 1:
        return "USDA " + ROW[next(iter(parts))]
    return ", ".join(f"{grams} g {food}" for food, grams in parts.items())


def rounded(found):
    return {name: round(share, 4) for name, share in found.items()}


def write_tables():
    with open("mixture_composition.csv", "w", encoding="utf-8", newline="\n") as out:
        out.write("# Shares by mass; sugar is part of the carbohydrate. Made by: python3 mixture_density.py, which see.\n")
        out.write("id," + ",".join(NAMES) + ",sugar\n")
        for name, parts in MIXTURE.items():
            out.write(name + "," + ",".join(f"{share:.4f}" for share in shares(parts).values()) + "\n")
    with open("mixture_density.csv", "w", encoding="utf-8", newline="\n") as out:
        out.write("# Density without air at 20 C from composition, Choi & Okos (1986); see mixture_density.py. Upper bounds.\n")
        out.write("# Made by: python3 mixture_density.py\n")
        out.write("id,density_g_per_ml,parts\n")
        for name, parts in MIXTURE.items():
            out.write(f"{name},{density(shares(parts)) / 1000:.3f},{mix_text(parts).replace(', ', ' + ')}\n")


def set_line(entry, key, value, after):
    """`entry` (the text of one object, a member a line) with `key` set; a new one goes below the member `after`."""
    line = f'    "{key}": {value},'
    if re.search(rf'^    "{key}": ', entry, re.M):
        return re.sub(rf'^    "{key}": .*?,?$', lambda m: line if m.group().endswith(",") else line[:-1], entry, flags=re.M)
    return re.sub(rf'^(    "{after}": .*,)$', lambda m: m.group() + "\n" + line, entry, flags=re.M)


def update(path):
    text = open(path, encoding="utf-8").read()
    for name, parts in MIXTURE.items():
        begin = text.index(f'    "id": "{name}"')
        end = text.index("\n  }", begin)
        entry = text[begin:end]
        found = shares(parts)
        entry = set_line(entry, "density_without_air", f'"{density(found) / 1000:.2f} g/ml"', "egg_or_dairy")
        entry = set_line(entry, "composition", json.dumps(rounded(found)), "density_without_air")
        entry = set_line(entry, "composition_source", json.dumps("D1, " + mix_text(parts)), "composition")
        text = text[:begin] + entry + text[end:]
    json.loads(text)
    with open(path, "w", encoding="utf-8", newline="\n") as out:
        out.write(text)


if __name__ == "__main__":
    write_tables()
    if len(sys.argv) == 3 and sys.argv[1] == "--catalogue":
        update(sys.argv[2])
