# Ten kinds of nonsense: an open quote, no file, an empty one, another table, impossible rows, a misspelt map, a map that is none, a PDF, a broken workbook, mixed decimals, UTF-16, each answered with what is wrong, where, and what to do.
$ backmark new a.show --title "Tied" > /dev/null
$ printf '[columns]\nid = "number"\ntitle = "title"\nfirst = "made-from"\nheight = { measure = "height", unit = "cm" }\n' > map.toml
$ printf 'id,title,first,height\nES 1,Wave,1955,5.5\n' > good.csv
$ printf 'id,title,first,height\nES 1,"Wave,1955,5.5\n' > quote.csv && backmark import a.show quote.csv --map map.toml
backmark: quote.csv, row 2: a quoted cell begins here and never ends; close the quote, or double a quote that belongs to the text
[2]
$ touch empty.csv && backmark import a.show empty.csv --map map.toml
backmark: empty.csv: the first row holds no headings; let row 1 name the columns
[2]
$ printf 'plain words\n' > words.csv && backmark import a.show words.csv --map map.toml
backmark: words.csv: the file has no column "first"; its columns are: plain words
[2]
$ printf 'id,title,first,height\nES 1,Wave,1955,5.5\n,Shell,,\nES 1,Again,,\nES 4,Reed,soon,\nES 5,a,1950,1,2\n' > rows.csv && backmark import a.show rows.csv --map map.toml
Nothing was taken in: 4 at fault. Mend the file, or take the good rows with --skip-faulty.
backmark: rows.csv, row 3, column id: the piece has no number; give it a number that no other piece has
backmark: rows.csv, row 4, column id: the number "ES 1" stands in row 2 already; give one of the two another number
backmark: rows.csv, row 5, column first: "soon" is not a year; write a whole year such as 1953, or let this column be "made"
backmark: rows.csv, row 6: the row has 5 cells and there are 4 headings; put quotes around a cell that holds the separator, or add the missing heading
[2]
$ printf '[columns]\nid = "nunber"\n' > bad.toml && backmark import a.show good.csv --map bad.toml
backmark: bad.toml, column "id": the target "nunber" is not known; did you mean "number"?
[2]
$ backmark import a.show good.csv --map good.csv
backmark: good.csv, line 1: the map is not TOML: Error while parsing key-value pair: expected '=', saw ','; write each column as "heading" = "target"
[2]
$ backmark import a.show nowhere.csv --map map.toml
backmark: nowhere.csv: there is no such file; check the name and the folder
[2]
$ backmark import a.show a.show --map map.toml
backmark: a.show: this is a folder, not a file; name a file
[2]
$ printf '%%PDF-1.7 x' > paper.csv && backmark import a.show paper.csv --map map.toml
backmark: paper.csv: this kind of file is not read; open it in the spreadsheet and save it as "CSV UTF-8" or as .xlsx
[2]
$ printf 'PK\003\004 no' > broken.xlsx && backmark import a.show broken.xlsx --map map.toml
backmark: broken.xlsx: the workbook is damaged: its archive does not open; open it in the spreadsheet and save it again, or save it as "CSV UTF-8"
[2]
$ printf 'id;title;first;height\n1;a;;12,5\n2;b;;12.5\n' > mixed.csv && backmark import a.show mixed.csv --map map.toml
backmark: mixed.csv: numbers are written with a decimal comma in row 2 and with a full stop in row 3; write one of the two throughout, or say decimal = "," or decimal = "." under [options] in the map
[2]
$ printf '\377\376i\000d\000' > wide.csv && backmark import a.show wide.csv --map map.toml
backmark: wide.csv: the file is written in UTF-16 or is not text; open it in the spreadsheet and save it as "CSV UTF-8"
[2]
$ backmark history a.show | wc -l
1
