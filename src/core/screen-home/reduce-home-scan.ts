import { scanIntoGuide } from '../screen-shell/reduce-guide.ts';
import { HOME_TEXT } from '../text/home-text.ts';
import { afterGuideStep } from './guide-steps.ts';
import type { HomeState } from './HomeState.ts';
import { type HomeReduced, said } from './home-reduced.ts';

/** A scan names a press or an assembly: it is taken for the next trial. In a guide it answers the question. */
export function reduceHomeScan(state: HomeState, text: string): HomeReduced {
  const { page, facts } = state;
  if (page.kind === 'guide') return afterGuideStep(state, page, scanIntoGuide(page.guide, text));
  if (page.kind === 'records') return [said(state, HOME_TEXT.scanned(text), 'quiet'), []];
  const same = ({ name }: { readonly name: string }) => name.toLowerCase() === text.toLowerCase();
  const assembly = facts.assemblies.find(same);
  const press = facts.presses.find(same);
  if (assembly === undefined && press === undefined)
    return [said(state, HOME_TEXT.scanUnknown(text), 'caution'), []];
  const plan = {
    ...state.plan,
    ...(assembly === undefined ? {} : { assemblyName: assembly.name }),
    ...(press === undefined ? {} : { pressName: press.name }),
  };
  const told = said({ ...state, plan }, HOME_TEXT.scanned(text), 'good');
  return [{ ...told, goOnWith: null, page: { kind: 'trial' } }, [{ kind: 'save-plan', plan }]];
}
