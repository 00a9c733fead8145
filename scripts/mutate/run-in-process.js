// In: a sandbox with mutated code, from Stryker. Out: which tests notice which mutant.
// The tests of the two grading rooms are bundled once and called in this process: a mutant costs milliseconds,
// where a fresh vitest costs a second. A mutant that acts while files load gets a fresh evaluation of the bundle.
import { createRequire } from 'node:module';
import { readdirSync } from 'node:fs';
import { resolve } from 'node:path';
import vm from 'node:vm';
import { build } from 'esbuild';
import { collectTests } from './collect-tests.js';

const rooms = ['tests/report', 'tests/interpret'];
/** Thousands of generated panels: they would take longer than all others and notice nothing that those do not. */
const long = ['every-combination', 'properties', 'independent-count'];

class TestsInProcess {
  static inject = [];
  tests = [];

  constructor() {
    globalThis.__stryker__ ??= {};
    this.namespace = globalThis.__stryker__;
  }

  capabilities() {
    return { reloadEnvironment: true };
  }

  async init() {
    const files = rooms
      .flatMap((room) => readdirSync(room).map((file) => `${room}/${file}`))
      .filter((file) => file.endsWith('.test.ts') && !long.some((one) => file.includes(one)))
      .sort();
    const entry = files.map((file) => `import ${JSON.stringify(`./${file}`)};`).join('\n');
    const { outputFiles } = await build({
      stdin: { contents: entry, resolveDir: process.cwd(), sourcefile: 'tests.js' },
      bundle: true,
      write: false,
      platform: 'node',
      format: 'cjs',
      target: 'node20',
      packages: 'external',
      // The tables' own schemas are proved by their own tests.
      define: { tablesAreRead: 'true' },
      logLevel: 'error',
    });
    const code = `(function (require, module, exports) {${outputFiles[0].text}\n})`;
    this.script = new vm.Script(code, { filename: 'tests-of-the-rooms.cjs' });
  }

  load() {
    const require = createRequire(resolve('tests.cjs'));
    const module = { exports: {} };
    const evaluate = this.script.runInThisContext();
    this.tests = collectTests((vitest) =>
      evaluate((name) => (name === 'vitest' ? vitest : require(name)), module, module.exports),
    );
  }

  async dryRun() {
    Object.assign(this.namespace, {
      activeMutant: undefined,
      mutantCoverage: { static: {}, perTest: {} },
    });
    this.load();
    const tests = [];
    for (const test of this.tests) {
      this.namespace.currentTestId = test.name;
      tests.push(await told(test));
    }
    this.namespace.currentTestId = undefined;
    return { status: 'complete', tests, mutantCoverage: this.namespace.mutantCoverage };
  }

  async mutantRun({ testFilter, activeMutant, mutantActivation, reloadEnvironment, hitLimit }) {
    const { namespace } = this;
    Object.assign(namespace, { hitCount: undefined, hitLimit, activeMutant: undefined });
    const early = mutantActivation === 'static';
    if (early) Object.assign(namespace, { hitCount: 0, activeMutant: activeMutant.id });
    try {
      if (reloadEnvironment || early || this.tests.length === 0) this.load();
    } catch (error) {
      return killed('the files load', error.message, 0);
    }
    Object.assign(namespace, { hitCount: 0, activeMutant: activeMutant.id });
    const wanted = testFilter === undefined ? null : new Set(testFilter);
    const chosen = this.tests.filter(({ name }) => wanted === null || wanted.has(name));
    let ran = 0;
    for (const test of chosen) {
      const { status, failureMessage } = await told(test);
      ran += 1;
      if (namespace.hitCount > hitLimit) return { status: 'timeout' };
      if (status === failed) return killed(test.name, failureMessage, ran);
    }
    return { status: 'survived', nrOfTests: ran };
  }
}

const [passed, failed] = [0, 1];

/** One test as Stryker wants it told. */
async function told({ name, run }) {
  const start = performance.now();
  const at = () => ({ id: name, name, timeSpentMs: performance.now() - start });
  try {
    await run();
    return { ...at(), status: passed };
  } catch (error) {
    return { ...at(), status: failed, failureMessage: String(error?.message ?? error) };
  }
}

function killed(by, failureMessage, nrOfTests) {
  return { status: 'killed', killedBy: [by], failureMessage, nrOfTests };
}

export const strykerPlugins = [
  { kind: 'TestRunner', name: 'in-process', injectableClass: TestsInProcess },
];
