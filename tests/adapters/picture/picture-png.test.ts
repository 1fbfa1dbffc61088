import { describe, expect, it } from 'vitest';
import { picturePng } from '../../../src/adapters/picture/picture-png.ts';
import { overlayChart } from '../../../src/core/figure/overlay-chart.ts';
import { pictureSvg } from '../../../src/core/figure/picture-svg.ts';
import { overlayOf } from '../../../src/core/report/overlay-of.ts';
import { typefaceFiles } from '../../../src/program/reports/typeface.ts';
import { trialReportInput } from '../../core/report/trial-report-input.ts';
import { trialRun } from '../../core/trial/trial-run.ts';

const picture = overlayChart(overlayOf(trialReportInput([trialRun(53), trialRun(54)]), false));
const svg = pictureSvg(picture, { alone: true });
const { name, regular, bold } = typefaceFiles();
const png = picturePng(svg, { widthPx: 1440, fontFiles: [regular, bold], typeface: name });
const view = new DataView(png.buffer, png.byteOffset);

describe('a chart as PNG', () => {
  // PNG (ISO/IEC 15948), 5.2: signature; 11.2.2: width and height in IHDR at bytes 16 and 20.
  it('is a PNG of the asked width and the picture’s own proportions', () => {
    expect([...png.subarray(0, 8)]).toEqual([137, 80, 78, 71, 13, 10, 26, 10]);
    expect(view.getUint32(16)).toBe(1440);
    expect(view.getUint32(20)).toBe(Math.ceil((picture.height * 1440) / picture.width));
  });

  it('is written in the given typeface: without it the words are missing', () => {
    const mute = picturePng(svg, { widthPx: 1440, fontFiles: [], typeface: name });
    expect(mute.length).toBeLessThan(png.length * 0.9);
  });

  it('of the same picture is the same to the last byte', () => {
    const again = picturePng(svg, { widthPx: 1440, fontFiles: [regular, bold], typeface: name });
    expect(Buffer.compare(Buffer.from(again), Buffer.from(png))).toBe(0);
  });
});
