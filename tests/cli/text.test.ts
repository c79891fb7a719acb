import picocolors from 'picocolors';
import { describe, expect, it } from 'vitest';
import { safeFileName } from '../../cli/files/fileName.ts';
import { describeFinding, describeFindings } from '../../cli/terminal/findings.ts';
import { printable, wrap } from '../../cli/terminal/text.ts';
import type { Finding } from '../../src/model/finding.ts';

const plain = picocolors.createColors(false);

describe('file names', () => {
  it.each([
    ['Demo Long', 'demo-long'],
    ['../../etc/passwd', 'etc-passwd'],
    ['Küche & Bad', 'kuche-bad'],
    ['', 'unnamed'],
    ['...', 'unnamed'],
    ['con', 'con-'],
    ['a"b<c>|d\n', 'a-b-c-d'],
    ['x'.repeat(300), 'x'.repeat(80)],
  ])('%j becomes %j', (text, name) => {
    expect(safeFileName(text)).toBe(name);
  });
});

describe('text on a terminal', () => {
  it('holds no control character of a file', () => {
    expect(printable('a\u001b[31mred\nnext\u0007\u202ex')).toBe('a?[31mred next??x');
  });

  it('is broken at spaces', () => {
    expect(wrap('one two three four', 9, '  ')).toBe('one two\n  three\n  four');
  });
});

describe('findings', () => {
  const finding: Finding = {
    code: 'unknown-word',
    severity: 'error',
    message: 'the layout has no choice of this name',
    place: { file: 'order.yaml', line: 7, column: 3, field: 'choices › bed-widht' },
    found: 'bed-widht',
    expected: 'bed-width, cooker',
    nearest: 'bed-width',
    advice: 'correct the word or leave the line out',
  };

  it('are said with the place, the word found and the nearest right one', () => {
    expect(describeFinding(finding, plain)).toBe(
      [
        'order.yaml:7:3  choices › bed-widht',
        '  error: the layout has no choice of this name',
        '  found: bed-widht',
        '  expected: bed-width, cooker',
        '  nearest: bed-width',
        '  → correct the word or leave the line out',
      ].join('\n'),
    );
  });

  it('come with errors first and are counted', () => {
    const caution: Finding = { code: 'c', severity: 'caution', message: 'Wear ear defenders.' };
    const said = describeFindings([caution, finding, finding], plain);
    expect(said.indexOf('error:')).toBeLessThan(said.indexOf('caution:'));
    expect(said.trimEnd().split('\n').at(-1)).toBe('2 errors, 1 caution');
  });
});
