import type { RandomSource } from '../simulator/create-random.ts';
import type { UncertaintyPart } from './UncertaintyPart.ts';

/** Above this many degrees of freedom Student t is drawn as normal. */
const MANY = 100;

/**
 * One random value of a part, mean 0. 'student' is the scaled and shifted t of JCGM 101, 6.4.9: scale is the
 * standard uncertainty s/√n itself, so its own deviation is larger. Whole degrees of freedom, rounded down.
 */
export function drawPart(part: UncertaintyPart, random: RandomSource): number {
  const u = part.standardUncertaintyS;
  switch (part.shape) {
    case 'normal':
      return u * random.normal();
    case 'rectangular':
      return u * Math.sqrt(3) * (2 * random.uniform() - 1);
    case 'triangular':
      return u * Math.sqrt(6) * (random.uniform() + random.uniform() - 1);
    case 'student':
      return u * drawStudent(Math.max(1, Math.floor(part.degreesOfFreedom)), random);
  }
}

function drawStudent(degreesOfFreedom: number, random: RandomSource): number {
  const numerator = random.normal();
  if (degreesOfFreedom > MANY) return numerator;
  let chiSquare = 0;
  for (let one = 0; one < degreesOfFreedom; one += 1) chiSquare += random.normal() ** 2;
  return numerator / Math.sqrt(chiSquare / degreesOfFreedom);
}
