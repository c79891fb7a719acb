import { dayNumber, dayText } from '../basics/calendar.ts';
import { errorFinding, unknownWord, warningFinding } from '../basics/findings.ts';
import type { FieldReader } from '../basics/yamlFields.ts';
import type { PriceBreak, Purchasing, Supplier } from '../model/library.ts';
import type { LibraryFiles, ReadFile } from './libraryFiles.ts';
import type { Defined } from './materials.ts';
import { type BoughtField, type LibraryFile, suppliersFile } from './schemas.ts';

/** `suppliers.yaml`; empty when there is none or it cannot be used. */
export function readSuppliers(files: LibraryFiles): Defined<Supplier> {
  const read = files.read('suppliers.yaml', suppliersFile, 'optional');
  const suppliers = new Map<string, Supplier>();
  if (read === undefined) return { values: suppliers, names: [] };
  const { reader } = read;
  for (const [id, supplier] of Object.entries(read.value)) {
    const optional = (key: 'least order value' | 'free delivery from') =>
      supplier[key] === undefined ? null : reader.priceMinor(supplier, key);
    const { contact = [] } = supplier;
    suppliers.set(id, {
      id,
      title: supplier.title,
      contact: typeof contact === 'string' ? contact.trim().split('\n') : contact,
      deliveryDays: supplier['delivery days'],
      leastOrderMinor: optional('least order value'),
      deliveryMinor:
        supplier['delivery price'] === undefined ? 0 : reader.priceMinor(supplier, 'delivery price'),
      freeDeliveryFromMinor: optional('free delivery from'),
    });
  }
  return { values: suppliers, names: read.yaml.namesIn(read.value) };
}

/** `usual`: the price that holds below the first break. */
function readBreaks(reader: FieldReader, field: BoughtField, usual: number): PriceBreak[] {
  const written = field['price breaks'] ?? [];
  return written.map((each, index) => {
    const place = reader.yaml.placeOf(each, 'from');
    const before = written[index - 1];
    if (before !== undefined && before.from >= each.from) {
      reader.report(
        errorFinding('breaks-unsorted', 'Price breaks stand by rising number.', place, {
          found: `${each.from} after ${before.from}`,
          expected: `more than ${before.from}`,
        }),
      );
    }
    const higher = before?.price ?? usual;
    if (each.price >= higher) {
      reader.report(
        warningFinding('break-not-lower', 'A price break is not lower than the price before it.', place, {
          found: String(each.price),
          expected: `less than ${higher}`,
        }),
      );
    }
    return { from: each.from, priceMinor: reader.priceMinor(each, 'price') };
  });
}

/** What an entry of a file says of how it is bought; `usual`: its price without a break. */
export function readBought(
  reader: FieldReader,
  field: BoughtField,
  usual: number,
  suppliers: readonly string[],
): Purchasing {
  const { supplier } = field;
  if (supplier !== undefined && !suppliers.includes(supplier)) {
    const place = reader.yaml.placeOf(field, 'supplier');
    const advice = suppliers.length === 0 ? 'Name suppliers in suppliers.yaml.' : undefined;
    reader.report(unknownWord(supplier, 'a supplier of this library', suppliers, place, advice));
  }
  const breaks = readBreaks(reader, field, usual);
  return {
    ...(supplier === undefined ? {} : { supplier }),
    ...(breaks.length === 0 ? {} : { breaks }),
    ...(field['least quantity'] === undefined ? {} : { least: field['least quantity'] }),
  };
}

/** Days of `free days` in library.yaml, one by one. */
export function readFreeDays(head: ReadFile<LibraryFile> | undefined): ReadonlySet<string> {
  const days = new Set<string>();
  const written = head?.value['free days'] ?? [];
  written.forEach((entry, index) => {
    const { reader } = head!;
    if (typeof entry === 'string') {
      const day = reader.day(written as string[], index);
      if (day !== undefined) days.add(day);
      return;
    }
    const [from, to] = [reader.day(entry, 'from'), reader.day(entry, 'to')];
    if (from === undefined || to === undefined) return;
    const [first, last] = [dayNumber(from)!, dayNumber(to)!];
    if (last < first || last - first > 366) {
      const message = last < first ? 'Free days end before they begin.' : 'Free days are longer than a year.';
      reader.report(
        errorFinding('wrong-day', message, reader.yaml.placeOf(entry, 'to'), { found: `${from} to ${to}` }),
      );
      return;
    }
    for (let day = first; day <= last; day++) days.add(dayText(day));
  });
  return days;
}
