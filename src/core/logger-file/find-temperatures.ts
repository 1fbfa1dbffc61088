import type { ChannelRole } from '../recording/RecordingEntry.ts';
import { headingMeaning, namesBondLine } from '../wire/plain/heading-words.ts';
import { UNIT_WORDS } from '../wire/plain/temperature-unit.ts';
import type { ColumnProfile } from './column-profile.ts';
import { columnInWords, columnOption, columnsInWords } from './columns-in-words.ts';
import { findColumn } from './find-column.ts';
import type { LoggerHeadings } from './find-headings.ts';
import { LoggerFileProblem } from './LoggerFileProblem.ts';
import type { LoggerFileOptions, LoggerTemperature, LoggerTime } from './LoggerLayout.ts';

export interface FoundTemperatures {
  readonly temperatures: readonly LoggerTemperature[];
  readonly words: string;
}

/** What a heading says a probe is laid on; `bond-line` for the columns the user picked without a telling name. */
function roleOf(name: string | null, fallback: ChannelRole): ChannelRole {
  const text = name ?? '';
  if (/platen/i.test(text))
    return /low|bottom|unter/i.test(text)
      ? 'lower-platen'
      : /up|top/i.test(text)
        ? 'upper-platen'
        : fallback === 'bond-line'
          ? 'upper-platen'
          : fallback;
  if (namesBondLine(text))
    return /out|edge|\bOD\b/i.test(text)
      ? 'bond-line-outer'
      : /inn|\bID\b/i.test(text)
        ? 'bond-line-inner'
        : 'bond-line';
  return /ambient|room/i.test(text) ? 'ambient' : fallback;
}

/** Picks the temperature columns and their units, from the options, the headings and the cells; the bond line first. */
export function findTemperatures(
  headings: LoggerHeadings,
  profiles: readonly ColumnProfile[],
  time: LoggerTime | null,
  options: LoggerFileOptions,
): FoundTemperatures | LoggerFileProblem {
  const { names } = headings;
  const picked = options.temperatureColumns?.length
    ? pickedColumns(options.temperatureColumns, names, profiles)
    : plausible(headings, profiles, time, options);
  if (picked instanceof LoggerFileProblem) return picked;
  const { roles } = options;
  if (roles !== undefined && roles.length !== picked.length) {
    return new LoggerFileProblem(
      'logger-file-option',
      `${roles.length} roles were given for ${picked.length} temperature ${picked.length === 1 ? 'column' : 'columns'}; columns: ${columnsInWords(names)}`,
      'give --roles as many places as --temperature-column is given, in the same order',
    );
  }
  const explicit = (options.temperatureColumns?.length ?? 0) > 0;
  const temperatures: LoggerTemperature[] = [];
  const from = new Set<string>();
  for (const [at, column] of picked.entries()) {
    const written = headings.units[column] ?? profiles[column]?.printedUnit ?? null;
    const foreign = headings.foreignUnits[column];
    if (foreign && !written) {
      return new LoggerFileProblem(
        'logger-file-unit-contradicted',
        `${columnInWords(names, column)} holds ${foreign}, not temperatures`,
        'set the logger to write temperatures, which it works out with its own cold junction, or pick another column with --temperature-column',
      );
    }
    if (written && options.unit && written !== options.unit) {
      return new LoggerFileProblem(
        'logger-file-unit-contradicted',
        `--unit ${options.unit} says ${UNIT_WORDS[options.unit]}, but ${columnInWords(names, column)} says ${UNIT_WORDS[written]}`,
        'leave --unit out to go by the file',
      );
    }
    const unit = written ?? options.unit;
    if (!unit) {
      return new LoggerFileProblem(
        'logger-file-unit-unknown',
        `the unit of ${columnInWords(names, column)} is not in the file`,
        'add --unit C, --unit F or --unit K',
      );
    }
    from.add(`${UNIT_WORDS[unit]} ${written ? 'from the file' : 'as stated by you'}`);
    const fallback = at === 0 || explicit ? 'bond-line' : 'unused';
    temperatures.push({
      column,
      heading: names[column] ?? null,
      unit,
      role:
        roles?.[at] ??
        (at === 0 ? bondLineRole(names[column] ?? null) : roleOf(names[column] ?? null, fallback)),
    });
  }
  const columns = picked.map((column) => columnInWords(names, column)).join(', ');
  return { temperatures, words: `temperature from ${columns}, ${[...from].join(', ')}` };
}

/** The first column is the bond line, whatever else its name says. */
function bondLineRole(name: string | null): ChannelRole {
  const role = roleOf(name, 'bond-line');
  return role.startsWith('bond-line') ? role : 'bond-line';
}

function pickedColumns(
  wanted: readonly string[],
  names: readonly (string | null)[],
  profiles: readonly ColumnProfile[],
): readonly number[] | LoggerFileProblem {
  const columns: number[] = [];
  for (const one of wanted) {
    const column = findColumn(names, one);
    if (column === undefined || profiles[column]?.kind !== 'number') {
      return new LoggerFileProblem(
        'logger-file-column-unknown',
        column === undefined
          ? `the file has no temperature column "${one}"; columns: ${columnsInWords(names)}`
          : `${columnInWords(names, column)} was expected to hold temperatures, but holds no numbers; columns: ${columnsInWords(names)}`,
        'give --temperature-column one of these headings or numbers',
      );
    }
    if (!columns.includes(column)) columns.push(column);
  }
  return columns;
}

function plausible(
  headings: LoggerHeadings,
  profiles: readonly ColumnProfile[],
  time: LoggerTime | null,
  options: LoggerFileOptions,
): readonly number[] | LoggerFileProblem {
  const { names, units } = headings;
  const timed = time?.kind === 'number' ? [time.column] : time?.kind === 'stamp' ? time.columns : [];
  const free = profiles.flatMap((profile, at) =>
    profile.kind === 'number' &&
    !timed.includes(at) &&
    !(at === 0 && !names[0] && profile.countsUp && profiles.length > 1)
      ? [at]
      : [],
  );
  const meanings = new Map(
    free.map((at) => [
      at,
      headings.foreignUnits[at] && !units[at] ? 'other' : headingMeaning(names[at] ?? ''),
    ]),
  );
  // A set point or an output is no measured temperature, whatever its unit.
  const likely = free.filter(
    (at) =>
      meanings.get(at) === 'temperature' ||
      (meanings.get(at) !== 'other' && (units[at] || profiles[at]?.printedUnit)),
  );
  if (options.roles !== undefined && likely.length === options.roles.length) return likely;
  const bond = likely.filter((at) => namesBondLine(names[at] ?? ''));
  const [bondLine] =
    bond.length === 1 ? bond : bond.filter((at) => roleOf(names[at] ?? null, 'unused') === 'bond-line');
  if (bondLine !== undefined) {
    const known = likely.filter((at) => at !== bondLine && roleOf(names[at] ?? null, 'unused') !== 'unused');
    return [bondLine, ...known];
  }
  const open = likely.length > 0 ? likely : free.filter((at) => meanings.get(at) === 'unknown');
  const [only] = open;
  if (open.length === 1 && only !== undefined) return [only];
  const unitMissing = !options.unit && open.every((at) => !units[at] && !profiles[at]?.printedUnit);
  const unit = unitMissing ? ' --unit C (or F, K)' : '';
  const foreign = free.find(
    (at) => headings.foreignUnits[at] && headingMeaning(names[at] ?? '') === 'temperature',
  );
  if (only === undefined && foreign !== undefined) {
    return new LoggerFileProblem(
      'logger-file-temperature-unknown',
      `no column holds temperatures; ${columnInWords(names, foreign)} is in ${headings.foreignUnits[foreign]}; columns: ${columnsInWords(names)}`,
      'set the logger to write temperatures, which it works out with its own cold junction, or add --temperature-column with a heading or number',
    );
  }
  if (only === undefined) {
    return new LoggerFileProblem(
      'logger-file-temperature-unknown',
      `no column is plainly a temperature; columns: ${columnsInWords(names)}`,
      `add --temperature-column with a heading or number${unitMissing ? ' and --unit C (or F, K)' : ''}`,
    );
  }
  const choices = open.slice(0, 12).map((at) => `--temperature-column ${columnOption(names, at)}`);
  return new LoggerFileProblem(
    'logger-file-temperature-unknown',
    `${open.length} columns could be the bond line: ${open
      .slice(0, 12)
      .map((at) => columnInWords(names, at))
      .join(', ')}; columns: ${columnsInWords(names)}`,
    `add ${choices.join(' or ')}${unitMissing ? `, together with${unit}` : ''}`,
  );
}
