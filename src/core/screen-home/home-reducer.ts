import { classifyInput } from '../screen/classify-input.ts';
import { EMPTY_INPUT, type ScreenInput } from '../screen/ScreenInput.ts';
import { wholeWindow } from '../screen-records/chart-window.ts';
import { recordsTakeText, reduceRecords, typeIntoRecords } from '../screen-records/reduce-records.ts';
import { moved } from '../screen-shell/list-window.ts';
import { typeIntoGuide } from '../screen-shell/reduce-guide.ts';
import { SHELL_TEXT } from '../text/home-text.ts';
import { neutralise } from '../text/neutralise.ts';
import { readerGuideStep } from './guide-steps.ts';
import type { HomeEvent, HomeIntent } from './HomeEvent.ts';
import type { HomeState } from './HomeState.ts';
import { helpLines } from './help-topic.ts';
import { type HomeReduced, said } from './home-reduced.ts';
import { reduceHomeScan } from './reduce-home-scan.ts';
import { reduceCloseAnswer, reducePage } from './reduce-page.ts';
import { planThatExists } from './start-home.ts';

/** The one place where the screens around the trial change: state and event in, next state and wishes out. */
export function homeReducer(state: HomeState, event: HomeEvent): HomeReduced {
  const now = { ...state, nowUs: Math.max(state.nowUs, event.atUs) };
  switch (event.kind) {
    case 'facts':
      return [withFacts(now, event.facts), []];
    case 'trial-loaded':
      return [
        now.page.kind === 'records'
          ? { ...now, page: { kind: 'records', records: { ...now.page.records, loaded: event.trial } } }
          : now,
        [],
      ];
    case 'traces-loaded':
      return [withTraces(now, event.traces), []];
    case 'cycles-loaded':
      return [
        now.page.kind === 'records'
          ? { ...now, page: { kind: 'records', records: { ...now.page.records, cycles: event.cycles } } }
          : now,
        [],
      ];
    case 'notice':
      return [said(now, event.text, event.tone), []];
    case 'tick':
      return now.input.text === '' ? [now, []] : reduceInput(now, { kind: 'tick', atUs: event.atUs });
    case 'input':
      return reduceInput(now, event.input);
  }
}

function withFacts(state: HomeState, facts: HomeState['facts']): HomeState {
  const next = { ...state, facts, plan: planThatExists(state.plan, facts) };
  const { page } = next;
  if (page.kind === 'records')
    return {
      ...next,
      page: { kind: 'records', records: { ...page.records, trials: facts.trials, recipes: facts.recipes } },
    };
  // A reader plugged in while its port is asked for joins the choices.
  return page.kind === 'guide' && page.name === 'reader' && page.guide.question.id === 'port'
    ? readerGuideStep(next, page.after)
    : next;
}

function withTraces(
  state: HomeState,
  traces: Extract<HomeEvent, { kind: 'traces-loaded' }>['traces'],
): HomeState {
  const { page } = state;
  if (page.kind !== 'records') return state;
  const shown = page.records.view;
  if (shown.kind !== 'chart' && shown.kind !== 'cycleChart') return state;
  const view = { ...shown, window: wholeWindow(traces) };
  return { ...state, page: { kind: 'records', records: { ...page.records, traces, view } } };
}

function takesText({ page, help, askingQuit }: HomeState): boolean {
  if (help !== null || askingQuit) return false;
  return (
    (page.kind === 'guide' && page.guide.question.kind === 'text') ||
    (page.kind === 'records' && recordsTakeText(page.records))
  );
}

function reduceInput(state: HomeState, raw: Parameters<typeof classifyInput>[1]): HomeReduced {
  if (raw.kind === 'character' && takesText(state)) return [typed(state, raw.character), []];
  const { buffer, inputs } = classifyInput(state.input, raw);
  let next: HomeState = buffer === state.input ? state : { ...state, input: buffer };
  const intents: HomeIntent[] = [];
  for (const input of inputs) {
    const [after, wanted] = reduceClassified(next, input);
    next = after;
    intents.push(...wanted);
  }
  return [next, intents];
}

function typed(state: HomeState, character: string): HomeState {
  const { page } = state;
  const base = { ...state, input: EMPTY_INPUT };
  if (page.kind === 'guide')
    return { ...base, page: { ...page, guide: typeIntoGuide(page.guide, character) } };
  if (page.kind !== 'records') return base;
  return { ...base, page: { kind: 'records', records: typeIntoRecords(page.records, character) } };
}

function reduceClassified(state: HomeState, input: ScreenInput): HomeReduced {
  switch (input.kind) {
    case 'keys-together':
      return [said(state, SHELL_TEXT.keysTogether, 'caution'), []];
    case 'scan':
      return state.help !== null || state.askingQuit || state.askingClose === true
        ? [state, []]
        : reduceHomeScan(state, neutralise(input.text.trim()));
    case 'key':
      return reduceKey(state, input.name);
  }
}

function reduceKey(state: HomeState, name: string): HomeReduced {
  if (state.askingQuit) {
    if (name === 'y' || name === 'enter') return [state, [{ kind: 'quit' }]];
    return name === 'n' || name === 'escape' || name === 'q'
      ? [{ ...state, askingQuit: false }, []]
      : [state, []];
  }
  if (state.askingClose === true) return reduceCloseAnswer(state, name);
  if (state.help !== null) {
    if (name === 'up' || name === 'down')
      return [
        { ...state, help: moved(state.help, name === 'up' ? -1 : 1, helpLines(state.page).length) },
        [],
      ];
    return name === 'escape' || name === 'h' || name === 'tab' || name === 'enter'
      ? [{ ...state, help: null }, []]
      : [state, []];
  }
  const asksChoice = state.page.kind === 'guide';
  if (name === 'tab' || name === '?' || (name === 'h' && !asksChoice)) return [{ ...state, help: 0 }, []];
  if (name === 'f' && !asksChoice && !recordsAsk(state)) {
    const unit = state.unit === 'F' ? 'C' : 'F';
    return [{ ...state, unit }, [{ kind: 'unit', unit }]];
  }
  if (state.page.kind === 'records') {
    const step = reduceRecords(state.page.records, name);
    const told = step.notice === undefined ? state : said(state, step.notice.text, step.notice.tone);
    const page =
      step.state === null ? ({ kind: 'home' } as const) : { kind: 'records' as const, records: step.state };
    return resumable({ ...told, page }, step.intents);
  }
  return reducePage({ ...state, notice: name === 'escape' ? null : state.notice }, name);
}

function recordsAsk({ page }: HomeState): boolean {
  return page.kind === 'records' && page.records.dialog !== null;
}

/** Going on with a stored trial is shown on the start page first, where its reader can be seen. */
function resumable(state: HomeState, intents: readonly HomeIntent[]): HomeReduced {
  const goOn = intents.find((intent) => intent.kind === 'start-trial');
  if (goOn?.kind !== 'start-trial') return [state, intents];
  const { pressName, assemblyName, reader } = goOn.plan;
  const plan = { ...state.plan, pressName, assemblyName, reader: reader ?? realReader(state.plan.reader) };
  return [{ ...state, plan, goOnWith: goOn.goOnWith, page: { kind: 'trial' } }, []];
}

const realReader = (reader: string | null): string | null => (reader === 'simulated' ? null : reader);
