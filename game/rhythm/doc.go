// Package rhythm holds the rhythms (iqa'at, usul) that dancers hear: their
// strokes, their counts, the exact time of every step, and the text files that
// they are written in.
//
// # The text of a rhythm
//
// A rhythm is one UTF-8 text file of "key: value" lines, one fact a line:
//
//	# A comment has a line of its own.
//	name: maqsum
//	script: مقسوم
//	spelling: maqsoum
//	spelling: maksoum
//	family: maqsum
//	core: yes
//	metre: 4/4
//	skeleton: DT-TD-T-
//	filled: D-T-kkT-D-kkT-kk
//	tempo: about 90 105 130 quarter
//	listen: dums on 1 and on 3
//	source: M. Liberman, Language Log, 2021
//	memory: the tempo range
//
// The file's own name, less ".txt", is the rhythm's id; it consists of lower
// case letters a to z, digits and hyphens. The grammar, where "…" is any text
// up to the end of the line:
//
//	file     = { line "\n" }                 at most 65,536 bytes
//	line     = blank | "#" … | key ":" value
//	name     = …                             required
//	script   = …                             the name in its own script
//	spelling = …                             repeatable; another way to write it
//	family   = …                             learners hear a family side by side
//	core     = yes | no                      one of the most used; no if absent
//	quiz     = yes | no                      may be an answer; yes if absent
//	differ   = yes | no                      sources disagree on its strokes; no if absent
//	metre    = beats "/" unit                required; 1–32 beats; unit 2, 4, 8, 16
//	grouping = beats { "+" beats }           sums to the metre; required for odd metres
//	skeleton = pattern                       required
//	filled   = pattern
//	variant  = … "=" pattern                 repeatable
//	tempo    = ["about"] slow usual fast beat   required; 20–400 beats a minute
//	beat     = half | quarter | eighth | sixteenth
//	role     = …                             where in a show it is used
//	listen   = …                             what to listen for, in counts
//	note     = …                             repeatable
//	source   = …                             repeatable
//	memory   = …                             repeatable; what no source backs
//	pattern  = stroke { stroke }
//	stroke   = "D" | "T" | "S" | "t" | "k" | "-"
//
// Keys may stand in any order; those not marked repeatable stand once. A file
// has at least one source or one memory line. White space around keys and
// values is dropped and inside text counts as one blank. Blanks and "|" may
// divide a pattern for the eye. A byte order mark at the start is dropped, and
// lines may end in CR, LF or both. "#" begins a comment only as the first mark
// of a line, since addresses contain it.
//
// A metre is odd if its cycles do not go evenly into eights, as 9/8 does not;
// one of 3 beats needs no grouping all the same.
//
// A skeleton has 1, 2 or 4 steps for each beat of its metre and at least one
// dum, and consists of D, T, S and rests. A filled form has as many steps or
// twice as many; it keeps every dum where it is and a T or S at each T or S, and
// adds only light strokes (t, k). A variant has as many steps or twice as many
// and is otherwise free. The beat of the tempo is the unit of the metre. "about"
// says that the range is from memory.
//
// Where sources disagree, a note that begins "sources differ:" says in what, also
// in rhythms not marked as such.
//
// # Forms and likeness
//
// A [Form] is one pattern over a cycle, with the counts and times of its own
// steps. [CommonPulse] and [StepForStep] lay two side by side; [Differ] says
// where they differ, [Distance] and [Apart] how unlike they sound.
//
// # Not goals
//
// The format has no triplets or swing, no change of tempo or metre inside a
// cycle, no dynamics beyond light and full strokes, no markup or escapes, no
// including of other files, and no sections or nesting. Comments are not kept,
// and nothing writes the format.
//
// # Errors
//
// [Parse] stops at the first mistake and says where, as file:line:column.
// Lines and columns count from 1; a column counts runes (Unicode code points),
// not bytes and not what the eye sees as one letter. A key that is missing is
// reported at the end of the file.
package rhythm
