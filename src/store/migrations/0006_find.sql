-- The search box finds makers, places and years too, whether a piece is signed, and words that are
-- not quite written right.

-- What people remember of a piece, a column a kind of memory; what the index is made from.
CREATE VIEW piece_text AS
SELECT p.id AS id, p.number AS number, p.title AS title,
  coalesce((SELECT group_concat(m.text, ' ') FROM mark m WHERE m.piece = p.id AND m.ended IS NULL), '') AS marks,
  coalesce((SELECT group_concat(n.text, ' ') FROM note n WHERE n.piece = p.id AND n.ended IS NULL), '') AS notes,
  coalesce((SELECT w.text FROM word w WHERE w.id = p.form), '') || ' ' ||
  coalesce((SELECT group_concat(w.text, ' ') FROM observation o JOIN word w ON w.id = o.value
            WHERE o.piece = p.id AND o.ended IS NULL), '') || ' ' ||
  CASE WHEN EXISTS (SELECT 1 FROM mark m WHERE m.piece = p.id AND m.ended IS NULL AND m.seen = 0)
       THEN 'signed marked' ELSE 'unsigned unmarked' END AS words,
  coalesce((SELECT group_concat(k.name, ' ') FROM claim c JOIN maker k ON k.id = c.maker
            WHERE c.about = 0 AND c.subject = p.id AND c.ended IS NULL AND c.negative = 0), '') AS people,
  coalesce((SELECT group_concat(w.text, ' ') FROM claim c JOIN word w ON w.id = c.word
            WHERE c.about = 0 AND c.subject = p.id AND c.says = 2 AND c.ended IS NULL), '') || ' ' ||
  coalesce((SELECT group_concat(w.text, ' ') FROM event e JOIN word w ON w.id = e.place
            WHERE e.piece = p.id AND e.ended IS NULL), '') AS places,
  coalesce((SELECT group_concat(c.text, ' ') FROM claim c
            WHERE c.about = 0 AND c.subject = p.id AND c.ended IS NULL), '') || ' ' ||
  coalesce((SELECT group_concat(e.date || ' ' || e.text, ' ') FROM event e
            WHERE e.piece = p.id AND e.ended IS NULL), '') AS said
FROM piece p WHERE p.ended IS NULL;

DROP TABLE found;
CREATE VIRTUAL TABLE found USING fts5(
  number, title, marks, notes, words, people, places, said,
  tokenize = 'unicode61 remove_diacritics 2', prefix = '3');
CREATE VIRTUAL TABLE found_term USING fts5vocab(found, 'row');
INSERT INTO found (rowid, number, title, marks, notes, words, people, places, said)
SELECT id, number, title, marks, notes, words, people, places, said FROM piece_text;

-- The middle year of each piece in the newest reckoning.
CREATE TABLE reckoned_year (piece INTEGER PRIMARY KEY, year INTEGER NOT NULL) STRICT;
CREATE INDEX reckoned_year_year ON reckoned_year (year);
