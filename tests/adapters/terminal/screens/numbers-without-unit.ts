/** Number, then what must follow it to be a quantity: a unit, or another number of the same unit ("19 to 21 s", "212 / 168 mm"). */
const UNIT = String.raw`°[FC]|[FC]\b|s\b|ms\b|min\b|h\b|psi\b|PSI\b|kPa\b|bar\b|mm\b(?:\^2)?|in\b(?:\^2)?|GB\b|%`;
const NUMBER = String.raw`\d+(?:\.\d+)?(?: \d+/\d+)?`;
const QUANTITY = new RegExp(
  String.raw`${NUMBER}(?: ?(?:to|/|±|\+/-|of|×|x) ?${NUMBER})* ?(?:${UNIT}|(?:readings?|lines?)/s)(?:/s)?`,
  'gu',
);
/** Counted things, each with its word. */
const COUNTED =
  /\d+(?: to \d+)? (?:more|runs?|lost|lines|rams?|channels|cycles|readings|times|read plausibly|of all)/gu;
/** Names and places that hold figures: assemblies, ports, files, standards, versions, runs, days, and what was typed. */
const NAMES = [
  /"[^"]*"/gu,
  /\S+_(?= )/gu,
  /WB-\d+/gu,
  /\/dev\/\w+/gu,
  /COM\d+/gu,
  /JCGM \d+/gu,
  /store \S+/gu,
  /\d{4}-\d\d-\d\d( \d\d:\d\d UTC)?/gu,
  /\d+ [A-Z][a-z]{2}(?: \d{4})? \d\d:\d\d/gu,
  /\d+:\d\d(?: of \d+:\d\d)?(?: min)?/gu,
  /(?<=^ | {2})\w (?=run \d)/gu,
  /(?:runs?|version|channel|Run|Channel) \d+(?:(?:, | and | to )\d+)*/gu,
  /\d (?=bond line|outer edge|upper platen|lower platen)/gu,
];
/** Beside a table's headings: which of the runs stand in it. */
const SHOWN_RUNS = /runs \d+ to \d+ of \d+ runs/u;
const SPEED = /[×x] ?\d+|\d+–\d+/gu;

/**
 * Numbers of a screen's text that stand without their unit. A number in a table's column counts as told by its heading where
 * that names a count (run, runs, count, version), and one on a chart's temperature axis by the unit above the axis.
 */
export function numbersWithoutUnit(lines: readonly string[]): readonly string[] {
  const found: string[] = [];
  let counts: readonly (readonly [from: number, to: number])[] = [];
  let axis = false;
  for (const line of lines) {
    if (/^\s{2,5}°?[FC]\s/u.test(`${line} `)) axis = true;
    else if (axis && /^\s*[└+]/u.test(line)) axis = false;
    const shown = axis ? besideChart(line) : line;
    const headings = [...line.matchAll(/\b(?:runs?|count|version)\b/gu)];
    if (
      headings.length > 0 &&
      /\b(?:soak|verdict|begun|accepted|press)\b/u.test(line) &&
      !/\d/u.test(line.replace(SHOWN_RUNS, ''))
    )
      counts = headings.map((one) => [one.index - 4, one.index + one[0].length + 1]);
    let rest = shown;
    for (const pattern of [...NAMES, QUANTITY, COUNTED, SPEED])
      rest = rest.replace(pattern, (told) => '_'.repeat(told.length));
    for (const number of rest.matchAll(/(?<![\w.])\d+(?:\.\d+)?/gu)) {
      const at = number.index;
      const counted = counts.some(([from, to]) => at >= from && at <= to);
      if (!counted) found.push(`${number[0]} in "${line.trim()}"`);
    }
  }
  return found;
}

/** What stands to the right of a chart's row; the chart's own figures are its axis and the numbers of its runs. */
function besideChart(line: string): string {
  const edge = Math.max(line.lastIndexOf('│'), line.lastIndexOf('|'));
  return edge < 20 ? '' : ' '.repeat(edge + 1) + line.slice(edge + 1);
}
