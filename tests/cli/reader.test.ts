import { mkdirSync, symlinkSync, truncateSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { diskReader } from '../../cli/files/reader.ts';
import { temporaryFolder } from './temporaryFolder.ts';

async function codes(result: Promise<{ findings: readonly { code: string }[] }>): Promise<string[]> {
  return (await result).findings.map((f) => f.code);
}

describe('reading a file', () => {
  const place = temporaryFolder();

  it('gives its text, without the mark that some editors put before it', async () => {
    writeFileSync(join(place, 'marked.yaml'), '\ufefftitle: Möbel\n');
    expect(await diskReader.text(join(place, 'marked.yaml'), 'order')).toEqual({
      ok: true,
      value: 'title: Möbel\n',
      findings: [],
    });
  });

  it('names the nearest file when there is none of that name', async () => {
    writeFileSync(join(place, 'first-order.yaml'), '');
    const read = await diskReader.text(join(place, 'frist-order.yaml'), 'order');
    expect(read.ok).toBe(false);
    expect(read.findings[0]).toMatchObject({
      code: 'file-missing',
      nearest: join(place, 'first-order.yaml'),
    });
  });

  it('refuses a folder, a device, bytes that are no text, and more than an order can need', async () => {
    writeFileSync(join(place, 'picture.yaml'), Buffer.from([0xff, 0xd8, 0xff, 0xe0]));
    writeFileSync(join(place, 'zeros.yaml'), 'a\0b');
    writeFileSync(join(place, 'large.yaml'), '');
    truncateSync(join(place, 'large.yaml'), 100_000_000);
    expect(await codes(diskReader.text(place, 'order'))).toEqual(['not-a-file']);
    expect(await codes(diskReader.text('/dev/zero', 'order'))).toEqual(['not-a-file']);
    expect(await codes(diskReader.text(join(place, 'picture.yaml'), 'order'))).toEqual(['file-not-text']);
    expect(await codes(diskReader.text(join(place, 'zeros.yaml'), 'order'))).toEqual(['file-not-text']);
    for (const kind of ['order', 'list', 'plan'] as const) {
      expect(await codes(diskReader.text(join(place, 'large.yaml'), kind))).toEqual(['file-too-large']);
    }
  });

  it('takes a file of exactly the greatest size', async () => {
    writeFileSync(join(place, 'full.yaml'), 'a'.repeat(1_000_000));
    expect((await diskReader.text(join(place, 'full.yaml'), 'order')).ok).toBe(true);
  });
});

describe('reading a library', () => {
  it('gives its YAML texts by path, and leaves orders and other files out', async () => {
    const folder = temporaryFolder();
    for (const inside of ['units', 'orders']) mkdirSync(join(folder, inside));
    writeFileSync(join(folder, 'library.yaml'), 'title: a');
    writeFileSync(join(folder, 'units', 'shelf.yaml'), 'title: b');
    writeFileSync(join(folder, 'orders', 'one.yaml'), 'title: c');
    writeFileSync(join(folder, 'notes.txt'), 'd');
    const read = await diskReader.library(folder);
    expect(read.ok && [...read.value]).toEqual([
      [`${folder}/library.yaml`, 'title: a'],
      [`${folder}/units/shelf.yaml`, 'title: b'],
    ]);
  });

  it('follows links inside it and refuses links out of it, each by name', async () => {
    const place = temporaryFolder();
    const folder = join(place, 'library');
    mkdirSync(join(folder, 'units'), { recursive: true });
    mkdirSync(join(place, 'library-other'));
    writeFileSync(join(place, 'secret.yaml'), 'secret: 1');
    writeFileSync(join(folder, 'library.yaml'), 'title: a');
    symlinkSync('library.yaml', join(folder, 'again.yaml'));
    expect((await diskReader.library(folder)).ok).toBe(true);
    symlinkSync('../secret.yaml', join(folder, 'out.yaml'));
    symlinkSync(join(place, 'library-other'), join(folder, 'units', 'out'));
    expect(await codes(diskReader.library(folder))).toEqual(['link-out-of-library', 'link-out-of-library']);
  });

  it('says when the folder is missing or is a file', async () => {
    const place = temporaryFolder();
    writeFileSync(join(place, 'file'), '');
    expect(await codes(diskReader.library(join(place, 'none')))).toEqual(['folder-missing']);
    expect(await codes(diskReader.library(join(place, 'file')))).toEqual(['not-a-folder']);
  });
});
