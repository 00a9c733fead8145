// In: the code of test files that call describe, it and expect. Out: their tests as a list, to be called one by one.
// Just enough of vitest's interface to run the same files without starting vitest for each of thousands of mutants.
import { createRequire } from 'node:module';
import { format } from 'node:util';

const require = createRequire(import.meta.url);
const ofVitest = createRequire(require.resolve('vitest/package.json'));
const chai = await import(ofVitest.resolve('chai'));
const matchers = await import(ofVitest.resolve('@vitest/expect'));
for (const plugin of [
  matchers.JestExtend,
  matchers.JestChaiExpect,
  matchers.JestAsymmetricMatchers,
])
  chai.use(plugin);

/**
 * Collects the tests that `load` declares.
 * @example collectTests((vitest) => vitest.it('adds', () => {})) // [{ name: 'adds', run }]
 */
export function collectTests(load) {
  const tests = [];
  const path = [];
  const named = new Map();
  const it = (name, run) => {
    const whole = [...path, name].join(' ');
    const times = named.get(whole) ?? 0;
    named.set(whole, times + 1);
    tests.push({ name: times === 0 ? whole : `${whole} (${times + 1})`, run });
  };
  it.each = (cases) => (name, run) => {
    for (const one of cases) {
      const values = Array.isArray(one) ? one : [one];
      it(nameOf(name, values), () => run(...values));
    }
  };
  const describe = (name, declare) => {
    path.push(name);
    declare();
    path.pop();
  };
  load({ describe, it, expect: chai.expect });
  return tests;
}

/** '%s of $group' with the values of a row. */
function nameOf(name, values) {
  const filled = name.replaceAll(/\$(\w+)/g, (_, key) => String(values[0]?.[key]));
  const wanted = filled.match(/%[sdifjoO]/g)?.length ?? 0;
  return format(filled, ...values.slice(0, wanted));
}
