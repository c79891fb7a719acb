import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { readPlan } from '../../src/basics/readPlan.ts';
import type { Checked } from '../../src/model/finding.ts';
import { furnishOrder, readLibraryTexts } from '../../src/pipeline/prepareOrder.ts';
import { replay } from '../../src/replay/index.ts';
import { readLedgerText } from '../../src/store/ledgerText.ts';
import { readMix } from '../../src/yearOfOrders/index.ts';

function must<T>(read: Checked<T>): T {
  if (!read.ok) throw new Error(JSON.stringify(read.findings, null, 2));
  return read.value;
}

/**
 * What the files of a folder mean to the readers of today: the library's materials, saws, units and layouts; the panels of an
 * order and of a variant of it; a mix of orders; what a plan gives by its replay; what a ledger adds up to.
 */
export function meaningOf(folder: string) {
  const text = (file: string) => readFileSync(join(folder, file), 'utf8');
  const root = 'library';
  const paths = readdirSync(join(folder, root), { recursive: true }).map(String).sort();
  const files = new Map(
    paths.filter((path) => path.endsWith('.yaml')).map((path) => [`${root}/${path}`, text(join(root, path))]),
  );
  const library = must(readLibraryTexts(files, root));
  const order = { text: text('order.yaml'), file: 'order.yaml' };
  const variant = { text: text('variant.yaml'), file: 'variant.yaml' };
  const panelsOf = (ordered: ReturnType<typeof furnishOrder>) => {
    const { order: read, furniture } = must(ordered);
    return {
      title: read.title,
      vehicle: read.vehicle,
      saw: read.saw,
      panels: furniture.units
        .flatMap(({ panels }) => panels)
        .map(
          (p) =>
            `${p.number} ${p.id}: ${p.cutLengthUm} × ${p.cutWidthUm} × ${p.thicknessUm} µm, ${p.count} of ${p.board} ${p.finish}, grain ${p.grain}, ${p.holes.length} holes`,
        ),
    };
  };
  const ledger = must(readLedgerText(text('ledger.jsonl'), 'ledger.jsonl')).ledger;
  const planOf = (file: string) => {
    const plan = must(readPlan(text(file), file));
    const sawn = replay(text(file), file);
    const { job, currency } = plan;
    return { job, currency, ok: sawn.ok, groups: sawn.reports, findings: sawn.findings };
  };
  /** Of a plan that follows an earlier one, what it says of that, and how its panels are called. */
  const laterPlanOf = (file: string) => {
    const { before, groups } = must(readPlan(text(file), file));
    const labels = groups.flatMap(({ panels }) => panels.map(({ id, label }) => ({ id, label })));
    return { ...planOf(file), before, labels };
  };
  const meaning = {
    library: {
      title: library.title,
      currency: library.currency,
      boards: [...library.boards.values()],
      finishes: [...library.finishes.values()],
      edgings: [...library.edgings.values()],
      sheets: library.sheets,
      saws: [...library.saws.values()],
      units: [...library.units.keys()],
      layouts: [...library.layouts.keys()],
      vehicles: [...library.vehicles.keys()],
    },
    order: panelsOf(furnishOrder(order.text, order.file, library)),
    variant: panelsOf(furnishOrder(variant.text, variant.file, library, { below: [order], set: [] })),
    mix: must(readMix(text('mix.yaml'), 'mix.yaml')),
    plan: planOf('plan.json'),
    recut: laterPlanOf('recut-plan.json'),
    'part 2': laterPlanOf('part-2-plan.json'),
    ledger: {
      bookings: ledger.bookings.map(({ number, date, kind, who, why }) =>
        `${number} ${date} ${kind} ${who} ${why}`.trim(),
      ),
      stock: [...ledger.stock.values()],
    },
  };
  const plain = (_: string, value: unknown) => {
    if (value instanceof Map || value instanceof Set) return [...value];
    return typeof value === 'bigint' ? String(value) : value;
  };
  return JSON.parse(JSON.stringify(meaning, plain)) as Record<string, unknown>;
}
