# Lays the sources of the pages from FROM into WORK, beside the packages that were fetched there.
file(REMOVE_RECURSE ${WORK}/src ${WORK}/static ${WORK}/dist)
file(GLOB parts ${FROM}/*)
list(FILTER parts EXCLUDE REGEX "/(node_modules|dist)$")
file(COPY ${parts} DESTINATION ${WORK})
