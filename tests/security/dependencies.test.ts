// What is installed is what was locked: one version of each package, each with its hash.
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';

type Locked = { readonly version?: string; readonly integrity?: string; readonly link?: boolean };
const json = (path: string) => JSON.parse(readFileSync(path, 'utf8'));

describe.each(['.', 'scripts/tools'])('the packages of %s', (folder) => {
  const { dependencies = {}, devDependencies = {} } = json(`${folder}/package.json`);
  const lock = json(`${folder}/package-lock.json`);
  const packages: readonly [string, Locked][] = Object.entries(lock.packages);

  it('are asked for in one version each', () => {
    const asked = Object.entries({ ...dependencies, ...devDependencies });
    expect(asked.length).toBeGreaterThan(0);
    expect(asked.filter(([, version]) => !/^\d+\.\d+\.\d+[\w.+-]*$/.test(`${version}`))).toEqual(
      [],
    );
  });

  it('are locked with a hash of SHA-512, by no address of a registry', () => {
    const fetched = packages.filter(([path]) => path !== '');
    expect(fetched.filter(([, one]) => !one.integrity?.startsWith('sha512-'))).toEqual([]);
    expect(readFileSync(`${folder}/package-lock.json`, 'utf8')).not.toMatch(/"resolved"/);
  });
});
