import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { plywright, projectFolder } from './plywright.ts';

const order = (path: string) => join(projectFolder, 'parts-libraries', path);
const van = order('demo-van/orders/demo-long.yaml');

describe('a checked order', () => {
  it('is told with the cautions that apply and the units that bring them, and with its mass', async () => {
    const run = await plywright(projectFolder, ['check', van]);
    expect(run.code, run.stderr).toBe(0);
    const said = run.stdout.replace(/\s+/g, ' ');
    expect(said).toMatch(/cautions: Saw; Dust; Sharp edges; .*Hot appliances \(galley worktop\); /);
    expect(said).not.toContain('Fixing to a wall');
    expect(said).toMatch(
      /mass: furniture \d+\.\d kg, \d+\.\d kg of it appliances \(\d+ % left, \d+ % front\); with 2 persons \d+\.\d kg left of the payload of 980\.0 kg, at least 83\.0 kg to be kept/,
    );
    expect(run.stdout.split('\n').filter((line) => line.length > 80)).toEqual([]);
  });

  it('is told the same as JSON', async () => {
    const run = await plywright(projectFolder, ['check', van, '--json']);
    const { ok, cautions, mass } = JSON.parse(run.stdout);
    expect(ok).toBe(true);
    expect(cautions).toContainEqual({ caution: 'heat', title: 'Hot appliances', units: ['galley worktop'] });
    expect(mass.leftKg + mass.rightKg).toBeCloseTo(mass.furnitureKg, 9);
    expect(mass.payload).toMatchObject({ payloadKg: 980, persons: 2, leastKg: 83 });
  });

  it('for a room has no payload and no cautions of a vehicle', async () => {
    const run = await plywright(projectFolder, ['check', order('workshop-bench/orders/garage-bench.yaml')]);
    expect(run.stdout.replace(/\s+/g, ' ')).toMatch(
      /cautions: Saw; Dust; Sharp edges; Fixing to a wall \(bench, wall shelf 1, wall shelf 2\) mass: furniture \d+\.\d kg $/,
    );
  });
});
