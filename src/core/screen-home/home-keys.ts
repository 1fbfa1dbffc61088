import { SHELL_KEYS } from '../text/home-text.ts';
import type { KeyHint } from '../text/keys-text.ts';
import type { HomeState } from './HomeState.ts';
import { openTrial } from './next-step.ts';

/** The keys that do something now. Keys of the records come from the records. */
export function homeKeys(state: HomeState, records: readonly KeyHint[]): readonly KeyHint[] {
  const k = SHELL_KEYS;
  const { page } = state;
  if (state.askingQuit || state.askingClose === true) return [k.yes, k.no];
  if (state.help !== null) return [k.scroll, k.back];
  switch (page.kind) {
    case 'home':
      return [k.doIt, ...(openTrial(state.facts) === null ? [] : [k.closeTrial]), k.unit, k.help, k.quit];
    case 'guide':
      return page.guide.question.kind === 'text' || page.guide.question.initial !== null
        ? [k.next, k.helpTyping, k.back]
        : [k.helpTyping, k.back];
    case 'choose': {
      const all = page.what === 'press' ? state.facts.presses : state.facts.assemblies;
      return [
        ...(all.length > 1 ? [k.choose] : []),
        ...(all.length > 0 ? [k.take, k.change] : []),
        k.add,
        k.unit,
        k.help,
        k.back,
      ];
    }
    case 'trial': {
      const { pressName, assemblyName, reader } = state.plan;
      const ready = pressName !== null && assemblyName !== null && reader !== null;
      return [...(ready ? [k.start] : []), k.byNumber, k.unit, k.help, k.back];
    }
    case 'set-up':
      return [k.help, k.back];
    case 'lines':
      return [k.scroll, k.help, k.back];
    case 'records':
      return records;
  }
}
