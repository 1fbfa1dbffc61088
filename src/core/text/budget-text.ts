import type { BudgetLine, CommonPart, RemedyAction, SoakTimeBudget } from '../uncertainty/SoakTimeBudget.ts';
import type { PartCode } from '../uncertainty/UncertaintyPart.ts';
import { numberText } from './units-text.ts';

export const PART_NAME: Readonly<Record<PartCode, string>> = {
  'run-to-run': 'run to run',
  'single-run': 'crossing and closing of the one run',
  'crossing-and-mark': 'crossing and closing of each run',
  'thermocouple-tolerance': 'probe within its tolerance',
  calibration: 'calibration of the probe',
  'cold-junction': 'cold junction',
  inhomogeneity: 'connector and uneven wire',
  'tip-placement': 'place of the probe tip and heat along the wire',
  'probe-lag': 'lag of the probe',
  'platen-offset': 'platens off their set point',
  clock: 'clock of the reader',
  other: 'other',
};

const ACTION: Readonly<Record<RemedyAction, string>> = {
  'calibrate-probe': 'calibrate the probe',
  'calibrate-cold-junction': 'calibrate the cold junction',
  'relay-probe': 'lay the probe anew',
  'measure-platens': 'measure the platens',
  'more-runs': 'make more runs',
};

/** The sentence for the technician: mean soak time with its expanded uncertainty, common parts included. */
export function budgetSentence(budget: SoakTimeBudget): string {
  const { expandedUncertaintyS, probability } = budget.total;
  const largest = budget.lines[0];
  const from = largest === undefined ? '' : `, most of it from: ${PART_NAME[largest.code]}`;
  const unknown = budget.spreadUnknown ? '; the spread from run to run is unknown and not in it' : '';
  return `soak time ${seconds(budget.meanSoakS)} ± ${seconds(expandedUncertaintyS)} (${numberText(probability * 100, 0)} %)${from}${unknown}`;
}

/** The line that stands beside every dwell: what the parts common to all runs may make it short by. */
export function commonPartSentence(budget: SoakTimeBudget): string {
  if (budget.common === null)
    return 'no part common to all runs was stated: a probe that reads high makes every bond short, unseen';
  const wholeS = Math.ceil(budget.common.upperS * 1000 - 0.5) / 1000;
  return `+${numberText(Math.ceil(wholeS), 0)} s for what is common to all runs (${seconds(budget.common.upperS)}, one-sided ${numberText(budget.common.probability * 100, 0)} %): a probe that reads high makes every bond short, and the live hold cannot show it`;
}

/** The whole budget, largest part first, each with what would shrink it. */
export function budgetLines(budget: SoakTimeBudget): readonly string[] {
  const { total } = budget;
  const how =
    total.method === 'monte-carlo'
      ? 'by drawing the parts (JCGM 101)'
      : `k = ${numberText(total.coverageFactor, 2)}, ${degrees(total.effectiveDegreesOfFreedom)}`;
  return [
    ...budget.lines.flatMap((line) => [
      `${lineText(line)}, ${numberText((line.share ?? 0) * 100, 0)} % of the variance${remedyText(line)}`,
      ...(line.code === 'run-to-run' ? budget.ofWhich.map((part) => `  of which ${lineText(part)}`) : []),
    ]),
    `together: standard ${seconds(total.standardUncertaintyS)}, expanded ${seconds(total.expandedUncertaintyS)} (${numberText(total.probability * 100, 0)} %, ${how})`,
  ];
}

/** Parts common to all runs that nobody stated: they are in no figure. */
export function notStatedLines(
  budget: SoakTimeBudget,
  stated: readonly CommonPart[] = [],
): readonly string[] {
  const asked: readonly PartCode[] = [
    'cold-junction',
    'inhomogeneity',
    'tip-placement',
    'probe-lag',
    'platen-offset',
  ];
  const held = new Set(stated.flatMap((part) => part.includes ?? []));
  const missing = asked.filter((code) => !held.has(code) && budget.lines.every((line) => line.code !== code));
  if (missing.length === 0) return [];
  return [
    `  not stated, so in none of these figures: ${missing.map((code) => PART_NAME[code]).join('; ')} (state them with --part)`,
  ];
}

function lineText(line: BudgetLine): string {
  return `${PART_NAME[line.code]}: standard ${seconds(line.standardUncertaintyS)}, expanded ${seconds(line.expandedS)}`;
}

function remedyText({ remedy, expandedS }: BudgetLine): string {
  if (remedy === null) return '';
  return ` (${ACTION[remedy.action]}: ${numberText(expandedS, 1)} s → ${numberText(remedy.expandedThenS, 1)} s, both expanded)`;
}

function degrees(degreesOfFreedom: number): string {
  if (!Number.isFinite(degreesOfFreedom)) return 'infinite degrees of freedom';
  return `${numberText(degreesOfFreedom, 1)} effective degrees of freedom`;
}

function seconds(value: number): string {
  return `${numberText(value, 2)} s`;
}
