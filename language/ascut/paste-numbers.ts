/** A number in a line as it is typed, with its unit if it has one. */
export interface NumberToken {
  readonly text: string;
  readonly start: number;
  readonly end: number;
  readonly hasUnit: boolean;
}

const number =
  /(?<![\w-])(\d+(?:[ -]\d+\/\d+| ?[¼½¾⅐-⅞])|[¼½¾⅐-⅞]|\d+\/\d+|\d*[.,]\d+|\d+)(?:\s*("|″|(?:inches|inch|in|mm|cm|m)(?![\w-])))?(?![\w])/gi;

/** All numbers of a line, in their order: counts and sizes alike. */
export function numbersIn(item: string): readonly NumberToken[] {
  return [...item.matchAll(number)].map((match) => ({
    text: `${match[1]!.replace(",", ".")}${match[2] === undefined ? "" : ` ${match[2]}`}`,
    start: match.index,
    end: match.index + match[0].length,
    hasUnit: match[2] !== undefined,
  }));
}

/** The unit behind the second of two sizes is that of both: `318 x 120 mm`. */
export function ofOneUnit(sizes: readonly string[]): readonly string[] {
  const [first, second] = sizes;
  const ending = / (?:"|″|[a-z]+)$/i;
  const unit = ending.exec(second ?? "")?.[0];
  return first === undefined || unit === undefined || ending.test(first) ? sizes : [first + unit, ...sizes.slice(1)];
}
