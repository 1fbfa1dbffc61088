import { GUIDE_TEXT } from '../text/home-text.ts';
import type { Answers, Guide, GuideState } from './Guide.ts';

const LONGEST_TEXT = 80;

export type GuideStep =
  | { readonly kind: 'asking'; readonly state: GuideState }
  | { readonly kind: 'done'; readonly answers: Answers }
  | { readonly kind: 'left' };

/** The guide at its first question; `answers` holds what is known already. */
export function startGuide(guide: Guide, answers: Answers = {}): GuideStep {
  return asking(guide, answers, []);
}

/** A character typed into a question that takes text. */
export function typeIntoGuide(state: GuideState, character: string): GuideState {
  if (state.text.length >= LONGEST_TEXT || character < ' ' || character === '\u007f') return state;
  return { ...state, text: state.text + character, trouble: null };
}

/** A key while a question is asked: a choice's key, Enter, or Escape to the question before. */
export function reduceGuide(state: GuideState, name: string): GuideStep {
  const { question } = state;
  if (name === 'escape') return back(state);
  if (question.kind === 'choice') {
    const chosen =
      name === 'enter'
        ? question.choices.find((choice) => choice.value === question.initial)
        : question.choices.find((choice) => choice.key === name);
    return chosen === undefined ? { kind: 'asking', state } : answer(state, chosen.value);
  }
  if (name === 'backspace') {
    return { kind: 'asking', state: { ...state, text: state.text.slice(0, -1), trouble: null } };
  }
  if (name !== 'enter') return { kind: 'asking', state };
  return answerText(state, state.text);
}

/** A scan answers the present question where it takes text. */
export function scanIntoGuide(state: GuideState, text: string): GuideStep {
  return state.question.kind === 'text' ? answerText(state, text) : { kind: 'asking', state };
}

function answerText(state: GuideState, typed: string): GuideStep {
  const { question } = state;
  if (question.kind !== 'text') return { kind: 'asking', state };
  const text = typed.trim() === '' ? question.initial : typed.trim();
  const trouble = question.problem(text);
  return trouble === null
    ? answer(state, text)
    : { kind: 'asking', state: { ...state, trouble: GUIDE_TEXT.trouble(trouble) } };
}

function answer(state: GuideState, value: string): GuideStep {
  const { id } = state.question;
  return asking(state.guide, { ...state.answers, [id]: value }, [...state.answered, id]);
}

function back(state: GuideState): GuideStep {
  const latest = state.answered.at(-1);
  if (latest === undefined) return { kind: 'left' };
  const { [latest]: given = '', ...answers } = state.answers;
  const step = asking(state.guide, answers, state.answered.slice(0, -1));
  return step.kind === 'asking' && step.state.question.kind === 'text'
    ? { kind: 'asking', state: { ...step.state, text: given } }
    : step;
}

function asking(guide: Guide, answers: Answers, answered: readonly string[]): GuideStep {
  const question = guide.next(answers);
  return question === null
    ? { kind: 'done', answers }
    : { kind: 'asking', state: { guide, answers, answered, question, text: '', trouble: null } };
}
