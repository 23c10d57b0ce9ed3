# room(NAME USES rooms... LIBS libraries...)
# Makes the static library bm_NAME of src/NAME, links what it may include, checks that each
# header compiles alone, and writes the room's line to the list that the test house.rooms reads.
set_property(GLOBAL PROPERTY BACKMARK_ROOMS "")

add_library(backmark_flags INTERFACE)
target_compile_options(backmark_flags INTERFACE
  -Wall -Wextra -Wpedantic -Wconversion -Wshadow -Wnon-virtual-dtor
  # Designated initialisers leave the rest to the defaults on purpose.
  -Wno-missing-field-initializers)
if(BACKMARK_WARNINGS_ARE_ERRORS)
  target_compile_options(backmark_flags INTERFACE -Werror)
endif()
target_compile_definitions(backmark_flags INTERFACE BACKMARK_VERSION="${PROJECT_VERSION}")
# Same bytes on every machine: no contraction of a*b+c that one processor has and another lacks.
target_compile_options(backmark_flags INTERFACE -ffp-contract=off)
if(BACKMARK_SANITIZE)
  target_compile_options(backmark_flags INTERFACE
    -fsanitize=address,undefined -fno-sanitize-recover=undefined -fno-omit-frame-pointer)
  target_link_options(backmark_flags INTERFACE -fsanitize=address,undefined)
endif()

function(room NAME)
  cmake_parse_arguments(ROOM "" "" "USES;LIBS" ${ARGN})
  set(folder ${CMAKE_SOURCE_DIR}/src/${NAME})
  file(GLOB_RECURSE bodies CONFIGURE_DEPENDS ${folder}/*.cpp)
  list(FILTER bodies EXCLUDE REGEX "/src/app/main\\.cpp$")
  file(GLOB_RECURSE headers CONFIGURE_DEPENDS ${folder}/*.h)
  if(bodies)
    add_library(bm_${NAME} STATIC ${bodies})
    set(visibility PUBLIC)
    target_link_libraries(bm_${NAME} PRIVATE backmark_flags ${ROOM_LIBS})
  else()
    add_library(bm_${NAME} INTERFACE)
    set(visibility INTERFACE)
    target_link_libraries(bm_${NAME} INTERFACE ${ROOM_LIBS})
  endif()
  target_include_directories(bm_${NAME} ${visibility} ${CMAKE_SOURCE_DIR}/src)
  foreach(used IN LISTS ROOM_USES)
    target_link_libraries(bm_${NAME} ${visibility} bm_${used})
  endforeach()
  if(headers)
    target_sources(bm_${NAME} ${visibility} FILE_SET HEADERS
      BASE_DIRS ${CMAKE_SOURCE_DIR}/src FILES ${headers})
    set_target_properties(bm_${NAME} PROPERTIES VERIFY_INTERFACE_HEADER_SETS ON)
  endif()
  string(REPLACE ";" "," uses "${ROOM_USES}")
  set_property(GLOBAL APPEND PROPERTY BACKMARK_ROOMS "${NAME}:${uses}")
endfunction()

# The migrations of the store, as C++ text, made anew when one is added.
function(embed_migrations)
  set(folder ${CMAKE_SOURCE_DIR}/src/store/migrations)
  file(GLOB files CONFIGURE_DEPENDS ${folder}/*.sql)
  set(out ${CMAKE_BINARY_DIR}/migrations.cpp)
  add_custom_command(OUTPUT ${out}
    COMMAND ${CMAKE_COMMAND} -DFOLDER=${folder} -DOUT=${out} -P ${CMAKE_SOURCE_DIR}/cmake/Embed.cmake
    DEPENDS ${files} ${CMAKE_SOURCE_DIR}/cmake/Embed.cmake)
  target_sources(bm_store PRIVATE ${out})
endfunction()

# The text of FILE within the room ROOM, as `const char* const backmark::NAME`.
function(embed_text ROOM NAME FILE)
  set(out ${CMAKE_BINARY_DIR}/${NAME}.cpp)
  add_custom_command(OUTPUT ${out}
    COMMAND ${CMAKE_COMMAND} -DFILE=${FILE} -DNAME=${NAME} -DOUT=${out} -P ${CMAKE_SOURCE_DIR}/cmake/EmbedText.cmake
    DEPENDS ${FILE} ${CMAKE_SOURCE_DIR}/cmake/EmbedText.cmake)
  target_sources(bm_${ROOM} PRIVATE ${out})
endfunction()

# The pages of the workbench within the room web. Where Node is there they are built from web/ in the
# build folder (web/build.mjs writes dist/); else a plain page says that they are missing.
function(embed_pages)
  find_program(NODE node)
  find_program(NPM npm)
  set(out ${CMAKE_BINARY_DIR}/pages.cpp)
  set(embed ${CMAKE_SOURCE_DIR}/cmake/EmbedPages.cmake)
  if(EXISTS ${CMAKE_SOURCE_DIR}/web/build.mjs AND NODE AND NPM)
    set(work ${CMAKE_BINARY_DIR}/web)
    file(GLOB_RECURSE sources CONFIGURE_DEPENDS ${CMAKE_SOURCE_DIR}/web/src/* ${CMAKE_SOURCE_DIR}/web/test/*
      ${CMAKE_SOURCE_DIR}/web/static/* ${CMAKE_SOURCE_DIR}/web/*.mjs ${CMAKE_SOURCE_DIR}/web/*.json)
    list(FILTER sources EXCLUDE REGEX "/(node_modules|dist)/")
    add_custom_command(OUTPUT ${work}/node_modules/.stamp
      COMMAND ${CMAKE_COMMAND} -E make_directory ${work}
      COMMAND ${CMAKE_COMMAND} -E copy ${CMAKE_SOURCE_DIR}/web/package.json ${CMAKE_SOURCE_DIR}/web/package-lock.json ${work}
      COMMAND ${CMAKE_COMMAND} -E chdir ${work} ${NPM} ci --no-audit --no-fund --loglevel=error
      COMMAND ${CMAKE_COMMAND} -E touch ${work}/node_modules/.stamp
      DEPENDS ${CMAKE_SOURCE_DIR}/web/package.json ${CMAKE_SOURCE_DIR}/web/package-lock.json
      COMMENT "Fetching what the pages are built with")
    add_custom_command(OUTPUT ${out}
      COMMAND ${CMAKE_COMMAND} -DFROM=${CMAKE_SOURCE_DIR}/web -DWORK=${work} -P ${CMAKE_SOURCE_DIR}/cmake/CopyPages.cmake
      COMMAND ${CMAKE_COMMAND} -E chdir ${work} ${NODE} build.mjs
      COMMAND ${CMAKE_COMMAND} -DFOLDER=${work}/dist -DOUT=${out} -P ${embed}
      DEPENDS ${sources} ${work}/node_modules/.stamp ${embed}
      COMMENT "Building the pages")
  else()
    message(STATUS "The pages of the workbench are left out: node, npm or web/ is missing")
    set(plain ${CMAKE_SOURCE_DIR}/src/web/plain)
    add_custom_command(OUTPUT ${out}
      COMMAND ${CMAKE_COMMAND} -DFOLDER=${plain} -DOUT=${out} -P ${embed}
      DEPENDS ${plain}/index.html ${embed})
  endif()
  target_sources(bm_web PRIVATE ${out})
endfunction()
