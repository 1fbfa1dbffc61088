import fc from 'fast-check';
import { expect, it } from 'vitest';
import { placeLabels } from '../../../src/core/figure/place-labels.ts';

const box = { left: 0, top: 0, width: 400, height: 400 };
const texts = (spots: Parameters<typeof placeLabels>[0]) =>
  placeLabels(spots, box).flatMap((shape) => (shape.kind === 'text' ? [shape] : []));

it('words of two spots 70 apart do not lie over each other, though both would fit on the right', () => {
  const [first, , second] = texts([
    { x: 190, y: 200, lines: ['▲ 451.8 °F', '+3.2'] },
    { x: 260, y: 200, lines: ['450.9 °F', '+2.2'] },
  ]);
  // 10 characters of a 12 px typeface are about 64 px wide: from 198 they end at 262, over the second spot.
  expect(first?.anchor === 'start' && first.y === second?.y && second.anchor === 'end').toBe(false);
});

it('words stay inside the platen, wherever one spot lies', () => {
  fc.assert(
    fc.property(fc.integer({ min: 20, max: 380 }), fc.integer({ min: 40, max: 360 }), (x, y) => {
      for (const text of texts([{ x, y, lines: ['447.3 °F', '−1.4'] }])) {
        // Source Sans 3: a bold figure is at most 0.53 of its size wide (12).
        const width = text.text.length * 6.36;
        const left =
          text.anchor === 'start' ? text.x : text.anchor === 'end' ? text.x - width : text.x - width / 2;
        expect(left).toBeGreaterThanOrEqual(-1);
        expect(left + width).toBeLessThanOrEqual(401);
      }
    }),
  );
});
