import { describe, expect, it } from 'vitest';
import { joinedPieces } from '../../../src/basics/assemblyOrder.ts';
import { jointOf } from '../../../src/basics/joints.ts';
import { assemblySteps } from '../../../src/documents/book/assembly.ts';
import { assemblyDe } from '../../../src/documents/words/assemblyDe.ts';
import { assemblyEn } from '../../../src/documents/words/assemblyEn.ts';
import { readLibrary } from '../../../src/library/index.ts';
import type { Panel } from '../../../src/model/furniture.ts';
import { readOrder } from '../../../src/order/index.ts';
import { demoOrders } from '../../helpers/demoPlan.ts';
import { alone, demoLibrary, demoOrder, furnish, libraryFiles, must } from '../../helpers/demoVan.ts';

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

  it('tell them with the panels that the first step joins already', () => {
    const { unit: table } = alone('dining-table', {}, library, demoOrder(library));
    const [first, second] = assemblySteps(table!, library.fittings, assemblyEn);
    expect(first!.sentence).toContain('All joints: Carcass screw 4 × 40.');
    expect(second!.sentence).not.toContain('All joints');
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

  it('are so in every library that has shelves on pins', () => {
    const root = 'parts-libraries/workshop-bench';
    const files = libraryFiles(root);
    const workshop = must(readLibrary(files, root));
    const bench = `${root}/orders/garage-bench.yaml`;
    const order = must(readOrder(files.get(bench)!, bench, workshop));
    const { unit } = alone('wall-shelf', { shelves: 2 }, workshop, order);
    const sentences = assemblySteps(unit!, workshop.fittings, assemblyEn).map(({ sentence }) => sentence);
    expect(place(sentences, /8.× Shelf pin/)).toBe(0);
    expect(place(sentences, /\d+.shelf\b/)).toBeGreaterThan(0);
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

describe('a unit that is scribed to the wall', () => {
  const { furniture } = furnish(demoOrder(library, 'two-singles-long'), library);
  const told = (name: string) => {
    const unit = furniture!.units.find((each) => each.name === name);
    return assemblySteps(unit!, library.fittings, assemblyEn).map(({ sentence }) => sentence);
  };

  it('is screwed to its neighbour after that', () => {
    const sentences = told('end panel');
    expect(sentences.slice(1)).toEqual([assemblyEn.wall, 'Fit 8\u00a0× Screw 4 × 30, board to board.']);
  });

  it('has hinges and stays before it, on the bench', () => {
    const sentences = told('galley locker');
    const wall = sentences.indexOf(assemblyEn.wall);
    expect(sentences[wall - 1]).toMatch(/^Fit 4.× Cup hinge/);
  });
});

describe('fittings that go through the floor', () => {
  it.each([
    ['seat-box', /Steel angle with bolt and plate/],
    ['dog-space', /Steel angle with bolt and plate/],
    ['gas-locker', /Drop vent through the floor/],
  ])('of %s come last, since the floor is there only in the vehicle', (name, title) => {
    const { unit } = alone(name, {}, library, demoOrder(library));
    const sentences = assemblySteps(unit!, library.fittings, assemblyEn).map(({ sentence }) => sentence);
    expect(sentences.findIndex((sentence) => title.test(sentence))).toBe(sentences.length - 1);
  });
});

describe('the steps that a unit gives itself', () => {
  const order = demoOrder(library);
  const made = (name: string, set: Record<string, string | number> = {}) =>
    alone(name, set, library, order).unit!;
  const told = (name: string, set: Record<string, string | number> = {}, says = assemblyEn) =>
    assemblySteps(made(name, set), library.fittings, says).map(({ sentence }) =>
      sentence.replaceAll('\u00a0', ' '),
    );
  const ofFile = [...library.units.values()].filter(({ assembly }) => assembly !== undefined);

  it.each(ofFile.map(({ id }) => [id] as const))(
    '%s: name every panel once, each put to what is there',
    (id) => {
      for (const choice of library.units.get(id)!.parameters.flatMap((parameter) => {
        return parameter.kind === 'choice'
          ? parameter.choices.map((value) => ({ [parameter.name]: value }))
          : [{}];
      })) {
        const unit = alone(id, choice, library, order).unit;
        if (unit === null) continue;
        const ids = unit.assembly!.flatMap(({ panels }) => panels);
        expect(ids.toSorted()).toEqual(unit.panels.map((panel) => panel.id).toSorted());
        const panelOf = new Map(unit.panels.map((panel) => [panel.id, panel]));
        const there: Panel[] = [];
        for (const { way, panels } of unit.assembly!) {
          const coming = panels.map((each) => panelOf.get(each)!);
          if (way === 'put' || way === 'slide in') {
            // In one step panels may be put to each other; some of them touch what is there.
            for (const piece of joinedPieces(coming)) {
              expect(
                piece.some((panel) => there.some((other) => jointOf(panel, other).kind !== 'apart')),
                `${id}: ${piece.map(({ name }) => name)}`,
              ).toBe(true);
            }
          }
          if (way === 'lay loose') {
            for (const piece of joinedPieces(coming)) {
              const lies = piece.some((panel) =>
                there.some((other) => jointOf(panel, other).kind !== 'apart'),
              );
              expect(lies, `${id}: ${piece.map(({ name }) => name)}`).toBe(true);
            }
          }
          const isHere = (held: string) => there.some((panel) => panel.id === held);
          for (const { id: own } of way === 'hang' ? coming : []) {
            const hangings = unit.hangings!.filter(({ panels: held }) => held.includes(own));
            expect(
              hangings.every(({ on }) => on.some(isHere)),
              own,
            ).toBe(true);
          }
          there.push(...coming);
        }
      }
    },
  );

  it('put the back of a bench on before the fins that hide its screws', () => {
    const bench = told('seat-box', { backrest: 'board' });
    expect(bench[1]).toMatch(/^Put 5 back to it\. All joints: .*Compare the diagonals/);
    expect(bench[2]).toBe('Put 6 left fin, 7 middle fin, 8 right fin to it.');
    expect(bench[5]).toMatch(/^Put together each on its own: 9 lid, 11 front cleat, 13 rear cleat; 10 lid/);
    expect(bench[5]).toMatch(/14 rear cleat\. Lay them in place, loose, to be lifted out again\.$/);
  });

  it('fix to the wall first what carries the rest, with what holds it there', () => {
    const bed = told('slatted-roof-bed');
    expect(bed[0]).toMatch(
      /^Put together each on its own: 1 left wall board, 3 left ledge; .* All joints: .* Fix them to the wall/,
    );
    expect(bed[1]).toMatch(/^Fit .*Screw or bolt into the body/);
    // What was made on its own is squared there, not when it lies in its place.
    expect(bed[2]).toMatch(/13–26 slat\. Compare the diagonals.* Set it in place in one piece\.$/);
    const hinged = told('slatted-roof-bed', { fixing: 'hinged' });
    expect(hinged[0]).toContain('2 right wall board, 4 right ledge. All joints');
    expect(hinged[2]).toBe('Put 27 hinge board to it.');
    const table = told('wall-table');
    expect(table[0]).toBe('Fix 2 wall rail to the wall or the body behind.');
    expect(table[1]).toMatch(/^Fit 4 × Corner bracket.*Screw or bolt into the body.*Butt hinge/);
    expect(table.slice(2)).toEqual([
      'Hang 3 left bracket, 4 right bracket, free to move.',
      'Lay 1 top in place, loose, to be lifted out again.',
    ]);
  });

  it('make boxes on their own, and hang their fronts when all stands', () => {
    const locker = told('rear-locker');
    expect(locker[0]).toMatch(/^Put together on its own: \d+ left bottom/);
    expect(locker[2]).toMatch(/^Put 1 shelf bottom, 2 shelf back, 3 shelf top to it\.$/);
    expect(locker.findIndex((each) => each.includes('Cup hinge'))).toBe(3);
    expect(locker[4]).toMatch(/^Hang or fix \d+ left front, \d+ right front/);
  });

  it('say what goes to the units beside, and what slides into posts', () => {
    expect(told('bed-bridge')[0]).toBe('Fix 1 front ledge, 2 rear ledge to the units beside this one.');
    const divider = told('boot-divider');
    expect(divider[0]).toBe('Fix 1 left post, 2 right post to the units beside this one.');
    expect(told('wall-table')[0]).toMatch(/ to the wall or the body behind\.$/);
    // The posts' own angles and buttons come before what slides between them, and lifts out again.
    expect(divider[1]).toMatch(/^Fit 2 × Steel angle.*4 × Turn button.*6 × Small angle/);
    expect(divider.slice(2)).toEqual(['Slide 3 lower board, 4 upper board into the grooves from above.']);
  });

  it('set a locker in that was made on its own, and hang its door where it is', () => {
    const bed = told('bed-base', { gas: 'small' });
    expect(bed[3]).toMatch(
      /^Put together on its own: 12 gas locker floor.*\. Set it in place in one piece\.$/,
    );
    // It opens to the rear.
    expect(bed[7]).toBe('Hang 18 gas locker door, free to move.');
  });

  it('begin with what is named first, and leave the side open where panels slide in from several', () => {
    const unit = made('boot-divider');
    const [posts, boards] = unit.assembly!;
    const told = (...assembly: NonNullable<typeof unit.assembly>) =>
      assemblySteps({ ...unit, fittings: [], assembly }, library.fittings, assemblyEn).map(({ sentence }) =>
        sentence.replaceAll('\u00a0', ' '),
      );
    expect(told({ ...posts!, way: 'put' }, boards!)[0]).toBe('Begin with 1 left post, 2 right post.');
    // The lower board then has the upper one above it.
    const [, turned] = told(posts!, { ...boards!, panels: boards!.panels.toReversed() });
    expect(turned).toMatch(/ into the grooves\.$/);
  });

  it('say it in German', () => {
    const german = (name: string, set = {}) => told(name, set, assemblyDe);
    expect(german('bed-bridge')[0]).toBe('1 front ledge, 2 rear ledge an den Möbeln daneben befestigen.');
    expect(german('bed-bridge')[2]).toMatch(
      /^Jedes für sich zusammenbauen: .* Alle Verbindungen: .* Lose einlegen, herausnehmbar\.$/,
    );
    expect(german('wall-table')[0]).toMatch(/an der Wand oder Karosserie dahinter befestigen\.$/);
    expect(german('boot-divider')[2]).toMatch(/von oben in die Nuten schieben\.$/);
    expect(german('slatted-roof-bed')[0]).toMatch(/An der Wand oder Karosserie dahinter befestigen\./);
    expect(german('slatted-roof-bed')[2]).toMatch(
      /^Für sich zusammenbauen: .* Diagonalen .* Im Ganzen einsetzen\.$/,
    );
    expect(german('wall-table').at(-2)).toMatch(/leichtgängig anschlagen\.$/);
    expect(german('wall-table').at(-1)).toMatch(/lose einlegen, herausnehmbar\.$/);
    expect(german('rear-locker')[2]).toMatch(/ansetzen\.$/);
  });
});
