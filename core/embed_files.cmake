# oaklight_embed(var function folder pattern...): a generated .cpp, its name in var, that defines function().
function(oaklight_embed var function folder)
  cmake_path(SET root NORMALIZE ${CMAKE_CURRENT_FUNCTION_LIST_DIR}/../${folder})
  list(TRANSFORM ARGN PREPEND ${root}/ OUTPUT_VARIABLE patterns)
  file(GLOB_RECURSE paths RELATIVE ${root} CONFIGURE_DEPENDS ${patterns})
  list(TRANSFORM paths PREPEND ${root}/ OUTPUT_VARIABLE depends)
  list(JOIN paths "|" files)
  set(out ${CMAKE_CURRENT_BINARY_DIR}/${function}.cpp)
  add_custom_command(OUTPUT ${out}
    COMMAND ${CMAKE_COMMAND} -D OUT=${out} -D ROOT=${root} -D NAME=${function} -D "FILES=${files}"
            -P ${CMAKE_CURRENT_FUNCTION_LIST_DIR}/embed.cmake
    DEPENDS ${depends} ${CMAKE_CURRENT_FUNCTION_LIST_DIR}/embed.cmake
    VERBATIM)
  set(${var} ${out} PARENT_SCOPE)
endfunction()
