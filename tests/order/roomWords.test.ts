import { describe, expect, it } from 'vitest';
import { placeWord } from '../../src/basics/vehicleSection.ts';
import { readLibrary } from '../../src/library/index.ts';
import { readOrder } from '../../src/order/index.ts';
import { must } from '../helpers/demoVan.ts';
import { smallLibrary, smallOrder } from '../helpers/smallLibrary.ts';

/** The small library without payloads: all of its vehicles are rooms. */
function rooms() {
  const files = smallLibrary();
  for (const [path, text] of files) {
    if (path.includes('/vehicles/')) files.set(path, text.replace(/^payload:.*\n/m, ''));
  }
  return files;
}

describe('sentences about what furniture stands in', () => {
  it.each([
    ['vehicles', smallLibrary(), 'vehicle'],
    ['rooms', rooms(), 'room'],
  ])('speak of %s where a library has only such', (_what, files, word) => {
    const library = must(readLibrary(files, 'libraries/small'));
    expect(placeWord(library.vehicles.values())).toBe(word);
    const order = readOrder(smallOrder.replace('van-long', 'van-longg'), 'orders/a.yaml', library);
    expect(order.findings.map(({ message }) => message)).toEqual([
      `\`van-longg\` is not a ${word} of this library.`,
    ]);
    const wrong = new Map(files);
    const layout = 'libraries/small/layouts/galley.yaml';
    wrong.set(layout, files.get(layout)!.replace('[van-short, van-long]', '[van-short, barge]'));
    expect(readLibrary(wrong, 'libraries/small').findings.map(({ message }) => message)).toEqual([
      `\`barge\` is not a ${word} of this library.`,
    ]);
  });

  it('say both where there are both, or none', () => {
    expect(placeWord([{ payloadKg: 5 }, { payloadKg: null }])).toBe('vehicle or room');
    expect(placeWord([])).toBe('vehicle or room');
  });
});
