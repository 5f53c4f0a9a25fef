import { type CatalogueRow, hint, warning } from "./row.ts";

/** What the records of a `cut` block come to: what exists already, at the size that it has. */
export const asCut: Readonly<Record<string, CatalogueRow>> = {
  "cut/forgiven": hint(
    "Piece that its joints forgive",
    "A piece is a little off its size, and no more than its joints make up for.",
    "What a joint closes over, and what stays in a groove, is from memory",
  ),
  "cut/neighbours": warning(
    "Piece that its neighbours must follow",
    "A piece is smaller than derived, and serves if what it meets is cut to suit.",
    "How far slides forgive is what the slides say; the least cover of a front is from memory",
  ),
  "cut/lost": warning(
    "Piece that is too small for its place",
    "A piece is smaller than anything round it makes up for, and is to be cut again.",
    "How far slides forgive is what the slides say; the least cover of a front is from memory",
  ),
  "cut/too-large": warning(
    "Piece that can be cut down",
    "A piece is larger than derived by more than a joint closes over.",
  ),
  "cut/not-checked": hint(
    "Size that nothing can be held against",
    "A piece is smaller than derived, and nothing in the file says what it meets there.",
  ),
  "cut/spoiled": hint(
    "Spoiled piece",
    "A piece is spoiled: it is cut again, and what is good of it may serve elsewhere.",
  ),
  "cut/too-many": warning("More made than wanted", "More pieces of a part are recorded than are wanted."),
  "cut/not-needed": warning(
    "Made and needed no more",
    "A record is of a part that the design does not have, or has no longer.",
  ),
  "cut/no-such-part": warning(
    "Record that names no part",
    "The words of a record name no part, and come near one that there is.",
  ),
  "cut/which-part": warning(
    "Record that may mean several parts",
    "The words of a record fit parts that are not alike.",
  ),
  "cut/no-such-offcut": warning(
    "Offcut that is not in the rack",
    "A record takes an offcut from the rack that is not stated, is used up already, or is what the plan of this very job leaves over.",
  ),
};
