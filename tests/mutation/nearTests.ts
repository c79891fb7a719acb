import { resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { describe } from 'vitest';
import { filesOf, mutatedPart } from './parts.ts';

/**
 * Every test near the part of PLYWRIGHT_MUTATED as one file, so that all of them stay loaded while one change after another
 * is tried. The changed files come first: what they do as they are loaded is known before a test does anything.
 */
const part = mutatedPart();
for (const file of filesOf(part.files)) await import(pathToFileURL(resolve(file)).href);

const counted = globalThis as { __stryker__?: { mutantCoverage?: unknown; doneOnLoading?: unknown } };
if (counted.__stryker__?.mutantCoverage !== undefined) {
  counted.__stryker__.doneOnLoading = structuredClone(counted.__stryker__.mutantCoverage);
}

for (const file of filesOf(part.tests)) {
  describe(file, async () => {
    await import(pathToFileURL(resolve(file)).href);
  });
}
