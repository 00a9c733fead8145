// What npm knows of node_modules/ in; a CycloneDX bill of the packages that are shipped out, on stdout.
import { execFileSync } from 'node:child_process';
import { dirname } from 'node:path';
import { fileURLToPath } from 'node:url';
import { thirdParties } from './third-party.js';

const root = dirname(dirname(fileURLToPath(import.meta.url)));
const bill = JSON.parse(
  execFileSync('npm', ['sbom', '--sbom-format', 'cyclonedx', '--package-lock-only'], {
    cwd: root,
    maxBuffer: 1 << 28,
  }),
);

// Everything is bundled, so npm takes every package for a tool of development: those that are shipped are named here.
const shipped = new Set(
  (await thirdParties(root)).map(({ name, version }) => `${name}@${version}`),
);
const components = bill.components
  .filter(({ name, version }) => shipped.has(`${name}@${version}`))
  .map(({ scope, properties, ...component }) => component);
const references = new Set(components.map((component) => component['bom-ref']));
const component = { ...bill.metadata.component, name: 'ironleaf', properties: undefined };

console.log(
  JSON.stringify(
    {
      ...bill,
      metadata: { ...bill.metadata, component },
      components,
      dependencies: [
        { ref: component['bom-ref'], dependsOn: [...references] },
        ...bill.dependencies
          .filter(({ ref }) => references.has(ref))
          .map(({ ref, dependsOn = [] }) => ({
            ref,
            dependsOn: dependsOn.filter((name) => references.has(name)),
          })),
      ],
    },
    null,
    2,
  ),
);
