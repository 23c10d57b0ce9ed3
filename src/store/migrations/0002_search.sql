-- Full-text search over what people remember of a piece. Accents do not matter: "cafe" finds "café".
-- A row of the index has the id of its piece.
CREATE VIRTUAL TABLE found USING fts5(
  number, title, marks, notes, words,
  tokenize = 'unicode61 remove_diacritics 2');
CREATE INDEX observation_piece ON observation (piece);
CREATE INDEX mark_piece ON mark (piece);
CREATE INDEX note_piece ON note (piece);
INSERT INTO found (rowid, number, title, marks, notes, words)
SELECT p.id, p.number, p.title,
  coalesce((SELECT group_concat(m.text, ' ') FROM mark m WHERE m.piece = p.id AND m.ended IS NULL), ''),
  coalesce((SELECT group_concat(n.text, ' ') FROM note n WHERE n.piece = p.id AND n.ended IS NULL), ''),
  coalesce((SELECT group_concat(w.text, ' ') FROM observation o JOIN word w ON w.id = o.value
            WHERE o.piece = p.id AND o.ended IS NULL), '')
FROM piece p WHERE p.ended IS NULL;
