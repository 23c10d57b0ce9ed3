# A piece that may be a cultural item: nothing of it leaves before its community has answered; other pictures need leave to be published.
$ backmark demo a.show --pieces 12 > /dev/null
$ backmark pick a.show --all > /dev/null
$ backmark list a.show --csv --columns number | tail -n +2 | tr -d '\r' > numbers
$ while read n; do backmark leave a.show "$n" all given --credit "Friends of the coast" > /dev/null; done < numbers
$ backmark leave a.show | tail -1
12 of 12 pieces have every leave. No answer means no.
$ backmark print a.show book > /dev/null && pdfimages -list a.show/prints/book.pdf | grep -c image > all
# One leave to print is taken back: the picture stays behind, the entry does not.
$ head -1 numbers > first
$ backmark leave a.show "$(cat first)" print refused > /dev/null
$ backmark print a.show book | grep -c "Pictures of 1 pieces stay behind"
1
$ pdfimages -list a.show/prints/book.pdf | grep -c image > less
$ test $(cat less) -lt $(cat all) && echo fewer
fewer
$ pdftotext a.show/prints/book.pdf - | grep -q "$(cat first)" && echo there
there
$ backmark leave a.show "$(cat first)" print given > /dev/null
$ backmark print a.show book > /dev/null && pdfimages -list a.show/prints/book.pdf | grep -c image > again
$ cmp all again && echo same
same
# Its community is asked: the piece is gated, in the book, in a working paper and in the export.
$ backmark leave a.show "$(cat first)" consent asked > /dev/null
$ backmark leave a.show | grep -c GATED
1
$ backmark print a.show book | grep -c "^1 pieces are withheld until their communities answer: $(cat first)"
1
$ pdfimages -list a.show/prints/book.pdf | grep -c image > gated
$ test $(cat gated) -lt $(cat all) && echo fewer
fewer
$ pdftotext a.show/prints/book.pdf - | grep -c "$(cat first)"
0
[1]
$ backmark print a.show condition > /dev/null && pdftotext a.show/prints/condition.pdf - | grep -c "$(cat first)"
0
[1]
$ printf '[columns]\n"no" = "number"\n"title" = "title"\n' > map.toml
$ backmark export a.show csv --map map.toml --out out.csv | tail -1
1 pieces are withheld until their communities answer: ***
$ grep -c "$(cat first)" out.csv
0
[1]
# The answer comes, and everything is as it was.
$ backmark leave a.show "$(cat first)" consent given --by "Council of the coast" > /dev/null
$ backmark print a.show book > /dev/null && pdfimages -list a.show/prints/book.pdf | grep -c image > after
$ cmp all after && echo same
same
# Nonsense.
$ backmark leave a.show "$(cat first)" burn given
backmark: use: "burn" is nothing that leave is given for; write one of: show, print, web, examine, photograph, all, consent
[2]
$ backmark leave a.show "$(cat first)" print maybe
backmark: answer: "maybe" is no answer; write asked, given or refused
[2]
$ backmark leave a.show "XX 9999" print given 2>&1 | cut -c1-69
backmark: there is no piece, photograph, maker or source "XX 9999" in
$ backmark leave a.show "$(cat first)" print
backmark: the answer is not said; write "backmark leave SHOW SUBJECT print given"
[2]
