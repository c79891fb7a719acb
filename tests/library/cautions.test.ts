import { describe, expect, it } from 'vitest';
import { readLibrary } from '../../src/library/index.ts';
import { readOrder } from '../../src/order/index.ts';
import { makePanels } from '../../src/panels/index.ts';
import { expandOrder } from '../../src/units/index.ts';
import { must } from '../helpers/demoVan.ts';
import { smallLibrary, smallOrder } from '../helpers/smallLibrary.ts';

type Change = readonly [string, string, string];

const read = (...changes: Change[]) => readLibrary(smallLibrary(...changes), 'libraries/small');
const findingsOf = (...changes: Change[]) =>
  read(...changes).findings.map(({ code, message, nearest, place }) => ({
    code,
    message,
    nearest,
    line: place?.line,
  }));

const inDoor = (text: string): Change => ['units/base-door.yaml', 'fittings:\n', `${text}\nfittings:\n`];
const inBox = (text: string): Change => ['units/drawer-box.yaml', 'panels:\n', `${text}\npanels:\n`];
const inLayout = (text: string): Change => ['layouts/galley.yaml', 'choices:\n', `${text}\nchoices:\n`];
const own: Change = [
  'library.yaml',
  'roles:\n',
  'cautions:\n  high-bed: { title: Bed high up, text: Nobody lies on it on the move. }\n  gas: { title: Gas, text: [One more sentence., And another.] }\nroles:\n',
];

function furnished(order: (text: string) => string, ...changes: Change[]) {
  const library = must(read(...changes));
  const asked = must(readOrder(order(smallOrder), 'orders/test.yaml', library));
  return {
    library,
    order: asked,
    furniture: must(makePanels(must(expandOrder(asked, library)), asked, library)),
  };
}
const cautionsByUnit = (...changes: Change[]) =>
  furnished((text) => text, ...changes).furniture.units.map((unit) => [unit.name, unit.cautions]);

describe('cautions in a library', () => {
  it('are named by units, fittings and layouts, and may have texts of the library', () => {
    const library = must(
      read(
        own,
        inDoor('cautions: [gas, high-bed]'),
        inLayout('cautions: { heat: cooker == "two-burner", seats: true }'),
        ['fittings.yaml', 'pack: 10', 'pack: 10, cautions: [latches]'],
      ),
    );
    expect(library.cautions).toEqual(
      new Map([
        ['high-bed', { title: 'Bed high up', points: ['Nobody lies on it on the move.'] }],
        ['gas', { title: 'Gas', points: ['One more sentence.', 'And another.'] }],
      ]),
    );
    expect(library.units.get('base-door')?.cautions).toMatchObject([
      { caution: 'gas', when: null },
      { caution: 'high-bed', when: null },
    ]);
    expect(library.layouts.get('galley')?.cautions).toMatchObject([
      { caution: 'heat', when: { text: 'cooker == "two-burner"' } },
      { caution: 'seats', when: null },
    ]);
    expect(library.fittings.get('hinge')?.cautions).toEqual(['latches']);
  });

  it('must be words that the program or the library has', () => {
    expect(findingsOf(inDoor('cautions: [gass]'))).toMatchObject([
      { code: 'unknown-word', nearest: 'gas', line: 43 },
    ]);
    expect(findingsOf(inDoor('cautions: { heta: width > 400 }'))).toMatchObject([{ nearest: 'heat' }]);
    expect(findingsOf(inLayout('cautions: [sits]'))).toMatchObject([{ code: 'unknown-word' }]);
    expect(findingsOf(['fittings.yaml', 'pack: 10', 'pack: 10, cautions: [high-bed]'])).toMatchObject([
      { code: 'unknown-word' },
    ]);
    expect(findingsOf(own, ['fittings.yaml', 'pack: 10', 'pack: 10, cautions: [high-bed]'])).toEqual([]);
  });

  it('are a list or a block, and nothing else', () => {
    expect(findingsOf(inDoor('cautions: gas'))).toHaveLength(1);
    expect(
      findingsOf(['library.yaml', 'roles:\n', 'cautions: { own: { title: Own } }\nroles:\n']),
    ).toHaveLength(1);
  });
});

describe('cautions of furniture', () => {
  it('are those whose condition holds, with those of the units inside', () => {
    // The galley cupboard is 500 wide with two inner boxes, the added one 450 with one.
    expect(
      cautionsByUnit(
        inDoor('cautions: { gas: width > 480, water: width < 480 }'),
        inBox('cautions: [electrics]'),
      ),
    ).toEqual([
      ['galley cupboard', ['electrics', 'gas']],
      ['shoe cupboard', ['electrics', 'water']],
    ]);
  });

  it('of the layout and its seats come from the choices', () => {
    const changes = [
      inLayout(
        'seats: "cooker == \'two-burner\' ? 4 : 2"\ncautions: { gas: cooker == "two-burner", heat: bed_width > 2000 }',
      ),
    ];
    expect(furnished((text) => text, ...changes).furniture).toMatchObject({ seats: 4, cautions: ['gas'] });
    const one = (text: string) => text.replace('cooker: two-burner', 'cooker: one-burner');
    expect(furnished(one, ...changes).furniture).toMatchObject({ seats: 2, cautions: [] });
  });

  it.each([
    ['seats: 0', 'nobody would drive'],
    ['seats: 2.5', 'must be a whole number'],
    ['seats: bed_width', 'must be a whole number'],
    ['seats: chairs', 'there is no name'],
    ['cautions: { gas: bed_width }', 'yes or no'],
  ])('are told where they are wrong: %s', (text, sentence) => {
    const library = must(read(inLayout(text)));
    const order = must(readOrder(smallOrder, 'orders/test.yaml', library));
    const expanded = expandOrder(order, library);
    expect(expanded.ok).toBe(false);
    expect(expanded.findings.map(({ message }) => message).join()).toContain(sentence);
  });
});

describe('persons in an order', () => {
  it('are read, and are nobody where none are named', () => {
    const { order } = furnished((text) => text);
    expect(order.persons).toBeUndefined();
    expect(furnished((text) => `${text}persons: 3\n`).order.persons).toBe(3);
  });

  it.each(['0', '2.5', 'four'])('must be a whole number from 1: %s', (persons) => {
    const library = must(read());
    expect(readOrder(`${smallOrder}persons: ${persons}\n`, 'orders/test.yaml', library).ok).toBe(false);
  });
});

describe('a vehicle with a payload', () => {
  it('should state its overall length, which the payload is held against', () => {
    const without: Change = ['vehicles/van-long.yaml', 'overall length: 6000\n', ''];
    const [finding, ...others] = read(without).findings;
    expect(others).toEqual([]);
    expect(finding).toMatchObject({ code: 'no-overall-length', severity: 'warning', place: { line: 4 } });
    const room: Change = ['vehicles/van-long.yaml', 'overall length: 6000\npayload: 850\n', ''];
    expect(read(room).findings).toEqual([]);
  });
});
