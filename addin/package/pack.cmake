# Puts the staged package and the templates together as the .oxt, when any of them is newer than it. Unless RELEASE, its
# version goes on with the time, 0.1.0.20260531174500: an office takes a package in place of one that it has only when
# its version is higher.
#     cmake -D STAGE=… -D TEMPLATES=… -D WORK=… -D OXT=… -D VERSION=… -D RELEASE=OFF -P pack.cmake
file(GLOB templates ${TEMPLATES}/*.ots)
file(GLOB_RECURSE staged ${STAGE}/*)

set(stale TRUE)
if(EXISTS ${OXT})
    set(stale FALSE)
    foreach(part ${staged} ${templates} ${CMAKE_CURRENT_LIST_FILE})
        if(${part} IS_NEWER_THAN ${OXT})
            set(stale TRUE)
        endif()
    endforeach()
endif()
if(NOT stale)
    return()
endif()

file(REMOVE_RECURSE ${WORK})
file(COPY ${STAGE}/ DESTINATION ${WORK})
if(templates)
    file(COPY ${templates} DESTINATION ${WORK}/templates/Trenchbook)
endif()
if(NOT RELEASE)
    string(TIMESTAMP now "%Y%m%d%H%M%S" UTC)
    file(READ ${WORK}/description.xml description)
    string(REPLACE "<version value=\"${VERSION}\"/>" "<version value=\"${VERSION}.${now}\"/>" description "${description}")
    file(WRITE ${WORK}/description.xml "${description}")
endif()
file(GLOB parts RELATIVE ${WORK} ${WORK}/*)
file(REMOVE ${OXT})
execute_process(COMMAND ${CMAKE_COMMAND} -E tar cf ${OXT} --format=zip ${parts}
    WORKING_DIRECTORY ${WORK} COMMAND_ERROR_IS_FATAL ANY)
