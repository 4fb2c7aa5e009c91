# SPDX-FileCopyrightText: The Tinwright authors
# SPDX-License-Identifier: MIT
"""Validates JSON files against a JSON Schema with the jsonschema library (Debian: python3-jsonschema).

Usage: check_schema.py SCHEMA FILE... Prints a line for each violation and then fails.
"""
import json
import sys

import jsonschema

schema = json.load(open(sys.argv[1], encoding="utf-8"))
validator_of = jsonschema.validators.validator_for(schema)
validator_of.check_schema(schema)
validator = validator_of(schema)
violations = 0
for name in sys.argv[2:]:
    for error in validator.iter_errors(json.load(open(name, encoding="utf-8"))):
        place = "/".join(str(part) for part in error.absolute_path)
        print(f"{name}: {place}: {error.message[:300]}")
        violations += 1
sys.exit(1 if violations else 0)
