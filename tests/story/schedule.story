# Schedule: the demo show from a named day; nonsense is answered and nothing is written.
$ backmark demo a.show --undrawn > /dev/null
$ backmark schedule a.show --today 2025-06-01 --json | grep -c '"latest_start"'
37
# The same seed says the same, to the byte.
$ backmark schedule a.show --today 2026-06-01 --json > one.json
$ backmark schedule a.show --today 2026-06-01 --json > two.json
$ cmp one.json two.json && echo same
same
# On the eve of the opening, with nothing done, there is no chance.
$ backmark schedule a.show --today 2027-06-25 | sed -n 2p | cut -d. -f1
Open on time: less than 1 %
# An edited list: what is done takes no time.
$ backmark schedule a.show --csv > tasks.csv
$ head -1 tasks.csv | tr -d '\r'
task,group,title,after,least,likely,greatest,holds,done
$ printf 'task,after,least,likely,greatest,done\nscope,,7,14,30,yes\nopen,scope,1,2,3,\n' > short.csv
$ backmark task a.show --from short.csv
The list has 2 tasks.
$ backmark schedule a.show --today 2027-06-20 | sed -n 2p | cut -d. -f1,2
Open on time: more than 99 %. Book in hand: more than 99 %
# A calendar for other programs (RFC 5545): one entry a task that is not done.
$ backmark schedule a.show --today 2027-06-20 --calendar plan.ics > /dev/null
$ grep -c 'BEGIN:VEVENT' plan.ics
1
$ grep -c 'DTSTART;VALUE=DATE:20270624' plan.ics
1
# Nonsense.
$ printf 'task,after,least,likely,greatest\na,b,1,2,3\nb,a,1,2,3\nopen,a,0,0,0\n' > circle.csv
$ backmark task a.show --from circle.csv
backmark: activities wait for each other in a circle: a, b, open; take out one of the links
[2]
$ printf 'task,after,least,likely,greatest\na,,soon,2,3\nopen,a,0,0,0\n' > soon.csv
$ backmark task a.show --from soon.csv
backmark: soon.csv, row 2: least, likely and greatest are not all numbers; write calendar days, for example 5, 10, 20
[2]
$ printf 'job,days\nx,3\n' > other.csv
$ backmark task a.show --from other.csv
backmark: other.csv, row 1: there is no column "task"; let row 1 be task, group, title, after, least, likely, greatest, holds, done
[2]
$ backmark task a.show walk --likely 900 --greatest 100
backmark: the times of "walk" do not rise: 0, 900, 100; write the least, the likely and the greatest time, none below 0
[2]
$ backmark task a.show
backmark: name a task or give a list; write "backmark task SHOW KEY --done yes" or "--from FILE.csv"
[2]
# Nothing of all that was kept; one task more is, and is taken back like any change.
$ backmark task a.show walk --title "Walk through" --least 1 --likely 1 --greatest 2 --holds show
walk: Walk through, 1 to 2 days, most likely 1, after nothing.
$ backmark undo a.show > /dev/null
$ backmark schedule a.show --csv | wc -l
3
$ backmark schedule a.show --today yesterday
backmark: --today: the day work goes on from is not a day; write it as 2026-11-25
[2]
$ backmark new b.show > /dev/null
$ backmark schedule b.show --today 2026-06-01
backmark: the show has no opening day; write "backmark setting SHOW opens 2027-06-26"
[2]
