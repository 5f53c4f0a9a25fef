import type { Random } from "./random.ts";

/** A text spoiled the ways that texts are spoiled: by a merge, an editor, a paste, a slip of the hand, or on purpose. */
export function mutated(random: Random, text: string, others: readonly string[]): string {
  let made = text;
  for (let times = 1 + random.below(3); 0 < times; times--) made = random.pick(mutations)(random, made, others);
  return made;
}

type Mutation = (random: Random, text: string, others: readonly string[]) => string;

const mutations: readonly Mutation[] = [
  withoutStretch,
  withoutStretch,
  (random, text) => onLine(random, text, () => []),
  (random, text) => onLine(random, text, (line) => [line, line]),
  swappedLines,
  (random, text) => onToken(random, text, () => ""),
  (random, text) => onToken(random, text, (token) => `${token} ${token}`),
  (random, text) => onToken(random, text, () => random.pick(strays)),
  (random, text) => onNumber(random, text, () => random.pick(figures)),
  (random, text) => onNumber(random, text, () => random.pick(figures)),
  (random, text) => putIn(random, text, random.pick(strays)),
  (random, text) => putIn(random, text, random.pick(strays)),
  (random, text, others) => putIn(random, text, stretchOf(random, random.pick(others))),
  (random, text, others) => `${text}\n${random.pick(others)}`,
  conflict,
  (_random, text) => text.replace(/\r?\n/g, "\r\n"),
  (_random, text) => text.replace(/\r?\n/g, "\r"),
  (random, text) => text.replace(/\n/g, () => random.pick(["\n", "\r\n", "\r", "\n\n", "\u2028"])),
  (_random, text) => `\uFEFF${text}`,
  (random, text) => text.slice(0, random.below(text.length + 1)),
  (random, text) => text.slice(random.below(text.length + 1)),
  nested,
  (_random, text) => text.replace(/\s+/g, " "),
  (_random, text) => text.replace(/[{}]/g, ""),
  swappedNames,
];

const strays = [
  ...[
    '"',
    "'",
    "″",
    "′",
    '""',
    "{",
    "}",
    "(",
    ")",
    ",",
    "=",
    "-",
    "+",
    "/",
    "*",
    "±",
    "×",
    "x",
    "#",
    "#8",
    "//",
    "/*",
    "*/",
  ],
  ...[
    "§",
    "\0",
    "\uFEFF",
    "\u00a0",
    "\u200b",
    "\ud800",
    "📐",
    "<<<<<<< HEAD\n",
    "=======\n",
    ">>>>>>> theirs\n",
    "|||||||\n",
  ],
  ...[
    "inches\n",
    "millimetres\n",
    " rest ",
    " equal ",
    " to ",
    " like a ",
    " for ",
    " in ",
    " of ",
    " box for ",
    "opening a 3\n",
  ],
  ...[
    "allow slide/shallow\n",
    'allow x/y "why"\n',
    "let a = a + 1\n",
    'use "main.scant"\n',
    'use "rack.scant"\n',
    "cut { ",
    "__proto__",
  ],
  ...[
    "constructor",
    "toString",
    "hasOwnProperty",
    "½",
    "1 1 1/2 1/2",
    "%",
    "lb",
    "mm",
    "\\",
    "\t",
    "\u0085",
    "e\u0301",
  ],
];

const figures = [
  ...[
    "0",
    "-1",
    "1/0",
    "0/7",
    "½",
    "¼¾",
    "13 ⅞",
    "1e9",
    "99999999999999999999",
    "0.0000001",
    "1/640000",
    "2.",
    "..5",
    "1/2/3",
    "7' 3 1/2\"",
  ],
  ...[
    "1mm",
    "25.4 mm",
    "1000000 ft",
    "(1 + 2",
    "1 + )",
    "a",
    "base.wide",
    "d-1.width",
    "1 ± 1",
    "3 to 2",
    "3 to 4",
    "1 - 1/2",
    "1+1/2",
  ],
  ...["7".repeat(400), `1${" + 1/3".repeat(60)}`, `${"(".repeat(30)}1${")".repeat(30)}`, "٣", "１２"],
];

function withoutStretch(random: Random, text: string): string {
  const start = random.below(text.length + 1);
  return text.slice(0, start) + text.slice(start + 1 + random.below(60));
}

function stretchOf(random: Random, text: string): string {
  const start = random.below(text.length + 1);
  return text.slice(start, start + 1 + random.below(300));
}

function putIn(random: Random, text: string, piece: string): string {
  const at = random.below(text.length + 1);
  return text.slice(0, at) + piece + text.slice(at);
}

function onLine(random: Random, text: string, change: (line: string) => readonly string[]): string {
  const lines = text.split("\n");
  const at = random.below(lines.length);
  return lines.flatMap((line, index) => (index === at ? change(line) : [line])).join("\n");
}

function swappedLines(random: Random, text: string): string {
  const lines = text.split("\n");
  const [a, b] = [random.below(lines.length), random.below(lines.length)];
  return lines.map((line, index) => (index === a ? lines[b]! : index === b ? lines[a]! : line)).join("\n");
}

function onMatch(random: Random, text: string, pattern: RegExp, change: (piece: string) => string): string {
  const all = [...text.matchAll(pattern)];
  if (all.length === 0) return text;
  const { index, 0: piece } = random.pick(all);
  return text.slice(0, index) + change(piece) + text.slice(index + piece.length);
}

function onToken(random: Random, text: string, change: (token: string) => string): string {
  return onMatch(random, text, /[\p{L}\d_-]+|[^\s\p{L}\d]/gu, change);
}

function onNumber(random: Random, text: string, change: () => string): string {
  return onMatch(random, text, /\d+(?:[ -]\d+)?(?:\/\d+|\.\d+)?/g, change);
}

/** Two names of the text exchanged throughout: stocks where openings are meant, lengths where stocks are. */
function swappedNames(random: Random, text: string): string {
  const words = [...new Set(text.match(/[a-z][a-z0-9-]+/g) ?? [])];
  if (words.length < 2) return text;
  const [a, b] = [random.pick(words), random.pick(words)];
  return text.replace(/[a-z][a-z0-9-]+/g, (word) => (word === a ? b : word === b ? a : word));
}

function conflict(random: Random, text: string): string {
  const lines = text.split("\n");
  const at = random.below(lines.length);
  const [ours, theirs] = [lines.slice(at, at + 3), lines.slice(at + 1, at + 4)];
  const marks = [
    "<<<<<<< HEAD",
    ...ours,
    ...(random.oneIn(3) ? ["||||||| base"] : []),
    "=======",
    ...theirs,
    ">>>>>>> b",
  ];
  return [...lines.slice(0, at), ...marks, ...lines.slice(at + 3)].join("\n");
}

function nested(random: Random, text: string): string {
  const depth = 1 + random.below(random.oneIn(4) ? 90 : 12);
  const [open, close] = random.pick([
    ["(", ")"],
    ["across { ", " }"],
    ["down 3 { ", " }"],
    ["frame oak { ", " }"],
    ["{", "}"],
    ["/*", "*/"],
  ] as const);
  const at = random.below(text.length + 1);
  const cut = at + random.below(40);
  const tail = random.oneIn(3) ? "" : close.repeat(depth);
  return text.slice(0, at) + open.repeat(depth) + text.slice(at, cut) + tail + text.slice(cut);
}
