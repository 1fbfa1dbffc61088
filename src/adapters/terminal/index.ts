export { type RunTrialScreenOptions, runTrialScreen, type TrialScreenEnd } from './run-trial-screen.tsx';
export { createTrialScreenModel, type TrialScreenModel } from './TrialScreenModel.ts';
