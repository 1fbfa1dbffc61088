import { recipesInForce } from '../bonding/recipes-in-force.ts';
import type { Segment, StyledRow } from '../chart/StyledRow.ts';
import { asciiText } from '../screen/ascii-text.ts';
import type { PageSize } from '../screen-shell/ShellView.ts';
import { tableRow } from '../screen-shell/table-row.ts';
import { HOME_TEXT, SHELL_TEXT } from '../text/home-text.ts';
import { reProveShort } from '../text/re-prove-text.ts';
import { secondsText } from '../text/units-text.ts';
import { withoutYear } from '../text/when-text.ts';
import type { HomeState } from './HomeState.ts';
import { trialName } from './next-step.ts';

const LABEL_COLUMNS = 11;

/** Reader, presses, assemblies, recipes and the latest trials, as many as there is room for. */
export function knownRows(state: HomeState, size: PageSize): readonly StyledRow[] {
  const { facts, plan } = state;
  const { headings } = HOME_TEXT;
  const top = [
    labelled(headings.reader, readerText(state), size, readerRole(state)),
    labelled(headings.presses, names(facts.presses, plan.pressName, size.columns - LABEL_COLUMNS), size),
    labelled(
      headings.assemblies,
      names(facts.assemblies, plan.assemblyName, size.columns - LABEL_COLUMNS),
      size,
    ),
  ];
  const room = Math.max(2, size.rows - top.length - 4);
  const recipes = recipesInForce(facts.recipes);
  const recipeRoom = Math.max(1, Math.min(recipes.length, Math.ceil(room / 3)));
  const wide = size.columns >= 52;
  const trialRoom = Math.max(1, room - recipeRoom);
  return [
    ...top,
    [],
    heading(
      headings.recipes,
      recipes.length > recipeRoom ? recipes.length - recipeRoom : 0,
      size,
      reProveShort(facts.toBeReProved ?? 0),
    ),
    ...(recipes.length === 0 ? [quiet(HOME_TEXT.noRecipe, size)] : []),
    ...recipes.slice(0, recipeRoom).map((recipe) =>
      tableRow(
        [
          { text: `${trialName(recipe)} v${recipe.version}`, columns: size.columns - 21 },
          { text: secondsText(recipe.dwellS), columns: 8, right: true },
          { text: recipe.simulated ? SHELL_TEXT.simulated : '', columns: 9 },
        ],
        'plain',
        size.ascii,
      ),
    ),
    [],
    heading(headings.trials, Math.max(0, facts.trialCount - trialRoom), size),
    ...(facts.trials.length === 0 ? [quiet(HOME_TEXT.noTrial, size)] : []),
    ...facts.trials.slice(0, trialRoom).map((trial) =>
      tableRow(
        [
          { text: withoutYear(trial.when), columns: 12 },
          { text: trialName(trial), columns: size.columns - (wide ? 33 : 24) },
          ...(wide ? [{ text: HOME_TEXT.runs(trial.runs), columns: 8, right: true }] : []),
          {
            text:
              trial.closedAt === null
                ? HOME_TEXT.openTrial(trial.simulated)
                : trial.simulated
                  ? SHELL_TEXT.simulated
                  : '',
            columns: 9,
          },
        ],
        trial.closedAt === null ? 'caution' : 'plain',
        size.ascii,
      ),
    ),
  ];
}

function labelled(label: string, text: string, size: PageSize, role: Segment['role'] = 'plain'): StyledRow {
  return tableRow(
    [
      { text: label, columns: LABEL_COLUMNS - 1, role: 'quiet' },
      { text, columns: size.columns - LABEL_COLUMNS - 1, role },
    ],
    role,
    size.ascii,
  );
}

function heading(text: string, more: number, { ascii }: PageSize, caution = ''): StyledRow {
  const rest = more > 0 ? `  ${HOME_TEXT.more(more)}` : '';
  return [
    { text, role: 'quiet' },
    ...(caution === '' ? [] : [{ text: `  ${caution}`, role: 'caution' } as const]),
    { text: ascii ? asciiText(rest) : rest, role: 'quiet' },
  ];
}

function quiet(text: string, { columns, ascii }: PageSize): StyledRow {
  return tableRow([{ text, columns: columns - 1 }], 'quiet', ascii);
}

/** The chosen one first; how many more where they do not all fit. */
function names(all: readonly { readonly name: string }[], chosen: string | null, columns: number): string {
  if (all.length === 0) return HOME_TEXT.none;
  const sorted = [...all].sort((a, b) => Number(b.name === chosen) - Number(a.name === chosen));
  let text = '';
  for (const [i, { name }] of sorted.entries()) {
    const joined = text === '' ? name : `${text}, ${name}`;
    const rest = sorted.length - i - 1;
    if (joined.length + (rest > 0 ? 12 : 0) > columns && text !== '')
      return `${text} ${HOME_TEXT.more(rest + 1)}`;
    text = joined;
  }
  return text;
}

export function readerText({ facts, plan }: HomeState): string {
  const { ports } = facts;
  if (plan.reader === 'simulated') return HOME_TEXT.simulated;
  if (ports === null) return HOME_TEXT.looking;
  const [first] = ports;
  if (first === undefined) return HOME_TEXT.noReader;
  const chosen = ports.find((port) => port.path === plan.reader) ?? first;
  return ports.length === 1
    ? HOME_TEXT.pluggedIn(chosen.path)
    : HOME_TEXT.moreReaders(chosen.path, ports.length - 1);
}

function readerRole({ facts, plan }: HomeState): Segment['role'] {
  if (plan.reader === 'simulated' || facts.ports === null) return 'plain';
  return facts.ports.length > 0 ? 'good' : 'quiet';
}
