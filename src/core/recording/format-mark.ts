import type { OperatorMark, RunConditions } from '../reading/StreamEvent.ts';
import { escapePeopleText } from './escape-people-text.ts';

/** An operator mark as words: `press-closed`, `press-closed ago=4.250`, `spoilt probe slipped`, `undo opened`, `conditions ring=fresh probe=re-laid`. */
export function formatMark(mark: OperatorMark): string {
  switch (mark.kind) {
    case 'press-closed':
    case 'opened':
      return mark.agoS === undefined ? mark.kind : `${mark.kind} ago=${mark.agoS.toFixed(3)}`;
    case 'spoilt':
      return withText('spoilt', escapePeopleText(mark.reason));
    case 'note':
      return withText('note', escapePeopleText(mark.text));
    case 'undo':
      return `undo ${mark.what}`;
    case 'conditions':
      return withText('conditions', formatConditions(mark.conditions));
  }
}

/** A word and, where there is any, the text after it. */
export function withText(word: string, text: string): string {
  return text === '' ? word : `${word} ${text}`;
}

function formatConditions(conditions: RunConditions): string {
  const carrier = conditions.carrierId;
  return [
    conditions.ring === null ? '' : `ring=${conditions.ring}`,
    conditions.coating === null ? '' : `coating=${conditions.coating}`,
    carrier === null ? '' : `carrier=${escapePeopleText(carrier).replaceAll(' ', '\\x20')}`,
    conditions.probe === null ? '' : `probe=${conditions.probe}`,
  ]
    .filter((part) => part !== '')
    .join(' ');
}
