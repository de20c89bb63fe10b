# Debian's Emscripten for CMake, with qt/compiler in the place of emcc and em++. What the file below would ask emcc at each test of the compiler is said here.
set(EMSCRIPTEN_VERSION 3.1.69)
set(CMAKE_C_COMPILER_VERSION 19.1.7)
set(CMAKE_CXX_COMPILER_VERSION 19.1.7)
set(EMSCRIPTEN_ROOT_PATH ${CMAKE_CURRENT_LIST_DIR}/em)
include(/usr/share/emscripten/cmake/Modules/Platform/Emscripten.cmake)
