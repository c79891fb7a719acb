import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { toSvg } from '../drawing/drawingTools.ts';
import { fileName, pictures } from './pictures.ts';

const folder = fileURLToPath(new URL('./golden/', import.meta.url));

describe('pictures that a person has looked at', () => {
  for (const [name, draw] of Object.entries(pictures)) {
    it(`${name} looks as it did`, () => {
      draw().forEach((drawing, index) => {
        const path = folder + fileName(name, index + 1);
        const svg = toSvg(drawing);
        const same = existsSync(path) && readFileSync(path, 'utf8') === svg;
        // What came out instead lies beside the picture, to be looked at and to take its place if it is better.
        if (!same) writeFileSync(path.replace(/\.svg$/, '-changed.svg'), svg);
        expect(
          same,
          `${path} is no longer what is drawn; see ${fileName(name, index + 1)} with -changed`,
        ).toBe(true);
      });
    });
  }
});
