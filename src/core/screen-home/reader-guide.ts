import { CHANNEL_ROLES, type ChannelRole } from '../recording/RecordingEntry.ts';
import type { Answers, Guide, GuideChoice, GuideQuestion } from '../screen-shell/Guide.ts';
import { GUIDE_TEXT, QUESTIONS, ROLE_CHOICE } from '../text/home-text.ts';
import type { PortFacts } from './HomeFacts.ts';

const Q = QUESTIONS.reader;
const MOST_PORTS = 6;
const MOST_CHANNELS = 8;

const SETS: Readonly<Record<'one' | 'two' | 'four', readonly ChannelRole[]>> = {
  one: ['bond-line'],
  two: ['bond-line', 'bond-line-outer'],
  four: ['bond-line', 'bond-line-outer', 'upper-platen', 'lower-platen'],
};

export interface ReaderGuideOptions {
  readonly ports: readonly PortFacts[];
  /** Used last; Enter takes it. */
  readonly reader: string | null;
  /** Channels used last at this press. */
  readonly roles: string | null;
}

/** Leads through the reader: which port, which unit, and what each channel is laid on. */
export function readerGuide(options: ReaderGuideOptions): Guide {
  return { title: Q.title, next: (answers) => nextQuestion(options, answers) };
}

function nextQuestion(options: ReaderGuideOptions, answers: Answers): GuideQuestion | null {
  if (answers.port === undefined) return portQuestion(options);
  if (answers.port === 'simulated') return null;
  if (answers.port === 'typed' && answers.path === undefined) {
    return {
      kind: 'text',
      id: 'path',
      ...Q.path,
      initial: '',
      problem: (text) => (text === '' ? GUIDE_TEXT.pathNeeded : null),
    };
  }
  if (answers.unit === undefined) {
    const choices = (['reader', 'F', 'C'] as const).map((value, i) => ({
      key: `${i + 1}`,
      word: Q.units[value][0],
      detail: Q.units[value][1],
      value,
    }));
    return { kind: 'choice', id: 'unit', ...Q.unit, choices, initial: 'reader' };
  }
  if (answers.channels === undefined) return channelsQuestion(options);
  return answers.channels === 'each' ? channelQuestion(answers) : null;
}

function portQuestion({ ports, reader }: ReaderGuideOptions): GuideQuestion {
  const choices: GuideChoice[] = ports.slice(0, MOST_PORTS).map((port, i) => ({
    key: `${i + 1}`,
    word: port.path,
    detail: port.maker ?? '',
    value: port.path,
  }));
  const [typed, typedDetail] = Q.typed;
  const [simulated, simulatedDetail] = Q.simulated;
  choices.push({ key: 'p', word: typed, detail: typedDetail, value: 'typed' });
  choices.push({ key: 's', word: simulated, detail: simulatedDetail, value: 'simulated' });
  // One that the list does not hold (a link to a port, say) stays a choice.
  if (reader !== null && !choices.some((choice) => choice.value === reader))
    choices.splice(choices.length - 2, 0, { key: 'l', word: Q.usedLast, detail: reader, value: reader });
  const known = choices.some((choice) => choice.value === reader) ? reader : (ports[0]?.path ?? null);
  return { kind: 'choice', id: 'port', ...Q.port, choices, initial: known };
}

function channelsQuestion({ roles }: ReaderGuideOptions): GuideQuestion {
  const set = (key: string, value: 'one' | 'two' | 'four' | 'each'): GuideChoice => ({
    key,
    word: Q.sets[value][0],
    detail: Q.sets[value][1],
    value,
  });
  const last: readonly GuideChoice[] =
    roles === null
      ? []
      : [{ key: 'l', word: Q.sets.last, detail: rolesText(roles.split(',')), value: 'last' }];
  const choices = [...last, set('1', 'one'), set('2', 'two'), set('4', 'four'), set('e', 'each')];
  return { kind: 'choice', id: 'channels', ...Q.channels, choices, initial: roles === null ? 'one' : 'last' };
}

function channelQuestion(answers: Answers): GuideQuestion | null {
  const given = eachChannel(answers);
  if (given.ended || given.roles.length === MOST_CHANNELS) return null;
  const number = given.roles.length + 1;
  const choices: GuideChoice[] = CHANNEL_ROLES.map((role, i) => ({
    key: `${i + 1}`,
    word: ROLE_CHOICE[role],
    detail: '',
    value: role,
  }));
  const [word, detail] = Q.noMore;
  if (given.roles.some((role) => role.startsWith('bond-line')))
    choices.push({ key: '0', word, detail, value: 'no-more' });
  const initial =
    given.roles.length === 0 ? 'bond-line' : choices.length > CHANNEL_ROLES.length ? 'no-more' : null;
  return { kind: 'choice', id: `channel-${number}`, ...Q.channel(number), choices, initial };
}

function eachChannel(answers: Answers): { readonly roles: readonly ChannelRole[]; readonly ended: boolean } {
  const roles: ChannelRole[] = [];
  for (let number = 1; number <= MOST_CHANNELS; number++) {
    const answer = answers[`channel-${number}`];
    if (answer === undefined) break;
    if (answer === 'no-more') return { roles, ended: true };
    roles.push(answer as ChannelRole);
  }
  return { roles, ended: false };
}

/** What the answers say: port or 'simulated', unit, channels (null: those of the simulated reader). */
export function readerFromAnswers(
  answers: Answers,
  lastRoles: string | null,
): {
  readonly reader: string;
  readonly readerUnit: 'F' | 'C' | null;
  readonly roles: readonly ChannelRole[] | null;
} {
  if (answers.port === 'simulated') return { reader: 'simulated', readerUnit: null, roles: null };
  const reader = (answers.port === 'typed' ? answers.path : answers.port) ?? '';
  const readerUnit = answers.unit === 'F' || answers.unit === 'C' ? answers.unit : null;
  const { channels } = answers;
  const roles =
    channels === 'last' && lastRoles !== null
      ? (lastRoles.split(',') as ChannelRole[])
      : channels === 'one' || channels === 'two' || channels === 'four'
        ? SETS[channels]
        : eachChannel(answers).roles;
  return { reader, readerUnit, roles };
}

/** "1 bond line, 2 bond line, outer edge": channels in words. */
export function rolesText(roles: readonly string[]): string {
  return roles.map((role, i) => `${i + 1} ${ROLE_CHOICE[role as ChannelRole] ?? role}`).join(', ');
}
