import type { MergeReport } from '../exchange/MergeReport.ts';
import { neutralise } from './neutralise.ts';
import { counted } from './verification-text.ts';

const THINGS = {
  presses: ['press', 'presses'],
  assemblies: ['assembly', 'assemblies'],
  layouts: ['layout', 'layouts'],
  trials: ['trial', 'trials'],
  recordings: ['recording', 'recordings'],
  continued: ['recording continued', 'recordings continued'],
  runResults: ['run result', 'run results'],
  decisions: ['decision', 'decisions'],
  recipes: ['recipe version', 'recipe versions'],
  withdrawals: ['recipe withdrawal', 'recipe withdrawals'],
  probes: ['probe record', 'probe records'],
  cycles: ['bonding cycle', 'bonding cycles'],
} as const satisfies Record<keyof MergeReport['added'], readonly [string, string]>;

/** What merging another store came to. */
export function mergeLines(report: MergeReport): readonly string[] {
  const parts = Object.entries(THINGS).flatMap(([key, [one, many]]) => {
    const count = report.added[key as keyof MergeReport['added']];
    return count === 0 ? [] : [`${count} ${count === 1 ? one : many}`];
  });
  const other = neutralise(report.otherPath);
  return [
    parts.length === 0 ? `${other}: nothing new.` : `${other}: added ${parts.join(', ')}.`,
    ...report.renamedTrials.map(
      ({ from, to }) =>
        `Trial ${neutralise(from)} of the other store is now ${neutralise(to)}: its id is taken here by a trial of another assembly or press.`,
    ),
    ...report.renumbered.map(renumberedLine),
    ...differenceLines(report),
  ];
}

function renumberedLine({
  assemblyName,
  pressName,
  from,
  to,
  why,
}: MergeReport['renumbered'][number]): string {
  const what = `${neutralise(assemblyName)} on ${neutralise(pressName)}`;
  return why === 'number-taken'
    ? `Recipe ${what}: version ${from} of the other store is version ${to} here.`
    : `Recipe ${what}: version ${to} repeats the one accepted last (version ${from}), so that it stays in force.`;
}

function differenceLines({ differences }: MergeReport): readonly string[] {
  if (differences.length === 0) return [];
  return [
    `${counted(differences.length, 'difference')}, where this store kept its own:`,
    ...differences.map(({ kind, subject, details }) => {
      const said = details.map(
        ({ what, own, other }) =>
          `${what.replaceAll('_', ' ')} ${neutralise(own, { longest: 60 })} here, ${neutralise(other, { longest: 60 })} there`,
      );
      return `  ${kind.replace('-', ' ')} ${neutralise(subject)}: ${said.join('; ')}`;
    }),
  ];
}
