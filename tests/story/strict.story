# Asked to be strict, a paper in which something gave way is a fault: it is named, and nothing is written.
$ backmark demo shore.show --pieces 12 --undrawn
...
$ backmark pick shore.show --all > out
$ printf '\nSee [#ES 999] and [fig 77].\n' >> shore.show/essays/1-who-was-first.md
$ backmark print shore.show book --strict > out 2> faults
[2]
$ grep -c "there is no piece \"ES 999\"" faults
1
$ grep -c "77" faults
1
$ test -e shore.show/prints/book.pdf || echo nothing is written
nothing is written
# Of all papers none is written if one of them has a fault, and no set is frozen.
$ backmark print shore.show all --strict --freeze proof > out 2> faults
[2]
$ ls shore.show/prints 2> out | wc -l
0
# Without it the book comes out, and says the same.
$ backmark print shore.show book --json > told
$ grep -c "there is no piece .\"ES 999" told
1
$ test -s shore.show/prints/book.pdf && echo there
there
