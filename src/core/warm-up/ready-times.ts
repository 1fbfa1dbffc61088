import { createReadyWatch } from './create-ready-watch.ts';
import type { PlatenRecord } from './gather-platens.ts';
import type { PlatenTrace, WarmUpRules } from './WarmUp.ts';

/** When all platens, and each by itself, first were READY: the recording through the live watch. s from the first reading; null when never. */
export function readyTimes(record: PlatenRecord, traces: readonly PlatenTrace[], rules: WarmUpRules) {
  const none = { all: null, each: traces.map(() => null as number | null) };
  if (rules.setPointC === null) return none;
  const platens = traces.map(({ label, setPointC }) => ({ label, setPointC: setPointC! }));
  const watch = createReadyWatch({ rule: rules.ready, platens });
  const each: (number | null)[] = traces.map(() => null);
  const next = traces.map(() => 0);
  const raw = record.channels;
  for (;;) {
    const timeS = Math.min(...raw.map(({ timesS }, i) => timesS[next[i]!] ?? Number.POSITIVE_INFINITY));
    if (timeS === Number.POSITIVE_INFINITY) break;
    const values = raw.map(({ timesS, valuesC }, i) =>
      timesS[next[i]!] === timeS ? valuesC[next[i]!++]! : null,
    );
    const { platens: now } = watch.accept(timeS, values);
    now.forEach((one, i) => {
      if (one.inside && one.insideForS >= rules.ready.forS) each[i] ??= timeS;
    });
  }
  return { all: watch.state.firstReadyAtS, each };
}
