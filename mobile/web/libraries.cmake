# The compiled libraries that core needs, from the sources that mobile/web/sources fetched: of each only what core uses.
set(sources ${CMAKE_BINARY_DIR}/sources)
set(emulated _WASI_EMULATED_MMAN _WASI_EMULATED_GETPID _WASI_EMULATED_SIGNAL)

# SQLite as Debian builds it, as far as a tract file asks: for one thread, temporary tables in memory, no code loaded.
add_library(sqlite OBJECT ${sources}/sqlite3/sqlite3.c shims/system.c)
target_include_directories(sqlite PUBLIC ${sources}/sqlite3 PRIVATE shims)
target_compile_definitions(sqlite PRIVATE ${emulated} SQLITE_THREADSAFE=0 SQLITE_OMIT_LOAD_EXTENSION SQLITE_TEMP_STORE=2
  SQLITE_ENABLE_RTREE SQLITE_SECURE_DELETE SQLITE_ENABLE_DBSTAT_VTAB SQLITE_EXTRA_INIT=oaklight_prepare_sqlite HAVE_USLEEP=1)
set_source_files_properties(${sources}/sqlite3/sqlite3.c PROPERTIES COMPILE_OPTIONS
  "-include;${CMAKE_CURRENT_SOURCE_DIR}/shims/sqlite_gaps.h;-w")

# libsodium: SHA-256 alone, and the two helpers that it calls.
set(sodium ${sources}/libsodium/src/libsodium)
set(VERSION 1.0.18)
set(SODIUM_LIBRARY_VERSION_MAJOR 10)
set(SODIUM_LIBRARY_VERSION_MINOR 3)
set(SODIUM_LIBRARY_MINIMAL_DEF "#define SODIUM_LIBRARY_MINIMAL 1")
configure_file(${sodium}/include/sodium/version.h.in ${CMAKE_BINARY_DIR}/generated/sodium/version.h @ONLY)
add_library(sodium OBJECT ${sodium}/crypto_hash/sha256/hash_sha256.c ${sodium}/crypto_hash/sha256/cp/hash_sha256_cp.c
  ${sodium}/sodium/codecs.c shims/sodium_parts.c)
target_include_directories(sodium SYSTEM PUBLIC ${sodium}/include ${sodium}/include/sodium
  ${CMAKE_BINARY_DIR}/generated ${CMAKE_BINARY_DIR}/generated/sodium)
target_compile_definitions(sodium PUBLIC SODIUM_STATIC PRIVATE CONFIGURED=1)
target_compile_options(sodium PRIVATE -w)

# libdeflate: CRC-32 alone.
add_library(deflate OBJECT ${sources}/libdeflate/lib/crc32.c)
target_include_directories(deflate SYSTEM PUBLIC ${sources}/libdeflate)
target_compile_options(deflate PRIVATE -w)

add_library(pugixml OBJECT ${sources}/pugixml/src/pugixml.cpp)
target_include_directories(pugixml SYSTEM PUBLIC ${sources}/pugixml/src)
target_compile_definitions(pugixml PUBLIC PUGIXML_NO_EXCEPTIONS)
target_compile_options(pugixml PRIVATE -w)

# GeographicLib: geodesics, areas and the sums of the magnetic model.
set(geographic ${sources}/geographiclib)
set(PROJECT_VERSION 2.1.2)
set(PROJECT_VERSION_MAJOR 2)
set(PROJECT_VERSION_MINOR 1)
set(PROJECT_VERSION_PATCH 2)
set(GEOGRAPHICLIB_HAVE_LONG_DOUBLE 1)
set(GEOGRAPHICLIB_WORDS_BIGENDIAN 0)
set(GEOGRAPHICLIB_PRECISION 2)
set(GEOGRAPHICLIB_LIB_TYPE_VAL 0)
configure_file(${geographic}/include/GeographicLib/Config.h.in ${CMAKE_BINARY_DIR}/generated/GeographicLib/Config.h @ONLY)
foreach(part Accumulator AzimuthalEquidistant CircularEngine Geocentric Geodesic GeodesicLine Gnomonic Math PolygonArea
    SphericalEngine Utility)
  list(APPEND geographic_parts ${geographic}/src/${part}.cpp)
endforeach()
add_library(geographic OBJECT ${geographic_parts})
target_include_directories(geographic SYSTEM PUBLIC ${geographic}/include ${CMAKE_BINARY_DIR}/generated)
target_compile_options(geographic PRIVATE -w)
