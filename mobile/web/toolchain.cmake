# WebAssembly by Debian 12's packages alone: clang-16, lld-16, wasi-libc, libc++-16-dev-wasm32,
# libc++abi-16-dev-wasm32, libclang-rt-16-dev-wasm32.
set(CMAKE_SYSTEM_NAME Generic)
set(CMAKE_SYSTEM_PROCESSOR wasm32)
set(CMAKE_C_COMPILER clang-16)
set(CMAKE_CXX_COMPILER clang++-16)
set(CMAKE_C_COMPILER_TARGET wasm32-wasi)
set(CMAKE_CXX_COMPILER_TARGET wasm32-wasi)
set(CMAKE_SYSROOT /usr)
# Debian keeps the C++ library's headers beside the compiler, where it does not look for them.
set(CMAKE_CXX_FLAGS_INIT "-nostdinc++ -isystem /usr/lib/llvm-16/include/wasm32-wasi/c++/v1")
set(CMAKE_EXE_LINKER_FLAGS_INIT "-Wl,-z,stack-size=1048576")
set(CMAKE_CXX_COMPILER_WORKS TRUE)  # asked of an archive, and LLVM's archiver is 40 MB that nothing else needs
