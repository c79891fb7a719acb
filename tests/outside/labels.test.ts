import { describe, expect, it } from 'vitest';
import { stickerFormats } from '../../src/drawing/panelStickerFormats.ts';
import { QUIET_MODULES, qrCode } from '../../src/drawing/panelStickerQr.ts';

describe('QR codes of ISO/IEC 18004', () => {
  // Quiet zone of 4 modules around the symbol: read in a summary of the standard.
  it('have a white border of 4 modules', () => {
    expect(QUIET_MODULES).toBe(4);
  });

  // Side = 17 + 4 · version modules: from memory, and confirmed by a worked figure (version 2 is 25 modules).
  // Capacities in alphanumeric letters at level Q for versions 1 to 5 are 16, 29, 47, 67, 87: from memory.
  it.each([
    [1, 16],
    [2, 29],
    [3, 47],
    [4, 67],
    [5, 87],
  ])(
    'version %i holds %i letters at level Q and has 17 + 4 · version modules a side',
    (version, capacity) => {
      const full = qrCode('A'.repeat(capacity));
      expect(full.version).toBe(version);
      expect(full.modules.size).toBe(17 + 4 * version);
      expect(full.modules.data).toHaveLength(full.modules.size * full.modules.size);
      expect(qrCode('A'.repeat(capacity + 1)).version).toBe(version + 1);
    },
  );
});

describe('label sheets of A4', () => {
  // Makers' tables of label sheets: 63.5 × 38.1 are 21 on a sheet, 70 × 37 are 24, 99.1 × 38.1 are 14.
  // 105 × 37 with 16 and 99.1 × 67.7 with 8 on a sheet: common practice, no source.
  it.each([
    ['63.5x38.1', 21],
    ['70x37', 24],
    ['99.1x38.1', 14],
    ['105x37', 16],
    ['99.1x67.7', 8],
  ])('of %s have %i labels, which fit ISO 216 A4', (name, labels) => {
    const { columns, rows, labelMm, gapMm, pageMm } = stickerFormats.get(name)!;
    expect(columns * rows).toBe(labels);
    expect(pageMm).toEqual([210, 297]);
    expect(columns * labelMm[0] + (columns - 1) * gapMm[0]).toBeLessThanOrEqual(210);
    expect(rows * labelMm[1]! + (rows - 1) * gapMm[1]).toBeLessThanOrEqual(297);
    expect(labelMm.join('x')).toBe(name);
  });
});
