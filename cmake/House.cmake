# One line a room, floor by floor; USES is the whole of what it may include.
room(base USES LIBS fmt::fmt)
room(model USES base)
room(draw USES base LIBS PkgConfig::PANGOCAIRO PkgConfig::QPDF PkgConfig::LCMS2 JPEG::JPEG PNG::PNG ${HYPHEN})
room(store USES base model LIBS SQLiteCpp SQLite::SQLite3 PkgConfig::SODIUM)
embed_migrations()
room(evidence USES base model LIBS Threads::Threads PkgConfig::NLOPT)
# The inner loops of the likeness fit, over millions of pairs of bytes, want the vectors of -O3.
set_source_files_properties(src/evidence/likeness_kernel.cpp PROPERTIES COMPILE_OPTIONS -O3)
room(words USES base model)
room(scenario USES base model draw)
room(desk USES base model draw store)
room(cli USES base model desk)
room(app USES base desk cli)
