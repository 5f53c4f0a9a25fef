/** What `--help` prints; no line wider than 80 columns. */
export const mainHelp = `scantling: checks build files for cabinets and lists the parts they need

  scantling check FILE...    what is wrong, where, why, and what would do
  scantling list FILE        the parts to cut
  scantling plan FILE        how they are cut from sheets and boards, in order
  scantling buy FILE...      what to buy for them, added up over several files
  scantling day FILE...      what is left at the end of a day, what can be saved
  scantling papers FILE -o DIR    what lies on the bench: PDF, SVG, DXF
  scantling --version        the program's version
  scantling COMMAND --help   more about one command

A FILE is a build file (*.scant); - reads one from the standard input. What it
uses is read from the folder it belongs to and nowhere else: the nearest one up
that holds a .git; else the working folder, if the file lies in it; else the
file's own folder.

On a terminal, what takes long says how far it is. Ctrl+C stops it: every file
is then the old one or the new one, and list, plan and papers say what was not
written.

Exit codes: 0 fine, 1 errors stand in a file, 2 the arguments make no sense or a
file could not be read or written, 130 stopped.
`;

export const checkHelp = `scantling check FILE...    what is wrong, where, why, and what would do

  --json        for programs: one object, "schema": "scantling/check/1"
  --sarif       for programs that read SARIF 2.1.0
  --fix         first mends what is clear, and writes the files that changed
  -h, --help    this text

Errors cannot be built or will not work; warnings will bind, sag, split or show;
hints are worth knowing. The exit code is 1 only if there are errors.
Colour is used on a terminal only, and never if NO_COLOR is set.
`;

export const listHelp = `scantling list FILE    the parts to cut

  --json              for programs, every part of every owner by itself:
                      one object, "schema": "scantling/list/1"
  --csv               the cut list for a spreadsheet
  --markdown          the cut list for a page
  --left              only what is left, by the records of the file's cut block
  -o, --output DIR    writes NAME.cutlist.csv and NAME.cutlist.md into a folder
                      (with --csv or --markdown only that one); a file that says
                      the same already is not touched
  -h, --help          this text

A file with errors is listed as far as its parts can be worked out; the exit
code is then 1. Look before you cut.
`;

export const planHelp = `scantling plan FILE    how its parts are cut from sheets and boards

  --json         for programs: one object, "schema": "scantling/plan/1"
  --seconds N    searches for so long with each stock; without it, for a fixed
                 number of rounds, so that the same file gives the same plan
  --left         only what is left to cut, by the records of the file's cut
                 block, from what those leave in the rack
  --keep FILE    writes a line into FILE for each offcut worth keeping, in place
                 of those that an earlier plan of this job left there; other
                 jobs use them before a new sheet, this one once its name is
                 taken off them
  -h, --help     this text

"No fewer is possible" is said only where it is proven. The exit code is 1 if
the file has errors or a part has no place.
`;

export const buyHelp = `scantling buy FILE...    what to buy, added up over several files

  -h, --help     this text

Sheets and boards are those of the cutting plan, less whole sheets in the rack;
screws, pins and edging are counted as is common practice. Parts that a file
records as cut are not bought again. Files that use one rack are planned in the
order in which they are named: what one takes from it is not there for the next,
and what one leaves over is. What spoiled pieces can still become is not bought.
`;

export const dayHelp = `scantling day FILE...    what is left at the end of a day

  --json         for programs: one object, "schema": "scantling/day/1"
  -h, --help     this text

What is made, by the records in each file's cut block; what of it must be put
right, and what spoiled and wrong pieces can still become, in any of the files
that share a rack; what is left to cut, how many set-ups that takes, and how
long, if the file gives times. The exit code is 1 only if errors stand in a file.
`;
