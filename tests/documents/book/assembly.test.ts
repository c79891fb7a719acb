import { describe, expect, it } from 'vitest';
import { assemblySteps } from '../../../src/documents/book/assembly.ts';
import { assemblyDe } from '../../../src/documents/words/assemblyDe.ts';
import { assemblyEn } from '../../../src/documents/words/assemblyEn.ts';
import { demoOrders } from '../../helpers/demoPlan.ts';
import { alone, demoLibrary, demoOrder, furnish } from '../../helpers/demoVan.ts';

const library = demoLibrary();

/** The numbers of panels that steps name: `7, 8 left`, `14–17 slat`; figures of fittings stand before a cross. */
function numbersIn(sentences: readonly string[], titles: readonly string[]): number[] {
  let text = sentences.join('\n');
  for (const title of titles) text = text.replaceAll(title, '');
  text = text.replace(/\d+\u00a0×/g, '');
  return [...text.matchAll(/(\d+)(?:–(\d+))?(?=,? |\u00a0|,)/g)].flatMap(([whole, from, to]) => {
    // A number that belongs to a name stands after a space that may be broken.
    expect(whole).toBeTruthy();
    const [first, last] = [Number(from), Number(to ?? from)];
    return Array.from({ length: last - first + 1 }, (_, index) => first + index);
  });
}

describe.each([
  ['English', assemblyEn],
  ['German', assemblyDe],
] as const)('the steps of putting together, in %s', (_, says) => {
  it.each(demoOrders)('name every panel of every unit of %s once, and every fitting', (name) => {
    for (const unit of furnish(demoOrder(library, name), library).furniture!.units) {
      const steps = assemblySteps(unit, library.fittings, says);
      const sentences = steps.map(({ sentence }) => sentence);
      const titles = unit.fittings.map(({ fitting }) => library.fittings.get(fitting)!.title);
      const named = numbersIn(sentences, titles);
      expect(
        named.sort((a, b) => a - b),
        unit.name,
      ).toEqual(unit.panels.map(({ number }) => number).sort((a, b) => a - b));
      expect(steps.map(({ number }) => number)).toEqual(steps.map((__, index) => index + 1));
      expect(steps.length, unit.name).toBeLessThan(13);
      if (unit.panels.length === 1) continue;
      for (const title of titles) expect(sentences.join('\n'), unit.name).toContain(title);
      const isScribed = unit.panels.some(({ scribed }) => (scribed ?? []).length > 0);
      expect(sentences.includes(says.wall), unit.name).toBe(isScribed);
    }
  });
});

describe('the steps of putting a cupboard together', () => {
  const { unit } = alone('wardrobe', {}, library, demoOrder(library));
  const sentences = assemblySteps(unit!, library.fittings, assemblyEn).map(({ sentence }) => sentence);

  it('tell screws with the first joint, and compare diagonals before the back', () => {
    expect(sentences[1]).toContain('All joints: Carcass screw 4 × 40.');
    const back = sentences.findIndex((sentence) => sentence.includes('grooves'));
    expect(sentences[back - 1]).toContain(assemblyEn.square);
    expect(sentences.filter((sentence) => sentence.includes(assemblyEn.square))).toHaveLength(1);
  });

  it('hang doors when the carcass stands, and fix it to the body last', () => {
    expect(sentences.at(-1)).toMatch(/^Last, .*Corner bracket to the body/);
    expect(sentences.at(-2)).toMatch(/^Hang or fix \d+.door, \d+.lift-up front on the front/);
  });
});

describe('fittings that have a time of their own', () => {
  const stepsOf = (name: string, set: Record<string, string>) => {
    const { unit } = alone(name, set, library, demoOrder(library));
    return assemblySteps(unit!, library.fittings, assemblyEn).map(({ sentence }) => sentence);
  };
  const place = (sentences: readonly string[], words: RegExp) =>
    sentences.findIndex((sentence) => words.test(sentence));

  it('are there before the shelf that lies on them', () => {
    const sentences = stepsOf('base-cupboard', {});
    expect(place(sentences, /Shelf pin/)).toBe(0);
    expect(place(sentences, /\bshelf\b/)).toBeGreaterThan(0);
  });

  it('go into joints before these are closed', () => {
    const sentences = stepsOf('gas-locker', {});
    expect(sentences[place(sentences, /Sealant/)]).toMatch(/All joints: .*Sealant/);
  });

  it('go into a worktop or the front of a drawer when these are in their place', () => {
    const sentences = stepsOf('drawer-cupboard', {});
    expect(sentences.at(-1)).toMatch(/Screw 4 × 25 with a wide head.*up into a worktop/);
  });
});
