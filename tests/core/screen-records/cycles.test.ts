import { describe, expect, it } from 'vitest';
import { PAGES } from '../screen-home/shop.ts';

const words = (text: string) => text.replace(/\s+/g, ' ');

describe('cycles in the records', () => {
  it('C reads the log and lists every cycle, newest first, with dwell held and result', () => {
    const page = PAGES.cycles!();
    expect(page.intents.at(-1)).toEqual({ kind: 'load-cycles' });
    const lines = page.text().split('\n');
    const [first, second, third] = ['13:20', '13:10', '09:02'].map((time) =>
      lines.findIndex((line) => line.includes(time)),
    );
    expect([first! < second!, second! < third!]).toEqual([true, true]);
    expect(words(lines[first!]!)).toMatch(/25 Nov 13:20 WB-212 North 2 100\.0 s opened early, more/);
    expect(words(lines[second!]!)).toMatch(/WB-212 North 2 176\.2 s done/);
  });

  it('A shows one assembly after the other, then all; P the presses', () => {
    const page = PAGES.cycles!().keys('a');
    expect(page.text()).toMatch(/cycles of WB-150/);
    expect(page.text()).not.toMatch(/13:10/);
    expect(page.keys('a').text()).toMatch(/cycles of WB-212/);
    expect(page.text()).not.toMatch(/09:02/);
    expect(page.keys('a').text()).toMatch(/13:10[\s\S]*09:02/);
    expect(page.keys('p').text()).toMatch(/cycles on North/);
    // WB-150 was never bonded on North.
    expect(page.keys('a').text()).toMatch(/No cycle of these/);
  });

  it('Enter opens one: result in block letters, then recipe, times, hold, bond line, platens', () => {
    const text = words(PAGES.cycle!().text());
    expect(text).toMatch(/Cycle of WB-212 on North, 25 Nov 13:10/);
    expect(text).toMatch(/Recipe WB-212 on North, version 2/);
    expect(text).toMatch(/Press closed 25 Nov 13:10, marked by the contact/);
    expect(text).toMatch(/Dwell closed 176\.2 s of 175 s/);
    expect(text).toMatch(/hold verified; 121\.5 s counted, 120 s wanted at 350 °F/);
    // 221.3 °C is 430.3 °F.
    expect(text).toMatch(/peak 430\.3 °F \(221\.3 °C\).*inside the band of the recipe’s own runs/);
    expect(text).toMatch(/upper 449\.8 °F \(232\.1 °C\), lower 448\.5 °F \(231\.4 °C\) at closing/);
    expect(text).toMatch(/Noticed nothing/);
    expect(text).toMatch(/█/);
  });

  it('a cycle that was opened early says everything noticed, and has no chart', () => {
    const page = PAGES['cycle, without a reader']!();
    const text = words(page.text());
    expect(text).toMatch(/Noticed opened early; closed before the least recovery was over/);
    expect(text).toMatch(/not measured: no probe/);
    expect(text).toMatch(/none: timed without a reader/);
    const before = page.intents.length;
    page.keys('enter');
    expect(page.intents).toHaveLength(before);
  });

  it('its chart comes from its recording, with a cursor; Esc goes back chart, cycle, list, trials', () => {
    const page = PAGES.cycle!().keys('enter');
    expect(page.intents.at(-1)).toEqual({ kind: 'load-cycle-trace', cycleId: 'c2' });
    const chart = PAGES['chart of a cycle']!();
    expect(chart.text()).toMatch(/at 80\.0? s from press closed/);
    const kinds = [1, 2, 3].map(() => {
      chart.keys('escape');
      return chart.state.page.kind === 'records' ? chart.state.page.records.view.kind : chart.state.page.kind;
    });
    expect(kinds).toEqual(['cycle', 'cycles', 'trials']);
  });

  it('up and down in a cycle open its neighbours within the chosen ones', () => {
    const page = PAGES.cycle!().keys('up');
    expect(page.text()).toMatch(/Cycle of WB-212 on North, 25 Nov 13:20/);
    expect(page.keys('down', 'down', 'down').text()).toMatch(/Cycle of WB-150 on South/);
  });
});
