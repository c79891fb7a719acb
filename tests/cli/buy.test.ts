import picocolors from 'picocolors';
import { describe, expect, it } from 'vitest';
import { describePurchase } from '../../cli/buying/describePurchase.ts';
import { spareAmount } from '../../cli/commands/buy.ts';
import { purchaseReport } from '../buying/purchaseReport.ts';

describe('an amount to spare', () => {
  it.each([
    ['5%', { kind: 'percent of need', hundredths: 500 }],
    ['12.5 %', { kind: 'percent of need', hundredths: 1250 }],
    ['0.25%', { kind: 'percent of need', hundredths: 25 }],
    ['5% of bought', { kind: 'percent of bought', hundredths: 500 }],
    ['2', { kind: 'sheets', count: 2 }],
    ['1 sheet', { kind: 'sheets', count: 1 }],
  ])('%s', (text, expected) => expect(spareAmount(text)).toEqual(expected));

  it.each(['', 'five', '-1', '5 pieces', '95%', '1.234%', '5% of need'])('is not %j', (text) => {
    expect(() => spareAmount(text)).toThrow('It must be');
  });
});

describe('what the terminal says of a purchase', () => {
  const plain = picocolors.createColors(false);
  const told = describePurchase(
    purchaseReport(6, { kind: 'percent of bought', hundredths: 500, why: 'knots' }),
    plain,
  );

  it('fits into 80 columns', () => {
    expect(told.split('\n').filter((line) => line.length > 80)).toEqual([]);
  });

  it('has both ways to cut, every supplier with its last day, and the reason of the spare', () => {
    for (const words of [
      'together',
      'apart',
      '(yard): order by',
      '(post): order by 2026-03-03',
      'No supplier named',
      '5 % of what is bought (knots)',
      'at the price from 3 on',
    ]) {
      expect(told.replace(/\s+/g, ' ')).toContain(words);
    }
  });
});
