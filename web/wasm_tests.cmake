# SPDX-FileCopyrightText: The Tinwright authors
# SPDX-License-Identifier: MIT
#
# What the target `tests` needs to run as wasm in node; tests/CMakeLists.txt includes this when it is built by emcc.
# doctest throws, and nothing else in the project does; so only the tests are compiled with exceptions.
target_compile_options(tests PRIVATE -fexceptions)
target_link_options(tests PRIVATE -fexceptions -sSINGLE_FILE=1 -sENVIRONMENT=node -sALLOW_MEMORY_GROWTH=1
  -sEXIT_RUNTIME=1 -sASSERTIONS=1)
set_target_properties(tests PROPERTIES SUFFIX ".js")
