# What `cmake --install` puts where: the program, the library with its headers, help for the terminal and shells,
# the pages and the examples; and what `cpack` makes of it.
include(GNUInstallDirs)
include(CMakePackageConfigHelpers)

# The library as others link it: haunch::haunch, all rooms but the command line's.
add_library(haunch_library INTERFACE)
target_link_libraries(haunch_library INTERFACE haunch_io)
set_target_properties(haunch_library PROPERTIES EXPORT_NAME haunch)

set(rooms haunch_fmt haunch_core haunch_kinds haunch_checks haunch_making haunch_drawing haunch_setups haunch_price haunch_lumber haunch_io)
install(TARGETS haunch)
install(TARGETS haunch_library haunch_flags ${rooms} EXPORT haunch-targets)
install(DIRECTORY ${PROJECT_SOURCE_DIR}/include/haunch TYPE INCLUDE)
install(EXPORT haunch-targets NAMESPACE haunch:: DESTINATION ${CMAKE_INSTALL_LIBDIR}/cmake/haunch)
configure_package_config_file(${CMAKE_CURRENT_LIST_DIR}/haunch-config.cmake.in ${PROJECT_BINARY_DIR}/haunch-config.cmake
                              INSTALL_DESTINATION ${CMAKE_INSTALL_LIBDIR}/cmake/haunch)
write_basic_package_version_file(${PROJECT_BINARY_DIR}/haunch-config-version.cmake COMPATIBILITY SameMinorVersion)
install(FILES ${PROJECT_BINARY_DIR}/haunch-config.cmake ${PROJECT_BINARY_DIR}/haunch-config-version.cmake
        DESTINATION ${CMAKE_INSTALL_LIBDIR}/cmake/haunch)

# Told by the program itself, so that they fit it.
set(told ${PROJECT_BINARY_DIR}/told)
add_custom_command(
  OUTPUT ${told}/haunch.1 ${told}/haunch ${told}/_haunch ${told}/haunch.fish
  COMMAND ${CMAKE_COMMAND} -E make_directory ${told}
  COMMAND haunch help man -o ${told}/haunch.1
  COMMAND haunch help bash -o ${told}/haunch
  COMMAND haunch help zsh -o ${told}/_haunch
  COMMAND haunch help fish -o ${told}/haunch.fish
  DEPENDS haunch VERBATIM)
add_custom_target(haunch_told ALL DEPENDS ${told}/haunch.1 ${told}/haunch ${told}/_haunch ${told}/haunch.fish)
install(FILES ${told}/haunch.1 DESTINATION ${CMAKE_INSTALL_MANDIR}/man1)
install(FILES ${told}/haunch DESTINATION ${CMAKE_INSTALL_DATADIR}/bash-completion/completions)
install(FILES ${told}/_haunch DESTINATION ${CMAKE_INSTALL_DATADIR}/zsh/vendor-completions)
install(FILES ${told}/haunch.fish DESTINATION ${CMAKE_INSTALL_DATADIR}/fish/vendor_completions.d)

install(FILES ${PROJECT_SOURCE_DIR}/README.md ${PROJECT_SOURCE_DIR}/LICENSE TYPE DOC)
install(DIRECTORY ${PROJECT_SOURCE_DIR}/docs ${PROJECT_SOURCE_DIR}/examples TYPE DOC)

set(CPACK_GENERATOR DEB)
set(CPACK_PACKAGE_CONTACT "haunch maintainers <maintainers@haunch.invalid>")
set(CPACK_PACKAGE_DESCRIPTION_SUMMARY ${PROJECT_DESCRIPTION})
set(CPACK_RESOURCE_FILE_LICENSE ${PROJECT_SOURCE_DIR}/LICENSE)
set(CPACK_PACKAGING_INSTALL_PREFIX /usr)
set(CPACK_DEBIAN_FILE_NAME DEB-DEFAULT)
set(CPACK_DEBIAN_PACKAGE_SECTION misc)
set(CPACK_STRIP_FILES ON)
include(CPack)
