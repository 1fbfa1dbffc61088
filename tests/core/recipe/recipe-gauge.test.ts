import { describe, expect, it } from 'vitest';
import { gaugeMoved, recipeGauge } from '../../../src/core/recipe/recipe-gauge.ts';
import { gaugeMovedText, recipeGaugeText } from '../../../src/core/text/recipe-text.ts';
import { NORTH, WB_212 } from '../screen-home/shop.ts';

// Closed form: gauge = net · (OD² − ID²) ÷ bore². Here (212² − 168²) ÷ 200² = 0.418, so 225 psi needs 94.05 psi.
const NEEDED_PSI = 94.05;
const worked = { press: NORTH, assembly: WB_212, gaugePsi: null, by: 'stated' as const };

describe('the gauge pressure that a recipe keeps', () => {
  it('is worked out for ring and ram: 94.05 psi for 225 psi on the ring, with the sizes it rests on', () => {
    const { gaugePsi, pressing } = recipeGauge(worked);
    expect(gaugePsi).toBeCloseTo(NEEDED_PSI, 9);
    expect(pressing).toMatchObject({
      gaugeBy: 'worked-out',
      ringOuterDiameterMm: 212,
      ringInnerDiameterMm: 168,
      ramBoreMm: 200,
      ramRodMm: null,
      rams: 1,
    });
    expect(pressing?.netFacingPsi).toBeCloseTo(225, 9);
  });

  it('stays as stated or confirmed: 90 psi gives 90 ÷ 0.418 = 215.3 psi on the ring', () => {
    for (const by of ['stated', 'confirmed'] as const) {
      const { gaugePsi, pressing } = recipeGauge({ ...worked, gaugePsi: 90, by });
      expect(gaugePsi).toBe(90);
      expect(pressing?.gaugeBy).toBe(by);
      expect(pressing?.netFacingPsi).toBeCloseTo(90 / 0.418, 9);
    }
  });

  it('without bore, ring, press or assembly only a stated gauge is known, and nothing it rests on', () => {
    for (const part of [
      { press: { ...NORTH, ramBoreMm: null } },
      { press: undefined },
      { assembly: undefined },
      { assembly: { ...WB_212, ringInnerDiameterMm: null } },
      // Sizes that no ring can have.
      { assembly: { ...WB_212, ringInnerDiameterMm: 300 } },
    ]) {
      expect(recipeGauge({ ...worked, ...part })).toEqual({ gaugePsi: null, pressing: null });
      expect(recipeGauge({ ...worked, ...part, gaugePsi: 90 })).toEqual({ gaugePsi: 90, pressing: null });
    }
  });
});

describe('today’s press against the recipe’s gauge', () => {
  const recipe = recipeGauge(worked);

  it('says nothing while ring and ram are the same, or differ by less than half a division (1 psi here)', () => {
    expect(gaugeMoved(recipe, NORTH, WB_212)).toBeNull();
    // 201 mm: 94.05 × (200 ÷ 201)² = 93.12 psi, 0.93 psi off.
    expect(gaugeMoved(recipe, { ...NORTH, ramBoreMm: 201 }, WB_212)).toBeNull();
  });

  it('a bore of 8 in needs 91.11 psi; the recipe’s 94.05 psi would give 232.3 psi', () => {
    const moved = gaugeMoved(recipe, { ...NORTH, ramBoreMm: 203.2 }, WB_212);
    expect(moved?.todayPsi).toBeCloseTo(NEEDED_PSI * (200 / 203.2) ** 2, 9);
    expect(moved?.netFacingPsi).toBeCloseTo(225 * (203.2 / 200) ** 2, 9);
    expect(gaugeMovedText(moved!)).toMatch(/94 psi .*91\.1 psi .*225 psi .*232 psi/);
  });

  it('a stated gauge is held against its own pressure on the ring, not against the middle of the band', () => {
    const stated = recipeGauge({ ...worked, gaugePsi: 90 });
    expect(gaugeMoved(stated, NORTH, WB_212)).toBeNull();
    expect(gaugeMoved(stated, { ...NORTH, rams: 2 }, WB_212)?.todayPsi).toBeCloseTo(45, 9);
  });

  it('an older recipe without sizes is held against the band of 200 to 250 psi: 83.6 to 104.5 psi for this ring', () => {
    expect(gaugeMoved({ gaugePsi: 84 }, NORTH, WB_212)).toBeNull();
    expect(gaugeMoved({ gaugePsi: 83 }, NORTH, WB_212)?.netFacingPsi).toBeCloseTo(83 / 0.418, 9);
    expect(gaugeMoved({ gaugePsi: null }, NORTH, WB_212)).toBeNull();
  });
});

it('the recipe’s line says what the gauge rests on', () => {
  expect(recipeGaugeText(recipeGauge(worked))).toBe(
    'ram gauge 94 psi (648 kPa), worked out: 225 psi (1551 kPa) on the ring, 1 ram of 200 mm (7.874 in) bore',
  );
  expect(recipeGaugeText({ gaugePsi: 40 })).toBe('ram gauge 40 psi (276 kPa)');
  expect(recipeGaugeText({ gaugePsi: null })).toBe('ram gauge not stated');
});
