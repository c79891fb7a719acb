import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { exitCodes } from '../../cli/exitCodes.ts';
import { temporaryFolder } from '../cli/temporaryFolder.ts';
import { writeFiles } from './lists.ts';
import { plywrightAlone, projectFolder } from './plywright.ts';

const readme = readFileSync(join(projectFolder, 'README.md'), 'utf8');

function section(title: string): string {
  const start = readme.indexOf(`## ${title}`);
  expect(start, title).toBeGreaterThan(0);
  const end = readme.indexOf('\n## ', start);
  return readme.slice(start, end < 0 ? undefined : end);
}

function blocks(text: string, kind: string): string[] {
  return [...text.matchAll(new RegExp(`\`\`\`${kind}\n([\\s\\S]*?)\`\`\``, 'g'))].map((match) => match[1]!);
}

/** Runs every `npx plywright …` line of a section in a folder; each must work. */
async function follow(text: string, folder: string): Promise<string> {
  let said = '';
  const lines = blocks(text, 'console').flatMap((block) => block.trim().split('\n'));
  expect(lines.length).toBeGreaterThan(0);
  for (const line of lines) {
    const [npx, name, ...args] = line.split(' ');
    expect([npx, name]).toEqual(['npx', 'plywright']);
    const run = await plywrightAlone(folder, args);
    expect(run.code, `${line}\n${run.stdout}${run.stderr}`).toBe(0);
    said += run.stdout;
  }
  return said;
}

describe('the README', () => {
  /** Where the first order was cut as the README says. */
  const first = temporaryFolder();

  it('leads to a first order of one’s own', async () => {
    const text = section('A first order of your own');
    writeFiles(first, { 'my-van.yaml': blocks(text, 'yaml')[0]! });
    const said = await follow(text, first);
    expect(said).toContain('Papers in out/my-van/');
    expect(said).toContain('The plan can be sawn');
  });

  it('leads to drawings of the furniture', async () => {
    const folder = temporaryFolder();
    writeFiles(folder, { 'my-van.yaml': blocks(section('A first order of your own'), 'yaml')[0]! });
    expect(await follow(section('Drawings of the furniture'), folder)).toContain('out/my-van/drawings/');
    expect(existsSync(join(folder, 'out/my-van/drawings/layout.svg'))).toBe(true);
  });

  it('leads to a plain list that is cut', async () => {
    const folder = temporaryFolder();
    const text = section('A plain list');
    const [panels, sheets] = blocks(text, 'csv');
    writeFiles(folder, { 'panels.csv': panels!, 'sheets.csv': sheets! });
    expect(await follow(text, folder)).toContain('16 panels');
  });

  it('leads to a store', async () => {
    const said = await follow(section('The store'), temporaryFolder());
    expect(said).toContain('REVERSED by 5');
    expect(said).toContain('reserved for: my-van');
  });

  it('names the papers that there are', () => {
    const papers = readdirSync(join(first, 'out/my-van')).filter((name) => !/^\.|^cut-plans$/.test(name));
    const named = [...section('The papers').matchAll(/`([a-z-]+\.(?:csv|json|txt))`/g)].map((m) => m[1]!);
    expect(papers.sort()).toEqual([...new Set(named)].sort());
  });

  it('names every exit code', () => {
    for (const code of Object.values(exitCodes)) expect(readme).toMatch(new RegExp(`^\\| ${code} \\|`, 'm'));
  });

  it('links to files that exist, its picture among them', () => {
    const links = [...readme.matchAll(/\]\(([^)#]+)\)/g)].map((match) => match[1]!);
    expect(links.some((link) => link.endsWith('.svg'))).toBe(true);
    for (const link of links) expect(existsSync(join(projectFolder, link)), link).toBe(true);
  });
});
