import { describe, expect, it } from 'vitest';
import { csvFromTable, tableColumns, tableOf } from '../../src/documents/table.ts';

const columns = tableColumns({
  name: 'text',
  count: 'whole',
  length: 'mm',
  thickness: 'thickness',
  run: 'metres',
  mass: 'kg',
  share: 'percent',
  price: 'money',
  roll: 'number',
});

describe('a table', () => {
  it('becomes CSV with the decimals of each kind, and nothing where there is nothing to say', () => {
    const full = {
      name: 'side',
      count: 3,
      length: 720,
      thickness: 15.25,
      run: 4.4,
      mass: 0.5,
      share: 12.34,
      price: 92.5,
      roll: 75,
    };
    const empty = Object.fromEntries(columns.map(({ key }) => [key, null])) as Record<
      keyof typeof full,
      null
    >;
    expect(csvFromTable(tableOf('things', columns, [full, empty]))).toBe(
      'name,count,length,thickness,run,mass,share,price,roll\r\n' +
        'side,3,720.0,15.25,4.400,0.500,12.3,92.50,75\r\n' +
        ',,,,,,,,\r\n',
    );
  });

  it('prints money of minor units exactly', () => {
    const prices = Array.from({ length: 2000 }, (_, minor) => ({ price: (minor * 37) / 100 }));
    const text = csvFromTable(tableOf('prices', tableColumns({ price: 'money' }), prices));
    const minors = text
      .split('\r\n')
      .slice(1, -1)
      .map((line) => Number(line.replace('.', '')));
    expect(minors).toEqual(prices.map((_, minor) => minor * 37));
  });

  it('throws where a column of numbers holds a word', () => {
    const wrong = tableOf('things', tableColumns({ count: 'whole' }), [{ count: 'three' }]);
    expect(() => csvFromTable(wrong)).toThrow('"three"');
  });
});
