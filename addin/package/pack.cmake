# Puts the staged package and the templates together as the .oxt, when any of them is newer than it.
#     cmake -D STAGE=… -D TEMPLATES=… -D WORK=… -D OXT=… -P pack.cmake
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
file(GLOB parts RELATIVE ${WORK} ${WORK}/*)
file(REMOVE ${OXT})
execute_process(COMMAND ${CMAKE_COMMAND} -E tar cf ${OXT} --format=zip ${parts}
    WORKING_DIRECTORY ${WORK} COMMAND_ERROR_IS_FATAL ANY)
