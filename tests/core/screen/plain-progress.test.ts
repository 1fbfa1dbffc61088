import { describe, expect, it } from 'vitest';
import { createPlainProgress } from '../../../src/core/screen/plain-progress.ts';
import { replayOnScreen } from './replayed-recording.ts';

function linesOf(name: string): readonly string[] {
  const progress = createPlainProgress({ unit: 'F', simulated: true });
  const lines: string[] = [];
  replayOnScreen(name, (_state, event) => lines.push(...progress.lines(event)));
  return lines;
}

describe('createPlainProgress', () => {
  it('tells a shipped good run in order, within 0.15 s of the simulator’s truth', () => {
    const lines = linesOf('wb-150-north-run-1');
    expect(lines[0]).toMatch(/SIMULATED/);
    const first = (pattern: RegExp) => lines.findIndex((line) => pattern.test(line));
    const order = [
      /press closed \(contact\)/,
      /crossing, provisional \(channel 1\)/,
      /crossing, final \(channel 1\)/,
      /hold done/,
      /s opened/,
      /run 1 finished/,
    ].map(first);
    expect(order.every((at) => at >= 0)).toBe(true);
    expect([...order].sort((a, b) => a - b)).toEqual(order);
    // truth-press-closed-s 12.603955, truth-probe-crossing-s 53.073647 in the recording's head
    expect(Math.abs(Number.parseFloat(lines[order[0]!]!) - 12.604)).toBeLessThan(0.15);
    expect(Math.abs(Number.parseFloat(lines[order[2]!]!) - 53.074)).toBeLessThan(0.15);
  });

  it('has no escape sequences and no line without words', () => {
    for (const line of linesOf('trouble-on-the-wire'))
      expect(line).toMatch(/^[^\u0000-\u001f\u007f-\u009f]+$/);
  });

  it('says each loss and return of the reader once', () => {
    const progress = createPlainProgress({ unit: 'F', simulated: false });
    const lost = { kind: 'link', link: { kind: 'lost', sinceUs: 0, cause: 'unplugged' }, atUs: 0 } as const;
    const open = { kind: 'link', link: { kind: 'open' }, atUs: 0 } as const;
    expect([open, lost, lost, open].flatMap((event) => progress.lines(event))).toEqual([
      'Reader lost: unplugged or without power (unplugged). It is taken up again by itself; the run goes on.',
      'Reader back.',
    ]);
  });
});
