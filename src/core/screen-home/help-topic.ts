import { type HelpTopic, HOME_HELP_TEXT } from '../text/home-help-text.ts';
import type { HomePage } from './HomeState.ts';

/** Which help belongs to a page. */
export function helpTopic(page: HomePage): HelpTopic {
  switch (page.kind) {
    case 'set-up':
      return 'setUp';
    case 'records':
      return page.records.view.kind === 'trial' ? 'trialRecord' : page.records.view.kind;
    default:
      return page.kind;
  }
}

export function helpLines(page: HomePage): readonly string[] {
  return HOME_HELP_TEXT[helpTopic(page)];
}
