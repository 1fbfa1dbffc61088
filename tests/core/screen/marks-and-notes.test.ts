import { describe, expect, it } from 'vitest';
import { DrivenTrial, heatingC } from './driven-trial.ts';

/** Closed at 10 s, opened at 190 s. */
const marked = () => new DrivenTrial((timeS) => heatingC(timeS, 10, 190)).until(10).key('c');
const typed = (trial: DrivenTrial, text: string) => {
  for (const character of text) trial.key(character);
  return trial.named('enter');
};

describe('note and spoilt run', () => {
  it('N keeps a note with the run; an empty one or Esc keeps none', () => {
    const trial = typed(marked().until(30).key('n'), 'wire moved');
    trial.until(40).key('n').named('enter').until(50).key('n').key('x').named('escape');
    trial.until(190).key('o').until(200);
    expect(trial.results[0]?.notes).toEqual(['wire moved']);
    expect(trial.results[0]?.verdict).toBe('good');
  });

  it('letters typed into a note are never keys: "coxq" marks nothing', () => {
    const trial = typed(marked().until(30).key('n'), 'coxq');
    expect(trial.intents.filter((one) => one.kind === 'mark').map(({ mark }) => mark.kind)).toEqual([
      'press-closed',
      'note',
    ]);
  });

  it('X with a reason makes the run unusable and keeps the reason', () => {
    const trial = typed(marked().until(60).key('x'), 'slipped').until(190).key('o').until(200);
    expect(trial.results[0]?.verdict).toBe('unusable');
    expect(trial.results[0]?.reasons[0]).toMatchObject({ code: 'spoilt', facts: { why: 'slipped' } });
  });

  it('U after O brings the hold back as if O had not been: same soak time, same hold', () => {
    const plain = marked().until(190).key('o').until(200);
    const undone = marked().until(120).key('o').until(122).key('u').until(190).key('o').until(200);
    expect(undone.results).toEqual(plain.results);
  });
});
