// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Plain text out of marked-up text and pages.
#include <string>
#include <string_view>

#include <doctest/doctest.h>

#include "app/recipe/markup.h"
#include "app/recipe/plain_text.h"

using namespace tinwright;

TEST_CASE("character references are decoded once") {
  CHECK(decode_entities("&frac12; &amp; &#189; &#xBD; &lt;b&gt;") == "½ & ½ ½ <b>");
  CHECK(decode_entities("&amp;frac12;") == "&frac12;");
  CHECK(decode_entities("&amp;amp;") == "&amp;");
  CHECK(decode_entities("&nothing; & &; &#; &#x; &#xZ; R&B") == "&nothing; & &; &#; &#x; &#xZ; R&B");
  CHECK(decode_entities("&#0;&#xD800;&#99999999999;x") == "x");
  CHECK(decode_entities("&#150;") == "–");  // a Windows-1252 dash, as browsers read it
}

TEST_CASE("no mark is left in plain text, whatever stood there") {
  for (const std::string_view text :
       {"<b>x</b>", "<<b>script>alert(1)</script>", "<scr<script>ipt>alert(1)</scr</script>ipt>",
        "&lt;img src=x onerror=y&gt;", "<a href='>'>x</a>", "<a title=\"</a><b>\">x", "<", "<<<<", "<!--",
        "<![CDATA[<b>]]>", "<b", "a<b c", "</", "<?php x ?>", "<<<b>b>b>", "<x<y<z>>>", "&lt;&lt;b&gt;b&gt;",
        "<style>p{}</style>ok", "<b/><br/>"}) {
    CAPTURE(text);
    const std::string plain = without_markup(text);
    for (std::size_t i = 0; i + 1 < plain.size(); ++i) {
      const char next = plain[i + 1];
      const bool is_mark = plain[i] == '<' && ((next >= 'a' && next <= 'z') || (next >= 'A' && next <= 'Z') ||
                                               next == '/' || next == '!' || next == '?');
      CHECK_FALSE(is_mark);
    }
  }
  CHECK(one_line(without_markup("bake if <b>5 < 6</b> &amp; done")) == "bake if 5 < 6 & done");
}

TEST_CASE("scripts of recipe data are found in all their spellings") {
  for (const std::string_view html : {
           "<script type=\"application/ld+json\">DATA</script>",
           "<script type='application/ld+json'>DATA</script>",
           "<script type=application/ld+json>DATA</script>",
           "<SCRIPT ID=\"x\" TYPE=\"Application/LD+JSON\" DEFER>DATA</SCRIPT >",
           "<script\n  data-a='b>c'\n  type = \"application/ld+json; charset=utf-8\"\n>DATA</script>",
           "<p>x</p><script type=\"application&#47;ld+json\">DATA</script><p>",
           "<script>if (a<b) { '</p>' }</script><script type=\"application/ld+json\">DATA",
       }) {
    CAPTURE(html);
    const SavedPage page = read_page(html);
    REQUIRE(page.linked_data.size() == 1);
    CHECK(page.linked_data[0] == "DATA");
  }
  CHECK(read_page("<script type=\"text/javascript\">DATA</script><script>DATA</script>").linked_data.empty());
  CHECK(read_page("<!-- <script type=\"application/ld+json\">DATA</script> -->").linked_data.empty());
}

TEST_CASE("a page's text keeps its headings and lists and loses its scripts") {
  const SavedPage page = read_page(
      "<html lang='fr-CA'><head><title>A &amp; B</title><style>x</style></head><body><nav>menu</nav><h2>One</h2>"
      "<ul><li>a</li><li>b</li></ul><ol><li>c</ol><p>d<br>e</p><script>f</script></body></html>");
  CHECK(page.title == "A & B");
  CHECK(page.language == "fr-CA");
  std::string text;
  for (const std::string& line : lines_of(page.text)) {
    if (!line.empty()) text += line + "/";
  }
  CHECK(text == "# One/- a/- b/1. c/d/e/");
}

TEST_CASE("text becomes clean") {
  CHECK(clean_text("a\r\nb\rc\td") == "a\nb\nc d");
  CHECK(clean_text("\xEF\xBB\xBFx\xE2\x80\x8Fy\xE2\x80\xAEz\xE2\x80\x8B\x07!") == "xyz!");
  CHECK(clean_text(std::string_view("a\0b", 3)) == "ab");
  CHECK(clean_text("Caf\xE9 \xBD \x96 180\xB0") == "Café ½ – 180°");
  CHECK(clean_text(std::string_view("\xFF\xFEh\0i\0\xBD\0", 8)) == "hi½");
  CHECK(clean_text(std::string_view("\xFE\xFF\0h\0i", 6)) == "hi");
  CHECK(clean_text("\xC0\xAF\xED\xA0\x80\xF5") == clean_text(clean_text("\xC0\xAF\xED\xA0\x80\xF5")));
}

TEST_CASE("HTML is told from text with a sign in it") {
  CHECK(looks_like_markup("<!doctype html><x>"));
  CHECK(looks_like_markup("text <br> text"));
  CHECK_FALSE(looks_like_markup("if x < y then <3"));
  CHECK_FALSE(looks_like_markup("200 g flour"));
}
