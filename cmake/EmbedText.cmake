# Writes OUT: a C++ file that holds the text of FILE as `const char* const backmark::NAME`.
file(READ ${FILE} text)
file(WRITE ${OUT}
  "namespace backmark {\n\nextern const char* const ${NAME};\nconst char* const ${NAME} = R\"text(${text})text\";\n\n}  // namespace backmark\n")
