import { describe, expect, it } from 'vitest';
import { createFramePainter } from '../../../src/adapters/terminal/frame-painter.ts';
import type { TerminalWriter } from '../../../src/adapters/terminal/terminal-writer.ts';
import { terminalPicture } from './terminal-picture.ts';

const AT_ONCE = { leastMs: 0, nowMs: () => 0, later: () => {} };

/** A terminal that takes what it is given when told to. */
function slowTerminal() {
  const listeners: (() => void)[] = [];
  const written: string[] = [];
  let busy = false;
  const writer: TerminalWriter = {
    get idle() {
      return !busy;
    },
    write(text) {
      written.push(text);
      busy = true;
    },
    onIdle: (listener) => listeners.push(listener),
    drained: () => Promise.resolve(true),
  };
  const take = () => {
    busy = false;
    for (const listener of listeners) listener();
  };
  return { writer, written, take };
}

describe('createFramePainter', () => {
  it('sends only the rows that differ from what stands there', () => {
    const { writer, written, take } = slowTerminal();
    const painter = createFramePainter(writer, AT_ONCE);
    painter.paint(['one', 'two', 'three']);
    take();
    painter.paint(['one', 'TWO', 'three']);
    take();
    expect(written).toHaveLength(2);
    expect(written[1]).toContain('TWO');
    expect(written[1]).not.toMatch(/one|three/);
    expect(terminalPicture(written.join(''), 4)).toEqual(['one', 'TWO', 'three', '']);
    painter.paint(['one', 'TWO', 'three']);
    expect(written).toHaveLength(2);
  });

  it('keeps only the newest of 100 frames while the terminal stands still, and shows it afterwards', () => {
    const { writer, written, take } = slowTerminal();
    const painter = createFramePainter(writer, AT_ONCE);
    for (let i = 0; i <= 100; i++) painter.paint([`frame ${i}`]);
    expect(written).toHaveLength(1);
    take();
    expect(written).toHaveLength(2);
    expect(terminalPicture(written.join(''), 2)).toEqual(['frame 100', '']);
  });

  it('a shorter frame leaves nothing of the longer one; a cleared window is drawn whole', () => {
    const { writer, written, take } = slowTerminal();
    const painter = createFramePainter(writer, AT_ONCE);
    painter.paint(['a', 'b', 'c']);
    take();
    painter.paint(['a']);
    take();
    expect(terminalPicture(written.join(''), 3)).toEqual(['a', '', '']);
    painter.forget();
    painter.paint(['a', 'b']);
    expect(terminalPicture(written.at(-1) ?? '', 3)).toEqual(['a', 'b', '']);
  });

  it('paints at most ten frames a second, the newest of them, and the last one wanted always', () => {
    const { writer, written, take } = slowTerminal();
    let nowMs = 0;
    const due: { readonly atMs: number; readonly run: () => void }[] = [];
    const pace = {
      leastMs: 100,
      nowMs: () => nowMs,
      later: (run: () => void, afterMs: number) => due.push({ atMs: nowMs + afterMs, run }),
    };
    const painter = createFramePainter(writer, pace);
    const paintedAtMs: number[] = [];
    // A hundred frames wanted in a second: one every 10 ms.
    for (nowMs = 0; nowMs < 1200; nowMs++) {
      for (const one of due.filter(({ atMs }) => atMs <= nowMs)) {
        due.splice(due.indexOf(one), 1);
        one.run();
      }
      if (nowMs < 1000 && nowMs % 10 === 0) painter.paint([`frame ${nowMs / 10}`]);
      if (written.length > paintedAtMs.length) {
        paintedAtMs.push(nowMs);
        take();
      }
    }
    expect(paintedAtMs).toEqual([0, 100, 200, 300, 400, 500, 600, 700, 800, 900, 1000]);
    expect(terminalPicture(written.join(''), 2)).toEqual(['frame 99', '']);
  });

  it('draws nothing once stopped', () => {
    const { writer, written } = slowTerminal();
    const painter = createFramePainter(writer, AT_ONCE);
    painter.stop();
    painter.paint(['a']);
    expect(written).toEqual([]);
  });
});
