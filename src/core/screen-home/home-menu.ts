import { HOME_TEXT } from '../text/home-text.ts';
import type { HomeEntry, HomeFacts } from './HomeFacts.ts';

/** The home's ways on: trial, then what other parts added, then records, pressure, set-up, demo. */
export function homeMenu(facts: HomeFacts): readonly HomeEntry[] {
  const own = (key: keyof typeof HOME_TEXT.menu): HomeEntry => {
    const [word, detail] = HOME_TEXT.menu[key];
    return { key, word, detail };
  };
  return [own('t'), ...facts.entries, own('r'), own('p'), own('s'), own('d')];
}
