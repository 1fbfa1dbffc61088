import type { Answers } from '../screen-shell/Guide.ts';
import { type GuideStep, startGuide } from '../screen-shell/reduce-guide.ts';
import { HOME_TEXT, QUESTIONS } from '../text/home-text.ts';
import { assemblyFromAnswers, assemblyGuide } from './assembly-guide.ts';
import type { HomeIntent } from './HomeEvent.ts';
import type { TrialPlan } from './HomeFacts.ts';
import type { GuideName, HomeState, ReturnTo } from './HomeState.ts';
import { type HomeReduced, said } from './home-reduced.ts';
import { pressFromAnswers, pressGuide } from './press-guide.ts';
import { readerFromAnswers, readerGuide } from './reader-guide.ts';

/** The guide through a press; `name`: the one to change, null for a new one. */
export function pressGuideStep(state: HomeState, name: string | null, after: ReturnTo): HomeState {
  const before = state.facts.presses.find((press) => press.name === name) ?? null;
  return opened(state, 'press', startGuide(pressGuide(before)), after);
}

export function assemblyGuideStep(state: HomeState, name: string | null, after: ReturnTo): HomeState {
  const before = state.facts.assemblies.find((assembly) => assembly.name === name) ?? null;
  return opened(state, 'assembly', startGuide(assemblyGuide(before)), after);
}

export function readerGuideStep(state: HomeState, after: ReturnTo): HomeState {
  const guide = readerGuide({
    ports: state.facts.ports ?? [],
    reader: state.plan.reader,
    roles: lastRoles(state),
  });
  return opened(state, 'reader', startGuide(guide), after);
}

/** The channels of the reader that is chosen already; its port is asked for only where it is not. */
export function channelsGuideStep(state: HomeState): HomeState {
  const { reader, readerUnit } = state.plan;
  if (reader === null || reader === 'simulated') return readerGuideStep(state, 'trial');
  const ports = state.facts.ports ?? [];
  const listed = ports.some(({ path }) => path === reader);
  const guide = readerGuide({ ports, reader, roles: lastRoles(state) });
  const known = {
    ...(listed ? { port: reader } : { port: 'typed', path: reader }),
    unit: readerUnit ?? 'reader',
  };
  return opened(state, 'reader', startGuide(guide, known), 'trial');
}

export function initialsGuideStep(state: HomeState): HomeState {
  const question = {
    kind: 'text' as const,
    id: 'initials',
    ...QUESTIONS.initials,
    initial: state.plan.initials ?? '',
    problem: () => null,
  };
  const guide = {
    title: QUESTIONS.initials.title,
    next: (answers: Answers) => (answers.initials === undefined ? question : null),
  };
  return opened(state, 'initials', startGuide(guide), 'trial');
}

function opened(state: HomeState, name: GuideName, step: GuideStep, after: ReturnTo): HomeState {
  return step.kind === 'asking'
    ? { ...state, page: { kind: 'guide', name, guide: step.state, after } }
    : state;
}

/** Channels remembered for the press of the plan; null when none are. */
export function lastRoles({ facts, plan }: HomeState): string | null {
  return plan.pressName === null ? null : (facts.rolesByPress[plan.pressName] ?? null);
}

/** A guide that went on, was left, or came to its end. */
export function afterGuideStep(
  state: HomeState,
  page: Extract<HomeState['page'], { kind: 'guide' }>,
  step: GuideStep,
): HomeReduced {
  if (step.kind === 'asking') return [{ ...state, page: { ...page, guide: step.state } }, []];
  if (step.kind === 'left') return [{ ...state, page: leftTo(page.after) }, []];
  return finished(state, page.name, step.answers, page.after);
}

/** What a finished guide leaves behind, and where it goes on. */
function finished(state: HomeState, name: GuideName, answers: Answers, after: ReturnTo): HomeReduced {
  switch (name) {
    case 'press': {
      const before = state.facts.presses.find((press) => press.name === answers.name) ?? null;
      const press = pressFromAnswers(answers, before);
      return goOn(
        planned(state, { pressName: press.name }),
        after,
        [{ kind: 'save-press', press }],
        press.name,
      );
    }
    case 'assembly': {
      const before = state.facts.assemblies.find((assembly) => assembly.name === answers.name) ?? null;
      const assembly = assemblyFromAnswers(answers, before);
      const kept = { kind: 'save-assembly' as const, assembly };
      return goOn(planned(state, { assemblyName: assembly.name }), after, [kept], assembly.name);
    }
    case 'reader': {
      const { reader, readerUnit, roles } = readerFromAnswers(answers, lastRoles(state));
      const { pressName } = state.plan;
      if (roles !== null && !roles.some((role) => role.startsWith('bond-line')))
        return [said(readerGuideStep(state, after), QUESTIONS.reader.noBondLine, 'caution'), []];
      const keep: HomeIntent[] =
        roles === null || pressName === null ? [] : [{ kind: 'save-roles', pressName, roles }];
      return goOn(planned(state, { reader, readerUnit }), after, keep, null);
    }
    case 'initials':
      return goOn(
        planned(state, { initials: answers.initials === '' ? null : (answers.initials ?? null) }),
        after,
        [],
        null,
      );
  }
}

function planned(state: HomeState, change: Partial<TrialPlan>): HomeState {
  return { ...state, plan: { ...state.plan, ...change } };
}

function goOn(
  state: HomeState,
  after: ReturnTo,
  intents: readonly HomeIntent[],
  saved: string | null,
): HomeReduced {
  const all: HomeIntent[] = [...intents, { kind: 'save-plan', plan: state.plan }];
  const told = saved === null ? state : said(state, HOME_TEXT.saved(saved), 'good');
  return [after === 'first-use' ? firstUse(told) : { ...told, page: leftTo(after) }, all];
}

function leftTo(after: ReturnTo): HomeState['page'] {
  return after === 'trial' ? { kind: 'trial' } : after === 'set-up' ? { kind: 'set-up' } : { kind: 'home' };
}

/** First use: the next thing that is missing, in the order of the trade; then the start of a trial. */
export function firstUse(state: HomeState): HomeState {
  const { plan } = state;
  if (plan.pressName === null) return pressGuideStep(state, null, 'first-use');
  if (plan.assemblyName === null) return assemblyGuideStep(state, null, 'first-use');
  if (plan.reader === null) return readerGuideStep(state, 'first-use');
  return { ...state, goOnWith: null, page: { kind: 'trial' } };
}
