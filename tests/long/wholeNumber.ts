/** The value of an option that takes a whole number; a sentence and exit code 2 where it is none. */
export function wholeNumber(option: string, text: string): number {
  if (/^\d{1,9}$/.test(text)) return Number(text);
  console.error(`${option} takes a whole number, not ${JSON.stringify(text)}.`);
  process.exit(2);
}
