import type { StyledRow } from '../chart/StyledRow.ts';
import type { ViewLine } from '../screen/TrialView.ts';
import { recordsView } from '../screen-records/records-view.ts';
import { blockRows } from '../screen-shell/block-rows.ts';
import { choiceRows } from '../screen-shell/choice-rows.ts';
import { guideRows } from '../screen-shell/guide-rows.ts';
import type { PageSize, ShellView } from '../screen-shell/ShellView.ts';
import { textRows } from '../screen-shell/text-rows.ts';
import { HOME_HELP_TEXT } from '../text/home-help-text.ts';
import { CHOOSE_TEXT, HOME_TEXT, SET_UP_TEXT, SHELL_TEXT, TRIAL_PAGE_TEXT } from '../text/home-text.ts';
import { numberText } from '../text/units-text.ts';
import { chooseRows } from './choose-rows.ts';
import type { HomeState } from './HomeState.ts';
import { helpLines } from './help-topic.ts';
import { homeKeys } from './home-keys.ts';
import { homeRows } from './home-rows.ts';
import { readerText } from './known-rows.ts';
import { trialName } from './next-step.ts';
import { trialStartRows } from './trial-start-rows.ts';

/** State of the screens around the trial as a page ready to lay out. Pure: same state, same view. */
export function homeView(state: HomeState): ShellView {
  const { page, help } = state;
  const records = page.kind === 'records' ? recordsView(page.records, state.unit) : null;
  const view: ShellView = {
    title: records?.title ?? titleOf(state),
    badge: records?.badge ?? null,
    body: records?.body ?? ((size) => bodyOf(state, size)),
    message: messageOf(state, records?.message ?? null),
    keys: homeKeys(state, records?.keys ?? []),
    status: statusOf(state),
  };
  if (help === null) return view;
  return {
    ...view,
    title: `${HOME_HELP_TEXT.title}: ${view.title}`,
    message: null,
    body: (size) => ['', ...helpLines(page)].flatMap((line) => helpRow(line, size)).slice(help),
  };
}

/** Keys stand under each other: a line of help keeps its blanks. */
function helpRow(line: string, size: PageSize): readonly StyledRow[] {
  const parts = /^(\S.*?)\s{2,}(.*)$/.exec(line);
  if (parts === null) return textRows(line, size);
  const [, key = '', does = ''] = parts;
  return textRows(does, size, 'plain', 18).map((row, i) =>
    i === 0
      ? [
          { text: `  ${key}`.padEnd(18), role: 'strong' },
          { text: row[0]?.text.slice(18) ?? '', role: 'plain' },
        ]
      : row,
  );
}

function titleOf({ page, facts, goOnWith }: HomeState): string {
  switch (page.kind) {
    case 'guide':
      return page.guide.guide.title;
    case 'set-up':
      return SET_UP_TEXT.title;
    case 'choose':
      return CHOOSE_TEXT[page.what].title;
    case 'trial': {
      const trial = facts.trials.find(({ trialId }) => trialId === goOnWith);
      return trial === undefined
        ? TRIAL_PAGE_TEXT.title
        : `${TRIAL_PAGE_TEXT.goOnTitle}: ${trialName(trial)}, ${trial.when}`;
    }
    case 'lines':
      return page.title;
    default:
      return HOME_TEXT.title;
  }
}

function bodyOf(state: HomeState, size: PageSize): readonly StyledRow[] {
  const { page } = state;
  switch (page.kind) {
    case 'home':
      return homeRows(state, size);
    case 'guide':
      return guideRows(page.guide, size);
    case 'choose':
      return chooseRows(state, page, size);
    case 'trial':
      return trialStartRows(state, size);
    case 'set-up':
      return setUpRows(state, size);
    case 'lines':
      return [
        [],
        ...blockRows(page.word, size, 'strong', 'large'),
        [],
        ...page.lines.flatMap((line) => [...textRows(line, size), []]).slice(page.scroll),
      ];
    case 'records':
      return [];
  }
}

function setUpRows({ facts, ...state }: HomeState, size: PageSize): readonly StyledRow[] {
  const counts = {
    p: facts.presses.map(({ name }) => name).join(', '),
    a: facts.assemblies.map(({ name }) => name).join(', '),
    r: state.plan.reader === null ? '' : readerText({ facts, ...state }),
  };
  const choices = (['p', 'a', 'r'] as const).map((key) => ({
    key,
    word: SET_UP_TEXT.choices[key][0],
    detail: counts[key] === '' ? `${HOME_TEXT.none}: ${SET_UP_TEXT.choices[key][1]}` : counts[key],
    first: false,
  }));
  return [
    [],
    ...blockRows(SET_UP_TEXT.word, size),
    [],
    ...choiceRows(choices, { ...size, rows: size.rows - 6 }, 14),
  ];
}

function messageOf(
  { askingQuit, askingClose, notice, nowUs }: HomeState,
  question: ViewLine | null,
): ViewLine | null {
  if (askingQuit) return { text: SHELL_TEXT.quit, role: 'strong' };
  if (askingClose === true) return { text: HOME_TEXT.closeTrialAsked, role: 'strong' };
  if (question !== null) return question;
  return notice !== null && nowUs < notice.untilUs ? { text: notice.text, role: notice.tone } : null;
}

/** Reader, free disk, store. */
function statusOf(state: HomeState): readonly ViewLine[] {
  const { freeBytes, storePath } = state.facts;
  const free = freeBytes === null ? null : freeBytes / 1e9;
  return [
    { text: HOME_TEXT.status(readerText(state)), role: 'quiet' },
    ...(free === null
      ? []
      : [
          {
            text: SHELL_TEXT.free(numberText(free, free < 10 ? 1 : 0)),
            role: free < 0.5 ? ('caution' as const) : ('quiet' as const),
          },
        ]),
    { text: SHELL_TEXT.store(storePath), role: 'quiet' },
  ];
}
