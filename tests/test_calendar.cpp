// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// The iCalendar file against the rules of RFC 5545, read here by a small reader of our own; tests/command/
// check_calendar.py reads it with a general-purpose library.
#include <algorithm>
#include <set>
#include <string>
#include <vector>

#include <doctest/doctest.h>

#include "app/plan/calendar.h"

namespace tinwright {
namespace {

const CivilTime kStamp{2026, 11, 25, 15, 30};

CalendarEvent bake() {
  return {"Bake", "Look from 17:40.", "oven", {2026, 12, 24, 17, 0}, {2026, 12, 24, 17, 50}, std::nullopt};
}

std::string text_of(const std::vector<CalendarEvent>& events) {
  const auto text = calendar_text(events, "Lemon tart", kStamp);
  REQUIRE(static_cast<bool>(text));
  return *text;
}

/// Lines as sent, without their CR LF; each has to have one.
std::vector<std::string> sent_lines(const std::string& text) {
  std::vector<std::string> lines;
  for (std::size_t from = 0; from < text.size();) {
    const std::size_t end = text.find("\r\n", from);
    REQUIRE(end != std::string::npos);
    lines.push_back(text.substr(from, end - from));
    REQUIRE(lines.back().find_first_of("\r\n") == std::string::npos);
    from = end + 2;
  }
  return lines;
}

/// Unfolded as section 3.1 says: a CR LF and one space after it go.
std::vector<std::string> lines_of(const std::string& text) {
  std::vector<std::string> lines;
  for (const std::string& line : sent_lines(text)) {
    if (!line.empty() && line[0] == ' ') {
      REQUIRE_FALSE(lines.empty());
      lines.back() += line.substr(1);
    } else {
      lines.push_back(line);
    }
  }
  return lines;
}

/// Values of a property, in order.
std::vector<std::string> values(const std::string& text, const std::string& property) {
  std::vector<std::string> found;
  for (const std::string& line : lines_of(text)) {
    if (line.rfind(property + ":", 0) == 0) found.push_back(line.substr(property.size() + 1));
  }
  return found;
}

}  // namespace

TEST_CASE("a calendar of one event is this file (RFC 5545 sections 3.4, 3.6, 3.6.1)") {
  const std::vector<std::string> lines = lines_of(text_of({bake()}));
  REQUIRE(lines.size() == 14);
  CHECK(lines[5].rfind("UID:", 0) == 0);
  CHECK(lines == std::vector<std::string>{"BEGIN:VCALENDAR", "VERSION:2.0", "PRODID:-//Tinwright//Tinwright//EN",
                                          "NAME:Lemon tart", "BEGIN:VEVENT", lines[5], "DTSTAMP:20261125T153000Z",
                                          "DTSTART:20261224T170000", "DTEND:20261224T175000", "SUMMARY:Bake",
                                          "DESCRIPTION:Look from 17:40.", "LOCATION:oven", "END:VEVENT",
                                          "END:VCALENDAR"});
}

TEST_CASE("local times float: no zone and no Z (section 3.3.5, form 1); only the stamp is UTC (3.8.7.2)") {
  const std::string text = text_of({bake()});
  CHECK(text.find("TZID") == std::string::npos);
  CHECK(values(text, "DTSTART") == std::vector<std::string>{"20261224T170000"});
  CHECK(values(text, "DTSTAMP") == std::vector<std::string>{"20261125T153000Z"});
}

TEST_CASE("backslash, semicolon, comma and line breaks are escaped, a colon is not (section 3.3.11)") {
  CalendarEvent event = bake();
  event.summary = "a\\b;c,d:e\nf\r\ng\rh\ti\"j";
  CHECK(values(text_of({event}), "SUMMARY") == std::vector<std::string>{"a\\\\b\\;c\\,d:e\\nf\\ng\\nh\ti\"j"});
}

TEST_CASE("control characters and broken UTF-8 do not get through (sections 3.3.11 and 3.1.4)") {
  CalendarEvent event = bake();
  event.summary = std::string("a\x01") + "b\x7F" + "c\xFF" + "d\xC3(" + "\xED\xA0\x80";
  CHECK(values(text_of({event}), "SUMMARY")[0] ==
        "a b c\xEF\xBF\xBD"
        "d\xEF\xBF\xBD("
        "\xEF\xBF\xBD\xEF\xBF\xBD\xEF\xBF\xBD");
}

TEST_CASE("lines have at most 75 octets, break between characters, and unfold to what they were (section 3.1)") {
  for (std::size_t shift = 0; shift < 80; ++shift) {
    CAPTURE(shift);
    CalendarEvent event = bake();
    std::string text(shift, 'x');
    for (int i = 0; i < 40; ++i) text += "é€𝄞½";  // two, three, four and two octets
    event.summary = text;
    const std::string whole = text_of({event});
    for (const std::string& line : sent_lines(whole)) {
      REQUIRE(line.size() <= 75);
      const auto first = static_cast<unsigned char>(line[line[0] == ' ' ? 1 : 0]);
      REQUIRE((first & 0xC0) != 0x80);  // not the middle of a character
    }
    REQUIRE(values(whole, "SUMMARY") == std::vector<std::string>{text});
  }
}

TEST_CASE("a line of exactly 75 octets is not folded, one more is") {
  CalendarEvent event = bake();
  event.summary = std::string(75 - 8, 'x');
  const auto sent = [&] { return sent_lines(text_of({event})).size(); };
  const std::size_t lines = sent();
  event.summary += 'x';
  CHECK(sent() == lines + 1);
}

TEST_CASE("a UID follows from the content alone, and no two events share one (section 3.8.4.7)") {
  CalendarEvent other = bake();
  other.end.minute = 55;
  const std::string text = text_of({bake(), other, bake(), bake()});
  const std::vector<std::string> ids = values(text, "UID");
  CHECK(std::set<std::string>(ids.begin(), ids.end()).size() == 4);
  CHECK(ids[0] == values(text_of({bake()}), "UID")[0]);
  for (const std::string& id : ids) CHECK(id.substr(id.find('@')) == "@tinwright.invalid");
  const auto later = calendar_text(std::vector{bake()}, "Another name", {2030, 1, 1, 0, 0});
  CHECK(values(*later, "UID")[0] == ids[0]);
}

TEST_CASE("an alarm is a displayed one before the start (sections 3.6.6 and 3.8.6.3)") {
  CalendarEvent event = bake();
  event.alarm_before = 15;
  const std::vector<std::string> lines = lines_of(text_of({event}));
  const auto begin = std::find(lines.begin(), lines.end(), "BEGIN:VALARM");
  REQUIRE(begin != lines.end());
  CHECK(std::vector<std::string>(begin, begin + 6) == std::vector<std::string>{"BEGIN:VALARM", "ACTION:DISPLAY",
                                                                               "TRIGGER:-PT15M", "DESCRIPTION:Bake",
                                                                               "END:VALARM", "END:VEVENT"});
}

TEST_CASE("an event of no length has no end, which would have to be later (section 3.8.2.2)") {
  CalendarEvent event = bake();
  event.end = event.start;
  CHECK(values(text_of({event}), "DTEND").empty());
}

TEST_CASE("a calendar that cannot be is refused with its place") {
  const auto none = calendar_text({}, "x", kStamp);
  REQUIRE_FALSE(static_cast<bool>(none));
  CHECK(none.problem().code == ProblemCode::kMissing);
  CHECK(none.problem().place == "events");
  std::vector<CalendarEvent> events{bake(), bake()};
  events[1].end.hour = 16;
  const auto backwards = calendar_text(events, "x", kStamp);
  REQUIRE_FALSE(static_cast<bool>(backwards));
  CHECK(backwards.problem().code == ProblemCode::kContradiction);
  CHECK(backwards.problem().place == "events[1].end");
  events = {bake()};
  events[0].alarm_before = -1;
  const auto late = calendar_text(events, "x", kStamp);
  REQUIRE_FALSE(static_cast<bool>(late));
  CHECK(late.problem().place == "events[0].alarm_before");
}

}  // namespace tinwright
