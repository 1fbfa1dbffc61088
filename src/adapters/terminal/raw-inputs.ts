import type { Key } from 'ink';
import type { RawInput } from '../../core/screen/classify-input.ts';
import type { NamedKey } from '../../core/screen/ScreenInput.ts';

/** One input report of ink as single characters and named keys; chords and unknown keys give nothing. */
export function rawInputs(input: string, key: Key, atUs: number, handUs?: number): readonly RawInput[] {
  const raw = plainInputs(input, key, atUs);
  return handUs === undefined ? raw : raw.map((one) => ({ ...one, handUs }));
}

function plainInputs(input: string, key: Key, atUs: number): readonly RawInput[] {
  const name = nameOf(key);
  if (name !== null) return [{ kind: 'named', name, atUs }];
  if (key.ctrl || key.meta) return [];
  const result: RawInput[] = [];
  for (const character of input) {
    if (character === '\r' || character === '\n') result.push({ kind: 'named', name: 'enter', atUs });
    else if (character === '\u007f' || character === '\b')
      result.push({ kind: 'named', name: 'backspace', atUs });
    else if (character >= ' ') result.push({ kind: 'character', character, atUs });
  }
  return result;
}

function nameOf(key: Key): NamedKey | null {
  if (key.return) return 'enter';
  if (key.escape) return 'escape';
  if (key.backspace || key.delete) return 'backspace';
  if (key.upArrow) return 'up';
  if (key.downArrow) return 'down';
  if (key.leftArrow) return 'left';
  if (key.rightArrow) return 'right';
  return key.tab ? 'tab' : null;
}
