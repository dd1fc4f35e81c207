# The office's development kit: trenchbook::uno carries the headers (made once from the office's own type libraries),
# flags and libraries that code talking to the office needs.
find_path(OFFICE_PROGRAM types/offapi.rdb PATHS /usr/lib/libreoffice/program /usr/lib64/libreoffice/program
    /opt/libreoffice/program REQUIRED DOC "The office's program folder")
get_filename_component(OFFICE_HOME ${OFFICE_PROGRAM} DIRECTORY)
set(OFFICE_SDK ${OFFICE_HOME}/sdk CACHE PATH "The office's development kit")
find_path(UNO_INCLUDE sal/config.h PATHS /usr/include/libreoffice ${OFFICE_SDK}/include REQUIRED)
find_program(CPPUMAKER cppumaker PATHS ${OFFICE_SDK}/bin REQUIRED)
find_program(UNOIDL_WRITE unoidl-write PATHS ${OFFICE_SDK}/bin REQUIRED)

set(UNO_GENERATED ${CMAKE_BINARY_DIR}/uno)
set(OFFICE_TYPES ${OFFICE_PROGRAM}/types.rdb ${OFFICE_PROGRAM}/types/offapi.rdb)
add_custom_command(OUTPUT ${UNO_GENERATED}/made
    COMMAND ${CMAKE_COMMAND} -E make_directory ${UNO_GENERATED}
    COMMAND ${CPPUMAKER} -Gc -O${UNO_GENERATED} ${OFFICE_TYPES}
    COMMAND ${CMAKE_COMMAND} -E touch ${UNO_GENERATED}/made
    DEPENDS ${OFFICE_TYPES}
    COMMENT "Making the office's C++ headers")
add_custom_target(uno_headers DEPENDS ${UNO_GENERATED}/made)

add_library(trenchbook_uno INTERFACE)
add_library(trenchbook::uno ALIAS trenchbook_uno)
add_dependencies(trenchbook_uno uno_headers)
target_include_directories(trenchbook_uno SYSTEM INTERFACE ${UNO_GENERATED} ${UNO_INCLUDE})
target_compile_definitions(trenchbook_uno INTERFACE LINUX UNX CPPU_ENV=gcc3)
foreach(library cppu cppuhelpergcc3 sal)
    find_library(UNO_${library} uno_${library} PATHS ${OFFICE_SDK}/lib REQUIRED)
    target_link_libraries(trenchbook_uno INTERFACE ${UNO_${library}})
endforeach()
