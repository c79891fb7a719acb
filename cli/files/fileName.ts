/** Names that some systems keep for devices. */
const reserved = /^(?:con|prn|aux|nul|com\d|lpt\d)$/;

/**
 * A text as one safe part of a file name on any system: lower-case letters, digits and hyphens, at most 80 characters,
 * never empty, never starting with a point.
 */
export function safeFileName(text: string): string {
  const plain = text
    .normalize('NFKD')
    .toLowerCase()
    .replace(/\p{M}+/gu, '')
    .replace(/[^a-z0-9]+/g, '-')
    .slice(0, 80)
    .replace(/^-+|-+$/g, '');
  if (plain === '') return 'unnamed';
  return reserved.test(plain) ? `${plain}-` : plain;
}
