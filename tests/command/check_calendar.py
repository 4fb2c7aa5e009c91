#!/usr/bin/env python3
# SPDX-FileCopyrightText: The Tinwright authors
# SPDX-License-Identifier: MIT
#
# check_calendar.py FILE.ics [--events N] [--expect FIELDS.json]: reads an iCalendar file with the library icalendar
# (Debian: python3-icalendar, for /usr/bin/python3) and looks at what RFC 5545 asks of it. --events: how many there have to
# be. --expect: a list of objects, one for each event in order, whose fields have to be found:
#     {"summary": ..., "description": ..., "location": ..., "start": "2026-12-24 17:00", "end": ..., "alarm_before": 15}
# A field may be missing (not looked at) or null (must not be there). The status is 0 when all is as it should be, 1 with
# one line for each fault, 2 when the library is not there.
import argparse
import datetime
import json
import sys

try:
    import icalendar
except ImportError:
    print("check_calendar: python3-icalendar is not installed for this python3", file=sys.stderr)
    sys.exit(2)


def octet_faults(raw):
    """Sections 3.1 and 3.1.4: UTF-8 lines of at most 75 octets that end in CR LF."""
    faults = []
    if not raw.endswith(b"\r\n"):
        faults.append("the file does not end in CR LF")
    for number, line in enumerate(raw.split(b"\r\n")[:-1], 1):
        if b"\r" in line or b"\n" in line:
            faults.append(f"line {number}: a line break that is not CR LF")
        if len(line) > 75:
            faults.append(f"line {number}: {len(line)} octets")
        try:
            line.decode("utf-8")
        except UnicodeDecodeError as error:
            faults.append(f"line {number}: {error}")
    return faults


def event_fields(event):
    """The fields of --expect, as the library reads them; what is not there is None."""
    def text(component, name):
        return None if component.get(name) is None else str(component[name])

    def time(name):
        return None if event.get(name) is None else event[name].dt.strftime("%Y-%m-%d %H:%M")

    alarms = [part for part in event.subcomponents if part.name == "VALARM"]
    before = None
    if alarms:
        before = -alarms[0]["TRIGGER"].dt // datetime.timedelta(minutes=1)
    return {"summary": text(event, "SUMMARY"), "description": text(event, "DESCRIPTION"),
            "location": text(event, "LOCATION"), "start": time("DTSTART"), "end": time("DTEND"), "alarm_before": before}


def event_faults(event, where):
    faults = []
    for name in ("UID", "DTSTAMP", "DTSTART"):  # section 3.6.1
        if event.get(name) is None:
            return [f"{where}: no {name}"]
    if event["DTSTAMP"].dt.utcoffset() != datetime.timedelta(0):
        faults.append(f"{where}: DTSTAMP is not in UTC")
    for name in ("DTSTART", "DTEND"):
        if event.get(name) is not None and (event[name].dt.tzinfo is not None or "TZID" in event[name].params):
            return faults + [f"{where}: {name} does not float"]
    if event.get("DTEND") is not None and event["DTEND"].dt <= event["DTSTART"].dt:  # section 3.8.2.2
        faults.append(f"{where}: it ends before it starts")
    for alarm in (part for part in event.subcomponents if part.name == "VALARM"):  # section 3.6.6
        faults += [f"{where}: VALARM without {name}" for name in ("ACTION", "DESCRIPTION", "TRIGGER")
                   if alarm.get(name) is None]
    return faults


def calendar_faults(raw, wanted_count, expected):
    try:
        calendar = icalendar.Calendar.from_ical(raw)
    except ValueError as error:
        return [f"not read: {str(error)[:100]}"]
    faults = []
    if str(calendar.get("VERSION")) != "2.0" or calendar.get("PRODID") is None:  # section 3.6
        faults.append("VERSION or PRODID is missing")
    events = list(calendar.walk("VEVENT"))
    if not events:
        faults.append("no event")
    if wanted_count is not None and len(events) != wanted_count:
        faults.append(f"{len(events)} events instead of {wanted_count}")
    if len({str(event.get("UID")) for event in events}) != len(events):
        faults.append("two events have one UID")
    for index, event in enumerate(events):
        where = f"event {index + 1}"
        faults += event_faults(event, where)
        faults += [f"{where}: the library does not like {error}" for error in getattr(event, "errors", [])]
        if index < len(expected):
            found = event_fields(event)
            faults += [f"{where}: {name} is {found[name]!r} instead of {value!r}"
                       for name, value in expected[index].items() if found[name] != value]
    if expected and len(expected) != len(events):
        faults.append(f"{len(events)} events, {len(expected)} expected")
    return faults


def main():
    parser = argparse.ArgumentParser()
    parser.add_argument("calendar")
    parser.add_argument("--events", type=int)
    parser.add_argument("--expect")
    arguments = parser.parse_args()
    with open(arguments.calendar, "rb") as file:
        raw = file.read()
    expected = []
    if arguments.expect:
        with open(arguments.expect, encoding="utf-8") as file:
            expected = json.load(file)
    faults = octet_faults(raw) + calendar_faults(raw, arguments.events, expected)
    for fault in faults:
        print(f"{arguments.calendar}: {fault}")
    return 1 if faults else 0


if __name__ == "__main__":
    sys.exit(main())
