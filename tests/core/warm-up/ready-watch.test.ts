import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { createRandom } from '../../../src/core/simulator/create-random.ts';
import { createReadyWatch } from '../../../src/core/warm-up/create-ready-watch.ts';
import { SHIPPED_WARM_UPS, shippedWarmUp } from './shipped-warm-up.ts';

const SET_C = 232;
const rule = { bandC: 3, forS: 300 };
const one = () => createReadyWatch({ rule, platens: [{ label: 'upper platen', setPointC: SET_C }] });

/** Feeds one reading a second from a curve. */
function feed(
  watch: ReturnType<typeof one>,
  fromS: number,
  toS: number,
  of: (timeS: number) => number | null,
) {
  for (let timeS = fromS; timeS <= toS; timeS++) watch.accept(timeS, [of(timeS)]);
  return watch.state;
}

describe('READY by rule', () => {
  it('five minutes inside ±3 °C: ready at the 300th second after the band, two readings later for the middle of five', () => {
    const watch = one();
    const state = feed(watch, 0, 1200, (timeS) => (timeS < 600 ? 100 + (timeS * 129) / 600 : SET_C - 2));
    // Reaches 229 °C at 600 s; the middle of five readings follows two readings later.
    expect(state.firstReadyAtS).toBeGreaterThanOrEqual(900);
    expect(state.firstReadyAtS).toBeLessThanOrEqual(903);
    expect(state.ready).toBe(true);
  });

  it('one odd reading breaks nothing; ten seconds outside do, and the five minutes begin anew', () => {
    const watch = one();
    feed(watch, 0, 200, () => SET_C);
    watch.accept(201, [SET_C + 40]);
    expect(feed(watch, 202, 310, () => SET_C).ready).toBe(true);
    expect(feed(watch, 311, 320, () => SET_C + 5).ready).toBe(false);
    expect(feed(watch, 321, 600, () => SET_C).ready).toBe(false);
    expect(feed(watch, 601, 640, () => SET_C).ready).toBe(true);
  });

  it('no reading for more than 10 s is not ready, and not inside', () => {
    const watch = one();
    expect(feed(watch, 0, 400, () => SET_C).ready).toBe(true);
    expect(feed(watch, 401, 409, () => null).ready).toBe(true);
    const state = feed(watch, 410, 415, () => null);
    expect(state.ready).toBe(false);
    expect(state.platens[0]).toMatchObject({ inside: false, temperatureC: null });
    expect(feed(watch, 416, 700, () => SET_C).ready).toBe(false);
    expect(feed(watch, 701, 720, () => SET_C).ready).toBe(true);
  });

  it('two platens: the later one decides', () => {
    const watch = createReadyWatch({
      rule,
      platens: [
        { label: 'upper platen', setPointC: SET_C },
        { label: 'lower platen', setPointC: SET_C },
      ],
    });
    for (let timeS = 0; timeS <= 700; timeS++) watch.accept(timeS, [SET_C, timeS < 200 ? 200 : SET_C]);
    expect(watch.state.firstReadyAtS).toBeGreaterThanOrEqual(500);
    expect(watch.state.firstReadyAtS).toBeLessThanOrEqual(503);
  });

  it('is causal: what comes later changes no earlier state', () => {
    fc.assert(
      fc.property(
        fc.array(fc.oneof(fc.double({ min: 0, max: 400, noNaN: true }), fc.constant(null)), {
          minLength: 5,
          maxLength: 60,
        }),
        fc.nat(59),
        (values, cut) => {
          const states = (list: readonly (number | null)[]) => {
            const watch = one();
            return list.map((value, i) => JSON.stringify(watch.accept(i, [value])));
          };
          expect(states(values.slice(0, cut))).toEqual(states(values).slice(0, cut));
        },
      ),
      { numRuns: 100, seed: 7 },
    );
  });

  it('any numbers, also none at all, give a finite estimate or none', () => {
    fc.assert(
      fc.property(fc.array(fc.double(), { minLength: 1, maxLength: 200 }), (values) => {
        const watch = one();
        values.forEach((value, i) => {
          const { estimate } = watch.accept(i * 3, [value]);
          if (estimate === null) return;
          expect(Number.isFinite(estimate.earliestInS + estimate.latestInS)).toBe(true);
          expect(estimate.earliestInS).toBeGreaterThanOrEqual(0);
          expect(estimate.earliestInS).toBeLessThanOrEqual(estimate.likelyInS);
          expect(estimate.likelyInS).toBeLessThanOrEqual(estimate.latestInS);
        });
      }),
      { numRuns: 200, seed: 3 },
    );
  });

  it('refuses a band of 0 °C and no platen', () => {
    expect(() => createReadyWatch({ rule: { bandC: 0, forS: 300 }, platens: [] })).toThrow(
      /READY rule requires/,
    );
    expect(() => createReadyWatch({ rule, platens: [] })).toThrow(/READY rule requires/);
  });
});

describe('estimate of when ready', () => {
  it('an exponential approach (τ 200 s): from half-way on the true time lies in the range', () => {
    const random = createRandom(4);
    const watch = one();
    const curve = (timeS: number) => SET_C - 208 * Math.exp(-timeS / 200);
    const trueReadyS = 200 * Math.log(208 / 3) + 300;
    for (let timeS = 0; timeS < 800; timeS++) {
      const { estimate } = watch.accept(timeS, [curve(timeS) + 0.15 * random.normal()]);
      if (timeS < 200 || timeS % 20 !== 0) continue;
      expect(estimate).not.toBeNull();
      expect(timeS + estimate!.earliestInS).toBeLessThan(trueReadyS + 15);
      expect(timeS + estimate!.latestInS).toBeGreaterThan(trueReadyS - 15);
    }
  });

  it('a straight climb that stops in the band: the earliest is right to 5 s', () => {
    const watch = one();
    const curve = (timeS: number) => Math.min(SET_C, 24 + 0.2 * timeS);
    const trueReadyS = (SET_C - 3 - 24) / 0.2 + 300;
    for (let timeS = 0; timeS < 1000; timeS++) {
      const { estimate } = watch.accept(timeS, [curve(timeS)]);
      if (timeS > 200 && timeS % 50 === 0)
        expect(Math.abs(timeS + estimate!.earliestInS - trueReadyS)).toBeLessThan(5);
    }
  });

  // READY as the rule first could give it: every platen inside the band for the first time, and 300 s more. A platen that
  // leaves the band again, as South's lower one does at ±10 °F, is later than anybody can know before.
  it.each([
    ...[1, 2, 3].map((number) => [`warm-up-north-${number}`, 5, 60] as const),
    ...SHIPPED_WARM_UPS.map((name) => [name, 10, name.includes('south') ? 115 : 65] as const),
  ])(
    '%s, ±%i °F: from half-way on the range holds the true time to 15 s, the likely one within 15 %% of the rest or %i s',
    (name, bandF, withinS) => {
      const { record, head } = shippedWarmUp(name);
      const [upper, lower] = record.channels;
      const setPoint = head.platenSetPointC!;
      const watch = createReadyWatch({
        rule: { bandC: bandF / 1.8, forS: 300 },
        platens: [
          { label: 'upper platen', setPointC: setPoint.upper },
          { label: 'lower platen', setPointC: setPoint.lower },
        ],
      });
      const states = upper!.timesS.map((timeS, i) =>
        watch.accept(timeS, [upper!.valuesC[i]!, lower!.valuesC[i]!]),
      );
      const firstInside = states.find(({ platens }) => platens.every(({ inside }) => inside))!.timeS!;
      const readyS = firstInside + 300;
      const powerOnS = Number(head.further['truth-power-on-s']);
      let looked = 0;
      for (const { timeS, estimate } of states) {
        if (timeS! < (powerOnS + readyS) / 2 || timeS! >= firstInside) continue;
        looked += 1;
        const rest = readyS - timeS!;
        expect(estimate, `at ${timeS} s`).not.toBeNull();
        expect(estimate!.earliestInS, `earliest at ${timeS} s`).toBeLessThan(rest + 15);
        expect(estimate!.latestInS, `latest at ${timeS} s`).toBeGreaterThan(rest - 15);
        expect(Math.abs(estimate!.likelyInS - rest), `likely at ${timeS} s`).toBeLessThan(
          Math.max(0.15 * rest, withinS),
        );
      }
      expect(looked).toBeGreaterThan(300);
    },
  );

  it('a swing of the heater cycle about a level 4 °C low is no approach: no estimate', () => {
    const watch = one();
    const random = createRandom(9);
    const swing = (timeS: number) =>
      SET_C - 5 + 0.8 * Math.sin((2 * Math.PI * timeS) / 45) + 0.1 * random.normal();
    const told = Array.from({ length: 900 }, (_, timeS) => watch.accept(timeS, [swing(timeS)]).estimate);
    // A minute holds one cycle and a third: what is left over looks like a slope now and then.
    expect(told.slice(300).filter((estimate) => estimate !== null).length).toBeLessThan(150);
  });

  it('a platen that stays 8 °C low gets no estimate once it stands still', () => {
    const watch = one();
    const state = feed(watch, 0, 3000, (timeS) => SET_C - 8 - 200 * Math.exp(-timeS / 200));
    expect(state.estimate).toBeNull();
    expect(state.ready).toBe(false);
  });
});
