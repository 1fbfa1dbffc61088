import { describe, expect, it } from 'vitest';
import { DrivenHome, RECIPE, SHOP } from '../screen-home/shop.ts';

const withdrawn = { withdrawnAt: '2026-11-26T09:10:00Z', initials: 'KT', reason: 'adhesive changed' };
const pressing = {
  gaugeBy: 'worked-out' as const,
  netFacingPsi: 225,
  ringOuterDiameterMm: 212,
  ringInnerDiameterMm: 168,
  ramBoreMm: 200,
  ramRodMm: null,
  rams: 1,
};
const REAL = { ...RECIPE, simulated: false, pressing };
const page = (recipes: readonly (typeof REAL)[], columns: number, rows: number) =>
  new DrivenHome({ ...SHOP, recipes }).keys('r', 'r').text(columns, rows);

describe.each([
  [80, 24],
  [120, 36],
])('recipes of the records at %i × %i', (columns, rows) => {
  it('show gauge pressure, what it rests on, and platen set points of the chosen one', () => {
    const text = page([REAL], columns, rows);
    expect(text).toMatch(/platens set to 450 °F \(232\.2 °C\)/);
    expect(text.replace(/\s+/g, ' ')).toMatch(
      /ram gauge 94 psi \(648 kPa\), worked out: 225 psi \(1551 kPa\) on the ring, 1 ram of 200 mm/,
    );
  });

  it('say which is in force: the real version 2, not the simulated version 3 nor the withdrawn version 4', () => {
    const text = page(
      [{ ...REAL, version: 4, withdrawn }, { ...REAL, version: 3, simulated: true }, REAL] as (typeof REAL)[],
      columns,
      rows,
    );
    const row = (version: number) =>
      text.split('\n').find((line) => new RegExp(`North +${version} `).test(line));
    expect(row(4)).toMatch(/WITHDRAWN/);
    expect(row(3)).toMatch(/SIMULATED/);
    expect(row(3)).not.toMatch(/in force/);
    expect(row(2)).toMatch(/in force/);
    expect(text).toMatch(/withdrawn 2026-11-26 09:10 UTC by KT: adhesive changed/);
  });
});

it('the list of trials has the year; the home’s latest few go without', () => {
  const home = new DrivenHome(SHOP);
  expect(home.text(80, 24)).toMatch(/25 Nov 11:08/);
  expect(home.keys('r').text(80, 24)).toMatch(/25 Nov 2026 11:08/);
});
