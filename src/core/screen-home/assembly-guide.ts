import { netFacingBand } from '../press/net-facing-band.ts';
import type { Assembly } from '../press/Press.ts';
import { NET_FACING_BAND_PSI } from '../press/pressure.ts';
import type { Answers, Guide, GuideQuestion } from '../screen-shell/Guide.ts';
import { ASKED, QUESTIONS } from '../text/home-text.ts';
import { netFacingText } from '../text/store-lists-text.ts';
import { numberText } from '../text/units-text.ts';
import { parseDuration } from '../units/parse-duration.ts';
import { parseLength } from '../units/parse-length.ts';
import { parsePressureBand } from '../units/parse-pressure-band.ts';
import { parseTemperature } from '../units/parse-temperature.ts';
import { temperatureCToF } from '../units/temperature-c-to-f.ts';
import { nameProblem, optional, problemOf } from './optional-parse.ts';
import { durationText } from './press-guide.ts';

const Q = QUESTIONS.assembly;

/** Leads through an assembly: name, ring, carrier, target, hold. Defaults of target and hold: common practice. */
export function assemblyGuide(before: Assembly | null): Guide {
  const length = (text: string, what: string) => optional(text, (given) => parseLength(given, what));
  const mm = (value: number | null | undefined) => (value ? `${numberText(value, 2)} mm` : '');
  const outer: GuideQuestion = {
    kind: 'text',
    id: 'outer',
    ...Q.outer,
    initial: mm(before?.ringOuterDiameterMm),
    problem: (text) => problemOf(() => length(text, ASKED.outer)),
  };
  const inner = (answers: Answers): GuideQuestion => ({
    kind: 'text',
    id: 'inner',
    ...Q.inner,
    initial: mm(before?.ringInnerDiameterMm),
    problem: (text) =>
      problemOf(() => length(text, ASKED.inner)) ??
      ((length(text, '') ?? 0) >= (length(answers.outer ?? '', '') ?? Number.POSITIVE_INFINITY)
        ? Q.innerTooLarge
        : null),
  });
  const questions = (answers: Answers): readonly GuideQuestion[] => [
    { kind: 'text', id: 'name', ...Q.name, initial: before?.name ?? '', problem: nameProblem },
    outer,
    inner(answers),
    { kind: 'text', id: 'carrier', ...Q.carrier, initial: before?.carrier ?? '', problem: () => null },
    {
      kind: 'text',
      id: 'target',
      ...Q.target,
      initial: before === null ? '350F' : `${numberText(temperatureCToF(before.targetC), 1)}F`,
      problem: (text) => problemOf(() => parseTemperature(text, 'target')),
    },
    {
      kind: 'text',
      id: 'hold',
      ...Q.hold,
      initial: before === null ? '120 s' : durationText(before.holdS),
      problem: (text) => problemOf(() => parseDuration(text, 'hold')),
    },
    {
      kind: 'text',
      id: 'net',
      ...Q.net,
      initial: netFacingText(netFacingBand(before)),
      problem: (text) => problemOf(() => parsePressureBand(text, ASKED.net)),
    },
  ];
  return {
    title: Q.title,
    next: (answers) => questions(answers).find(({ id }) => answers[id] === undefined) ?? null,
  };
}

/** The assembly that the answers describe; what was not asked stays as it was. */
export function assemblyFromAnswers(answers: Answers, before: Assembly | null): Assembly {
  return {
    adhesive: null,
    dataSheetRevision: null,
    highestDwellS: null,
    highestPeakC: null,
    leastRecoveryS: null,
    ...before,
    name: answers.name ?? '',
    ringOuterDiameterMm: optional(answers.outer, (text) => parseLength(text, ASKED.outer)),
    ringInnerDiameterMm: optional(answers.inner, (text) => parseLength(text, ASKED.inner)),
    carrier: optional(answers.carrier, (text) => text),
    targetC: parseTemperature(answers.target ?? '', 'target'),
    holdS: parseDuration(answers.hold ?? '', 'hold'),
    ...netFacingOf(answers.net, before),
  };
}

/** The default left as it stands is common practice and no statement of this ring. */
function netFacingOf(answer: string | undefined, before: Assembly | null): Pick<Assembly, 'netFacingPsi'> {
  if (answer === undefined) return {};
  const { low, high } = parsePressureBand(answer, ASKED.net);
  const isDefault = low === NET_FACING_BAND_PSI.low && high === NET_FACING_BAND_PSI.high;
  return isDefault && before?.netFacingPsi == null ? {} : { netFacingPsi: { low, high } };
}
