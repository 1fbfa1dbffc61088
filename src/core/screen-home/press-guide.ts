import type { Press } from '../press/Press.ts';
import type { Answers, Guide, GuideQuestion } from '../screen-shell/Guide.ts';
import { ASKED, QUESTIONS } from '../text/home-text.ts';
import { numberText, secondsText } from '../text/units-text.ts';
import { parseLength } from '../units/parse-length.ts';
import { parsePressure } from '../units/parse-pressure.ts';
import { parseTemperature } from '../units/parse-temperature.ts';
import { temperatureCToF } from '../units/temperature-c-to-f.ts';
import { nameProblem, optional, problemOf } from './optional-parse.ts';

const Q = QUESTIONS.press;

/** Leads through a press: name, ram, platens, gauge. With `before`, its values are what Enter takes. */
export function pressGuide(before: Press | null): Guide {
  const questions: readonly GuideQuestion[] = [
    { kind: 'text', id: 'name', ...Q.name, initial: before?.name ?? '', problem: nameProblem },
    {
      kind: 'text',
      id: 'bore',
      ...Q.bore,
      initial: before?.ramBoreMm ? `${numberText(before.ramBoreMm, 1)} mm` : '',
      problem: (text) => problemOf(() => optional(text, (given) => parseLength(given, ASKED.bore))),
    },
    {
      kind: 'choice',
      id: 'rams',
      title: Q.rams.title,
      ask: Q.rams.ask,
      choices: [Q.rams.one, Q.rams.two, Q.rams.three, Q.rams.four].map((word, i) => ({
        key: `${i + 1}`,
        word,
        detail: '',
        value: `${i + 1}`,
      })),
      initial: `${before?.rams ?? 1}`,
    },
    {
      kind: 'text',
      id: 'platens',
      ...Q.platens,
      initial: platensText(before),
      problem: (text) => problemOf(() => optional(text, platens)),
    },
    {
      kind: 'text',
      id: 'division',
      ...Q.division,
      initial: before?.gaugeDivisionPsi ? `${numberText(before.gaugeDivisionPsi, 1)} psi` : '',
      problem: (text) => problemOf(() => optional(text, (given) => parsePressure(given, ASKED.division))),
    },
  ];
  return {
    title: Q.title,
    next: (answers) =>
      questions.find(({ id }) => answers[id] === undefined && !(id === 'rams' && answers.bore === '')) ??
      null,
  };
}

/** The press that the answers describe; what was not asked stays as it was. */
export function pressFromAnswers(answers: Answers, before: Press | null): Press {
  return {
    ramRodMm: null,
    timerStartsAt: 'closing',
    timerOffsetS: 0,
    timerStepS: 1,
    ...before,
    name: answers.name ?? '',
    ramBoreMm: optional(answers.bore, (text) => parseLength(text, ASKED.bore)),
    rams: Number(answers.rams ?? before?.rams ?? 1),
    platenSetPointC: optional(answers.platens, platens),
    gaugeDivisionPsi: optional(answers.division, (text) => parsePressure(text, ASKED.division)),
  };
}

function platens(text: string): { readonly upper: number; readonly lower: number } {
  const [first = '', second] = text.split('/');
  const upper = parseTemperature(first, ASKED.upper);
  return { upper, lower: second === undefined ? upper : parseTemperature(second, ASKED.lower) };
}

/** What Enter takes: as stored, else 450F (common practice, no source). */
function platensText(before: Press | null): string {
  if (before === null) return '450F';
  const set = before.platenSetPointC;
  if (set === null) return '';
  const [upper, lower] = [set.upper, set.lower].map((c) => `${numberText(temperatureCToF(c), 0)}F`);
  return upper === lower ? `${upper}` : `${upper}/${lower}`;
}

/** Hold and the like as a text that is read back the same. */
export const durationText = (seconds: number): string => secondsText(seconds, 1);
