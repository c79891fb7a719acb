import { expect, it } from 'vitest';
import { runRandomJobs } from './randomJobs.ts';

it('random lists and orders give plans that both replays can saw (`npm run random-jobs` tries more)', () => {
  const { lists, orders } = runRandomJobs({ lists: 60, orders: 4, seed: 1, mostPanels: 100 });
  expect([...lists.invalid, ...orders.invalid]).toEqual([]);
  expect(lists.plans).toBeGreaterThan(8);
  expect(orders.plans).toBeGreaterThan(0);
});
