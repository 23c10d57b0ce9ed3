# Claims: who was first, by one letter against one story told three times; and claims that make no sense.
$ backmark demo a.show --undrawn > /dev/null
$ backmark test a.show "slide tie first made in 1946 by Oda Vessen" | head -2
Claim: the first slide tie was made in 1946 by Oda Vessen.
All told: 0 in 20, all but ruled out
$ backmark test a.show "first made in 1946 by Oda Vessen" --json | grep -c '"weight": 0.0'
2
$ backmark test a.show "motif=tern was not used before 1930" | head -2
Claim: motif "tern" was not used before 1930.
All told: 20 in 20, all but sure
$ backmark test a.show "first made in 1946 by Ota Vesen"
backmark: claim: there is no maker "ota vesen" in this show; did you mean "oda vessen"?
[2]
$ backmark test a.show "pieces with nothing at all are by Oda Vessen" 2>&1 | cut -c1-70
backmark: claim: there is no value "nothing at all" in this show; writ
$ backmark new b.show --title Empty > /dev/null
$ backmark test b.show "first made in 1946"
Claim: the first was made in 1946.
Nothing on file speaks for it or against it.
