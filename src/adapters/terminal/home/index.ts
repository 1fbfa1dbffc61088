export { createHomeModel, type HomeModel } from './HomeModel.ts';
export { type RunHomeScreenOptions, runHomeScreen } from './run-home-screen.tsx';
