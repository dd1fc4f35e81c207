# Copies libraries into the staged package under the names that they have there.
#     cmake -D STAGE=… -D LIBRARIES=lib.so.0=PATH,… -P lay.cmake
string(REPLACE "," ";" packed "${LIBRARIES}")
foreach(one ${packed})
    string(REGEX MATCH "^([^=]*)=(.*)$" matched "${one}")
    file(COPY_FILE ${CMAKE_MATCH_2} ${STAGE}/${CMAKE_MATCH_1})
endforeach()
