# SPDX-FileCopyrightText: The Tinwright authors
# SPDX-License-Identifier: MIT
#
# embed_text(TARGET FILE SYMBOL): compiles a text file into TARGET as `const std::string_view tinwright::SYMBOL`, so
# that catalogues and reference tables need no file system at run time (there is none in the browser).
function(embed_text target file symbol)
  get_filename_component(path ${file} ABSOLUTE)
  set(source ${CMAKE_CURRENT_BINARY_DIR}/${symbol}.cpp)
  set_property(DIRECTORY APPEND PROPERTY CMAKE_CONFIGURE_DEPENDS ${path})
  file(READ ${path} text)
  file(CONFIGURE OUTPUT ${source} @ONLY CONTENT [==[#include <string_view>
namespace tinwright {
extern const std::string_view @symbol@;
const std::string_view @symbol@ = R"text_file(@text@)text_file";
}  // namespace tinwright
]==])
  target_sources(${target} PRIVATE ${source})
endfunction()
