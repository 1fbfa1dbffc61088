import type { OperatorMark, RunConditions } from '../reading/StreamEvent.ts';
import { splitWord } from './split-word.ts';
import { unescapeText } from './unescape-text.ts';

/** Reads what `formatMark` wrote; null when it is no mark. */
export function parseMark(words: string): OperatorMark | null {
  const [kind, rest] = splitWord(words);
  if (kind === 'press-closed' || kind === 'opened') {
    if (rest === '') return { kind };
    const ago = /^ago=(\d{1,6}\.\d{3})$/.exec(rest)?.[1];
    return ago === undefined ? null : { kind, agoS: Number(ago) };
  }
  if (kind === 'undo') {
    return rest === 'press-closed' || rest === 'opened' || rest === 'spoilt' ? { kind, what: rest } : null;
  }
  if (kind === 'conditions') {
    const conditions = parseConditions(rest);
    return conditions === null ? null : { kind, conditions };
  }
  const text = unescapeText(rest);
  if (text === null) return null;
  if (kind === 'spoilt') return { kind, reason: text };
  return kind === 'note' ? { kind, text } : null;
}

function parseConditions(text: string): RunConditions | null {
  let ring: RunConditions['ring'] = null;
  let coating: RunConditions['coating'] = null;
  let carrierId: string | null = null;
  let probe: RunConditions['probe'] = null;
  for (const part of text === '' ? [] : text.split(' ')) {
    const equals = part.indexOf('=');
    const value = unescapeText(part.slice(equals + 1));
    const key = part.slice(0, Math.max(equals, 0));
    if (value === null) return null;
    if (key === 'ring' && (value === 'fresh' || value === 're-used')) ring = value;
    else if (key === 'coating' && (value === 'coated' || value === 'bare')) coating = value;
    else if (key === 'probe' && (value === 're-laid' || value === 'left')) probe = value;
    else if (key === 'carrier') carrierId = value;
    else return null;
  }
  return { ring, coating, carrierId, probe };
}
