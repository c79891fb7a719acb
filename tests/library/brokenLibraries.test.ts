import fc from 'fast-check';
import { expect, test } from 'vitest';
import { readLibrary } from '../../src/library/index.ts';
import { mutations } from '../helpers/mutateText.ts';
import { smallLibrary } from '../helpers/smallLibrary.ts';

const paths = [...smallLibrary().keys()];

test('a library changed at random is read or refused in words, and never throws', () => {
  fc.assert(
    fc.property(fc.constantFrom(...paths), mutations, (path, mutate) => {
      const files = smallLibrary();
      files.set(path, mutate(files.get(path)!));
      const read = readLibrary(files, 'libraries/small');
      expect(read.ok).toBe(read.findings.every((finding) => finding.severity !== 'error'));
      for (const finding of read.findings) {
        expect(paths).toContain(finding.place?.file);
        expect(finding.place?.line, finding.code).toBeGreaterThan(0);
        expect(finding.message).toMatch(/^[^\p{Cc}\p{Cs}]{5,}\.$/u);
        expect(`${finding.found}${finding.expected}${finding.nearest}${finding.advice}`).not.toMatch(
          /\p{Cc}|object Object/u,
        );
      }
      if (!read.ok) return;
      const lengths = [
        ...[...read.value.boards.values()].map((board) => board.thicknessUm),
        ...read.value.sheets.flatMap((sheet) => [sheet.lengthUm, sheet.widthUm]),
        ...[...read.value.saws.values()].flatMap((saw) => [saw.kerfUm, ...Object.values(saw.trimUm)]),
      ];
      for (const um of lengths) {
        expect(Number.isInteger(um) && um >= 0 && um <= 100_000_000).toBe(true);
      }
    }),
    { numRuns: 200 },
  );
});

test('a file of random characters is refused in words', () => {
  fc.assert(
    fc.property(fc.constantFrom(...paths), fc.string({ unit: 'binary', maxLength: 200 }), (path, text) => {
      const files = smallLibrary();
      files.set(path, text);
      const read = readLibrary(files, 'libraries/small');
      expect(read.ok).toBe(false);
      expect(read.findings.some((finding) => finding.place?.file === path)).toBe(true);
    }),
    { numRuns: 100 },
  );
});

test('a file of thousands of wrong entries is told about in bounded time and length', () => {
  const files = smallLibrary();
  files.set(
    'libraries/small/boards.yaml',
    Array.from({ length: 5000 }, (_, i) => `board-${i}: { titel: x }`).join('\n'),
  );
  const start = performance.now();
  const { findings } = readLibrary(files, 'libraries/small');
  expect(findings.length).toBeLessThan(200);
  expect(performance.now() - start).toBeLessThan(10_000);
});
