# One line a room, floor by floor; USES is the whole of what it may include.
room(base USES LIBS fmt::fmt)
embed_text(base periods_csv ${CMAKE_SOURCE_DIR}/reference/periods.csv)
room(model USES base)
room(reference USES base)
foreach(table condition-words fineness-marks label-distances materials qualifiers
    restricted-words restrictions terms blue-wool light-classes light-colours light-materials
    schedule-tasks case-materials climate-bands shelf-materials)
  string(REPLACE "-" "_" name ${table}_csv)
  embed_text(reference ${name} ${CMAKE_SOURCE_DIR}/reference/${table}.csv)
endforeach()
room(draw USES base LIBS PkgConfig::PANGOCAIRO PkgConfig::QPDF PkgConfig::LCMS2 JPEG::JPEG PNG::PNG ZLIB::ZLIB ${HYPHEN})
room(store USES base model LIBS SQLiteCpp SQLite::SQLite3 PkgConfig::SODIUM)
embed_migrations()
room(evidence USES base model LIBS Threads::Threads PkgConfig::NLOPT)
# Inner loops over millions of pairs of bytes, spans and years want the vectors of -O3.
set_source_files_properties(src/evidence/likeness_kernel.cpp src/evidence/distance.cpp
  src/evidence/spans.cpp src/evidence/curves.cpp src/evidence/year_grid.cpp
  PROPERTIES COMPILE_OPTIONS -O3)
room(assay USES base model reference)
room(care USES base model reference)
room(curate USES base model reference)
room(photo USES base model draw)
room(words USES base model)
room(press USES base model reference draw words LIBS PkgConfig::CMARK Threads::Threads)
room(scenario USES base model draw)
room(exchange USES base model reference LIBS PkgConfig::TOMLPLUSPLUS pugixml::pugixml PkgConfig::LIBZIP)
room(desk USES base model reference draw store evidence assay care curate words press photo scenario exchange)
room(cli USES base model desk)
room(web USES base model store photo desk LIBS PkgConfig::HTTPLIB PkgConfig::SODIUM PkgConfig::QRENCODE Threads::Threads)
embed_pages()
room(app USES base desk cli web)
