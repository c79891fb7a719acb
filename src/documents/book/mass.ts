import { furnitureMass, type MassShares } from '../../basics/furnitureMass.ts';
import { printMmShort } from '../../basics/lengths.ts';
import { isRoom, widthAtUm } from '../../basics/vehicleSection.ts';
import type { Vehicle } from '../../model/library.ts';
import { payloadLines, payloadOf, unevenText } from '../payloadLines.ts';
import type { MassWords } from '../words/massWords.ts';
import type { Block, Row, Section } from './book.ts';
import { columnsOf } from './columns.ts';
import type { BookFacts } from './subject.ts';

const kg = (massKg: number) => massKg.toFixed(1);

function cellsOf(name: string, mass: MassShares): string[] {
  const { boardsKg, edgingKg, fittingsKg, appliancesKg, totalKg, leftKg, rightKg, frontKg, rearKg } = mass;
  const parts = [boardsKg, edgingKg, fittingsKg, appliancesKg];
  return [name, ...[...parts, totalKg, leftKg, rightKg, frontKg, rearKg].map(kg)];
}

function centreText(mass: MassShares, vehicle: Vehicle, words: MassWords): string[] {
  if (mass.centreUm === null) return [];
  const { x, y, z } = mass.centreUm;
  const asideUm = Math.round(y - widthAtUm(vehicle, 0) / 2);
  const side = asideUm === 0 ? 'middle' : asideUm < 0 ? 'left' : 'right';
  const mm = (um: number) => `${printMmShort(Math.round(um / 1000) * 1000)} mm`;
  return [words.centre(mm(x), mm(Math.abs(asideUm)), side, mm(z))];
}

function accountBlocks({ ordered, words }: BookFacts): Block[] {
  const account = ordered === undefined ? null : payloadOf(ordered);
  if (account === null) return [];
  const says = words.mass;
  return [
    {
      kind: 'table',
      caption: says.account,
      columns: columnsOf(says.accountColumns, [10, -2]),
      rows: payloadLines(account, says).map((line) => ({ cells: [line.what, line.kg] })),
      sum: true,
    },
    { kind: 'paragraph', text: says.persons(account.persons, account.personsFrom) },
    ...(account.restKg < 0
      ? [{ kind: 'paragraph' as const, text: says.tooLittle, strong: true as const }]
      : []),
    { kind: 'paragraph', text: says.source },
  ];
}

/** What the furniture weighs, unit by unit and side by side, and where the payload goes; nothing for a plain list. */
export function massChapter(facts: BookFacts): Section[] {
  const { ordered, words } = facts;
  const vehicle = ordered?.library.vehicles.get(ordered.order.vehicle);
  if (ordered === undefined || vehicle === undefined) return [];
  const says = words.mass;
  const mass = furnitureMass(ordered.furniture, vehicle, ordered.library);
  const rows: Row[] = mass.perUnit.map((unit) => ({ cells: cellsOf(unit.unit, unit) }));
  const blocks: Block[] = [
    { kind: 'paragraph', text: says.intro },
    {
      kind: 'table',
      caption: says.byUnit,
      columns: columnsOf(says.columns, [4.2, -2, -1.8, -2.5, -2.6, -2.6, -1.6, -1.7, -1.6, -1.8]),
      rows: [...rows, { cells: cellsOf(says.all, mass) }],
      sum: true,
    },
    // Balance is nothing to a room.
    ...(isRoom(vehicle)
      ? []
      : centreText(mass, vehicle, says).map((text): Block => ({ kind: 'paragraph', text }))),
    ...unevenText(ordered, says).map((text): Block => ({ kind: 'paragraph', text, strong: true })),
    ...accountBlocks(facts),
  ];
  return [{ id: 'mass', heading: says.heading, level: 2, startsPage: false, blocks }];
}
