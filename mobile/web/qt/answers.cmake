# What Qt's tests of compiler and C library find with Emscripten 3.1.69; asking took a minute of processor. Some were seen when the tests ran, the others are
# read from Emscripten's headers and libraries or from memory. A no where Qt could do more with a yes (dladdr, inotify) only leaves that out.
foreach(name posix_fallocate alloca_stdlib_h alloca_h cxa_thread_atexit cxx17_filesystem futimens getentropy memmem memrchr poll localtime_r
    signaling_nan cxx20 cxx2b atomicfptr cloexec optimize_debug)
  set(TEST_${name} TRUE CACHE INTERNAL "")
endforeach()
foreach(name alloca_malloc_h close_range cxa_thread_atexit_impl dladdr getauxval inotify sysv_shm sysv_sem linkat ppoll pollts renameat2 posix_shm
    posix_sem cxx23_stacktrace cpp_winrt cxx_std_async_noncopyable using_stdlib_libcpp stack_protector stack_clash_protection
    trivial_auto_var_init_pattern intelcet egl_x11 egl_brcm egl_egldevice egl_mali egl_mali_2 egl_viv egl_openwfd egl_rcar evdev integrityfb linuxfb
    drm_atomic xcb_syslibs libinput_hires_wheel_support directwrite directwrite3 d2d1 glibc glibc_234 no_direct_extern_access enable_new_dtags gdb_index
    reduce_relocations separate_debug_info x86intrin localtime_s precompile_header gcov use_bfd_linker use_gold_linker use_lld_linker use_mold_linker
    ld_version_script X86SIMD_avx512vbmi2 X86SIMD_vaes subarch_avx512vbmi2 subarch_vaes networklistmanager)
  set(TEST_${name} FALSE CACHE INTERNAL "")
endforeach()
foreach(name HAVE_STDATOMIC HAVE_GLESv2 CMAKE_HAVE_LIBC_PTHREAD CMAKE_C_LINK_PIE_SUPPORTED CMAKE_CXX_LINK_PIE_SUPPORTED CMAKE_C_LINK_NO_PIE_SUPPORTED
    CMAKE_CXX_LINK_NO_PIE_SUPPORTED)
  set(${name} TRUE CACHE INTERNAL "")
endforeach()
set(HAVE_LD_VERSION_SCRIPT FALSE CACHE INTERNAL "")
