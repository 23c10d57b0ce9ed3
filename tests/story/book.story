# A book with faults in it still comes out, says what gave way and where, and is refused only when asked to be strict.
$ backmark demo shore.show --pieces 12 --undrawn
...
$ printf '\nSee [#ES 999], [@nobody, 3] and 漢.\n' >> shore.show/essays/1-who-was-first.md
$ backmark pick shore.show --all > out
$ backmark print shore.show book --json > told.json
$ grep -c "there is no piece .\"ES 999" told.json
1
$ grep -c "no work has the key .\"nobody" told.json
1
$ grep -c "no font here has the letter" told.json
1
$ grep -c "1-who-was-first.md, line 48" told.json
2
$ backmark print shore.show book --strict > out 2> faults || echo refused
refused
$ grep -c "ES 999" faults
1
$ test -s shore.show/prints/book.pdf && echo there
there
