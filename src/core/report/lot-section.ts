import { LOT_TEXT } from '../text/lot-text.ts';
import { neutralise } from '../text/neutralise.ts';
import { REPORT_TEXT } from '../text/report-text.ts';
import { fact } from './fact.ts';
import { ringText } from './job-section.ts';
import type { LotCycle, LotReportInput } from './LotReportInput.ts';
import { pressureFacts } from './pressure-facts.ts';
import type { ReportSection } from './ReportContent.ts';

/** Nothing was noticed, and the dwell was seen to its end. */
export const isClean = ({ cycle }: LotCycle): boolean => cycle.result === 'done' && cycle.flags.length === 0;

/** What the lot is, how many cycles it has, and which of them need a look. */
export function lotSection(input: LotReportInput): ReportSection {
  const { cycles, assembly } = input;
  const count = (hold: string) => cycles.filter(({ cycle }) => cycle.hold === hold).length;
  const notMeasured = count('not-measured');
  const noticed = cycles.filter((one) => !isClean(one));
  const operators = [...new Set(cycles.flatMap(({ cycle }) => cycle.initials ?? []))];
  return {
    heading: LOT_TEXT.heading,
    blocks: [
      {
        kind: 'paragraphs',
        lines: [
          LOT_TEXT.countLine({ all: cycles.length, clean: cycles.length - noticed.length }),
          ...(noticed.length === 0 || noticed.length > 8
            ? []
            : [LOT_TEXT.toBeLookedAt(noticed.map(({ number, cycle }) => LOT_TEXT.cycleIs(number, cycle)))]),
          LOT_TEXT.holdLine({
            verified: count('verified'),
            notVerified: count('not-verified'),
            notMeasured,
          }),
          ...(notMeasured > 0 ? [LOT_TEXT.withoutProbe] : []),
        ],
      },
      {
        kind: 'facts',
        facts: [
          fact(LOT_TEXT.lot, input.lot),
          fact(LOT_TEXT.cycles, LOT_TEXT.cyclesOf(cycles.length, numberRanges(cycles))),
          fact(LOT_TEXT.first, moment(cycles[0])),
          fact(LOT_TEXT.last, moment(cycles.at(-1))),
          fact(REPORT_TEXT.operator, operators.join(', ') || null),
          fact(REPORT_TEXT.assembly, input.assemblyName),
          ...(assembly === null
            ? []
            : [
                fact(REPORT_TEXT.carrier, assembly.carrier),
                fact(REPORT_TEXT.ring, ringText(assembly.ringOuterDiameterMm, assembly.ringInnerDiameterMm)),
                fact(
                  REPORT_TEXT.adhesive,
                  REPORT_TEXT.adhesiveOf(assembly.adhesive, assembly.dataSheetRevision),
                ),
              ]),
          fact(REPORT_TEXT.press, input.pressName),
          ...pressureFacts(input),
          ...(input.note === null ? [] : [fact(REPORT_TEXT.note, neutralise(input.note, { longest: 1000 }))]),
        ],
      },
    ],
  };
}

const moment = (one: LotCycle | undefined): string | null =>
  one === undefined ? null : LOT_TEXT.moment(one.cycle.closedAt);

/** "1 to 12, 14, 16 to 20". */
function numberRanges(cycles: readonly LotCycle[]): string {
  const ranges: [number, number][] = [];
  for (const { number } of cycles) {
    const last = ranges.at(-1);
    if (last !== undefined && number === last[1] + 1) last[1] = number;
    else ranges.push([number, number]);
  }
  return ranges.map(([from, to]) => LOT_TEXT.range(from, to)).join(', ');
}
