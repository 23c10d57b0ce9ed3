# One line a room, floor by floor; USES is the whole of what it may include.
room(base USES LIBS fmt::fmt)
room(model USES base)
room(draw USES base LIBS PkgConfig::PANGOCAIRO PkgConfig::QPDF PkgConfig::LCMS2 JPEG::JPEG PNG::PNG ${HYPHEN})
