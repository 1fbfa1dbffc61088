/** The live warm-up in each of its states. */
export { WARM_UP_STATES } from '../../../core/screen-warm-up/watched-platens.ts';
