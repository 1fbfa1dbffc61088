import type { ScreenInput } from '../screen/ScreenInput.ts';
import { moved } from '../screen-shell/list-window.ts';
import { BONDING_TEXT } from '../text/bonding-text.ts';
import type { BondingState, BondingStep } from './BondingState.ts';
import { closeCycle, isRepeat, openCycle, undoMark } from './mark-cycle.ts';
import { say } from './say.ts';

/** A key, or a scanned assembly while a recipe is being chosen. */
export function reduceBondingInput(state: BondingState, input: ScreenInput): BondingStep {
  if (input.kind === 'keys-together') return [say(state, BONDING_TEXT.together), []];
  if (input.kind === 'scan') return reduceScan(state, input.text);
  const { name, atUs } = input;
  if (state.asking === 'quit') {
    if (name === 'y') return [{ ...state, asking: null }, [{ kind: 'quit' }]];
    if (name === 'escape') return [{ ...state, asking: null }, []];
    // A mark goes before a question: the press does not wait for an answer.
    if (name !== 'o' && name !== 'c') return [state, []];
  }
  if (state.help)
    return name === 'escape' || name === 'h' ? [{ ...state, help: false }, []] : marks(state, name, atUs);
  if (name === 'h') return [{ ...state, help: true }, []];
  if (name === 'f') {
    const unit = state.unit === 'F' ? 'C' : 'F';
    return [{ ...state, unit }, [{ kind: 'unit', unit }]];
  }
  if (name === 'q') {
    const busy = state.under !== null || state.pending !== null;
    return busy ? [{ ...state, asking: 'quit' }, []] : [state, [{ kind: 'quit' }]];
  }
  if (!state.cautionsAcknowledged) {
    if (name === 'enter')
      return [{ ...state, cautionsAcknowledged: true }, [{ kind: 'cautions-acknowledged' }]];
    return name === 'c' ? [say(state, BONDING_TEXT.readFirst), []] : [state, []];
  }
  return state.job === null ? choosing(state, name) : marks(state, name, atUs);
}

function marks(state: BondingState, name: string, atUs: number): BondingStep {
  if (!state.cautionsAcknowledged || state.job === null) return [state, []];
  if (name === 'u') return undoMark(state, atUs);
  if (name !== 'c' && name !== 'o' && name !== 'space') return [state, []];
  if (isRepeat(state, atUs)) return [state, []];
  return name === 'o' ? openCycle(state, atUs, 'key') : closeCycle(state, atUs, 'key');
}

function choosing(state: BondingState, name: string): BondingStep {
  const { choices, selected } = state;
  if (name === 'up' || name === 'down')
    return [{ ...state, selected: moved(selected, name === 'up' ? -1 : 1, choices.length) }, []];
  // The reader of the recipe chosen first is being opened.
  if (state.opening) return [state, []];
  const at = name === 'enter' ? selected : /^[1-9]$/.test(name) ? Number(name) - 1 : -1;
  const recipe = choices[at];
  return recipe === undefined
    ? [state, []]
    : [{ ...state, selected: at, opening: true }, [{ kind: 'recipe-chosen', recipe }]];
}

function reduceScan(state: BondingState, text: string): BondingStep {
  if (state.job !== null || state.opening || !state.cautionsAcknowledged)
    return [say(state, BONDING_TEXT.scanIgnored), []];
  const found = state.choices.filter(
    ({ assemblyName }) => assemblyName.toLowerCase() === text.trim().toLowerCase(),
  );
  const [recipe] = found;
  if (recipe === undefined) return [say(state, BONDING_TEXT.scanUnknown(text)), []];
  if (found.length > 1)
    return [{ ...say(state, BONDING_TEXT.scanSeveral), selected: state.choices.indexOf(recipe) }, []];
  return [{ ...state, opening: true }, [{ kind: 'recipe-chosen', recipe }]];
}
