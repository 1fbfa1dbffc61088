import { describe, expect, it } from 'vitest';
import { crossingProbes } from '../../../src/core/probe/crossing-probes.ts';
import type { Probe } from '../../../src/core/probe/Probe.ts';
import { probeCommonPart } from '../../../src/core/probe/probe-common-part.ts';
import { probeTypeClashes } from '../../../src/core/probe/probe-type-clashes.ts';
import { cureText } from '../../../src/core/text/cure-text.ts';
import { reProofText, sensitivityText } from '../../../src/core/text/fit-text.ts';
import { probeLines, probeTypeClashText } from '../../../src/core/text/probe-text.ts';
import { whatIfRefusalText } from '../../../src/core/text/what-if-text.ts';

const TARGET_C = (350 - 32) / 1.8;
const probe: Probe = {
  name: 'K-07\u001b[2J',
  thermocoupleType: 'K',
  toleranceClass: 'astm-standard',
  points: [],
  readerIncluded: false,
  headC: null,
  readerC: null,
};
const calibrated: Probe = {
  ...probe,
  points: [{ temperatureC: 177, errorC: -0.6, standardUncertaintyC: 0.25, calibratedOn: '2026-03-01' }],
};

describe('sentences about figures', () => {
  it('shows ±2.2 °C as ±4 °F, never through the 32, and makes a name from outside safe', () => {
    const text = probeLines(probe, TARGET_C, 'F').join('\n');
    expect(text).toContain('± 4 °F (2.2 °C) by ASTM E230 standard');
    expect(text).not.toContain('\u001b');
  });

  it('says low for a negative error, with its expanded uncertainty and day', () => {
    expect(probeLines(calibrated, TARGET_C, 'F').join('\n')).toContain(
      'reads 1.1 °F (0.6 °C) low, ± 0.9 °F (0.5 °C) (k = 2), 2026-03-01',
    );
  });

  it('turns a sensitivity of −0.54 s/°C into −0.30 s/°F', () => {
    expect(sensitivityText(-0.54, 'F')).toBe('−0.30 s/°F (−0.54 s/°C)');
  });

  it('says which platen moved and which way', () => {
    expect(reProofText({ movedC: -6, which: 'lower', by: 'measured', limitC: 5 }, 'F')).toBe(
      'TO BE RE-PROVED: the lower platen is 10.8 °F (6 °C) colder than in its trial, limit 9 °F (5 °C)',
    );
  });

  it('never says that a cure shortens a dwell', () => {
    const text = cureText(
      {
        activationEnergyKjPerMol: 80,
        referenceC: 177,
        rangeC: { from: 120, to: 200 },
        equivalentS: 300,
        belowRangeS: 20,
        aboveRangeS: 0,
        missingS: 0,
      },
      'C',
    );
    expect(text).toContain('like 300 s at 177 °C');
    expect(text).toContain('20 s below the data sheet');
    expect(text).toContain('It shortens no dwell');
  });

  it('a refusal for nearness names what the probe leaves open', () => {
    expect(
      whatIfRefusalText({ code: 'target-too-close', probePartS: 14, limitS: 12, slopeCPerS: 0.15 }, 'F'),
    ).toContain('the probe alone leaves 14 s open, more than a tenth of the hold (12 s)');
  });
});

describe('the probe in the budget', () => {
  it('uncalibrated is a limit ±2.2 °C that a calibration would shrink to 0.35 °C standard', () => {
    expect(probeCommonPart(probe, TARGET_C)).toEqual({
      code: 'thermocouple-tolerance',
      stated: { limitC: 2.2 },
      remedy: { action: 'calibrate-probe', stated: { standardUncertaintyC: 0.35 } },
    });
  });

  it('calibrated with its reader is a standard uncertainty that holds the cold junction', () => {
    expect(probeCommonPart({ ...calibrated, readerIncluded: true }, TARGET_C)).toEqual({
      code: 'calibration',
      stated: { standardUncertaintyC: 0.25 },
      includes: ['cold-junction'],
    });
  });

  it('is the one whose channel gave the crossing', () => {
    const crossing = (timeS: number) => ({ timeS, standardUncertaintyS: 0.02, slopeCPerS: 1.4 });
    const run = {
      crossing: crossing(60),
      crossings: [
        { channel: 1, role: 'bond-line', crossing: crossing(55) },
        { channel: 2, role: 'bond-line-outer', crossing: crossing(60) },
      ] as const,
    };
    const outer = { ...probe, name: 'K-08' };
    expect(crossingProbes([run, run], [probe, outer])).toEqual([outer]);
    expect(crossingProbes([run], [probe, null])).toEqual([]);
    expect(crossingProbes([{ crossing: null, crossings: [] }], [probe])).toEqual([]);
  });
});

describe('a probe of another type than the reader is set to', () => {
  const channel = (number: number, thermocoupleType: 'K' | 'J' | null) => ({
    number,
    name: null,
    thermocoupleType,
    sends: null,
    resolutionC: null,
  });

  it('is named by channel; an unknown type on either side says nothing', () => {
    const identity = { channels: [channel(1, 'K'), channel(2, 'J'), channel(3, null)] };
    const clashes = probeTypeClashes([probe, probe, probe, null], identity);
    expect(clashes).toEqual([{ channel: 2, probeName: probe.name, probeType: 'K', readerType: 'J' }]);
    expect(probeTypeClashText(clashes[0]!)).toContain('is type K, but the reader is set to type J');
    expect(probeTypeClashes([probe], null)).toEqual([]);
  });
});
