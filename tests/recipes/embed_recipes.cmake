# SPDX-FileCopyrightText: The Tinwright authors
# SPDX-License-Identifier: MIT
#
# embed_recipes(TARGET): compiles every recipe of this folder and what is expected of them into TARGET, as
# tinwright::embedded_recipes() and tinwright::kRecipesExpectedTxt. The name of each file is listed: a new one is added here.
set(recipe_files
  01_plain_graph.html
  02_sections.jsonld
  03_old_ingredients.jsonld
  04_main_entity.html
  05_comment_wrapped.html
  06_raw_newlines.html
  07_twice_given.jsonld
  08_escaped_block.html
  09_several_scripts.html
  10_prefixed_keys.jsonld
  11_durations_broken.jsonld
  12_ingredient_objects.jsonld
  13_text_headings.txt
  14_text_no_headings.txt
  15_markdown.txt
  16_bullets_and_boxes.txt
  17_amount_on_own_line.txt
  18_wrapped_lines.txt
  19_inline_list.txt
  20_html_without_data.html
  21_table_markup.html
  22_hostile_strings.jsonld
  23_microwords.txt
  24_german.html
  25_cheesecake.txt
  26_american_pie.jsonld
  27_truncated.html
  28_trailing_amounts.txt
  29_freezer_pie.txt
  30_step_paragraph.jsonld
  31_no_bake.txt
  32_direction_marks.txt
  33_times_text.txt
  34_data_without_steps.html
  35_bars_and_bare_numbers.txt
  36_spans.html
  37_group_headings.txt
  38_tin_in_the_list.txt
  39_emphasis_headings.txt
  40_sections_marked_up.jsonld)

function(embed_recipes target)
  set(declared "")
  set(listed "")
  foreach(file IN LISTS recipe_files)
    string(MAKE_C_IDENTIFIER "kRecipe${file}" symbol)
    embed_text(${target} ${CMAKE_CURRENT_FUNCTION_LIST_DIR}/${file} ${symbol})
    string(APPEND declared "extern const std::string_view ${symbol};\n")
    string(APPEND listed "      {\"${file}\", ${symbol}},\n")
  endforeach()
  embed_text(${target} ${CMAKE_CURRENT_FUNCTION_LIST_DIR}/expected.txt kRecipesExpectedTxt)
  set(source ${CMAKE_CURRENT_BINARY_DIR}/embedded_recipes.cpp)
  file(CONFIGURE OUTPUT ${source} @ONLY CONTENT [==[#include <string_view>
#include <vector>
namespace tinwright {
struct EmbeddedRecipe {
  std::string_view file;
  std::string_view text;
};
@declared@
extern const std::vector<EmbeddedRecipe>& embedded_recipes();
const std::vector<EmbeddedRecipe>& embedded_recipes() {
  static const std::vector<EmbeddedRecipe> all{
@listed@  };
  return all;
}
}  // namespace tinwright
]==])
  target_sources(${target} PRIVATE ${source})
endfunction()
