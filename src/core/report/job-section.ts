import { neutralise } from '../text/neutralise.ts';
import { momentText, REPORT_TEXT } from '../text/report-text.ts';
import { lengthText, pressureText, secondsText, temperatureText } from '../text/units-text.ts';
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
          fact(REPORT_TEXT.ring, ring(assembly.ringOuterDiameterMm, assembly.ringInnerDiameterMm)),
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

/** The gauge pressure where it was stated; else room to write it, beside the band it belongs in. */
function pressureFacts({ pressure, gaugeStated, gaugePsi }: TrialReportInput['job']) {
  if (pressure === null)
    return [fact(REPORT_TEXT.gauge, gaugePsi === null ? null : pressureText(gaugePsi, 1))];
  const band = fact(
    REPORT_TEXT.gaugeBand,
    REPORT_TEXT.bandOf({
      low: pressureText(pressure.bandLowGaugePsi, 1),
      high: pressureText(pressure.bandHighGaugePsi, 1),
      netLow: pressureText(pressure.bandLowPsi),
      netHigh: pressureText(pressure.bandHighPsi),
    }),
  );
  if (!gaugeStated) return [fact(REPORT_TEXT.gauge, null), band];
  const { netFacingLowPsi, netFacingHighPsi } = pressure;
  const spread =
    netFacingLowPsi === null || netFacingHighPsi === null
      ? null
      : REPORT_TEXT.gaugeSpread(pressureText(netFacingLowPsi), pressureText(netFacingHighPsi));
  return [
    fact(REPORT_TEXT.gauge, pressureText(pressure.gaugePsi, 1)),
    fact(
      REPORT_TEXT.netFacing,
      REPORT_TEXT.netFacingOf(pressureText(pressure.netFacingPsi), pressure.side, spread),
    ),
    band,
  ];
}

function ring(outerMm: number | null, innerMm: number | null): string | null {
  return outerMm === null || innerMm === null
    ? null
    : REPORT_TEXT.ringOf(lengthText(outerMm), lengthText(innerMm));
}

/** An empty value leaves a line to write on. */
function fact(name: string, value: string | null) {
  return { name, value: value === null ? '' : neutralise(value) };
}
