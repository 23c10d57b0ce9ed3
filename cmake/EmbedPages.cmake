# Writes OUT: a C++ file that holds every file below FOLDER as bytes, taken in by the assembler, so
# that a megabyte costs no compile time.
file(GLOB_RECURSE files RELATIVE ${FOLDER} ${FOLDER}/*)
list(SORT files)
set(text "#include \"web/assets.h\"\n\n")
set(list "")
set(count 0)
foreach(name IN LISTS files)
  file(SHA256 ${FOLDER}/${name} digest)
  string(SUBSTRING ${digest} 0 16 tag)
  math(EXPR count "${count} + 1")
  string(APPEND text "__asm__(\".section .rodata\\n.global bm_page_${count}\\nbm_page_${count}:\\n.incbin \\\"${FOLDER}/${name}\\\"\\n\"
        \".global bm_page_end_${count}\\nbm_page_end_${count}:\\n.byte 0\\n.previous\\n\");\nextern \"C\" const char bm_page_${count}[];\nextern \"C\" const char bm_page_end_${count}[];\n")
  string(APPEND list "      {\"${name}\", {bm_page_${count}, static_cast<std::size_t>(bm_page_end_${count} - bm_page_${count})}, \"${tag}\"},\n")
endforeach()
string(APPEND text "\nnamespace backmark::web {\n\nconst std::vector<Asset>& assets() {\n  static const std::vector<Asset> list = {\n${list}  };\n  return list;\n}\n\n}  // namespace backmark::web\n")
file(WRITE ${OUT} "${text}")
