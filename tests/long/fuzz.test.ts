import { expect, it } from 'vitest';
import { fuzz } from './fuzz.ts';

it('every reader reads a changed text or refuses it in words (`npm run fuzz` tries more)', () => {
  const { cases, casesOf, faults } = fuzz({ seed: 1, cases: 400, now: () => 0 });
  expect(faults).toEqual([]);
  expect(cases).toBe(400);
  expect(casesOf.size).toBeGreaterThan(25);
});
