import fc from 'fast-check';
import { expect, it } from 'vitest';
import { checkAnswers } from '../../src/check/check-answers.js';
import { randomRulebook } from '../decide/random-rulebook.js';

it('says what was given up (W510), and warns of nothing that an unlimited search would not warn of', () => {
  let givenUp = 0;
  for (const rulebook of fc.sample(randomRulebook, { seed: 4, numRuns: 60 })) {
    const known = new Set(checkAnswers(rulebook).map(({ code, place, message }) => `${code} ${place.line} ${message}`));
    for (const { code, place, message } of checkAnswers(rulebook, { conflicts: 0, regions: 40 })) {
      if (code === 'W510') givenUp += 1;
      // A gap may be described by another region of it when fewer questions are allowed.
      else if (code !== 'W505') expect(known).toContain(`${code} ${place.line} ${message}`);
      else expect([...known].some((each) => each.startsWith('W505'))).toBe(true);
    }
  }
  expect(givenUp).toBeGreaterThan(0);
});
