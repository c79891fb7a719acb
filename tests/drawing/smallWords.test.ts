import { describe, expect, it } from 'vitest';
import { wordsOf } from '../../src/documents/words/index.ts';
import { type Box, type Drawing, textBox } from '../../src/drawing/drawing.ts';
import { drawCutPlan } from '../../src/drawing/index.ts';
import { namesOfJoined } from '../../src/drawing/namesOfJoined.ts';
import { drawPanelLabel } from '../../src/drawing/panelLabels.ts';
import { sawSheet } from '../../src/drawing/sawnSheet.ts';
import { Sketch } from '../../src/drawing/sketch.ts';
import { edgeExtents } from '../../src/drawing/unitMeasures.ts';
import { drawUnit } from '../../src/drawing/unitViews.ts';
import { drawLayout } from '../../src/drawing/vehicleViews.ts';
import { plannedOrder } from '../helpers/demoPlan.ts';
import { demoLibrary, demoOrder, furnish } from '../helpers/demoVan.ts';
import { measure, words } from './drawingTools.ts';
import { stripPlan } from './planFixtures.ts';

const textsOf = ({ shapes }: Drawing) =>
  shapes.flatMap((shape) => (shape.kind === 'text' ? [shape.text] : []));

const library = demoLibrary();
const order = demoOrder(library);
const furniture = furnish(order, library).furniture!;
const options = { measure, words, job: 'Demonstration', titles: new Map<string, string>() };

describe('names of strips', () => {
  it.each(['two-singles-short', 'demo-short'] as const)(
    'stand beside every broad strip that is sawn further in %s',
    (name) => {
      const LEAST_UM = 250_000;
      const { groups } = plannedOrder(name).proven.plan;
      const strips = groups.flatMap((group) =>
        group.sheets.flatMap((sheet) => {
          const broad = sawSheet(group, sheet).cuts.filter(
            ({ hand: { name: strip, rect } }) =>
              /^[A-Z]$/.test(strip) && Math.min(rect.x1 - rect.x0, rect.y1 - rect.y0) >= LEAST_UM,
          );
          const [page] = drawCutPlan(group, sheet, { measure, words, job: name, page: 'A3' });
          const texts = page!.shapes.flatMap((shape) =>
            shape.kind === 'text' && shape.layer === 'sheet' ? [shape.text] : [],
          );
          return broad.map(({ hand }) => ({ sheet: `${group.id} ${sheet.number}`, strip: hand.name, texts }));
        }),
      );
      expect(strips.length).toBeGreaterThan(5);
      expect(strips.filter(({ strip, texts }) => !texts.includes(strip))).toEqual([]);
    },
  );
});

describe('names of pieces that hold several others', () => {
  const plans = plannedOrder('demo-short').proven.plan.groups.flatMap((group) =>
    group.sheets.map((sheet) => ({ group, sheet, ...namesOfJoined(sheet) })),
  );

  it('are found once of each kind', () => {
    expect(plans.some(({ restFrom }) => restFrom !== null)).toBe(true);
    expect(plans.some(({ span }) => span !== null)).toBe(true);
    expect(namesOfJoined(stripPlan([{ name: 'side', size: [720, 560] }]).sheet)).toEqual({
      restFrom: null,
      span: null,
    });
  });

  it.each(['en', 'de'] as const)('are explained below the cuts that have them, in %s', (language) => {
    const { drawings } = wordsOf(language);
    for (const { group, sheet, restFrom, span } of plans) {
      const [page] = drawCutPlan(group, sheet, { measure, words: drawings, job: 'short van' });
      const texts = textsOf(page!);
      const { legend } = drawings.cutPlan;
      if (restFrom !== null) {
        expect(texts).toEqual(expect.arrayContaining([`${restFrom}+`, legend.restFrom(restFrom)]));
      }
      if (span !== null) {
        expect(texts).toEqual(expect.arrayContaining([span.join('-'), legend.span(...span)]));
      }
      const [picture] = drawCutPlan(group, sheet, {
        measure,
        words: drawings,
        job: 'short van',
        steps: 'left out',
      });
      if (restFrom !== null) expect(textsOf(picture!)).not.toContain(legend.restFrom(restFrom));
    }
  });
});

describe('a cut that takes off less than the blade is wide', () => {
  it('says in the table of cuts how little comes off', () => {
    const wanted = [
      { name: 'wide', size: [720, 300.2] },
      { name: 'narrow', size: [720, 300] },
    ] as const;
    const { group, sheet } = stripPlan([...wanted]);
    const shaving = sheet.steps.some((step) => step.cut !== 'trim' && step.take < group.saw.kerf);
    expect(shaving).toBe(true);
    const texts = (language: 'en' | 'de') =>
      drawCutPlan(group, sheet, { measure, words: wordsOf(language).drawings, job: 'box' })
        .flatMap(textsOf)
        .join(' ');
    expect(texts('en')).toContain('only 0.2 comes off');
    expect(texts('de')).toContain('nur 0.2 fällt weg');
  });
});

describe('the depth of a unit at a leaning wall', () => {
  const unit = (name: string) => furniture.units.find((each) => each.name === name)!;

  it('is said at the top and at the bottom, where it is not the whole depth', () => {
    const wardrobe = unit('wardrobe');
    const { lower, upper } = edgeExtents(wardrobe, 'x', 'y');
    const size = (extents: readonly (readonly [number, number])[]) => extents.map(([from, to]) => to - from);
    expect([size(lower), size(upper)]).toEqual([[602_800], [532_800]]);
    const [views] = drawUnit(wardrobe, options);
    expect(textsOf(views!)).toEqual(expect.arrayContaining(['532.8', '602.8', '650']));
  });

  it('is said of every unit whose sides follow the wall, and of no other', () => {
    for (const each of furniture.units) {
      const { upper, lower } = edgeExtents(each, 'x', 'y');
      const slopes = each.panels.some(
        (panel) => panel.thicknessAxis === 'x' && (panel.outline ?? []).length > 0,
      );
      expect(upper.length + lower.length > 0, each.name).toBe(slopes);
    }
  });
});

describe('a hob, which is low', () => {
  it('is named in the view of its wall as well as in the plan', () => {
    const van = library.vehicles.get(order.vehicle)!;
    const pages = drawLayout(furniture, van, library.finishes, options);
    const texts = pages.flatMap(textsOf);
    // On one line above its outline at the wall, on three lines within it in the plan.
    expect(texts).toEqual(
      expect.arrayContaining(['Gas hob with two burners', 'Gas hob', 'with two', 'burners']),
    );
  });
});

describe('the name of a panel', () => {
  const room = { x0: 0, y0: 0, x1: 60, y1: 5 };
  const label = { name: 'plinth', bareName: 'plinth', unit: '', size: '', run: '', mark: 'a' };

  /** Where the name goes with the number of a cut in the way. */
  function nameBeside(taken: Box): Box {
    const sketch = new Sketch(measure);
    sketch.taken.take(taken);
    drawPanelLabel(sketch, room, label, null);
    const text = sketch.shapes.find((shape) => shape.kind === 'text')!;
    if (text.kind !== 'text') throw new Error('no name');
    return textBox(text);
  }

  it('stands 0.6 mm further from the number of a cut than it must, where there is room', () => {
    const free = nameBeside({ x0: 24, x1: 29, y0: 0, y1: 5 });
    expect(Math.min(Math.abs(free.x0 - 29), Math.abs(free.x1 - 24))).toBeGreaterThan(0.55);
  });

  it('stands close to it where there is no more', () => {
    const wide = nameBeside({ x0: -10, x1: -9, y0: 0, y1: 5 });
    const width = wide.x1 - wide.x0;
    const tight = nameBeside({ x0: 0, x1: 60 - width - 0.3, y0: 0, y1: 5 });
    expect(tight.x0).toBeGreaterThan(60 - width - 0.31);
  });
});
