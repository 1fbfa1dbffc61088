import { momentText, REPORT_TEXT } from '../text/report-text.ts';
import { lengthText, secondsText, temperatureText } from '../text/units-text.ts';
import { fact } from './fact.ts';
import { pressureFacts } from './pressure-facts.ts';
import type { ReportSection } from './ReportContent.ts';
import type { TrialReportInput } from './TrialReportInput.ts';

/** What was bonded, on which press, to which target, with which pressure. */
export function jobSection({ job, outcome, note, unit }: TrialReportInput): ReportSection {
  const { assembly, press, platenSetPointC } = job;
  const t = (temperatureC: number) => temperatureText(temperatureC, unit);
  const facts = [
    ...(job.trialId === null ? [] : [fact(REPORT_TEXT.trial, job.trialId)]),
    fact(REPORT_TEXT.made, job.startedAt === null ? null : momentText(job.startedAt)),
    fact(REPORT_TEXT.operator, job.operators.join(', ') || null),
    fact(REPORT_TEXT.assembly, job.assemblyName),
    ...(assembly === null
      ? []
      : [
          fact(REPORT_TEXT.carrier, assembly.carrier),
          fact(REPORT_TEXT.ring, ringText(assembly.ringOuterDiameterMm, assembly.ringInnerDiameterMm)),
          fact(REPORT_TEXT.adhesive, REPORT_TEXT.adhesiveOf(assembly.adhesive, assembly.dataSheetRevision)),
        ]),
    fact(REPORT_TEXT.press, job.pressName),
    ...(press?.ramBoreMm == null
      ? []
      : [fact(REPORT_TEXT.ram, REPORT_TEXT.rams(press.rams, lengthText(press.ramBoreMm)))]),
    fact(REPORT_TEXT.target, t(outcome.settings.targetC)),
    fact(REPORT_TEXT.hold, secondsText(outcome.settings.holdS)),
    fact(
      REPORT_TEXT.platens,
      platenSetPointC === null
        ? null
        : REPORT_TEXT.upperLower(t(platenSetPointC.upper), t(platenSetPointC.lower)),
    ),
    ...pressureFacts(job),
    ...(assembly?.highestDwellS == null
      ? []
      : [fact(REPORT_TEXT.highestDwell, secondsText(assembly.highestDwellS))]),
    ...(assembly?.highestPeakC == null ? [] : [fact(REPORT_TEXT.highestPeak, t(assembly.highestPeakC))]),
    ...(note === null ? [] : [fact(REPORT_TEXT.note, note)]),
  ];
  return { heading: REPORT_TEXT.jobHeading, blocks: [{ kind: 'facts', facts }] };
}

/** Ring's outer and inner diameter; null where one is not known. */
export function ringText(outerMm: number | null, innerMm: number | null): string | null {
  return outerMm === null || innerMm === null
    ? null
    : REPORT_TEXT.ringOf(lengthText(outerMm), lengthText(innerMm));
}
