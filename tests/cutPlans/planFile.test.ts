import { describe, expect, it } from 'vitest';
import { guideOf, guidesOf } from '../../src/basics/cutGuide.ts';
import { sawOfPlan } from '../../src/changes/stockOfPlan.ts';
import { makePlan, planSchemaText, readPlan, writePlan } from '../../src/cutPlans/index.ts';
import { pieceName } from '../../src/cutPlans/pieceNames.ts';
import { makeStockGroups } from '../../src/demands/index.ts';
import { part, saw, supply } from '../helpers/parts.ts';
import { nestOf, spare, stack, wanted } from '../helpers/planText.ts';

function text(): string {
  const parts = [part('a', 600.5, 1230, { name: 'a "quoted", =name\nof two lines' })];
  const group = makeStockGroups(parts, [supply(2500, 1250)], saw()).groups[0]!;
  const root = stack('x', 2480, 1230, [wanted(0, 600.5, 1230), spare(1876.3, 1230, 'offcut')]);
  const nest = nestOf(group, [{ sheet: 0, copies: 1, root }]);
  return writePlan(makePlan([{ group, nest }], { job: 'test', currency: 'EUR', seed: 7 }));
}

describe('the plan file', () => {
  it('is JSON with a cut a line, millimetres and a line feed at the end', () => {
    const written = text();
    expect(written.endsWith('}\n')).toBe(true);
    expect(written).toContain(
      '{ "cut": "crosscut", "piece": "sheet 4", "blade": "width", "fence": 600.5, "gives": ["A", "B"], "take": 3.2 }',
    );
    expect(JSON.parse(written).groups[0].panels[0].name).toBe('a "quoted", =name\nof two lines');
    expect(written.match(/\d+\.\d{4,}/)).toBeNull();
  });

  it('says what guides the saw where that is a rail, and gives it back to a later plan', () => {
    const sawOf = (guidedBy?: 'fence' | 'rail') => {
      const parts = [part('a', 600.5, 1230)];
      const rules = saw(guidedBy === undefined ? {} : { guidedBy });
      const group = makeStockGroups(parts, [supply(2500, 1250)], rules).groups[0]!;
      const root = stack('x', 2480, 1230, [wanted(0, 600.5, 1230), spare(1876.3, 1230, 'offcut')]);
      const nest = nestOf(group, [{ sheet: 0, copies: 1, root }]);
      return makePlan([{ group, nest }], { job: 'test', currency: 'EUR', seed: 7 }).groups[0]!;
    };
    expect(sawOf('rail').saw.guidedBy).toBe('rail');
    expect(sawOfPlan(sawOf('rail')).guidedBy).toBe('rail');
    expect('guidedBy' in sawOf('fence').saw).toBe(false);
    expect(sawOf('fence')).toEqual(sawOf());
    expect([sawOf('rail'), sawOf()].map(guideOf)).toEqual(['rail', 'fence']);
    expect(guidesOf([sawOf('rail'), sawOf('fence'), sawOf()])).toEqual(['fence', 'rail']);
  });

  it('is read with every wrong field named', () => {
    const plan = JSON.parse(text());
    plan.groups[0].saw.kerf = -1;
    plan.groups[0].sheets[0].steps[4].fence = '600';
    plan.groups[0].extra = 1;
    plan.seed = -1;
    const read = readPlan(JSON.stringify(plan), 'my-plan.json');
    expect(read.ok).toBe(false);
    const fields = read.findings.map((finding) => finding.place?.field);
    expect(fields).toEqual(
      expect.arrayContaining([
        'seed',
        'groups › 1 › saw › kerf',
        'groups › 1 › sheets › 1 › steps › 5 › fence',
        'groups › 1',
      ]),
    );
    expect(read.findings.every((finding) => finding.place?.file === 'my-plan.json')).toBe(true);
    expect(read.findings.find((f) => f.place?.field?.endsWith('fence'))?.found).toBe('"600"');
  });

  it('refuses lengths finer than a micrometre, text that is no JSON, and other documents', () => {
    const plan = JSON.parse(text());
    plan.groups[0].panels[0].length = 600.5001;
    expect(readPlan(JSON.stringify(plan)).findings[0]).toMatchObject({
      code: 'plan-length-too-fine',
      place: { field: 'groups › 1 › panels › 1 › length' },
    });
    // Found by changing texts at random: the message that named the piece could not be written as a text.
    const broken = JSON.parse(text());
    broken.groups[0].panels[0].name = 'side \ud800';
    expect(readPlan(JSON.stringify(broken)).findings[0]).toMatchObject({
      code: 'plan-text-broken',
      place: { field: 'groups › 1 › panels › 1 › name' },
      found: '"side \\ud800"',
    });
    expect(readPlan('{').findings[0]!.code).toBe('plan-not-json');
    // Found by changing texts at random: what the engine says of them has line breaks in it.
    expect(readPlan('{\n  "version": |\n}', 'plan.json').findings).toEqual([
      expect.objectContaining({
        message: 'The plan file is not JSON.',
        found: '|',
        place: { file: 'plan.json', line: 2, column: 14 },
      }),
    ]);
    for (const other of ['null', '[]', '"plan"', '{}', '{"__proto__": {"format": "plywright plan"}}']) {
      expect(readPlan(other).ok).toBe(false);
    }
  });

  it('has its JSON Schema published as it is (`vitest -u` writes it anew)', async () => {
    await expect(planSchemaText()).toMatchFileSnapshot('../../schemas/plan.schema.json');
  });

  it('has a JSON Schema that describes every field and allows no other', () => {
    const schema = JSON.parse(planSchemaText());
    expect(schema.$schema).toBe('https://json-schema.org/draft/2020-12/schema');
    expect(schema.additionalProperties).toBe(false);
    const later = ['before', 'recut', 'sawn'];
    const first = Object.keys(schema.properties).filter((key) => !later.includes(key));
    expect(first).toEqual(Object.keys(JSON.parse(text())));
    expect(later.every((key) => key in schema.properties && !schema.required.includes(key))).toBe(true);
  });
});

describe('names of pieces', () => {
  it('differ by letters and digits in turn', () => {
    expect([0, 25, 26, 27, 701, 702].map((i) => pieceName('', 0, i))).toEqual([
      'A',
      'Z',
      'AA',
      'AB',
      'ZZ',
      'AAA',
    ]);
    expect(pieceName('B', 1, 11)).toBe('B12');
    expect(pieceName('B12', 2, 26)).toBe('B12aa');
    expect(pieceName('B12aa', 3, 0)).toBe('B12aa1');
  });
});
