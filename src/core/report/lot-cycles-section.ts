import { CYCLE_FLAG } from '../text/bonding-text.ts';
import { FLAG_MEANS, flagWords, LOT_TEXT } from '../text/lot-text.ts';
import { neutralise } from '../text/neutralise.ts';
import { numberText, secondsText, temperatureText } from '../text/units-text.ts';
import { temperatureCToF } from '../units/temperature-c-to-f.ts';
import type { LotReportInput } from './LotReportInput.ts';
import { isClean } from './lot-section.ts';
import type { ReportSection } from './ReportContent.ts';

/** One row a cycle. */
export function lotCyclesSection({ cycles, unit }: LotReportInput): ReportSection {
  const t = (temperatureC: number | null) =>
    numberText(temperatureC === null || unit === 'C' ? temperatureC : temperatureCToF(temperatureC), 0);
  const wanted = (of: (cycle: (typeof cycles)[number]['cycle']) => string) => [
    ...new Set(cycles.map(({ cycle }) => of(cycle))),
  ];
  const utc = cycles.every(({ cycle }) => cycle.closedAt.endsWith('Z'));
  const oneOperator = new Set(cycles.map(({ cycle }) => cycle.initials)).size === 1;
  return {
    heading: LOT_TEXT.cyclesHeading,
    blocks: [
      {
        kind: 'table',
        columns: [
          { heading: LOT_TEXT.number, align: 'right' },
          {
            heading: utc ? LOT_TEXT.closedAtUtc : LOT_TEXT.closedAt,
            align: 'left',
            width: utc ? 70 : 54,
          },
          { heading: LOT_TEXT.held, align: 'right', width: 34 },
          { heading: LOT_TEXT.holdCounted, align: 'left', width: 70 },
          { heading: LOT_TEXT.platens(unit), align: 'left', width: 56 },
          { heading: LOT_TEXT.lowest(unit), align: 'right', width: 40 },
          { heading: LOT_TEXT.peak(unit), align: 'right', width: 28 },
          ...(oneOperator ? [] : [{ heading: LOT_TEXT.operator, align: 'left', width: 40 } as const]),
          { heading: LOT_TEXT.result, align: 'left', wide: true },
        ],
        rows: cycles.map((one) => {
          const { cycle, number } = one;
          return {
            cells: [
              String(number),
              utc ? LOT_TEXT.withoutZone(cycle.closedAt) : LOT_TEXT.moment(cycle.closedAt),
              numberText(cycle.dwellHeldS, 1),
              LOT_TEXT.hold(
                cycle.hold,
                cycle.holdCountedS === null ? null : numberText(cycle.holdCountedS, 1),
              ),
              LOT_TEXT.upperLower(t(cycle.platensAtClosingC.upper), t(cycle.platensAtClosingC.lower)),
              t(cycle.lowestC),
              t(cycle.peakC),
              ...(oneOperator
                ? []
                : [cycle.initials === null ? '—' : neutralise(cycle.initials, { longest: 20 })]),
              flagWords(cycle),
            ],
          };
        }),
      },
      {
        kind: 'paragraphs',
        lines: [
          LOT_TEXT.tableMeans({
            dwell: wanted((cycle) => secondsText(cycle.dwellWantedS, 3)).join(', '),
            hold: wanted((cycle) => secondsText(cycle.holdWantedS)).join(', '),
            target: wanted((cycle) => temperatureText(cycle.targetC, unit)).join(', '),
          }),
        ],
      },
    ],
  };
}

/** Cycles with something noticed, what it means for the part, and room to write what was found and decided. */
export function noticedSection({ cycles }: LotReportInput): ReportSection {
  const noticed = cycles.filter((one) => !isClean(one));
  return {
    heading: LOT_TEXT.noticedHeading,
    blocks:
      noticed.length === 0
        ? [{ kind: 'paragraphs', lines: [LOT_TEXT.noneNoticed] }]
        : [
            {
              kind: 'table',
              columns: [
                { heading: LOT_TEXT.number, align: 'right' },
                { heading: LOT_TEXT.noticed, align: 'left', width: 110 },
                { heading: LOT_TEXT.meaning, align: 'left', wide: true },
                { heading: LOT_TEXT.found, align: 'left', width: 110 },
              ],
              rows: noticed.map(({ number, cycle }) => ({
                cells: [
                  String(number),
                  cycle.flags.map((flag) => CYCLE_FLAG[flag]).join('; ') || flagWords(cycle),
                  cycle.flags.map((flag) => FLAG_MEANS[flag](cycle)).join(' ') || '—',
                  '',
                ],
              })),
            },
          ],
  };
}
