import { dayNumber, dayText, workingDaysFrom } from '../basics/calendar.ts';

function numberOf(day: string): number {
  const number = dayNumber(day);
  if (number === undefined) throw new Error(`${day} is no day`);
  return number;
}

/** The working day before the first day of work: that on which goods must be there. */
export function dayBeforeWork(start: string, free: ReadonlySet<string>): string {
  return dayText(workingDaysFrom(numberOf(start), -1, 1, free));
}

/**
 * The last day on which goods can be ordered that must be there when work begins: they come so many working days after
 * the day of the order, and lie ready on the working day before the first day of work.
 */
export function lastOrderDay(start: string, deliveryDays: number, free: ReadonlySet<string>): string {
  const there = numberOf(dayBeforeWork(start, free));
  return dayText(workingDaysFrom(there, -1, deliveryDays, free));
}

/** The day on which goods are there that are ordered on a day. */
export function arrivalDay(ordered: string, deliveryDays: number, free: ReadonlySet<string>): string {
  return dayText(workingDaysFrom(numberOf(ordered), 1, deliveryDays, free));
}

/** The first day on which work can begin with goods that are ordered today. */
export function firstWorkDay(today: string, deliveryDays: number, free: ReadonlySet<string>): string {
  const there = numberOf(arrivalDay(today, deliveryDays, free));
  return dayText(workingDaysFrom(there, 1, 1, free));
}
