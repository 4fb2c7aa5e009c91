// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// See calendar.h.
#include "app/plan/calendar.h"

#include <algorithm>
#include <cstdint>
#include <vector>

#include "app/quantity/utf8.h"

namespace tinwright {
namespace {

constexpr std::size_t kLineOctets = 75;  // section 3.1, without the line break

/// One octet of a text as section 3.3.11 writes it; line breaks are seen to before.
std::string escaped_ascii(char c) {
  if (c == '\\' || c == ';' || c == ',') return {'\\', c};
  const bool is_control = (static_cast<unsigned char>(c) < 0x20 && c != '\t') || c == 0x7F;
  return {is_control ? ' ' : c};
}

std::string escaped(std::string_view text) {
  std::string out;
  while (!text.empty()) {
    std::size_t length = first_character(text).bytes;
    if (text[0] == '\n' || text[0] == '\r') {
      length = text.substr(0, 2) == "\r\n" ? 2 : 1;
      out += "\\n";
    } else if (length == 1) {
      out += escaped_ascii(text[0]);
    } else if (length == 0) {
      length = 1;
      out += kReplacementCharacter;
    } else {
      out += text.substr(0, length);
    }
    text.remove_prefix(length);
  }
  return out;
}

/// Adds a content line, folded. `line` is UTF-8 without line breaks.
void add_line(std::string& out, std::string_view line) {
  std::size_t room = kLineOctets;
  while (!line.empty()) {
    const std::size_t length = std::max<std::size_t>(1, first_character(line).bytes);
    if (length > room) {
      out += "\r\n ";
      room = kLineOctets - 1;  // the space counts
    }
    out += line.substr(0, length);
    room -= length;
    line.remove_prefix(length);
  }
  out += "\r\n";
}

void add_text(std::string& out, std::string_view property, std::string_view text) {
  if (!text.empty()) add_line(out, std::string(property) + ":" + escaped(text));
}

/// "20261224T180000".
std::string date_time(const CivilTime& time) {
  std::string text = format_civil_time(time) + "00";
  text.erase(std::remove_if(text.begin(), text.end(), [](char c) { return c == '-' || c == ':'; }), text.end());
  std::replace(text.begin(), text.end(), ' ', 'T');
  return text;
}

/// The event's content in 16 hexadecimal digits: the hash FNV-1a of 64 bits (Fowler, Noll and Vo; constants from
/// memory).
std::string digest(std::string_view content) {
  std::uint64_t hash = 0xCBF29CE484222325;
  for (const char c : content) {
    hash ^= static_cast<unsigned char>(c);
    hash *= 0x100000001B3;
  }
  std::string digits;
  for (int shift = 60; shift >= 0; shift -= 4) digits += "0123456789abcdef"[(hash >> shift) & 0xF];
  return digits;
}

/// Everything of an event but its UID and stamp.
std::string event_body(const CalendarEvent& event) {
  std::string body;
  add_line(body, "DTSTART:" + date_time(event.start));
  // An end has to be later than the start (section 3.8.2.2); without one the event ends as it starts (section 3.6.1).
  if (!(event.end == event.start)) add_line(body, "DTEND:" + date_time(event.end));
  add_text(body, "SUMMARY", event.summary);
  add_text(body, "DESCRIPTION", event.description);
  add_text(body, "LOCATION", event.location);
  if (!event.alarm_before) return body;
  add_line(body, "BEGIN:VALARM");  // section 3.6.6: a displayed alarm has these three
  add_line(body, "ACTION:DISPLAY");
  add_line(body, "TRIGGER:-PT" + std::to_string(*event.alarm_before) + "M");
  add_text(body, "DESCRIPTION", event.summary.empty() ? "Tinwright" : event.summary);
  add_line(body, "END:VALARM");
  return body;
}

}  // namespace

Result<std::string> calendar_text(std::span<const CalendarEvent> events, std::string_view name,
                                  const CivilTime& stamp) {
  if (events.empty()) return Problem{ProblemCode::kMissing, "There is nothing to put in a calendar yet.", "events"};
  std::string out;
  add_line(out, "BEGIN:VCALENDAR");
  add_line(out, "VERSION:2.0");
  add_line(out, "PRODID:-//Tinwright//Tinwright//EN");
  add_text(out, "NAME", name);
  std::vector<std::string> digests;
  for (std::size_t i = 0; i < events.size(); ++i) {
    const CalendarEvent& event = events[i];
    const std::string place = "events[" + std::to_string(i) + "]";
    if (minutes_from_civil(event.end) < minutes_from_civil(event.start)) {
      return Problem{ProblemCode::kContradiction, "A task cannot end before it starts.", place + ".end"};
    }
    if (event.alarm_before.value_or(0) < 0) {
      return Problem{ProblemCode::kOutOfRange, "An alarm rings before the start or at it.", place + ".alarm_before"};
    }
    const std::string body = event_body(event);
    digests.push_back(digest(body));
    const auto alike = std::count(digests.begin(), digests.end(), digests.back());
    const std::string number = alike > 1 ? "-" + std::to_string(alike) : "";
    add_line(out, "BEGIN:VEVENT");
    add_line(out, "UID:" + digests.back() + number + "@tinwright.invalid");  // .invalid: RFC 2606 section 2
    add_line(out, "DTSTAMP:" + date_time(stamp) + "Z");
    out += body;
    add_line(out, "END:VEVENT");
  }
  add_line(out, "END:VCALENDAR");
  return out;
}

}  // namespace tinwright
