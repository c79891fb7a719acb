import { describe, expect, test } from 'vitest';
import { readLibrary } from '../../src/library/index.ts';
import type { Finding } from '../../src/model/finding.ts';
import type { Library } from '../../src/model/library.ts';
import { smallLibrary } from '../helpers/smallLibrary.ts';

type Change = readonly [string, string, string];

function library(...changes: Change[]): Library {
  const read = readLibrary(smallLibrary(...changes), 'libraries/small');
  if (!read.ok) throw new Error(JSON.stringify(read.findings));
  return read.value;
}

function findings(...changes: Change[]): readonly Finding[] {
  return readLibrary(smallLibrary(...changes), 'libraries/small').findings;
}

describe('a library without errors', () => {
  const read = library();

  test('is named after its folder and has everything in it', () => {
    expect(findings()).toEqual([]);
    expect(read).toMatchObject({ id: 'small', title: 'Small test library', currency: 'EUR' });
    expect([...read.roles.keys()]).toEqual(['carcass', 'front', 'back']);
    expect([...read.units.keys()]).toEqual(['base-door', 'drawer-box']);
    expect([...read.vehicles.keys()]).toEqual(['van-long', 'van-short']);
  });

  test('says what guides a saw, where its file does', () => {
    expect(read.saws.get('slide-saw')?.guidedBy).toBe('rail');
    expect(read.saws.get('panel-saw')?.guidedBy).toBeUndefined();
  });

  test('has lengths in µm: kerf and trim up, sheets down to 0.1 mm', () => {
    expect(read.boards.get('poplar-15')?.thicknessUm).toBe(15_200);
    expect(read.saws.get('panel-saw')?.kerfUm).toBe(3_200);
    // 1/8 in = 3.175 mm
    expect(read.saws.get('slide-saw')?.kerfUm).toBe(3_200);
    expect(read.saws.get('slide-saw')?.trimUm).toEqual({ left: 10_000, right: 0, near: 5_100, far: 0 });
    expect(read.sheets[1]).toMatchObject({
      lengthUm: 2_500_000,
      widthUm: 1_220_000,
      priceMinor: 11_000,
      count: null,
    });
    expect(read.sheets[2]).toMatchObject({ priceMinor: 3_100, count: 3 });
    expect(read.edgings.get('oak-wide')?.widthUm).toBe(19_050);
    expect(read.edgings.get('pale-grey-1')?.priceMinorPerM).toBe(55);
  });

  test('keeps formulas as text with the place of their first character', () => {
    const unit = read.units.get('base-door')!;
    const file = 'libraries/small/units/base-door.yaml';
    expect(unit.names.get('inside')).toEqual({
      text: 'width - 2 * thickness.carcass',
      place: { file, line: 9, column: 11, field: 'names › inside' },
    });
    const shelf = unit.panels.find((panel) => panel.name === 'shelf')!;
    expect(shelf.z[0]).toEqual({
      text: '100 + i * 200',
      place: { file, line: 25, column: 10, field: 'panels › shelf › z › 1st' },
    });
    expect(shelf.repeat).toMatchObject({ counter: 'i', count: { text: 'shelves' } });
    expect(shelf.housings).toMatchObject([{ into: 'left side', depth: { text: '5' } }]);
    expect(shelf.cutOuts).toMatchObject([{ name: 'cable', z: null }]);
  });

  test('has parameters of three kinds', () => {
    const kinds = read.units.get('base-door')!.parameters.map((each) => [each.name, each.kind]);
    expect(kinds).toEqual([
      ['width', 'length'],
      ['depth', 'length'],
      ['height', 'length'],
      ['shelves', 'count'],
      ['hand', 'choice'],
    ]);
  });

  test('gives words of choices as texts to evaluate, and leaves names as they are', () => {
    const cupboard = read.layouts.get('galley')!.units[0]!;
    expect(cupboard.set.get('hand')?.text).toBe('"right"');
    expect(cupboard.set.get('width')?.text).toBe('500');
    expect(cupboard.facing).toBe('right');
    const inner = read.units.get('base-door')!.units[0]!;
    expect(inner.set.get('side')?.text).toBe('hand');
    expect(inner.facing).toBe('front');
  });

  test('lengths with a unit mark in formulas become millimetres', () => {
    const read2 = library([
      'units/base-door.yaml',
      'depth: { default: 480 }',
      'depth: { default: 19 3/4 in }',
    ]);
    const depth = read2.units.get('base-door')!.parameters[1];
    expect(depth).toMatchObject({ default: { text: '501.65' } });
  });

  test('edging `all` gives all faces, a list those it names', () => {
    const { panels } = read.units.get('base-door')!;
    expect(panels.map((panel) => panel.edging.length)).toEqual([1, 1, 6]);
  });

  test('may stand at the top of the paths', () => {
    const bare = new Map(
      [...smallLibrary()].map(([path, text]) => [path.replace('libraries/small/', ''), text]),
    );
    expect(readLibrary(bare, '').ok).toBe(true);
  });
});

describe('one wrong line', () => {
  const unit = 'units/base-door.yaml';
  const layout = 'layouts/galley.yaml';
  const cases: readonly (readonly [name: string, change: Change, finding: Partial<Finding>])[] = [
    ['unknown field', ['boards.yaml', '\n  core:', '\n  coer:'], { code: 'unknown-field', nearest: 'core' }],
    ['missing field', ['boards.yaml', '\n  thickness: 4', ''], { code: 'missing-field' }],
    ['empty field', ['boards.yaml', '\n  thickness: 4', '\n  thickness:'], { code: 'empty-field' }],
    [
      'negative',
      ['boards.yaml', '\n  thickness: 4', '\n  thickness: -4'],
      { code: 'out-of-range', found: '-4' },
    ],
    ['negative text', ['boards.yaml', '\n  thickness: 4', '\n  thickness: -4 mm'], { code: 'out-of-range' }],
    ['zero', ['boards.yaml', '\n  thickness: 4', '\n  thickness: 0'], { code: 'out-of-range' }],
    ['too long', ['boards.yaml', '\n  thickness: 4', '\n  thickness: 100000.1'], { code: 'out-of-range' }],
    [
      'too long text',
      ['boards.yaml', '\n  thickness: 4', '\n  thickness: 4000 in'],
      { code: 'out-of-range' },
    ],
    ['not finite', ['boards.yaml', '\n  thickness: 4', '\n  thickness: .inf'], { code: 'wrong-kind' }],
    ['not a number', ['boards.yaml', '\n  thickness: 4', '\n  thickness: .nan'], { code: 'wrong-kind' }],
    ['beyond numbers', ['boards.yaml', '\n  thickness: 4', '\n  thickness: 1e400'], { code: 'wrong-kind' }],
    ['decimal comma', ['boards.yaml', '\n  thickness: 4', '\n  thickness: 4,5'], { code: 'wrong-form' }],
    ['other unit', ['boards.yaml', '\n  thickness: 4', '\n  thickness: 0.4 cm'], { code: 'wrong-form' }],
    ['list for a length', ['boards.yaml', '\n  thickness: 4', '\n  thickness: [4]'], { code: 'wrong-kind' }],
    ['three faces', ['boards.yaml', 'decorated faces: 1', 'decorated faces: 3'], { expected: '0, 1 or 2' }],
    ['bad id', ['edgings.yaml', 'oak-narrow:', 'Oak_narrow:'], { code: 'bad-name' }],
    [
      'yes for true',
      ['finishes.yaml', 'grain: false', 'grain: no'],
      { code: 'wrong-kind', expected: 'true or false' },
    ],
    ['yes for a text', ['fittings.yaml', 'title: Hinge', 'title: true'], { code: 'wrong-kind' }],
    [
      'number for a text',
      ['fittings.yaml', 'title: Hinge', 'title: 35'],
      { code: 'wrong-kind', expected: 'a text' },
    ],
    ['empty text', ['fittings.yaml', 'title: Hinge', 'title: ""'], { code: 'out-of-range' }],
    ['word', ['finishes.yaml', 'hatch: none', 'hatch: woood'], { code: 'unknown-word', nearest: 'wood' }],
    ['tone', ['finishes.yaml', 'tone: 0.1', 'tone: 1.1'], { code: 'out-of-range', expected: 'at most 1' }],
    ['price', ['fittings.yaml', '2.10', '2.105'], { code: 'wrong-form' }],
    [
      'half a pack',
      ['fittings.yaml', 'pack: 10', 'pack: 2.5'],
      { code: 'wrong-kind', expected: 'a whole number' },
    ],
    ['currency', ['library.yaml', 'EUR', 'euro'], { code: 'wrong-form' }],
    ['sheet board', ['sheets.yaml', 'board: poplar-15,', 'board: popler-15,'], { nearest: 'poplar-15' }],
    ['sheet finish', ['sheets.yaml', 'finish: oak', 'finish: aok'], { nearest: 'oak' }],
    ['sheet id', ['sheets.yaml', 'id: poplar-15-oak', 'id: poplar-15-pale-grey'], { code: 'duplicate-id' }],
    ['sheet grain', ['sheets.yaml', 'grain: length', 'grain: none'], { code: 'grain-unknown' }],
    ['edging finish', ['edgings.yaml', 'finish: pale-grey', 'finish: pale-gray'], { nearest: 'pale-grey' }],
    ['trim side', ['saws.yaml', 'near: 5.01, ', ''], { code: 'missing-field' }],
    ['trim text', ['saws.yaml', 'trim: 10', 'trim: ten'], { code: 'wrong-form' }],
    ['first cut', ['saws.yaml', 'first cut: rip', 'first cut: ripp'], { nearest: 'rip' }],
    ['turns', ['saws.yaml', 'turns: 3', 'turns: 1.5'], { code: 'wrong-kind' }],
    ['guide', ['saws.yaml', 'guided by: rail', 'guided by: rial'], { nearest: 'rail' }],
    ['widths order', ['vehicles/van-short.yaml', 'height: 700', 'height: 0'], { code: 'bad-widths' }],
    ['widths floor', ['vehicles/van-short.yaml', 'height: 0', 'height: 10'], { code: 'bad-widths' }],
    ['arch', ['vehicles/van-short.yaml', '[1900, 2800]', '[2900, 2800]'], { code: 'bad-extent' }],
    [
      'arch of three',
      ['vehicles/van-short.yaml', '[1900, 2800]', '[1900, 2800,5]'],
      { code: 'out-of-range' },
    ],
    ['role', [unit, 'role: front', 'role: frnt'], { code: 'unknown-word', nearest: 'front' }],
    ['grain', [unit, 'grain: x', 'grain: w'], { code: 'unknown-word' }],
    ['no grain', [unit, '    grain: x\n', ''], { code: 'missing-field' }],
    ['edging word', [unit, 'edging: all', 'edging: al'], { code: 'wrong-kind' }],
    ['edging face', [unit, 'edging: [front]', 'edging: [frontt]'], { nearest: 'front' }],
    ['extent', [unit, 'x: [2, width - 2]', 'x: [2]'], { code: 'out-of-range', found: '1' }],
    ['formula is a list', [unit, 'when: shelves > 0', 'when: [1]'], { code: 'wrong-kind' }],
    [
      'let into',
      [unit, 'let into: { left side: 5 }', 'let into: { left sied: 5 }'],
      { nearest: 'left side' },
    ],
    [
      'let into itself',
      [unit, 'let into: { left side: 5 }', 'let into: { shelf: 5 }'],
      { code: 'unknown-word' },
    ],
    ['cut-out axes', [unit, 'y: [40, 100] }', 'y: [40, 100], z: [0, 1] }'], { code: 'bad-cut-out' }],
    ['counter', [unit, 'repeat: { i: shelves }', 'repeat: { width: shelves }'], { code: 'duplicate-name' }],
    ['two counters', [unit, 'repeat: { i: shelves }', 'repeat: { i: 2, j: 3 }'], { code: 'bad-repeat' }],
    ['name taken', [unit, 'inside: width', 'hand: width'], { code: 'duplicate-name' }],
    ['formula word', [unit, '  inside: width', '  max: 3\n  inside: width'], { code: 'bad-name' }],
    ['identifier', [unit, '  inside: width', '  in-side: 3\n  inside: width'], { code: 'bad-name' }],
    ['panel name', [unit, '  shelf:', '  " shelf":'], { code: 'bad-name' }],
    ['direction marks', [unit, '  shelf:', '  "she\\u202elf":'], { code: 'unreadable-text' }],
    ['shelf 2', [unit, '  door:', '  shelf 2:'], { code: 'duplicate-name' }],
    ['default choice', [unit, 'default: left,', 'default: lift,'], { nearest: 'left' }],
    [
      'choice range',
      [unit, 'choices: [left, right]', 'choices: [left, right], least: 1'],
      { code: 'needless-field' },
    ],
    ['choice numbers', [unit, 'choices: [left, right]', 'choices: [left, 2]'], { code: 'wrong-kind' }],
    ['inner unit', [unit, 'unit: drawer-box', 'unit: drawer-bax'], { nearest: 'drawer-box' }],
    ['inner parameter', [unit, 'width: inside - 26', 'widht: inside - 26'], { nearest: 'width' }],
    ['inner choice', [unit, 'side: hand', 'side: rigth'], { nearest: 'right' }],
    ['choice by number', [unit, 'side: hand', 'side: 3'], { code: 'unknown-word' }],
    ['fitting', [unit, '  hinge:', '  hinges:'], { code: 'unknown-word', nearest: 'hinge' }],
    ['layout vehicle', [layout, '[van-short,', '[van-shirt,'], { nearest: 'van-short' }],
    ['layout unit', [layout, 'unit: base-door', 'unit: base-dor'], { nearest: 'base-door' }],
    ['facing', [layout, 'facing: right', 'facing: rigth'], { nearest: 'right' }],
    ['no facing', [layout, 'facing: right, ', ''], { code: 'missing-field' }],
    ['layout choice word', [layout, 'hand: right', 'hand: rigt'], { nearest: 'right' }],
  ];
  test.each(cases)('%s', (_, change, finding) => {
    const found = findings(change);
    expect(found.map((each) => each.code)).toHaveLength(1);
    expect(found[0]).toMatchObject({ severity: 'error', ...finding });
    const text = smallLibrary(change).get(`libraries/small/${change[0]}`)!;
    expect(found[0]!.place?.file).toMatch(/^libraries\/small\//);
    expect(found[0]!.place!.line).toBeLessThanOrEqual(text.split('\n').length);
    expect(found[0]!.place!.column).toBeGreaterThan(0);
    expect(found[0]!.message).toMatch(/^[^\n]+\.$/);
  });

  test('points at the very character', () => {
    expect(findings([unit, 'role: front', 'role: frnt'])[0]?.place).toEqual({
      file: `libraries/small/${unit}`,
      line: 34,
      column: 11,
      field: 'panels › door › role',
    });
  });

  test('a zero kerf is a warning', () => {
    expect(findings(['saws.yaml', 'kerf: 3.15', 'kerf: 0'])).toMatchObject([
      { severity: 'warning', code: 'odd-kerf' },
    ]);
    expect(findings(['saws.yaml', 'kerf: 3.15', 'kerf: -1'])).toMatchObject([{ severity: 'error' }]);
  });
});

describe('many wrong lines', () => {
  test('are all told at once, each once, without follow-ups', () => {
    const found = findings(
      ['boards.yaml', '\n  thickness: 4', '\n  tihckness: 4'],
      ['boards.yaml', 'core: poplar ply, thickness: 15.2', 'core: 15, thickness: thick'],
      ['units/base-door.yaml', 'title: Base cupboard with one door\n', ''],
      ['units/base-door.yaml', 'role: front', 'role: frnt'],
      ['units/base-door.yaml', '  width: { default: 600', '  width: { defalt: 600'],
      ['layouts/galley.yaml', 'vehicles: [van-short, van-long]\n', ''],
      ['layouts/galley.yaml', 'unit: base-door', 'unit: base-dor'],
      ['vehicles/van-long.yaml', 'payload: 850', 'payload: none'],
    );
    expect(
      found.map((each) => [each.place?.file.split('/').slice(2).join('/'), each.place?.line, each.code]),
    ).toEqual([
      ['boards.yaml', 1, 'wrong-kind'],
      ['boards.yaml', 1, 'wrong-form'],
      ['boards.yaml', 5, 'unknown-field'],
      ['layouts/galley.yaml', 1, 'missing-field'],
      ['layouts/galley.yaml', 8, 'unknown-word'],
      ['units/base-door.yaml', 1, 'missing-field'],
      ['units/base-door.yaml', 2, 'unknown-field'],
      ['units/base-door.yaml', 33, 'unknown-word'],
      ['vehicles/van-long.yaml', 5, 'wrong-kind'],
    ]);
  });

  test('a file that cannot be read does not make others wrong', () => {
    expect(findings(['boards.yaml', 'title: Poplar ply 15', 'title: [']).map((each) => each.code)).toEqual([
      'yaml-syntax',
    ]);
    expect(
      findings(['units/drawer-box.yaml', 'title: D', 'title: "D']).every(
        (each) => each.code === 'yaml-syntax',
      ),
    ).toBe(true);
  });
});

describe('units within units', () => {
  test('a circle is told by the names on the way round', () => {
    const found = findings([
      'units/drawer-box.yaml',
      'panels:',
      'units:\n  again: { unit: base-door, at: { x: 0, y: 0, z: 0 } }\npanels:',
    ]);
    expect(found).toMatchObject([{ code: 'circular-units', found: 'base-door → drawer-box → base-door' }]);
  });

  test('a unit used twice without a circle is fine', () => {
    const use = 'inner: { unit: drawer-box';
    const twice = 'outer: { unit: drawer-box, at: { x: 0, y: 0, z: 0 } }\n  inner: { unit: drawer-box';
    expect(findings(['units/base-door.yaml', use, twice])).toEqual([]);
  });
});

describe('files', () => {
  const without = (path: string) => {
    const files = smallLibrary();
    files.delete(`libraries/small/${path}`);
    return files;
  };

  test('a missing file is named, and the one that may be meant', () => {
    const files = without('boards.yaml');
    files.set('libraries/small/boards.yml', 'x');
    expect(readLibrary(files, 'libraries/small').findings).toMatchObject([
      { code: 'missing-file', nearest: 'boards.yml', place: { file: 'libraries/small/boards.yaml' } },
      {
        code: 'unread-file',
        severity: 'warning',
        nearest: 'boards.yaml',
        advice: 'Files end in .yaml here.',
      },
    ]);
  });

  test('a wrong folder has no files at all', () => {
    const { findings: found } = readLibrary(smallLibrary(), 'libraries/smal');
    expect(found.map((each) => each.code)).toEqual(Array(5).fill('missing-file'));
    expect(found[0]?.advice).toContain('path');
  });

  test('fittings that no file defines are unknown', () => {
    const found = readLibrary(without('fittings.yaml'), 'libraries/small').findings;
    expect(found).toMatchObject([{ code: 'unknown-word', found: 'hinge', expected: 'none is defined' }]);
  });

  test('a unit file needs a name that can be an id', () => {
    const files = smallLibrary();
    files.set('libraries/small/units/My Unit.yaml', 'title: x');
    expect(readLibrary(files, 'libraries/small').findings).toMatchObject([{ code: 'bad-name' }]);
  });

  test('orders and other texts beside the library are left alone', () => {
    const files = smallLibrary();
    files.set('libraries/small/orders/an order.yaml', '{');
    files.set('libraries/small/README.md', 'x');
    files.set('elsewhere/boards.yaml', '{');
    expect(readLibrary(files, 'libraries/small').findings).toEqual([]);
  });

  test('an empty file and a list where a block belongs', () => {
    for (const [text, code] of [
      ['', 'empty-field'],
      ['# nothing', 'empty-field'],
      ['- a', 'wrong-kind'],
      ['text', 'wrong-kind'],
    ] as const) {
      const files = smallLibrary();
      files.set('libraries/small/boards.yaml', text);
      const { findings: found } = readLibrary(files, 'libraries/small');
      expect(found).toMatchObject([{ code, place: { file: 'libraries/small/boards.yaml', line: 1 } }]);
    }
  });
});
