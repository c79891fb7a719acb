/**
 * Days of the calendar without a clock: a day is a text such as `2026-03-02`, and a whole number where it is counted
 * with. Proleptic Gregorian calendar, years 0001 to 9999.
 */

const MONTH_DAYS = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31] as const;
/** Days of a year before the first of each month, without 29 February. */
const BEFORE_MONTH = [0, 31, 59, 90, 120, 151, 181, 212, 243, 273, 304, 334] as const;

function isLeap(year: number): boolean {
  return year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0);
}

/** Days from 0001-01-01 to the first day of a year. */
function daysBeforeYear(year: number): number {
  const before = year - 1;
  return 365 * before + Math.floor(before / 4) - Math.floor(before / 100) + Math.floor(before / 400);
}

/** Days since 0001-01-01, which is 0; undefined for a text that is no day of the calendar. */
export function dayNumber(text: string): number | undefined {
  const match = /^(\d{4})-(\d{2})-(\d{2})$/.exec(text);
  if (match === null) return undefined;
  const [year, month, day] = match.slice(1).map(Number) as [number, number, number];
  const most = month === 2 && isLeap(year) ? 29 : MONTH_DAYS[month - 1];
  if (year < 1 || most === undefined || day < 1 || day > most) return undefined;
  const leapDay = month > 2 && isLeap(year) ? 1 : 0;
  return daysBeforeYear(year) + BEFORE_MONTH[month - 1]! + leapDay + day - 1;
}

/** The day of a number of `dayNumber`. Throws outside the years 0001 to 9999. */
export function dayText(number: number): string {
  if (!Number.isInteger(number) || number < 0) throw new Error(`${number} is no day`);
  let year = Math.floor(number / 366) + 1;
  while (daysBeforeYear(year + 1) <= number) year++;
  if (year > 9999) throw new Error(`${number} is beyond the year 9999`);
  let left = number - daysBeforeYear(year);
  let month = 0;
  for (;;) {
    const days = month === 1 && isLeap(year) ? 29 : MONTH_DAYS[month]!;
    if (left < days) break;
    left -= days;
    month++;
  }
  const two = (value: number) => String(value).padStart(2, '0');
  return `${String(year).padStart(4, '0')}-${two(month + 1)}-${two(left + 1)}`;
}

/** 0 for Monday to 6 for Sunday. 0001-01-01 was a Monday. */
export function weekdayOf(number: number): number {
  return number % 7;
}

/** Whether work is done on a day: no Saturday, no Sunday, none of the free days. */
export function isWorkingDay(number: number, free: ReadonlySet<string>): boolean {
  return weekdayOf(number) < 5 && !free.has(dayText(number));
}

/** Nobody waits longer than this for a working day; a list of free days that has none left is wrong. */
const LONGEST_SEARCH = 4000;

/** The day that lies `count` working days before (`step` −1) or after (1) a day, which itself is not counted. */
export function workingDaysFrom(day: number, step: 1 | -1, count: number, free: ReadonlySet<string>): number {
  let at = day;
  let idle = 0;
  for (let left = count; left > 0; ) {
    at += step;
    if (isWorkingDay(at, free)) {
      left--;
      idle = 0;
    } else if (++idle > LONGEST_SEARCH) throw new Error('the list of free days leaves no working day');
  }
  return at;
}
