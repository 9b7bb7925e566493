// Computes every published check, prints the table and writes docs/accuracy.md, the page "How far to trust it". Ends
// with exit code 1 only when a row could not be computed.
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { importBundled, root } from './bundle.mjs';

const { accuracyReport } = await importBundled('test/published/accuracy.ts');
const { page, lines, troubles } = accuracyReport();
console.log(lines.join('\n'));
writeFileSync(join(root, 'docs', 'accuracy.md'), `${page}\n`);
for (const trouble of troubles) console.error(`not computed: ${trouble}`);
process.exitCode = troubles.length > 0 ? 1 : 0;
