import { describe, expect, it } from 'vitest';
import { progressText } from '../../cli/terminal/progress.ts';

const state = { sheets: 5, costMinor: 1004, boundSheets: 4, boundCostMinor: 1000, moves: 10 };

describe('the line that runs while plans are searched', () => {
  it('says sheets, bound, gap and time of all groups together', () => {
    expect(progressText(2, [state, state], 3.14)).toBe(
      '2 stock groups: 10 sheets, least 8, within 0.4 %; 3.1 s (Ctrl-C keeps this)',
    );
  });

  it('never rounds a gap to nothing, and says when there is none', () => {
    expect(progressText(1, [{ ...state, costMinor: 100_001, boundCostMinor: 100_000 }], 1)).toContain(
      'within 0.1 %',
    );
    expect(progressText(1, [{ ...state, costMinor: 1000 }], 1)).toContain('least 4, best;');
    expect(progressText(1, [{ ...state, boundCostMinor: 0 }], 1)).toContain('no bound yet');
  });

  it('stays on one line of 80 characters', () => {
    const large = { sheets: 18_000, costMinor: 9e9, boundSheets: 17_000, boundCostMinor: 8e9, moves: 10 };
    expect(progressText(100, [large, large], 3600).length).toBeLessThan(80);
  });
});
